package check_test

import (
	"strings"
	"testing"

	"rowproof/check"
	"rowproof/design"
)

// TestSlipsAreTold puts one slip into a right pattern and expects the one error
// that a tech editor would write in the margin, at its line. The patterns are
// made up; the trade's rule behind each is common practice, no source.
func TestSlipsAreTold(t *testing.T) {
	panel := "Panel\nCh 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
	mesh := "Mesh\nCh 20.\nRow 1: Dc in 4th ch from hook (skipped ch-3 counts as dc) and in each ch across, turn. (18 dc)\n" +
		"Row 2: Ch 3 (counts as dc), dc in next dc, *ch 2, sk next 2 dc, dc in next 2 dc; rep from * across, turn. (10 dc, 4 ch-2 sps)\n"
	shells := "Shells\nCh 26.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (25 sc)\n" +
		"Row 2: Ch 1, sc in first st, *sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st; rep from * across, turn. (5 sc, 4 shells)\n"
	for _, tt := range []struct {
		name, right, old, new string
		line                  int
		code                  string
		says                  string
	}{
		{"a row in two lists", panel + "Rows 2, 4 and 6: Ch 1, sc in each sc across, turn.\nRows 3 and 5: Ch 1, sc in BLO of each st across, turn.\n",
			"2, 4 and 6", "2, 4 and 5", 5, "row-number", "Row 5 is told twice: here and in line 4."},
		{"a row in no list", panel + "Rows 2, 4 and 6: Ch 1, sc in each sc across, turn.\nRows 3 and 5: Ch 1, sc in BLO of each st across, turn.\n",
			"2, 4 and 6", "2, 4 and 7", 4, "row-number", "Row 7 stands where Row 6 should follow."},
		{"a label after rows without numbers", panel + "Row 2: Ch 1, sc in each sc across, turn.\nRow 3: Ch 1, sc in FLO of each sc across, turn.\nRep last 2 rows 3 more times.\nRows 10-12: Ch 1, sc in each sc across, turn.\n",
			"Rows 10-12", "Rows 9-12", 7, "row-number", "stands where Row 10 should follow"},
		{"the first row worked again", panel + "Row 2: Ch 1, sc in each sc across, turn.\nRows 3-12: Rep Row 2.\nRow 13: Ch 1, sc in each sc across. (12 sc)\n",
			"Rep Row 2", "Rep Row 1", 5, "row-reference", "Rows 3-12 work Row 1 again, which goes into the foundation chain"},
		{"two orders that do not fill the label", panel + "Row 2: Ch 1, sc in FLO of each sc across, turn.\nRow 3: Ch 1, sc in BLO of each sc across, turn.\nRows 4-12: Rep Rows 2 and 3 4 times, then Row 2 once more.\nRow 13: Ch 1, sc in each sc across. (12 sc)\n",
			"3 4 times", "3 3 times", 6, "repeat-times", "the label has 9 rows; the repeats make 7"},
		{"part of the foundation left over", "Edging\nCh 50.\nRow 1: Sc in 2nd ch from hook, [ch 5, sk next 3 chs, sc in next ch] 12 times, turn. (13 sc, 12 ch-5 lps)\n",
			"sk next 3", "sk next 2", 3, "left-unworked", "Row 1 leaves stitches unworked"},
		{"fans written out", shells, "4 shells", "5 shells", 4, "stated-count", "Row 2 makes 4 shells, not 5."},
		{"a space the row below has not got", mesh + "Row 3: Ch 3 (counts as dc), dc in next dc, *2 dc in next ch-2 sp, dc in next 2 dc; rep from * across, turn. (18 dc)\n",
			"in next ch-2 sp", "in next ch-3 sp", 5, "no-such-place", "the row below has 4 ch-2 sps"},
		{"each space the row below has not got", mesh + "Row 3: Ch 1, 3 sc in each ch-2 sp across, turn.\n",
			"each ch-2 sp", "each ch-1 sp", 5, "no-such-place", "Row 3 goes to a ch-1 sp, and there is none left"},
		{"half a space skipped", "Filet\nCh 20.\nRow 1: Dc in 4th ch from hook (skipped ch-3 counts as dc) and in each ch across, turn. (18 dc)\n" +
			"Row 2: Ch 3 (counts as dc), dc in next dc, *ch 2, sk next 2 dc, dc in next 2 dc; rep from * across, turn. (10 dc, 4 ch-2 sps)\n" +
			"Row 3: Ch 3 (counts as dc), dc in next dc, *ch 2, sk 2 ch, dc in next 2 dc; rep from * across, turn. (10 dc, 4 ch-2 sps)\n",
			"sk 2 ch", "sk 1 ch", 5, "passed-over", "skips part of a chain space"},
		{"the turning chain worked into twice", "Vest\nTurning ch-2 counts as a hdc throughout.\nCh 41.\nRow 1 (RS): Hdc in 3rd ch from hook and in each ch across, turn. (40 hdc)\n" +
			"Row 2: Ch 2, hdc in next 18 sts, hdc2tog, hdc in next 18 sts, hdc in top of tch, turn. (39 hdc)\n",
			"hdc2tog", "hdc3tog", 5, "runs-out", "all 40 sts are used up, and 1 more is needed"},
		{"the whole chain of a mesh named", "Mesh\nCh 40.\nRow 1: Dc in 6th ch from hook (counts as dc, ch 1), *ch 1, sk next ch, dc in next ch; rep from * across, turn. (19 dc, 18 ch-1 sps)\n" +
			"Row 2: Ch 4 (counts as dc and ch 1), sk first ch-1 sp, *dc in next dc, ch 1, sk ch-1 sp; rep from * to tch, dc in 3rd ch of tch, turn. (19 dc, 18 ch-1 sps)\n" +
			"Row 3: Ch 4 (counts as dc and ch 1), sk first ch-1 sp, *dc in next dc, ch 1, sk ch-1 sp; rep from * to tch, dc in 3rd ch of beg ch-4, turn. (19 dc, 18 ch-1 sps)\n",
			"beg ch-4", "beg ch-3", 5, "chain-mismatch", "Row 3 speaks of a beginning ch-3, and that chain is ch 4."},
		{"chains left free that count twice", "Rug (UK terms)\nMake 43ch.\nRow 1: Miss 3ch (counts as 1tr), 1tr into each ch to end. 41tr.\n",
			"as 1tr", "as 2tr", 3, "turning-chain-sum", "chains at the edge are said to count as 2 tr; they stand for one stitch"},
		{"inc in a list on one line", "Ball\nAbbreviations: MR = magic ring, inc = 2 sc in the same st, dec = sc2tog\nRnd 1: 6 sc in MR. (6)\nRnd 2: inc x 6 (12)\nRnd 3: dec x 6 (6)\n",
			"inc = 2", "inc = 3", 2, "definition-differs", "inc is explained with a number that is not 2"},
		{"dec in a list on one line", "Ball\nAbbreviations: MR = magic ring, inc = 2 sc in the same st, dec = sc2tog\nRnd 1: 6 sc in MR. (6)\nRnd 2: inc x 6 (12)\nRnd 3: dec x 6 (6)\n",
			"sc2tog", "sc1tog", 2, "definition-differs", "dec is explained as sc1tog"},
		{"the group of a popcorn", "Square\nPopcorn (pc): 5 dc in next st, drop loop from hook, insert hook in first dc of 5-dc group, pick up dropped loop and pull through.\n" +
			"Ch 20.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (19 sc)\nRow 2: Ch 3 (counts as dc), *pc in next st, dc in next st; rep from * across, turn. (9 pc, 10 dc)\n",
			"5-dc group", "4-dc group", 2, "definition-differs", "5 dc and then a group of 4"},
		{"the line of the sizes", "Tank\nSizes: S (M, L, XL)\nCh 41 (45, 49, 53).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 40 (44, 48, 52) sc.\nRow 2: Ch 1, sc in each st across, turn. 40 (44, 48, 52) sc.\n",
			"S (M, L, XL)", "S (M, L)", 2, "size-list", "Here are 3 sizes, and each of the 3 lists of the pattern has 4 numbers."},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if found := errorsOf(check.Run(design.Read("right.txt", []byte(tt.right)))); len(found) > 0 {
				t.Fatalf("the right pattern has an error: %s %s", found[0].Code, found[0].Message)
			}
			wrong := strings.Replace(tt.right, tt.old, tt.new, 1)
			r := check.Run(design.Read("wrong.txt", []byte(wrong)))
			found := errorsOf(r)
			if len(found) != 1 {
				t.Fatalf("%d errors, want one: %v", len(found), found)
			}
			f := found[0]
			if line, _ := r.Design.Position(f.Span.Start); line != tt.line || string(f.Code) != tt.code || !strings.Contains(f.Message+"\n"+f.Detail, tt.says) {
				t.Errorf("line %d: %s %s\n%s\nwant line %d: %s %s", line, f.Code, f.Message, f.Detail, tt.line, tt.code, tt.says)
			}
		})
	}
}
