package publish

import (
	"testing"

	"rowproof/design"
)

func TestParaphrase(t *testing.T) {
	for _, tt := range []struct{ line, want string }{
		{"Ch 25.", "chain 25"},
		{"Row 3 (WS): Ch 1, sc in each st across, turn. (24 sc)", "Row 3, wrong side: chain 1; sc into each st to the end; turn. Says 24 sc"},
		{"Row 4: Ch 1, *sc in next 4 sts, sc2tog; rep from * across, turn.", "Row 4: chain 1; repeat to the end: [sc into next 4 sts; sc2tog]; turn"},
		{"Row 5: Ch 1, sc in first st, *ch 1, sk next st, sc in next st; rep from * to last st, sc in last st, turn.",
			"Row 5: chain 1; sc into first st; repeat until 1 is left: [chain 1; skip next st; sc into next st]; sc into last st; turn"},
		{"Rows 6-9: Rep Row 2.", "Rows 6 to 9: work again row 2"},
		{"Rows 6-9: Rep Rows 2 and 3 alternately.", "Rows 6 to 9: work again rows 2 and 3 in turn"},
		{"Rnd 2: [Sc in next 2 sts, 2 sc in next st] 6 times. (24 sc)", "Round 2: (sc into next 2 sts; 2 sc into next st) 6 times. Says 24 sc"},
		{"Rnd 1: *Sc in next st, 2 sc in next st; rep from * 5 more times.", "Round 1: repeat once and 5 more times: [sc into next st; 2 sc into next st]"},
		{"Fasten off.", "fasten off"},
	} {
		d := design.Read("line.txt", []byte("BACK\n"+tt.line+"\n"))
		got := ""
		if n := len(d.Lines); n > 0 {
			got = Paraphrase(d, d.Lines[n-1])
		}
		if got != tt.want {
			t.Errorf("%s\nis told as %s\nwant       %s", tt.line, got, tt.want)
		}
	}
}
