package publish_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowproof/design"
	"rowproof/fabric"
	"rowproof/publish"
	"rowproof/stitch"
)

// shape tells a fabric row by row: what every stitch is and where it goes.
func shape(t *testing.T, name string, text []byte) string {
	t.Helper()
	var b strings.Builder
	for _, fab := range fabric.Work(design.Read(name, text)) {
		for _, f := range fab.Faults {
			if !f.Soft {
				t.Errorf("%s size %d: %s does not come out: %+v", name, fab.Size, f.Row, f)
			}
		}
		for _, p := range fab.Pieces {
			fmt.Fprintf(&b, "size %d piece %s, %d chains\n", fab.Size, p.Name, p.Start)
			for _, r := range p.Rows {
				fmt.Fprintf(&b, "%d %v %v", r.Number, r.Side, r.Counting)
				for _, s := range r.Stitches {
					fmt.Fprintf(&b, " %d>%d", s.Kind, s.Into)
				}
				b.WriteByte('\n')
			}
		}
	}
	return b.String()
}

// TestPublishedTextGivesTheSameFabric reads each pattern, publishes it in its
// own terms, in US and in UK terms, reads the published text as a stranger's
// pattern, and expects every stitch of every row in every size to be the same.
// "What ships is what was proved."
func TestPublishedTextGivesTheSameFabric(t *testing.T) {
	files, _ := filepath.Glob("../examples/*.md")
	cases, _ := filepath.Glob("../check/testdata/cases/right/*.txt")
	if files = append(files, cases...); len(files) < 15 {
		t.Fatalf("only %d patterns", len(files))
	}
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want := shape(t, file, source)
		for _, terms := range []stitch.Terms{stitch.UnknownTerms, stitch.US, stitch.UK} {
			t.Run(filepath.Base(file)+" "+terms.String(), func(t *testing.T) {
				var text bytes.Buffer
				d := design.Read(file, source)
				if err := publish.Text(&text, d, publish.Options{Terms: terms}); err != nil {
					t.Fatal(err)
				}
				if got := shape(t, "published.txt", text.Bytes()); got != want {
					t.Errorf("the published text gives another fabric:\n%s", firstDifference(want, got))
				}
			})
		}
	}
}

// TestOneSizeGivesTheSameFabric publishes each size alone, rows in ranges and
// every row written out, and expects the rows of that size.
func TestOneSizeGivesTheSameFabric(t *testing.T) {
	files, _ := filepath.Glob("../examples/*.md")
	cases, _ := filepath.Glob("../check/testdata/cases/right/*.txt")
	for _, file := range append(files, cases...) {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d := design.Read(file, source)
		all := fabric.Work(d)
		for size, name := range d.Sizes {
			for _, every := range []bool{false, true} {
				var text bytes.Buffer
				if err := publish.Text(&text, d, publish.Options{Size: name, EveryRow: every}); err != nil {
					t.Fatal(err)
				}
				one := fabric.Work(design.Read("one.txt", text.Bytes()))[0]
				if got, want := counts(one), counts(all[size]); got != want {
					t.Errorf("%s size %s, every row %v:\n%s", file, name, every, firstDifference(want, got))
				}
			}
		}
	}
}

// counts tells the stitch count of every row of a fabric.
func counts(f *fabric.Fabric) string {
	var b strings.Builder
	for _, p := range f.Pieces {
		fmt.Fprintf(&b, "%d:", p.Start)
		for _, r := range p.Rows {
			fmt.Fprintf(&b, " %d", r.Counting)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// firstDifference shows the first line in which two texts differ.
func firstDifference(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			other := "(nothing)"
			if i < len(b) {
				other = b[i]
			}
			return fmt.Sprintf("line %d\nwant %.200s\ngot  %.200s", i+1, a[i], other)
		}
	}
	return "the second is longer"
}
