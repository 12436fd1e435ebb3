package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// fits tells whether an item is the kind of place p asks for.
func (r *run) fits(it Item, p *notation.Place, chains int) bool {
	switch p.What {
	case notation.AStitch:
		return it.is(Counts) && r.w.goesBy(it.Kind, p.Kind) || r.isGroup(p.Kind) && r.startsGroup(it)
	case notation.Space, notation.Corner:
		return it.space() && (chains == 0 || int(it.Chains) == chains) || it.is(Gap) && chains == 0 && r.inGaps()
	case notation.Chain:
		return it.is(AChain) || it.space()
	case notation.TurningChain:
		return it.is(Tch)
	case notation.StitchOrSpace:
		return it.is(Counts) && !it.space() || it.space() && (chains == 0 || int(it.Chains) == chains)
	case notation.StitchOrChain:
		return it.is(Counts) || it.space()
	case notation.Foundation:
		return it.is(AChain)
	case notation.RowEnd:
		return it.is(EndOfRow)
	}
	return it.is(Counts)
}

// inGaps tells whether "sp" means a gap between stitches: the edge has no chain
// space.
func (r *run) inGaps() bool {
	if r.gapsOnly == 0 {
		r.gapsOnly = 1
		if hasSpace(r.items) {
			r.gapsOnly = 2
		}
	}
	return r.gapsOnly == 1
}

// find returns the first place at or after from that p asks for, or noPlace.
// A named stitch that is nowhere ahead is taken as any stitch.
func (r *run) find(p *notation.Place, from int) int {
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	for i := from; i < r.hi; i++ {
		if r.fits(r.items[i], p, chains) {
			return i
		}
		// A stitch named other than the row below has it: take the next one,
		// unless one of that name comes later.
		if p.What == notation.AStitch && r.items[i].is(Counts) && !r.items[i].space() && i > r.groupEnd && !r.ahead(p, i) {
			return i
		}
	}
	if p.What == notation.Space && p.Which != notation.Each {
		for i := from; i < r.hi; i++ {
			if r.items[i].is(Tch) && (chains == 0 || int(r.items[i].Chains) == chains) {
				return i
			}
		}
	}
	return noPlace
}

// ahead tells whether a stitch of the name p gives comes at or after i. The
// answer is kept for the edge, so asking at every stitch costs one walk.
func (r *run) ahead(p *notation.Place, i int) bool {
	for j := r.hi - 1; j >= i; j-- {
		it := r.items[j]
		if r.fits(it, p, 0) {
			return true
		}
		if r.hi-j > 64 && i+64 < j { // far ahead: look near by only
			j = i + 64
		}
	}
	return false
}

// anyPlace is "next st".
var anyPlace = &notation.Place{Which: notation.Next}

// firstPlace is the first place of the row.
func (r *run) firstPlace() int {
	for i := r.low; i < r.hi; i++ {
		if r.items[i].is(Counts) {
			return i
		}
	}
	return r.low
}

// lastIndex returns the place from which exactly n of what p asks for are
// left, or noPlace if there are fewer.
func (r *run) lastIndex(p *notation.Place, n int) int {
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	found := 0
	for i := r.hi - 1; i >= r.low; i-- {
		if r.fits(r.items[i], p, chains) {
			if found++; found == n {
				return i
			}
		}
	}
	if p.What == notation.AStitch && found == 0 {
		q := *p
		q.What = notation.AnyStitch
		return r.lastIndex(&q, n)
	}
	return noPlace
}

// pass moves on to place i and counts what is passed over without a word.
func (r *run) pass(i int, at notation.Span, quiet bool) {
	if i <= r.pos {
		return
	}
	if !quiet {
		n := 0
		for _, it := range r.items[min(i, max(r.pos, r.groupEnd+1)):i] {
			if it.is(Counts) && (!it.space() || r.w.conv.spacesSaid) {
				n++
			}
		}
		if n > 0 {
			r.warn(SilentSkip, at, n, 0, "")
			r.soft[len(r.soft)-1].Soft = !skips(r.line.Tree.Steps)
		}
	}
	r.pos = i
	r.sub = 0
}

// skips tells whether a row says "skip" somewhere, so that it would say it
// everywhere.
func skips(steps []notation.Step) bool {
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Skip:
			return true
		case *notation.Star:
			if skips(s.Body) {
				return true
			}
		case *notation.Group:
			if skips(s.Body) {
				return true
			}
		}
	}
	return false
}

// used marks place i as worked into.
func (r *run) used(i int) {
	if i >= 0 && i < len(r.items) {
		r.lastSpace = r.items[i].space() || r.items[i].is(Ring) || r.items[i].is(Gap)
	}
	r.same = i
	if i+1 > r.pos {
		r.pos, r.sub = i+1, 0
	}
}

// next takes the next place p asks for.
func (r *run) next(p *notation.Place) (int, bool) {
	if p.What == notation.Chain && r.pos < r.hi {
		if i, ok := r.nextChain(); ok {
			return i, true
		}
	}
	if r.sub > 0 && r.skipped[1] == r.pos && p.What != notation.Chain { // "sk 1 ch" of a ch-2 sp
		r.warn(SilentSkip, p.Span, int(r.items[r.pos].Chains)-r.sub, 0, "ch")
		r.soft[len(r.soft)-1].Soft = false
	}
	if p.What == notation.AnyStitch {
		for i := r.pos; i < r.hi; i++ {
			if r.items[i].is(Counts) {
				r.used(i)
				return i, true
			}
		}
		return noPlace, false
	}
	i := r.find(p, r.pos)
	if i == noPlace {
		return i, false
	}
	if p.What == notation.AStitch {
		if !r.fits(r.items[i], p, 0) {
			r.otherKind(p, r.items[i])
		}
		r.pass(i, p.Span, r.w.kind(p.Kind).base != p.Kind)
	}
	r.used(i)
	return i, true
}

// nextChain takes the chains of a space one by one.
func (r *run) nextChain() (int, bool) {
	for i := r.pos; i < r.hi; i++ {
		it := r.items[i]
		if it.is(AChain) || it.is(Tch) {
			return 0, false
		}
		if !it.space() {
			continue
		}
		r.pos, r.same, r.lastSpace = i, i, false
		if r.sub++; r.sub >= int(it.Chains) {
			r.pos, r.sub = i+1, 0
		}
		return i, true
	}
	return 0, false
}

func (r *run) otherKind(p *notation.Place, it Item) {
	if it.Kind == stitch.None || it.is(AChain) {
		return
	}
	r.warn(OtherKind, p.Span, int(it.Kind), int(p.Kind), "")
}

// limit returns the place where a run along the edge stops: the first place
// that is no longer its own.
func (r *run) limit(l *notation.Limit) (int, bool) {
	if l == nil || l.End {
		return r.reserved(), true
	}
	p := &notation.Place{Span: l.Span, Which: notation.Last, What: l.What, Kind: l.Kind, Chains: l.Chains}
	switch {
	case l.Last != nil:
		n, ok := r.value(l.Last)
		if !ok {
			return 0, false
		}
		if n == 0 {
			return r.hi, true
		}
		at := r.lastIndex(p, n)
		if at == noPlace || at < r.pos {
			return 0, r.fail(RunsOut, l.Span, n-r.count(r.pos, r.hi), 0, 0, r.count(r.pos, r.hi), "")
		}
		return at, true
	case l.Marked:
		for i := r.pos; i < r.hi; i++ {
			if r.items[i].is(Marked) {
				return i, true
			}
		}
		return 0, r.fail(NoPlace, l.Span, 0, 0, 0, 0, "marker")
	case l.What == notation.Corner && len(r.items) > 0 && r.items[0].is(EndOfRow):
		return r.hi, true // along an edge: to its end
	case l.What == notation.TurningChain:
		for i := r.hi - 1; i >= r.pos; i-- {
			if r.items[i].is(Tch) {
				return i, true
			}
		}
		return 0, r.fail(NoPlace, l.Span, 0, 0, 0, 0, "turning chain")
	}
	p.Which = notation.Next
	at := r.find(p, r.pos)
	if at == noPlace {
		return 0, r.fail(NoPlace, l.Span, 0, 0, 0, 0, r.describe(p))
	}
	return at, true
}

// describe names a place in the pattern's words.
func (r *run) describe(p *notation.Place) string {
	switch p.What {
	case notation.Space, notation.Corner:
		if n := chainsOf(r.w.d, p.Chains, r.w.size); n > 0 {
			return "ch-" + itoa(n) + " sp"
		}
		return "ch sp"
	case notation.AStitch:
		return r.w.d.Stitches.Name(p.Kind, r.w.d.Terms)
	case notation.TurningChain:
		return "turning chain"
	case notation.Chain, notation.Foundation:
		return "ch"
	case notation.RowEnd:
		return "row-end"
	}
	return "st"
}

// reserved returns where "across" stops: before the places that the steps
// after it name as their own ("..., dc in top of tch").
func (r *run) reserved() int {
	end, need := r.hi, 0
	for f := len(r.frames) - 1; f >= 0; f-- {
		fr := r.frames[f]
		for _, s := range fr.steps[min(fr.next, len(fr.steps)):] {
			n, stop := r.reserve(s, &end)
			need += n
			if stop {
				return r.back(end, need)
			}
		}
		if fr.loop {
			break
		}
	}
	return r.back(end, need)
}

// back gives up n counted places before end.
func (r *run) back(end, n int) int {
	for n > 0 && end > r.pos {
		end--
		if r.items[end].is(Counts) {
			n--
		}
	}
	return end
}

// reserve tells how many next places s will need, and lowers end to the place
// s names from the end of the row.
func (r *run) reserve(s notation.Step, end *int) (need int, stop bool) {
	switch s := s.(type) {
	case *notation.Work:
		if len(s.Places) == 0 {
			if r.w.kind(s.Stitch.Kind).uses == 0 {
				return 0, false
			}
			n, _ := r.valueQuiet(s.Times)
			return n * r.w.kind(s.Stitch.Kind).uses, false
		}
		for _, p := range s.Places {
			n, st := r.reservePlace(p, r.w.kind(s.Stitch.Kind).uses, end)
			if need += n; st {
				return need, true
			}
		}
	case *notation.Skip:
		for _, p := range s.Places {
			n, st := r.reservePlace(p, 1, end)
			if need += n; st {
				return need, true
			}
		}
	case *notation.Leave:
		if s.N != nil {
			n, _ := r.valueQuiet(s.N)
			return n, true
		}
		if s.Place != nil {
			return r.reservePlace(s.Place, 1, end)
		}
		return 0, true
	case *notation.Group:
		return r.reserveGroup(s, end)
	case *notation.Star, *notation.Turn, *notation.Join, *notation.OtherSide:
		return 0, true
	}
	return need, false
}

func (r *run) reserveGroup(s *notation.Group, end *int) (need int, stop bool) {
	if len(s.In) > 0 {
		for _, p := range s.In {
			n, st := r.reservePlace(p, 1, end)
			if need += n; st {
				return need, true
			}
		}
		return need, false
	}
	times := 1
	if s.Times != nil {
		if s.Times.N == nil {
			return 0, true
		}
		times, _ = r.valueQuiet(s.Times.N)
	}
	for _, b := range s.Body {
		n, st := r.reserve(b, end)
		need += n
		if st {
			return need * times, true
		}
	}
	return need * times, false
}

func (r *run) reservePlace(p *notation.Place, uses int, end *int) (need int, stop bool) {
	switch {
	case p.New || p.Which == notation.First || p.Which == notation.Same || p.Which == notation.Ring:
		return 0, false
	case inTurningChain(p):
		for i := r.hi - 1; i >= r.pos; i-- {
			if r.items[i].is(Tch) {
				*end = min(*end, i)
				break
			}
		}
		return 0, false
	case p.Which == notation.Last:
		n, _ := r.valueQuiet(p.N)
		if at := r.lastIndex(p, n); at >= r.pos {
			*end = min(*end, at)
		}
		return 0, false
	case p.Which == notation.Each, p.Which == notation.Edge:
		return 0, true
	case p.What == notation.Space || p.What == notation.Corner:
		return 0, true
	}
	n, _ := r.valueQuiet(p.N)
	if p.Which == notation.Nth || p.Which == notation.Centre {
		n = 1
	}
	if uses > 1 && p.N == nil {
		n = uses
	}
	return n, false
}

// valueQuiet is value without a fault.
func (r *run) valueQuiet(n *notation.Number) (int, bool) {
	if n == nil {
		return 1, true
	}
	v, ok := r.w.d.Value(n, r.w.size)
	return min(v, maxRow), ok
}
