package publish

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"rowproof/design"
)

// Text writes the pattern as plain text, without front matter and Markdown
// marks. Read again as a stranger's pattern it gives the same fabric. The
// error is a *SizeError when the options ask for what cannot be written, or
// one of w's.
func Text(w io.Writer, d *design.Design, opt Options) error {
	e, err := newEdition(d, opt)
	if err != nil {
		return err
	}
	out := bufio.NewWriter(w)
	for i := 0; i < len(e.lines); i++ {
		l := e.lines[i]
		if i > 0 && (l.blank || l.kind == design.Heading) {
			out.WriteByte('\n')
		}
		if l.cells != nil {
			i += e.writeTable(out, i) - 1
			continue
		}
		out.WriteString(l.plain())
		out.WriteByte('\n')
		if l.kind == design.Heading && l.level == 1 && i+1 < len(e.lines) && !e.lines[i+1].blank && e.lines[i+1].kind != design.Heading {
			out.WriteByte('\n')
		}
	}
	if err := out.Flush(); err != nil {
		return fmt.Errorf("could not write the pattern: %w", err)
	}
	return nil
}

// plain returns the line as plain text.
func (l *outLine) plain() string {
	if l.label == "" {
		return l.text
	}
	return strings.TrimSpace(l.label + " " + l.text)
}

// writeTable writes the table that begins at line i, and returns how many
// lines it had.
func (e *edition) writeTable(out *bufio.Writer, i int) int {
	var rows [][]string
	n := 0
	for ; i+n < len(e.lines) && e.lines[i+n].cells != nil && (n == 0 || !e.lines[i+n].blank); n++ {
		if cells := e.lines[i+n].cells; !isRuler(cells) {
			rows = append(rows, cells)
		}
	}
	for _, l := range plainTable(rows) {
		out.WriteString(l)
		out.WriteByte('\n')
	}
	return n
}
