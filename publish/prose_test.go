package publish

import (
	"testing"

	"rowproof/design"
	"rowproof/notation"
)

func proseEdition(size, sizes int, units notation.Unit) *edition {
	d := &design.Design{Sizes: []string{"S", "M", "L", "XL"}[:sizes]}
	return &edition{design: d, size: size, sizes: sizes, units: units}
}

func (e *edition) prose(text string) string {
	var c edits
	e.proseChanges(&c, text, 0)
	return c.splice(text, 0, spanAt(0, len(text)))
}

// The written forms of size lists are those of the trade: common practice and
// docs/sources.md T47, T48.
func TestOneSizeOfAList(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"81 (89, 97, 105) sts", "97 sts"},
		{"18(20-24-28) sts", "24 sts"},
		{"18 (20) 24 (28) sts", "24 sts"},
		{"(40, 44, 50, 54) rows", "50 rows"},
		{"61 [67: 73: 79] ch", "73 ch"},
		{"1, 2, (4, 5) times", "4 times"},
		{"- (-, 1, 2) times", "- (-, 1, 2) times"}, // a list starts with a number or a bracket
		{"2 (-, 1, 2) times", "1 times"},
		{"14 (14½, 15 1/2, 16) in", "15 1/2 in"},
		{"36 (40, 44, 48) [91 (102, 112, 122) cm]", "44 [112 cm]"},
		{"about 700–950 (790–1060, 840–1140, 910–1230) m", "about 840–1140 m"},
		{"4 to 5 (5 to 6, 6 to 7, 7 to 8) in", "6 to 7 in"},
		{"5 (6, 7) are not four", "5 (6, 7) are not four"},
		{"(see page 3), 2XL (3) and C2 (3, 4, 5)", "(see page 3), 2XL (3) and C2 (3, 4, 5)"},
	} {
		if got := proseEdition(2, 4, notation.NoUnit).prose(tt.text); got != tt.want {
			t.Errorf("size L of %q is %q; want %q", tt.text, got, tt.want)
		}
	}
}

func TestUnits(t *testing.T) {
	for _, tt := range []struct {
		text, inches, cm string
	}{
		{"4 in (10 cm)", "4 in", "10 cm"},
		{"14 in [35.5 cm] long", "14 in long", "35.5 cm long"},
		{"10 cm / 4\" square", "4\" square", "10 cm square"},
		{"14 (14½) in [35.5 (37) cm]", "14 (14½) in", "35.5 (37) cm"},
		{"5½ in", "5½ in", "14 cm"},
		{"4¾ to 5½ in (12 to 14 cm) of ease", "4¾ to 5½ in of ease", "12 to 14 cm of ease"},
		{"6–8 in deep", "6–8 in deep", "15–20.5 cm deep"},
		{"20 cm", "7¾ in", "20 cm"},
		{"17 sts = 4 in", "17 sts = 4 in", "17 sts = 10 cm"},
		{"5 mm hook", "5 mm hook", "5 mm hook"},
		{"work 2 in next st", "work 2 in next st", "work 2 in next st"},
		{"10 (12) in from beg", "10 (12) in from beg", "25.5 (30.5) cm from beg"},
	} {
		if got := proseEdition(allSizes, 2, notation.Inch).prose(tt.text); got != tt.inches {
			t.Errorf("%q in inches is %q; want %q", tt.text, got, tt.inches)
		}
		if got := proseEdition(allSizes, 2, notation.Centimetre).prose(tt.text); got != tt.cm {
			t.Errorf("%q in centimetres is %q; want %q", tt.text, got, tt.cm)
		}
	}
	if got, want := proseEdition(1, 2, notation.Centimetre).prose("14 (14½) in [35.5 (37) cm]"), "37 cm"; got != want {
		t.Errorf("one size in centimetres is %q; want %q", got, want)
	}
}

func TestSizeNames(t *testing.T) {
	sizes := []string{"S", "M", "2X"}
	for text, want := range map[string]string{
		"Sizes: S (M, 2X)":        "S (M, 2X)",
		"Sizes S, M and 2X.":      "S, M and 2X",
		"Sizes: S - M - 2X":       "S - M - 2X",
		"Stitches: S (M, 3X)":     "",
		"To fit sizes [S: M: 2X]": "S: M: 2X",
	} {
		span, ok := sizeNames(text, sizes)
		if got := text[span.Start:span.End]; got != want || ok != (want != "") {
			t.Errorf("sizeNames(%q) = %q, %v; want %q", text, got, ok, want)
		}
	}
}

func TestWithoutMarker(t *testing.T) {
	for text, want := range map[string]string{
		"Size L only: Work 2 more rows.":    "Work 2 more rows.",
		"For sizes M and L only: Turn.":     "Turn.",
		"All sizes:":                        "",
		"Row 3: Ch 1.":                      "Row 3: Ch 1.",
		"Sizes L (XL) only: Rep Row 2: yes": "Rep Row 2: yes",
	} {
		if got := withoutMarker(text, true); got != want {
			t.Errorf("withoutMarker(%q) = %q; want %q", text, got, want)
		}
	}
	if got := withoutMarker("Sizes: S (M)", false); got != "Sizes: S (M)" {
		t.Errorf("the line that names the sizes became %q", got)
	}
}
