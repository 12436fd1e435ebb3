package publish

import (
	"strings"

	"rowproof/measure"
	"rowproof/notation"
)

// converted returns v, in one unit, as printed in the other: inches in
// quarters, centimetres in halves. Four inches are ten centimetres, as every
// gauge has it. Source: common practice, no source.
func converted(v float64, to notation.Unit) string {
	if to == notation.Centimetre {
		if v == 4 {
			return "10"
		}
		return measure.Centimetres(measure.Of(v, measure.Inch))
	}
	if v == 10 {
		return "4"
	}
	return measure.Inches(measure.Of(v, measure.Centimetre))
}

// unitSpellings are the ways a unit is written, the longest first.
var unitSpellings = []struct {
	text string
	unit notation.Unit
}{
	{"centimetres", notation.Centimetre}, {"centimeters", notation.Centimetre}, {"cm", notation.Centimetre},
	{"inches", notation.Inch}, {"inch", notation.Inch}, {"in.", notation.Inch}, {"in", notation.Inch}, {"ins", notation.Inch},
	{"″", notation.Inch}, {"”", notation.Inch}, {"\"", notation.Inch}, {"''", notation.Inch},
	{"mm", notation.Millimetre},
}

// notUnits are the words after "in" that show it to be no unit: "2 in next st".
var notUnits = []string{"next", "each", "same", "the", "a", "an", "first", "last", "ch", "ring", "this", "every", "all", "total", "your", "any", "that", "these", "one", "both"}

// unitAt reads a unit at i and returns its end, or i when there is none.
func unitAt(s string, i int) (end int, unit notation.Unit) {
	at := i
	for at < len(s) && at < i+2 && (s[at] == ' ' || s[at] == '-') {
		at++
	}
	for _, u := range unitSpellings {
		if len(s)-at < len(u.text) || !strings.EqualFold(s[at:at+len(u.text)], u.text) {
			continue
		}
		end = at + len(u.text)
		if end < len(s) && isLetter(s[end-1]) && isLetter(s[end]) {
			continue
		}
		if u.text == "in" && isPreposition(s[end:]) {
			return i, notation.NoUnit
		}
		return end, u.unit
	}
	return i, notation.NoUnit
}

// isPreposition tells whether the words after "in" show it to be no unit.
func isPreposition(after string) bool {
	word := strings.TrimLeft(after, " ")
	if len(word) == len(after) {
		return false
	}
	n := 0
	for n < len(word) && isLetter(word[n]) {
		n++
	}
	for _, w := range notUnits {
		if strings.EqualFold(word[:n], w) {
			return true
		}
	}
	return false
}
