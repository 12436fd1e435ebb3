package check

import (
	"fmt"
	"strings"

	"rowproof/diag"
	"rowproof/fabric"
	"rowproof/stitch"
)

// The codes of what the fabric finds. Each has a page under pages/.
const (
	StatedCount      diag.Code = "stated-count"
	RepeatRemainder  diag.Code = "repeat-remainder"
	RunsOut          diag.Code = "runs-out"
	LeftUnworked     diag.Code = "left-unworked"
	NoSuchPlace      diag.Code = "no-such-place"
	RowReference     diag.Code = "row-reference"
	RangeUneven      diag.Code = "range-uneven"
	RepeatTimes      diag.Code = "repeat-times"
	BackwardRange    diag.Code = "backward-range"
	RowNumber        diag.Code = "row-number"
	WrongSide        diag.Code = "wrong-side"
	RepWithoutStar   diag.Code = "rep-without-star"
	StarWithoutRep   diag.Code = "star-without-rep"
	EndlessRepeat    diag.Code = "endless-repeat"
	TooMuch          diag.Code = "too-much"
	TurningTop       diag.Code = "turning-chain-top"
	ChainMismatch    diag.Code = "chain-mismatch"
	ChainShort       diag.Code = "chain-too-short"
	SidesDiffer      diag.Code = "sides-differ"
	NoGauge          diag.Code = "no-gauge"
	LeftCount        diag.Code = "left-count"
	ShapingRows      diag.Code = "shaping-rows"
	PassedOver       diag.Code = "passed-over"
	OtherStitch      diag.Code = "other-stitch"
	TurningChainSum  diag.Code = "turning-chain-sum"
	MakesNothing     diag.Code = "makes-nothing"
	CountTwice       diag.Code = "count-twice"
	OffMarker        diag.Code = "off-marker"
	OtherFace        diag.Code = "other-face"
	NoneLeft         diag.Code = "none-left-there"
	TallTurningChain diag.Code = "tall-turning-chain"
	DecreaseUneven   diag.Code = "decrease-uneven"
)

// A wordingOf says a kind of fault: its code, and how its message, counting
// and repair are written.
type wordingOf struct {
	code diag.Code
	say  func(c *checker, g *group) (message, detail, repair string)
}

var wording map[fabric.FaultKind]wordingOf

func init() {
	wording = map[fabric.FaultKind]wordingOf{
		fabric.WrongCount:        {StatedCount, sayCount},
		fabric.Remainder:         {RepeatRemainder, sayRemainder},
		fabric.RunsOut:           {RunsOut, sayRunsOut},
		fabric.Unworked:          {LeftUnworked, sayUnworked},
		fabric.NoPlace:           {NoSuchPlace, sayNoPlace},
		fabric.NoRow:             {RowReference, sayNoRow},
		fabric.RangeUneven:       {RangeUneven, sayUneven},
		fabric.RangeTimes:        {RepeatTimes, sayTimes},
		fabric.BackwardRange:     {BackwardRange, sayBackward},
		fabric.LabelGap:          {RowNumber, sayLabel},
		fabric.LabelTwice:        {RowNumber, sayLabelTwice},
		fabric.WrongSide:         {WrongSide, saySide},
		fabric.RepWithoutStar:    {RepWithoutStar, sayNoStar},
		fabric.StarWithoutRep:    {StarWithoutRep, sayNoRep},
		fabric.Endless:           {EndlessRepeat, sayEndless},
		fabric.TooLong:           {TooMuch, sayTooMuch},
		fabric.TurningPlace:      {TurningTop, sayTurningTop},
		fabric.JoinPlace:         {ChainMismatch, sayChainMismatch},
		fabric.ChainTooShort:     {ChainShort, sayChainShort},
		fabric.SidesDiffer:       {SidesDiffer, saySides},
		fabric.NoGauge:           {NoGauge, sayNoGauge},
		fabric.LeftCount:         {LeftCount, sayLeft},
		fabric.ShapeRows:         {ShapingRows, sayShapeRows},
		fabric.SilentSkip:        {PassedOver, sayPassed},
		fabric.OtherKind:         {OtherStitch, sayOther},
		fabric.TurningArithmetic: {TurningChainSum, sayTurningSum},
		fabric.DecUneven:         {DecreaseUneven, sayDecUneven},
		fabric.Nothing:           {MakesNothing, sayNothing},
		fabric.TallChain:         {TallTurningChain, sayTall},
		fabric.CountTwice:        {CountTwice, sayTwice},
		fabric.OffMarker:         {OffMarker, sayOffMarker},
		fabric.OtherFace:         {OtherFace, sayOtherFace},
		fabric.SameFace:          {OtherFace, saySameFace},
		fabric.NoneLeft:          {NoneLeft, sayNoneLeft},
	}
}

func sayCount(c *checker, g *group) (string, string, string) {
	one := g.one()
	unit := one.Text
	if unit == "change" {
		return row(one) + " does not change the count by what it states" + c.in(g) + ".",
			c.table(g, func(f fabric.Fault) string {
				return fmt.Sprintf("the row makes %d sts, a change of %d; %d is stated", f.D, f.B, f.A)
			}), ""
	}
	message := row(one) + " does not make the count it states" + c.in(g) + "."
	if g.same(func(f fabric.Fault) int { return f.A }) && g.same(func(f fabric.Fault) int { return f.B }) {
		message = fmt.Sprintf("%s makes %d %s%s, not %d.", row(one), one.B, unit, c.in(g), one.A)
	}
	detail := c.table(g, func(f fabric.Fault) string {
		return fmt.Sprintf("%d %s made, %d stated: %s", f.B, unit, f.A, moreOrFewer(f.B-f.A))
	})
	detail += settledNote(g)
	return message, detail, c.countRepair(g)
}

// moreOrFewer says a difference: "2 more than stated".
func moreOrFewer(d int) string {
	if d > 0 {
		return itoa(d) + " more than stated"
	}
	return itoa(-d) + " fewer than stated"
}

// settledNote says which of the two numbers the rows after it fit.
func settledNote(g *group) string {
	switch settledAs(g) {
	case fabric.ByMade:
		return "\nThe rows after it fit the count that is made, so the stated number is the slip."
	case fabric.ByStated:
		return "\nThe rows after it fit the count that is stated, so the slip is in the stitches of this row."
	}
	return ""
}

func settledAs(g *group) fabric.Settled {
	s := g.one().Settled
	for _, f := range g.faults {
		if f.Settled != s {
			return fabric.Unsettled
		}
	}
	return s
}

// countRepair writes the stated count again with the numbers made, unless the
// rows after it need the number stated.
func (c *checker) countRepair(g *group) string {
	if s := settledAs(g); s == fabric.ByStated || s == fabric.ByNeither {
		return ""
	}
	to := map[int]int{}
	for _, f := range g.faults {
		to[f.size] = f.B
	}
	text := c.withNumbers(g.span, to)
	if text == "" {
		return ""
	}
	return text + " " + g.one().Text
}

func sayRemainder(c *checker, g *group) (string, string, string) {
	one := g.one()
	message := row(one) + " does not come out even" + c.in(g) + "."
	return message, c.table(g, func(f fabric.Fault) string {
		switch {
		case f.Text != "":
			return fmt.Sprintf("%s worked, and %s left with no stitch to go with it", plural(f.C, "repeat"), plural(f.B, f.Text))
		case f.A == 0:
			return fmt.Sprintf("%s to work over, %s left over", plural(f.D, "st"), itoa(f.B))
		case f.C == 0:
			return fmt.Sprintf("the repeat needs %s, and only %d are there", plural(f.A, "st"), f.D)
		}
		return fmt.Sprintf("%s use %d of %d, %s left over", plural(f.C, "repeat"), f.C*f.A, f.D, itoa(f.B))
	}) + perRepeat(one), ""
}

func perRepeat(f fabric.Fault) string {
	if f.A == 0 {
		return ""
	}
	return "\nThe repeat uses " + plural(f.A, "st") + " each time."
}

func sayRunsOut(c *checker, g *group) (string, string, string) {
	one := g.one()
	message := row(one) + " needs more stitches than it has to work into" + c.in(g) + "."
	return message, c.table(g, func(f fabric.Fault) string {
		if f.B > 0 && f.A > 0 {
			return fmt.Sprintf("this needs %s, and %d are left to work into: %d too few", plural(f.B, "st"), f.C, f.A)
		}
		if f.A > 0 {
			return fmt.Sprintf("all %s are used up, and %d more %s needed", plural(f.D, "st"), f.A, map[bool]string{true: "is", false: "are"}[f.A == 1])
		}
		return fmt.Sprintf("all %s are used up here", plural(f.D, "st"))
	}), ""
}

func sayUnworked(c *checker, g *group) (string, string, string) {
	one := g.one()
	if one.Text == "turning chain" {
		return row(one) + " leaves the turning chain unworked" + c.in(g) + ", and it counts as a stitch.",
			c.table(g, func(f fabric.Fault) string {
				return fmt.Sprintf("%s to work into, %d worked", plural(f.D, "st"), f.D-f.A)
			}), "work the last st in the top of the turning ch"
	}
	return row(one) + " leaves stitches unworked without saying so" + c.in(g) + ".",
		c.table(g, func(f fabric.Fault) string {
			return fmt.Sprintf("%s to work into, %d left unworked", plural(f.D, "st"), f.A)
		}), ""
}

func sayNoPlace(c *checker, g *group) (string, string, string) {
	one := g.one()
	detail := ""
	if one.B > 0 {
		detail = c.table(g, func(f fabric.Fault) string {
			return fmt.Sprintf("the row below has %s", plural(f.B, fmt.Sprintf("ch-%d sp", f.A)))
		})
	}
	return fmt.Sprintf("%s goes to a %s%s, and there is none left in the row below.", row(one), one.Text, c.in(g)), detail, ""
}

func sayNoRow(c *checker, g *group) (string, string, string) {
	one := g.one()
	switch {
	case row(one) == fmt.Sprintf("Row %d", one.A) || row(one) == fmt.Sprintf("Rnd %d", one.A):
		return fmt.Sprintf("%s is told to repeat itself.", row(one)), "", ""
	case one.Text == "foundation":
		return fmt.Sprintf("%s works Row %d again, which goes into the foundation chain: there is none to go into here.", row(one), one.A), "", ""
	case one.Text == "twice":
		return fmt.Sprintf("%s names Row %d twice as the rows to repeat.", row(one), one.A), "", ""
	case one.Text != "":
		return fmt.Sprintf("%s repeats %s, and there is no such row before it.", row(one), one.Text), "", ""
	}
	word := "Row"
	if strings.HasPrefix(row(one), "Rnd") {
		word = "Rnd"
	}
	return fmt.Sprintf("%s repeats %s %d, and no %s %d comes before it.", row(one), word, one.A, word, one.A), "", ""
}

func sayUneven(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s cannot be filled with whole repeats%s.", row(one), c.in(g)),
		c.table(g, func(f fabric.Fault) string {
			return fmt.Sprintf("%s in the label, %d to a repeat: %s over", plural(f.A, "row"), f.B, plural(f.A%f.B, "row"))
		}), ""
}

func sayTimes(c *checker, g *group) (string, string, string) {
	one := g.one()
	detail := c.table(g, func(f fabric.Fault) string {
		if f.B == 0 {
			return fmt.Sprintf("the label has %s; the repeats make %d", plural(f.A, "row"), f.C)
		}
		return fmt.Sprintf("the label has %s; %s of %s make %d", plural(f.A, "row"), plural(f.C, "repeat"), plural(f.B, "row"), f.C*f.B)
	})
	repair := ""
	if one.B > 0 && one.A%one.B == 0 && len(g.faults) == c.d.SizeCount() && g.same(func(f fabric.Fault) int { return f.A / f.B }) {
		repair = itoa(one.A/one.B) + " more times"
	}
	return fmt.Sprintf("%s: the repeats do not fill the rows of the label%s.", row(one), c.in(g)), detail, repair
}

func sayBackward(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("The rows run backward: %d comes after %d%s.", one.A, one.B, c.in(g)), "", ""
}

func sayLabel(c *checker, g *group) (string, string, string) {
	one := g.one()
	word, _, _ := strings.Cut(one.Row, " ")
	return fmt.Sprintf("%s stands where %s %d should follow%s.", row(one), word, one.B, c.in(g)),
		c.table(g, func(f fabric.Fault) string {
			before := fmt.Sprintf("%s %d", word, f.C)
			switch {
			case f.D > 0 && f.C > 0:
				return fmt.Sprintf("before it come %s and %s without a number", before, plural(f.D, strings.ToLower(word)))
			case f.D > 0:
				return fmt.Sprintf("before it come %s without a number", plural(f.D, strings.ToLower(word)))
			case f.C == 0:
				return "no row with a number comes before it"
			}
			return "the row before is " + before
		}), fmt.Sprintf("%s %d", word, one.B)
}

func sayLabelTwice(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s is told twice%s: here and in %s.", row(one), c.in(g), one.Text),
		"One of the two row numbers is wrong.", ""
}

func saySide(c *checker, g *group) (string, string, string) {
	one := g.one()
	repair := ""
	if g.same(func(f fabric.Fault) int { return f.B }) && len(g.faults) == c.d.SizeCount() {
		repair = "(" + sideName(one.B) + ")"
	}
	return fmt.Sprintf("%s is marked %s, and the %s faces%s.", row(one), sideName(one.A), sideName(one.B), c.in(g)),
		"The work is turned after each row, so the sides take turns from the last row that names its side.", repair
}

func sayNoStar(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " says to repeat from a * and has no * to go back to.", "", "put a * before the first stitch of what is repeated"
}

func sayNoRep(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " opens a repeat with * and never says how often to work it.", "", "; rep from * across"
}

func sayEndless(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " repeats something that uses no stitch, so it never reaches the end.", "", ""
}

func sayTooMuch(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " asks for more than any pattern has, and was not worked.", "", ""
}

func sayTurningTop(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s works into ch %d of the turning chain, and its top is ch %d%s.", row(one), one.A, one.B, c.in(g)), "", ""
}

func sayChainMismatch(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s speaks of a beginning ch-%d, and that chain is ch %d%s.", row(one), one.A, one.B, c.in(g)), "", "ch-" + itoa(one.B)
}

func sayChainShort(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s works into chain %d, and there are only %d%s.", row(one), one.A, one.B, c.in(g)), "", ""
}

func saySides(c *checker, g *group) (string, string, string) {
	one := g.one()
	name := func(s string) string {
		if s == "" {
			return "the first side"
		}
		return s
	}
	if one.Soft && one.A == one.B {
		return fmt.Sprintf("%s and %s have different numbers of rows%s.", name(one.Text), name(one.Piece), c.in(g)),
			c.table(g, func(f fabric.Fault) string { return fmt.Sprintf("%d rows and %d rows", f.C, f.D) }), ""
	}
	if one.A == one.B {
		return fmt.Sprintf("%s of %s is shaped at the same end as that row of %s%s, so the two do not mirror each other.", row(one), name(one.Piece), name(one.Text), c.in(g)),
			"Both are worked in the same direction: where one is shaped at the start of the row, the other is shaped at its end.", ""
	}
	return fmt.Sprintf("%s and %s do not mirror each other%s.", name(one.Text), name(one.Piece), c.in(g)),
		c.table(g, func(f fabric.Fault) string { return fmt.Sprintf("one ends with %d sts, the other with %d", f.A, f.B) }), ""
}

func sayNoGauge(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " is worked to a length, and no gauge tells how many rows that is.",
		"Rows after it cannot be held against the rows they stand on.", "Gauge: … sts and … rows = 4 in (10 cm)"
}

func sayLeft(c *checker, g *group) (string, string, string) {
	one := g.one()
	return row(one) + " does not leave the number of stitches it says" + c.in(g) + ".",
		c.table(g, func(f fabric.Fault) string { return fmt.Sprintf("%s left, %d stated", plural(f.B, "st"), f.A) }), ""
}

func sayShapeRows(c *checker, g *group) (string, string, string) {
	one := g.one()
	return row(one) + ": the shaping does not take the rows of the label" + c.in(g) + ".",
		c.table(g, func(f fabric.Fault) string {
			return fmt.Sprintf("the shaping takes %s, the label has %d", plural(f.B, "row"), f.A)
		}), ""
}

func sayPassed(c *checker, g *group) (string, string, string) {
	one := g.one()
	if one.Text != "" {
		return fmt.Sprintf("%s skips part of a chain space and passes over the other %s without saying so%s.", row(one), plural(one.A, one.Text), c.in(g)), "", ""
	}
	return fmt.Sprintf("%s passes over %s without saying so%s.", row(one), plural(one.A, "st"), c.in(g)), "", ""
}

func sayOther(c *checker, g *group) (string, string, string) {
	one := g.one()
	name := func(k int) string { return c.d.Stitches.Name(stitch.Kind(k), c.d.Terms) }
	return fmt.Sprintf("%s works into %s, and the row below has %s there%s.", row(one), name(one.B), name(one.A), c.in(g)), "", "next " + name(one.A)
}

func sayTurningSum(c *checker, g *group) (string, string, string) {
	one := g.one()
	if one.B < 0 {
		return fmt.Sprintf("%s: chains at the edge are said to count as %d %s%s; they stand for one stitch.", row(one), one.A, one.Text, c.in(g)), "", ""
	}
	return fmt.Sprintf("%s: the chains do not add up to what they are said to stand for%s.", row(one), c.in(g)),
		c.table(g, func(f fabric.Fault) string {
			if f.B == 0 {
				return fmt.Sprintf("%s are said to count as %s: that takes %d", plural(f.A, "ch"), f.Text, f.C)
			}
			return fmt.Sprintf("%s are said to count as %s and ch %d: that takes %d", plural(f.A, "ch"), f.Text, f.B, f.C)
		}), ""
}

func sayDecUneven(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s decreases over %s, and each decrease uses %d%s.", row(one), plural(one.A, "st"), one.B, c.in(g)), "", ""
}

func sayNothing(c *checker, g *group) (string, string, string) {
	return row(g.one()) + " asks for none of something in every size.", "A 0 is for sizes that leave a step out: 0 (1, 2).", ""
}

func sayTall(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s starts with ch %d, and %s takes ch %d%s.", row(one), one.A, one.Text, one.B, c.in(g)),
		"A chain that is higher on purpose can say so: (does not count as a st).", fmt.Sprintf("ch %d", one.B)
}

func sayTwice(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s states its %s twice.", row(one), one.Text), "", ""
}

func sayOtherFace(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s repeats shaped Row %d with the other side facing%s.", row(one), one.B, c.in(g)),
		fmt.Sprintf("Row %d is worked as Row %d: their numbers are an odd number of rows apart,\nso the shaping falls on the other edge.", one.A, one.B), ""
}

func saySameFace(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s works Rows %d and %d one after the other%s, and both are %s rows.", row(one), one.A, one.B, c.in(g), sideName(one.C)),
		"The work is turned after each row, so a RS row and a WS row take turns.", ""
}

func sayNoneLeft(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("The yarn is joined in Row %d%s, and that row has no unworked stitches.", one.A, c.in(g)),
		fmt.Sprintf("Row %d has them.", one.B), itoa(one.B)
}

func sayOffMarker(c *checker, g *group) (string, string, string) {
	one := g.one()
	return fmt.Sprintf("%s decreases over %d sts beside the marked st, not centred on it%s.", row(one), one.A, c.in(g)),
		"The marker moves up with each row; the decrease before had the marked st in its middle.", ""
}
