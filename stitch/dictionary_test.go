package stitch

import (
	"fmt"
	"slices"
	"testing"
)

func TestKindsKeepTheirOrder(t *testing.T) {
	d := Standard()
	for k, name := range map[Kind]string{
		Chain: "ch", SlipStitch: "sl st", SingleCrochet: "sc", HalfDouble: "hdc", DoubleCrochet: "dc", Treble: "tr",
		DoubleTreble: "dtr", TripleTreble: "trtr", ExtendedSingle: "esc", Increase: "inc", Decrease: "dec",
	} {
		if got := d.Name(k, US); got != name {
			t.Errorf("Name(%d) = %q, want %q", k, got, name)
		}
	}
}

// Every stitch of the dictionary was read to the last word and ends with one
// loop on the hook.
func TestDictionaryLoops(t *testing.T) {
	d := Standard()
	if d.Len() < 100 {
		t.Fatalf("the dictionary has %d stitches", d.Len())
	}
	for _, s := range d.stitches[1:] {
		if len(s.Unread) > 0 {
			t.Errorf("%s: not read: %q", s.US, s.Unread)
		}
		if s.Kind == Increase || s.Kind == Decrease {
			continue
		}
		loops, yarnOvers, ok := Run(s.Moves)
		if !ok || len(s.Moves) == 0 {
			t.Errorf("%s: %v ends with %d loops", s.US, s.Moves, loops)
		}
		if yarnOvers != s.YarnOvers {
			t.Errorf("%s: YarnOvers is %d, the moves lay %d", s.US, s.YarnOvers, yarnOvers)
		}
		r, m := d.run(s.Text, 0, US)
		if f := m.findings(r, report{name: s.US, terms: US}); len(f) > 0 {
			t.Errorf("%s: %s: %s", s.US, f[0].Code, f[0].Message)
		}
	}
}

// No name of the dictionary is taken from one stitch by another.
func TestNamesAreDistinct(t *testing.T) {
	d := Standard()
	for _, terms := range []Terms{US, UK} {
		for _, s := range d.stitches[1:] {
			names := append([]string{s.US, s.USName}, s.Also...)
			if terms == UK {
				names = append([]string{s.UK, s.UKName}, s.AlsoUK...)
			}
			for _, name := range names {
				if k, ok := d.Lookup(name, terms); !ok || k != s.Kind {
					t.Errorf("%v %q is %s, want %s", terms, name, d.Name(k, US), s.US)
				}
			}
		}
	}
}

// Source: docs/sources.md, "Stitches and terms", yarn over table.
func TestYarnOvers(t *testing.T) {
	d := Standard()
	for name, want := range map[string]int{
		"ch": 1, "sl st": 1, "sc": 2, "hdc": 3, "esc": 3, "fsc": 3, "dc": 4, "fhdc": 4, "linked dc": 4, "fdc": 5,
		"tr": 6, "dtr": 8, "sc2tog": 3, "sc3tog": 4, "hdc2tog": 5, "dc2tog": 7, "dc3tog": 10, "tr2tog": 11,
		"V-st": 9, "puff st": 8, "5-dc bobble": 16, "4-hdc cluster": 9, "5-dc shell": 20, "picot": 4, "bullion": 10,
	} {
		k, ok := d.Lookup(name, US)
		if got := d.Stitch(k).YarnOvers; !ok || got != want {
			t.Errorf("%s lays %d yarn overs, want %d", name, got, want)
		}
	}
	// p wraps make 2(p+1) yarn overs.
	for p, k := range []Kind{SingleCrochet, DoubleCrochet, Treble, DoubleTreble, TripleTreble} {
		if got := d.Stitch(k).YarnOvers; got != 2*(p+1) {
			t.Errorf("%d wraps lay %d yarn overs, want %d", p, got, 2*(p+1))
		}
	}
}

// A Tunisian stitch ends with one loop only after the return pass.
//
// Source: docs/sources.md, yarn over table; T19.
func TestTunisianMoves(t *testing.T) {
	forward := []Move{{Do: Insert}, {Do: Pull}}
	if loops, _, ok := Run(forward); ok || loops != 2 {
		t.Errorf("the forward pass leaves %d loops, want 2", loops)
	}
	if _, n, ok := Run(append(forward, Move{Through, 2})); !ok || n != 2 {
		t.Errorf("both passes lay %d yarn overs, want 2", n)
	}
}

func TestMovesThatCannotBe(t *testing.T) {
	for _, moves := range [][]Move{{{Through, 2}}, {{Drop, 2}}, {{Drop, 1}, {Do: Slip}}, {{Do: Wrap}}} {
		if loops, _, ok := Run(moves); ok {
			t.Errorf("Run(%v) is well with %d loops", moves, loops)
		}
	}
}

// What a stitch uses and leaves. Source: docs/sources.md T10, T11, T17, T24;
// spike and post from T14 to T16; the rest common practice, no source.
func TestUsesAndEdges(t *testing.T) {
	d := Standard()
	for _, tt := range []struct {
		name string
		uses int
		base Kind
		fam  Family
		edge string
		high float64
	}{
		{"ch", 0, Chain, Plain, "[ch-1]", 0},
		{"sl st", 1, SlipStitch, Plain, "[sl st]", 0},
		{"sc", 1, SingleCrochet, Plain, "[sc]", 1},
		{"hdc", 1, HalfDouble, Plain, "[hdc]", 2},
		{"tr", 1, Treble, Plain, "[tr]", 4},
		{"esc", 1, ExtendedSingle, Plain, "[esc]", 2},
		{"sc2tog", 2, SingleCrochet, Together, "[sc2tog]", 1},
		{"tr3tog", 3, Treble, Together, "[tr3tog]", 4},
		{"inv dec", 2, SingleCrochet, Together, "[inv dec]", 1},
		{"dc over 2", 2, DoubleCrochet, Together, "[dc over 2]", 3},
		{"FPdc", 1, DoubleCrochet, PostStitch, "[FPdc]", 3},
		{"FPdc2tog", 2, DoubleCrochet, Together, "[FPdc2tog]", 3},
		{"fdc", 0, DoubleCrochet, FoundationStitch, "[fdc]", 3},
		{"spike", 1, SingleCrochet, Spike, "[sp st]", 1},
		{"rev sc", 1, SingleCrochet, Plain, "[rev sc]", 1},
		{"linked dc", 1, DoubleCrochet, Plain, "[ldc]", 3},
		{"cl", 1, DoubleCrochet, Closed, "[cl]", 3},
		{"puff", 1, HalfDouble, Closed, "[ps]", 2},
		{"bobble", 1, DoubleCrochet, Closed, "[bo]", 3},
		{"popcorn", 1, DoubleCrochet, Closed, "[pc]", 3},
		{"3-dc shell", 1, DoubleCrochet, Open, "[dc dc dc]", 3},
		{"V-st", 1, DoubleCrochet, Open, "[dc ch-1 dc]", 3},
		{"X-st", 2, DoubleCrochet, Open, "[dc dc]", 3},
		{"inc", 1, SingleCrochet, Open, "[sc sc]", 0},
		{"dec", 2, SingleCrochet, Together, "[dec]", 0},
	} {
		k, _ := d.Lookup(tt.name, US)
		s := d.Stitch(k)
		if s.Uses != tt.uses || s.Base != tt.base || s.Family != tt.fam || s.Height != tt.high || edgeWords(d, s) != tt.edge {
			t.Errorf("%s: uses %d, a form of %s, family %d, height %v, leaves %s; want %+v",
				tt.name, s.Uses, d.Name(s.Base, US), s.Family, s.Height, edgeWords(d, s), tt)
		}
	}
	for _, picot := range []string{"picot", "ch-4 picot"} {
		k, _ := d.Lookup(picot, US)
		if s := d.Stitch(k); s.Uses != 0 || len(s.Edge) != 0 || s.Family != Picot {
			t.Errorf("%s uses %d and leaves %v", picot, s.Uses, s.Edge)
		}
	}
	for name, side := range map[string]Side{"FPsc": Front, "BPtr": Back, "FPdc2tog": Front, "dc": NoSide} {
		k, _ := d.Lookup(name, US)
		if got := d.Stitch(k).Post; got != side {
			t.Errorf("%s is worked from side %d, want %d", name, got, side)
		}
	}
}

// edgeWords lists an edge as "[dc ch-1 dc]".
func edgeWords(d *Dictionary, s *Stitch) string {
	var words []string
	for _, e := range s.Edge {
		switch {
		case e.Chains > 0:
			words = append(words, fmt.Sprintf("ch-%d", e.Chains))
		case e.Kind == None:
			words = append(words, "itself")
		default:
			words = append(words, d.Name(e.Kind, US))
		}
	}
	return fmt.Sprint(words)
}

// Source: docs/sources.md T21.
func TestTurningChains(t *testing.T) {
	want := []int{0, 1, 2, 3, 4, 5, 6}
	var got []int
	for k := SlipStitch; k <= TripleTreble; k++ {
		got = append(got, Standard().Stitch(k).TurningChain)
	}
	if !slices.Equal(got, want) {
		t.Errorf("turning chains from sl st to trtr are %v, want %v", got, want)
	}
}

func TestAddReplacesByName(t *testing.T) {
	d := Standard().Clone()
	before, n := d.Stitch(0), d.Len()
	s, _ := d.ReadDefinition("Cluster (cl): Keeping last loop of each on hook, work 4 dc in same st, yo and pull through all 5 loops.", 0, US)
	old, _ := d.Lookup("cl", US)
	if k := d.Add(s); k != old || d.Len() != n || d.Stitch(k).Legs != 4 || d.Stitch(k).Edge[0].Kind != k {
		t.Errorf("her cl is kind %d of %d with %d legs, want kind %d of %d", k, d.Len(), s.Legs, old, n)
	}
	if Standard().Stitch(old).Legs != 3 || before != d.Stitch(0) {
		t.Error("the standard dictionary changed")
	}
	// An abbreviation that a designer gives another stitch is hers from then on.
	s, _ = d.ReadDefinition("Berry stitch (bs): Yo, insert hook in st, yo and pull up a loop, ch 3, yo and pull through all 3 loops.", 0, US)
	k := d.Add(s)
	bobble, _ := d.Lookup("bobble", US)
	if got, _ := d.Lookup("bs", US); got != k || k == bobble || int(k) != n {
		t.Errorf("bs is %s", d.FullName(got, US))
	}
	c := d.Clone()
	if got, ok := c.Lookup("Berry stitches", US); !ok || got != k {
		t.Error("a clone of a clone lost a stitch")
	}
	if got, ok := c.Lookup("sc2tog", UnknownTerms); !ok || c.Name(got, UK) != "dc2tog" {
		t.Error("a clone of a clone lost the standard names")
	}
}

func TestStitchIsNeverNil(t *testing.T) {
	if s := Standard().Stitch(65535); s == nil || s.US != "" {
		t.Errorf("Stitch(65535) = %+v", s)
	}
}

func BenchmarkReadStandard(b *testing.B) {
	b.SetBytes(int64(len(dictionaryText)))
	for b.Loop() {
		readDictionary(dictionaryText)
	}
}

func BenchmarkLookup(b *testing.B) {
	d := Standard().Clone()
	for b.Loop() {
		d.Lookup("half double crochet", US)
	}
}
