package fabric

import (
	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// Bounds that no real pattern comes near; they keep hostile text from taking
// all the time and memory there is.
const (
	maxRow     = 50_000     // places, stitches or passes of repeats in one row
	maxPattern = 10_000_000 // stitches in one size
	maxRows    = 20_000     // rows in one size
)

// ringPlace stands for the ring where an index into an edge is asked for.
const (
	noPlace   = -1
	ringPlace = -2
)

// A run works one row: it walks the edge below with its steps and makes the
// row's body.
type run struct {
	w     *worker
	line  *design.Line
	base  *edge
	items []Item // the edge in working order
	rot   int    // rounds: how far the start has moved by slip stitches
	over  int    // rounds: places at the end that the slip stitches went over
	ext   int    // chains put before the edge by this row

	pos      int    // next free place
	low      int    // first place of the row
	hi       int    // end of the free places
	same     int    // the place last used
	lastMade int    // the place the last stitch was made in, or noPlace
	sub      int    // chains already used of the space at pos
	in       int    // the place a group is worked in, or noPlace
	skipped  [2]int // the places last skipped, from and up to, that "skipped st" may still mean
	groupEnd int    // the end of the shell or other group last worked into, or noPlace

	inRing   bool // the row works into the ring itself
	under    bool // the row goes along the other side of the foundation chain
	gapsOnly int  // 1 when the edge has no chain space, 2 when it has, 0 not looked yet

	body     *Body
	begun    bool // a turning chain or stitch has been made
	loop     notation.Loop
	prevail  stitch.Kind
	frames   []frame
	skipping int // counted places passed over without a word
	passes   int // passes of repeats so far, one within another

	lastSpace, gaps bool // the last place worked was a space; worked between stitches
	turned, noTurn  bool
	joined, noJoin  bool
	fastened        bool
	left, leftRest  bool // places are left unworked; all the rest of them
	unknown         bool
	pending         *notation.Chains
	turning         []TurningChain
	firstChains     int // chains the row began with, 0 for none

	fewer  bool // "rep from * 5 times" is five in all
	unsure bool // the row has such a repeat
	fault  *Fault
	soft   []Fault
}

// A frame is a list of steps being worked and how far we are in it.
type frame struct {
	steps []notation.Step
	next  int
	loop  bool // worked more than once: what follows it is not what comes next
}

func newRun(w *worker, line *design.Line, base *edge) *run {
	r := &run{w: w, line: line, base: base, in: noPlace, same: noPlace, lastMade: noPlace, groupEnd: noPlace, skipped: [2]int{noPlace, noPlace}, body: &Body{}}
	r.loop = w.conv.backLoop
	if base != nil {
		r.items = base.items()
		r.pos, r.low, r.hi = base.from, base.from, base.to
		if n := base.to - base.from + 4; cap(w.spare.Stitches) >= n && cap(w.spare.Top) >= n {
			r.body.Stitches, r.body.Top = w.spare.Stitches[:0], w.spare.Top[:0]
		} else {
			r.body.Stitches, r.body.Top = make([]Worked, 0, n), make([]Item, 0, n)
		}
		w.spare = Body{}
	}
	return r
}

// fail notes that the row does not come out here, and returns false.
func (r *run) fail(kind FaultKind, at notation.Span, a, b, c, d int, text string) bool {
	if r.fault == nil {
		r.fault = &Fault{Kind: kind, Line: r.line, Span: at, A: a, B: b, C: c, D: d, Text: text}
	}
	return false
}

// warn notes something that works and may trouble someone.
func (r *run) warn(kind FaultKind, at notation.Span, a, b int, text string) {
	r.soft = append(r.soft, Fault{Kind: kind, Line: r.line, Span: at, A: a, B: b, Text: text, Soft: true})
}

// value is a number's value in this size, 1 for none.
func (r *run) value(n *notation.Number) (int, bool) {
	if n == nil {
		return 1, true
	}
	if len(n.Values) == 1 && n.Live == "" && !n.Values[0].None {
		if n.Values[0].N == 0 {
			return 0, r.fail(Nothing, n.Span, 0, 0, 0, 0, "")
		}
		return n.Values[0].N, true
	}
	v, ok := r.w.d.Value(n, r.w.size)
	if !ok {
		for _, x := range n.Values {
			if x.None && len(n.Values) == r.w.d.SizeCount() {
				return 0, true
			}
		}
		return 0, r.fail(BadNumber, n.Span, 0, 0, 0, 0, "")
	}
	return v, true
}

// exec works steps in order. It returns false when the row does not come out.
func (r *run) exec(steps []notation.Step, loop bool) bool {
	r.frames = append(r.frames, frame{steps: steps, loop: loop})
	top := len(r.frames) - 1
	ok := true
	for i := 0; ok && i < len(steps); i++ {
		if alreadySpread(steps[i:]) {
			continue
		}
		n := together(steps[i:])
		if n == 0 || r.base == nil || r.base.dark || r.in != noPlace {
			r.frames[top].next = i + 1
			ok = r.step(steps[i])
			continue
		}
		r.frames[top].next = i + n
		ok = r.alongTogether(steps[i : i+n])
		i += n - 1
	}
	r.frames = r.frames[:top]
	return ok
}

func (r *run) step(s notation.Step) bool {
	switch s := s.(type) {
	case *notation.Work:
		return r.work(s)
	case *notation.Chains:
		return r.chain(s)
	case *notation.Skip:
		return r.skip(s)
	case *notation.Group:
		return r.group(s)
	case *notation.Star:
		return r.star(s)
	case *notation.Turn:
		r.turned, r.noTurn = !s.Not, s.Not
	case *notation.Join:
		return r.join(s)
	case *notation.FastenOff:
		r.fastened = !s.Not
	case *notation.Leave:
		return r.leave(s)
	case *notation.Evenly:
		return r.evenly(s)
	case *notation.OtherSide:
		return r.otherSide(s)
	case *notation.MagicRing:
		if !s.Close {
			r.onRing()
		}
	case *notation.JoinYarn:
		return r.standing(s)
	case *notation.Rule:
		if s.About == notation.AboutLoop {
			r.loop = s.Loop
		}
	case *notation.Marker:
		r.mark(s)
	case *notation.Orphan:
		return r.fail(RepWithoutStar, s.Span, 0, 0, 0, 0, "")
	case *notation.Unknown, *notation.Again, *notation.Shape:
		r.unknown = true
	}
	return true
}

// onRing makes the row start in a ring.
func (r *run) onRing() {
	r.inRing = true
	if r.base == nil || !r.base.ring {
		r.base = &edge{body: &Body{}, ring: true, closed: true}
		r.items, r.pos, r.low, r.hi = nil, 0, 0, 0
	}
}

// standing works the first stitch of a yarn that starts without a chain.
func (r *run) standing(s *notation.JoinYarn) bool {
	if !s.Standing || s.Stitch == stitch.None {
		return true
	}
	at := r.firstPlace()
	if s.Place != nil {
		if idx := r.find(s.Place, r.pos); idx >= 0 {
			at = idx
		}
	}
	r.begun = true
	r.emit(s.Stitch, 1, at, 1, nil)
	r.pos, r.same = max(r.pos, at+1), at
	return true
}

// mark hangs a marker in the stitch just made.
func (r *run) mark(s *notation.Marker) {
	if s.Do == "place marker" && len(r.body.Top) > 0 {
		r.body.Top[len(r.body.Top)-1].Flag |= Marked
	}
}

// join closes a round.
func (r *run) join(s *notation.Join) bool {
	if s.Not {
		r.noJoin = true
		return true
	}
	if !r.begun && r.base != nil && r.base.ring && r.firstChains == 0 {
		return true // closes the foundation ring
	}
	r.joined = true
	if s.Place == nil || r.firstChains == 0 {
		return true
	}
	if p := s.Place; inTurningChain(p) {
		chains := p.Chains
		if p.Of != nil && p.Of.Chains != nil {
			chains = p.Of.Chains
		}
		if chains == nil {
			return true
		}
		if n, ok := r.value(chains); ok && n != r.firstChains {
			return r.fail(JoinPlace, chains.Span, n, r.firstChains, 0, 0, "")
		}
	}
	return true
}

// leave ends the row short of the end of the edge.
func (r *run) leave(s *notation.Leave) bool {
	r.left = true
	if s.N == nil {
		r.leftRest = s.Place == nil
		return true
	}
	n, ok := r.value(s.N)
	if !ok {
		return false
	}
	if free := r.count(r.pos, r.hi); free != n {
		return r.fail(LeftCount, s.N.Span, n, free, 0, 0, "")
	}
	return true
}

// evenly works a told number of stitches along an edge, or spreads a told
// number of changes over the row.
func (r *run) evenly(s *notation.Evenly) bool {
	n, ok := r.value(s.N)
	if !ok {
		return false
	}
	if n > maxRow {
		return r.fail(TooLong, s.Span, n, 0, 0, 0, "")
	}
	if s.Change == 0 {
		return r.along(s, n)
	}
	kind := r.w.prevailing(r.base)
	have := r.count(r.pos, r.hi)
	if made := have + s.Change*n; made < 0 || (s.Change < 0 && have < 2*n) {
		return r.fail(RunsOut, s.Span, 2*n-have, 0, 0, have, "")
	}
	r.begun = true
	for i := range have {
		times := (i+1)*n/max(1, have) - i*n/max(1, have) // changes are as even as whole numbers allow
		for range 1 + s.Change*times {
			r.emit(kind, 1, r.pos+i, 1, nil)
		}
	}
	r.pos = r.hi
	return true
}

func (r *run) along(s *notation.Evenly, n int) bool {
	kind := stitch.SingleCrochet
	if s.Stitch != nil && s.Stitch.Kind != stitch.None {
		kind = s.Stitch.Kind
	}
	r.begun, r.lastSpace = true, true
	if r.base != nil && len(r.items) > 0 && r.items[0].is(EndOfRow) {
		if r.base.to == len(r.items) && r.pos == 0 {
			r.w.pickUps = append(r.w.pickUps, pickUp{r.line, s.N, n, len(r.items)})
		}
	}
	r.pos = r.hi
	return r.emit(kind, n, noPlace, 1, nil)
}

// otherSide goes on along the row-ends, or along the other side of the
// foundation chain.
func (r *run) otherSide(s *notation.OtherSide) bool {
	if s.RowEnds {
		r.workInto(&edge{body: rowEnds(r.w.rowEnds()), to: r.w.rowEnds()})
		return true
	}
	chain := r.w.foundation
	if chain == nil {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	n := len(chain.Top)
	from := 0
	r.under = true
	if r.base != nil && r.base.body == chain && r.pos > 0 {
		// The same round has just gone along the first side: the last chain
		// has its stitches, and the chains skipped at the hook are not worked.
		from = n - r.pos + 1
		r.workInto(&edge{body: chain, from: from, to: n - r.w.hookChains})
		return true
	}
	r.workInto(&edge{body: chain, from: from, to: n - r.w.hookChains})
	return true
}

// workInto goes on along another edge.
func (r *run) workInto(e *edge) {
	r.base, r.items = e, e.items()
	r.pos, r.low, r.hi, r.same, r.sub, r.rot, r.ext = e.from, e.from, e.to, noPlace, 0, 0, 0
	r.lastMade, r.groupEnd, r.gapsOnly = noPlace, noPlace, 0
}

// origin turns an index in working order into one of the row below's Top.
func (r *run) origin(idx int) int32 {
	if idx < r.ext {
		return -1
	}
	n := len(r.items) - r.ext
	idx -= r.ext
	if n == 0 || idx >= n {
		return -1
	}
	idx = (idx + r.rot) % n
	if r.base != nil && r.base.reversed {
		idx = len(r.base.body.Top) - 1 - idx
	}
	return int32(idx)
}

// emit makes a stitch, times over, in the place at idx.
func (r *run) emit(kind stitch.Kind, times, idx, uses int, p *notation.Place) bool {
	if times+len(r.body.Stitches) > maxRow {
		return r.fail(TooLong, r.line.Span, times, 0, 0, 0, "")
	}
	into := int32(-1)
	if idx >= 0 {
		into = r.origin(idx)
	}
	made := Worked{Kind: kind, Into: into, Uses: uint8(min(uses, 255)), Loop: r.loop, N: 1}
	if p != nil {
		if p.Loop != notation.BothLoops {
			made.Loop = p.Loop
		}
		if p.Below != nil {
			if n, ok := r.value(p.Below); ok {
				made.Down = uint8(min(max(n, 0), 255))
			}
		}
	}
	info := r.w.kind(kind)
	r.gapBefore(idx)
	for range times {
		r.body.Stitches = append(r.body.Stitches, made)
		if info.single {
			r.body.Top = append(r.body.Top, info.item)
		} else {
			r.body.Top = append(r.body.Top, info.items...)
		}
		r.body.Made += info.made
	}
	return true
}

// gapBefore leaves a gap on the top where a stitch is not worked next to the
// one before it and no chain lies between: a later row may work into it, as
// granny rows do.
func (r *run) gapBefore(idx int) {
	n := len(r.body.Top)
	last := r.lastMade
	if idx >= 0 {
		r.lastMade = idx
	}
	if idx < 0 || last < 0 || idx-last < 2 || n == 0 || !r.body.Top[n-1].is(Counts) || r.body.Top[n-1].space() {
		return
	}
	r.body.Top = append(r.body.Top, Item{Flag: Gap})
}

// between is the places from i up to, not including, j; none when j is not
// after i.
func (r *run) between(i, j int) []Item {
	i, j = max(0, i), min(j, len(r.items))
	if i >= j {
		return nil
	}
	return r.items[i:j]
}

// count is how many places from i up to j count as stitches.
func (r *run) count(i, j int) int { return counting(r.between(i, j)) }
