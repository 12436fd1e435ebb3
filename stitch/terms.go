package stitch

import "strings"

// The plain stitches in US terms, each with its UK name: every word shifts by
// one.
//
// Source: docs/sources.md T4, T6, T7, T8; qtr from memory.
var plainUK = [...][2]string{
	{"sc", "dc"}, {"hdc", "htr"}, {"dc", "tr"}, {"tr", "dtr"}, {"dtr", "trtr"}, {"trtr", "qtr"},
}

// What may stand before a plain stitch in an abbreviation: front and back
// post, foundation, extended.
var plainPrefixes = [...]string{"", "fp", "bp", "f", "e", "ex"}

var (
	fullToUK = strings.NewReplacer(
		"half double crochet", "half treble crochet",
		"single crochet", "double crochet",
		"triple treble", "quadruple treble",
		"double treble", "triple treble",
		"double crochet", "treble crochet",
		"treble", "double treble")
	fullToUS = strings.NewReplacer(
		"half treble crochet", "half double crochet",
		"half treble", "half double crochet",
		"quadruple treble", "triple treble",
		"triple treble", "double treble",
		"double treble", "treble",
		"treble crochet", "double crochet",
		"treble", "double crochet",
		"double crochet", "single crochet")
)

// toUK gives a name made of US terms in UK terms: "FPdc2tog" is "FPtr2tog".
func toUK(name string) string {
	return shift(fullToUK.Replace(name), 0)
}

// toUS gives a name made of UK terms in US terms.
func toUS(name string) string {
	return shift(fullToUS.Replace(name), 1)
}

// shift gives the abbreviations among the words of name in the other terms:
// from is the column of plainUK they are in.
func shift(name string, from int) string {
	var out strings.Builder
	for i := 0; i < len(name); {
		j := i
		for j < len(name) && (isLetter(rune(name[j])) || isDigit(name[j])) {
			j++
		}
		out.WriteString(shiftWord(name[i:j], from))
		for ; j < len(name) && !isLetter(rune(name[j])) && !isDigit(name[j]); j++ {
			out.WriteByte(name[j])
		}
		i = j
	}
	return out.String()
}

// shiftWord is shift for one word: "FPdc2tog", "edc", "sc".
func shiftWord(word string, from int) string {
	if len(word) < 2 || len(word) > 12 {
		return word
	}
	low := strings.ToLower(word)
	end := len(low)
	if body, ok := strings.CutSuffix(low, "tog"); ok && len(body) > 1 && isDigit(body[len(body)-1]) {
		end = len(body) - 1
	}
	for _, prefix := range plainPrefixes {
		if !strings.HasPrefix(low[:end], prefix) {
			continue
		}
		for _, plain := range plainUK {
			if low[len(prefix):end] == plain[from] {
				return word[:len(prefix)] + plain[1-from] + word[end:]
			}
		}
	}
	return word
}
