package publish

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"rowproof/design"
	"rowproof/stitch"
)

// TestStepsThatDoNothing writes one line at a time for the size that a list
// gives a 0. An empty want is a line left out.
func TestStepsThatDoNothing(t *testing.T) {
	for _, tt := range []struct{ line, want string }{
		{"Row 2: Ch 1, [sc in next st, 2 sc in next st] 0 (1, 2) times, sc in each st across, turn. (30 (33, 38) sc)", "Row 2: Ch 1, sc in each st across, turn. (30 sc)"},
		{"Row 2: Ch 1, sc in each st to last 0 (3, 4) sts, hdc in last 0 (3, 4) sts, turn.", "Row 2: Ch 1, sc in each st across, turn."},
		{"Rnd 2: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * to last 0 (3, 1) sts, sc in last 0 (3, 1) sts, join.", "Rnd 2: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around, join."},
		{"Rnd 2: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around to last 0 (3, 1) sts, sc in last 0 (3, 1) sts, join.", "Rnd 2: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around, join."},
		{"Ch 1, sc to last 0 (1, 2) sts, turn.", "Ch 1, sc to end, turn."},
		{"Row 2: Ch 1. Sc in next 0 (1, 2) sts. Sc in each st across. Turn.", "Row 2: Ch 1. Sc in each st across. Turn."},
		{"Row 2: Sc in first 0 (1, 2) sts, 2 sc in next st and sc in each st across, then work sc in last 0 (2, 3) sts and turn.", "Row 2: 2 sc in next st and sc in each st across, turn."},
		{"Row 2: Sc in first 0 (1, 2) sts, sc in each st across, turn.", "Row 2: Sc in each st across, turn."},
		{"Row 2: Ch 1; sc in next 0 (1, 2) sts; sc in each st across; turn.", "Row 2: Ch 1; sc in each st across; turn."},
		{"Row 2: Ch 1, sc in each st across; sc in last 0 (1, 2) sts. Turn.", "Row 2: Ch 1, sc in each st across. Turn."},
		{"Row 2: Ch 1, sc in next 2 sts and in next 0 (1, 2) sts, sc in each st across, turn.", "Row 2: Ch 1, sc in next 2 sts, sc in each st across, turn."},
		{"Row 2: Ch 1, sk next 0 (1, 2) sts for underarm, sc across, turn.", "Row 2: Ch 1, sc across, turn."},
		{"Row 2: Ch 1, sk next 0 (1, 2) sts and next ch-1 sp, sc across, turn.", "Row 2: Ch 1, sk next ch-1 sp, sc across, turn."},
		{"Row 2: Ch 1, sc in next 5 sts, ch 0 (1, 3) for the buttonhole, sk 0 (1, 3) sts, sc across; turn.", "Row 2: Ch 1, sc in next 5 sts, sc across; turn."},
		{"Row 2: Ch 1, sc across, ch 0 (1, 2), turn.", "Row 2: Ch 1, sc across, turn."},
		{"Row 2: Ch 1, (2 sc, ch 0 (1, 2), 2 sc) in next st, sc across, turn.", "Row 2: Ch 1, (2 sc, 2 sc) in next st, sc across, turn."},
		{"Row 2: Ch 1, *sc in next st, 0 (0, 1) hdc in same st; rep from * 4 times more, sc across, turn.", "Row 2: Ch 1, *sc in next st; rep from * 4 times more, sc across, turn."},
		{"Row 2: Ch 1, *sc in next st; rep from * 0 (1, 2) more times, sc in each st across, turn.", "Row 2: Ch 1, sc in next st, sc in each st across, turn."},
		{"Row 2: Ch 1, *[2 sc in next st] 0 (1, 2) times, sk next 0 (1, 2) sts; rep from * twice, sc across, turn.", "Row 2: Ch 1, sc across, turn."},
		{"Row 2: Ch 1, sc in next 3 sts, 0 (1, 1) sc in next st, sc across, turn.", "Row 2: Ch 1, sc in next 3 sts, sk next st, sc across, turn."},
		{"Row 2: Ch 1, sc 0 (1, 2), inc 0 (1, 2) times, sc across, turn.", "Row 2: Ch 1, sc across, turn."},
		{"Row 2: Ch 1, sc2tog 0 (1, 2) times, sc in each st to last 0 (2, 3) sts, leaving last 0 (2, 3) sts unworked, turn.", "Row 2: Ch 1, sc in each st across, turn."},
		{"Row 2: Ch 1, sc in each st across, increasing 0 (1, 2) sts evenly, turn.", "Row 2: Ch 1, sc in each st across, turn."},
		{"Row 2: Ch 1, inc 0 (1, 2) sts evenly across, turn.", "Row 2: Ch 1, sc in each st across, turn."},
		{"Row 2: Ch 1, sc across, turn. (30 (29, 28) sc, 0 (1, 2) ch-1 sps)", "Row 2: Ch 1, sc across, turn. (30 sc)"},
		{"Row 2: Ch 1, sc across, turn. 0 (1, 2) sts dec'd.", "Row 2: Ch 1, sc across, turn."},
		{"Row 2: Ch 1, sc across to last - (1, 2) sts, sc2tog - (1, 2) times, turn.", "Row 2: Ch 1, sc across, turn."},
		{"Rows 2-3 and 5-4 (4-4, 4-5): Ch 1, sc across, turn.", "Rows 2-3: Ch 1, sc across, turn."},
		{"Dec 1 st at each end every 4th row 0 (1, 2) times, then every 2nd row 3 times.", "Dec 1 st at each end every 2nd row 3 times."},
		{"Dec 1 st at each end every 4th row twice, then every 2nd row 0 (1, 2) times.", "Dec 1 st at each end every 4th row twice."},
		{"Rep Rows 1 and 2 0 (1, 2) times, then fasten off.", "Fasten off."},

		{"Rep last row 0 (1, 2) more times.", ""},
		{"Rep last row 0 (1, 2) more times. 30 (32, 36) sc.", ""},
		{"[Rep Row 1] 0 (1, 2) times.", ""},
		{"Work 0 (2, 4) rows even.", ""},
		{"Next 0 (2, 4) rows: Ch 1, sc across, turn.", ""},
		{"Rows 2-1 (2-3, 2-5): Ch 1, sc across, turn.", ""},
		{"Dec 1 st at each end every 2nd row 0 (1, 2) times.", ""},

		// what is typed for every size, or not understood, stays
		{"Row 2: Ch 1, sc in each st to last 0 sts, turn.", "Row 2: Ch 1, sc in each st to last 0 sts, turn."},
		{"Row 2: Ch 1, sc in last 0 (1, 2) sts of the gusset flap, turn.", "Row 2: Ch 1, sc in last 0 sts of the gusset flap, turn."},
		{"Row 2: Ch 1, [sc in next st] 10 (0, 20) times, sc across, turn.", "Row 2: Ch 1, [sc in next st] 10 times, sc across, turn."},
	} {
		source := "Wrap\n\nSizes: S (M, L)\n\nCh 31 (33, 37).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n" + tt.line + "\nRow 50: Ch 1, turn.\n"
		d := design.Read("wrap.txt", []byte(source))
		text := asText(t, d, Options{Size: "S"})
		_, after, _ := strings.Cut(text, "ch across, turn.\n")
		got, _, _ := strings.Cut(after, "Row 50:")
		if got = strings.TrimSpace(got); got != tt.want {
			t.Errorf("%s\ngives %s\nwant  %s", tt.line, got, tt.want)
		}
		if all := asText(t, d, Options{}); !strings.Contains(all, tt.line) {
			t.Errorf("%s\nis changed in the text for all sizes:\n%s", tt.line, all)
		}
	}
}

// TestNoZeroIsLeft writes a pattern that has a 0 in every form, and looks for
// one on the page and in the text.
func TestNoZeroIsLeft(t *testing.T) {
	data, err := os.ReadFile("testdata/zeros.txt")
	if err != nil {
		t.Fatal(err)
	}
	d := design.Read("zeros.txt", data)
	golden(t, "zeros-S.txt", asText(t, d, Options{Size: "S"}))
	golden(t, "zeros-S-uk-every-row.txt", asText(t, d, Options{Size: "S", Terms: stitch.UK, EveryRow: true}))
	for _, opt := range []Options{{Size: "S"}, {Size: "S", Terms: stitch.UK}, {Size: "S", EveryRow: true}, {Size: "L"}} {
		var page bytes.Buffer
		if err := HTML(&page, d, opt); err != nil {
			t.Fatal(err)
		}
		_, body, _ := strings.Cut(page.String(), "<body")
		for _, text := range []string{body, asText(t, d, opt)} {
			for _, line := range strings.Split(text, "\n") {
				if strings.Contains(line, " 0 ") && !strings.Contains(line, "Graded") {
					t.Errorf("%+v: %s", opt, line)
				}
			}
		}
	}
}
