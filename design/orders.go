package design

import "strings"

// An order is what a line tells the maker to do first.
type order uint8

const (
	noOrder  order = iota
	stitches       // hook and yarn
	sewing         // needle, seams, blocking, stuffing
)

// firstOrder returns the first order in a line. A line that only tells how a
// piece is made ("Worked from the top down") has none.
func firstOrder(text string, ws []word) order {
	if len(ws) == 0 {
		return noOrder
	}
	if likeAnother(ws) || ws[0].text == "ending" || ws[0].text == "until" || bracketRepeat(text, ws) || sameTime(ws) {
		return stitches
	}
	lead := leadWords[ws[0].text]
	for i := range ws {
		w := ws[i]
		start := w.clause || i > 0 && ws[i-1].clause && strings.HasSuffix(ws[i-1].text, "ly") || i > 0 && (ws[i-1].text == "then" || ws[i-1].text == "now" || ws[i-1].text == "and" && ws[0].clause && lead)
		switch {
		case start && (w.text == "make" || w.text == "work" || w.text == "cut") && makeNumber(text, ws, i):
			continue
		case start && assemblyVerbs[w.text] && sewingOrder(ws, i):
			return sewing
		case start && w.text == "cut" && contains(ws, "strands", "fringe", "felt", "lengths", "tassel", "tassels"):
			return sewing
		case start && orderVerbs[w.text] && verbOrder(ws, i):
			return joinOrder(ws, i)
		case start && stitchOrder(text, ws, i, false):
			return togetherOrder(ws, i)
		case lead && (stitchOrder(text, ws, i, true) || orderVerbs[w.text] && strongVerb(ws, i)):
			return joinOrder(ws, i)
		case lead && i > 2 && assemblyVerbs[w.text] && sewVerbs[w.text]:
			return sewing
		case (w.text == "dec" || w.text == "inc" || w.text == "decrease" || w.text == "increase") && i+1 < len(ws) && ws[i+1].number():
			return stitches
		}
	}
	return noOrder
}

// leadWords start a sentence whose order comes later: "With RS facing join
// yarn …", "On the next row dec 1 st".
var leadWords = set(`with using on at for from when once after to working holding in by along starting now you beginning
	beg and while as until if until, facing rs ws rejoin next using: then keeping continuing this`)

var sewVerbs = set("sew seam weave whipstitch stuff embroider assemble")

// makeNumber reports whether ws[i] is the "make 2" in brackets of a heading.
func makeNumber(text string, ws []word, i int) bool {
	if i+1 >= len(ws) || !ws[i+1].number() || i == 0 || i > 7 || i+6 < len(ws) || mentionsStitch(ws[i:]) {
		return false
	}
	before := strings.TrimRight(text[:ws[i].start], " ")
	return strings.HasSuffix(before, "(") || strings.HasSuffix(before, "[") || ws[i].text == "make" && i+2 >= len(ws)
}

// verbOrder weeds out verbs that order nothing where they stand: "make sure",
// "work the pattern out", "finish" as a heading.
func verbOrder(ws []word, i int) bool {
	next := word{}
	if i+1 < len(ws) {
		next = ws[i+1]
	}
	switch ws[i].text {
	case "with", "using", "use":
		for k := i + 1; k < len(ws) && k < i+14; k++ {
			if orderVerbs[ws[k].text] && ws[k].text != "yarn" && ws[k].text != "with" && ws[k].text != "hold" || stitchOf(ws[k]) != "" && ws[k].text != "crochet" {
				return true
			}
		}
		return false
	case "make":
		return next.text != "sure" && next.text != "your" && next.text != "it" && next.text != "up"
	case "yarn", "crochet", "note", "remember", "beginning", "don't", "never", "count", "form", "add", "create", "bind", "draw", "bring":
		return next.text == "over" || next.text == "off" || mentionsStitch(ws[i+1:]) ||
			contains(ws[i+1:min(len(ws), i+6)], "seam", "seams", "together", "fringe", "tassel", "tassels", "pompom", "buttons")
	case "inc", "dec", "increase", "decrease":
		return next.text != "rounds" && next.text != "rows" || ws[i].after == ':'
	case "place", "hold", "mark", "keep", "alternate", "omit", "flip", "loop", "wrap", "pick", "carry", "bar":
		return next.text != ""
	}
	return true
}

// strongVerb takes a verb inside a sentence for an order when what follows is
// plainly work.
func strongVerb(ws []word, i int) bool {
	if i+1 >= len(ws) {
		return false
	}
	next := ws[i+1]
	switch ws[i].text {
	case "do":
		return next.text == "not"
	case "work", "make", "repeat", "rep", "join", "attach", "skip", "sk", "continue", "cont", "change", "rejoin", "fasten", "dec", "inc", "decrease", "increase", "turn", "leave", "place":
		return next.text != "is" && next.text != "are" && next.text != "of" && next.text != "up" && ws[i-max(0, min(i, 1))].text != "the"
	}
	return false
}

// stitchOrder reports whether a stitch is ordered at ws[i]: "sc in next st",
// "dc 5", "3 tr", "16 (18, 21) htr". Inside a sentence, only with a number or
// a place.
func stitchOrder(text string, ws []word, i int, inside bool) bool {
	k := i
	for k < len(ws) && k < i+14 && ws[k].number() {
		k++
	}
	if k >= len(ws) {
		return false
	}
	counted := k > i || ws[k].startsDigit() && !ordinal(ws[k].text)
	n := 0
	if stitchOf(ws[k]) != "" {
		n = 1
	}
	if l := longStitch(ws, k); l > n {
		n = l
	}
	if n == 0 {
		return loopOrder(ws, i)
	}
	if counted && !inside {
		return k+n >= len(ws) || !isNoun(ws[k+n].text)
	}
	if k+n >= len(ws) {
		return !inside || counted
	}
	next := ws[k+n]
	if next.text == "in" && k+n+1 < len(ws) && isNoun(ws[k+n+1].text) && !pieceWords[ws[k+n+1].text] {
		return false
	}
	if next.clause && !inside {
		return next.start > 0 && strings.IndexByte(text[ws[k+n-1].end:next.start], ':') < 0
	}
	return next.number() || next.startsDigit() || placeWords[next.text] || stitchOf(next) != "" && !inside ||
		ordinal(next.text) && !inside
}

// loopOrder takes "BLO sc in each st" for an order.
func loopOrder(ws []word, i int) bool {
	switch ws[i].text {
	case "blo", "flo", "bl", "fl", "standing", "beg":
		return i+1 < len(ws) && (stitchOf(ws[i+1]) != "" || longStitch(ws, i+1) > 0)
	}
	return false
}

func isNoun(s string) bool {
	switch s {
	case "hook", "yarn", "panel", "scarf", "hat", "blanket", "border", "edging", "pattern", "pat", "patt", "rib", "ribbing",
		"thread", "skeins", "balls", "rounds", "rows", "stitch", "fabric", "throughout", "variation", "stripe", "stripes":
		return true
	}
	return pieceWords[s] && !placeWords[s] && s != "center" && s != "centre"
}

// sewingOrder weeds out nouns among the sewing verbs: "block colour", "set of".
func sewingOrder(ws []word, i int) bool {
	next := ""
	if i+1 < len(ws) {
		next = ws[i+1].text
	}
	switch ws[i].text {
	case "set":
		return next == "in" || next == "sleeves" || next == "sleeve"
	case "seam", "block", "line", "pin", "fringe", "tie", "thread", "ease", "press", "steam", "trim", "lay", "glue", "fold":
		return next != "stitch" && next != "color" && next != "colour" && next != "band" && next != "around" &&
			next != "edging" && next != "row" && next != "for" && (next != "" || ws[i].text == "block" || ws[i].text == "steam")
	}
	return true
}

// joinOrder tells "join yarn" from "join the shoulder seams".
func joinOrder(ws []word, i int) order {
	switch ws[i].text {
	case "join", "attach", "insert", "place", "position", "secure", "pull", "close", "add", "slip", "sl", "crochet", "work", "using", "with", "turn", "use", "tighten", "make", "gather", "loop", "wrap", "finish":
	default:
		return stitches
	}
	if ws[i].text == "using" || ws[i].text == "with" {
		for k := i + 1; k < len(ws); k++ {
			if assemblyVerbs[ws[k].text] && sewingOrder(ws, k) {
				return sewing
			}
			if orderVerbs[ws[k].text] && ws[k].text != "yarn" && ws[k].text != "with" && ws[k].text != "hold" || stitchOf(ws[k]) != "" {
				return joinOrder(ws, max(k, i+1))
			}
		}
		return stitches
	}
	if ws[i].text != "work" && ws[i].text != "make" && sewnOn(ws, i) {
		return sewing
	}
	switch ws[i].text {
	case "close", "pull", "tighten", "secure", "gather":
		for k := i + 1; k < len(ws) && k < i+9; k++ {
			if sewVerbs[ws[k].text] {
				return sewing
			}
		}
	}
	sewn := false
	for k := i + 1; k < len(ws) && k < i+9 && !ws[k].sentence; k++ {
		switch s := ws[k].text; {
		case k == i+1 && (s == "yarn" || s == "marker" || s == "round" || s == "rnd"):
			return stitches
		case s == "yarn" || s == "marker" || s == "markers" || s == "mc" || s == "cc" || s == "color" || s == "colour" || s == "hook" || s == "row" || s == "rnd":
			return stitches
		case s == "seam" || s == "seams" || s == "eyes" || s == "motifs" || s == "squares" || s == "pieces" || s == "buttons" || s == "button" ||
			s == "together" || s == "zipper" || s == "fringe" || s == "tassels" || s == "tassel" || s == "pompom" || s == "pom-pom" || s == "pom-poms":
			sewn = true
		case ws[i].text == "turn" && (s == "out" || s == "inside"):
			sewn = true
		case (ws[i].text == "attach" || ws[i].text == "join" || ws[i].text == "position" || ws[i].text == "secure" || ws[i].text == "place") &&
			pieceWords[s] && ws[k-1].text != "at" && !edgeAt(ws, i, k):
			sewn = sewn || s != "top" && s != "bottom" && s != "base" && s != "back" && s != "front" && s != "center" && s != "centre"
		case stitchOf(ws[k]) != "" && s != "ss" && ws[i].text != "work":
			if ws[i].text == "join" || ws[i].text == "attach" {
				if !sewn {
					return stitches
				}
			}
		}
	}
	if sewn {
		return sewing
	}
	return stitches
}

// sewnOn reports whether a verb has a part of the thing for its object:
// "attach arms to body", "position the ears".
func sewnOn(ws []word, i int) bool {
	switch ws[i].text {
	case "attach", "position", "secure", "add":
	default:
		return false
	}
	k := i + 1
	for k < len(ws) && k < i+4 && (ws[k].text == "the" || ws[k].text == "both" || ws[k].text == "each" || ws[k].number()) {
		k++
	}
	return k < len(ws) && pieceWords[ws[k].text] && ws[k].text != "top" && ws[k].text != "base"
}

// edgeAt reports whether the piece word at k is only a place: "join in left
// sleeve edge", "attach at the underarm".
func edgeAt(ws []word, i, k int) bool {
	for j := i + 1; j < k; j++ {
		switch ws[j].text {
		case "in", "at", "to", "with", "into", "on", "along":
			return true
		}
	}
	return false
}

// togetherOrder tells "sl st shoulders together" from a row of slip stitches.
func togetherOrder(ws []word, i int) order {
	for k := i + 1; k < len(ws) && k < i+8; k++ {
		if ws[k].text == "seams" || ws[k].text == "seam" || ws[k].text == "together" && !ws[k-1].startsDigit() && ws[k-1].text != "sts" && ws[k-1].text != "stitches" {
			return sewing
		}
	}
	return stitches
}

// likeAnother reports whether a line has a piece worked as another one:
// "Right front: as left front, reversing shaping".
func likeAnother(ws []word) bool {
	for i, w := range ws {
		next := ""
		if i+1 < len(ws) {
			next = ws[i+1].text
		}
		switch {
		case w.text == "reversing" || w.text == "reverse" && next == "shaping":
			return true
		case i < 8 && w.text == "same" && next == "as" && (i == 0 || w.clause || pieceWords[ws[i-1].text]):
			return true
		case i < 6 && w.text == "as" && (next == "for" || next == "given") && !contains(ws[:i], "is", "are"):
			return true
		case w.text == "as" && next == "established" && i < 10 && !contains(ws[:i], "is", "are"):
			return true
		}
	}
	return false
}

func contains(ws []word, any ...string) bool {
	for _, w := range ws {
		for _, s := range any {
			if w.text == s {
				return true
			}
		}
	}
	return false
}

// bracketRepeat takes "[…] across" and "*… *, rep" for an order, whatever
// stands in the bracket.
func bracketRepeat(text string, ws []word) bool {
	if strings.IndexByte("[*(†", text[0]) < 0 {
		return false
	}
	return contains(ws, "times", "twice", "across", "around", "rep", "repeat", "rpt")
}

// sameTime: "AND AT THE SAME TIME, shape neck as follows:"
func sameTime(ws []word) bool {
	return len(ws) > 4 && contains(ws[:min(len(ws), 5)], "same") && contains(ws[:min(len(ws), 5)], "time") && contains(ws[:2], "at")
}
