package publish

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
)

const raglanText = `Yoke

Sizes: S (M)
Row 11: Ch 1, sc in each st across, turn. 36 (41) sts.
Row 12: *sc in next 4 sts, sc2tog; rep from * to end. 30 (35) sts.
Row 13: Ch 1, sc in first sc, *ch 1, sk next sc, sc in next ch-1 sp; rep from * to last 2 sc, ch 1, sk next sc, sc in last sc, turn, and so on and on. 81 (89) sts.
`

func spanOf(text, part string) diag.Span {
	i := strings.Index(text, part)
	return diag.Span{Start: i, End: i + len(part)}
}

func sampleReport() *check.Report {
	r := &check.Report{
		Design: &design.Design{File: "raglan.txt", Source: raglanText},
		Sizes:  []string{"S", "M"}, Rows: 412, Stitches: 31544,
	}
	r.Instructions.Total, r.Instructions.Worked, r.Instructions.Measured, r.Instructions.NotWorked = 41, 39, 1, 1
	r.Findings = []diag.Finding{{
		Severity: diag.Error, Code: "repeat-remainder", Row: "Row 12", Piece: "Yoke", Sizes: []string{"M"},
		Span:    spanOf(raglanText, "*sc in next 4 sts, sc2tog"),
		Also:    []diag.Span{spanOf(raglanText, "36 (41) sts")},
		Message: "Row 12 does not come out even in size M",
		Detail:  "Row 11 leaves 36 (41) stitches to work into:\n  S   6 repeats use 36, none left over\n  M   6 repeats use 36, 5 left over",
		Repair:  "end Row 12 with \"rep from * 5 more times, sc in last 0 (5) sts\", which makes 30 (35) sts\nleave 42 stitches in size M at the end of Row 11, which makes 30 (35) sts",
	}, {
		Severity: diag.Warning, Code: "stated-count", Row: "Row 13", Piece: "Yoke", Sizes: []string{"S", "M"},
		Span:    spanOf(raglanText, "ch 1, sk next sc, sc in last sc"),
		Message: "Row 13 says that it makes 81 stitches in size S and in size M 89 stitches, but it makes 80 and 88 of them",
		Repair:  "80 (88) sts",
	}}
	r.Pieces = []check.Piece{{Name: "Yoke", Rows: []check.RowCount{{Label: "Row 11", Line: 4, Counts: []int{36, 41}}, {Label: "Row 12", Line: 5, Counts: []int{30, 35}}}}}
	return r
}

var update = flag.Bool("update", false, "rewrite the files under testdata")

// golden compares got with a file under testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; got:\n%s\nwant:\n%s", name, got, want)
	}
}

func TestFindingsOnPaper(t *testing.T) {
	var out bytes.Buffer
	if err := Findings(&out, sampleReport(), Screen{}); err != nil {
		t.Fatal(err)
	}
	golden(t, "findings.txt", out.String())
	for i, l := range strings.Split(out.String(), "\n") {
		if n := columns(l); n > 80 {
			t.Errorf("line %d takes %d columns; want 80 at most: %s", i+1, n, l)
		}
	}
	out.Reset()
	if err := FindingsJSON(&out, sampleReport()); err != nil {
		t.Fatal(err)
	}
	golden(t, "findings.json", out.String())
}

func TestColourChangesNoWord(t *testing.T) {
	var paper, screen bytes.Buffer
	Findings(&paper, sampleReport(), Screen{})
	Findings(&screen, sampleReport(), Screen{Width: 80, Colour: true})
	bare := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(screen.String(), "")
	if bare == screen.String() {
		t.Error("a screen that shows colour got none")
	}
	if strings.Contains(paper.String(), "\x1b") {
		t.Error("colour was written though the screen shows none")
	}
	if bare != paper.String() {
		t.Errorf("without its colours the screen reads\n%s\nwant\n%s", bare, paper.String())
	}
}

// Nine sizes fit a page of 80 columns.
func TestNineSizesFit(t *testing.T) {
	r := sampleReport()
	r.Findings = nil
	r.Instructions = check.Instructions{Total: 40, Worked: 40}
	r.Sizes = []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"}
	counts := []int{81, 89, 97, 105, 113, 121, 129, 137, 1145}
	r.Pieces = []check.Piece{
		{Name: "Back", Rows: []check.RowCount{{Line: 4, Counts: counts}, {Line: 5, Counts: counts}}},
		{Name: "Sleeve (make 2), worked from the cuff up and joined in the round", Rows: []check.RowCount{
			{Line: 4, Counts: counts}, {Line: 5, Counts: []int{-1, -1, 40, 40, 40, 40, 40, 40, 40}}}},
	}
	var out bytes.Buffer
	Findings(&out, r, Screen{})
	golden(t, "nine-sizes.txt", out.String())
}

// What stands in a pattern cannot steer the terminal.
func TestHostileWords(t *testing.T) {
	text := "Row 1: \x1b[2J\u202eevil\r\x07 sc\n"
	r := &check.Report{Design: &design.Design{File: "\x1b[31mx", Source: text}, Rows: 1}
	r.Findings = []diag.Finding{{Severity: diag.Error, Code: "x", Span: spanOf(text, "evil"), Message: "a\x1b[0m", Detail: "b\x1b", Repair: "c\x1b", Piece: "\x1b"}}
	var out bytes.Buffer
	Findings(&out, r, Screen{})
	for _, bad := range []string{"\x1b", "\u202e", "\x07", "\r"} {
		if strings.Contains(out.String(), bad) {
			t.Errorf("%q reached the terminal:\n%q", bad, out.String())
		}
	}
}
