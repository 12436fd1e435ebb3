package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// inTurningChain tells whether a place is the turning chain of the row below: it
// is a place of the edge like the others.
func inTurningChain(p *notation.Place) bool {
	return p.What == notation.TurningChain || p.Of != nil && p.Of.What == notation.TurningChain
}

// turningChain finds the turning chain that p speaks of and checks what p says
// of its chains.
func (r *run) turningChain(p *notation.Place) (int, bool) {
	at := noPlace
	for i := r.hi - 1; i >= r.low; i-- {
		if r.items[i].is(Tch) {
			at = i
			break
		}
	}
	if at == noPlace {
		return at, r.fail(NoPlace, p.Span, 0, 0, 0, 0, "turning chain")
	}
	top := int(r.items[at].Chains)
	total := top + r.besideTurning(at)
	told := p
	if p.Of != nil {
		told = p.Of
	}
	if told.Chains != nil {
		if n, ok := r.value(told.Chains); !ok {
			return at, false
		} else if n != total && (n != top || p.Which == notation.Nth) { // "3rd ch of beg ch-4" names the whole chain
			return at, r.fail(JoinPlace, told.Chains.Span, n, total, 0, 0, "")
		}
	}
	if p.Which == notation.Nth && p.N != nil {
		if n, ok := r.value(p.N); !ok {
			return at, false
		} else if n != top && n != top+r.underTurning(at, total) {
			return at, r.fail(TurningPlace, p.N.Span, n, top, 0, 0, "")
		}
	}
	return at, true
}

// besideTurning is the chains of the space that a turning chain goes on to.
func (r *run) besideTurning(at int) int {
	for _, i := range []int{at - 1, at + 1} {
		back := r.base != nil && r.base.reversed
		if i >= 0 && i < len(r.items) && r.items[i].space() && back == (i < at) {
			return int(r.items[i].Chains)
		}
	}
	return 0
}

// underTurning is the foundation chains left under the space beside a turning
// chain: those who count the chains left free at the hook from the foundation
// up count them too. total is the chains of the turning chain and its space.
func (r *run) underTurning(at, total int) int {
	row := r.base.row
	if row == nil || row.Below != nil || row.Piece == nil || len(row.Piece.Rows) == 0 || row.Piece.Rows[0] != row {
		return 0
	}
	return max(0, row.Piece.Hook-total)
}

// onTurningChain works into the turning chain of the row below.
func (r *run) onTurningChain(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	at, ok := r.turningChain(p)
	if !ok {
		return false
	}
	if over := r.count(r.pos, at); over > 0 && !r.overSpaces(r.pos, at) {
		return r.fail(Unworked, s.Span, over, 0, 0, r.count(r.low, r.hi), "")
	}
	if at >= r.skipped[0] && at < r.skipped[1] && r.skipped[1] == r.pos {
		return r.short(s.Span, 1) // it has just been skipped
	}
	if r.pos > at && r.same == at && r.lastMade == at && p.Which != notation.Same {
		return r.short(s.Span, 1) // the last stitch is in it
	}
	r.begun = true
	r.used(at)
	return r.emit(kind, times, at, 1, p)
}

// fromHook works "in 2nd ch from hook": the chains skipped may count.
func (r *run) fromHook(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	k, ok := r.value(p.N)
	if !ok {
		return false
	}
	if r.base == nil {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	if r.base.chains == 0 {
		return r.fail(NoPlace, p.Span, 0, 0, 0, 0, "chain counted from the hook")
	}
	if k > r.base.chains || k < 1 {
		return r.fail(ChainTooShort, p.Span, k, r.base.chains, 0, 0, "")
	}
	first := !r.begun
	if first && k > 1 && !r.skippedChains(s, p, kind, k-1) {
		return false
	}
	r.w.hookChains = k - 1
	r.begun = true
	r.pos = k - 1
	r.used(k - 1)
	return r.emit(kind, times, k-1, 1, p)
}

// skippedChains takes the chains left free at the hook as the pattern says.
func (r *run) skippedChains(s *notation.Work, p *notation.Place, kind stitch.Kind, n int) bool {
	t := r.w.takeTurning(n, kind, s.Counts)
	if both := s.Counts; both == nil || both.Chains != nil || both.Skipped != nil || !r.isTwo(both.Times) {
		if !r.saidOnce(both) { // "counts as 2 dc" takes in the dc itself
			return false
		}
	}
	if !t.counts {
		r.noteTurning(p.Span, n, t, kind)
		r.turning[len(r.turning)-1].AtHook = true
		return true
	}
	height := r.w.chainsFor(t.as)
	under := 0 // foundation chains left under the space
	if s.Counts != nil {
		under = chainsOf(r.w.d, s.Counts.Skipped, r.w.size)
	}
	if t.sure {
		if s.Counts != nil && (s.Counts.Chains != nil || s.Counts.Skipped != nil) {
			if under == 0 && n-height-t.chains > 0 {
				under = n - height - t.chains
				if under != t.chains { // a space of so many chains stands over as many
					return r.fail(TurningArithmetic, p.N.Span, n, t.chains, height+2*t.chains, 0, r.w.d.Stitches.Name(t.as, r.w.d.Terms))
				}
			} else if n != height+t.chains+under {
				return r.fail(TurningArithmetic, p.N.Span, n, t.chains, height+t.chains+under, 0, r.w.d.Stitches.Name(t.as, r.w.d.Terms))
			}
		} else if n > height {
			t.chains, under = r.overFoundation(kind, n-height)
		}
	} else {
		t.chains, under = r.overFoundation(kind, max(0, n-height))
	}
	r.pushTurning(n-t.chains-under, t, noPlace)
	r.noteTurning(p.Span, n, t, t.as)
	r.turning[len(r.turning)-1].AtHook = true
	r.turning[len(r.turning)-1].N -= t.chains + under
	if s.Counts != nil && s.Counts.Of != nil {
		if of, ok := r.value(s.Counts.Of); ok && of != n {
			return r.fail(TurningArithmetic, s.Counts.Of.Span, of, 0, n, 0, r.w.d.Stitches.Name(t.as, r.w.d.Terms))
		}
	}
	return true
}

// overFoundation shares chains beyond a stitch's height between the space after
// it and the foundation chains under that space. Before a group of stitches,
// such as a shell, there is no space: all of them are left unworked.
func (r *run) overFoundation(first stitch.Kind, n int) (space, under int) {
	if r.w.kind(first).open {
		return 0, n
	}
	if n%2 == 1 {
		return n / 2, 0
	}
	return n / 2, n / 2
}

// isTwo tells whether a number is 2.
func (r *run) isTwo(n *notation.Number) bool {
	v, ok := r.valueQuiet(n)
	return n != nil && ok && v == 2
}

// saidOnce checks that a chain is said to count as one stitch.
func (r *run) saidOnce(c *notation.Counts) bool {
	if c == nil || c.Times == nil {
		return true
	}
	n, ok := r.value(c.Times)
	if ok && n != 1 {
		return r.fail(TurningArithmetic, c.Times.Span, n, -1, 1, 0, r.w.d.Stitches.Name(c.As, r.w.d.Terms))
	}
	return ok
}

// pushTurning puts a turning chain that counts on the row's top.
func (r *run) pushTurning(chains int, t turning, at int) {
	into := int32(-1)
	if at >= 0 {
		into = r.origin(at)
	}
	flag := Counts | Tch
	as := t.as
	if as == stitch.None {
		as = stitch.Chain
	}
	if at >= 0 {
		r.lastMade = at
	}
	r.body.Stitches = append(r.body.Stitches, Worked{Kind: stitch.Chain, Into: into, N: uint16(max(0, chains)), Flag: Tch})
	r.body.Top = append(r.body.Top, Item{Kind: as, Chains: uint16(max(0, chains)), Flag: flag})
	r.body.Made += max(0, chains)
	if t.chains > 0 {
		r.pushSpace(t.chains)
	}
}

// pushSpace puts a chain space on the row's top.
func (r *run) pushSpace(n int) {
	it := Item{Chains: uint16(min(n, 65535))}
	if r.w.conv.spaceCounts(n) {
		it.Flag = Counts
	}
	r.w.spacesMade = true
	if r.w.firstSpace == nil {
		r.w.firstSpace = r.line
	}
	r.body.Stitches = append(r.body.Stitches, Worked{Kind: stitch.Chain, Into: -1, N: it.Chains})
	r.body.Top = append(r.body.Top, it)
	r.body.Made += n
}

func (r *run) noteTurning(at notation.Span, n int, t turning, first stitch.Kind) {
	r.firstChains = n
	r.w.noteCustom(r.line, at, n, t)
	r.turning = append(r.turning, TurningChain{Line: r.line, Span: at, N: n, Counts: t.counts, Sure: t.sure, Wide: t.sure && t.chains > 0, First: first, Post: r.postAhead()})
}
