package rowproof_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
	"rowproof/publish"
)

func proved(t *testing.T, name string) *check.Report {
	t.Helper()
	return check.Run(design.Read(name, []byte(readFile(t, name))))
}

// TestExamplesAreProved works every example: each instruction stitch by
// stitch, and nothing to find.
func TestExamplesAreProved(t *testing.T) {
	files, err := filepath.Glob("examples/*.md")
	if err != nil || len(files) < 3 {
		t.Fatalf("examples %v, %v; want three at least", files, err)
	}
	for _, name := range files {
		r := proved(t, name)
		if n := r.Instructions; n.Total == 0 || n.Worked != n.Total {
			t.Errorf("%s: instructions %+v; want all worked", name, n)
		}
		for _, f := range r.Findings {
			if f.Severity >= diag.Warning {
				line, _ := r.Design.Position(f.Span.Start)
				t.Errorf("%s:%d: %s %s: %s\n%s", name, line, f.Severity, f.Code, f.Message, f.Detail)
			}
		}
	}
}

// TestPulloverIsAWholeGarment holds the example that the front page names to
// what it is there for. Worked apart, by rules written for these few sentences
// alone, its nine sizes take 215,302 stitches, chains counted and each piece
// once; with both sleeves 253,616.
func TestPulloverIsAWholeGarment(t *testing.T) {
	r := proved(t, "examples/saltmarsh-pullover.md")
	if want := "XS S M L XL 2X 3X 4X 5X"; strings.Join(r.Sizes, " ") != want {
		t.Errorf("sizes %v, want %s", r.Sizes, want)
	}
	if r.Stitches != 215_302 {
		t.Errorf("%d stitches in nine sizes, want 215,302", r.Stitches)
	}
}

// TestHatIsTheSameInBothTerms works the hat in US and in UK terms: the same
// rounds with the same counts.
func TestHatIsTheSameInBothTerms(t *testing.T) {
	us, uk := proved(t, "examples/turnstone-hat.md"), proved(t, "examples/turnstone-hat-uk.md")
	if us.Stitches != uk.Stitches || us.Rows != uk.Rows || us.Stitches == 0 {
		t.Errorf("US %d stitches in %d rounds, UK %d in %d; want the same", us.Stitches, us.Rows, uk.Stitches, uk.Rows)
	}
}

var update = flag.Bool("update", false, "rewrite what README.md shows")

// TestReadmeShowsWhatComesOut works the six lines of the front page and
// compares the finding printed below them; the counts that follow it on a
// screen are left out there. With -update the page is put right.
func TestReadmeShowsWhatComesOut(t *testing.T) {
	readme := readFile(t, "README.md")
	blocks := codeBlocks(readme)
	if len(blocks) != 4 {
		t.Fatalf("README.md has %d code blocks, want 4", len(blocks))
	}
	r := check.Run(design.Read("edging.txt", []byte(blocks[2]+"\n")))
	if r.Errors() != 1 {
		t.Errorf("the pattern in README.md has %d errors, want one", r.Errors())
	}
	var out bytes.Buffer
	if err := publish.Findings(&out, r, publish.Screen{}); err != nil {
		t.Fatal(err)
	}
	finding, _, _ := strings.Cut(out.String(), "\n───")
	finding = strings.TrimSpace(finding)
	if finding == blocks[3] {
		return
	}
	if *update {
		readme = strings.Replace(readme, blocks[3], finding, 1)
		if err := os.WriteFile("README.md", []byte(readme), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Errorf("README.md shows\n%s\nand what comes out is\n%s", blocks[3], finding)
}
