package notation

import (
	"testing"

	"rowproof/stitch"
)

// translate turns text into the other terms.
func translate(text string, from, to stitch.Terms) string {
	var edits []edit
	if t := NewTranslator(from, to); t != nil {
		t.Each(text, func(start, end int, words string) {
			edits = append(edits, edit{Span{Start: start, End: end}, words})
		})
	}
	return splice(text, 0, edits)
}

func TestTermsAreOneStepApart(t *testing.T) {
	// Source: docs/sources.md T4, T6, T7, T8.
	for _, tt := range []struct{ us, uk string }{
		{"Sc in next st", "Dc in next st"},
		{"2dc, 3 hdc, tr", "2tr, 3 htr, dtr"},
		{"dtr, trtr", "trtr, qtr"},
		{"sc2tog over next 2 sts, Hdc3tog", "dc2tog over next 2 sts, Htr3tog"},
		{"FPdc around next st, bphdc", "FPtr around next st, bphtr"},
		{"Fsc 40", "Fdc 40"},
		{"BACK: SC in each dc", "BACK: DC in each tr"},
		{"in next dc-shell, 3 dcs", "in next tr-shell, 3 trs"},
		{"esc, edc", "edc, etr"},
		{"single crochet", "double crochet"},
		{"Half double crochet", "Half treble crochet"},
		{"Double Crochet and Treble Crochet", "Treble Crochet and Double Treble Crochet"},
		{"double\ncrochet", "treble crochet"},
		{"yo, ch 3, sl st, dec, inc", "yo, ch 3, sl st, dec, inc"},
		{"Gauge matters", "Tension matters"},
		{"skip next ch, Skipped", "miss next ch, Missed"},
		{"describe scdc words, Edcx", "describe scdc words, Edcx"},
	} {
		if got := translate(tt.us, stitch.US, stitch.UK); got != tt.uk {
			t.Errorf("US %q in UK terms is %q; want %q", tt.us, got, tt.uk)
		}
		if tt.us == "double\ncrochet" {
			continue
		}
		if got := translate(tt.uk, stitch.UK, stitch.US); got != tt.us {
			t.Errorf("UK %q in US terms is %q; want %q", tt.uk, got, tt.us)
		}
	}
}

func TestOlderNamesAreRead(t *testing.T) {
	for _, tt := range []struct {
		text string
		from stitch.Terms
		want string
	}{
		{"trc in next st", stitch.US, "dtr in next st"},
		{"sk 2, triple crochet", stitch.US, "miss 2, double treble crochet"},
		{"half treble in each st", stitch.UK, "half double crochet in each st"},
		{"treble", stitch.UK, "double crochet"},
		{"ttr", stitch.UK, "dtr"},
	} {
		if got := translate(tt.text, tt.from, stitch.US+stitch.UK-tt.from); got != tt.want {
			t.Errorf("%v %q turns into %q; want %q", tt.from, tt.text, got, tt.want)
		}
	}
}

func TestSameTermsChangeNothing(t *testing.T) {
	if got := NewTranslator(stitch.UK, stitch.UK); got != nil {
		t.Errorf("NewTranslator(UK, UK) = %v; want nil", got)
	}
	if got := NewTranslator(stitch.UnknownTerms, stitch.UK); got != nil {
		t.Errorf("NewTranslator(unknown, UK) = %v; want nil", got)
	}
}

// Every name of the dictionary has its turn: in the other terms it is the name
// of the same stitch.
func TestEveryStitchIsTranslated(t *testing.T) {
	d := stitch.Standard()
	for _, from := range []stitch.Terms{stitch.US, stitch.UK} {
		to := stitch.US + stitch.UK - from
		for k := stitch.Kind(1); int(k) < d.Len(); k++ {
			for _, name := range []string{d.Name(k, from), d.FullName(k, from)} {
				if name == "" || d.Name(k, to) == "" {
					continue
				}
				got := translate(name, from, to)
				if kind, _ := d.Lookup(got, to); kind != k {
					t.Errorf("%v %q is %q in %v terms; want %q or %q", from, name, got, to, d.Name(k, to), d.FullName(k, to))
				}
			}
		}
	}
}
