package design

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A look is what a line's own words say about it, before notation reads it.
type look struct {
	kind   Kind
	from   int    // where the instruction starts, after "Left shoulder:" or "Size L only:"
	prefix string // the heading before a colon, "Left shoulder"; "" for none
	sure   bool   // whether the words leave no doubt, so that the section does not matter
	label  label
}

// lookAt says what a line is by its own words. first is true for the first
// line of a plain text file.
func lookAt(text string, b *block, first bool) look {
	ws := words(text)
	if len(ws) == 0 {
		return look{kind: Prose, sure: true}
	}
	if lb := rowLabel(text, ws); lb.words > 0 {
		if !lb.colon && formsPattern(ws, lb) {
			return look{kind: Note, sure: true}
		}
		return look{kind: Instruction, label: lb, sure: true}
	}
	if b.level > 0 {
		return look{kind: Heading, sure: true}
	}
	if key, from := keyOf(text); key != "" {
		if l, ok := lookAtKey(text, key, from, b); ok {
			return l
		}
	}
	if first && titleLook(text, ws, b) {
		return look{kind: Heading, sure: true}
	}
	if kind, sure := lookAtWords(text, ws, b); kind != Prose || sure {
		return look{kind: kind, sure: sure}
	}
	return look{kind: Prose}
}

// lookAtWords classifies a line that has neither a label nor a key.
func lookAtWords(text string, ws []word, b *block) (Kind, bool) {
	switch {
	case definitionLook(text, ws):
		return Definition, true
	case gaugeLook(ws) || multipleLook(ws) || termsLook(ws) || advice(ws) || countSentence(text, ws) || theseRowsForm(ws):
		return Note, true
	case ruleLook(text, ws):
		return Note, true
	case foundationLook(ws):
		return Foundation, true
	}
	switch firstOrder(text, ws) {
	case sewing:
		return Assembly, true
	case stitches:
		return Instruction, true
	}
	if materialsLook(ws) && tools(ws) && (sectionKind(lower(text)) == OtherSection || hasNumber(ws)) || measuresLook(ws) {
		return Note, true
	}
	if b.bold && len(text) < 80 && !strings.HasSuffix(strings.TrimRight(text, " "), ".") || headingLook(text, ws) {
		return Heading, true
	}
	if materialsLook(ws) {
		return Note, true
	}
	return Prose, false
}

// lookAtKey classifies "Gauge: …", "Note: …", "Left shoulder: …".
func lookAtKey(text, key string, from int, b *block) (look, bool) {
	rest := strings.Trim(text[from:], blanks)
	kind := sectionKind(key)
	if rest == "" {
		if orderAtEnd(key) {
			return look{}, false
		}
		return look{kind: Heading, sure: true}, true
	}
	switch kind {
	case NotesSection, GaugeSection, SizesSection, MaterialsSection:
		return look{kind: Note, sure: true}, true
	case StitchSection:
		return look{kind: Definition, from: from, sure: true}, true
	}
	ws, keyWords := words(text), words(key)
	start := startKeys[key]
	if !start && definitionLook(text, ws) {
		return look{kind: Definition, sure: true}, true
	}
	if gaugeLook(words(rest)) || infoKey(keyWords) && firstOrder(rest, words(rest)) == noOrder {
		return look{kind: Note, sure: true}, true
	}
	if len(keyWords) > 6 || !start && mentionsStitch(keyWords) || !start && firstOrder(key, keyWords) != noOrder && !plainKey(key) {
		return look{}, false
	}
	if b.inner >= 2 {
		return look{}, false
	}
	inner := lookAt(text[from:], &block{inner: b.inner + 1}, false)
	if inner.label.words > 0 && !mentionsStitch(words(rest)) && firstOrder(rest, words(rest)[min(inner.label.words, len(words(rest))):]) == noOrder && !contains(words(rest), "rep", "repeat", "work") {
		return look{kind: Note, sure: true}, true // "Mesh Pat: Rows 1-2."
	}
	switch inner.kind {
	case Heading, Prose:
		return look{kind: Prose, sure: false}, true
	case Definition:
		inner.kind = Instruction
	}
	inner.from += from
	inner.prefix = strings.TrimSpace(text[:colonAt(text)])
	return inner, true
}

// plainKey are keys that are verbs and still only name what follows.
func plainKey(key string) bool {
	switch key {
	case "finishing", "finish", "begin", "beginning", "to begin", "start", "to start", "to finish", "to make up", "set-up", "setup", "change color":
		return true
	}
	return false
}

// orderAtEnd reports whether a line that ends in a colon orders something all
// the same: "Work as follows:" is an instruction, "Gauge:" a heading.
func orderAtEnd(key string) bool {
	ws := words(key)
	return firstOrder(key, ws) != noOrder && !plainKey(key) && !pieceWords[ws[len(ws)-1].text]
}

// startKeys name the start of a piece before a colon.
var startKeys = map[string]bool{"foundation chain": true, "foundation ch": true, "starting chain": true, "beginning chain": true,
	"base chain": true, "chain": true, "foundation": true, "ch": true}

func infoKey(ws []word) bool {
	for _, w := range ws {
		if infoKeys[w.text] {
			return true
		}
	}
	return false
}

var infoKeys = set(`length width height weight bust chest waist hip measurements finished skill level difficulty designer
	copyright tip tips important dimensions category multiple fibre fiber color colour colors colours main contrast laundering care ease model`)

// keyOf returns the words before the first colon in lower case, when they are
// few and no sentence, and where the text after the colon starts.
func keyOf(text string) (key string, from int) {
	i := colonAt(text)
	if i <= 0 || i > 60 {
		return "", 0
	}
	if strings.ContainsAny(text[:i], ".;,*[{=") || strings.Count(text[:i], " ") > 7 {
		return "", 0
	}
	return lower(strings.Trim(text[:i], blanks)), i + 1
}

func colonAt(text string) int { return strings.IndexByte(text[:min(len(text), 80)], ':') }

// titleLook reports whether the first line of a plain text file is its title:
// set apart, no sentence, and no order.
func titleLook(text string, ws []word, b *block) bool {
	if len(text) > 100 || !b.gap || strings.HasSuffix(text, ".") || strings.HasSuffix(text, ",") {
		return false
	}
	if r, _ := utf8.DecodeRuneInString(text); unicode.IsLower(r) || strings.ContainsAny(text[len(text)-1:], "!?") && len(ws) > 4 {
		return false
	}
	head := text
	if i := strings.IndexAny(text, ",;:("); i > 0 {
		head = text[:i]
	}
	hw := words(head)
	if len(hw) == 0 || hw[0].startsDigit() || foundationLook(hw) || firstOrder(head, hw) != noOrder {
		return false
	}
	return b.gapAfter || headingLook(text, ws)
}

// headingLook reports whether a line without an order reads as a heading:
// short, no end mark, a capital first.
func headingLook(text string, ws []word) bool {
	if len(text) > 64 || len(ws) > 9 {
		return false
	}
	r, _ := utf8.DecodeRuneInString(text)
	if !unicode.IsUpper(r) && r != '"' && r != '“' {
		return ws[0].startsDigit() && capitals(text) && len(ws) < 5
	}
	switch text[len(text)-1] {
	case '.', ',', ';', '!', '?':
		return capitals(text) && len(ws) < 6 && text[len(text)-1] == '.'
	}
	if capitals(text) {
		return true
	}
	if contains(ws, "is", "are", "has", "have", "will", "should", "you", "your", "can", "was", "were") {
		return false
	}
	return true
}

// capitals reports whether all letters of text are capitals, three at least.
func capitals(text string) bool {
	n := 0
	for _, r := range text {
		if unicode.IsLower(r) {
			return false
		}
		if unicode.IsUpper(r) {
			n++
		}
	}
	return n >= 3
}

// formsPattern tells "Rows 2-5 form pat." from an order.
func formsPattern(ws []word, lb label) bool {
	for _, w := range ws[lb.words:] {
		switch w.text {
		case "form", "forms", "establish", "establishes", "set", "sets", "is", "are":
			return true
		case "and", "to":
			continue
		}
		if !w.startsDigit() {
			return false
		}
	}
	return false
}

// definitionLook reports whether a line explains a stitch or an abbreviation:
// "Cluster (cl): …", "sk = skip", "Shell - 5 dc in same st".
func definitionLook(text string, ws []word) bool {
	at, size := definitionMark(text)
	if at <= 0 {
		return false
	}
	head, rest := text[:at], strings.TrimLeft(text[at+size:], blanks)
	hw := words(head)
	if rest == "" || len(hw) == 0 || len(hw) > 7 || contains(hw, "multiple") || countLook("("+rest+")") && size > 1 || sectionKind(lower(strings.TrimSpace(head))) != OtherSection {
		return false
	}
	named := 0
	for i, w := range hw {
		switch {
		case w.startsDigit() && i == 0 && !strings.Contains(w.text, "-") || w.number() && !inBrackets(head, w.start):
			return false
		case placeWords[w.text] && w.text != "st" && w.text != "sts" && w.text != "ch" && w.text != "sp" && w.text != "front" && w.text != "back" && w.text != "blo" && w.text != "flo" && w.text != "rem" && w.text != "bet" && w.text != "over":
			return false
		case (stitchOf(w) != "" || specialNames[w.text] || longStitch(hw, i) > 0) && !(w.startsDigit() && !strings.Contains(w.text, "-")):
			named++
		case glossaryWords[w.text] && len(hw) <= 3:
			named++
		case pieceWords[w.text] && w.text != "front" && w.text != "back" && w.text != "left" && w.text != "right" && w.text != "base" && w.text != "petal" && w.text != "leaf":
			return false
		case isNoun(w.text) && w.text != "stitch" && w.text != "yarn" && w.text != "rib" && w.text != "pattern" && w.text != "rounds" && w.text != "rows" && w.text != "pat" && w.text != "patt" && w.text != "front" && w.text != "back":
			return false
		}
	}
	return named > 0 && !(len(hw) > 1 && orderVerbs[hw[0].text] && text[at] != '=' && !strings.Contains(head, "(") && !shaping[hw[0].text])
}

var shaping = set("dec inc decrease increase beg beginning yarn yo skip sk turn turning begin slip sl place pm join loop")

// definitionMark finds the colon, equals sign or spaced dash that parts a
// name from what it means.
func definitionMark(text string) (at, size int) {
	head := text[:min(len(text), 70)]
	depth := 0
	for i := 0; i < len(head); i++ {
		switch c := head[i]; {
		case c == '(' || c == '[':
			depth++
		case c == ')' || c == ']':
			depth--
		case depth > 0:
		case c == ':' || c == '=':
			return i, 1
		case c == ',' || c == ';' || c == '*' || c == '.' && i+1 < len(head) && head[i+1] == ' ':
			return 0, 0
		case c == ' ' && strings.HasPrefix(head[i:], " - "):
			return i, 3
		case c == ' ' && (strings.HasPrefix(head[i:], " – ") || strings.HasPrefix(head[i:], " — ")):
			return i, 5
		}
	}
	return 0, 0
}

func inBrackets(text string, at int) bool {
	return strings.Count(text[:at], "(") > strings.Count(text[:at], ")")
}

var (
	specialNames  = set("stitch st sts puff bobble popcorn cluster shell picot v-stitch vst spike crossed special loop stitches basketweave fan")
	glossaryWords = set(`st sts rs ws yo yrh yoh tch t-ch rep beg sk sp sps blo flo blp flp bl fl pm rem approx lp lps mc cc rnd rnds
		row inc dec tog bet bp fp foll cont pat patt ea ch-sp beg alt sm bor hk fo dnt m sl cm mm in oz g yd incl prev`)
)

// gaugeLook reports whether a line gives a gauge: stitches or rows that equal
// a length.
func gaugeLook(ws []word) bool {
	count, equals := false, false
	for i, w := range ws {
		switch {
		case i > 0 && ws[i-1].startsDigit() && gaugeUnits[w.text]:
			count = true
		case (w.text == "cm" || w.text == "in" || w.text == "inches" || w.text == "inch" || w.text == "ins") && i > 0 && ws[i-1].startsDigit() && equals:
			return count
		case w.text == "cms" || w.startsDigit() && (strings.HasSuffix(w.text, "cm") || strings.HasSuffix(w.text, "in")) && equals:
			return count
		case w.text == "gauge" || w.text == "tension":
			return true
		}
		if w.after == '=' || w.text == "measure" || w.text == "measures" || w.text == "equals" || w.text == "equal" || w.text == "per" || w.text == "over" || w.text == "to" {
			equals = true
		}
		if w.startsDigit() && (w.after == '"' || w.after == 0xe2) && count && equals && contains(ws, "rows", "rnds", "rounds") && !mentionsOrder(ws) {
			return true
		}
	}
	return false
}

func mentionsOrder(ws []word) bool { return contains(ws, "work", "until", "rep", "repeat", "cont") }

var gaugeUnits = set("sts st stitches sc hdc dc tr htr rows rnds rounds shells shell clusters cl esc motifs squares reps repeats sps blocks")

// countSentence: "You now have 54 sts.", "54 (58, 62) sts."
func countSentence(text string, ws []word) bool {
	if len(ws) > 1 && len(ws) < 8 && ws[0].startsDigit() && countLook("("+text+")") && contains(ws, "sts", "st", "stitches", "sps", "rem") {
		return true
	}
	if len(ws) > 16 || contains(ws, "work", "rep", "repeat", "until", "turn", "join", "in") {
		return false
	}
	i := 0
	for i < len(ws) && i < 5 && countLead[ws[i].text] {
		i++
	}
	if i == 0 {
		return false
	}
	return i < len(ws) && (ws[i].startsDigit() || ws[0].text == "total")
}

var countLead = set("you now have should will total we there are be is a of stitch count st sts stitches")

// theseRowsForm: "These 4 rows form Mesh Pat."
func theseRowsForm(ws []word) bool {
	for i := 1; i < len(ws) && i < 7; i++ {
		switch ws[i].text {
		case "form", "forms", "establish":
			return ws[0].text == "these" || ws[0].text == "this" || ws[0].text == "last" || ws[0].text == "the" || rowWords[ws[0].text]
		}
	}
	return false
}

// multipleLook: "Multiple of 6 sts + 1", "Chain a multiple of 8 + 2".
func multipleLook(ws []word) bool {
	for i, w := range ws {
		if w.text == "multiple" || w.text == "multiples" {
			return i < 6 && !contains(ws, "inc", "dec", "rep", "repeat")
		}
	}
	return false
}

// termsLook: "This pattern uses UK terms."
func termsLook(ws []word) bool {
	if !contains(ws, "terms", "terminology") || len(ws) > 16 {
		return false
	}
	return contains(ws, "us", "uk", "american", "british", "english", "crochet", "american/us", "u.s", "u.k")
}

// ruleLook reports whether a line states a rule and orders nothing: "The
// turning ch 1 does not count as a st."
func ruleLook(text string, ws []word) bool {
	for i, w := range ws {
		if w.text != "count" && w.text != "counts" && w.text != "counted" {
			if i > 0 && w.clause && !w.sentence && text[ws[i-1].end:w.start] != ": " {
				return false
			}
			continue
		}
		if i == 0 || i > 14 || inBrackets(text, w.start) {
			return false
		}
		next := ""
		if i+1 < len(ws) {
			next = ws[i+1].text
		}
		return next == "as" || ws[i-1].text == "not" || ws[i-1].text == "never" || ws[i-1].text == "always" || ws[i-1].text == "are" || ws[i-1].text == "is"
	}
	return false
}

// advice: "Make sure …", "Take time to check …", "Please read …".
func advice(ws []word) bool {
	if len(ws) < 3 {
		return false
	}
	switch ws[0].text + " " + ws[1].text {
	case "take time", "be sure", "make sure", "please read", "please note", "note that", "see notes", "to save", "adjust hook", "use any":
		return ws[0].text == "be" || ws[0].text == "make" || ws[0].text == "take" || !mentionsStitch(ws)
	}
	return false
}

// materialsLook: "3 skeins of worsted yarn", "5 mm hook", "Tapestry needle".
func materialsLook(ws []word) bool {
	if len(ws) > 30 {
		return false
	}
	for _, w := range ws {
		if materialWords[w.text] || w.startsDigit() && (strings.HasSuffix(w.text, "mm") || strings.HasSuffix(w.text, "yds")) {
			return true
		}
	}
	return false
}

func hasNumber(ws []word) bool {
	for _, w := range ws {
		if w.startsDigit() {
			return true
		}
	}
	return false
}

// measuresLook: "To fit bust 32 (34, 36) in", "Finished chest 36 in".
func measuresLook(ws []word) bool {
	if len(ws) < 3 || !hasNumber(ws) {
		return false
	}
	return ws[0].text == "to" && ws[1].text == "fit" || ws[0].text == "finished" || ws[0].text == "actual" || infoKeys[ws[0].text] && ws[1].startsDigit()
}

// tools reports whether a line names something to have at hand, so that it is
// no heading however short.
func tools(ws []word) bool {
	return hasNumber(ws) || contains(ws, "needle", "needles", "scissors", "markers", "stuffing", "fiberfill", "polyfill", "skein", "skeins", "hook", "worsted")
}

var materialWords = set(`hook hooks yarn skein skeins ball balls worsted acrylic cotton wool dk aran fingering yards yds metres meters
	grams needle needles scissors stuffing fiberfill polyfill markers notions gauge tension mm`)
