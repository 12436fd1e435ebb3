package fabric_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rowproof/design"
	"rowproof/fabric"
)

// FuzzWork works any text at all: no panic, and an end in bounded time.
func FuzzWork(f *testing.F) {
	for _, pattern := range []string{"../check/testdata/cases/right/*.txt", "../check/testdata/cases/wrong/*.txt"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(string(text))
		}
	}
	for _, text := range []string{
		"", "Row 1: *", "Rep Rows 1-9.", "Ch 5.\nRow 1: Rep Row 1.",
		"Ch 10.\nRow 1: *ch 1; rep from * 1000000000 times.",
		"Ch 10.\nRows 1-999999999: sc in each ch across.",
		"Ch 100000.\nRow 1: [[[[sc] 1000 times] 1000 times] 1000 times] 1000 times in next ch.",
		"Ch 9.\nRow 1: (sc, ch 1) 99999 times in each ch across.\nRows 2-99999: (2 sc, ch 1) in each st across.",
		"Sizes: S (M)\nCh - (-).\nRow 1: sc in - (-) ch.",
		"Rnd 1: 0 sc in magic ring.\nRnd 2: *2 sc in next st; rep from * around.",
		"Ch 3, join.\nRnd 1: Sl st in next ch-5 sp, ch 3 (counts as dc), dc in same sp, join.",
		"Ch 11.\nRow 1: " + strings.Repeat("[", 50) + "sc" + strings.Repeat("] 10 times", 50),
		"Sizes: S (M)\nCh 13 (15).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-8: Rep last - (2) rows 2 times, then rep Row 1.\nNext 2 rows: Rep Row 1, then rep last 9 rows 9 times.",
		"Ch 5.\nRow 1: Work evenly 6 sc.\nDec 1 st at each end every row 100 times.",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 20_000 {
			return
		}
		for _, fab := range fabric.Work(design.Read("fuzz.txt", []byte(text))) {
			for _, p := range fab.Pieces {
				for _, r := range p.Rows {
					if r.Body == nil || r.Counting < 0 || r.Counting > len(r.Top) {
						t.Fatalf("%s: %d counting places of %d", r.Label, r.Counting, len(r.Top))
					}
				}
			}
		}
	})
}
