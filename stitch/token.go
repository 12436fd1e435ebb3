package stitch

import (
	"unicode"
	"unicode/utf8"

	"strings"
)

// A tokenKind tells words from numbers and marks.
type tokenKind uint8

const (
	endToken  tokenKind = iota
	wordToken           // "dc", "v-st", "2nd"
	numToken            // "3", "three"
	markToken           // one of ( ) [ ] { } , ; . : * = and the dashes
)

// A token is a word, a number or a mark of a definition.
type token struct {
	kind       tokenKind
	start, end int    // bytes of the text
	n          int    // of a number
	low        string // lower case; a dash is "-"
	glued      bool   // no blank before it
}

// mostNumber is where numbers stop growing, so that none overflows.
const mostNumber = 1 << 30

var numberWords = map[string]int{
	"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
	"eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}

// tokens cuts text into words, numbers and marks, which it appends to toks.
// Bytes that are none of these are passed over.
func tokens(toks []token, text string) []token {
	for i := 0; i < len(text); {
		r, size := rune(text[i]), 1
		if r >= utf8.RuneSelf {
			r, size = utf8.DecodeRuneInString(text[i:])
		}
		switch {
		case '0' <= r && r <= '9':
			t := readNumber(text, i)
			toks = append(toks, glue(toks, t))
			i = t.end
		case isLetter(r):
			t := readWord(text, i)
			toks = append(toks, glue(toks, t))
			i = t.end
		default:
			if m := mark(r); m != "" {
				toks = append(toks, token{kind: markToken, start: i, end: i + size, low: m})
			}
			i += size
		}
	}
	return append(toks, token{start: len(text), end: len(text)})
}

// glue notes whether t follows the last token without a blank.
func glue(toks []token, t token) token {
	t.glued = len(toks) > 0 && toks[len(toks)-1].end == t.start
	return t
}

// mark is the mark that r stands for, "" for none.
func mark(r rune) string {
	switch r {
	case '(', '[', '{', ')', ']', '}', ',', ';', '.', ':', '*', '=', '/', '!':
		return string(r)
	case '-', '–', '—', '−':
		return "-"
	case '×':
		return "x"
	}
	return ""
}

func isLetter(r rune) bool {
	if r < utf8.RuneSelf {
		return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z'
	}
	return unicode.IsLetter(r) && r != utf8.RuneError
}

// readNumber reads "3", "3rd" or "0.5" at i. An ordinal and a fraction are
// words: neither counts anything.
func readNumber(text string, i int) token {
	start, n := i, 0
	for ; i < len(text) && '0' <= text[i] && text[i] <= '9'; i++ {
		n = min(mostNumber, n*10+int(text[i]-'0'))
	}
	if i+1 < len(text) && (text[i] == '.' || text[i] == '/') && '0' <= text[i+1] && text[i+1] <= '9' {
		for i++; i < len(text) && '0' <= text[i] && text[i] <= '9'; i++ {
		}
		return token{kind: wordToken, start: start, end: i, low: text[start:i]}
	}
	if ord := ordinalEnd(text, i); ord > i {
		return token{kind: wordToken, start: start, end: ord, low: strings.ToLower(text[start:ord])}
	}
	return token{kind: numToken, start: start, end: i, n: n, low: text[start:i]}
}

// ordinalEnd is the end of "st", "nd", "rd" or "th" at i, or i.
func ordinalEnd(text string, i int) int {
	if i+2 > len(text) || i+2 < len(text) && isLetter(rune(text[i+2])) {
		return i
	}
	switch strings.ToLower(text[i : i+2]) {
	case "st", "nd", "rd", "th":
		return i + 2
	}
	return i
}

// readWord reads a word at i, with the digits and hyphens inside it.
func readWord(text string, i int) token {
	start := i
	for i < len(text) {
		c := text[i]
		switch {
		case c >= utf8.RuneSelf:
			r, size := utf8.DecodeRuneInString(text[i:])
			if r == '’' {
				i += size
				continue
			}
			if !isLetter(r) {
				return word(text, start, i)
			}
			i += size
			continue
		case isLetter(rune(c)), '0' <= c && c <= '9', c == '\'':
		case c == '-' && i+1 < len(text) && isLetter(rune(text[i+1])):
		case c == '-' && i+1 < len(text) && '0' <= text[i+1] && text[i+1] <= '9':
		default:
			return word(text, start, i)
		}
		i++
	}
	return word(text, start, i)
}

func word(text string, start, end int) token {
	low := strings.ToLower(text[start:end])
	if n, ok := numberWords[low]; ok {
		return token{kind: numToken, start: start, end: end, n: n, low: low}
	}
	return token{kind: wordToken, start: start, end: end, low: low}
}
