package design

import (
	"strings"

	"rowproof/stitch"
)

// findDefinitions reads the pattern's own stitches into its dictionary before
// any instruction is read, so that a stitch may be explained below its use.
func (r *reader) findDefinitions() {
	r.defines = make([]stitch.Kind, len(r.blocks))
	inStitches := false
	for i := range r.blocks {
		b, lk := &r.blocks[i], &r.looks[i]
		switch {
		case lk.kind == Heading:
			inStitches = sectionKind(lower(b.text)) == StitchSection && !sectionPattern(b.text)
		case lk.kind == Definition:
			r.define(i)
		case lk.kind == Foundation || lk.kind == Assembly || lk.label.words > 0:
			inStitches = false
		case inStitches && !b.gap && ownName(lk) && namesThing(b.text):
			lk.kind = Definition
			r.define(i)
		}
	}
}

// ownName reports whether a line under "Special stitches" may name a stitch
// nobody knows: it is no order, or one after a name that is no piece's.
func ownName(lk *look) bool {
	switch lk.kind {
	case Prose:
		return true
	case Instruction:
		return lk.prefix != "" && !pieceHeading(lk.prefix) && !startKeys[lower(lk.prefix)]
	}
	return false
}

// namesThing reports whether a line under "Special stitches" has a name
// before a colon or dash.
func namesThing(text string) bool {
	at, _ := definitionMark(text)
	return at > 0 && at < 50
}

// define reads one definition and adds its stitch.
func (r *reader) define(i int) {
	d, b, lk := r.d, &r.blocks[i], &r.looks[i]
	text, at := b.text[lk.from:], b.start+lk.from
	if d.Stitches.IsGlossary(text, d.Terms) {
		return
	}
	s, found := d.Stitches.ReadDefinition(text, at, d.Terms)
	name := ""
	if mark, _ := definitionMark(text); mark > 0 {
		name = strings.Trim(text[:mark], blanks)
		if open := strings.IndexByte(name, '('); open > 0 {
			name = strings.TrimRight(name[:open], blanks)
		}
	}
	for _, f := range found {
		if f.Row == "" {
			f.Row = name
		}
		d.Findings = append(d.Findings, f)
	}
	if s != nil {
		r.defines[i] = d.Stitches.Add(s)
	}
}

// readDefinition says how much of a definition was understood.
func (r *reader) readDefinition(l *Line, i int) {
	lk := &r.looks[i]
	l.Defines = r.defines[i]
	l.Read = ReadWhole
	if l.Defines == 0 && !r.d.changes(l.Text) && !r.d.Stitches.IsGlossary(l.Text[lk.from:], r.d.Terms) && opensWork(l.Text) && !abbreviations(l.Text) {
		l.Read = ReadPart
		l.Unread = strings.Join(strings.Fields(l.Text), " ")
	}
}

// changes reports whether a definition tells what inc or dec stands for. The
// check holds it against what they are.
func (d *Design) changes(text string) bool {
	at, _ := definitionMark(text)
	if at <= 0 {
		return false
	}
	kind, _ := d.Stitches.Lookup(strings.Trim(text[:at], " \t-*•"), d.Terms)
	return kind == stitch.Increase || kind == stitch.Decrease
}

// opensWork reports whether a definition tells how a stitch is made, and is
// no mere list of words.
func opensWork(text string) bool {
	at, size := definitionMark(text)
	if at <= 0 {
		return false
	}
	rest := text[at+size:]
	return firstOrder(rest, words(rest)) != noOrder
}

// abbreviations reports whether a line is a list of abbreviations.
func abbreviations(text string) bool {
	key, _ := keyOf(text)
	return strings.HasPrefix(key, "abbrev")
}
