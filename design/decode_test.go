package design

import (
	"strings"
	"testing"
	"unicode/utf16"

	"rowproof/diag"
)

func TestEncodings(t *testing.T) {
	const text = "Café Hat\n\nRow 1: Ch 1, sc in each st across – turn.\n"
	utf16le := []byte{0xff, 0xfe}
	utf16be := []byte{0xfe, 0xff}
	for _, u := range utf16.Encode([]rune(text)) {
		utf16le = append(utf16le, byte(u), byte(u>>8))
		utf16be = append(utf16be, byte(u>>8), byte(u))
	}
	windows := strings.NewReplacer("é", "\xe9", "–", "\x96").Replace(text)
	for _, tt := range []struct {
		name   string
		source []byte
		noted  bool
	}{
		{"UTF-8", []byte(text), false},
		{"UTF-8 with a mark", append([]byte{0xef, 0xbb, 0xbf}, text...), false},
		{"UTF-16, low byte first", utf16le, true},
		{"UTF-16, high byte first", utf16be, true},
		{"Windows-1252", []byte(windows), true},
	} {
		d := Read("e.txt", tt.source)
		if d.Source != text || d.Title != "Café Hat" {
			t.Errorf("%s: read as %q, title %q", tt.name, d.Source, d.Title)
		}
		noted := false
		for _, f := range d.Findings {
			noted = noted || f.Code == CodeEncoding && f.Severity == diag.Note
		}
		if noted != tt.noted {
			t.Errorf("%s: a note says so: %v; want %v (%+v)", tt.name, noted, tt.noted, d.Findings)
		}
	}
}

func TestNotText(t *testing.T) {
	d := Read("n.txt", []byte("Hat\n\nRow 1: sc\x00 in next st.\nRow 2: \xff\x81 sc \xe2\x80\x93 in next st.\n"))
	var where []int
	for _, f := range d.Findings {
		if f.Code == CodeNotText {
			line, _ := d.Position(f.Span.Start)
			where = append(where, line)
		}
	}
	if len(where) != 3 || where[0] != 3 || where[1] != 4 || where[2] != 4 {
		t.Errorf("bytes that are no text are reported on lines %v; want 3, 4, 4", where)
	}
	if len(d.Lines) != 3 || d.Lines[2].Kind != Instruction {
		t.Errorf("reading stopped at them: %v", kindsOf(d))
	}
}

func TestEmptyFile(t *testing.T) {
	for _, source := range []string{"", " ", "\n\n\r\n", "\xef\xbb\xbf", "\xff\xfe", "\t\u00a0"} {
		d := Read("empty.txt", []byte(source))
		if len(d.Findings) == 0 || d.Findings[len(d.Findings)-1].Code != CodeEmptyFile {
			t.Errorf("%q: %+v; want %s", source, d.Findings, CodeEmptyFile)
		}
		if line, column := d.Position(0); line != 1 || column != 1 {
			t.Errorf("%q: the start is at %d:%d", source, line, column)
		}
	}
}

func TestLineBreaks(t *testing.T) {
	for _, br := range []string{"\n", "\r\n", "\r"} {
		d := Read("b.txt", []byte("Hat"+br+br+"Ch 25."+br+"Row 1: sc."+br))
		if got := kindsOf(d); strings.Join(got, " ") != "heading foundation instruction" {
			t.Errorf("line breaks %q: %v", br, got)
		}
		if d.Lines[2].Number != 4 || d.LineText(4) != "Row 1: sc." {
			t.Errorf("line breaks %q: row 1 is on line %d, and line 4 is %q", br, d.Lines[2].Number, d.LineText(4))
		}
	}
}

func TestPosition(t *testing.T) {
	d := Read("p.txt", []byte("Café\r\n½ in\r\n\r\n"+strings.Repeat("é", 5000)+"x\nlast"))
	for _, tt := range []struct {
		offset, line, column int
	}{
		{0, 1, 1}, {5, 1, 5}, {7, 2, 1}, {9, 2, 2}, {16, 4, 1}, {16 + 10000, 4, 5001}, {len(d.Source), 5, 5}, {-3, 1, 1}, {1 << 30, 5, 5},
	} {
		if line, column := d.Position(tt.offset); line != tt.line || column != tt.column {
			t.Errorf("Position(%d) = %d:%d; want %d:%d", tt.offset, line, column, tt.line, tt.column)
		}
	}
	if d.LineText(0) != "" || d.LineText(6) != "" || d.LineText(5) != "last" {
		t.Errorf("LineText gives %q, %q, %q", d.LineText(0), d.LineText(6), d.LineText(5))
	}
}

func TestBlankMarks(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"**Row 1:** sc", "  Row 1:   sc"},
		{"**Row 1**: sc", "  Row 1  : sc"},
		{"*Row 1:* *dc, ch 1* rep to end", " Row 1:  *dc, ch 1* rep to end"},
		{"*A**, B; rep from * around, ending last rep at **.", "*A**, B; rep from * around, ending last rep at **."},
		{"*A, **B; rep from ** twice, C; rep from * around.", "*A, **B; rep from ** twice, C; rep from * around."},
		{`\*sc, ch 1; rep from \* across`, ` *sc, ch 1; rep from  * across`},
		{"work in the *same* st", "work in the  same  st"},
		{"(sc, inc)*8", "(sc, inc)*8"},
		{"_Note_ on snake_case", " Note  on snake_case"},
		{"{2 * body} and {neck * 2}", "{2 * body} and {neck * 2}"},
		{"[chart](pics/chart.png) [sc, ch 1] (2 times)", " chart                  [sc, ch 1] (2 times)"},
		{"sc <b>in</b> next", "sc    in     next"},
		{"***Back***", "   Back   "},
		{"*sc in next st, ch 2*, 4 times", "*sc in next st, ch 2*, 4 times"},
	} {
		if got := blankMarks(tt.text, &block{}); got != tt.want {
			t.Errorf("%q is blanked to\n %q; want\n %q", tt.text, got, tt.want)
		}
	}
}
