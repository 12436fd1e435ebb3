package publish

import (
	"io"
	"strings"

	"rowproof/check"
)

// ExplainAll writes the name and the title of every check.
func ExplainAll(w io.Writer, s Screen) error {
	t := newTerminal(w, s)
	t.line("What is checked. To read more of one, type: rowproof explain NAME")
	t.line()
	codes, names := check.Codes(), 0
	for _, c := range codes {
		names = max(names, columns(c.Code))
	}
	for _, c := range codes {
		name := c.Code
		for _, l := range wrap(c.Title, t.width-names-4) {
			t.line("  ", t.dye(strong, padTo(name, names)), "  ", l)
			name = ""
		}
	}
	return t.out.Flush()
}

// Explain writes what one check looks for and why, a pattern that fails it,
// and the same pattern put right.
func Explain(w io.Writer, c check.CodeDoc, s Screen) error {
	t := newTerminal(w, s)
	t.line(t.dye(strong, c.Code+": "+c.Title))
	t.line()
	t.paragraph(0, c.Why)
	t.example("Example", c.Example)
	t.example("Put right", c.Repair)
	return t.out.Flush()
}

func (t *terminal) example(title, pattern string) {
	if strings.TrimSpace(pattern) == "" {
		return
	}
	t.line()
	t.line(t.dye(strong, title))
	t.line()
	t.paragraph(4, strings.Trim(pattern, "\n"))
}
