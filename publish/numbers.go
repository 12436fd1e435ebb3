package publish

import (
	"slices"
	"strconv"
	"strings"

	"rowproof/notation"
)

// values returns what a number stands for, a value a size or one for all.
func (e *edition) values(n *notation.Number) []notation.Value {
	if n.Live == "" {
		return n.Values
	}
	whole, ok := e.live(n.Live)
	if !ok {
		return nil
	}
	values := make([]notation.Value, len(whole))
	for i, v := range whole {
		values[i] = notation.Value{N: v}
	}
	return values
}

// at returns the value of a number in the size being written, or in every size
// when they agree. ok is false when sizes differ and none is chosen.
func (e *edition) at(n *notation.Number) (v notation.Value, ok bool) {
	if n == nil {
		return notation.Value{N: 1}, true
	}
	values := e.values(n)
	switch {
	case len(values) == 0:
		return v, false
	case len(values) == 1:
		return values[0], true
	case e.size != allSizes && len(values) == e.sizes:
		return values[e.size], true
	}
	for _, other := range values {
		if other != values[0] {
			return v, false
		}
	}
	return values[0], true
}

// number returns the words to put in place of n. ok is false when it stays as
// written; none is set when a dash says that its line is not for this size.
func (e *edition) number(n *notation.Number) (words string, none, ok bool) {
	if n.Live != "" {
		whole, known := e.live(n.Live)
		if !known {
			return "", false, false
		}
		return e.wholeList(whole), false, true
	}
	if e.size == allSizes || len(n.Values) < 2 || len(n.Values) != e.sizes {
		return "", false, false
	}
	v := n.Values[e.size]
	if v.None {
		return "", true, false
	}
	return strconv.Itoa(v.N), false, true
}

// plainNumber returns the value of a number that stays as written.
func (e *edition) plainNumber(n *notation.Number) string {
	if v, ok := e.at(n); ok && !v.None {
		return strconv.Itoa(v.N)
	}
	return e.words(n.Span)
}

// words returns what is written in a span of the document.
func (e *edition) words(span notation.Span) string {
	if span.Start < 0 || span.End > len(e.design.Source) || span.Start > span.End {
		return ""
	}
	return e.design.Source[span.Start:span.End]
}

// wholeList writes a value a size as the trade does: 81 (89, 97, 105). Values
// that agree are written once.
func (e *edition) wholeList(values []int) string {
	if len(values) == 0 {
		return ""
	}
	if e.size != allSizes && e.size < len(values) {
		return strconv.Itoa(values[e.size])
	}
	if slices.Min(values) == slices.Max(values) {
		return strconv.Itoa(values[0])
	}
	var words []string
	for _, v := range values[1:] {
		words = append(words, strconv.Itoa(v))
	}
	return strconv.Itoa(values[0]) + " (" + strings.Join(words, ", ") + ")"
}

// proseChanges replaces live numbers, size lists and lengths in words that
// have no tree.
func (e *edition) proseChanges(c *edits, text string, base int) {
	for i := 0; i < len(text); {
		switch {
		case text[i] == '{':
			i = e.liveChange(c, text, i, base)
		case isDigit(text[i]) || text[i] == '(' || strings.HasPrefix(text[i:], "½") || strings.HasPrefix(text[i:], "¼") || strings.HasPrefix(text[i:], "¾"):
			i = e.quantityChange(c, text, i, base)
		case isLetter(text[i]):
			// A number that is part of a word, as in "C2" or "2XL", is a name.
			for i < len(text) && (isLetter(text[i]) || isDigit(text[i])) {
				i++
			}
		default:
			i++
		}
	}
}

// listChanges replaces size lists in the words of an instruction that its tree
// passed over. Two numbers could be something else.
func (e *edition) listChanges(c *edits, text string, base int) {
	if e.size == allSizes || e.sizes < 3 {
		return
	}
	for i := 0; i < len(text); i++ {
		if !isDigit(text[i]) || i > 0 && (isDigit(text[i-1]) || isLetter(text[i-1]) || text[i-1] == '-' || text[i-1] == '.') {
			continue
		}
		if l, ok := sizeListAt(text, i, e.sizes); ok {
			c.add(spanAt(base+l.start, base+l.end), e.chosen(text, l))
			i = l.end - 1
		}
	}
}

// longestLive is the most bytes that stand between the braces of a live number.
const longestLive = 200

func (e *edition) liveChange(c *edits, text string, i, base int) (end int) {
	window := text[i:min(len(text), i+longestLive)]
	n := strings.IndexByte(window, '}')
	if n < 0 || strings.IndexByte(window[:n], '\n') >= 0 {
		return i + 1
	}
	if whole, ok := e.live(strings.TrimSpace(window[1:n])); ok {
		c.add(spanAt(base+i, base+i+n+1), e.wholeList(whole))
	}
	return i + n + 1
}

// quantityChange replaces the number, list or length at i and returns where to
// go on.
func (e *edition) quantityChange(c *edits, text string, i, base int) (end int) {
	if end := e.lengthChange(c, text, i, base); end > i {
		return end
	}
	if l, ok := sizeListAt(text, i, e.sizes); ok {
		if e.size != allSizes {
			c.add(spanAt(base+l.start, base+l.end), e.chosen(text, l))
		}
		return l.end
	}
	if n, ok := elementAt(text, i, true); ok && n.parts != nil {
		return n.end
	}
	return i + 1
}

// chosen returns the number of a list for the size being written, as written.
func (e *edition) chosen(text string, l sizeList) string {
	n := l.numbers[e.size]
	return text[n.start:n.end]
}

// live works out the arithmetic of a live number in every size.
func (e *edition) live(text string) (values []int, ok bool) {
	if e.design.Front == nil {
		return nil, false
	}
	n := &notation.Number{Live: text}
	for size := range e.sizes {
		v, ok := e.design.Value(n, size)
		if !ok {
			return nil, false
		}
		values = append(values, v)
	}
	return values, true
}
