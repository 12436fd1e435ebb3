package check

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"rowproof/diag"
)

// UnitPair: inches and centimetres printed side by side are not the same
// length.
const UnitPair diag.Code = "unit-pair"

// unitTolerance is how far a pair may part, in centimetres. Inches stand to the
// quarter and centimetres to the half, so one length printed in both can part
// by 0.3175 + 0.25 cm and no more. Two whole numbers may part by the 0.6 cm that
// editors allow. Source: docs/sources.md, "Checks of the opening text".
const unitTolerance, wholeTolerance = 0.568, 0.605

// length matches a number of inches or centimetres, fractions included.
const length = `(\d+(?:\.\d+)?(?:\s?[½¼¾⅛⅜⅝⅞]|\s\d/\d)?|[½¼¾])`

// inchPair matches "14½ in (37 cm)" and "4 in [10 cm]".
var inchPair = regexp.MustCompile(length + `(?:-|\s)?(?:in\.?|inches|inch|")\s?[(\[/]\s?` + length + `\s?cm`)

// cmPair matches "5 cm (2 in)".
var cmPair = regexp.MustCompile(length + `\s?cm\s?[(\[/]\s?` + length + `(?:-|\s)?(?:in\b|inches|inch|")`)

// rangePair matches "4¾ to 5½ in (12 to 14 cm)".
var rangePair = regexp.MustCompile(length + `(?:–|-|\sto\s)` + length + `(?:-|\s)?(?:in\.?|inches|inch|")\s?[(\[/]\s?` + length + `(?:–|-|\sto\s)` + length + `\s?cm`)

// listPair matches "16 (16½, 17) in [40.5 (42, 43) cm]".
var listPair = regexp.MustCompile(lengths + `(?:-|\s)?(?:in\.?|inches|")\s?[(\[/{]?\s?` + lengths + `\s?cm`)

// lengths matches the lengths of all sizes: "16 (16½, 17) (18, 18½)".
const lengths = `(\d[\d½¼¾⅛⅜⅝⅞./ ]*(?:\s?\([\d½¼¾⅛⅜⅝⅞.,;:/ ]+\))+)`

// unitPairs holds each length printed in both units against itself: in a
// sentence, and in two rows of a table named alike but for the unit.
func unitPairs(c *checker) {
	var last textLine
	c.eachLine(func(line textLine) {
		defer func() { last = line }()
		if !strings.Contains(line.text, "cm") {
			return // no pair has less
		}
		for _, m := range inchPair.FindAllStringSubmatchIndex(line.text, -1) {
			c.unitPair(line, [2]int{m[2], m[3]}, line, [2]int{m[4], m[5]})
		}
		for _, m := range cmPair.FindAllStringSubmatchIndex(line.text, -1) {
			c.unitPair(line, [2]int{m[4], m[5]}, line, [2]int{m[2], m[3]})
		}
		for _, m := range rangePair.FindAllStringSubmatchIndex(line.text, -1) {
			c.unitPair(line, [2]int{m[2], m[3]}, line, [2]int{m[6], m[7]})
			c.unitPair(line, [2]int{m[4], m[5]}, line, [2]int{m[8], m[9]})
		}
		for _, m := range listPair.FindAllStringSubmatchIndex(line.text, -1) {
			c.listPair(line, [2]int{m[2], m[3]}, [2]int{m[4], m[5]})
		}
		c.tablePair(last, line)
	})
}

// listPair compares two lists of lengths, the first in inches, size by size.
func (c *checker) listPair(line textLine, in, cm [2]int) {
	inches := anyLength.FindAllStringIndex(line.text[in[0]:in[1]], -1)
	centimetres := anyLength.FindAllStringIndex(line.text[cm[0]:cm[1]], -1)
	if len(inches) != len(centimetres) {
		return
	}
	for i := range inches {
		a, b := inches[i], centimetres[i]
		c.unitPair(line, [2]int{in[0] + a[0], in[0] + a[1]}, line, [2]int{cm[0] + b[0], cm[0] + b[1]})
	}
}

// A textLine is a line of the file and where it starts.
type textLine struct {
	start int
	text  string
}

// unitPair compares two numbers, the first in inches.
func (c *checker) unitPair(a textLine, in [2]int, b textLine, cm [2]int) {
	inches, centimetres := lengthOf(a.text[in[0]:in[1]]), lengthOf(b.text[cm[0]:cm[1]])
	tolerance := unitTolerance
	if inches == math.Trunc(inches) && centimetres == math.Trunc(centimetres) {
		tolerance = wholeTolerance
	}
	if math.Abs(inches*2.54-centimetres) <= tolerance {
		return
	}
	half := strconv.FormatFloat(math.Round(inches*2.54*2)/2, 'f', -1, 64)
	f := diag.Finding{Severity: diag.Error, Code: UnitPair,
		Span:    diag.Span{Start: b.start + cm[0], End: b.start + cm[1]},
		Also:    []diag.Span{{Start: a.start + in[0], End: a.start + in[1]}},
		Message: fmt.Sprintf("%s in and %s cm stand side by side and are not the same length.", a.text[in[0]:in[1]], b.text[cm[0]:cm[1]]),
		Detail:  fmt.Sprintf("%s in is %s cm", a.text[in[0]:in[1]], half),
		Repair:  half}
	if line := c.lineAt(f.Span.Start); line != nil {
		f.Piece = title(line)
	}
	c.add(f)
}

// lengthOf reads "14½", "14.5", "14 1/2".
func lengthOf(s string) float64 {
	v := 0.0
	for _, r := range []struct {
		sign string
		is   float64
	}{{"½", .5}, {"¼", .25}, {"¾", .75}, {"⅛", .125}, {"⅜", .375}, {"⅝", .625}, {"⅞", .875}, {" 1/2", .5}, {" 1/4", .25}, {" 3/4", .75}} {
		if strings.HasSuffix(s, r.sign) {
			v, s = r.is, strings.TrimSuffix(s, r.sign)
			break
		}
	}
	n, _ := strconv.ParseFloat(strings.TrimSpace(s), 64)
	return n + v
}

// anyLength finds the lengths of a table cell.
var anyLength = regexp.MustCompile(length)

// tablePair compares two rows of a table: "| Bust, in | 34 | 36 |" and
// "| Bust, cm | 86.5 | 91.5 |".
func (c *checker) tablePair(a, b textLine) {
	if !strings.Contains(a.text, "|") || !strings.Contains(b.text, "|") {
		return
	}
	left, right := cells(a.text), cells(b.text)
	if len(left) != len(right) || len(left) < 2 {
		return
	}
	head, ok := strings.CutSuffix(strings.TrimRight(a.text[left[0][0]:left[0][1]], " ."), "in")
	other, ok2 := strings.CutSuffix(strings.TrimRight(b.text[right[0][0]:right[0][1]], " ."), "cm")
	if !ok || !ok2 || strings.TrimSpace(head) != strings.TrimSpace(other) {
		return
	}
	for i := 1; i < len(left); i++ {
		ins := anyLength.FindAllStringIndex(a.text[left[i][0]:left[i][1]], -1)
		cms := anyLength.FindAllStringIndex(b.text[right[i][0]:right[i][1]], -1)
		if len(ins) != len(cms) {
			continue
		}
		for k := range ins {
			c.unitPair(a, [2]int{left[i][0] + ins[k][0], left[i][0] + ins[k][1]}, b, [2]int{right[i][0] + cms[k][0], right[i][0] + cms[k][1]})
		}
	}
}

// cells returns where the cells of a table row stand.
func cells(text string) [][2]int {
	var list [][2]int
	start := -1
	for i := 0; i <= len(text); i++ {
		if i < len(text) && text[i] != '|' {
			continue
		}
		if start >= 0 && strings.TrimSpace(text[start:i]) != "" {
			s, e := start, i
			for s < e && text[s] == ' ' {
				s++
			}
			for e > s && text[e-1] == ' ' {
				e--
			}
			list = append(list, [2]int{s, e})
		}
		start = i + 1
	}
	return list
}
