package design

import (
	"strings"
	"unicode/utf8"
)

// A word is a run of letters and digits of a line, with what stands before it.
type word struct {
	text       string // lower case
	start, end int    // in the line's text
	clause     bool   // first of a clause: start of line, or after . , ; : ( [ { * or a dash
	sentence   bool   // first of a sentence
	after      byte   // the next byte that is no space; 0 at the end
}

// words splits text into its words. Letters, digits, apostrophes and hyphens
// between letters make a word; everything else parts them.
func words(text string) []word {
	list := make([]word, 0, len(text)/5+1)
	clause, sentence := true, true
	for i := 0; i < len(text); {
		c := text[i]
		if !wordByte(c) {
			switch c {
			case '.', '!', '?':
				clause, sentence = true, true
			case ',', ';', ':', '(', '[', '{', '*', ')', ']', '}':
				clause = true
			case '-':
				clause = clause || i > 0 && text[i-1] == ' '
			default:
				if c >= utf8.RuneSelf {
					r, size := utf8.DecodeRuneInString(text[i:])
					clause = clause || r == '–' || r == '—' || r == '†' || r == '‡' || r == '•'
					if clause && r != '–' && r != '—' {
						sentence = sentence || r == '•'
					}
					i += size
					continue
				}
			}
			i++
			continue
		}
		start := i
		for i < len(text) && (wordByte(text[i]) || innerByte(text, i)) {
			i++
		}
		w := word{text: lower(text[start:i]), start: start, end: i, clause: clause, sentence: sentence}
		list = append(list, w)
		clause, sentence = false, false
	}
	for i := range list {
		list[i].after = nextByte(text, list[i].end)
	}
	return list
}

// innerByte reports whether the byte at i joins two parts of one word: the
// hyphen of "row-end", the apostrophe of "dec'd", the point of "4.5".
func innerByte(text string, i int) bool {
	c := text[i]
	if i == 0 || i+1 >= len(text) || !wordByte(text[i+1]) {
		return false
	}
	switch c {
	case '-':
		return asciiLetter(text[i-1]) || asciiLetter(text[i+1])
	case '\'':
		return asciiLetter(text[i-1])
	case '.':
		return asciiDigit(text[i-1]) && asciiDigit(text[i+1])
	}
	return false
}

// wordByte reports whether c belongs to a word. The bytes of accented letters
// do; those of fractions, hard spaces, dashes and bullets do not start one.
func wordByte(c byte) bool {
	return asciiLetter(c) || asciiDigit(c) || c >= 0xc3 && c < 0xe2 || c >= 0x80 && c < 0xc0
}

func asciiLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
func asciiDigit(c byte) bool  { return c >= '0' && c <= '9' }

func nextByte(text string, i int) byte {
	for ; i < len(text); i++ {
		if text[i] != ' ' && text[i] != '\t' && text[i] != '\n' && text[i] != '\r' {
			return text[i]
		}
	}
	return 0
}

// lower is strings.ToLower without a copy when there is nothing to lower.
func lower(s string) string {
	for i := 0; i < len(s); i++ {
		if s[i] >= 'A' && s[i] <= 'Z' || s[i] >= utf8.RuneSelf {
			return strings.ToLower(s)
		}
	}
	return s
}

// number reports whether w is a number: digits, or a number word.
func (w word) number() bool {
	if w.text == "" {
		return false
	}
	for i := 0; i < len(w.text); i++ {
		if !asciiDigit(w.text[i]) {
			return numberWords[w.text] > 0
		}
	}
	return true
}

var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
	"nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}

// startsDigit reports whether w starts with a digit: "3", "3tr", "1st".
func (w word) startsDigit() bool { return w.text != "" && asciiDigit(w.text[0]) }

// glued splits "3tr" into 3 and "tr", "ch3" into "ch" and 3; a word without a
// number gives the word.
func (w word) glued() string {
	s := w.text
	for s != "" && asciiDigit(s[0]) {
		s = s[1:]
	}
	t := s
	for t != "" && asciiDigit(t[len(t)-1]) {
		t = t[:len(t)-1]
	}
	return strings.TrimSuffix(strings.TrimPrefix(t, "-"), "-")
}

type wordSet map[string]bool

// set makes a wordSet of the words in text.
func set(text string) wordSet {
	s := wordSet{}
	for _, w := range strings.Fields(text) {
		s[w] = true
	}
	return s
}
