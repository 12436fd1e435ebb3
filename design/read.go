package design

import (
	"fmt"
	"slices"
	"strings"

	"rowproof/diag"
	"rowproof/notation"
	"rowproof/stitch"
)

// Read reads a pattern document. It never fails: what is wrong stands in
// Findings, and the rest is read all the same.
func Read(file string, source []byte) *Design {
	text, found := decode(source)
	d := &Design{
		File: file, Source: text, Findings: found,
		Stitches: stitch.Standard().Clone(),
		places:   findPlaces(text),
		live:     map[string]liveNumber{},
		byName:   map[string]*Named{},
	}
	if strings.Trim(text, blanks+"\r\n") == "" {
		d.report(diag.Error, CodeEmptyFile, diag.Span{}, "The file is empty: there is no pattern to read.", "", "")
		return d
	}
	r := &reader{d: d}
	from := r.frontMatter()
	work := d.blankComments(from)
	r.blocks = d.splitBlocks(work, from)
	r.looks = make([]look, len(r.blocks))
	first := true
	for i := range r.blocks {
		r.looks[i] = lookAt(r.blocks[i].text, &r.blocks[i], first && r.blocks[i].level == 0)
		first = false
	}
	r.findSizes()
	r.settleNumbers()
	d.settleTerms(r.blocks)
	r.findDefinitions()
	r.lines()
	d.settleSections()
	d.Seams = r.seams()
	slices.SortStableFunc(d.Findings, diag.Compare)
	return d
}

// A reader holds what is known half-way through a document.
type reader struct {
	d       *Design
	blocks  []block
	looks   []look
	front   *front
	section *Section
	only    []bool // of the "Size L only" in force; nil for all sizes
	others  []bool // the sizes the last such line left out
	defines []stitch.Kind
	trees   []*notation.Line // by block; nil for a definition
}

func (r *reader) options() notation.Options {
	return notation.Options{Terms: r.d.Terms, Stitches: r.d.Stitches, Sizes: r.d.SizeCount()}
}

// lines makes the Lines and Sections, block by block.
func (r *reader) lines() {
	d := r.d
	r.parseAll()
	d.Lines = make([]*Line, 0, len(r.blocks))
	for i := range r.blocks {
		b, lk := &r.blocks[i], &r.looks[i]
		l := &Line{
			Span: diag.Span{Start: b.start, End: b.end}, Number: b.first, Last: b.last,
			Kind: lk.kind, Text: b.text,
		}
		r.place(l, b, lk)
		r.read(l, lk, i)
		l.Section = r.section
		r.section.Lines = append(r.section.Lines, l)
		d.Lines = append(d.Lines, l)
		d.checkLive(l)
	}
	if d.Title == "" && len(d.Sections) > 0 {
		d.Title = d.Sections[0].Title
	}
}

// place opens a section where one starts and settles the kind of a line whose
// own words leave it open.
func (r *reader) place(l *Line, b *block, lk *look) {
	only, isOnly := r.onlyLine(l, lk)
	switch {
	case isOnly:
		l.Only = only
	case l.Kind == Heading:
		level := b.level
		if level == 0 {
			level = 2
			if len(r.d.Sections) == 0 {
				level = 1
			}
		}
		r.openSection(strings.TrimRight(strings.Join(strings.Fields(b.text), " "), ":"), b.first, l.Span, level)
		return
	case lk.prefix != "" && pieceHeading(lk.prefix):
		r.openSection(lk.prefix, b.first, diag.Span{Start: b.start, End: b.start + len(lk.prefix)}, 2)
	}
	if r.section == nil {
		r.openSection("", b.first, diag.Span{Start: b.start, End: b.start}, 0)
	}
	if !isOnly {
		r.leaveNotes(l, b, lk)
	}
	if (l.Kind == Instruction || l.Kind == Foundation) && len(r.d.Lines) == 0 && lk.label.words == 0 && namesWork(l.Text) {
		r.openSection(strings.Join(strings.Fields(l.Text), " "), b.first, l.Span, 1)
		l.Kind = Heading // "Puff stitch hat" names a stitch and orders none
		return
	}
	if l.Kind == Instruction && lk.label.words == 0 && !isOnly {
		switch r.section.Kind {
		case NotesSection, GaugeSection, SizesSection, MaterialsSection:
			l.Kind = Note // "Make the swatch at least 6 in square": no row is made of it
		}
	}
	if l.Kind == Prose && !lk.sure {
		switch r.section.Kind {
		case NotesSection, GaugeSection, SizesSection, MaterialsSection:
			l.Kind = Note
		}
		if b.table {
			l.Kind = Note
		}
	}
	if l.Only == nil {
		l.Only = r.only
	}
	if r.section.Kind == StitchSection && l.Kind == Instruction && lk.label.words > 0 && sectionPattern(r.section.Title) {
		l.Pattern = r.section.Title
	}
}

// leaveNotes starts a section without a heading where the working begins
// after notes, materials or special stitches: at a foundation line, or at the
// first row, when a blank line stands before it.
func (r *reader) leaveNotes(l *Line, b *block, lk *look) {
	switch r.section.Kind {
	case NotesSection, GaugeSection, SizesSection, MaterialsSection, StitchSection:
	default:
		return
	}
	if !b.gap || l.Kind != Foundation && (l.Kind != Instruction || lk.label.words == 0) || sectionPattern(r.section.Title) {
		return
	}
	title := ""
	if len(r.d.Sections) > 0 && r.d.Sections[0].Level == 1 {
		title = r.d.Sections[0].Title
	}
	r.openSection(title, b.first, diag.Span{Start: b.start, End: b.start}, 2)
	r.section.Kind = PieceSection
}

// sectionPattern reports whether a heading names one stitch pattern, whose
// rows are called by its name later on.
func sectionPattern(title string) bool {
	low := lower(title)
	if strings.Contains(low, "special") || strings.Contains(low, "abbrev") || strings.Contains(low, "stitches") {
		return false
	}
	return strings.Contains(low, "pat") || strings.HasSuffix(low, "stitch") || strings.HasSuffix(low, " st")
}

// pieceHeading reports whether the words before a colon name a piece.
func pieceHeading(prefix string) bool {
	for _, w := range words(prefix) {
		if pieceWords[w.text] {
			return true
		}
	}
	return false
}

// read has notation read the line and says how much was understood.
func (r *reader) read(l *Line, lk *look, i int) {
	if l.Kind == Definition {
		r.readDefinition(l, i)
		return
	}
	from := lk.from
	if len(l.Text) > longestLine {
		r.tooLong(l)
		return
	}
	l.Tree = r.tree(l, i, from)
	r.d.spreadLists(l)
	l.Unread = r.unread(l.Tree)
	if l.Kind == Instruction && l.Tree.Label == nil && r.section != nil && r.section.Kind == AssemblySection && !worksStitches(l.Tree) {
		l.Kind = Assembly // "Place marker in each side edge, 23 rows below the seam"
	}
	switch l.Kind {
	case Heading, Prose:
		l.Read, l.Unread = ReadWhole, ""
	case Note:
		l.Read = ReadWhole
		r.noteGauge(l, lk)
		if ws := words(l.Text[from:]); l.Unread != "" && !informs(l.Text, ws) && r.unreadOrder(l.Tree) && !understands(l.Tree) {
			l.Read = ReadPart
		} else {
			l.Unread = ""
		}
	case Assembly:
		l.Read = ReadWhole
		if l.Unread != "" && mentionsWork(l.Text[from:]) && len(l.Tree.Unread) > 0 && worksStitches(l.Tree) {
			l.Read = ReadPart
		} else {
			l.Unread = ""
		}
	default:
		l.Read = amount(l.Tree)
	}
}

// longestLine is how long a line may be that is read as an instruction, in
// bytes. The longest printed ones are a tenth of it.
const longestLine = 16 << 10

// tooLong reports a line that cannot be one instruction and leaves it unread.
func (r *reader) tooLong(l *Line) {
	start := diag.Span{Start: l.Start, End: min(l.Start+40, l.End)}
	l.Tree = &notation.Line{Span: l.Span, Steps: []notation.Step{&notation.Unknown{Span: l.Span}}, Unread: []diag.Span{l.Span}}
	l.Read, l.Unread = ReadNone, strings.Join(strings.Fields(strings.ToValidUTF8(l.Text[:start.End-l.Start], "")), " ")
	r.d.report(diag.Error, CodeLineTooLong, start,
		fmt.Sprintf("This line is %d kB long, which is no one instruction, so it was not read.", len(l.Text)>>10), "",
		"Give each row a line of its own.")
}

// mentionsWork reports whether an assembly line orders stitches too.
func mentionsWork(text string) bool {
	ws := words(text)
	for i := range ws {
		if ws[i].clause && stitchOrder(text, ws, i, false) {
			return true
		}
	}
	return false
}

// amount says how much of an instruction was understood.
func amount(t *notation.Line) ReadState {
	switch {
	case len(t.Unread) == 0:
		return ReadWhole
	case understands(t) || t.Label != nil || len(t.Counts) > 0:
		return ReadPart
	}
	return ReadNone
}

// understands reports whether any step of the line was understood.
func understands(t *notation.Line) bool {
	for _, s := range t.Steps {
		switch s.(type) {
		case *notation.Unknown, *notation.Remark:
		default:
			return true
		}
	}
	return false
}

// worksStitches reports whether a line makes stitches.
func worksStitches(t *notation.Line) bool {
	for _, s := range t.Steps {
		switch s.(type) {
		case *notation.Work, *notation.Chains, *notation.Group, *notation.Star, *notation.Evenly:
			return true
		}
	}
	return false
}

// unread joins the words that were not understood.
func (r *reader) unread(t *notation.Line) string {
	if len(t.Unread) == 0 {
		return ""
	}
	parts := make([]string, 0, len(t.Unread))
	for _, s := range t.Unread {
		if s.Start >= 0 && s.End <= len(r.d.Source) && s.Start < s.End {
			parts = append(parts, strings.Join(strings.Fields(r.d.Source[s.Start:s.End]), " "))
		}
	}
	return strings.Join(parts, " … ")
}

// unreadOrder reports whether words that were not understood order stitches.
func (r *reader) unreadOrder(t *notation.Line) bool {
	return slices.ContainsFunc(t.Unread, func(s notation.Span) bool {
		text := r.d.Source[max(0, s.Start):min(s.End, len(r.d.Source))]
		return firstOrder(text, words(text)) == stitches
	})
}

// informs reports whether a note gives measures or things to have at hand,
// which order nothing however they are put.
func informs(text string, ws []word) bool {
	key, _ := keyOf(text)
	switch sectionKind(key) {
	case GaugeSection, SizesSection, MaterialsSection:
		return true
	}
	return gaugeLook(ws) || materialsLook(ws)
}

// noteGauge keeps the gauge a note gives.
func (r *reader) noteGauge(l *Line, lk *look) {
	if !gaugeLook(words(l.Text)) {
		return
	}
	text, at := l.Text[lk.from:], l.Start+lk.from
	if key, from := keyOf(text); key != "" {
		text, at = text[from:], at+from
	}
	if g, ok := readGauge(text, at); ok {
		g.Span = l.Span
		r.d.Gauges = append(r.d.Gauges, g)
	}
}

// namesWork reports whether the first line of a document is its title: a few
// words without a number, a comma or an end, the last of them no stitch.
func namesWork(text string) bool {
	text = strings.TrimSpace(text)
	if len(text) > 48 || strings.ContainsAny(text, "0123456789.,;:*()[]{}") {
		return false
	}
	ws := strings.Fields(strings.ToLower(text))
	if len(ws) < 2 || len(ws) > 6 {
		return false
	}
	for _, w := range ws {
		switch w {
		case "in", "each", "across", "around", "next", "to", "turn", "off", "of", "same", "last", "first", "work", "join":
			return false
		}
	}
	_, stitchAtEnd := stitch.Standard().Lookup(ws[len(ws)-1], stitch.US)
	return !stitchAtEnd
}
