package publish

import (
	"strings"

	"rowproof/diag"
)

// sizeNames finds the list of all the sizes in text: every name in order, with
// nothing but marks between them.
func sizeNames(text string, sizes []string) (diag.Span, bool) {
	if len(sizes) < 2 {
		return diag.Span{}, false
	}
	for from := 0; from < len(text); {
		start := strings.Index(text[from:], sizes[0])
		if start < 0 {
			return diag.Span{}, false
		}
		start += from
		from = start + max(1, len(sizes[0]))
		if start > 0 && isLetter(text[start-1]) {
			continue
		}
		end, ok := namesAfter(text, start+len(sizes[0]), sizes[1:])
		if ok {
			return spanAt(start, end), true
		}
	}
	return diag.Span{}, false
}

// betweenNames are the marks that part the names of sizes.
const betweenNames = " ,:;/([{)]}-&"

// namesAfter reads the names in order at i and returns where they end, their
// closing bracket taken in.
func namesAfter(text string, i int, names []string) (end int, ok bool) {
	brackets := 0
	for _, name := range names {
		for i < len(text) && strings.IndexByte(betweenNames, text[i]) >= 0 {
			switch text[i] {
			case '(', '[', '{':
				brackets++
			case ')', ']', '}':
				brackets--
			}
			i++
		}
		if rest, is := strings.CutPrefix(text[i:], "and "); is {
			i = len(text) - len(rest)
		}
		if !strings.HasPrefix(text[i:], name) {
			return 0, false
		}
		i += len(name)
	}
	if i < len(text) && (isLetter(text[i]) || isDigit(text[i])) {
		return 0, false
	}
	if brackets > 0 && i < len(text) && strings.IndexByte(")]}", text[i]) >= 0 {
		i++
	}
	return i, true
}
