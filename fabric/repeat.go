package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// group works a bracket.
func (r *run) group(s *notation.Group) bool {
	if len(s.In) > 0 {
		for _, p := range s.In {
			if !r.groupIn(s, p) {
				return false
			}
		}
		return true
	}
	if s.Times == nil {
		return r.exec(s.Body, false)
	}
	return r.repeat(s.Body, s.Times, s.Span)
}

// timesOf is how often a bracket is worked in its place, 1 when it does not say.
func (r *run) timesOf(s *notation.Group) (int, bool) {
	if s.Times == nil {
		return 1, true
	}
	return r.value(s.Times.N)
}

// groupIn works all of a bracket in one place, or in each of several.
func (r *run) groupIn(s *notation.Group, p *notation.Place) bool {
	times, ok := r.timesOf(s)
	if !ok {
		return false
	}
	if p.Which == notation.Ring || p.What == notation.ARing {
		r.onRing()
		return r.inside(s, ringPlace, times)
	}
	if p.Which == notation.Same {
		at := r.sameAs(p)
		r.used(at)
		return r.inside(s, at, times)
	}
	if inTurningChain(p) {
		at, ok := r.turningChain(p)
		if ok {
			r.used(at)
			ok = r.inside(s, at, times)
		}
		return ok
	}
	if p.Which == notation.Each {
		return r.groupInEach(s, p, times)
	}
	n, ok := r.value(p.N)
	if !ok {
		return false
	}
	q := *p
	switch p.Which {
	case notation.First:
		if r.onlyTurning() {
			r.pos = r.low
		}
		q.Which = notation.Next
	case notation.Last:
		at := r.lastIndex(p, n)
		if at == noPlace || at < r.pos {
			return r.short(s.Span, 1)
		}
		if over := r.count(r.pos, at); over > 0 && !r.overSpaces(r.pos, at) {
			return r.fail(Unworked, p.Span, over, 0, 0, r.count(r.low, r.hi), "")
		}
		r.pos, r.sub = at, 0
		q.Which = notation.Next
	case notation.Nth, notation.Centre:
		n = 1
		if p.Of != nil {
			q = *p.Of
		}
	case notation.Between, notation.Before:
		r.gaps = true
	}
	for range n {
		at, ok := r.next(&q)
		if !ok {
			return r.missing(s.Span, &q)
		}
		if !r.inside(s, at, times) {
			return false
		}
	}
	return true
}

func (r *run) groupInEach(s *notation.Group, p *notation.Place, times int) bool {
	end, ok := r.limit(p.To)
	if !ok {
		return false
	}
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	for i := r.pos; i < end; i++ {
		if !r.fits(r.items[i], p, chains) {
			continue
		}
		r.used(i)
		if !r.inside(s, i, times) {
			return false
		}
	}
	if p.What != notation.Space && p.What != notation.Corner {
		r.pos = max(r.pos, end)
	}
	return true
}

// inside works a group's body in the place at idx.
func (r *run) inside(s *notation.Group, idx, times int) bool {
	before := r.in
	r.in = idx
	defer func() { r.in = before }()
	for range times {
		if len(r.body.Stitches) > maxRow {
			return r.fail(TooLong, s.Span, times, 0, 0, 0, "")
		}
		if !r.exec(s.Body, true) {
			return false
		}
	}
	r.begun = true
	return true
}

// star works a passage from its mark as often as its rep clause says.
func (r *run) star(s *notation.Star) bool {
	if s.Times == nil {
		r.warn(StarWithoutRep, s.Span, 0, 0, "")
		return r.exec(s.Body, false)
	}
	return r.repeat(s.Body, s.Times, s.Span)
}

// repeat works a passage as often as t says.
func (r *run) repeat(body []notation.Step, t *notation.Times, at notation.Span) bool {
	if t.N == nil {
		return r.repeatAlong(body, t, at)
	}
	n, ok := r.value(t.N)
	if !ok {
		return false
	}
	if t.More {
		n++
	}
	if t.Unsure {
		r.unsure = true
		if r.fewer {
			n--
		}
	}
	return r.repeatTimes(body, t, at, n)
}

func (r *run) repeatTimes(body []notation.Step, t *notation.Times, at notation.Span, n int) bool {
	start := min(r.pos, r.hi)
	have := r.count(start, r.hi)
	uses := 0
	plain := t.EndAt == "" && len(t.Omit) == 0 && r.rot == 0 && r.ext == 0 && r.in == noPlace && r.base != nil && !r.base.dark && plainBody(body)
	for i := 0; i < n; i++ {
		before, made := r.pos, len(r.body.Stitches)
		snap := r.snapshot()
		if r.passes++; made > maxRow || r.passes > maxRow {
			return r.fail(TooLong, t.Span, n, 0, 0, 0, "")
		}
		steps := body
		if i == n-1 {
			steps = shortened(body, t)
		}
		if !r.exec(steps, true) {
			if f := r.fault; f != nil && f.Kind == RunsOut && i > 0 {
				*f = Fault{Kind: RunsOut, Line: r.line, Span: at, A: uses*n - have, B: uses * n, C: have, D: have}
			}
			return false
		}
		if i == 0 {
			uses = r.count(before, r.pos)
		}
		if plain && i > 0 {
			i += r.again(snap, n-1-i)
		}
	}
	return true
}

// shortened is the passage as worked the last time.
func shortened(body []notation.Step, t *notation.Times) []notation.Step {
	if t.EndAt != "" {
		for i, s := range body {
			if stop, ok := s.(*notation.Stop); ok && stop.Mark == t.EndAt {
				return body[:i]
			}
		}
	}
	for range t.Omit {
		body = body[:max(0, len(body)-1)]
	}
	return body
}

// A snapshot is where a run stood, to go back to.
type snapshot struct {
	pos, same, sub, lastMade, stitches, top, made int
	lastSpace, gaps                               bool
	soft, groupEnd                                int
	skipped                                       [2]int
}

func (r *run) snapshot() snapshot {
	return snapshot{r.pos, r.same, r.sub, r.lastMade, len(r.body.Stitches), len(r.body.Top), r.body.Made, r.lastSpace, r.gaps, len(r.soft), r.groupEnd, r.skipped}
}

func (r *run) restore(s snapshot) {
	r.pos, r.same, r.sub, r.lastMade, r.body.Made, r.lastSpace, r.gaps = s.pos, s.same, s.sub, s.lastMade, s.made, s.lastSpace, s.gaps
	r.body.Stitches, r.body.Top, r.soft = r.body.Stitches[:s.stitches], r.body.Top[:s.top], r.soft[:s.soft]
	r.fault, r.groupEnd, r.skipped = nil, s.groupEnd, s.skipped
}

// repeatAlong works a passage to the end of the row, or to its limit. It must
// come out even.
func (r *run) repeatAlong(body []notation.Step, t *notation.Times, at notation.Span) bool {
	if r.base == nil {
		return r.fail(NoEdge, at, 0, 0, 0, 0, "")
	}
	end, ok := r.limit(t.To)
	if !ok {
		return false
	}
	if t.Last != nil {
		if at, ok := r.turningChain(t.Last); t.Last.What == notation.TurningChain || t.Last.Of != nil {
			if !ok {
				return false
			}
			if r.items[at].is(Idle) {
				return r.fail(NoPlace, t.Last.Span, 0, 0, 0, 0, "counted turning chain")
			}
		} else {
			r.fault = nil
		}
		end = r.hi
	}
	if len(t.Ending) > 0 {
		return r.repeatEnding(body, t, at, end)
	}
	hi := r.hi
	r.hi = end
	ok = r.alongTo(body, t, at)
	r.hi = hi
	if ok {
		r.pos, r.sub = max(r.pos, end), 0
	}
	return ok
}

// alongTo works the passage until the places up to r.hi are used up.
func (r *run) alongTo(body []notation.Step, t *notation.Times, at notation.Span) bool {
	first, onlySpaces := r.firstUse(body)
	if first == nil {
		return r.fail(Endless, at, 0, 0, 0, 0, "")
	}
	begin := min(r.pos, r.hi)
	have := r.count(begin, r.hi)
	stop := stopIndex(body, t)
	times, uses, cut := 0, 0, false // cut: the last repeat ended at its mark
	last := r.snapshot()
	plain := stop < 0 && r.rot == 0 && r.ext == 0 && r.in == noPlace && plainBody(body)
	for r.more(first) {
		last = r.snapshot()
		if ok, done := r.once(body, stop); done {
			times, cut = times+1, true
			break
		} else if !ok {
			if r.fault == nil || (r.fault.Kind != RunsOut && r.fault.Kind != NoPlace && r.fault.Kind != Unworked) {
				return false
			}
			if first := r.fault; times == 0 && first.Kind == NoPlace {
				r.restore(last)
				r.fault = first
				return false
			}
			r.restore(last)
			if r.lastWithout(body, t) {
				return true
			}
			r.restore(last)
			if times > 0 && t.To != nil && !t.To.End && r.pos == r.hi-1 && r.items[r.pos].space() {
				return true // "to tch, ch 1, dc in top of tch": the last space is arched over
			}
			if times == 0 {
				uses = r.measure(body)
			}
			return r.leftOver(at, uses, times, have)
		}
		if r.pos < last.pos || r.pos == last.pos && r.sub == last.sub {
			return r.fail(Endless, at, 0, 0, 0, 0, "")
		}
		if len(t.Omit) > 0 && len(r.soft) > last.soft { // a place was taken for another: perhaps its last part is left out
			r.restore(last)
			if r.lastWithout(body, t) {
				return true
			}
			r.restore(last)
			r.once(body, stop)
		}
		if times++; times == 1 {
			uses = r.count(last.pos, r.pos)
		}
		if plain && times > 1 { // the first may begin otherwise: with no gap before it
			times += r.again(last, maxRow)
		}
	}
	if stop >= 0 && times > 0 && !cut && r.count(last.pos, r.hi) > 0 { // the last repeat does not end at its mark
		r.restore(last)
		r.exec(body[:stop], true)
		r.fault = nil
		return r.leftOver(at, uses, times-1, have)
	}
	if r.count(r.pos, r.hi) > 0 && !r.leftOfGroup(r.pos, r.hi) && !((onlySpaces || r.over > 0) && r.overSpaces(r.pos, r.hi)) {
		if times == 0 && first.What != notation.AnyStitch && first.What != notation.AStitch {
			return r.missing(first.Span, first)
		}
		return r.leftOver(at, uses, times, have)
	}
	r.omit(t)
	return true
}

// lastWithout works the passage a last time without what it leaves out, when
// that uses up the row: "rep from * around, omitting last sc".
func (r *run) lastWithout(body []notation.Step, t *notation.Times) bool {
	return len(t.Omit) > 0 && r.exec(shortened(body, t), true) &&
		(r.count(r.pos, r.hi) == 0 || r.over > 0 && r.overSpaces(r.pos, r.hi))
}

// leftOver notes that a repeat does not come out even: stitches are left, or
// chain spaces alone.
func (r *run) leftOver(at notation.Span, uses, times, have int) bool {
	free := r.between(r.pos, r.hi)
	if left := counting(free); left > 0 {
		return r.fail(Remainder, at, uses, left, times, have, "")
	}
	spaces := 0
	for _, it := range free {
		if it.space() {
			spaces++
		}
	}
	return r.fail(Remainder, at, uses, spaces, times, have, "ch sp")
}

// once works the passage one time. done tells that it ended at its stop mark
// because nothing is left.
func (r *run) once(body []notation.Step, stop int) (ok, done bool) {
	if stop < 0 {
		return r.exec(body, true), false
	}
	if !r.exec(body[:stop], true) {
		return false, false
	}
	rest, _ := r.firstUse(body[stop:])
	head, _ := r.firstUse(body[:stop])
	if (rest == nil || !r.more(rest)) && (head == nil || !r.more(head)) {
		return true, true
	}
	return r.exec(body[stop:], true), false
}

// stopIndex is where the mark that ends the last repeat stands, -1 for none.
func stopIndex(body []notation.Step, t *notation.Times) int {
	if t.EndAt == "" {
		return -1
	}
	for i, s := range body {
		if m, ok := s.(*notation.Stop); ok && m.Mark == t.EndAt {
			return i
		}
	}
	return -1
}

// measure counts what one working of the passage needs, chains and stitches
// aside, when it does not fit even once.
func (r *run) measure(body []notation.Step) int {
	end, need := r.hi, 0
	for _, s := range body {
		n, _ := r.reserve(s, &end)
		need += n
	}
	return need
}

// omit takes back what the last repeat leaves out.
func (r *run) omit(t *notation.Times) {
	for _, s := range t.Omit {
		n := len(r.body.Stitches)
		if n == 0 {
			return
		}
		last := r.body.Stitches[n-1]
		switch s.(type) {
		case *notation.Chains:
			if top := len(r.body.Top); last.Kind == stitch.Chain && top > 0 && r.body.Top[top-1].space() {
				r.body.Top = r.body.Top[:top-1]
				r.body.Stitches = r.body.Stitches[:n-1]
				r.body.Made -= int(last.N)
			}
		case *notation.Work:
			info := r.w.kind(last.Kind)
			r.body.Top = r.body.Top[:max(0, len(r.body.Top)-len(info.items))]
			r.body.Stitches = r.body.Stitches[:n-1]
			r.body.Made -= info.made
		}
	}
}

// repeatEnding works "*A; rep from * across, ending with B": whole passages and
// then B, or the last passage cut short and ended with B, whichever comes out.
func (r *run) repeatEnding(body []notation.Step, t *notation.Times, at notation.Span, end int) bool {
	start := r.snapshot()
	begin, hi := min(r.pos, r.hi), r.hi
	r.frames = append(r.frames, frame{steps: t.Ending})
	whole := min(end, r.reserved())
	r.frames = r.frames[:len(r.frames)-1]
	r.hi = whole
	ok := r.alongTo(body, t, at)
	r.hi = end
	if ok && r.exec(t.Ending, false) && r.spent(end) {
		r.hi = hi
		return true
	}
	fault := r.fault
	r.restore(start)
	if r.cutShort(body, t, end) {
		r.hi = hi
		return true
	}
	r.restore(start)
	r.hi = hi
	if fault == nil {
		return r.fail(Remainder, at, r.measure(body), 0, 0, r.count(begin, hi), "")
	}
	r.fault = fault
	return false
}

// spent tells whether nothing before end is left that a maker would miss.
func (r *run) spent(end int) bool {
	return r.count(r.pos, end) == 0 || r.overSpaces(r.pos, end)
}

// cutShort works whole passages, then as much of one more as lets the ending
// use up the row.
func (r *run) cutShort(body []notation.Step, t *notation.Times, end int) bool {
	first, _ := r.firstUse(body)
	if first == nil {
		return false
	}
	r.hi = end
	for r.more(first) {
		snap := r.snapshot()
		if r.exec(body, true) && r.pos > snap.pos && r.more(first) {
			continue
		}
		for k := range len(body) + 1 { // the shortest that comes out
			r.restore(snap)
			if r.exec(body[:k], true) && r.exec(t.Ending, false) && r.spent(end) {
				return true
			}
		}
		return false
	}
	return false
}

// firstUse is the first place a passage works into; nil if it uses none.
// onlySpaces tells that it works into chain spaces alone.
func (r *run) firstUse(body []notation.Step) (first *notation.Place, onlySpaces bool) {
	onlySpaces = true
	note := func(p *notation.Place) {
		if p.New || p.Which == notation.Same || p.Which == notation.Ring {
			return
		}
		if first == nil {
			first = p
		}
		if p.What != notation.Space && p.What != notation.Corner {
			onlySpaces = false
		}
	}
	for _, s := range body {
		switch s := s.(type) {
		case *notation.Work:
			if r.w.kind(s.Stitch.Kind).uses == 0 && s.Stitch.Kind != stitch.Increase && s.Stitch.Kind != stitch.Decrease {
				continue
			}
			if len(s.Places) == 0 && r.in == noPlace {
				note(anyPlace)
			}
			for _, p := range s.Places {
				note(p)
			}
		case *notation.Skip:
			for _, p := range s.Places {
				note(p)
			}
		case *notation.Group:
			for _, p := range s.In {
				note(p)
			}
			if len(s.In) == 0 {
				r.noteInner(s.Body, note)
			}
		case *notation.Star:
			r.noteInner(s.Body, note)
		}
	}
	return first, onlySpaces
}

func (r *run) noteInner(body []notation.Step, note func(*notation.Place)) {
	p, only := r.firstUse(body)
	if p == nil {
		return
	}
	note(p)
	if !only {
		note(anyPlace)
	}
}

// more tells whether the edge has another place for the start of a passage.
func (r *run) more(first *notation.Place) bool {
	p := first
	if p.Of != nil && (p.Which == notation.Nth || p.Which == notation.Centre) {
		p = p.Of
	}
	chains := chainsOf(r.w.d, p.Chains, r.w.size)
	for i := r.pos; i < r.hi; i++ {
		it := r.items[i]
		switch p.What {
		case notation.AnyStitch, notation.AStitch:
			if it.is(Counts) && (i > r.groupEnd || p.What == notation.AnyStitch || r.w.goesBy(it.Kind, p.Kind)) {
				return true
			}
		default:
			if r.fits(it, p, chains) || (p.What == notation.TurningChain && it.is(Counts)) {
				return true
			}
		}
	}
	return false
}
