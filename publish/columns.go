package publish

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// tabStop is how far apart tab stops are on the printed page.
const tabStop = 4

// wide lists the runes that take two columns on a terminal: East Asian wide
// letters and pictures. Source: Unicode Standard Annex 11, "Wide", from memory.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115f, Stride: 1}, {Lo: 0x231a, Hi: 0x231b, Stride: 1},
		{Lo: 0x23e9, Hi: 0x23ec, Stride: 1}, {Lo: 0x25fd, Hi: 0x25fe, Stride: 1},
		{Lo: 0x2614, Hi: 0x2615, Stride: 1}, {Lo: 0x2648, Hi: 0x2653, Stride: 1},
		{Lo: 0x26aa, Hi: 0x26ab, Stride: 1}, {Lo: 0x2705, Hi: 0x2705, Stride: 1},
		{Lo: 0x2728, Hi: 0x2728, Stride: 1}, {Lo: 0x274c, Hi: 0x274c, Stride: 1},
		{Lo: 0x2e80, Hi: 0x303e, Stride: 1}, {Lo: 0x3041, Hi: 0xa4cf, Stride: 1},
		{Lo: 0xa960, Hi: 0xa97c, Stride: 1}, {Lo: 0xac00, Hi: 0xd7a3, Stride: 1},
		{Lo: 0xf900, Hi: 0xfaff, Stride: 1}, {Lo: 0xfe30, Hi: 0xfe6f, Stride: 1},
		{Lo: 0xff00, Hi: 0xff60, Stride: 1}, {Lo: 0xffe0, Hi: 0xffe6, Stride: 1},
	},
	R32: []unicode.Range32{
		{Lo: 0x1f300, Hi: 0x1f64f, Stride: 1}, {Lo: 0x1f680, Hi: 0x1f6ff, Stride: 1},
		{Lo: 0x1f900, Hi: 0x1f9ff, Stride: 1}, {Lo: 0x20000, Hi: 0x3fffd, Stride: 1},
	},
}

// cell is one rune as it stands on a terminal.
type cell struct {
	text  string // what is printed
	width int    // columns it takes
	size  int    // bytes it takes in the source
}

// nextCell reads the first rune of s, standing at the given column. Tabs
// become spaces; what could steer a terminal or turn the reading direction is
// shown as a mark, so that no pattern can do anything to the screen.
func nextCell(s string, column int) cell {
	r, size := utf8.DecodeRuneInString(s)
	switch {
	case r == '\t':
		n := tabStop - column%tabStop
		return cell{strings.Repeat(" ", n), n, size}
	case r == '\u00a0':
		return cell{" ", 1, size}
	case r == utf8.RuneError, unicode.IsControl(r), r == '\u2028', r == '\u2029':
		return cell{"\ufffd", 1, size}
	case r == '\u00ad', r == '\ufeff', r == '\u200b', r == '\u200c', r == '\u200d':
		return cell{"", 0, size}
	case unicode.Is(unicode.Cf, r):
		return cell{"\ufffd", 1, size}
	case unicode.Is(unicode.Mn, r), unicode.Is(unicode.Me, r):
		return cell{s[:size], 0, size}
	case unicode.Is(wide, r):
		return cell{s[:size], 2, size}
	}
	return cell{s[:size], 1, size}
}

// printable returns s on one line, safe to send to a terminal.
func printable(s string) string {
	var b strings.Builder
	for column := 0; s != ""; {
		c := nextCell(s, column)
		b.WriteString(c.text)
		column += c.width
		s = s[c.size:]
	}
	return b.String()
}

// columns returns how many columns s takes.
func columns(s string) int {
	n := 0
	for s != "" {
		c := nextCell(s, n)
		n += c.width
		s = s[c.size:]
	}
	return n
}

// padTo adds spaces to the right of s until it takes n columns.
func padTo(s string, n int) string { return s + strings.Repeat(" ", max(0, n-columns(s))) }

// padLeft adds spaces to the left of s until it takes n columns.
func padLeft(s string, n int) string { return strings.Repeat(" ", max(0, n-columns(s))) + s }

// wrap breaks s into lines of at most width columns, at spaces where there are
// any, and keeps the spaces at its start on every line.
func wrap(s string, width int) []string {
	s = strings.TrimRight(printable(s), " ")
	body := strings.TrimLeft(s, " ")
	indent := s[:len(s)-len(body)]
	room := max(8, width-len(indent))
	if columns(s) <= width || body == "" {
		return []string{s}
	}
	var lines []string
	line, used := strings.Builder{}, 0
	flush := func() {
		if used > 0 {
			lines = append(lines, indent+strings.TrimRight(line.String(), " "))
			line.Reset()
			used = 0
		}
	}
	for _, word := range strings.SplitAfter(body, " ") {
		bare := strings.TrimRight(word, " ")
		if used+columns(bare) > room {
			flush()
		}
		for head := headOf(bare, room); len(head) < len(bare); head = headOf(bare, room) {
			lines = append(lines, indent+head)
			bare, word = bare[len(head):], word[len(head):]
		}
		line.WriteString(word)
		used += columns(word)
	}
	flush()
	return lines
}

// headOf returns the longest start of s that fits in room columns, one rune at
// least.
func headOf(s string, room int) string {
	used, end := 0, 0
	for end < len(s) {
		c := nextCell(s[end:], used)
		if end > 0 && used+c.width > room {
			break
		}
		used += c.width
		end += c.size
	}
	return s[:end]
}
