package notation

import (
	"strings"
	"testing"
	"time"

	"rowproof/stitch"
)

// FuzzParse holds that no text makes Parse panic, hang, or lose its place.
func FuzzParse(f *testing.F) {
	for _, form := range forms(f) {
		f.Add(form.text, byte(form.opt.Sizes), form.opt.Terms == stitch.UK)
	}
	f.Fuzz(func(t *testing.T, text string, sizes byte, uk bool) {
		opt := Options{Sizes: int(sizes % 12)}
		if uk {
			opt.Terms = stitch.UK
		}
		const at = 1000
		line := Parse(text, at, opt)
		within := func(s Span) bool { return s.Start >= at && s.Start <= s.End && s.End <= at+len(text) }
		Walk(line, func(s Step) bool {
			if !within(s.At()) {
				t.Fatalf("%T of %q lies at %v", s, text, s.At())
			}
			return true
		})
		for _, n := range Numbers(line) {
			if !within(n.Span) {
				t.Fatalf("number of %q lies at %v", text, n.Span)
			}
		}
		for _, s := range line.Unread {
			if !within(s) {
				t.Fatalf("unread words of %q lie at %v", text, s)
			}
		}
		if got := Print(line, text, at, opt, Rewrite{}); got != text {
			t.Fatalf("Print changed %q to %q", text, got)
		}
		_ = line.String()
	})
}

// Every text is read in time that grows with its length.
func TestParseLinear(t *testing.T) {
	for _, unit := range []string{
		"* sc in next st, ", "*a* ", "*sc; rep from * to **, ", "(sc, ", "[", "in next st (", "sc 6 (1) ", "- ", "post of ", "† ", "rep from *, ",
		"** ", "of next ", "twice [3 times] ", "to last ", "1, ", "across to end ", "ch-3 sp of next ", "in each st and ", "ending last rep with ", "Note: ",
		"Row 1: ", "with ", "{a} ", "count ", "dec 1 st at each end every ", "sc in next st, ch 1, sk next st; rep from * across. (24 sc) ",
		"working ", "over next st and ", "\"", "leaving ", "join ", "turn ", "a ", "1 ", "until piece measures 3 ", "half double ",
	} {
		took := func(n int) time.Duration {
			text := strings.Repeat(unit, n/len(unit)+1)
			start := time.Now()
			Parse(text, 0, Options{})
			return time.Since(start)
		}
		small, large := time.Hour, time.Hour
		for range 20 { // a busy machine slows now one, now the other: the best of each counts
			small, large = min(small, took(10_000)), min(large, took(100_000))
			if large <= 30*max(small, 10*time.Millisecond) {
				break
			}
		}
		if large > 30*max(small, 10*time.Millisecond) { // 100 times for a loop within a loop
			t.Errorf("%q: 10 kB take %v, 100 kB take %v", unit, small, large)
		}
	}
}
