package publish

import (
	"strings"

	"rowproof/notation"
)

// A length is a number or size list with its unit, as found in prose.
type length struct {
	start, end int
	first      int // where its number or list ends and the unit begins
	list       sizeList
	unit       notation.Unit
}

// lengthAt reads a length at i; ok is false when there is none.
func (e *edition) lengthAt(text string, i int) (l length, ok bool) {
	list, isList := sizeListAt(text, i, e.sizes)
	if !isList {
		n, isNumber := elementAt(text, i, true)
		if !isNumber || n.parts == nil {
			return l, false
		}
		list = sizeList{start: n.start, end: n.end, numbers: []element{n}}
	}
	end, unit := unitAt(text, list.end)
	if unit != notation.Inch && unit != notation.Centimetre {
		return l, false
	}
	return length{start: i, end: end, first: list.end, list: list, unit: unit}, true
}

// lengthChange replaces the length at i, and the same length in the other unit
// beside it, and returns its end; i when no length stands there.
func (e *edition) lengthChange(c *edits, text string, i, base int) (end int) {
	a, ok := e.lengthAt(text, i)
	if !ok {
		return i
	}
	b, end := e.beside(text, a)
	if e.units == notation.NoUnit || end > a.end && a.unit == b.unit {
		e.keepLength(c, text, a, base)
		if end > a.end {
			e.keepLength(c, text, b, base)
		}
		return end
	}
	switch {
	case end == a.end:
		e.convertLength(c, text, a, base)
	case a.unit == e.units:
		e.keepLength(c, text, a, base)
		c.add(spanAt(base+a.end, base+end), "")
	default:
		c.add(spanAt(base+a.start, base+end), e.sized(text, b))
	}
	return end
}

// beside reads the length in brackets or after a slash that follows a: the
// same length in the other unit. end is a.end when there is none.
func (e *edition) beside(text string, a length) (b length, end int) {
	at := a.end
	for at < len(text) && text[at] == ' ' && at < a.end+2 {
		at++
	}
	if at == len(text) || strings.IndexByte("[(/", text[at]) < 0 {
		return b, a.end
	}
	open := text[at]
	at++
	for at < len(text) && text[at] == ' ' {
		at++
	}
	b, ok := e.lengthAt(text, at)
	if !ok || b.unit == a.unit {
		return b, a.end
	}
	if open == '/' {
		return b, b.end
	}
	at = b.end
	for at < len(text) && text[at] == ' ' {
		at++
	}
	if at < len(text) && (text[at] == ']' || text[at] == ')') {
		return b, at + 1
	}
	return b, a.end
}

// keepLength keeps the unit of a length and, of a list, the size's number.
func (e *edition) keepLength(c *edits, text string, l length, base int) {
	if e.size != allSizes && len(l.list.numbers) > 1 {
		c.add(spanAt(base+l.list.start, base+l.list.end), e.chosen(text, l.list))
	}
}

// sized returns the words of a length for the size being written.
func (e *edition) sized(text string, l length) string {
	if e.size != allSizes && len(l.list.numbers) > 1 {
		return e.chosen(text, l.list) + text[l.first:l.end]
	}
	return text[l.start:l.end]
}

// convertLength turns a length into the unit asked for.
func (e *edition) convertLength(c *edits, text string, l length, base int) {
	if l.unit == e.units {
		e.keepLength(c, text, l, base)
		return
	}
	c.add(spanAt(base+l.start, base+l.end), e.asUnit(text[l.start:l.first], l.start, l.list)+" "+unitName(e.units))
}

// asUnit writes a list or number in the unit asked for, its brackets kept.
// text begins at base.
func (e *edition) asUnit(text string, base int, l sizeList) string {
	numbers, at, end := l.numbers, base, base+len(text)
	if e.size != allSizes && len(numbers) > 1 {
		numbers = numbers[e.size : e.size+1]
		at, end = numbers[0].start, numbers[0].end
	}
	var b strings.Builder
	for _, n := range numbers {
		for _, part := range n.parts {
			b.WriteString(text[at-base : part.start-base])
			b.WriteString(converted(part.value, e.units))
			at = part.end
		}
	}
	b.WriteString(text[at-base : end-base])
	return b.String()
}

func unitName(u notation.Unit) string {
	if u == notation.Centimetre {
		return "cm"
	}
	return "in"
}

// measureChange replaces a length that the tree knows. Its words are read the
// same way as in prose.
func (e *edition) measureChange(c *edits, m *notation.Measure) {
	if m == nil {
		return
	}
	if m.Live != "" {
		if whole, ok := e.live(m.Live); ok {
			c.add(m.Span, e.wholeList(whole)+" "+unitName(m.Unit))
		}
		return
	}
	end := m.End
	if m.Also != nil {
		end = max(end, m.Also.End+1)
	}
	end = min(end, len(e.design.Source))
	text := e.design.Source[m.Start:end]
	e.lengthChange(c, text, 0, m.Start)
}
