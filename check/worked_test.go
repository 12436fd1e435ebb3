package check_test

import (
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"rowproof/check"
	"rowproof/design"
)

// wantError is the want of an archive that must not come out: what is wrong,
// and the line it shows at.
var wantError = regexp.MustCompile(`^error .*?(?:, in size (\S+))?, line (\d+)$`)

// TestPublishedWorkedExamples works the examples that books and pages print
// with their results. Source: docs/sources.md, "Worked examples"; each archive
// names its own.
func TestPublishedWorkedExamples(t *testing.T) {
	files, _ := filepath.Glob("testdata/worked/*.txtar")
	if len(files) < 27 {
		t.Fatalf("only %d worked examples", len(files))
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			pattern, want := workedExample(t, file)
			r := check.Run(design.Read("pattern.txt", pattern))
			if n := r.Instructions; n.Total == 0 || n.Worked+n.Measured != n.Total && want == "ok" {
				t.Errorf("instructions %+v: all should be worked", n)
			}
			if want == "ok" {
				for _, f := range errorsOf(r) {
					line, _ := r.Design.Position(f.Span.Start)
					t.Errorf("line %d, %s: %s %s\n%s", line, f.Row, f.Code, f.Message, f.Detail)
				}
				return
			}
			wantOneError(t, r, want)
		})
	}
}

// workedExample reads an archive: its pattern, and what a check must say.
func workedExample(t *testing.T, file string) (pattern []byte, want string) {
	t.Helper()
	archive, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(archive.Comment), "Source: docs/sources.md ") {
		t.Error("the archive names no source")
	}
	for _, f := range archive.Files {
		switch f.Name {
		case "pattern.txt":
			pattern = f.Data
		case "want":
			want = strings.TrimSpace(string(f.Data))
		}
	}
	return pattern, want
}

func wantOneError(t *testing.T, r *check.Report, want string) {
	t.Helper()
	told := wantError.FindStringSubmatch(want)
	if told == nil {
		t.Fatalf("want is %q: neither ok nor an error with its line", want)
	}
	found := errorsOf(r)
	if len(found) != 1 {
		for _, f := range found {
			t.Logf("%s: %s %s\n%s", f.Row, f.Code, f.Message, f.Detail)
		}
		t.Fatalf("%d errors, want one: %s", len(found), want)
	}
	line, _ := r.Design.Position(found[0].Span.Start)
	if strconv.Itoa(line) != told[2] {
		t.Errorf("found at line %d, want line %s: %s", line, told[2], found[0].Message)
	}
	if told[1] != "" && strings.Join(found[0].Sizes, " ") != told[1] {
		t.Errorf("found in sizes %v, want %s: %s", found[0].Sizes, told[1], found[0].Message)
	}
}
