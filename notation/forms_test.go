package notation

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rowproof/stitch"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// A form is a line of the files in testdata/forms.
type form struct {
	text string
	opt  Options
}

// formsIn reads a file of forms: an instruction a line, "# ..." for remarks
// and "! UK 3" for the terms and the number of sizes of what follows.
func formsIn(tb testing.TB, path string) []form {
	tb.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		tb.Fatal(err)
	}
	var list []form
	opt := Options{Terms: stitch.US}
	for _, line := range strings.Split(string(data), "\n") {
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "# "):
		case strings.HasPrefix(line, "! "):
			for _, word := range strings.Fields(line[1:]) {
				switch word {
				case "US":
					opt.Terms = stitch.US
				case "UK":
					opt.Terms = stitch.UK
				default:
					if opt.Sizes, err = strconv.Atoi(word); err != nil {
						tb.Fatalf("%s: %v", path, err)
					}
				}
			}
		default:
			list = append(list, form{line, opt})
		}
	}
	return list
}

// forms reads all of them.
func forms(tb testing.TB) []form {
	tb.Helper()
	paths, err := filepath.Glob("testdata/forms/*.txt")
	if err != nil || len(paths) == 0 {
		tb.Fatal("no forms", err)
	}
	var list []form
	for _, path := range paths {
		list = append(list, formsIn(tb, path)...)
	}
	return list
}

// Every written form reads into the tree that its golden file has. The files
// name the sources of the forms, docs/sources.md "Written forms".
func TestForms(t *testing.T) {
	paths, err := filepath.Glob("testdata/forms/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatal("no forms", err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txt"), func(t *testing.T) {
			var got strings.Builder
			for _, f := range formsIn(t, path) {
				line := Parse(f.text, 0, f.opt)
				got.WriteString(f.text + "\n    " + line.String() + "\n")
				for _, s := range line.Unread {
					got.WriteString("    not read: " + f.text[s.Start:s.End] + "\n")
				}
			}
			golden := strings.TrimSuffix(path, ".txt") + ".golden"
			if *update {
				if err := os.WriteFile(golden, []byte(got.String()), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			diffLines(t, got.String(), string(want))
		})
	}
}

// diffLines reports the lines that differ, each under the form it belongs to.
func diffLines(t *testing.T, got, want string) {
	t.Helper()
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	if len(g) != len(w) {
		t.Errorf("%d lines, want %d", len(g), len(w))
	}
	for i := range min(len(g), len(w)) {
		if g[i] != w[i] {
			t.Errorf("line %d\n got %s\nwant %s", i+1, g[i], w[i])
		}
	}
}

// The forms are made to be read: few words of them stay unread, and a change
// that reads fewer shows here.
func TestFormsAreRead(t *testing.T) {
	list := forms(t)
	unread := 0
	for _, f := range list {
		if len(Parse(f.text, 0, f.opt).Unread) > 0 {
			unread++
			t.Logf("not read whole: %s", f.text)
		}
	}
	if limit := len(list) / 25; unread > limit {
		t.Errorf("%d of %d forms are not read whole, want at most %d", unread, len(list), limit)
	}
}

func BenchmarkParse(b *testing.B) {
	list := forms(b)
	size := 0
	for _, f := range list {
		size += len(f.text)
	}
	b.SetBytes(int64(size))
	b.ReportAllocs()
	for b.Loop() {
		for _, f := range list {
			Parse(f.text, 0, f.opt)
		}
	}
}
