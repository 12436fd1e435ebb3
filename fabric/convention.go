package fabric

import (
	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// conventions are how the pattern is to be taken where its words may leave it
// open. The pattern's own words decide, then its notes, then custom.
type conventions struct {
	custom custom
	// spaces: whether a chain space counts as a stitch. said tells that the
	// pattern's words settle it.
	spaces, spacesSaid bool
	spaceChains        int // the n when only ch-n spaces are spoken of; 0 is any
	turning            []turningRule
	spiral             bool
	roundsTurn         bool
	backLoop           notation.Loop
}

// custom is how a turning chain is taken when nothing is said.
type custom uint8

const (
	asHeight      custom = iota // ch 3 and more at dc or taller counts, ch 1 and ch 2 do not
	halfDoubleToo               // ch 2 counts as well
	never                       // none counts
	extra                       // it counts, and the first stitch is worked all the same
)

// A turningRule is what a note says of turning chains.
type turningRule struct {
	n      int // chains; 0 for any
	counts *notation.Counts
}

// readConventions collects what the whole document says.
func readConventions(d *design.Design, size int) conventions {
	var c conventions
	for _, line := range d.Lines {
		if line.Tree == nil {
			continue
		}
		for _, s := range line.Tree.Steps {
			if rule, ok := s.(*notation.Rule); ok {
				c.add(d, size, line, rule)
			}
		}
	}
	return c
}

func (c *conventions) add(d *design.Design, size int, line *design.Line, rule *notation.Rule) {
	switch rule.About {
	case notation.AboutTurningChain:
		if rule.Counts != nil {
			c.turning = append(c.turning, turningRule{chainsOf(d, rule.Chains, size), rule.Counts})
			if rule.Counts.Of != nil { // "ch 1 and ch 2 do not count"
				c.turning = append(c.turning, turningRule{chainsOf(d, rule.Counts.Of, size), rule.Counts})
			}
		}
	case notation.AboutSpaces:
		if rule.Counts != nil {
			c.spaces, c.spacesSaid = !rule.Counts.Not, true
			c.spaceChains = chainsOf(d, rule.Chains, size)
		}
	case notation.AboutSpiral:
		c.spiral = true
	case notation.AboutLoop:
		if line.Kind == design.Note {
			c.backLoop = rule.Loop
		}
	}
}

// chainsOf returns the n of a "ch-n", 0 when none is told.
func chainsOf(d *design.Design, n *notation.Number, size int) int {
	if n == nil {
		return 0
	}
	v, ok := d.Value(n, size)
	switch {
	case !ok:
		return 0
	case v == 0:
		return noSpace
	}
	return v
}

// noSpace is the n of "ch-0 sp", which no space has.
const noSpace = 1 << 20

// spaceCounts tells whether a space of n chains counts as a stitch.
func (c *conventions) spaceCounts(n int) bool {
	return c.spaces && (c.spaceChains == 0 || c.spaceChains == n)
}

// A turning is a turning chain as it is taken.
type turning struct {
	counts bool
	extra  bool        // counts, and stands on no place
	as     stitch.Kind // the stitch it stands for
	chains int         // further chains that make a space after it
	sure   bool        // the pattern's words settle it
	said   bool        // a word or note about this very number of chains
}

// takeTurning decides what n chains at the start of a row stand for. first is
// the stitch that follows, said what the row itself says of them.
func (w *worker) takeTurning(n int, first stitch.Kind, said *notation.Counts) turning {
	if said == nil {
		for i := len(w.conv.turning) - 1; i >= 0; i-- {
			if rule := w.conv.turning[i]; rule.n == 0 || rule.n == n {
				said = rule.counts
				if rule.n == 0 && !said.Not && n == 1 {
					said = nil
					continue
				}
				break
			}
		}
	}
	height := w.height(first)
	if said != nil {
		return w.saidTurning(n, first, height, said)
	}
	t := turning{as: first}
	switch {
	case n == 1 || w.conv.custom == never:
		return t
	case n >= 3 && height >= 2.5:
		t.counts = true
		t.chains = max(0, n-w.chainsFor(first))
	case n == 2 && height >= 1.5:
		t.counts = w.conv.custom == halfDoubleToo
	case n > 2 && height < 2.5 && height > 0:
		t.counts = n > int(height)+1
		t.chains = max(0, n-w.chainsFor(first))
	}
	t.extra = t.counts && w.conv.custom == extra
	w.undecided = true
	return t
}

// noteCustom keeps, once for each kind of turning chain, how custom took it.
func (w *worker) noteCustom(line *design.Line, at notation.Span, n int, t turning) {
	if t.sure || n < 2 || t.as == stitch.None {
		return
	}
	for _, c := range w.fab.Customs {
		if c.N == n && c.As == t.as {
			return
		}
	}
	w.fab.Customs = append(w.fab.Customs, Custom{Line: line, Span: at, N: n, Counts: t.counts, Extra: t.extra, As: t.as, Tried: w.conv.custom != asHeight})
}

func (w *worker) saidTurning(n int, first stitch.Kind, height float64, said *notation.Counts) turning {
	t := turning{counts: !said.Not, as: said.As, chains: chainsOf(w.d, said.Chains, w.size), sure: true, said: true}
	if t.as == stitch.None {
		t.as = first
		if t.counts && said.Chains == nil && height > 0 && n > w.chainsFor(first) {
			t.chains = n - w.chainsFor(first)
		}
	}
	return t
}

// height is a stitch's height in chains; 0 for none.
func (w *worker) height(k stitch.Kind) float64 {
	if k == stitch.None {
		return 0
	}
	return w.d.Stitches.Stitch(k).Height
}

// chainsFor is the usual number of turning chains for a stitch.
func (w *worker) chainsFor(k stitch.Kind) int {
	if k == stitch.None {
		return 0
	}
	return max(1, w.d.Stitches.Stitch(k).TurningChain)
}
