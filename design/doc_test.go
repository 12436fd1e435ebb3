package design

import (
	"os"
	"strings"
	"testing"
)

// The examples of docs/document.md are read without a finding, and come out
// as the page says.
func TestDocumentPage(t *testing.T) {
	page, err := os.ReadFile("../docs/document.md")
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(page), "```\n")
	if len(parts) < 7 {
		t.Fatalf("the page has %d examples; it had three", len(parts)/2)
	}
	vest := Read("vest.txt", []byte(parts[1]))
	for _, f := range vest.Findings {
		t.Errorf("the vest: %s", f.Message)
	}
	if got := strings.Join(vest.Sizes, " "); got != "S M L" || vest.Title != "Tide Vest" || len(vest.Gauges) != 1 {
		t.Errorf("the vest is %q in sizes %q with %d gauges", vest.Title, got, len(vest.Gauges))
	}
	for _, l := range vest.Lines {
		if l.Read != ReadWhole {
			t.Errorf("the vest, line %d is read %s: %q", l.Number, l.Read, l.Unread)
		}
	}
	front := Read("front.md", []byte(parts[3]+"## Back\n"+parts[5]+"## Front\nCh 3.\n## Sleeve\nCh 3.\n"))
	for _, f := range front.Findings {
		t.Errorf("the front matter: %s", f.Message)
	}
	if n := front.Number("shoulder"); n == nil || n.Values[0] != 25 || n.Values[1] != 29 || n.Values[2] != 32 {
		t.Errorf("shoulder is %+v; want 25, 29, 32", n)
	}
	if len(front.Seams) != 2 || front.Seams[1].B.Edge != "side" {
		t.Errorf("the seams are %+v", front.Seams)
	}
}
