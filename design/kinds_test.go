package design

import (
	"os"
	"strings"
	"testing"
)

// TestKinds reads each line of testdata/kinds.txt between two rows, and alone
// as a whole file, where only instructions must keep their kind.
func TestKinds(t *testing.T) {
	source, err := os.ReadFile("testdata/kinds.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, line := range strings.Split(string(source), "\n") {
		want, text, ok := strings.Cut(line, "\t")
		if !ok || strings.HasPrefix(line, "#") {
			continue
		}
		n++
		d := Read("kinds.txt", []byte("Title\n\nRow 1: Ch 1, sc in each st across, turn.\n"+text+"\nRow 2: Ch 1, sc in each st across, turn.\n"))
		if len(d.Lines) != 4 || d.Lines[2].Kind.String() != want {
			t.Errorf("%q among rows is %q; want %s", text, kindsOf(d), want)
		}
		alone := Read("alone.txt", []byte(text))
		if want == "instruction" && (len(alone.Lines) != 1 || alone.Lines[0].Kind != Instruction) {
			t.Errorf("%q alone is %q; want instruction", text, kindsOf(alone))
		}
	}
	if n < 250 {
		t.Errorf("testdata/kinds.txt has %d lines; it had more", n)
	}
}

func kindsOf(d *Design) (kinds []string) {
	for _, l := range d.Lines {
		kinds = append(kinds, l.Kind.String())
	}
	return kinds
}

// Prose that orders nothing is read whole; a note's rules and an instruction
// have a tree.
func TestReadStates(t *testing.T) {
	d := Read("states.txt", []byte("My Hat\n\nThis hat is quick.\nRow 1: Ch 1, sc in next st, turn.\nRow 2: Ch 1, frobnicate the whatsit, turn.\nSew the seam.\n"))
	want := []ReadState{ReadWhole, ReadWhole, ReadWhole, ReadPart, ReadWhole}
	for i, l := range d.Lines {
		if l.Read != want[i] {
			t.Errorf("line %d, %q: read %s, unread %q; want %s", l.Number, l.Text, l.Read, l.Unread, want[i])
		}
	}
	if unread := d.Lines[3].Unread; !strings.Contains(unread, "frobnicate") {
		t.Errorf("the words not understood are %q; want frobnicate among them", unread)
	}
}
