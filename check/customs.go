package check

import (
	"fmt"
	"slices"

	"rowproof/diag"
	"rowproof/fabric"
)

// ByCustom: the pattern leaves a convention unsaid, and custom settled it.
const ByCustom diag.Code = "by-custom"

// customs names each convention that no word of the pattern settles, and how it
// was taken.
func customs(c *checker) {
	if len(c.fabrics) == 0 {
		return
	}
	for _, u := range c.fabrics[0].Customs {
		if c.hasErrorAt(u.Span, "") {
			continue
		}
		c.add(diag.Finding{Severity: diag.Note, Code: ByCustom, Span: u.Span, Piece: title(u.Line), Row: c.lineLabel(u.Line), Sizes: slices.Clone(c.d.Sizes),
			Message: c.sayCustom(u), Repair: c.customRepair(u)})
	}
}

func (c *checker) sayCustom(u fabric.Custom) string {
	by := ", as custom has it."
	if u.Tried {
		by = ": the rows come out so, and not as custom has it."
	}
	if u.N == 0 {
		return "Nothing says whether a ch space counts as a stitch; it was taken to count" + by
	}
	name := c.d.Stitches.Name(u.As, c.d.Terms)
	switch {
	case u.Extra:
		return fmt.Sprintf("Nothing says whether ch %d before %s counts as a stitch; it was taken to count besides the first stitch%s", u.N, name, by)
	case u.Counts:
		return fmt.Sprintf("Nothing says whether ch %d before %s counts as a stitch; it was taken to count%s", u.N, name, by)
	}
	return fmt.Sprintf("Nothing says whether ch %d before %s counts as a stitch; it was taken not to count%s", u.N, name, by)
}

func (c *checker) customRepair(u fabric.Custom) string {
	switch {
	case u.N == 0:
		return "Note: Ch spaces count as sts."
	case u.Counts:
		return fmt.Sprintf("Ch %d (counts as %s)", u.N, c.d.Stitches.Name(u.As, c.d.Terms))
	}
	return fmt.Sprintf("Ch %d (does not count as a st)", u.N)
}
