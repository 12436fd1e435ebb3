package check_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
)

// run checks a pattern file.
func run(t testing.TB, path string) *check.Report {
	t.Helper()
	source, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return check.Run(design.Read(path, source))
}

// errorsOf lists the errors of a report.
func errorsOf(r *check.Report) []diag.Finding {
	var list []diag.Finding
	for _, f := range r.Findings {
		if f.Severity == diag.Error {
			list = append(list, f)
		}
	}
	return list
}

func TestRightCasesComeOut(t *testing.T) {
	files, _ := filepath.Glob("testdata/cases/right/*.txt")
	if len(files) < 12 {
		t.Fatalf("only %d right cases", len(files))
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			r := run(t, file)
			for _, f := range r.Findings {
				if f.Severity == diag.Error || f.Code == check.NotWorked || f.Code == check.UnreadWords {
					line, _ := r.Design.Position(f.Span.Start)
					t.Errorf("line %d, %s: %s %s\n%s", line, f.Row, f.Code, f.Message, f.Detail)
				}
			}
			if n := r.Instructions; n.Total == 0 || n.Worked != n.Total {
				t.Errorf("instructions %+v: all should be worked", n)
			}
		})
	}
}

func TestWrongCasesHaveOneErrorEach(t *testing.T) {
	file, err := os.Open("testdata/cases/wrong/WANT.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 16 {
		t.Fatalf("only %d lines in WANT.csv", len(rows))
	}
	for _, want := range rows[1:] {
		t.Run(want[0], func(t *testing.T) {
			r := run(t, filepath.Join("testdata/cases/wrong", want[0]))
			found := errorsOf(r)
			if len(found) != 1 {
				for _, f := range found {
					line, _ := r.Design.Position(f.Span.Start)
					t.Logf("line %d, %s: %s %s\n%s", line, f.Row, f.Code, f.Message, f.Detail)
				}
				t.Fatalf("%d errors, want one: %s", len(found), want[3])
			}
			f := found[0]
			if where := f.Piece + " " + f.Row; !strings.HasSuffix(want[1], f.Row) || f.Row == "" {
				t.Errorf("found at %q, want %q", where, want[1])
			}
			if strings.Contains(want[1], "Side") && !strings.HasPrefix(f.Piece, want[1][:strings.Index(want[1], "Row")-1]) {
				t.Errorf("found in %q, want %q", f.Piece, want[1])
			}
			sizes := strings.Join(f.Sizes, " ")
			if all := len(f.Sizes) == 0 || slices.Equal(f.Sizes, r.Sizes); want[2] == "all" && !all || want[2] != "all" && sizes != want[2] {
				t.Errorf("sizes %q, want %q", sizes, want[2])
			}
		})
	}
}

// TestManyStylesComeOut works patterns in the ways strangers write them.
func TestManyStylesComeOut(t *testing.T) {
	files, _ := filepath.Glob("testdata/styles/*.txt")
	if len(files) < 45 {
		t.Fatalf("only %d patterns", len(files))
	}
	for _, file := range files {
		r := run(t, file)
		for _, f := range r.Findings {
			if f.Severity == diag.Error || f.Code == check.NotWorked || f.Code == check.UnreadWords {
				line, _ := r.Design.Position(f.Span.Start)
				t.Errorf("%s line %d, %s: %s %s\n%s", file, line, f.Row, f.Code, f.Message, f.Detail)
			}
		}
		if n := r.Instructions; n.Total == 0 || n.Worked+n.Measured != n.Total {
			t.Errorf("%s: instructions %+v", file, n)
		}
	}
}
