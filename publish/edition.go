package publish

import (
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
	"rowproof/stitch"
)

// An edition is a pattern as it will be written: its lines with numbers, terms
// and units replaced, in the words of the designer.
type edition struct {
	design *design.Design
	size   int // index of the one size, or allSizes
	sizes  int // how many sizes the pattern has
	terms  *notation.Translator
	to     stitch.Terms
	units  notation.Unit
	lines  []*outLine

	unfinished int // the line on which a sentence that is left out goes on
}

// An outLine is one line of an edition.
type outLine struct {
	kind   design.Kind
	level  int      // of a heading
	label  string   // "Row 3 (WS):", "" for a line without one
	text   string   // the rest, or all of it, without Markdown marks
	marked string   // the whole line with its Markdown marks, for prose
	blank  bool     // whether a blank line stands before it
	cells  []string // of a row of a table, nil for another line
}

// newEdition returns the pattern as the options ask for. The error is a
// *SizeError.
func newEdition(d *design.Design, opt Options) (*edition, error) {
	size, err := sizeIndex(d, opt.Size)
	if err != nil {
		return nil, err
	}
	e := &edition{design: d, size: size, sizes: d.SizeCount(), units: opt.Units, to: d.Terms}
	if opt.Terms != stitch.UnknownTerms {
		e.to = opt.Terms
		e.terms = notation.NewTranslator(d.Terms, opt.Terms)
	}
	rows := newRowWriter(e, opt.EveryRow)
	last, table, before := 0, oneColumn{}, false
	for _, l := range d.Lines {
		out, err := rows.lines(l)
		if err != nil {
			return nil, err
		}
		gap := before || l.Number > last+1
		if isTable := isTableRow(e.words(l.Span)); isTable && len(out) == 1 {
			gap = !table.in || l.Number > last+2
			table.row(e, l, out[0], gap)
		} else {
			table.in = isTable
		}
		compact := l.Section == nil || l.Number <= l.Section.Line+1 || len(out) == 1
		for i, o := range out {
			o.blank = gap && (i == 0 || !compact)
		}
		e.lines = append(e.lines, out...)
		before = gap && len(out) == 0 // the line was left out, the blank before it stays
		last = max(l.Last, l.Number)
	}
	e.lines = append(e.lines, rows.ahead(true)...)
	e.preface(opt)
	return e, nil
}

// applies tells whether a line is for the size being written.
func (e *edition) applies(l *design.Line) bool {
	return e.size == allSizes || l.Only == nil || e.size >= len(l.Only) || l.Only[e.size]
}

// lineAsIs returns l with its words replaced, or nil when it is not for the
// size being written.
func (e *edition) lineAsIs(l *design.Line) *outLine {
	if !e.applies(l) {
		return nil
	}
	changes, none := e.changes(l)
	if none {
		return nil
	}
	out := &outLine{kind: l.Kind}
	if l.Kind == design.Heading && l.Section != nil {
		out.level = l.Section.Level
	}
	whole := l.Span
	if end := labelEnd(l); end > l.Start {
		out.label = tidy(changes.splice(e.unmarked(l), l.Start, spanAt(whole.Start, end)))
		whole.Start = end
	}
	out.text = tidy(changes.splice(e.unmarked(l), l.Start, whole))
	out.marked = e.listMark(l) + capitals(changes.splice(e.words(l.Span), l.Start, l.Span))
	if e.size != allSizes && l.Kind != design.Heading {
		e.takeMarker(out, l.Only != nil)
	}
	if out.text == "" && out.label == "" || e.terms != nil && saysNothing(out.text) && !saysNothing(l.Text) {
		return nil
	}
	return out
}

// takeMarker takes the words that say which sizes a line is for off it.
func (e *edition) takeMarker(out *outLine, only bool) {
	if out.label != "" {
		out.label = withoutMarker(out.label, only)
		return
	}
	if text := withoutMarker(out.text, only); text != out.text {
		out.text, out.marked = text, text
	}
}

// listMark returns the Markdown mark before l on its line: "- ", "1. ", "> ".
func (e *edition) listMark(l *design.Line) string {
	from := l.Start
	for from > 0 && l.Start-from < longestMark && e.design.Source[from-1] != '\n' && e.design.Source[from-1] != '\r' {
		from--
	}
	mark := e.design.Source[from:l.Start]
	if strings.Trim(mark, " \t-*+>.)0123456789") != "" {
		return ""
	}
	return mark
}

// longestMark is how many bytes a mark before a line has at most.
const longestMark = 16

// saysNothing tells whether a line of an abbreviation list has become "miss =
// miss".
func saysNothing(text string) bool {
	for _, sign := range []string{"=", ":", "–"} {
		if short, full, ok := strings.Cut(text, sign); ok {
			return strings.TrimSpace(short) == strings.Trim(full, " .")
		}
	}
	return false
}

func within(a, b diag.Span) bool { return a.Start >= b.Start && a.End <= b.End }

// labelEnd returns where the label of l ends, its side, remark and colon taken
// in; the start of l for a line without a label.
func labelEnd(l *design.Line) int {
	if l.Tree == nil || l.Tree.Label == nil || !within(l.Tree.Label.Span, l.Span) {
		return l.Start
	}
	end := l.Tree.Label.End
	rest := l.Text[end-l.Start:]
	bare := strings.TrimLeft(rest, " ")
	for strings.HasPrefix(bare, "(") {
		i := strings.IndexByte(bare[:min(len(bare), longestRemark)], ')')
		after := strings.TrimLeft(bare[i+1:], " ")
		if i < 0 || after == "" || after[0] != ':' && after[0] != '(' {
			break
		}
		bare = after
	}
	if strings.HasPrefix(bare, ":") {
		return end + len(rest) - len(bare) + 1
	}
	if rest != "" && strings.IndexByte(".),", rest[0]) >= 0 { // "Row 1. Sc", "2) Sc"
		return end + 1
	}
	return end
}

// longestRemark is how many bytes stand in the brackets of a label at most:
// "(RS)", "(inc)".
const longestRemark = 40

// gone stands for a byte of a Markdown mark that is to be left out.
const gone = '\x00'

// unmarked returns the text of l, as long as in the document, with what was a
// mark told from what was a space.
func (e *edition) unmarked(l *design.Line) string {
	source := e.words(l.Span)
	text := []byte(l.Text)
	for i := range text {
		if i < len(source) && source[i] == '\n' {
			text[i] = '\n'
			continue
		}
		if text[i] == ' ' && i < len(source) && source[i] != ' ' && source[i] != '\t' && source[i] != '|' && source[i] != '\r' {
			text[i] = gone
		}
	}
	return string(text)
}

// tidy takes out marks, empty lines and more than one space in a row.
func tidy(s string) string {
	s = capitals(s)
	lines := strings.Split(strings.ReplaceAll(s, string(gone), ""), "\n")
	kept := lines[:0]
	for _, l := range lines {
		if l = strings.Join(strings.Fields(l), " "); l != "" {
			kept = append(kept, l)
		}
	}
	return strings.Join(kept, "\n")
}

// capitals gives a capital letter to the words at which a sentence now begins.
func capitals(s string) string {
	for {
		before, after, found := strings.Cut(s, string(capital))
		if !found {
			return s
		}
		s = before + upperFirst(after)
	}
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// changes returns what is to be replaced in l. none is set when a dash says
// that the line is not for this size, or nothing in it is.
func (e *edition) changes(l *design.Line) (c edits, none bool) {
	if words, ok := e.sizesLine(l); ok {
		c.add(words.Span, words.words)
	}
	e.termsLine(&c, l)
	cut, none := e.prune(l)
	if none {
		return nil, true
	}
	c = append(c, cut...)
	if l.Tree != nil && l.Kind != design.Prose {
		none = e.treeChanges(&c, l)
	}
	if e.size != allSizes && l.Kind != design.Instruction {
		e.severalSizes(&c, l)
	}
	if l.Tree == nil || l.Read != design.ReadWhole || l.Kind == design.Prose || l.Kind == design.Note {
		e.proseChanges(&c, l.Text, l.Start)
	} else {
		e.listChanges(&c, l.Text, l.Start)
	}
	if e.terms != nil {
		e.terms.Each(l.Text, func(start, end int, words string) {
			c.add(spanAt(l.Start+start, l.Start+end), words)
		})
	}
	return c, none
}

// treeChanges replaces the numbers and lengths that the tree knows.
func (e *edition) treeChanges(c *edits, l *design.Line) (notHere bool) {
	if l.Tree.Label != nil {
		for _, r := range l.Tree.Label.Ranges {
			notHere = e.rangeChange(c, r) || notHere
		}
	}
	for _, m := range notation.Measures(l.Tree) {
		e.measureChange(c, m)
	}
	for _, n := range notation.Numbers(l.Tree) {
		words, none, ok := e.number(n)
		if ok {
			c.add(n.Span, words)
		}
		notHere = notHere || none && !c.covers(n.Span)
	}
	return notHere
}

// rangeChange replaces a range of rows as one, for its two numbers may be
// written into each other: "2-70 (2-76, 2-84)".
func (e *edition) rangeChange(c *edits, r notation.Range) (notHere bool) {
	if e.size == allSizes || r.From == nil || r.To == nil {
		return false
	}
	from, _, okFrom := e.number(r.From)
	to, none, okTo := e.number(r.To)
	if none {
		return true
	}
	if !okFrom && !okTo || r.From == r.To {
		return false
	}
	if !okFrom {
		from = e.plainNumber(r.From)
	}
	if !okTo {
		to = e.plainNumber(r.To)
	}
	span := spanAt(min(r.From.Start, r.To.Start), max(r.From.End, r.To.End))
	if from == to {
		c.add(span, from)
	} else {
		c.add(span, from+"-"+to)
	}
	return false
}
