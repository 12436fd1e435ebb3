package publish

import (
	"fmt"
	"strings"

	"rowproof/diag"
)

// finding writes one finding: what is wrong and its code, the place with marks
// under it, the counting, and what could be typed instead.
func (t *terminal) finding(file string, x *lineIndex, f *diag.Finding) {
	how := shadeOf(f.Severity)
	t.title(f, how)
	t.line()
	gutter := gutterFor(x, f)
	if !f.Span.IsZero() {
		t.line("  ", t.dye(faint, where(file, x, f)))
		t.excerpt(x, f.Span, how, gutter)
		t.also(x, f, gutter)
		t.line()
	} else {
		t.paragraph(2, where(file, x, f))
		t.line()
	}
	if detail := strings.TrimRight(f.Detail, "\n "); detail != "" {
		t.paragraph(2, detail)
		t.line()
	}
	t.repair(f.Repair)
}

func shadeOf(s diag.Severity) shade {
	switch s {
	case diag.Error:
		return red
	case diag.Warning:
		return yellow
	}
	return blue
}

// title writes the message, with the severity and the code at the right end of
// its first line.
func (t *terminal) title(f *diag.Finding, how shade) {
	tag := f.Severity.String() + ": " + printable(string(f.Code))
	lines := wrap(f.Message, max(t.width-columns(tag)-2, t.width/2))
	first := lines[0]
	if columns(first)+2+columns(tag) <= t.width {
		t.line(t.dye(strong, padTo(first, t.width-columns(tag))), t.dye(how, tag))
	} else {
		t.line(t.dye(how, padLeft(tag, t.width)))
		t.line(t.dye(strong, first))
	}
	for _, l := range lines[1:] {
		t.line(t.dye(strong, l))
	}
}

// where names the place of a finding: file, line, piece and row.
func where(file string, x *lineIndex, f *diag.Finding) string {
	var parts []string
	parts = append(parts, fileName(file))
	if !f.Span.IsZero() {
		parts = append(parts, fmt.Sprintf("line %d", x.place(x.trimmed(f.Span)).Line))
	}
	if f.Piece != "" {
		parts = append(parts, printable(f.Piece))
	}
	return strings.Join(parts, ", ")
}

// fileName returns the name of a file as told to a reader.
func fileName(file string) string {
	if file == "-" || file == "" {
		return "the pattern"
	}
	return printable(file)
}

// gutterFor returns how many columns the line numbers of f need.
func gutterFor(x *lineIndex, f *diag.Finding) int {
	most := x.number(f.Span.End)
	for _, s := range f.Also {
		most = max(most, x.number(s.End))
	}
	return max(3, len(fmt.Sprint(most)))
}

// maxAlso is how many other places are shown under a finding.
const maxAlso = 2

func (t *terminal) also(x *lineIndex, f *diag.Finding, gutter int) {
	for i, s := range f.Also {
		if s.IsZero() {
			continue
		}
		if i == maxAlso {
			t.line("  ", t.dye(faint, fmt.Sprintf("and %s more", plural(len(f.Also)-maxAlso, "place"))))
			return
		}
		t.line("  ", t.dye(faint, padLeft("", gutter)+" |"))
		t.line("  ", t.dye(faint, fmt.Sprintf("compare line %d", x.place(x.trimmed(s)).Line)))
		t.excerpt(x, s, shadeOf(f.Severity), gutter)
	}
}

// repair writes the offers, a line each.
func (t *terminal) repair(s string) {
	var offers []string
	for _, l := range strings.Split(s, "\n") {
		if l = strings.TrimSpace(l); l != "" {
			offers = append(offers, strings.TrimPrefix(l, "- "))
		}
	}
	switch len(offers) {
	case 0:
		return
	case 1:
		t.line("  You could change this:")
	default:
		t.line("  You could change one of these:")
	}
	for _, o := range offers {
		for i, l := range wrap(o, t.width-6) {
			t.line([]string{"    - ", "      "}[min(i, 1)], l)
		}
	}
	t.line()
}
