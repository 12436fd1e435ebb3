package stitch

import (
	"strings"
	"unicode/utf8"
)

// mostKey is the longest key a name can have; longer ones name no stitch.
const mostKey = 64

// Lookup finds a stitch by its abbreviation or full name, in any case, with or
// without blanks and hyphens, singular or plural: "dc", "dcs", "Double
// crochets", "V-sts", "sc 2 tog". With UK terms the words mean what they mean
// there: "dc" is SingleCrochet. Without known terms the words are read as US
// terms, and words that only UK terms have ("htr") as these.
func (d *Dictionary) Lookup(name string, t Terms) (Kind, bool) {
	k, ok := d.find(name, t)
	if !ok && t == UnknownTerms {
		k, ok = d.find(name, UK)
	}
	return k, ok
}

// find is Lookup in one set of terms; unknown terms are US.
func (d *Dictionary) find(name string, t Terms) (Kind, bool) {
	var buf [mostKey]byte
	b, ok := key(&buf, name)
	if !ok || len(b) == 0 {
		return None, false
	}
	if k, ok := d.byKey(b, t); ok {
		return k, true
	}
	if b[len(b)-1] == 's' && len(b) > 2 {
		return d.byKey(b[:len(b)-1], t)
	}
	return None, false
}

func (d *Dictionary) byKey(b []byte, t Terms) (Kind, bool) {
	own, under := d.own.us, d.under.us
	if t == UK {
		own, under = d.own.uk, d.under.uk
	}
	if k, ok := own[string(b)]; ok {
		return k, true
	}
	k, ok := under[string(b)]
	return k, ok
}

// mostWords is how many words a stitch name that begins with the word first,
// in lower case, can have.
func (d *Dictionary) mostWords(first string) int {
	return max(1, d.own.words[first], d.under.words[first])
}

// firstWord returns the first word of name in lower case, and how many words
// it has where blanks part them.
func firstWord(name string) (string, int) {
	name = strings.TrimSpace(name)
	first, _, _ := strings.Cut(name, " ")
	return strings.ToLower(first), strings.Count(name, " ") + 1
}

// key writes what tells one name from another into buf: lower-case letters and
// digits, with "stitch" as "st" and "together" as "tog". Two spellings of one
// name have the same key. ok is false if it does not fit.
func key(buf *[mostKey]byte, name string) (b []byte, ok bool) {
	b = buf[:0]
	word := 0 // where the word being written began
	for i := 0; i < len(name); i++ {
		c := name[i]
		switch {
		case 'A' <= c && c <= 'Z':
			c += 'a' - 'A'
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9', c >= utf8.RuneSelf:
		default:
			b = endWord(b, word)
			word = len(b)
			continue
		}
		if len(b) == mostKey {
			return nil, false
		}
		b = append(b, c)
	}
	b = endWord(b, word)
	return numberBeforeTog(b), true
}

// endWord shortens the word of b that began at word.
func endWord(b []byte, word int) []byte {
	switch string(b[word:]) {
	case "stitch", "stitches", "sts":
		return append(b[:word], "st"...)
	case "together":
		return tog(b[:word])
	case "tog":
		return tog(b[:word])
	case "crochet", "crochets":
		// "Treble" and "treble crochet" are one name, and so is "triple crochet".
		if rest, ok := strings.CutSuffix(string(b[:word]), "treble"); ok {
			return append(b[:len(rest)], "treble"...)
		}
		if rest, ok := strings.CutSuffix(string(b[:word]), "triple"); ok {
			return append(b[:len(rest)], "treble"...)
		}
	case "two":
		return append(b[:word], '2')
	case "three":
		return append(b[:word], '3')
	case "four":
		return append(b[:word], '4')
	case "five":
		return append(b[:word], '5')
	}
	return b
}

// tog ends b with "tog", without the "st" of "2 stitches together".
func tog(b []byte) []byte {
	if n := len(b); n > 2 && b[n-2] == 's' && b[n-1] == 't' && isDigit(b[n-3]) {
		b = b[:n-2]
	}
	return append(b, "tog"...)
}

// numberBeforeTog turns "2dctog" into "dc2tog".
func numberBeforeTog(b []byte) []byte {
	n := len(b)
	if n < 5 || !isDigit(b[0]) || isDigit(b[1]) || string(b[n-3:]) != "tog" || isDigit(b[n-4]) {
		return b
	}
	digit := b[0]
	copy(b, b[1:n-3])
	b[n-4] = digit
	return b
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
