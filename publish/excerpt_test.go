package publish

import (
	"strings"
	"testing"
)

func TestStripsMarkTheRightColumns(t *testing.T) {
	for _, tt := range []struct {
		name, line, marked string
		want               string // text and marks, a line each
	}{
		{"plain", "Row 1: sc2tog twice", "sc2tog", "Row 1: sc2tog twice\n       ^^^^^^"},
		{"after a tab", "a\tsc", "sc", "a   sc\n    ^^"},
		{"after wide letters", "編み sc", "sc", "編み sc\n     ^^"},
		{"on wide letters", "編み sc", "み", "編み sc\n  ^^"},
		{"after a joined accent", "e\u0301 sc", "sc", "e\u0301 sc\n  ^^"},
		{"after a byte that is no letter", "a\xff sc", "sc", "a\ufffd sc\n   ^^"},
		{"no-break space", "ch\u00a03, sc", "sc", "ch 3, sc\n      ^^"},
	} {
		start := strings.Index(tt.line, tt.marked)
		got := ""
		for _, s := range strips(tt.line, start, start+len(tt.marked), 60) {
			got += s.text + "\n" + s.marks
		}
		if got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

func TestMarkOfNoLength(t *testing.T) {
	if got := strips("sc", 2, 2, 60); len(got) != 1 || got[0].marks != "  ^" {
		t.Errorf("a mark at the end of the line is %q; want it just past the end", got)
	}
	if got := strips("", 0, 0, 60); len(got) != 1 || got[0].marks != "^" {
		t.Errorf("a mark in an empty line is %q; want one sign", got)
	}
}

func TestLongLinesAreWrapped(t *testing.T) {
	line := strings.Repeat("sc in next st, ", 20) + "HERE" + strings.Repeat(", ch 1, sk next ch", 10)
	start := strings.Index(line, "HERE")
	text, found := "", false
	for _, s := range strips(line, start, start+4, 60) {
		if columns(s.text) > 60 {
			t.Errorf("a strip takes %d columns; want 60 at most", columns(s.text))
		}
		text += s.text + " "
		if s.marks != "" {
			found = true
			if at := strings.Index(s.text, "HERE"); at != strings.Index(s.marks, "^^^^") {
				t.Errorf("the marks stand wrong:\n%s\n%s", s.text, s.marks)
			}
		}
	}
	if !found {
		t.Error("no strip is marked")
	}
	if got, want := strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(line), " "); got != want && !strings.HasPrefix(want, got) && !strings.HasSuffix(want, got) {
		t.Errorf("words were lost: %s", got)
	}
}

func TestVeryLongLinesAreClipped(t *testing.T) {
	line := strings.Repeat("編x ", 2_000_000)
	got := strips(line, 4_000_000, 4_000_400, 60)
	if len(got) > maxStrips {
		t.Errorf("%d strips are shown; want %d at most", len(got), maxStrips)
	}
	marked := false
	for _, s := range got {
		marked = marked || s.marks != ""
	}
	if !marked {
		t.Error("the marked place is not shown")
	}
}

func TestPlaces(t *testing.T) {
	text := "one\ntwo é sc\r\nthree\rfour\n"
	for _, tt := range []struct {
		word string
		want Place
	}{
		{"one", Place{1, 1, 4}},
		{"sc", Place{2, 7, 9}},
		{"é", Place{2, 5, 6}},
		{"three", Place{3, 1, 6}},
		{"four", Place{4, 1, 5}},
		{"sc\r\nthree", Place{2, 7, 9}}, // clipped to its first line
	} {
		if got := newLineIndex(text).place(spanOf(text, tt.word)); got != tt.want {
			t.Errorf("place(%q) = %v; want %v", tt.word, got, tt.want)
		}
	}
	if got := newLineIndex("").place(spanAt(7, 9)); got != (Place{1, 1, 1}) {
		t.Errorf("a place outside the text is %v; want the first character", got)
	}
}

func TestWrap(t *testing.T) {
	got := wrap("  leave 42 stitches in size M at the end of Row 11", 24)
	want := []string{"  leave 42 stitches in", "  size M at the end of", "  Row 11"}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("wrap gives %q; want %q", got, want)
	}
	for _, l := range wrap(strings.Repeat("x", 100), 30) {
		if columns(l) > 30 {
			t.Errorf("a long word takes %d columns; want 30", columns(l))
		}
	}
}
