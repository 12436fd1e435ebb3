package notation

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
	"rowproof/stitch"
)

// writing draws the words of instructions in US terms.
type writing struct{ t *rapid.T }

func (w writing) pick(label string, words ...string) string {
	return rapid.SampledFrom(words).Draw(w.t, label)
}

func (w writing) number() string {
	n := rapid.IntRange(2, 40).Draw(w.t, "n")
	switch w.pick("sizes", "one", "one", "list") {
	case "list":
		return fmt.Sprintf("%d (%d, %d)", n, n+2, n+4)
	}
	return fmt.Sprint(n)
}

func (w writing) stitch() string {
	return w.pick("stitch", "sc", "hdc", "dc", "tr", "single crochet", "half double crochet", "double crochet", "FPdc", "sc2tog", "V-st", "shell", "cl")
}

func (w writing) unit() string {
	return w.pick("unit", "st", "sc", "dc", "hdc", "ch-2 sp", "ch-1 sp", "double crochet", "shell")
}

func (w writing) place() string {
	switch w.pick("place", "next", "next n", "each", "first", "last", "same", "limit") {
	case "next n":
		return "in next " + w.number() + " sts"
	case "each":
		return "in each " + w.unit() + " across"
	case "first":
		return "in first " + w.unit()
	case "last":
		return "in last " + w.unit()
	case "same":
		return "in same " + w.pick("same", "st", "sp")
	case "limit":
		return "in each st to last " + fmt.Sprint(rapid.IntRange(2, 9).Draw(w.t, "left")) + " sts"
	}
	return "in next " + w.unit()
}

func (w writing) step(depth int) string {
	kinds := []string{"work", "work", "many", "ch", "skip", "group"}
	if depth > 0 {
		kinds = append(kinds, "bracket", "star")
	}
	switch w.pick("step", kinds...) {
	case "many":
		return fmt.Sprintf("%d %s in next st", rapid.IntRange(2, 6).Draw(w.t, "times"), w.stitch())
	case "ch":
		return "ch " + fmt.Sprint(rapid.IntRange(1, 5).Draw(w.t, "chains"))
	case "skip":
		return w.pick("skip", "sk", "skip") + " next " + w.pick("skipped", "2 sts", "st", "dc", "ch-1 sp", "3 hdc")
	case "group":
		s := w.pick("group", "sc", "dc", "hdc")
		return fmt.Sprintf("(%s, ch 2, %s) in next ch-2 sp", s, s)
	case "bracket":
		return "[" + w.steps(depth-1) + "] " + w.number() + " times"
	case "star":
		return "*" + w.steps(depth-1) + "; rep from * " + w.pick("rep", "across", "to last 3 sts", "4 more times", "around")
	}
	return w.stitch() + " " + w.place()
}

func (w writing) steps(depth int) string {
	n := rapid.IntRange(1, 4).Draw(w.t, "steps")
	list := make([]string, n)
	for i := range list {
		list[i] = w.step(depth)
	}
	return strings.Join(list, ", ")
}

// line draws a whole instruction. A star stands outermost, for passages marked
// alike do not nest.
func (w writing) line() string {
	label := w.pick("label", "Row 3 (WS): ", "Rnds 5-8: ", "", "Next row: ", "Row 2-7 (9, 11): ")
	chain := w.pick("chain", "Ch 3 (counts as dc), ", "Ch 1, ", "Ch 4 (counts as dc, ch 1), ", "")
	steps := w.steps(0)
	if w.pick("outer", "star", "bracket", "plain") == "star" {
		steps += ", *" + w.steps(0) + "; rep from * " + w.pick("rep", "across", "to last 3 sts", "4 more times", "around") + ", " + w.steps(0)
	} else {
		steps += ", [" + w.steps(0) + "] " + w.number() + " times"
	}
	end := w.pick("end", ", turn.", ", join with sl st in first dc.", ", turn. (24 sc, 3 ch-1 sps)", ", leaving rem sts unworked.")
	return label + chain + steps + end
}

// A line printed with nothing to replace is the line, and reads whole.
func TestPrintKeepsTheWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := writing{t}.line()
		opt := Options{Terms: stitch.US, Sizes: 3}
		line := Parse(text, 7, opt)
		if got := Print(line, text, 7, opt, Rewrite{}); got != text {
			t.Fatalf("Print(%q) = %q", text, got)
		}
		if len(line.Unread) > 0 {
			s := line.Unread[0]
			t.Fatalf("%q: not read: %q", text, text[s.Start-7:s.End-7])
		}
	})
}

// A line in UK terms says what it said in US terms, and again in US terms.
// Source: docs/sources.md T4, T6, T7, T8.
func TestTermsThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := writing{t}.line()
		us, uk := Options{Terms: stitch.US, Sizes: 3}, Options{Terms: stitch.UK, Sizes: 3}
		line := Parse(text, 0, us)
		british := Print(line, text, 0, us, Rewrite{To: stitch.UK})
		there := Parse(british, 0, uk)
		if !Equal(line, there) {
			t.Fatalf("%q\n%s\nin UK terms %q\n%s", text, line, british, there)
		}
		back := Print(there, british, 0, uk, Rewrite{To: stitch.US})
		if again := Parse(back, 0, us); !Equal(line, again) {
			t.Fatalf("%q\n%s\nand back %q\n%s", text, line, back, again)
		}
	})
}

// Every form of the files survives the way to the other terms and back.
func TestFormsThereAndBack(t *testing.T) {
	for _, f := range forms(t) {
		to, other := stitch.UK, f.opt
		if f.opt.Terms == stitch.UK {
			to = stitch.US
		}
		other.Terms = to
		line := Parse(f.text, 0, f.opt)
		there := Print(line, f.text, 0, f.opt, Rewrite{To: to})
		if got := Parse(there, 0, other); !Equal(line, got) {
			t.Errorf("%q\n %s\nbecomes %q\n %s", f.text, line, there, got)
		}
	}
}

// Numbers that are replaced are read back as replaced.
func TestPrintNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := writing{t}.line()
		opt := Options{Terms: stitch.US, Sizes: 3}
		line := Parse(text, 0, opt)
		one := Print(line, text, 0, opt, Rewrite{Number: func(n *Number) (string, bool) {
			if len(n.Values) != 3 {
				return "", false
			}
			return fmt.Sprint(n.Values[1].N), true
		}})
		for _, n := range Numbers(Parse(one, 0, opt)) {
			if len(n.Values) == 3 {
				t.Fatalf("%q keeps the list %s: %q", text, n.said(), one)
			}
		}
	})
}

// A number that stands alone is read with all its sizes.
// Source: docs/sources.md T38, T41, T47, T48, T61.
func TestParseNumber(t *testing.T) {
	for _, tt := range []struct {
		text  string
		sizes int
		want  string
	}{
		{"24", 0, "24"},
		{"twelve", 0, "12"},
		{"18 (20, 24)", 3, "18/20/24"},
		{"18(20-24)", 3, "18/20/24"},
		{"18 (20) 24 (28) 30", 5, "18/20/24/28/30"},
		{"18, (20, 24)", 3, "18/20/24"},
		{"(40, 44, 50)", 3, "40/44/50"},
		{"7/9", 2, "7/9"},
		{"61 [67: 73: 79]", 4, "61/67/73/79"},
		{"1, 2, 3, (4, 5, 6) {7, 8, 9}", 9, "1/2/3/4/5/6/7/8/9"},
		{"48 (52, 56) (60, 64, 68) (72, 76, 80)", 9, "48/52/56/60/64/68/72/76/80"},
		{"- (-, 1, 2)", 4, "-/-/1/2"},
		{"– (2, 2)", 3, "-/2/2"},
		{"{body + 1}", 3, "{body + 1}"},
		{"42 (44)", 3, "42/44"}, // a number short: still a list
	} {
		n := ParseNumber(tt.text, 0, Options{Sizes: tt.sizes})
		if n == nil || n.said() != tt.want {
			t.Errorf("ParseNumber(%q, %d sizes) = %v, want %s", tt.text, tt.sizes, n, tt.want)
		}
	}
	for _, text := range []string{"", "sc", "24 sc", "(", "{", "14½"} {
		if n := ParseNumber(text, 0, Options{}); n != nil {
			t.Errorf("ParseNumber(%q) = %s, want none", text, n.said())
		}
	}
}
