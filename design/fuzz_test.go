package design

import (
	"os"
	"path/filepath"
	"testing"
	"unicode/utf8"

	"rowproof/diag"
)

// FuzzRead: whatever the bytes, Read ends without a panic, all its places lie
// inside the document, and every line's text has the length of its span.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"testdata/*/*.txtar", "testdata/*.txt"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			if a := parseArchive(string(text)); a["pattern"] != "" {
				text = []byte(a["pattern"])
			}
			f.Add(text)
		}
	}
	for _, seed := range []string{
		"", "\xff\xfe", "\xff\xfeR\x00o\x00w\x00", "\xef\xbb\xbfRow 1", "\x00\x00", "caf\xe9", "---\n", "---\na: [\n---\n", "---\nnumbers: {a: b, b: a}\n---\n{a}",
		"---\nnumbers:\n  a: 1/0\n---\n", "---\n? a\n: b\n---\n", "---\na: !!int &x *y\n---\n", "Sizes: S (M\nSize M only\nCh 3.\n", "\r\r\n\n", "*a*; **b**",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		d := Read("fuzz.txt", source)
		if !utf8.ValidString(d.Source) {
			t.Fatal("the text read is not valid UTF-8")
		}
		inside := func(what string, s diag.Span) {
			if s.Start < 0 || s.End < s.Start || s.End > len(d.Source) {
				t.Fatalf("%s has a span %v outside 0 to %d", what, s, len(d.Source))
			}
		}
		before := 0
		for _, l := range d.Lines {
			inside("a line", l.Span)
			if len(l.Text) != l.End-l.Start {
				t.Fatalf("line %d: the text has %d bytes and its span %d", l.Number, len(l.Text), l.End-l.Start)
			}
			if l.Start < before || l.Section == nil {
				t.Fatalf("line %d starts at %d, before the line above ends at %d, or has no section", l.Number, l.Start, before)
			}
			before = l.End
			if line, _ := d.Position(l.Start); line != l.Number {
				t.Fatalf("the line that starts on line %d says %d", line, l.Number)
			}
			if line, _ := d.Position(l.End); line != l.Last {
				t.Fatalf("the line that ends on line %d says %d: %q", line, l.Last, l.Text)
			}
			if l.Tree == nil && l.Kind != Definition {
				t.Fatalf("line %d, %s, has no tree", l.Number, l.Kind)
			}
			if l.Only != nil && len(l.Only) != d.SizeCount() {
				t.Fatalf("line %d is for %d sizes of %d", l.Number, len(l.Only), d.SizeCount())
			}
		}
		for _, f := range d.Findings {
			inside(string(f.Code), f.Span)
			if f.Message == "" {
				t.Fatalf("%s has no message", f.Code)
			}
		}
		if len(d.Sizes) > mostSizes {
			t.Fatalf("%d sizes", len(d.Sizes))
		}
	})
}
