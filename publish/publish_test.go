package publish

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

func patterns(t *testing.T) map[string]*design.Design {
	t.Helper()
	files, err := filepath.Glob("testdata/patterns/*")
	if err != nil || len(files) < 3 {
		t.Fatalf("patterns: %v, %v", files, err)
	}
	all := map[string]*design.Design{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		all[filepath.Base(f)] = design.Read(filepath.Base(f), data)
	}
	return all
}

func asText(t *testing.T, d *design.Design, opt Options) string {
	t.Helper()
	var out bytes.Buffer
	if err := Text(&out, d, opt); err != nil {
		t.Fatalf("Text(%s, %+v): %v", d.File, opt, err)
	}
	return out.String()
}

// made tells what a pattern makes: the count of every row of every piece.
func made(d *design.Design) string {
	r := check.Run(d)
	var b strings.Builder
	fmt.Fprintf(&b, "sizes %v rows %d stitches %d errors %d not worked %d\n", r.Sizes, r.Rows, r.Stitches, r.Errors(), r.Instructions.NotWorked)
	for _, p := range r.Pieces {
		for _, row := range p.Rows {
			fmt.Fprintf(&b, "%v\n", row.Counts)
		}
	}
	return b.String()
}

// shape writes what a tree says, without places and spellings.
func shape(d *design.Design) string {
	var b strings.Builder
	for _, l := range d.Lines {
		if l.Tree != nil && (l.Kind == design.Instruction || l.Kind == design.Foundation) {
			shapeOf(&b, reflect.ValueOf(l.Tree))
			b.WriteByte('\n')
		}
	}
	return b.String()
}

func shapeOf(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			b.WriteString("-")
			return
		}
		shapeOf(b, v.Elem())
	case reflect.Struct:
		b.WriteString(v.Type().Name() + "{")
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.Type != reflect.TypeFor[notation.Span]() && f.Name != "Text" && f.Name != "Live" {
				shapeOf(b, v.Field(i))
				b.WriteByte(' ')
			}
		}
		b.WriteString("}")
	case reflect.Slice:
		b.WriteString("[")
		if v.Type().Elem() != reflect.TypeFor[notation.Span]() {
			for i := range v.Len() {
				shapeOf(b, v.Index(i))
			}
		}
		b.WriteString("]")
	default:
		fmt.Fprint(b, v.Interface())
	}
}

// What is printed is what was proved: read again as a stranger's pattern, it
// gives the same fabric.
func TestTextReadAgain(t *testing.T) {
	for name, d := range patterns(t) {
		want := made(d)
		if !strings.Contains(want, "errors 0 not worked 0") {
			t.Errorf("%s does not come out: %s", name, want)
		}
		for _, opt := range []Options{{}, {Terms: stitch.US}, {Terms: stitch.UK}} {
			text := asText(t, d, opt)
			if got := made(design.Read("again.txt", []byte(text))); got != want {
				t.Errorf("%s %+v makes\n%s\nwant\n%s\n%s", name, opt, got, want, text)
			}
		}
	}
}

func TestThereAndBackInTerms(t *testing.T) {
	for name, d := range patterns(t) {
		plain := design.Read("plain.txt", []byte(asText(t, d, Options{})))
		other := stitch.US + stitch.UK - d.Terms
		there := design.Read("there.txt", []byte(asText(t, d, Options{Terms: other})))
		if there.Terms != other || there.TermsBy != "said so" {
			t.Errorf("%s in %v terms is read in %v terms, %s", name, other, there.Terms, there.TermsBy)
		}
		back := design.Read("back.txt", []byte(asText(t, there, Options{Terms: d.Terms})))
		if got, want := shape(there), shape(plain); got != want {
			t.Errorf("%s in %v terms reads\n%s\nwant\n%s", name, other, got, want)
		}
		if got, want := shape(back), shape(plain); got != want {
			t.Errorf("%s there and back reads\n%s\nwant\n%s", name, got, want)
		}
	}
}

// One size of a pattern is that size of all of them.
func TestOneSize(t *testing.T) {
	for name, d := range patterns(t) {
		whole := check.Run(d)
		for i, size := range d.Sizes {
			text := asText(t, d, Options{Size: size})
			one := check.Run(design.Read("one.txt", []byte(text)))
			if len(one.Sizes) > 1 {
				t.Errorf("%s size %s is read in sizes %v\n%s", name, size, one.Sizes, text)
			}
			if one.Errors() > 0 || one.Stitches != whole.Fabrics[i].Stitches || one.Rows != whole.Fabrics[i].Rows {
				t.Errorf("%s size %s: %d errors, %d rows, %d stitches; want 0, %d, %d\n%s", name, size,
					one.Errors(), one.Rows, one.Stitches, whole.Fabrics[i].Rows, whole.Fabrics[i].Stitches, text)
			}
		}
	}
}

// Every row written out makes the same as the ranges.
func TestEveryRow(t *testing.T) {
	for name, d := range patterns(t) {
		whole := check.Run(d)
		for i, size := range d.Sizes {
			text := asText(t, d, Options{Size: size, EveryRow: true})
			again := design.Read("every.txt", []byte(text))
			one := check.Run(again)
			if one.Errors() > 0 || one.Stitches != whole.Fabrics[i].Stitches || one.Rows != whole.Fabrics[i].Rows {
				t.Errorf("%s size %s: %d errors, %d rows, %d stitches; want 0, %d, %d\n%s", name, size,
					one.Errors(), one.Rows, one.Stitches, whole.Fabrics[i].Rows, whole.Fabrics[i].Stitches, text)
			}
			for _, l := range again.Lines {
				if l.Tree != nil && l.Kind == design.Instruction && hasAgain(l.Tree.Steps) {
					t.Errorf("%s size %s line %d still repeats other rows: %s", name, size, l.Number, l.Text)
				}
			}
		}
	}
}

func TestEveryRowNeedsASize(t *testing.T) {
	d := patterns(t)["cap.txt"]
	var out bytes.Buffer
	err := Text(&out, d, Options{EveryRow: true})
	if err == nil || !strings.Contains(err.Error(), "not the same in every size") || !strings.Contains(err.Error(), "--size child") {
		t.Errorf("every row of all sizes gives %v; want an error that asks for a size", err)
	}
	if out.Len() > 0 {
		t.Errorf("an error came with text: %s", out.String())
	}
}

func TestUnknownSize(t *testing.T) {
	err := Text(&bytes.Buffer{}, patterns(t)["cap.txt"], Options{Size: "XXL"})
	if want := `the pattern has no size "XXL"; its sizes are child, teen and adult.`; err == nil || err.Error() != want {
		t.Errorf("size XXL gives %v; want %s", err, want)
	}
}

func TestGoldenTexts(t *testing.T) {
	all := patterns(t)
	for _, tt := range []struct {
		golden, file string
		opt          Options
	}{
		{"panel-uk.txt", "panel.txt", Options{Terms: stitch.UK, Units: notation.Centimetre}},
		{"panel-L.txt", "panel.txt", Options{Size: "L"}},
		{"cap-adult-every-row.txt", "cap.txt", Options{Size: "adult", EveryRow: true}},
		{"saltbox.txt", "saltbox.md", Options{}},
		{"turns-every-row.txt", "turns.txt", Options{EveryRow: true}},
	} {
		golden(t, tt.golden, asText(t, all[tt.file], tt.opt))
	}
	var page bytes.Buffer
	if err := HTML(&page, all["saltbox.md"], Options{Terms: stitch.UK}); err != nil {
		t.Fatal(err)
	}
	golden(t, "saltbox-uk.html", page.String())
}

func TestNothingHostileReachesThePage(t *testing.T) {
	source := "# <script>alert(1)</script>\n\n<img src=x onerror=alert(2)> [go](javascript:alert(3)) ![p](http://example.com/p.png)\n\n" +
		"## Back\n\nCh 25.\n\n**Row 1 <b onclick=x>:** Sc in 2nd ch from hook and in each ch across, turn. (24 sc) <script>alert(4)</script>\n"
	for _, file := range []string{"hostile.md", "hostile.txt"} {
		var page bytes.Buffer
		if err := HTML(&page, design.Read(file, []byte(source)), Options{}); err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"<script", "<img", "href=\"javascript:", "<b onclick", "src="} {
			if strings.Contains(page.String(), bad) {
				t.Errorf("%s: %q reached the page:\n%s", file, bad, page.String())
			}
		}
	}
}

// Any bytes at all are written without a crash.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "{", "Row 1: {", "Rows 1-999999999: Rep Row 1.", "Sizes: S (M)\nRows 2-3 (-, 5): Rep Row 9.\n", "14 (", "Row 1:\nRow 2: Rep Row 1.",
		"Sizes: S (M)\n\nCh 9 (0).\nRow 1: *[sc in next 2 (0) sts, sk 2 (0) sts] 2 (0) times, ch 1 (0); rep from * to last 3 (0) sts, ending with sc in last 1 (0) sts. (9 (0) sc, 1 (0) sps)\nRep last row 2 (0) more times.\nDec 1 st at each end every 2nd row 2 (0) times, then every row 3 times.\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d := design.Read("fuzz.md", []byte(s))
		for _, opt := range []Options{{}, {Terms: stitch.UK, Units: notation.Centimetre, EveryRow: true}, {Terms: stitch.US, Units: notation.Inch}} {
			if len(d.Sizes) > 0 {
				opt.Size = d.Sizes[len(d.Sizes)-1]
			}
			Text(&bytes.Buffer{}, d, opt)
			HTML(&bytes.Buffer{}, d, opt)
		}
		Reading(&bytes.Buffer{}, d, Screen{})
		ReadingJSON(&bytes.Buffer{}, d)
	})
}
