package publish

import (
	"sort"
	"strings"
	"unicode/utf8"

	"rowproof/diag"
)

// lineIndex knows where each physical line of a text begins. A line ends at a
// line feed, a carriage return or both together.
type lineIndex struct {
	text   string
	starts []int
}

func newLineIndex(text string) *lineIndex {
	x := &lineIndex{text: text, starts: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' || text[i] == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			x.starts = append(x.starts, i+1)
		}
	}
	return x
}

// number returns the line, from 1, that holds the byte at offset.
func (x *lineIndex) number(offset int) int {
	return sort.Search(len(x.starts), func(i int) bool { return x.starts[i] > offset })
}

// bounds returns the bytes of line n, its line ending left out.
func (x *lineIndex) bounds(n int) (start, end int) {
	if n < 1 || n > len(x.starts) {
		return 0, 0
	}
	start, end = x.starts[n-1], len(x.text)
	if n < len(x.starts) {
		end = x.starts[n] - 1
	}
	if end > start && x.text[end-1] == '\r' && end < len(x.text) && x.text[end] == '\n' {
		end--
	}
	return start, end
}

// line returns the text of line n, its line ending left out.
func (x *lineIndex) line(n int) string {
	start, end := x.bounds(n)
	return x.text[start:end]
}

// A Place is where a span stands, in lines and characters from 1.
type Place struct {
	Line   int
	Column int // of the first character
	End    int // just past the last character on that line
}

// place returns where span begins and where its first line of it ends. The
// zero span is the first character of the text.
func (x *lineIndex) place(span diag.Span) Place {
	start := min(max(span.Start, 0), len(x.text))
	end := min(max(span.End, start), len(x.text))
	n := x.number(start)
	from, to := x.bounds(n)
	start, end = min(start, to), min(end, to)
	column := 1 + utf8.RuneCountInString(x.text[from:start])
	return Place{Line: n, Column: column, End: column + utf8.RuneCountInString(x.text[start:max(start, end)])}
}

// trimmed returns span without the white space at its ends, so that no mark
// stands under nothing.
func (x *lineIndex) trimmed(span diag.Span) diag.Span {
	start := min(max(span.Start, 0), len(x.text))
	end := min(max(span.End, start), len(x.text))
	body := x.text[start:end]
	left := len(body) - len(strings.TrimLeft(body, " \t\r\n"))
	if left == len(body) {
		return diag.Span{Start: start, End: end}
	}
	return diag.Span{Start: start + left, End: start + len(strings.TrimRight(body, " \t\r\n"))}
}
