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
			fmt.Fprintf(&b, "size %d, %d chains\n", fab.Size, p.Start)
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
	for _, file := range patternFiles(t) {
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

// patternFiles are all the patterns at hand that come out: the examples, those
// of the checks, and one graded with a 0 wherever a size leaves a step out.
func patternFiles(t *testing.T) []string {
	t.Helper()
	files := []string{"testdata/zeros.txt"}
	for _, in := range []string{"../examples/*.md", "../check/testdata/cases/right/*.txt", "../check/testdata/styles/*.txt"} {
		more, err := filepath.Glob(in)
		if err != nil || len(more) < 3 {
			t.Fatalf("%s: %d patterns, %v", in, len(more), err)
		}
		files = append(files, more...)
	}
	return files
}

// TestOneSizeGivesTheSameFabric publishes each size alone, in each system of
// terms, rows in ranges and every row written out, and expects the rows and
// stitches of that size, and no fault that the whole pattern does not have.
func TestOneSizeGivesTheSameFabric(t *testing.T) {
	for _, file := range patternFiles(t) {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d := design.Read(file, source)
		all := fabric.Work(d)
		names := d.Sizes
		if len(names) == 0 {
			names = []string{""}
		}
		for size, name := range names {
			for _, opt := range []publish.Options{{}, {Terms: stitch.US}, {Terms: stitch.UK}, {EveryRow: true}, {Terms: stitch.UK, EveryRow: true}} {
				opt.Size = name
				var text bytes.Buffer
				if err := publish.Text(&text, d, opt); err != nil {
					t.Fatal(err)
				}
				one := fabric.Work(design.Read("one.txt", text.Bytes()))[0]
				if got, want := counts(one), counts(all[size]); got != want {
					t.Errorf("%s %+v:\n%s", file, opt, firstDifference(want, got))
				}
			}
		}
	}
}

// counts tells the stitch count of every row of a fabric, how many stitches
// were made, and how much of it does not come out.
func counts(f *fabric.Fabric) string {
	var b strings.Builder
	for _, p := range f.Pieces {
		fmt.Fprintf(&b, "%d:", p.Start)
		for _, r := range p.Rows {
			fmt.Fprintf(&b, " %d", r.Counting)
		}
		b.WriteByte('\n')
	}
	faults := 0
	for _, fault := range f.Faults {
		if !fault.Soft {
			faults++
		}
	}
	fmt.Fprintf(&b, "%d stitches, %d faults\n", f.Stitches, faults)
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
