package check_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
)

// TestEachCodeByItsExample runs the example of every page and expects its code
// and no error besides; the repaired pattern has neither.
func TestEachCodeByItsExample(t *testing.T) {
	codes := check.Codes()
	if len(codes) < 30 {
		t.Fatalf("only %d codes have a page", len(codes))
	}
	for _, doc := range codes {
		t.Run(doc.Code, func(t *testing.T) {
			if doc.Example == "" {
				return // it says itself why there is none
			}
			r := check.Run(design.Read("example.md", []byte(doc.Example)))
			found := false
			for _, f := range r.Findings {
				if f.Code == diag.Code(doc.Code) {
					found = true
				} else if f.Severity == diag.Error {
					t.Errorf("also found %s: %s", f.Code, f.Message)
				}
			}
			if !found {
				t.Errorf("not found; findings: %v", r.Findings)
			}
			if doc.Repair == "" {
				return
			}
			for _, f := range check.Run(design.Read("repaired.md", []byte(doc.Repair))).Findings {
				if f.Code == diag.Code(doc.Code) || f.Severity == diag.Error {
					t.Errorf("repaired, and still %s: %s\n%s", f.Code, f.Message, f.Detail)
				}
			}
		})
	}
}

// TestPagesOfTheChecks holds docs/checks to the pages and to what the examples
// really print.
func TestPagesOfTheChecks(t *testing.T) {
	for _, doc := range check.Codes() {
		path := filepath.Join("../docs/checks", doc.Code+".md")
		want := page(doc)
		if *update {
			os.MkdirAll(filepath.Dir(path), 0o755)
			if err := os.WriteFile(path, want, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		got, err := os.ReadFile(path)
		if err != nil {
			t.Error(err)
		} else if !bytes.Equal(got, want) {
			t.Errorf("%s is not what the check prints (run with -update)", path)
		}
	}
}

// page writes the documentation of a check.
func page(doc check.CodeDoc) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# %s\n\n`%s`\n\n%s\n", doc.Title, doc.Code, doc.Why)
	if doc.Example == "" {
		return b.Bytes()
	}
	fmt.Fprintf(&b, "\n## A pattern that has it\n\n```\n%s```\n\n", doc.Example)
	d := design.Read("example.md", []byte(doc.Example))
	for _, f := range check.Run(d).Findings {
		if f.Code != diag.Code(doc.Code) {
			continue
		}
		line, _ := d.Position(f.Span.Start)
		fmt.Fprintf(&b, "What is said (%s, line %d):\n\n> %s\n", f.Severity, line, f.Message)
		if f.Detail != "" {
			fmt.Fprintf(&b, ">\n> %s\n", strings.ReplaceAll(f.Detail, "\n", "\n> "))
		}
		if f.Repair != "" {
			fmt.Fprintf(&b, "\nA repair that could be typed: `%s`\n", f.Repair)
		}
		b.WriteByte('\n')
		break
	}
	if doc.Repair != "" {
		fmt.Fprintf(&b, "## Put right\n\n```\n%s```\n", doc.Repair)
	}
	return b.Bytes()
}

// TestEveryCodeHasAPage reads the code of every package for its codes.
func TestEveryCodeHasAPage(t *testing.T) {
	pages := map[string]bool{}
	for _, doc := range check.Codes() {
		pages[doc.Code] = true
	}
	named := regexp.MustCompile(`diag\.Code = "([a-z-]+)"`)
	found := 0
	for _, dir := range []string{"../stitch", "../design", "../fabric", "."} {
		files, _ := filepath.Glob(dir + "/*.go")
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range named.FindAllStringSubmatch(string(text), -1) {
				if found++; !pages[m[1]] {
					t.Errorf("%s: %s has no page", file, m[1])
				}
			}
		}
	}
	if found != len(pages) {
		t.Errorf("%d codes and %d pages", found, len(pages))
	}
}
