package fabric

import (
	"slices"

	"rowproof/notation"
	"rowproof/stitch"
)

// work makes stitches.
func (r *run) work(s *notation.Work) bool {
	times, ok := r.value(s.Times)
	if !ok {
		return false
	}
	kind, each := r.plain(s)
	r.unknown = r.unknown || kind == stitch.None
	info := r.w.kind(kind)
	if times < 0 || times > maxRow {
		return r.fail(TooLong, s.Span, times, 0, 0, 0, "")
	}
	if s.Stitch.Loop != notation.BothLoops && len(s.Places) > 0 {
		before := r.loop
		r.loop = s.Stitch.Loop
		defer func() { r.loop = before }()
	}
	if r.prevail == stitch.None && info.uses > 0 {
		r.prevail = info.base
	}
	if kind == stitch.SlipStitch && !r.begun && r.in == noPlace && !r.onFoundation() && r.travels() {
		return r.travel(s, times)
	}
	if r.in != noPlace && inPlace(s.Places) {
		r.begun = true
		return r.emit(kind, times*each, r.in, 1, nil)
	}
	if len(s.Places) == 0 {
		return r.bare(s, kind, times, each)
	}
	for _, p := range s.Places {
		if !r.place(s, p, kind, times*each) {
			return false
		}
	}
	return true
}

// inPlace tells whether a step of a group goes where the whole group goes.
func inPlace(places []*notation.Place) bool {
	for _, p := range places {
		if p.Which != notation.Same {
			return false
		}
	}
	return true
}

// plain gives "inc" and "dec" the row's stitch. each is how many of it go into
// one place.
func (r *run) plain(s *notation.Work) (kind stitch.Kind, each int) {
	switch s.Stitch.Kind {
	case stitch.Increase:
		return r.rowStitch(), 2
	case stitch.Decrease:
		return r.w.together(r.rowStitch()), 1
	}
	return s.Stitch.Kind, 1
}

// rowStitch is the stitch that "inc" and "dec" are made of: the row's, or the
// one below it, or sc.
func (r *run) rowStitch() stitch.Kind {
	if r.prevail != stitch.None {
		return r.prevail
	}
	if k := firstStitch(r.line.Tree.Steps); k != stitch.None && k != stitch.Increase && k != stitch.Decrease {
		return r.w.kind(k).base
	}
	if r.base != nil && r.base.row != nil {
		return r.w.prevailing(r.base)
	}
	return stitch.SingleCrochet
}

// bare makes stitches whose place is not named: one in each next place.
func (r *run) bare(s *notation.Work, kind stitch.Kind, times, each int) bool {
	info := r.w.kind(kind)
	r.begun = true
	if info.foundation || info.uses == 0 || (r.base != nil && r.base.dark) || (r.base != nil && r.base.ring && len(r.items) == 0) {
		return r.emit(kind, times*each, noPlace, 0, nil)
	}
	for range times {
		if !r.one(s.Span, anyPlace, kind, each, info.uses) {
			return false
		}
	}
	return true
}

// one makes a stitch, each times over, in the next places p asks for.
func (r *run) one(at notation.Span, p *notation.Place, kind stitch.Kind, each, uses int) bool {
	first, last := noPlace, noPlace
	for range max(1, uses) {
		i, ok := r.next(p)
		if !ok && kind == stitch.SlipStitch && r.roundDone() {
			return true
		}
		if !ok {
			return r.missing(at, p)
		}
		if last = i; first == noPlace {
			first = i
		}
	}
	if uses > 2 && uses%2 == 1 && !r.centred(first, last) {
		return r.fail(OffMarker, at, uses, 0, 0, 0, "")
	}
	top := len(r.body.Top)
	if !r.emit(kind, each, first, uses, p) {
		return false
	}
	if r.markedIn(first, last) && len(r.body.Top) > top { // move the marker up
		r.body.Top[top+(len(r.body.Top)-top)/2].Flag |= Marked
	}
	return true
}

// roundDone tells whether a round has used up the one below it: a slip stitch
// in the next st then goes into the round itself and evens out its end.
func (r *run) roundDone() bool {
	return r.begun && r.base != nil && r.base.closed && !r.base.ring && r.pos >= r.hi && r.in == noPlace
}

// centred tells whether a decrease that takes in a marked stitch, or stops
// short of one, has it in its middle.
func (r *run) centred(first, last int) bool {
	middle := first + (last-first)/2
	for i := max(r.low, first-1); i <= min(last+1, r.hi-1); i++ {
		if r.items[i].is(Marked) && i != middle {
			return false
		}
	}
	return true
}

func (r *run) markedIn(first, last int) bool {
	for i := max(0, first); i <= last && i < len(r.items); i++ {
		if r.items[i].is(Marked) {
			return true
		}
	}
	return false
}

// missing notes that the row below has no further place of the kind asked for.
func (r *run) missing(at notation.Span, p *notation.Place) bool {
	if r.base == nil {
		return r.fail(NoEdge, at, 0, 0, 0, 0, "")
	}
	if p.What == notation.AnyStitch || p.What == notation.AStitch || p.What == notation.StitchOrSpace {
		return r.short(at, 1)
	}
	if p.What == notation.Chain && len(r.items) > 0 && r.items[0].is(AChain) {
		return r.short(at, 1)
	}
	if p.What == notation.Space {
		return r.noSpace(p)
	}
	return r.fail(NoPlace, at, 0, 0, 0, 0, r.describe(p))
}

// short notes that the row below runs out.
func (r *run) short(at notation.Span, by int) bool {
	if r.base == nil {
		return r.fail(NoEdge, at, 0, 0, 0, 0, "")
	}
	return r.fail(RunsOut, at, by, 0, 0, r.count(r.low, r.hi), "")
}

// place makes stitches at one place, or in each of a run of places.
func (r *run) place(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	uses := r.w.kind(kind).uses
	if p.New {
		r.begun = true
		return r.emit(kind, times, noPlace, 0, p)
	}
	if r.base != nil && r.base.dark {
		return r.inTheDark(s, p, kind, times, uses)
	}
	if p.Loop == notation.BothLoops && s.Stitch.Loop != notation.BothLoops {
		q := *p
		q.Loop = s.Stitch.Loop
		p = &q
	}
	if s.Last != nil && inTurningChain(s.Last) {
		if at, ok := r.turningChain(s.Last); !ok {
			return false
		} else if r.items[at].is(Idle) {
			return r.fail(NoPlace, s.Last.Span, 0, 0, 0, 0, "counted turning chain")
		}
	}
	if uses == 0 {
		r.begun = true
		return r.emit(kind, times, r.same, 0, p)
	}
	if inTurningChain(p) && p.Which != notation.Each {
		return r.onTurningChain(s, p, kind, times)
	}
	if p.What == notation.Corner && p.Which != notation.Each && r.base != nil && !hasSpace(r.items) {
		r.begun = true // the corner of a flat piece: no place of its row below
		return r.emit(kind, times, noPlace, 0, p)
	}
	switch p.Which {
	case notation.Each:
		return r.each(s, p, kind, times, uses)
	case notation.First:
		return r.firstPlaces(s, p, kind, times, uses)
	case notation.Last:
		return r.lastPlaces(s, p, kind, times, uses)
	case notation.Same:
		return r.samePlace(p, kind, times)
	case notation.Ring:
		r.onRing()
		r.begun = true
		return r.emit(kind, times, noPlace, 0, p)
	case notation.Edge:
		r.workInto(&edge{body: rowEnds(r.w.rowEnds()), to: r.w.rowEnds()})
		return r.each(s, &notation.Place{Span: p.Span, Which: notation.Each, What: notation.RowEnd}, kind, times, uses)
	case notation.Nth:
		if p.Of == nil && p.What == notation.Chain {
			return r.fromHook(s, p, kind, times)
		}
	case notation.Marked:
		for i := r.pos; i < r.hi; i++ {
			if r.items[i].is(Marked) {
				r.begun = true
				r.used(i)
				return r.emit(kind, times, i, 1, p)
			}
		}
		return r.fail(NoPlace, p.Span, 0, 0, 0, 0, "marker")
	case notation.Remaining:
		if r.skippedLeft(p) {
			return r.intoSkipped(s, p, kind, times)
		}
		r.ontoUnworked(p)
	case notation.Between, notation.Before:
		r.gaps = true
	}
	return r.nextPlaces(s, p, kind, times, uses)
}

// inTheDark works a told number of stitches along an edge whose places are not
// known.
func (r *run) inTheDark(s *notation.Work, p *notation.Place, kind stitch.Kind, times, uses int) bool {
	n, ok := r.value(p.N)
	if !ok {
		return false
	}
	if p.Which == notation.Each {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	r.begun = true
	if n > maxRow {
		return r.fail(TooLong, s.Span, n, 0, 0, 0, "")
	}
	if p.Which == notation.Nth || p.Which == notation.Centre {
		n = 1
	}
	return r.emit(kind, times*max(1, n/max(1, uses)), noPlace, 0, p)
}

// nextPlaces works "next st", "each of next 5 sts", "next ch-2 sp".
func (r *run) nextPlaces(s *notation.Work, p *notation.Place, kind stitch.Kind, times, uses int) bool {
	if p.What == notation.ARing {
		r.onRing()
		r.begun = true
		return r.emit(kind, times, noPlace, 0, p)
	}
	if p.What == notation.RowEnd && (len(r.items) == 0 || !r.items[0].is(EndOfRow)) {
		r.workInto(&edge{body: rowEnds(r.w.rowEnds()), to: r.w.rowEnds()})
	}
	if of := p.Of; of != nil && (p.Which == notation.Nth || p.Which == notation.Centre) {
		return r.withinSpace(s, p, kind, times)
	}
	n, ok := r.value(p.N)
	if !ok {
		return false
	}
	if p.Which == notation.Nth || p.Which == notation.Centre {
		n = 1
	}
	r.begun = true
	if p.Then != nil {
		return r.overTwo(s, p, kind, times)
	}
	if uses > 1 {
		if p.N == nil && p.What == notation.Space {
			uses = 1
		} else if p.N == nil {
			n = uses
		}
		if n%uses != 0 {
			if len(s.Places) > 1 { // "over next st and next 2 sts": taken together
				uses = n
			} else {
				return r.fail(DecUneven, p.Span, n, uses, 0, 0, "")
			}
		}
		n /= max(1, uses)
	}
	if n > maxRow {
		return r.fail(RunsOut, s.Span, n, 0, 0, r.count(0, len(r.items)), "")
	}
	have := r.pos
	for i := range n {
		if !r.one(s.Span, p, kind, times, uses) {
			if r.fault != nil && r.fault.Kind == RunsOut && r.fault.Span == s.Span {
				r.fault.A = (n-i)*uses - r.count(r.pos, r.hi)
				r.fault.B = n * uses
				r.fault.C = r.count(have, r.hi)
			}
			return false
		}
	}
	return true
}

// overTwo works one stitch over two places named apart.
func (r *run) overTwo(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	first := *p
	first.Then = nil
	at, ok := r.nextOf(&first)
	if !ok {
		return r.missing(s.Span, &first)
	}
	then, ok := r.nextOf(p.Then)
	if !ok {
		return r.missing(s.Span, p.Then)
	}
	if inTurningChain(p.Then) {
		if at >= then {
			return r.short(s.Span, 1)
		}
		if over := r.count(at+1, then); over > 0 && p.N == nil {
			return r.fail(Unworked, s.Span, over, 0, 0, r.count(r.low, r.hi), "")
		}
	}
	n, _ := r.valueQuiet(p.N)
	more, _ := r.valueQuiet(p.Then.N)
	if places, uses := max(1, n)+max(1, more), r.w.kind(kind).uses; uses > 1 && places != uses {
		return r.fail(DecUneven, s.Span, places, uses, 0, 0, r.w.d.Stitches.Name(kind, r.w.d.Terms))
	}
	r.begun = true
	return r.emit(kind, times, at, 2, p)
}

func (r *run) nextOf(p *notation.Place) (int, bool) {
	if p.Which == notation.First {
		i := r.firstPlace()
		r.used(i)
		return i, i < r.hi
	}
	if p.What == notation.TurningChain || p.Which == notation.Top {
		i, ok := r.turningChain(p)
		if ok {
			r.used(i)
		}
		return i, ok
	}
	n, _ := r.valueQuiet(p.N)
	if p.Which == notation.Last {
		i := r.lastIndex(p, n)
		if i != noPlace {
			r.used(i)
		}
		return i, i != noPlace
	}
	at := noPlace
	for range max(1, n) {
		i, ok := r.next(p)
		if !ok {
			return i, false
		}
		if at == noPlace {
			at = i
		}
	}
	return at, true
}

// withinSpace works into one chain of a chain space: "2nd ch of next ch-3 sp".
func (r *run) withinSpace(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	if ok, known := r.inGroup(s, p, kind, times); known {
		return ok
	}
	of := *p.Of
	if of.What != notation.AStitch && of.What != notation.AnyStitch {
		of.What = notation.Space
	}
	i, ok := r.next(&of)
	if !ok {
		return r.missing(s.Span, &of)
	}
	if p.Which == notation.Nth && r.items[i].space() {
		if n, ok := r.value(p.N); !ok {
			return false
		} else if n > int(r.items[i].Chains) {
			return r.fail(ChainTooShort, p.N.Span, n, int(r.items[i].Chains), 0, 0, "")
		}
	}
	r.begun = true
	return r.emit(kind, times, i, 1, p)
}

// each works one, or times, in every place up to the limit.
func (r *run) each(s *notation.Work, p *notation.Place, kind stitch.Kind, times, uses int) bool {
	if p.What == notation.RowEnd && (len(r.items) == 0 || !r.items[0].is(EndOfRow)) {
		r.workInto(&edge{body: rowEnds(r.w.rowEnds()), to: r.w.rowEnds()})
	}
	if r.base == nil {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	end, ok := r.limit(p.To)
	if !ok {
		return false
	}
	r.begun = true
	if s.Last != nil {
		end = r.hi
	}
	if at := r.chainToldAfter(s, p); at != noPlace {
		end = min(end, at)
	}
	if p.What == notation.AStitch && !r.any(p, end) {
		if r.pos < end {
			r.otherKind(p, r.items[r.pos])
		}
		q := *p
		q.What = notation.AnyStitch
		p = &q
	}
	if p.What == notation.Chain && r.pos < end && !r.items[r.pos].is(AChain) {
		q := *p
		q.What = notation.StitchOrChain
		p = &q
	}
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	if r.pos < end && !r.base.dark && r.lacksSpace(p, end, chains) {
		return r.noSpace(p)
	}
	info := r.w.kind(kind)
	made := Worked{Kind: kind, Uses: 1, Loop: r.loop, N: 1}
	if p.Loop != notation.BothLoops {
		made.Loop = p.Loop
	}
	if uses == 1 && times == 1 && info.single && p.What == notation.AnyStitch && p.Below == nil && end-r.pos < maxRow-len(r.body.Stitches) {
		for i := r.pos; i < end; i++ {
			if r.items[i].is(Counts) {
				made.Into = r.origin(i)
				r.body.Stitches = append(r.body.Stitches, made)
				it := info.item
				it.Flag |= r.items[i].Flag & Marked
				r.body.Top = append(r.body.Top, it)
				r.body.Made += info.made
				r.same, r.lastSpace, r.lastMade = i, false, i
			}
		}
		r.pos, r.sub = max(r.pos, end), 0
		return true
	}
	held, first := 0, noPlace
	for i := r.pos; i < end; i++ {
		if !r.fits(r.items[i], p, chains) {
			continue
		}
		if r.used(i); held == 0 {
			first = i
		}
		if held++; held < uses {
			continue
		}
		held = 0
		n := times
		if p.What == notation.StitchOrChain && r.items[i].space() {
			n *= int(r.items[i].Chains)
		}
		if !r.emit(kind, n, first, uses, p) {
			return false
		}
	}
	if held > 0 {
		return r.fail(Remainder, s.Span, uses, held, 0, r.count(r.low, r.hi), "")
	}
	r.pos, r.sub = max(r.pos, end), 0
	return true
}

// chainToldAfter is the turning chain that the same step names after p: "in each
// dc and in top of tch".
func (r *run) chainToldAfter(s *notation.Work, p *notation.Place) int {
	told := slices.ContainsFunc(s.Places, func(q *notation.Place) bool { return q.Span.Start > p.Span.Start && inTurningChain(q) })
	for i := r.hi - 1; told && i >= r.pos; i-- {
		if r.items[i].is(Tch) {
			return i
		}
	}
	return noPlace
}

// noSpace tells that the row below has no such chain space, and which it has.
func (r *run) noSpace(p *notation.Place) bool {
	q := *p
	q.What = notation.Space
	chains, n := 0, 0
	for _, it := range r.items[r.low:r.hi] {
		if it.space() && n == 0 {
			chains = int(it.Chains)
		}
		if it.space() && int(it.Chains) == chains {
			n++
		}
	}
	return r.fail(NoPlace, p.Span, chains, n, 0, 0, r.describe(&q))
}

// lacksSpace tells whether "each ch-2 sp" finds none before end, or "each st and
// ch-2 sp" only spaces of other chains.
func (r *run) lacksSpace(p *notation.Place, end, chains int) bool {
	switch p.What {
	case notation.Space:
		return !r.any(p, end)
	case notation.StitchOrSpace:
		other := false
		for _, it := range r.items[r.pos:end] {
			if it.space() && (chains == 0 || int(it.Chains) == chains) {
				return false
			}
			other = other || it.space()
		}
		return other
	}
	return false
}

// any tells whether a place p asks for comes before end.
func (r *run) any(p *notation.Place, end int) bool {
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	for i := r.pos; i < end; i++ {
		if r.fits(r.items[i], p, chains) {
			return true
		}
	}
	return false
}

func (r *run) firstPlaces(s *notation.Work, p *notation.Place, kind stitch.Kind, times, uses int) bool {
	if r.base == nil {
		return r.fail(NoEdge, s.Span, 0, 0, 0, 0, "")
	}
	if r.pos > r.low && !r.begun || r.pos == r.low || r.onlyTurning() {
		r.pos = r.low
	}
	q := *p
	q.Which = notation.Next
	return r.nextPlaces(s, &q, kind, times, uses)
}

// onlyTurning tells whether nothing but a turning chain has been made, so that
// "first st" is the place it stands on.
func (r *run) onlyTurning() bool {
	for _, m := range r.body.Stitches {
		if m.Flag&Tch == 0 && m.Kind != stitch.SlipStitch && m.Kind != stitch.Chain {
			return false
		}
	}
	return true
}

func (r *run) lastPlaces(s *notation.Work, p *notation.Place, kind stitch.Kind, times, uses int) bool {
	n, ok := r.value(p.N)
	if !ok || n == 0 { // "in last 0 (3) sts"
		return ok
	}
	if p.Then != nil && inTurningChain(p.Then) { // "over last dc and tch": the one before the chain
		q := *p
		q.Which = notation.Next
		return r.overTwo(s, &q, kind, times)
	}
	at := r.lastIndex(p, n)
	if at == noPlace || at < r.pos {
		return r.fail(RunsOut, s.Span, n-r.count(r.pos, r.hi), n, r.count(r.pos, r.hi), r.count(r.low, r.hi), "")
	}
	if over := r.count(r.pos, at); over > 0 && !r.overSpaces(r.pos, at) {
		return r.fail(Unworked, p.Span, over, 0, 0, r.count(r.low, r.hi), "")
	}
	r.pos, r.sub = at, 0
	q := *p
	q.Which = notation.Next
	return r.nextPlaces(s, &q, kind, times, uses)
}

// overSpaces tells whether the places from i to j may be passed over in
// silence: the last place was a space, and no other space is passed.
func (r *run) overSpaces(i, j int) bool {
	if r.over > 0 && i >= len(r.items)-r.over && !hasSpace(r.between(i, j)) {
		return true // the slip stitches at the start of the round went over them
	}
	if r.gaps {
		return r.count(i, j) <= 1
	}
	if r.leftOfGroup(i, j) {
		return true
	}
	if !r.lastSpace {
		return false
	}
	return !hasSpace(r.between(i, j))
}

func hasSpace(items []Item) bool {
	for _, it := range items {
		if it.space() {
			return true
		}
	}
	return false
}

func (r *run) samePlace(p *notation.Place, kind stitch.Kind, times int) bool {
	at := r.sameAs(p)
	if over := r.count(r.pos, at); p.First && r.under && over > 0 {
		return r.fail(Unworked, p.Span, over, 0, 0, r.count(r.low, r.hi), "")
	}
	r.begun = true
	if at >= r.hi && r.base != nil && !r.base.ring {
		return r.short(p.Span, 1)
	}
	r.used(at)
	return r.emit(kind, times, at, 1, p)
}

// sameAs is the place that "same st" means. On the other side of a foundation
// chain "same ch as first sc" is its far end, if that is still free.
func (r *run) sameAs(p *notation.Place) int {
	switch {
	case p.First && r.under && r.pos < r.hi:
		return r.hi - 1
	case r.same == noPlace:
		return r.firstPlace()
	}
	return r.same
}
