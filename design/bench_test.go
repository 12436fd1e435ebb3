package design

import (
	"os"
	"strings"
	"testing"
	"time"
)

// BenchmarkRead reads a pattern of ordinary lines, a few hundred kB of it;
// MB/s is what to watch.
func BenchmarkRead(b *testing.B) {
	source, err := os.ReadFile("testdata/bench.txt")
	if err != nil {
		b.Fatal(err)
	}
	text := []byte(strings.Repeat(string(source), 100))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Read("bench.txt", text)
	}
}

// Each text is hostile in its own way. Reading it takes time in keeping with its
// length: eight times the text never takes 64 times as long.
func TestReadIsLinear(t *testing.T) {
	if testing.Short() {
		t.Skip("reads some megabytes")
	}
	const size = 1 << 18
	for _, unit := range []string{
		"Row 1: Ch 1, sc in each st across, turn. (24 sc)\n",
		"*", "**", "(", "[", "{", "{a}", "](", "[a](b.c/d) ", "<", "<!--", "`", "_a_ ", "**a** ", "a", "1", "1 (", "1 (2, 3) ", "\n", "\r", " ", "- ", "# a\n", "> ",
		"and\n", "sc,\n", "a:", "a: b\n", "---\n", "a\u0300", "½", "Row 1: sc. ", "Size L only: ", "(24 sc)\n", "|a", "|-|\n", "=", "sc in next st, ", "\\*", "ch 5 ", "1. ", "sc\n(24 sc)\n",
	} {
		took := func(n int) time.Duration {
			text := []byte(strings.Repeat(unit, n/len(unit)))
			start := time.Now()
			Read("hostile.txt", text)
			return time.Since(start)
		}
		small, large := time.Hour, time.Hour
		for range 20 { // a busy machine slows now one, now the other: the best of each counts
			small, large = min(small, took(size/8)), min(large, took(size))
			if large <= 24*max(small, 10*time.Millisecond) {
				break
			}
		}
		if large > 24*max(small, 10*time.Millisecond) {
			t.Errorf("%q: %d bytes take %v, %d take %v", unit, size/8, small, size, large)
		}
	}
}
