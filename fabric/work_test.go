package fabric_test

import (
	"os"
	"path/filepath"
	"testing"

	"rowproof/design"
	"rowproof/fabric"
)

// TestLaws holds every row of the right patterns to the laws of the fabric:
// each stitch goes into a place the row below has, no row below goes missing,
// and what a row uses and leaves is what the row below made.
func TestLaws(t *testing.T) {
	files, _ := filepath.Glob("../check/testdata/cases/right/*.txt")
	examples, _ := filepath.Glob("../examples/*.md")
	if len(files)+len(examples) < 14 {
		t.Fatalf("only %d patterns", len(files)+len(examples))
	}
	for _, file := range append(files, examples...) {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, fab := range fabric.Work(design.Read(file, source)) {
			stitches, rows := 0, 0
			for _, p := range fab.Pieces {
				stitches += p.Start
				for i, r := range p.Rows {
					rows++
					stitches += r.Made
					below := len(r.Stitches) + 1<<30
					if r.Below != nil {
						below = len(r.Below.Top)
					} else if i == 0 && p.Start > 0 {
						below = p.Start
					}
					for _, s := range r.Stitches {
						if int(s.Into) >= below {
							t.Fatalf("%s size %d %s: a stitch goes into place %d of %d", file, fab.Size, r.Label, s.Into, below)
						}
					}
				}
			}
			if rows != fab.Rows || stitches != fab.Stitches {
				t.Errorf("%s size %d: %d rows and %d stitches, the pieces have %d and %d", file, fab.Size, fab.Rows, fab.Stitches, rows, stitches)
			}
		}
	}
}
