package publish

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// A Screen is what the words are written for: how wide, and whether it shows
// colour. All is told in words too, so nothing is lost without colour.
type Screen struct {
	Width  int  // in columns; 0 is 80
	Colour bool // whether colour and bold may be used
}

// A shade is the few ways words can stand out.
type shade string

const (
	plain  shade = ""
	strong shade = "\x1b[1m"
	faint  shade = "\x1b[2m"
	red    shade = "\x1b[1;31m"
	yellow shade = "\x1b[1;33m"
	green  shade = "\x1b[32m"
	blue   shade = "\x1b[1;36m"
)

// terminal writes lines for a Screen.
type terminal struct {
	out    *bufio.Writer
	width  int
	colour bool
}

// The narrowest and the widest text that reads well.
const (
	narrowest = 40
	widest    = 110
)

func newTerminal(w io.Writer, s Screen) *terminal {
	width := s.Width
	if width == 0 {
		width = 80
	}
	return &terminal{out: bufio.NewWriter(w), width: min(max(width, narrowest), widest), colour: s.Colour}
}

// dye returns s in the shade given, if the screen shows colour.
func (t *terminal) dye(how shade, s string) string {
	if !t.colour || how == plain || s == "" {
		return s
	}
	return string(how) + s + "\x1b[0m"
}

func (t *terminal) line(parts ...string) {
	t.out.WriteString(strings.TrimRight(strings.Join(parts, ""), " "))
	t.out.WriteByte('\n')
}

func (t *terminal) linef(format string, args ...any) { t.line(fmt.Sprintf(format, args...)) }

// paragraph writes s wrapped to the width, each of its lines indented.
func (t *terminal) paragraph(indent int, s string) {
	for _, l := range strings.Split(strings.TrimRight(s, "\n"), "\n") {
		for _, part := range wrap(strings.Repeat(" ", indent)+l, t.width) {
			t.line(part)
		}
	}
}

// rule writes a line across the page.
func (t *terminal) rule() { t.line(t.dye(faint, strings.Repeat("─", t.width))) }
