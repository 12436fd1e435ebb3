package design

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "rewrite what the archives expect")

// parseArchive returns the files of an archive by name.
func parseArchive(text string) map[string]string {
	files := map[string]string{}
	for _, f := range txtar.Parse([]byte(text)).Files {
		files[f.Name] = string(f.Data)
	}
	return files
}

// TestArchives reads the pattern of each archive and compares how its lines
// and sections were told apart, and what was found wrong.
func TestArchives(t *testing.T) {
	files, err := filepath.Glob("testdata/*/*.txtar")
	if err != nil || len(files) < 8 {
		t.Fatalf("found %d archives, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.ToSlash(file[len("testdata/"):]), ".txtar"), func(t *testing.T) {
			source, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			a := txtar.Parse(source)
			d := Read(file, []byte(parseArchive(string(source))["pattern"]))
			got := map[string]string{"want/head": headText(d), "want/lines": linesText(d), "want/findings": findingsText(d)}
			for i, f := range a.Files {
				text, is := got[f.Name]
				if !is || string(f.Data) == text {
					continue
				}
				if *update {
					a.Files[i].Data = []byte(text)
					continue
				}
				t.Errorf("%s\ngot:\n%s\nwant:\n%s", f.Name, text, f.Data)
			}
			if *update {
				if err := os.WriteFile(file, txtar.Format(a), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

// headText tells what holds for the whole pattern.
func headText(d *Design) string {
	var b strings.Builder
	fmt.Fprintf(&b, "title: %s\nterms: %s, %s\n", d.Title, d.Terms, d.TermsBy)
	if d.Sizes != nil {
		fmt.Fprintf(&b, "sizes: %s, from the %s\n", strings.Join(d.Sizes, " "), strings.TrimPrefix(d.SizesBy, "the "))
	}
	for _, g := range d.Gauges {
		fmt.Fprintf(&b, "gauge: %v sts, %v rows over %.2f x %.2f cm in %q\n", g.Stitches, g.Rows, float64(g.Width), float64(g.Height), g.Pattern)
	}
	for _, n := range d.Numbers {
		fmt.Fprintf(&b, "number: %s %v\n", n.Name, n.Values)
	}
	for _, s := range d.Seams {
		fmt.Fprintf(&b, "seam: %v to %v\n", s.A, s.B)
	}
	for _, w := range d.TermWords {
		fmt.Fprintf(&b, "%s word: %s, %d\n", w.Terms, w.Word, w.Count)
	}
	return b.String()
}

// linesText lists sections and lines: where, what, for which sizes.
func linesText(d *Design) string {
	var b strings.Builder
	var in *Section
	for _, l := range d.Lines {
		if l.Section != in {
			in = l.Section
			times := ""
			if in.Times != nil {
				times = fmt.Sprintf(" x%d", in.Times.Values[0].N)
			}
			fmt.Fprintf(&b, "%s %q%s\n", in.Kind, in.Title, times)
		}
		where := fmt.Sprint(l.Number)
		if l.Last != l.Number {
			where = fmt.Sprintf("%d-%d", l.Number, l.Last)
		}
		only := ""
		for i, is := range l.Only {
			if is {
				only += " " + d.Sizes[i]
			}
		}
		if only != "" {
			only = " [" + only[1:] + "]"
		}
		if l.Pattern != "" {
			only += " {" + l.Pattern + "}"
		}
		fmt.Fprintf(&b, "  %-5s %-11s%s %s\n", where, l.Kind, only, strings.Join(strings.Fields(l.Text), " "))
	}
	return b.String()
}

// findingsText lists the findings with their places.
func findingsText(d *Design) string {
	var b strings.Builder
	for _, f := range d.Findings {
		line, column := d.Position(f.Span.Start)
		fmt.Fprintf(&b, "%d:%d %q %s %s: %s\n", line, column, d.Source[f.Span.Start:f.Span.End], f.Severity, f.Code, f.Message)
		for _, extra := range []string{f.Detail, f.Repair} {
			for _, line := range strings.Split(extra, "\n") {
				if line != "" {
					fmt.Fprintf(&b, "    %s\n", line)
				}
			}
		}
	}
	return b.String()
}
