package design

import "strings"

// The words by which a line is told to be an order, a heading or a note. They
// are the trade's own; the stitches themselves are known by notation, which
// reads the line once its kind is known.
var (
	rowWords = set("row rows rnd rnds round rounds r rw rws")

	stitchWords = set(`ch chs chain chains sc hdc dc tr dtr trtr htr qtr esc ehdc edc etr ehtr edtr tch
		ss slst sl-st fsc fhdc fdc fhtr ftr fdtr fch fpdc bpdc fpsc bpsc fphdc bphdc fptr bptr fpdtr fphtr bphtr fpdc2tog rsc rdc
		shell shells cluster clusters cl cls puff puffs bobble bobbles popcorn popcorns pc picot picots
		vst v-st v-sts v-stitch inc dec incs decs invdec mr spike crab treble trebles bo pf`)

	// placeWords follow a stitch that is ordered: "sc in", "dc across".
	placeWords = set(`in into to across around over each next first last same through evenly loosely along
		from every on under working rem between bet twice blo flo sts st ch sp back front`)

	// orderVerbs start a clause that tells the maker to do something with
	// hook and yarn.
	orderVerbs = set(`work make repeat rep rpt join attach fasten finish end break change drop cont continue
		skip sk skp miss leave insert yo yrh yarn place pm move remove pull close slip switch crochet add begin beg beginning start
		turn dnt do decrease increase dec inc complete keep keeping carry cut mark hold pick draw repeating rejoin re-join rotate
		reverse alternate remember stop proceed sl bind form count don't never secure omit note flip tighten use
		using with create loop bring wrap fo`)

	assemblyVerbs = set(`sew seam weave whipstitch whip-stitch whip block stuff assemble embroider pin steam press
		tie glue fold mattress wash darn ease trim lay thread oversew overcast line topstitch backstitch applique wet soak gather set`)

	assemblyNouns = set(`seam seams seaming ends end end(s) tail tails side sides shoulder shoulders sleeve sleeves
		button buttons piece pieces squares motifs eyes ears arms legs head body measurements zipper ribbon pompom pom-pom tassel
		fringe lining together underarm underarms`)

	// pieceWords name parts of a garment or toy: a heading that orders nothing.
	pieceWords = set(`back front fronts left right sleeve sleeves neck neckline neckband collar cuff cuffs body yoke
		shoulder shoulders border edging trim hood pocket pockets head arm arms leg legs ear ears tail brim crown band panel motif
		square squares strap straps hem armhole armholes raglan placket button buttonband ribbing lapel bottom top lower upper
		gusset thumb mitten hand heel foot toe sole flower petal petals leaf leaves center centre base handle handles lid strip
		hat scarf shawl blanket cowl underarm waistband peplum skirt bodice side bib finishing assembly`)
)

// stitchOf returns the stitch name in w without glued numbers, "" when w is
// no stitch: "3tr" gives "tr", "sc2tog" gives "sc2tog".
func stitchOf(w word) string {
	s := w.text
	if stitchWords[s] {
		return s
	}
	if g := w.glued(); g != s && stitchWords[g] {
		return g
	}
	if strings.HasSuffix(s, "tog") && len(s) >= 6 {
		return s
	}
	if g := strings.TrimLeft(s, "0123456789"); g != s && strings.HasSuffix(g, "tog") && len(g) >= 6 {
		return g
	}
	if base, _, ok := strings.Cut(s, "-"); ok && (stitchWords[base] || base == "ch") {
		return base
	}
	return ""
}

// longStitch returns how many words from ws[i] on spell a stitch out: "single
// crochet", "half double crochet", "slip stitch", "sl st"; 0 for none.
func longStitch(ws []word, i int) int {
	at := func(k int) string {
		if i+k < len(ws) {
			return ws[i+k].glued()
		}
		return ""
	}
	switch at(0) {
	case "single", "double", "triple", "treble":
		if strings.HasPrefix(at(1), "crochet") || strings.HasPrefix(at(1), "treble") {
			return 2
		}
	case "half":
		if at(1) == "double" || at(1) == "treble" {
			if strings.HasPrefix(at(2), "crochet") {
				return 3
			}
			return 2
		}
	case "slip", "sl":
		if strings.HasPrefix(at(1), "st") {
			return 2
		}
	case "magic", "foundation", "extended", "standing", "reverse", "puff", "popcorn", "crab", "shell", "bobble", "v":
		if stitchWords[at(1)] {
			return 2
		}
		if at(1) == "ring" || at(1) == "circle" || at(1) == "loop" || at(1) == "stitch" || at(1) == "st" {
			return 2
		}
		if n := longStitch(ws, i+1); n > 0 {
			return n + 1
		}
	}
	return 0
}

// label says what row label a line starts with.
type label struct {
	words int // words it takes; 0 for none
	colon bool
	bare  bool // "7." with no word for row
}

// rowLabel finds the row label at the start of a line: "Row 3", "Rnds 5-8",
// "R7", "1st row", "Next row", "Dec row", "Foundation rnd".
func rowLabel(text string, ws []word) label {
	if len(ws) == 0 {
		return label{}
	}
	colon := func(n int) bool {
		return n <= len(ws) && strings.IndexByte(text[ws[n-1].end:min(len(text), ws[n-1].end+30)], ':') >= 0
	}
	w := ws[0]
	switch {
	case rowWords[w.text] && len(ws) > 1 && ws[1].startsDigit() && w.after == text[ws[1].start]:
		return label{words: 2, colon: colon(2)}
	case gluedRow(w.text):
		return label{words: 1, colon: colon(1)}
	case ordinal(w.text) && len(ws) > 1 && rowWords[ws[1].text]:
		return label{words: 2, colon: colon(2)}
	case ordinal(w.text) && len(ws) > 3 && rowWords[ws[3].text] && ordinal(ws[2].text):
		return label{words: 4, colon: colon(4)}
	case bareLabel(text):
		return label{words: 1, colon: true, bare: true}
	}
	for i := 0; i < len(ws) && i < 5; i++ {
		if i > 0 && (rowWords[ws[i].text] && len(ws[i].text) > 2) {
			return namedRow(text, ws, i, colon(i+1))
		}
		if i > 0 && ws[i].sentence || ws[i].startsDigit() && i > 0 && ws[0].text != "next" {
			break
		}
	}
	return label{}
}

// namedRow takes "Next row", "Dec row", "Rib rnd" for a label when a colon or
// a side follows, or the name is one that only labels have.
func namedRow(text string, ws []word, i int, colon bool) label {
	end := ws[i].end
	rest := strings.TrimLeft(text[end:], " ")
	if i+1 < len(ws) && ws[i+1].startsDigit() && ws[i].after == text[ws[i+1].start] {
		rest = strings.TrimLeft(text[ws[i+1].end:], " ")
		i++
	}
	follows := rest != "" && (rest[0] == ':' || rest[0] == '-' || strings.HasPrefix(rest, "–") || strings.HasPrefix(rest, "—") || rest[0] == '.' && len(rest) > 2) ||
		strings.HasPrefix(rest, "(") && colon || strings.HasPrefix(lower(rest[:min(len(rest), 3)]), "(rs") || strings.HasPrefix(lower(rest[:min(len(rest), 3)]), "(ws")
	switch first := ws[0].text; {
	case orderVerbs[first] && first != "dec" && first != "inc" && first != "decrease" && first != "increase" && first != "beginning" && first != "turn":
		return label{}
	case first == "next" || first == "following" || first == "foundation" || first == "set-up" || first == "setup":
		if rest == "" {
			return label{}
		}
		return label{words: i + 1, colon: colon}
	case follows && ws[0].text != "this" && ws[0].text != "these" && ws[0].text != "the" && ws[0].text != "each" && ws[0].text != "every":
		return label{words: i + 1, colon: true}
	}
	return label{}
}

// gluedRow reports whether s is "r12", "row5", "rnd3".
func gluedRow(s string) bool {
	if a, b, two := strings.Cut(s, "-"); two && len(b) > 1 && b[0] == 'r' {
		return gluedRow(a) && gluedRow(b)
	}
	i := len(s)
	for i > 0 && (asciiDigit(s[i-1]) || s[i-1] == '-' && i < len(s)) {
		i--
	}
	return i < len(s) && rowWords[strings.TrimSuffix(s[:i], "-")] && asciiDigit(s[len(s)-1])
}

func ordinal(s string) bool {
	n := 0
	for n < len(s) && asciiDigit(s[n]) {
		n++
	}
	if n == 0 {
		return ordinalWords[s]
	}
	return s[n:] == "st" || s[n:] == "nd" || s[n:] == "rd" || s[n:] == "th"
}

var ordinalWords = set("first second third fourth fifth sixth seventh eighth ninth tenth")

// bareLabel reports whether text starts with a row number and nothing else
// to name the row, "7. dc around", and goes on with stitches.
func bareLabel(text string) bool {
	n := 0
	for n < len(text) && n < 4 && asciiDigit(text[n]) {
		n++
	}
	if n == 0 || n > 3 {
		return false
	}
	rest := text[n:]
	if len(rest) > 1 && rest[0] == '\\' {
		rest = rest[1:]
	}
	if len(rest) < 3 || strings.IndexByte(".:)", rest[0]) < 0 || rest[0] == '.' && asciiDigit(rest[1]) {
		return false
	}
	rest = rest[1:]
	ws := words(rest[:min(len(rest), 120)])
	if len(ws) == 0 || rowLabel(rest, ws).words > 0 {
		return false
	}
	if stitchOf(ws[0]) != "" || longStitch(ws, 0) > 0 {
		return true
	}
	if ws[0].startsDigit() && len(ws) > 1 && (stitchOf(ws[1]) != "" || longStitch(ws, 1) > 0) {
		return true
	}
	return (strings.IndexByte("*([", strings.TrimLeft(rest, " ")[0]) >= 0 || orderVerbs[ws[0].text]) && mentionsStitch(ws)
}

func mentionsStitch(ws []word) bool {
	for i := range ws {
		if stitchOf(ws[i]) != "" || longStitch(ws, i) > 0 {
			return true
		}
	}
	return false
}

// labelLook reports whether a line starts as a labelled row, so that it never
// goes on with the line before.
func labelLook(text string) bool {
	text = strings.TrimLeft(text, "*_# ")
	head := text[:min(len(text), 60)]
	return rowLabel(head, words(head)).words > 0
}
