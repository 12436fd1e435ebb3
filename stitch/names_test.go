package stitch

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"
)

// Source: docs/sources.md T3, T4, T6 to T8 for the shift; the spellings are
// common practice, no source.
func TestLookup(t *testing.T) {
	d := Standard()
	for _, tt := range []struct {
		name  string
		terms Terms
		want  string // US abbreviation, "" for none
	}{
		{"dc", US, "dc"}, {"dcs", US, "dc"}, {"Dc", US, "dc"}, {"DOUBLE CROCHET", US, "dc"}, {"double crochets", US, "dc"},
		{"V-sts", US, "V-st"}, {"v st", US, "V-st"}, {"V-stitches", US, "V-st"}, {"shells", US, "shell"}, {"sl sts", US, "sl st"},
		{"slip stitches", US, "sl st"}, {"sc2tog", US, "sc2tog"}, {"sc 2 tog", US, "sc2tog"}, {"sc2togs", US, "sc2tog"},
		{"2 dc tog", US, "dc2tog"}, {"single crochet 2 stitches together", US, "sc2tog"}, {"double crochet two together", US, "dc2tog"},
		{"fpdc", US, "FPdc"}, {"FP dc", US, "FPdc"}, {"triple crochet", US, "tr"}, {"trc", US, "tr"}, {"treble", US, "tr"},
		{"chs", US, "ch"}, {"chains", US, "ch"}, {"5-dc shells", US, "5-dc shell"}, {"increases", US, "inc"},
		{"dc dec", US, ""}, {"htr", US, ""}, {"", US, ""}, {"s", US, ""}, {"hdc3tgo", US, ""}, {strings.Repeat("dc", 90), US, ""},
		{"dc", UK, "sc"}, {"htr", UK, "hdc"}, {"half treble", UK, "hdc"}, {"half treble crochet", UK, "hdc"}, {"tr", UK, "dc"},
		{"treble", UK, "dc"}, {"trebles", UK, "dc"}, {"treble crochet", UK, "dc"}, {"dtr", UK, "tr"}, {"double treble", UK, "tr"}, {"trtr", UK, "dtr"}, {"ttr", UK, "dtr"},
		{"qtr", UK, "trtr"}, {"dc2tog", UK, "sc2tog"}, {"tr3tog", UK, "dc3tog"}, {"exdc", UK, "esc"}, {"edc", UK, "esc"},
		{"ss", UK, "sl st"}, {"FPtr", UK, "FPdc"}, {"rtf", UK, "FPdc"}, {"tr/rf", UK, "FPdc"}, {"raised treble front", UK, "FPdc"},
		{"rtb", UK, "BPdc"}, {"sc", UK, ""}, {"hdc", UK, ""}, {"single crochet", UK, ""}, {"fdc", UK, "fsc"},
		{"dc", UnknownTerms, "dc"}, {"htr", UnknownTerms, "hdc"}, {"ss", UnknownTerms, "sl st"}, {"qtr", UnknownTerms, "trtr"}, {"htr2tog", UnknownTerms, "hdc2tog"},
	} {
		k, ok := d.Lookup(tt.name, tt.terms)
		if got := d.Name(k, US); got != tt.want || ok != (tt.want != "") {
			t.Errorf("Lookup(%q, %q) = %q, %v; want %q", tt.name, tt.terms, got, ok, tt.want)
		}
	}
}

// Every stitch that the list of terms names in both systems is one stitch here.
//
// Source: testdata/terms.csv, copied as docs/sources.md tells.
func TestTermsList(t *testing.T) {
	f, err := os.Open("testdata/terms.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	d, checked := Standard(), 0
	for _, row := range rows[1:] {
		usAbbr, usName, ukAbbr, ukName, category := row[0], row[1], row[2], row[3], row[4]
		switch category {
		case "basic", "extended", "shaping", "decrease", "post stitch", "foundation", "group":
		default:
			continue
		}
		if strings.Contains(usAbbr, "foundation") {
			continue // a chain, not a stitch
		}
		var want Kind
		for i, cell := range []string{usAbbr, usName, ukAbbr, ukName} {
			for name := range strings.SplitSeq(cell, " / ") {
				name, _, _ = strings.Cut(strings.TrimSpace(name), " (")
				if name == "" {
					continue
				}
				k, ok := d.Lookup(name, []Terms{US, US, UK, UK}[i])
				if !ok || want != None && k != want {
					t.Errorf("%s: %q is %q", usAbbr, name, d.Name(k, US))
				}
				want, checked = k, checked+1
			}
		}
		if tch := row[6]; len(tch) == 1 && d.Stitch(want).TurningChain != int(tch[0]-'0') {
			t.Errorf("%s: turning chain %d, want %s", usAbbr, d.Stitch(want).TurningChain, tch)
		}
	}
	if checked < 150 {
		t.Errorf("only %d names checked", checked)
	}
}

// US and UK names are each other's shift.
func TestShiftThereAndBack(t *testing.T) {
	for _, name := range []string{"sc", "hdc2tog", "FPdc", "BPtr3tog", "3-dc cluster", "fsc", "trtr", "half double crochet", "front post double crochet",
		"extended single crochet", "double treble crochet 2 together", "puff stitch"} {
		if got := toUS(toUK(name)); got != name {
			t.Errorf("%q in UK terms is %q, and back %q", name, toUK(name), got)
		}
	}
}

// Source: common practice, no source.
func TestPlural(t *testing.T) {
	d := Standard()
	for name, want := range map[string]string{
		"sc": "sc", "hdc2tog": "hdc2tog", "sl st": "sl sts", "V-st": "V-sts", "shell": "shells", "picot": "picots", "cl": "cls", "ch": "chs", "FPdc": "FPdc",
	} {
		k, _ := d.Lookup(name, US)
		if got := d.Plural(k, US); got != want {
			t.Errorf("Plural(%s) = %q, want %q", name, got, want)
		}
	}
	if got := d.Plural(SingleCrochet, UK); got != "dc" {
		t.Errorf("UK plural of sc is %q", got)
	}
	if got := d.Plural(None, US); got != "" {
		t.Errorf("plural of nothing is %q", got)
	}
}

func TestNear(t *testing.T) {
	d := Standard()
	for _, tt := range []struct {
		name  string
		terms Terms
		want  string
	}{
		{"hdc3tgo", US, "hdc3tog"}, {"clutser", US, "cluster"}, {"bobbel", US, "bobble"}, {"popcron", US, "popcorn"}, {"htr2tgo", UK, "htr2tog"}, {"hcd", US, "hdc"},
	} {
		got := d.Near(tt.name, tt.terms)
		if len(got) == 0 || got[0] != tt.want || len(got) > 3 {
			t.Errorf("Near(%q) = %q, want %q first", tt.name, got, tt.want)
		}
	}
	if got := d.Near("wheelbarrow", US); got != nil {
		t.Errorf("Near(wheelbarrow) = %q", got)
	}
	if !slices.Equal(d.Near("shel", US), d.Near("shel", US)) {
		t.Error("two calls differ")
	}
}

func TestTermsString(t *testing.T) {
	if US.String() != "US" || UK.String() != "UK" || UnknownTerms.String() != "" {
		t.Error("terms are misnamed")
	}
}
