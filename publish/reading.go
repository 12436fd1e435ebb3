package publish

import (
	"fmt"
	"io"

	"rowproof/design"
	"rowproof/notation"
)

// Reading writes each line of the pattern with a mark for how far it was
// understood, and under an instruction how it was understood, in plain words.
func Reading(w io.Writer, d *design.Design, s Screen) error {
	t := newTerminal(w, s)
	x := newLineIndex(d.Source)
	gutter := max(3, len(fmt.Sprint(len(x.starts))))
	var n [3]int
	t.linef("%s read whole   %s read in part   %s not read", marks[design.ReadWhole], marks[design.ReadPart], marks[design.ReadNone])
	t.line()
	for _, l := range d.Lines {
		t.readLine(d, x, l, gutter)
		if l.Kind != design.Heading {
			n[l.Read]++
		}
	}
	t.line()
	t.paragraph(0, fmt.Sprintf("%s read whole, %d in part, %d not at all.",
		plural(n[design.ReadWhole], "line"), n[design.ReadPart], n[design.ReadNone]))
	return t.out.Flush()
}

var marks = [...]string{design.ReadWhole: "+", design.ReadPart: "~", design.ReadNone: "?"}

var markShades = [...]shade{design.ReadWhole: green, design.ReadPart: yellow, design.ReadNone: red}

func (t *terminal) readLine(d *design.Design, x *lineIndex, l *design.Line, gutter int) {
	mark := t.dye(markShades[l.Read], marks[l.Read])
	indent := padTo("", gutter+4)
	for n := l.Number; n <= max(l.Last, l.Number); n++ {
		for i, part := range wrap(x.line(n), t.width-gutter-4) {
			switch {
			case i > 0:
				t.line(indent, part)
			case n == l.Number:
				t.line(t.dye(faint, padLeft(fmt.Sprint(n), gutter)), " ", mark, "  ", part)
			default:
				t.line(t.dye(faint, padLeft(fmt.Sprint(n), gutter)), "    ", part)
			}
		}
	}
	for _, part := range wrap(told(d, l), t.width-gutter-7) {
		if part != "" {
			t.line(indent, "   ", t.dye(faint, part))
		}
	}
	if l.Unread != "" && l.Read != design.ReadWhole {
		for _, part := range wrap("not understood: "+l.Unread, t.width-gutter-7) {
			t.line(indent, "   ", t.dye(yellow, part))
		}
	}
}

// told says how a line was taken, and for which sizes.
func told(d *design.Design, l *design.Line) string {
	words := taken(d, l)
	if l.Only == nil {
		return words
	}
	var sizes []string
	for i, name := range d.Sizes {
		if i < len(l.Only) && l.Only[i] {
			sizes = append(sizes, name)
		}
	}
	if words == "" {
		return "(for " + listed(sizes) + " only)"
	}
	return words + " (" + listed(sizes) + " only)"
}

func taken(d *design.Design, l *design.Line) string {
	switch l.Kind {
	case design.Heading:
		return "(heading)"
	case design.Prose:
		return ""
	case design.Definition:
		return "(explains a word or a stitch)"
	case design.Assembly:
		return "(finishing)"
	case design.Note:
		return rules(d, l)
	}
	if said := Paraphrase(d, l); said != "" {
		return "= " + said
	}
	return ""
}

// rules tells the rules for other rows that a note gives.
func rules(d *design.Design, l *design.Line) string {
	if l.Tree == nil {
		return ""
	}
	s, words := speaker{d.Source}, ""
	for _, step := range l.Tree.Steps {
		rule, ok := step.(*notation.Rule)
		if !ok {
			continue
		}
		if words != "" {
			words += "; "
		}
		words += s.said(rule.Span)
	}
	if words == "" {
		return ""
	}
	return "= for other rows: " + words
}
