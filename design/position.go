package design

import (
	"sort"
	"unicode/utf8"

	"rowproof/diag"
)

// stride is how many bytes lie between two entries of places.runes.
const stride = 1024

// places turns offsets into lines and columns.
type places struct {
	starts []int // offset of each line's first byte
	ends   []int // offset of each line's end, without its line break
	runes  []int // characters before each stride bytes, so that long lines cost no more
}

// findPlaces notes where the lines of source start and end. A line ends at a
// line feed, a carriage return or both together.
func findPlaces(source string) places {
	var p places
	start := 0
	for i := 0; i < len(source); i++ {
		switch source[i] {
		case '\r', '\n':
			p.starts, p.ends = append(p.starts, start), append(p.ends, i)
			if source[i] == '\r' && i+1 < len(source) && source[i+1] == '\n' {
				i++
			}
			start = i + 1
		}
	}
	p.starts, p.ends = append(p.starts, start), append(p.ends, len(source))
	count := 0
	for i := 0; i < len(source); i++ {
		if i%stride == 0 {
			p.runes = append(p.runes, count)
		}
		if utf8.RuneStart(source[i]) {
			count++
		}
	}
	p.runes = append(p.runes, count)
	return p
}

// characters counts the characters that start before offset.
func (p places) characters(source string, offset int) int {
	n := p.runes[min(offset/stride, len(p.runes)-1)]
	for i := offset / stride * stride; i < offset; i++ {
		if utf8.RuneStart(source[i]) {
			n++
		}
	}
	return n
}

// Position returns the line and column of the byte at offset, both from 1.
// Columns count characters. An offset outside the document gives the nearest
// place in it.
func (d *Design) Position(offset int) (line, column int) {
	if len(d.places.starts) == 0 {
		return 1, 1
	}
	offset = max(0, min(offset, len(d.Source)))
	i := sort.SearchInts(d.places.starts, offset+1) - 1
	start := d.places.starts[i]
	return i + 1, d.places.characters(d.Source, offset) - d.places.characters(d.Source, start) + 1
}

// LineText returns the text of a line, from 1, without its line break; "" for
// a line the document does not have.
func (d *Design) LineText(line int) string {
	if line < 1 || line > len(d.places.starts) {
		return ""
	}
	return d.Source[d.places.starts[line-1]:d.places.ends[line-1]]
}

// offset returns the byte at a line and column, both from 1, columns in
// characters.
func (d *Design) offset(line, column int) int {
	line = max(1, min(line, len(d.places.starts)))
	at, end := d.places.starts[line-1], d.places.ends[line-1]
	for ; column > 1 && at < end; column-- {
		_, size := utf8.DecodeRuneInString(d.Source[at:end])
		at += size
	}
	return at
}

// wordAt returns the span of the run of text without spaces at offset, at
// least one byte long inside the document.
func (d *Design) wordAt(offset int) diag.Span {
	offset = max(0, min(offset, len(d.Source)))
	end := offset
	for end < len(d.Source) && d.Source[end] != ' ' && d.Source[end] != '\n' && d.Source[end] != '\r' {
		end++
	}
	if end == offset && end < len(d.Source) {
		end++
	}
	return diag.Span{Start: offset, End: end}
}

// report adds a finding.
func (d *Design) report(severity diag.Severity, code diag.Code, span diag.Span, message, detail, repair string) {
	span.End = max(0, min(span.End, len(d.Source)))
	span.Start = max(0, min(span.Start, span.End))
	d.Findings = append(d.Findings, diag.Finding{
		Severity: severity, Code: code, Span: span, Message: message, Detail: detail, Repair: repair,
	})
}
