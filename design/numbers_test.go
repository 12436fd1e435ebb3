package design

import (
	"testing"

	"rowproof/notation"
)

func TestValue(t *testing.T) {
	d := Read("v.md", []byte("---\nsizes: S, M, L\nnumbers:\n  body: [81, 89, 97]\n---\nCh {body + 1}.\n"))
	values := func(ns ...int) *notation.Number {
		n := &notation.Number{}
		for _, v := range ns {
			n.Values = append(n.Values, notation.Value{N: v, None: v < 0})
		}
		return n
	}
	for _, tt := range []struct {
		name string
		n    *notation.Number
		size int
		want int
		ok   bool
	}{
		{"nothing said is one", nil, 1, 1, true},
		{"one for all sizes", values(7), 2, 7, true},
		{"a list", values(1, 2, 3), 1, 2, true},
		{"a dash", values(1, -1, 3), 1, 0, false},
		{"too short a list", values(1, 2), 1, 0, false},
		{"no such size", values(1, 2, 3), 3, 0, false},
		{"no size below the first", values(1, 2, 3), -1, 0, false},
		{"a live number of the text", &notation.Number{Live: "body + 1"}, 2, 98, true},
		{"one the text does not have", &notation.Number{Live: "2 body"}, 0, 162, true},
		{"a name that is not bound", &notation.Number{Live: "boddy"}, 0, 0, false},
		{"a division that leaves something", &notation.Number{Live: "body / 2"}, 0, 0, false},
	} {
		if got, ok := d.Value(tt.n, tt.size); ok != tt.ok || ok && got != tt.want {
			t.Errorf("%s: Value = %d, %v; want %d, %v", tt.name, got, ok, tt.want, tt.ok)
		}
	}
	if got := d.ListProblem(values(1, 2)); got != "2 numbers where there are 3 sizes" {
		t.Errorf("ListProblem of two numbers = %q", got)
	}
	for _, n := range []*notation.Number{nil, values(1), values(1, 2, 3), {Live: "body"}} {
		if got := d.ListProblem(n); got != "" {
			t.Errorf("ListProblem(%+v) = %q; want nothing", n, got)
		}
	}
	if one := Read("one.txt", []byte("Ch 25.")); one.ListProblem(values(1, 2)) == "" {
		t.Error("a list in a pattern of one size is no problem")
	}
}

func TestSizeNames(t *testing.T) {
	for _, tt := range []struct {
		text string
		want string
	}{
		{"S (M, L, XL)", "S|M|L|XL"}, {"XS (S, M, L, XL, 2X, 3X, 4X, 5X)", "XS|S|M|L|XL|2X|3X|4X|5X"}, {"S, M, L", "S|M|L"}, {"S/M/L", "S|M|L"},
		{"S/M (L/XL, 2X/3X)", "S/M|L/XL|2X/3X"}, {"Small (Medium, Large)", "Small|Medium|Large"}, {"6 (8, 10)", "6|8|10"}, {"women XS-5X", "XS|S|M|L|XL|2X|3X|4X|5X"},
		{"S to XL", "S|M|L|XL"}, {"XS–L", "XS|S|M|L"}, {"S M L", "S|M|L"}, {"S (M) L (XL)", "S|M|L|XL"}, {"S[M, L]", "S|M|L"}, {"S, M and L", "S|M and L"}, {"M", "M"},
		{"0-3 months (3-6 months, 6-12 months)", "0-3 months|3-6 months|6-12 months"},
	} {
		got := ""
		for i, n := range sizeNames(tt.text) {
			if i > 0 {
				got += "|"
			}
			got += n
		}
		if got != tt.want {
			t.Errorf("sizeNames(%q) = %q; want %q", tt.text, got, tt.want)
		}
	}
}

func TestTooManySizes(t *testing.T) {
	text := "Sizes: "
	for range 500 {
		text += "a1, "
	}
	d := Read("many.txt", []byte(text+"\n\nCh 25.\n"))
	if len(d.Sizes) != 60 {
		t.Errorf("500 sizes are read as %d; want 60", len(d.Sizes))
	}
	if len(d.Findings) == 0 || d.Findings[0].Code != CodeTooManySizes {
		t.Errorf("500 sizes are reported as %+v; want %s", d.Findings, CodeTooManySizes)
	}
}

func TestGauge(t *testing.T) {
	for _, tt := range []struct {
		text         string
		sts, rows    float64
		width, heigh float64 // cm
		pattern      string
	}{
		{"14 sts and 16 rows = 4 in (10 cm) in Mesh Pat, after blocking", 14, 16, 10.16, 10.16, "mesh pat"},
		{"17 sts x 15 rows = 10 cm", 17, 15, 10, 10, ""},
		{"7 shells and 12 rows = 5 in", 7, 12, 12.7, 12.7, "shells"},
		{"16 htr and 12 rows to 10 cm using 5 mm hook", 16, 12, 10, 10, "htr"},
		{"18 sts and 20 rows measure 10 x 12 cm", 18, 20, 10, 12, ""},
		{"4 sts = 1\"", 4, 0, 2.54, 2.54, ""},
		{"16½ sts = 4 in", 16.5, 0, 10.16, 10.16, ""},
	} {
		g, ok := readGauge(tt.text, 0)
		near := func(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }
		if !ok || g.Stitches != tt.sts || g.Rows != tt.rows || !near(float64(g.Width), tt.width) || !near(float64(g.Height), tt.heigh) || g.Pattern != tt.pattern {
			t.Errorf("%q is read as %+v, %v", tt.text, g, ok)
		}
	}
	for _, text := range []string{"", "check your gauge", "14 sts = many", "= 4 in", "14 sts"} {
		if g, ok := readGauge(text, 0); ok {
			t.Errorf("%q is read as the gauge %+v", text, g)
		}
	}
}
