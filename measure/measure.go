// Package measure holds lengths with their units: it reads them as a pattern
// writes them and prints them as a pattern prints them.
//
// It imports nothing of ours and knows no stitch.
package measure

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A Length is a length of finished fabric, in centimetres.
type Length float64

// Units of length.
const (
	Millimetre Length = 0.1
	Centimetre Length = 1
	Inch       Length = 2.54
)

// In returns l as a number of unit: In(Inch) of 2.54 cm is 1.
func (l Length) In(unit Length) float64 { return float64(l / unit) }

// Of returns the length of n units.
func Of(n float64, unit Length) Length { return Length(n) * unit }

// longest is the longest length read: more than a kilometre is a slip of the
// pen, and keeps sums finite.
const longest = 1000 * 100 * Centimetre

// Parse reads one length with its unit: "14½ in", "14 1/2\"", "35.5 cm",
// "6 mm", "5/8 inch". A length without a unit is an error, since inches and
// centimetres cannot be told apart.
func Parse(text string) (Length, error) {
	n, rest, ok := Amount(text)
	if !ok {
		return 0, fmt.Errorf("%q is no length: it should start with a number", strings.TrimSpace(text))
	}
	unit, after, ok := UnitOf(rest)
	if !ok || strings.TrimSpace(after) != "" {
		return 0, fmt.Errorf("%q needs a unit after the number: in or cm", strings.TrimSpace(text))
	}
	l := Of(n, unit)
	if l > longest {
		return 0, fmt.Errorf("%q is longer than any piece of crochet", strings.TrimSpace(text))
	}
	return l, nil
}

// Amount reads the number at the start of text, whole or with a fraction:
// "14", "14.5", "14,5", "14½", "14 1/2", "14-1/2", "5/8", "½". It returns the
// text after the number, and false when text starts with no number.
func Amount(text string) (n float64, rest string, ok bool) {
	rest = strings.TrimLeft(text, " \t\u00a0")
	whole, after := digits(rest)
	if whole == "" {
		if f, size := vulgar(rest); size > 0 {
			return f, rest[size:], true
		}
		return 0, text, false
	}
	n, err := strconv.ParseFloat(whole, 64)
	if err != nil || len(whole) > 12 {
		return 0, text, false
	}
	if f, size := vulgar(after); size > 0 {
		return n + f, after[size:], true
	}
	if len(after) > 1 && (after[0] == '.' || after[0] == ',') {
		if part, tail := digits(after[1:]); part != "" && len(part) <= 6 {
			f, _ := strconv.ParseFloat("0."+part, 64)
			return n + f, tail, true
		}
	}
	if f, tail, ok := slash(whole, after); ok {
		return f, tail, true
	}
	if f, tail, ok := mixed(after); ok {
		return n + f, tail, true
	}
	return n, after, true
}

// slash reads the "/8" after the 5 of "5/8".
func slash(over, text string) (float64, string, bool) {
	text, ok := strings.CutPrefix(text, "/")
	if !ok {
		text, ok = strings.CutPrefix(text, "⁄")
	}
	if !ok {
		return 0, "", false
	}
	under, tail := digits(text)
	a, errA := strconv.Atoi(over)
	b, errB := strconv.Atoi(under)
	if errA != nil || errB != nil || b == 0 || b > 64 || a >= b {
		return 0, "", false
	}
	return float64(a) / float64(b), tail, true
}

// mixed reads the " 1/2", "-1/2" or " ½" that follows a whole number.
func mixed(text string) (float64, string, bool) {
	trimmed := strings.TrimLeft(text, " \u00a0")
	if trimmed == text {
		trimmed = strings.TrimPrefix(text, "-")
	}
	if trimmed == text {
		return 0, "", false
	}
	if f, size := vulgar(trimmed); size > 0 {
		return f, trimmed[size:], true
	}
	over, after := digits(trimmed)
	if over == "" {
		return 0, "", false
	}
	return slash(over, after)
}

// vulgarFractions are the fractions that have a sign of their own.
var vulgarFractions = map[rune]float64{
	'½': 1. / 2, '¼': 1. / 4, '¾': 3. / 4, '⅓': 1. / 3, '⅔': 2. / 3,
	'⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

func vulgar(text string) (f float64, size int) {
	r, n := utf8.DecodeRuneInString(text)
	if f, ok := vulgarFractions[r]; ok {
		return f, n
	}
	return 0, 0
}

func digits(text string) (number, rest string) {
	i := 0
	for i < len(text) && text[i] >= '0' && text[i] <= '9' {
		i++
	}
	return text[:i], text[i:]
}

// unitWords holds the written forms of the units, the longest of each first
// letter first, so that "inches" is not read as "in".
var unitWords = []struct {
	word string
	unit Length
}{
	{"centimetres", Centimetre}, {"centimeters", Centimetre}, {"centimetre", Centimetre}, {"centimeter", Centimetre},
	{"millimetres", Millimetre}, {"millimeters", Millimetre}, {"millimetre", Millimetre}, {"millimeter", Millimetre},
	{"inches", Inch}, {"inch", Inch}, {"ins", Inch}, {"in", Inch}, {"cms", Centimetre}, {"cm", Centimetre},
	{"mm", Millimetre}, {"\"", Inch}, {"”", Inch}, {"″", Inch}, {"“", Inch}, {"''", Inch},
}

// UnitOf reads the unit at the start of text: "in", "inches", "\"", "cm",
// "mm" and so on, with a full stop after it or none.
func UnitOf(text string) (unit Length, rest string, ok bool) {
	trimmed := strings.TrimLeft(text, " \t\u00a0-")
	head := strings.ToLower(trimmed[:min(len(trimmed), 12)])
	for _, u := range unitWords {
		if !strings.HasPrefix(head, u.word) {
			continue
		}
		after := trimmed[len(u.word):]
		if letter(u.word[0]) && after != "" && letter(after[0]) {
			continue
		}
		if letter(u.word[0]) {
			after = strings.TrimPrefix(after, ".")
		}
		return u.unit, after, true
	}
	return 0, text, false
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// Inches returns l as printed in inches, to the nearest quarter: "14½",
// "¾", "6". A length half-way between two quarters takes the larger.
func Inches(l Length) string {
	quarters := round(float64(l) / float64(Inch) * 4)
	sign := ""
	if quarters < 0 {
		sign, quarters = "-", -quarters
	}
	whole, part := quarters/4, [...]string{"", "¼", "½", "¾"}[quarters%4]
	if whole == 0 && part != "" {
		return sign + part
	}
	return sign + strconv.FormatInt(whole, 10) + part
}

// Centimetres returns l as printed in centimetres, to the nearest half:
// "35.5", "36". A length half-way between takes the larger.
func Centimetres(l Length) string {
	halves := round(float64(l) * 2)
	sign := ""
	if halves < 0 {
		sign, halves = "-", -halves
	}
	if halves%2 == 1 {
		return sign + strconv.FormatInt(halves/2, 10) + ".5"
	}
	return sign + strconv.FormatInt(halves/2, 10)
}

// round rounds half up and stays within what an int64 holds. The small
// addition lets 2.54 cm times a binary fraction come out as the author meant.
func round(f float64) int64 {
	const most = 1e15
	if math.IsNaN(f) {
		return 0
	}
	return int64(math.Floor(max(-most, min(most, f)) + 0.5 + 1e-9))
}
