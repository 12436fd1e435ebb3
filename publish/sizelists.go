package publish

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"rowproof/diag"
)

func spanAt(start, end int) diag.Span { return diag.Span{Start: start, End: end} }

// A written number is a number in prose: "14", "14½", "5 1/2", "35.5", "–".
type written struct {
	start, end int
	value      float64
	none       bool
}

var fractions = map[rune]float64{'½': 0.5, '¼': 0.25, '¾': 0.75, '⅓': 1. / 3, '⅔': 2. / 3, '⅛': 0.125, '⅜': 0.375, '⅝': 0.625, '⅞': 0.875}

// writtenAt reads a number at i; ok is false when there is none.
func writtenAt(s string, i int) (n written, ok bool) {
	end := i
	for end < len(s) && isDigit(s[end]) {
		end++
	}
	whole := end > i
	if whole && end+1 < len(s) && s[end] == '.' && isDigit(s[end+1]) {
		end++
		for end < len(s) && isDigit(s[end]) {
			end++
		}
	}
	n = written{start: i, end: end}
	if whole {
		n.value, _ = strconv.ParseFloat(s[i:end], 64)
	}
	at := end
	if whole && at < len(s) && s[at] == ' ' {
		at++
	}
	r, size := utf8.DecodeRuneInString(s[at:])
	if f, is := fractions[r]; is {
		n.value, n.end = n.value+f, at+size
		return n, true
	}
	if f, e := slashFraction(s, at); e > 0 && (!whole || at > end) {
		n.value, n.end = n.value+f, e
		return n, true
	}
	if whole {
		return n, true
	}
	for _, dash := range []string{"-", "–", "—"} {
		if strings.HasPrefix(s[i:], dash) {
			return written{start: i, end: i + len(dash), none: true}, true
		}
	}
	return n, false
}

// slashFraction reads "1/2" at i and returns its value and end, 0 for none.
func slashFraction(s string, i int) (float64, int) {
	if i+3 > len(s) || !isDigit(s[i]) || s[i+1] != '/' || !isDigit(s[i+2]) || s[i+2] == '0' {
		return 0, 0
	}
	if i+3 < len(s) && isDigit(s[i+3]) || s[i] >= s[i+2] {
		return 0, 0
	}
	return float64(s[i]-'0') / float64(s[i+2]-'0'), i + 3
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// An element of a list is a number, or a range of two: "700–950", "4 to 5".
type element struct {
	start, end int
	parts      []written // one or two; none for a dash
}

// elementAt reads a number, or a range when ranges are wanted, at i.
func elementAt(s string, i int, ranges bool) (e element, ok bool) {
	n, ok := writtenAt(s, i)
	if !ok {
		return e, false
	}
	e = element{start: i, end: n.end}
	if n.none {
		return e, true
	}
	e.parts = []written{n}
	if !ranges {
		return e, true
	}
	for _, sign := range []string{"–", "-", " – ", " - ", " to "} {
		if !strings.HasPrefix(s[n.end:], sign) {
			continue
		}
		if to, is := writtenAt(s, n.end+len(sign)); is && !to.none {
			e.end, e.parts = to.end, append(e.parts, to)
			return e, true
		}
	}
	return e, true
}

// A sizeList is a list of numbers or ranges with one for each size.
type sizeList struct {
	start, end int
	numbers    []element
}

// beforeBracket is how many numbers may stand before the first bracket, as in
// "1, 2, 3, (4, 5, 6)".
const beforeBracket = 4

// sizeListAt reads a list with n entries at i: "81 (89, 97)", "18 (20) 24",
// "(40, 44, 50)", "61 [67: 73]", "48 (52, 56) (60)", "7–9 (8–10, 9–11)". ok is
// false when there is none of exactly n.
func sizeListAt(s string, i, n int) (l sizeList, ok bool) {
	if n < 2 {
		return l, false
	}
	l.start = i
	first, _ := elementAt(s, i, true)
	ranges := len(first.parts) == 2
	depth, brackets := 0, 0
	for at := i; at < len(s); {
		if brackets == 0 && len(l.numbers) > beforeBracket {
			return l, false
		}
		e, isElement := elementAt(s, at, ranges)
		switch {
		case isElement && (e.parts != nil || depth > 0 && loneDash(s, e.end)) && len(l.numbers) < n:
			l.numbers = append(l.numbers, e)
			at = e.end
			if len(l.numbers) == n && depth == 0 && brackets > 0 {
				l.end = at
				return l, true
			}
		case strings.IndexByte("([{", s[at]) >= 0 && depth == 0 && len(l.numbers) < n:
			depth, brackets = 1, brackets+1
			at++
		case strings.IndexByte(")]}", s[at]) >= 0 && depth == 1:
			depth = 0
			at++
			if len(l.numbers) == n {
				l.end = at
				return l, true
			}
		case len(l.numbers) > 0 && isListGap(s, at, depth):
			_, size := utf8.DecodeRuneInString(s[at:])
			at += size
		default:
			return l, false
		}
	}
	return l, false
}

// loneDash tells whether a dash that ends at i stands for "not this size",
// with no number right after it.
func loneDash(s string, i int) bool {
	after := strings.TrimLeft(s[i:], " ")
	return after != "" && !isDigit(after[0])
}

// isListGap tells whether what stands at i may part two numbers of a list.
func isListGap(s string, i, depth int) bool {
	switch s[i] {
	case ' ', ',':
		return true
	case ':', ';', '/', '-':
		return depth > 0
	}
	return depth > 0 && strings.HasPrefix(s[i:], "–")
}
