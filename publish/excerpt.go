package publish

import (
	"fmt"
	"strings"

	"rowproof/diag"
)

// maxExcerpt is how many bytes of a line are shown around a mark, and maxStrips
// how many strips of the page they may fill. Chosen by trial: the longest
// instructions of real patterns fit.
const (
	maxExcerpt = 600
	maxStrips  = 8
	maxLines   = 3 // lines of the pattern shown of one place
)

// strip is a part of a line that fits the page, and the marks to go under it.
type strip struct {
	text, marks string
}

// excerpt writes the lines of the pattern that hold span, with marks under it.
// It returns the last line shown.
func (t *terminal) excerpt(x *lineIndex, span diag.Span, how shade, gutter int) int {
	span = x.trimmed(span)
	first := x.number(span.Start)
	last := first
	if span.End > span.Start {
		last = x.number(span.End - 1)
	}
	shown := min(last, first+maxLines-1)
	for n := first; n <= shown; n++ {
		from, to := x.bounds(n)
		start, end := max(span.Start, from)-from, min(span.End, to)-from
		label := fmt.Sprintf("%*d", gutter, n)
		for _, s := range strips(x.text[from:to], start, max(start, end), t.width-gutter-5) {
			t.line("  ", t.dye(faint, label+" | "), s.text)
			label = strings.Repeat(" ", gutter)
			if s.marks != "" {
				t.line("  ", t.dye(faint, label+" | "), t.dye(how, s.marks))
			}
		}
	}
	if last > shown {
		t.line("  ", t.dye(faint, strings.Repeat(" ", gutter)+" | "), fmt.Sprintf("… up to line %d", last))
	}
	return last
}

// strips cuts a line into strips of at most width columns, with marks under
// the bytes from start up to end. Of a very long line only what stands near
// the mark is kept. A mark of no length stands under one character.
func strips(line string, start, end, width int) []strip {
	width = max(width, 20)
	end = max(end, start)
	head, tail := clip(line, start, end)
	cells, marked := layOut(line[head:tail], start-head, end-head)
	if head > 0 {
		cells = append([]cell{{text: "… ", width: 2}}, cells...)
		marked = append([]bool{false}, marked...)
	}
	if tail < len(line) {
		cells = append(cells, cell{text: " …", width: 2})
		marked = append(marked, false)
	}
	if end == start {
		cells, marked = markOne(cells, marked, start-head, head > 0)
	}
	return nearMarks(breakUp(cells, marked, width))
}

// clip returns the part of line to show: all of it, or the marked bytes with
// some before and after, cut at the start of a rune.
func clip(line string, start, end int) (head, tail int) {
	if len(line) <= maxExcerpt {
		return 0, len(line)
	}
	head = max(0, start-maxExcerpt/3)
	tail = min(len(line), max(min(end, start+maxExcerpt/3), start)+maxExcerpt/3)
	for head > 0 && line[head]&0xc0 == 0x80 {
		head--
	}
	for tail < len(line) && line[tail]&0xc0 == 0x80 {
		tail++
	}
	return head, tail
}

func layOut(s string, start, end int) (cells []cell, marked []bool) {
	column := 0
	for i := 0; i < len(s); {
		c := nextCell(s[i:], column)
		cells = append(cells, c)
		marked = append(marked, i >= start && i < end)
		column += c.width
		i += c.size
	}
	return cells, marked
}

// markOne marks the one character at byte offset at, or the place just past
// the end of the line.
func markOne(cells []cell, marked []bool, at int, clipped bool) ([]cell, []bool) {
	i, offset := 0, 0
	if clipped {
		i = 1
	}
	for ; i < len(cells) && offset < at; i++ {
		offset += cells[i].size
	}
	if i == len(cells) {
		cells, marked = append(cells, cell{text: " ", width: 1}), append(marked, false)
	}
	marked[i] = true
	return cells, marked
}

// breakUp breaks the cells into strips, at a space where there is one.
func breakUp(cells []cell, marked []bool, width int) []strip {
	var out []strip
	for len(cells) > 0 {
		used, n, space := 0, 0, 0
		for n < len(cells) && used+cells[n].width <= width {
			used += cells[n].width
			n++
			if cells[n-1].text == " " {
				space = n
			}
		}
		if n < len(cells) && space > 0 {
			n = space
		}
		n = max(n, 1)
		out = append(out, asStrip(cells[:n], marked[:n]))
		cells, marked = cells[n:], marked[n:]
	}
	if out == nil {
		out = []strip{{marks: ""}}
	}
	return out
}

func asStrip(cells []cell, marked []bool) strip {
	var text, marks strings.Builder
	for i, c := range cells {
		text.WriteString(c.text)
		sign := " "
		if marked[i] {
			sign = "^"
		}
		marks.WriteString(strings.Repeat(sign, c.width))
	}
	return strip{strings.TrimRight(text.String(), " "), strings.TrimRight(marks.String(), " ")}
}

// nearMarks keeps at most maxStrips strips, those around the first mark.
func nearMarks(all []strip) []strip {
	if len(all) <= maxStrips {
		return all
	}
	first := 0
	for i, s := range all {
		if s.marks != "" {
			first = i
			break
		}
	}
	from := max(0, min(first-2, len(all)-maxStrips))
	return all[from : from+maxStrips]
}
