package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// chain makes chains: a foundation, a turning chain, a space, or the turning
// chain of the row to come.
func (r *run) chain(s *notation.Chains) bool {
	n, ok := r.value(s.N)
	if !ok {
		return false
	}
	if n < 0 || n > maxRow {
		return r.fail(TooLong, s.Span, n, 0, 0, 0, "")
	}
	switch {
	case n == 0:
		return true
	case r.in != noPlace:
		r.pushSpace(n)
	case r.begun:
		if r.lastThing() {
			r.pending = s
			return true
		}
		r.pushSpace(n)
	case r.base == nil && r.joinAhead():
		b := foundationChain(n)
		r.w.foundation = b
		r.workInto(&edge{body: b, to: n, chains: n, ring: true, closed: true})
	case r.base == nil && r.ringAhead():
		r.onRing()
		return r.turningAt(s, n)
	case r.base == nil:
		b := foundationChain(n)
		r.w.foundation = b
		r.workInto(&edge{body: b, reversed: true, to: n, chains: n})
	case r.extends():
		r.extend(n)
	default:
		return r.turningAt(s, n)
	}
	return true
}

// turningAt makes the turning chain of this row.
func (r *run) turningAt(s *notation.Chains, n int) bool {
	first := r.firstAhead()
	t := r.w.takeTurning(n, first, s.Counts)
	if !r.saidOnce(s.Counts) {
		return false
	}
	if s.Counts != nil && !s.Counts.Not && (s.Counts.Chains != nil || s.Counts.As != stitch.None) {
		// Chains that stand for a stitch alone may be one fewer, as some take
		// ch 2 for a dc; they are never more.
		height := r.w.chainsFor(t.as)
		if up := n - t.chains; up != height && (s.Counts.Chains != nil || up != height-1) {
			return r.fail(TurningArithmetic, spanOf(s.N, s.Span), n, t.chains, height+t.chains, 0, r.w.d.Stitches.Name(t.as, r.w.d.Terms))
		}
	}
	if s.Counts != nil {
		r.w.say(n, s.Counts)
	}
	r.begun = true
	standsFor := first
	if t.sure && t.counts && t.as != stitch.None {
		standsFor = t.as // "ch 5 (counts as dc, ch 2), sc in ..."
	}
	r.noteTurning(spanOf(s.N, s.Span), n, t, standsFor)
	if t.sure && t.counts {
		r.turning[len(r.turning)-1].N -= t.chains
	}
	if tall := r.w.chainsFor(first); s.Counts == nil && !t.counts && first != stitch.None && n == tall+1 {
		return r.fail(TallChain, spanOf(s.N, s.Span), n, tall, 0, 0, r.w.d.Stitches.Name(first, r.w.d.Terms))
	}
	at := r.pos
	for at < r.hi && !r.items[at].is(Counts) && !r.items[at].space() {
		at++
	}
	if r.same != noPlace && r.same < r.pos { // after slip stitches: on the last of them
		at = r.same
	}
	if !t.counts {
		r.body.Stitches = append(r.body.Stitches, Worked{Kind: stitch.Chain, Into: -1, N: uint16(n), Flag: Tch})
		r.body.Top = append(r.body.Top, Item{Chains: uint16(n), Flag: Tch | Idle})
		r.body.Made += n
		if at < r.hi {
			r.same = at
		}
		return true
	}
	if t.extra || at >= r.hi {
		r.pushTurning(n-t.chains, t, noPlace)
		return true
	}
	r.lastSpace = r.items[at].space()
	r.pushTurning(n-t.chains, t, at)
	r.same = at
	r.pos, r.sub = max(r.pos, at+1), 0
	return true
}

// joinAhead tells whether the chain is joined before a stitch is made: it is a
// foundation ring, made in the line of the first round.
func (r *run) joinAhead() bool {
	for f := len(r.frames) - 1; f >= 0; f-- {
		for _, s := range r.frames[f].steps[r.frames[f].next:] {
			switch s := s.(type) {
			case *notation.Join:
				return !s.Not
			case *notation.Remark:
			default:
				return false
			}
		}
	}
	return false
}

// ringAhead tells whether the next stitches go into a ring.
func (r *run) ringAhead() bool {
	for f := len(r.frames) - 1; f >= 0; f-- {
		for _, s := range r.frames[f].steps[r.frames[f].next:] {
			var places []*notation.Place
			switch s := s.(type) {
			case *notation.Work:
				places = s.Places
			case *notation.Group:
				if places = s.In; len(places) == 0 {
					if w := firstWork(s.Body); w != nil {
						places = w.Places
					}
				}
			case *notation.MagicRing:
				return true
			default:
				continue
			}
			return len(places) > 0 && (places[0].Which == notation.Ring || places[0].What == notation.ARing)
		}
	}
	return false
}

// firstWork is the first step that makes stitches, nil for none.
func firstWork(steps []notation.Step) *notation.Work {
	for _, s := range steps {
		if w, ok := s.(*notation.Work); ok {
			return w
		}
	}
	return nil
}

// extends tells whether chains at the start of a row make it longer: the next
// stitch goes into a chain counted from the hook.
func (r *run) extends() bool {
	for f := len(r.frames) - 1; f >= 0; f-- {
		for _, s := range r.frames[f].steps[r.frames[f].next:] {
			switch s := s.(type) {
			case *notation.Work:
				return len(s.Places) > 0 && s.Places[0].Which == notation.Nth && s.Places[0].Of == nil && s.Places[0].What == notation.Chain
			case *notation.Turn, *notation.Remark:
			default:
				return false
			}
		}
	}
	return false
}

// extend puts n new chains before the free places of the edge.
func (r *run) extend(n int) {
	chain := make([]Item, n, n+len(r.items)-r.pos)
	for i := range chain {
		chain[i] = Item{Kind: stitch.Chain, Chains: 1, Flag: Counts | AChain}
		r.body.Stitches = append(r.body.Stitches, Worked{Kind: stitch.Chain, Into: -1, N: 1})
	}
	r.body.Made += n
	r.items = append(chain, r.between(r.pos, r.hi)...)
	e := *r.base
	e.chains = n
	r.base = &e
	r.ext, r.pos, r.low, r.hi, r.same = n, 0, 0, len(r.items), noPlace
}

// lastThing tells whether nothing but a turn follows in the row.
func (r *run) lastThing() bool {
	turn := false
	for f := len(r.frames) - 1; f >= 0; f-- {
		fr := r.frames[f]
		if fr.loop && f > 0 {
			return false
		}
		for _, s := range fr.steps[fr.next:] {
			switch s := s.(type) {
			case *notation.Turn:
				turn = turn || !s.Not
			case *notation.Remark, *notation.Color, *notation.Marker:
			default:
				return false
			}
		}
	}
	return turn || r.joined || r.turned
}

// firstAhead is the first stitch that follows in the row, by the plain stitch
// it is a form of.
func (r *run) firstAhead() stitch.Kind {
	if k := r.stitchAhead(); k != stitch.None {
		return r.w.tall(k)
	}
	return stitch.None
}

// postAhead tells whether the first stitch that follows is worked around a post.
func (r *run) postAhead() bool {
	k := r.stitchAhead()
	return k != stitch.None && r.w.d.Stitches.Stitch(k).Family == stitch.PostStitch
}

func (r *run) stitchAhead() stitch.Kind {
	for f := len(r.frames) - 1; f >= 0; f-- {
		fr := r.frames[f]
		if k := firstStitch(fr.steps[fr.next:]); k != stitch.None {
			return k
		}
	}
	return stitch.None
}

// firstStitch is the first stitch that steps make, stitch.None if none.
func firstStitch(steps []notation.Step) stitch.Kind {
	for _, s := range steps {
		var k stitch.Kind
		switch s := s.(type) {
		case *notation.Work:
			k = s.Stitch.Kind
		case *notation.Group:
			k = firstStitch(s.Body)
		case *notation.Star:
			k = firstStitch(s.Body)
		case *notation.Evenly:
			if s.Stitch != nil {
				k = s.Stitch.Kind
			}
		}
		if k != stitch.None && k != stitch.SlipStitch {
			return k
		}
	}
	return stitch.None
}

// skip passes over places.
func (r *run) skip(s *notation.Skip) bool {
	if r.base == nil {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	if s.Counts != nil && !r.begun && r.base.chains > 0 && r.pos == r.low && len(s.Places) > 0 {
		return r.skipAtHook(s)
	}
	from := r.pos
	for _, p := range s.Places {
		if !r.skipPlace(s, p) {
			return false
		}
	}
	r.skipped = [2]int{from, r.pos}
	return true
}

// skipAtHook leaves chains free at the hook that count as a stitch: "miss 3ch
// (counts as 1tr), 1tr into each ch to end".
func (r *run) skipAtHook(s *notation.Skip) bool {
	n, ok := r.value(s.Places[0].N)
	if !ok {
		return false
	}
	if n >= r.base.chains {
		return r.fail(ChainTooShort, s.Span, n+1, r.base.chains, 0, 0, "")
	}
	if !r.saidOnce(s.Counts) { // the stitch after it is told by itself
		return false
	}
	k := &notation.Number{Span: spanOf(s.Places[0].N, s.Span), Values: []notation.Value{{N: n + 1}}}
	hook := &notation.Place{Span: s.Span, Which: notation.Nth, N: k, What: notation.Chain}
	if !r.skippedChains(&notation.Work{Span: s.Span, Counts: s.Counts}, hook, r.firstAhead(), n) {
		return false
	}
	r.begun, r.pos, r.w.hookChains = true, r.low+n, n
	return true
}

func (r *run) skipPlace(s *notation.Skip, p *notation.Place) bool {
	n, ok := r.value(p.N)
	if !ok {
		return false
	}
	if p.What == notation.TurningChain {
		at, ok := r.turningChain(p)
		if ok {
			r.pos = max(r.pos, at+1)
		}
		return ok
	}
	same, last := r.same, r.lastSpace
	defer func() { r.same, r.lastSpace = same, last }()
	if p.Which == notation.First && (r.onlyTurning() || r.pos == r.low) {
		left := n
		for i := r.low; i < r.hi && left > 0; i++ {
			if r.fits(r.items[i], p, chainsOf(r.w.d, p.Chains, r.w.size)) {
				left--
				r.pos = max(r.pos, i+1)
			}
		}
		if left == n && n > 0 && p.What == notation.Space {
			return r.noSpace(p)
		}
		return true
	}
	if p.Which == notation.Each || p.Which == notation.Remaining {
		end, ok := r.limit(p.To)
		r.pos = max(r.pos, end)
		return ok
	}
	if p.Which == notation.Last {
		if at := r.lastIndex(p, n); at >= r.pos {
			r.hi = at
		}
		return true
	}
	for range min(n, maxRow) {
		at, ok := r.next(p)
		if !ok {
			return r.missing(s.Span, p)
		}
		if p.What == notation.AStitch && r.isGroup(p.Kind) && r.startsGroup(r.items[at]) {
			r.pos = max(r.pos, r.endOfGroup(at)+1) // the whole of "next shell"
		}
	}
	return true
}
