package measure

import (
	"math"
	"testing"
)

func TestParse(t *testing.T) {
	for _, tt := range []struct {
		text string
		want Length
	}{
		{"14 in", 14 * Inch},
		{"14½ in", 14.5 * Inch},
		{"14 1/2\"", 14.5 * Inch},
		{"14-1/2 inches", 14.5 * Inch},
		{"14.5\"", 14.5 * Inch},
		{"5/8 in.", 0.625 * Inch},
		{"½ inch", 0.5 * Inch},
		{"14 ½ ins", 14.5 * Inch},
		{"35.5 cm", 35.5},
		{"35,5cm", 35.5},
		{"6 mm", 0.6},
		{"1 ⅝ in", 1.625 * Inch},
		{"10 centimeters", 10},
		{"12”", 12 * Inch},
	} {
		got, err := Parse(tt.text)
		if err != nil || math.Abs(float64(got-tt.want)) > 1e-9 {
			t.Errorf("Parse(%q) = %v, %v; want %v", tt.text, got, err, tt.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, text := range []string{"", "in", "14", "14 sts", "14 in wide", "1/0 in", "99999999 in", "14 inks"} {
		if got, err := Parse(text); err == nil {
			t.Errorf("Parse(%q) = %v and no error; want an error", text, got)
		}
	}
}

func TestInches(t *testing.T) {
	for _, tt := range []struct {
		l    Length
		want string
	}{
		{14 * Inch, "14"}, {14.5 * Inch, "14½"}, {0.25 * Inch, "¼"}, {0, "0"},
		{14.13 * Inch, "14¼"}, {14.12 * Inch, "14"}, {2.875 * Inch, "3"}, {1.75 * Inch, "1¾"}, {-1.5 * Inch, "-1½"},
		{Length(math.Inf(1)), "250000000000000"}, {Length(math.NaN()), "0"},
	} {
		if got := Inches(tt.l); got != tt.want {
			t.Errorf("Inches(%v cm) = %q; want %q", float64(tt.l), got, tt.want)
		}
	}
}

func TestCentimetres(t *testing.T) {
	for _, tt := range []struct {
		l    Length
		want string
	}{
		{35.5, "35.5"}, {35.2, "35"}, {35.25, "35.5"}, {14 * Inch, "35.5"}, {0, "0"}, {-0.5, "-0.5"}, {36.8, "37"},
	} {
		if got := Centimetres(tt.l); got != tt.want {
			t.Errorf("Centimetres(%v cm) = %q; want %q", float64(tt.l), got, tt.want)
		}
	}
}

// A length printed and read again is within half of the printed step.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"14½ in", "14 1/2\"", "5/8 in", "35.5 cm", "½", "1⁄2 in", "١ in", "1,", "1/"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := Parse(text)
		if err != nil {
			return
		}
		back, err := Parse(Inches(l) + " in")
		if err != nil || math.Abs(float64(back-l)) > float64(Inch)/8+1e-6 {
			t.Errorf("%q is %v cm, printed as %s in and read again as %v cm, %v", text, l, Inches(l), back, err)
		}
	})
}
