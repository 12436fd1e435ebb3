package design

import (
	"strings"
	"unicode/utf8"
)

// A block is one instruction, heading or other line of text before anyone
// knows which: a physical line, or several that were wrapped.
type block struct {
	start, end  int // in the source, without blanks, heading marks or list marks
	first, last int // physical lines, from 1
	level       int // of a Markdown heading, 1 to 6; 0 for no heading
	bold        bool
	table, list bool
	inner       int    // how many keys, "Left side:", stand before it
	gap         bool   // a blank line, or nothing, stands before
	gapAfter    bool   // a blank line, or nothing, stands after
	text        string // source[start:end] with Markdown marks blanked
}

// splitBlocks cuts the body into blocks. work is the source with comments
// blanked; from is where the front matter ends.
func (d *Design) splitBlocks(work string, from int) []block {
	var list []block
	gap, fenced := true, false
	for i := range d.places.starts {
		if d.places.starts[i] < from {
			continue
		}
		b := block{start: d.places.starts[i], end: d.places.ends[i], first: i + 1, last: i + 1, gap: gap}
		b.trim(work)
		switch text := work[b.start:b.end]; {
		case text == "":
			gap = true
			continue
		case strings.HasPrefix(text, "```") || strings.HasPrefix(text, "~~~"):
			fenced, gap = !fenced, true
			continue
		case !fenced && ruler(text):
			if !gap && len(list) > 0 && underlined(text, list[len(list)-1]) {
				list[len(list)-1].level = 1 + strings.Count(text[:1], "-")
			}
			gap = true
			continue
		}
		if !fenced {
			b.strip(work)
		}
		if b.start == b.end || b.table && ruler(strings.Trim(work[b.start:b.end], "|: ")) {
			continue
		}
		list = append(list, b)
		gap = false
	}
	width := wrapWidth(list)
	list = joinWrapped(work, list, width)
	for i := range list {
		list[i].text = blankMarks(work[list[i].start:list[i].end], &list[i])
		list[i].gapAfter = i+1 == len(list) || list[i+1].gap || list[i+1].level > 0
	}
	return d.splitLabels(list)
}

// trim moves start and end past blanks.
func (b *block) trim(work string) {
	text := work[b.start:b.end]
	left := strings.TrimLeft(text, blanks)
	b.start += len(text) - len(left)
	b.end = b.start + len(strings.TrimRight(left, blanks))
}

const blanks = " \t\f\v\u00a0\u2003\u2009\u200b\ufeff"

// ruler reports whether text is a line of three or more of - = _ * or dots
// that only parts the page.
func ruler(text string) bool {
	if len(text) < 3 || strings.IndexByte("-=_*~.•", text[0]) < 0 {
		return false
	}
	marks := 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case text[0]:
			marks++
		case ' ', '|', ':', '-':
		default:
			return false
		}
	}
	return marks >= 3
}

// underlined reports whether a ruler makes the line above it a heading.
func underlined(text string, above block) bool {
	return (text[0] == '=' || text[0] == '-') && !above.table && !above.list && above.level == 0 &&
		above.end-above.start <= 60 && strings.Count(text, text[:1]) == len(text)
}

// strip takes quote marks, heading marks and list marks off the block.
func (b *block) strip(work string) {
	for b.start < b.end && work[b.start] == '>' {
		b.start++
		b.trim(work)
	}
	text := work[b.start:b.end]
	if n := len(text) - len(strings.TrimLeft(text, "#")); n > 0 && n <= 6 && n < len(text) && text[n] == ' ' {
		b.level = n
		b.start += n
		b.end = b.start + len(strings.TrimRight(strings.TrimRight(work[b.start:b.end], " "), "#"))
		b.trim(work)
		return
	}
	if text != "" && text[0] == '|' && strings.Count(text, "|") > 1 {
		b.table = true
		return
	}
	if n := listMark(text); n > 0 {
		b.list = true
		b.start += n
		b.trim(work)
	}
}

// listMark returns how many bytes the list mark at the start of text takes:
// "- ", "• ", "1. " before words that are no stitch order. A star is a list
// mark only where no repeat goes back to it.
func listMark(text string) int {
	r, size := utf8.DecodeRuneInString(text)
	switch r {
	case '•', '◦', '▪', '●', '○', '·', '☐', '✓', '‣':
		return size
	case '-', '+', '–', '—':
		if rest := text[size:]; strings.HasPrefix(rest, " ") && !countLook(text) {
			if box := strings.TrimLeft(rest, " "); strings.HasPrefix(box, "[ ] ") || strings.HasPrefix(box, "[x] ") {
				return len(text) - len(box) + 4
			}
			return size
		}
	case '*':
		if strings.HasPrefix(text, "* ") && (labelLook(text[2:]) || !strings.Contains(text[2:], "*") && !repeats(text)) {
			return 1
		}
	}
	n := 0
	for n < len(text) && n < 3 && asciiDigit(text[n]) {
		n++
	}
	if n > 0 && n+1 < len(text) && (text[n] == '.' || text[n] == ')') && text[n+1] == ' ' && !bareLabel(text) {
		return n + 1
	}
	return 0
}

// repeats reports whether text speaks of working something again.
func repeats(text string) bool {
	for _, w := range words(text) {
		switch w.text {
		case "rep", "repeat", "rpt", "reps", "repeating", "times", "twice":
			return true
		}
	}
	return false
}

// wrapWidth returns the width the document seems to be wrapped at: its
// longest line, or 0 when lines are so long that nothing was wrapped.
func wrapWidth(list []block) int {
	const widest = 110
	width := 0
	for _, b := range list {
		width = max(width, b.end-b.start)
		if width > widest {
			return 0
		}
	}
	return width
}

// joinWrapped puts the parts of wrapped instructions together.
func joinWrapped(work string, list []block, width int) []block {
	out := list[:0]
	for _, b := range list {
		if n := len(out); n > 0 && goesOn(work, out[n-1], b, width) {
			out[n-1].end, out[n-1].last = b.end, b.last
			continue
		}
		out = append(out, b)
	}
	return out
}

// goesOn reports whether b goes on with the sentence of a.
func goesOn(work string, a, b block, width int) bool {
	if b.gap || b.list || b.table || a.table || a.level > 0 || b.level > 0 {
		return false
	}
	next := work[b.start:b.end]
	if countLook(next) {
		return true
	}
	lastLine := strings.LastIndexAny(work[a.start:a.end], "\r\n") + 1
	prev := work[a.start+lastLine : a.end]
	if prev == "" || labelLook(next) {
		return false
	}
	r, _ := utf8.DecodeRuneInString(next)
	small := r >= 'a' && r <= 'z' || width > 0 && len(prev) >= 30 && (r == '*' || r == '(' || r == '[' || r >= '0' && r <= '9')
	long := width > 0 && len(prev) >= 40 && len(prev)+1+firstWord(next)+12 > width
	first := next[:firstWord(next)]
	switch end := prev[len(prev)-1]; {
	case continuers[strings.TrimRight(first, ".,;)")] && strings.IndexByte(".:!?)]}", end) < 0 && len(prev) >= 25:
		return true
	case strings.IndexByte(".:!?", end) >= 0:
		return false
	case end == ',' || end == ';' || end == '(' || end == '[':
		return small || long
	case strings.IndexByte(")]}", end) >= 0:
		return r >= 'a' && r <= 'z' && long
	case openEnd(prev):
		return small || long
	}
	return small && (long && r != '*' || len(prev) >= 40 && r >= 'a' && r <= 'z' && openBracket(prev))
}

func firstWord(text string) int {
	if i := strings.IndexByte(text, ' '); i >= 0 {
		return i
	}
	return len(text)
}

// continuers are words that no instruction starts with.
var continuers = set("in into of across around and or st sts stitch stitches times time more over each hook sp sps rem yarn loop loops")

// openEnds are words that no line ends with.
var openEnds = set("in into of the a an and to from with each next first last same rep repeat over around-the for or on at by ch-")

func openEnd(text string) bool {
	i := strings.LastIndexByte(text, ' ')
	return i > 0 && openEnds[lower(text[i+1:])]
}

func openBracket(text string) bool {
	return strings.Count(text, "(") > strings.Count(text, ")") || strings.Count(text, "[") > strings.Count(text, "]")
}

// countLook reports whether text is a stated count and nothing else: "(24
// sc)", "[30 sts]", "— 24 dc".
func countLook(text string) bool {
	if len(text) > 60 {
		return false
	}
	r, size := utf8.DecodeRuneInString(text)
	if strings.ContainsRune("([{–—-", r) && size < len(text) {
		ws := words(text)
		if len(ws) < 2 || !ws[0].startsDigit() {
			return false
		}
		for _, w := range ws {
			if !w.number() && !countWords[w.text] && stitchOf(w) == "" {
				return false
			}
		}
		return true
	}
	return false
}

var countWords = set("st sts stitches stitch sps sp spaces rem remain total lps loops and shells chs")

// splitLabels parts a line that holds several labelled rows: "Row 1: ….
// Row 2: …" is two instructions.
func (d *Design) splitLabels(list []block) []block {
	extra := 0
	for _, b := range list {
		if len(b.text) > 30 {
			extra += len(labelStarts(b.text))
		}
	}
	if extra == 0 {
		return list
	}
	out := make([]block, 0, len(list)+extra)
	for _, b := range list {
		rest := b
		for _, at := range labelStarts(b.text) {
			cut := b.start + at
			part := rest
			part.text = strings.TrimRight(rest.text[:cut-rest.start], " \n\r\t")
			part.end, part.gapAfter = part.start+len(part.text), false
			part.last, _ = d.Position(part.end)
			rest.text, rest.start, rest.gap = rest.text[cut-rest.start:], cut, false
			rest.first, _ = d.Position(cut)
			out = append(out, part)
		}
		rest.last = b.last
		out = append(out, rest)
	}
	return out
}

// labelStarts returns where a further row label with a colon starts a new
// sentence inside text.
func labelStarts(text string) []int {
	if strings.Count(text, ":") < 1 {
		return nil
	}
	var at []int
	ws := words(text)
	for i := 1; i+1 < len(ws); i++ {
		w := ws[i]
		if !rowWords[w.text] || text[w.start] == w.text[0] || !ws[i+1].startsDigit() {
			continue
		}
		before := strings.TrimRight(text[:w.start], " ")
		if before == "" || strings.IndexByte(".)]!", before[len(before)-1]) < 0 {
			continue
		}
		if labelColon(text[ws[i+1].start:]) {
			at = append(at, w.start)
		}
	}
	return at
}

// labelColon reports whether numbers, a side in brackets and a colon follow.
func labelColon(text string) bool {
	i := strings.IndexByte(text[:min(len(text), 40)], ':')
	if i < 0 {
		return false
	}
	for _, w := range words(text[:i]) {
		if !w.number() && w.text != "rs" && w.text != "ws" && w.text != "and" && w.text != "to" && !strings.Contains(w.text, "-") {
			return false
		}
	}
	return true
}
