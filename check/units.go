package check

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"rowproof/design"
	"rowproof/diag"
)

// UnitPair: inches and centimetres printed side by side are not the same
// length.
const UnitPair diag.Code = "unit-pair"

// unitTolerance is how far a pair may part, in centimetres: inches stand to
// the quarter and centimetres to the half. Source: docs/sources.md, practice
// "inches against centimetres", tolerance 0.6 cm.
const unitTolerance = 0.6

// length matches a number of inches or centimetres, fractions included.
const length = `(\d+(?:\.\d+)?(?:\s?[½¼¾⅛⅜⅝⅞]|\s\d/\d)?|[½¼¾])`

// inchPair matches "14½ in (37 cm)" and "4 in [10 cm]".
var inchPair = regexp.MustCompile(length + `(?:-|\s)?(?:in\.?|inches|inch|")\s?[(\[/]\s?` + length + `\s?cm`)

// unitPairs holds each length printed in both units against itself: in a
// sentence, and in two rows of a table named alike but for the unit.
func unitPairs(c *checker) {
	for _, line := range c.d.Lines {
		for _, m := range inchPair.FindAllStringSubmatchIndex(line.Text, -1) {
			c.unitPair(line, [2]int{m[2], m[3]}, line, [2]int{m[4], m[5]})
		}
	}
	for i := 1; i < len(c.d.Lines); i++ {
		c.tablePair(c.d.Lines[i-1], c.d.Lines[i])
	}
}

// unitPair compares two numbers, the first in inches.
func (c *checker) unitPair(a *design.Line, in [2]int, b *design.Line, cm [2]int) {
	inches, centimetres := lengthOf(a.Text[in[0]:in[1]]), lengthOf(b.Text[cm[0]:cm[1]])
	if math.Abs(inches*2.54-centimetres) <= unitTolerance {
		return
	}
	half := math.Round(inches*2.54*2) / 2
	c.add(diag.Finding{Severity: diag.Error, Code: UnitPair, Piece: title(b),
		Span:    diag.Span{Start: b.Start + cm[0], End: b.Start + cm[1]},
		Also:    []diag.Span{{Start: a.Start + in[0], End: a.Start + in[1]}},
		Message: fmt.Sprintf("%s in and %s cm stand side by side and are not the same length.", a.Text[in[0]:in[1]], b.Text[cm[0]:cm[1]]),
		Detail:  fmt.Sprintf("%s in is %s cm", a.Text[in[0]:in[1]], strconv.FormatFloat(half, 'f', -1, 64)),
		Repair:  strconv.FormatFloat(half, 'f', -1, 64)})
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
func (c *checker) tablePair(a, b *design.Line) {
	if !strings.Contains(a.Text, "|") || !strings.Contains(b.Text, "|") {
		return
	}
	left, right := cells(a.Text), cells(b.Text)
	if len(left) != len(right) || len(left) < 2 {
		return
	}
	head, ok := strings.CutSuffix(strings.TrimRight(a.Text[left[0][0]:left[0][1]], " ."), "in")
	other, ok2 := strings.CutSuffix(strings.TrimRight(b.Text[right[0][0]:right[0][1]], " ."), "cm")
	if !ok || !ok2 || strings.TrimSpace(head) != strings.TrimSpace(other) {
		return
	}
	for i := 1; i < len(left); i++ {
		ins := anyLength.FindAllStringIndex(a.Text[left[i][0]:left[i][1]], -1)
		cms := anyLength.FindAllStringIndex(b.Text[right[i][0]:right[i][1]], -1)
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
