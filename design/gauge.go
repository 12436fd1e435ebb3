package design

import (
	"strings"

	"rowproof/diag"
	"rowproof/measure"
)

// readGauge reads a gauge: "14 sts and 16 rows = 4 in (10 cm) in Mesh Pat,
// after blocking". at is where text stands in the document. It returns false
// when the text gives no count or no length.
func readGauge(text string, at int) (Gauge, bool) {
	g := Gauge{Span: diag.Span{Start: at, End: at + len(text)}}
	ws := words(text)
	split := equalsAt(text, ws)
	if split < 0 {
		return g, false
	}
	for i := 0; i+1 < len(ws) && ws[i].start < split; i++ {
		n, _, ok := measure.Amount(text[ws[i].start:])
		if !ok || !ws[i].startsDigit() {
			continue
		}
		unit := ws[i+1].text
		if glued := ws[i].glued(); glued != "" && asciiLetter(glued[0]) {
			unit = glued
		}
		switch {
		case rowWords[unit]:
			if g.Rows == 0 {
				g.Rows = n
			}
		case g.Stitches == 0 && !lengthWords[unit]:
			g.Stitches = n
			if unit != "sts" && unit != "st" && unit != "stitches" {
				g.Pattern = unit
			}
		}
	}
	length, rest, ok := lengthIn(text[split:])
	if !ok || g.Stitches == 0 && g.Rows == 0 {
		return g, false
	}
	g.Width, g.Height = length, length
	if by := strings.TrimLeft(rest, " "); strings.HasPrefix(by, "x") || strings.HasPrefix(by, "×") || strings.HasPrefix(by, "by ") {
		if second, after, ok := lengthIn(by); ok {
			g.Height, rest = second, after
		}
	}
	if name := gaugePattern(rest); name != "" {
		g.Pattern = name
	}
	return g, true
}

var lengthWords = set("in inch inches ins cm cms mm mm-hook")

// equalsAt returns where the length side of a gauge starts, -1 for nowhere.
func equalsAt(text string, ws []word) int {
	if i := strings.IndexByte(text, '='); i >= 0 {
		return i + 1
	}
	for i, w := range ws {
		switch w.text {
		case "measure", "measures", "equals", "equal", "per", "over", "to":
			if i > 0 {
				return w.end
			}
		}
	}
	return -1
}

// lengthIn finds the first length in text. "4 x 4 in" and "10 x 10 cm" take
// the unit from the second number.
func lengthIn(text string) (measure.Length, string, bool) {
	i := strings.IndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if i < 0 || i > 40 {
		return 0, text, false
	}
	n, rest, ok := measure.Amount(text[i:])
	if !ok {
		return 0, text, false
	}
	unit, after, ok := measure.UnitOf(rest)
	if !ok {
		square := strings.TrimLeft(rest, " ")
		if square != "" && (square[0] == 'x' || strings.HasPrefix(square, "×") || strings.HasPrefix(square, "by ")) {
			if l, _, ok := lengthIn(square[1:]); ok && l > 0 {
				if m, _, _ := measure.Amount(square[strings.IndexFunc(square, func(r rune) bool { return r >= '0' && r <= '9' }):]); m > 0 {
					return measure.Length(n * float64(l) / m), square, true
				}
			}
		}
		return 0, text, false
	}
	return measure.Of(n, unit), after, true
}

// gaugePattern returns the stitch pattern a gauge is "in": "in Mesh Pat,
// after blocking" gives "mesh pat".
func gaugePattern(text string) string {
	low := lower(text)
	for _, mark := range []string{" in ", " over ", " of "} {
		i := strings.Index(low, mark)
		if i < 0 {
			continue
		}
		rest := text[min(len(text), i+len(mark)):]
		if end := strings.IndexAny(rest, ",.;("); end >= 0 {
			rest = rest[:end]
		}
		rest = strings.TrimSpace(rest)
		if end := strings.Index(rest, " with "); end > 0 {
			rest = rest[:end]
		}
		if rest == "" || asciiDigit(rest[0]) || len(rest) > 60 {
			continue
		}
		return lower(rest)
	}
	return ""
}
