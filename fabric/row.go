package fabric

import (
	"slices"

	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// An order is a row to be worked: whose words, under which label.
type order struct {
	line    *design.Line // the line that orders it
	words   *design.Line // the line whose words are worked
	steps   []notation.Step
	label   string
	number  int
	round   bool
	side    notation.Side // told by the label
	sideAt  notation.Span
	counts  []*notation.Count // what is stated of this row; nil inside a range
	again   bool              // worked by reference
	partial bool              // further parts of the same row follow
}

// A result is a row as it came out.
type result struct {
	body     *Body
	base     *edge
	fault    *Fault // the first thing that does not come out
	soft     []Fault
	count    []Fault // stated counts that are not what it makes
	turned   bool
	noTurn   bool
	joined   bool
	fastened bool
	left     bool
	leftRest bool
	unknown  bool
	unsure   bool
	rest     *edge // what was left unworked
	over     int   // counted places left
	pending  *notation.Chains
	turning  []TurningChain
	hook     int
	say      int
	round    bool
}

func (res *result) good() bool {
	for _, f := range res.soft {
		if !f.Soft {
			return false
		}
	}
	return res.fault == nil && len(res.count) == 0
}

// memoKey tells rows apart that may come out differently.
type memoKey struct {
	step     *notation.Step
	id       int
	reversed bool
	from, to int
	closed   bool
	ring     bool
	chains   int
	pending  *notation.Chains
	rules    int
	fewer    bool
	round    bool
}

// try works an order on an edge. It changes nothing but the memory of rows
// worked before.
func (w *worker) try(o *order, base *edge, fewer bool) *result {
	var key memoKey
	keyed := base != nil && len(o.steps) > 0 && base.body.id > 0
	if keyed {
		key = memoKey{&o.steps[0], base.body.id, base.reversed, base.from, base.to, base.closed, base.ring, base.chains, w.pending, len(w.conv.turning), fewer, o.round}
		if res, ok := w.memo[key]; ok {
			again := *res
			again.base = base
			if again.rest != nil {
				rest := *again.rest
				rest.row = base.row
				again.rest = &rest
			}
			again.count = w.compare(res.body, base, o)
			return &again
		}
	}
	res := w.run(o, base, fewer)
	if res.fault == nil {
		res.body = w.keep(res.body)
	}
	if keyed && res.fault == nil && len(res.soft) == 0 && len(res.turning) <= 1 {
		w.memo[key] = res
	}
	res.count = w.compare(res.body, base, o)
	return res
}

// run works an order afresh.
func (w *worker) run(o *order, base *edge, fewer bool) *result {
	r := newRun(w, o.words, base)
	r.fewer = fewer
	rules := len(w.conv.turning)
	ok := true
	if w.pending != nil && !startsWithChain(o.steps) {
		r.frames = append(r.frames, frame{steps: o.steps})
		ok = r.chain(w.pending)
		r.frames = r.frames[:0]
	}
	if ok {
		ok = r.exec(o.steps, false)
	}
	res := &result{body: r.body, base: base, fault: r.fault, soft: r.soft, turned: r.turned, noTurn: r.noTurn,
		joined: r.joined, fastened: r.fastened, left: r.left, leftRest: r.leftRest, unknown: r.unknown, unsure: r.unsure, pending: r.pending,
		turning: r.turning, say: len(w.conv.turning) - rules}
	res.round = o.round
	if ok {
		w.closeRow(r, o, res)
	}
	if res.fault != nil && res.fault.Line == nil {
		res.fault.Line = o.words
	}
	w.finish(r.body)
	return res
}

// closeRow looks at what the row left unworked.
func (w *worker) closeRow(r *run, o *order, res *result) {
	if r.base == nil || r.pos >= r.hi {
		return
	}
	over := r.count(r.pos, r.hi)
	res.over = over
	if over == 0 && !res.left {
		return
	}
	if r.rot == 0 && r.ext == 0 && r.base == res.base {
		rest := *r.base
		rest.from = r.pos
		res.rest = &rest
	}
	if res.left || o.partial || r.base.dark {
		return
	}
	if r.overSpaces(r.pos, r.hi) || r.inRing || o.round && over <= lastArch(r.body) && !endsWithSkip(o.steps) {
		res.over, res.rest = 0, nil
		return
	}
	soft := len(o.counts) > 0 && !o.round && over > 2 && r.base.chains == 0 && !counted(o.steps)
	f := Fault{Kind: Unworked, Line: o.words, Span: o.words.Span, A: over, D: r.count(r.low, r.hi), Soft: soft}
	if last := lastWork(o.steps); !last.IsZero() {
		f.Span = last
	}
	if over == 1 && r.items[r.hi-1].is(Tch) {
		f.Text = "turning chain"
	}
	if soft {
		res.soft = append(res.soft, f)
		return
	}
	res.fault = &f
}

// counted tells whether a row repeats a passage so many times: stitches it
// leaves then speak against the number.
func counted(steps []notation.Step) bool {
	return slices.ContainsFunc(steps, func(s notation.Step) bool {
		switch s := s.(type) {
		case *notation.Star:
			return s.Times != nil && s.Times.N != nil
		case *notation.Group:
			return s.Times != nil && s.Times.N != nil
		}
		return false
	})
}

// lastArch is the chains of the arch that ends a round: it stands over the
// places left before the join.
func lastArch(b *Body) int {
	if n := len(b.Top); n > 0 && b.Top[n-1].space() {
		return int(b.Top[n-1].Chains)
	}
	return 0
}

// endsWithSkip tells whether the last places of a round are skipped in words,
// so that an arch before them needs no places of its own.
func endsWithSkip(steps []notation.Step) bool {
	for i := len(steps) - 1; i >= 0; i-- {
		switch steps[i].(type) {
		case *notation.Skip:
			return true
		case *notation.Chains, *notation.Work, *notation.Group, *notation.Star:
			return false
		}
	}
	return false
}

// lastWork is the place of the last step that makes stitches.
func lastWork(steps []notation.Step) notation.Span {
	for i := len(steps) - 1; i >= 0; i-- {
		switch s := steps[i].(type) {
		case *notation.Work, *notation.Group, *notation.Star, *notation.Skip:
			return s.At()
		}
	}
	return notation.Span{}
}

// startsWithChain tells whether a row makes its own turning chain.
func startsWithChain(steps []notation.Step) bool {
	for _, s := range steps {
		switch s.(type) {
		case *notation.Chains:
			return true
		case *notation.Turn, *notation.Remark, *notation.Color, *notation.Rule, *notation.JoinYarn, *notation.Marker:
		default:
			return false
		}
	}
	return false
}

// finish counts a body once it is made.
func (w *worker) finish(b *Body) {
	b.Counting = counting(b.Top)
}

// keep returns the body kept for rows that are the same as b, b itself for the
// first of them.
func (w *worker) keep(b *Body) *Body {
	if b.id > 0 {
		return b
	}
	h := hashBody(b)
	for _, other := range w.bodies[h] {
		if slices.Equal(other.Top, b.Top) && slices.Equal(other.Stitches, b.Stitches) {
			w.spare = *b // its room serves the next row
			return other
		}
	}
	w.ids++
	b.id = w.ids
	w.bodies[h] = append(w.bodies[h], b)
	return b
}

func hashBody(b *Body) uint64 {
	h := uint64(len(b.Stitches))*0x9E3779B97F4A7C15 + 1
	for i := range b.Stitches {
		s := &b.Stitches[i]
		h ^= uint64(s.Kind) | uint64(uint32(s.Into))<<16 | uint64(s.N)<<48
		h *= 0x100000001B3
	}
	for i := range b.Top {
		it := &b.Top[i]
		h ^= uint64(it.Kind) | uint64(it.Chains)<<16 | uint64(it.Flag)<<32
		h *= 0x100000001B3
	}
	return h
}

// row works one row, or one part of it, and goes on from it.
func (w *worker) row(o *order) {
	if w.full || w.fab.Stitches > maxPattern || w.fab.Rows > maxRows {
		w.full = true
		if !w.told && !w.held {
			w.told = true
			w.fault(Fault{Kind: TooLong, Line: o.line, Span: o.line.Span, Row: o.label})
		}
		w.outcome(o.line, NotWorked)
		return
	}
	if w.next != nil && w.next.closed && onlyFinishes(o.steps) {
		w.outcome(o.line, Done)
		return
	}
	res, other := w.best(o)
	if len(res.body.Stitches) == 0 && (res.fault == nil || res.fault.Kind == Unworked) {
		w.outcome(o.line, Done) // none of it in this size: "0 (1, 2) times"
		return
	}
	w.report(o, res)
	if res.fault != nil && res.fault.Kind == NoEdge && len(res.body.Top) == 0 {
		w.remember(o, res) // nothing to work into: the words may still serve
		return
	}
	w.advance(o, res, other)
	if res.fault != nil && res.fault.Kind == TooLong {
		w.full, w.told = true, true
	}
}

// onlyFinishes tells whether steps but close off a spiral: "sl st in next st,
// fasten off".
func onlyFinishes(steps []notation.Step) bool {
	ends := false
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Work:
			if s.Stitch.Kind != stitch.SlipStitch || len(s.Places) == 1 && s.Places[0].Which == notation.Each {
				return false
			}
		case *notation.FastenOff:
			ends = true
		case *notation.Remark, *notation.Marker:
		default:
			return false
		}
	}
	return ends
}

// best works the order on the edge as made and, after a fault, on the edge as
// claimed, and takes the one that comes out. other is the second when both do.
func (w *worker) best(o *order) (res, other *result) {
	res = w.attempt(o, w.baseFor(o, w.next))
	if w.claim == nil {
		return res, nil
	}
	other = w.attempt(o, w.baseFor(o, w.claim))
	switch {
	case res.good() && other.good() && len(res.soft) <= len(other.soft):
		if len(o.counts) > 0 || res.body.Counting == other.body.Counting {
			return res, nil
		}
		return res, other
	case other.good():
		w.held = false
		w.settle(ByStated)
		return other, nil
	case res.good():
		w.settle(ByMade)
		return res, nil
	}
	w.held = true
	w.settle(ByNeither)
	return res, nil
}

// settle notes which number the row after a wrong count fits.
func (w *worker) settle(s Settled) {
	for i := len(w.fab.Faults) - 1; i >= 0; i-- {
		if f := &w.fab.Faults[i]; f.Kind == WrongCount {
			if f.Settled == Unsettled {
				f.Settled = s
			}
			return
		}
	}
}

// attempt works the order; where a repeat's number may be read two ways, it
// takes the reading that comes out.
func (w *worker) attempt(o *order, base *edge) *result {
	res := w.try(o, base, false)
	if res.unsure && !res.good() {
		if few := w.try(o, base, true); few.good() {
			return few
		}
	}
	return res
}

// report records what does not come out, unless it only follows from a slip
// before.
func (w *worker) report(o *order, res *result) {
	for _, t := range res.turning {
		t.Row = o.label
		w.noteTurning(t)
	}
	if res.unknown && !res.good() {
		w.outcome(o.line, NotWorked)
		return
	}
	if res.good() {
		w.outcome(o.line, Done)
		if len(o.counts) > 0 || !w.held {
			w.held = false
		}
	} else {
		w.outcome(o.line, Done)
	}
	if o.again && w.slips[o.words] && !res.good() {
		w.held = true
	}
	if w.held || w.inDoubt && res.fault == nil {
		return
	}
	if !res.good() {
		w.slips[o.words] = true
	}
	if o.again && o.number == 0 && len(res.count) > 0 {
		w.anyLabel = true // too few rows or too many: the labels tell the same slip again
	}
	faults := res.count
	if res.fault != nil {
		faults = []Fault{*res.fault}
		if res.fault.Kind == NoEdge {
			w.outcome(o.line, NotWorked)
			if w.dark {
				return
			}
		}
	} else if len(faults) > 1 {
		faults = faults[:1]
	}
	passed := false
	for _, f := range append(faults, res.soft...) {
		if o.again && f.Soft || passed && f.Kind == SilentSkip && !f.Soft {
			continue
		}
		passed = passed || f.Kind == SilentSkip && !f.Soft // the same in each repeat: one slip
		if f.Row = o.label; f.Kind == WrongCount && f.Line == o.line {
			f.Row = w.lineLabel(o.line, o.label)
			if o.again && o.line.Tree.Label == nil { // "Rep last 2 rows": the row worked again states nothing here
				f.Row = ""
			}
		}
		if o.again && f.Line != o.line {
			f.Line, f.Span = o.line, againSpan(o.line, f)
		}
		if f.Kind == BadNumber {
			continue // the list itself is reported, once
		}
		w.fault(f)
	}
}

// againSpan is where a fault shows that comes up when a row is worked again.
func againSpan(line *design.Line, f Fault) notation.Span {
	for _, s := range line.Tree.Steps {
		if a, ok := s.(*notation.Again); ok {
			return a.Span
		}
	}
	if f.Line == line {
		return f.Span
	}
	return line.Span
}

func (w *worker) noteTurning(t TurningChain) {
	if w.chainsSeen[t.Span] {
		return
	}
	w.chainsSeen[t.Span] = true
	w.fab.Chains = append(w.fab.Chains, t)
}

// baseFor lays an edge as this row meets it: from the other end after a turn.
func (w *worker) baseFor(o *order, e *edge) *edge {
	if e == nil || w.ready || e.body == nil {
		return e
	}
	base := *e
	pre := turnsFirst(o.steps)
	switch {
	case w.lastRow == nil && !e.closed:
		base.reversed = true
	case !o.round && !e.closed:
		base.reversed = true
	default:
		base.reversed = w.turned || pre
	}
	return &base
}

// turnsFirst tells whether the work is turned before the row's first stitch.
func turnsFirst(steps []notation.Step) bool {
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Turn:
			return !s.Not
		case *notation.Chains, *notation.Remark, *notation.Color, *notation.Marker, *notation.Rule:
		default:
			return false
		}
	}
	return false
}

// advance makes the row that came out the one to stand on.
func (w *worker) advance(o *order, res, other *result) {
	body := w.keep(res.body)
	row := &Row{Number: o.number, Label: o.label, Round: o.round, Line: o.line, Words: o.words, Piece: w.piece, Body: body}
	if res.base != nil {
		row.Below = res.base.row
	}
	row.Side = w.face(o, res)
	w.piece.Rows = append(w.piece.Rows, row)
	if len(w.piece.Rows) == 1 {
		w.piece.Hook = w.hookChains
	}
	w.fab.Rows++
	w.fab.Stitches += body.Made
	if w.split != nil && len(w.split.Sides) > 0 {
		last := len(w.split.Sides) - 1
		w.split.Sides[last] = append(w.split.Sides[last], row)
	}
	w.leaveOpen(o, res, row)
	w.remember(o, res)

	closed := res.joined || (o.round && !res.noJoinFlat(o))
	w.next, w.claim = whole(row, body, false, closed), nil
	w.setClaim(o, res, other, row, closed)
	w.next.joined = res.joined
	if w.claim != nil {
		w.claim.joined = res.joined
	}
	w.lastRow, w.ready, w.pending = row, false, res.pending
	w.turned = res.turned || (!o.round && !res.noTurn && !res.joined)
	w.flipNext = w.turned
	w.fastened = res.fastened
	w.dark = false
}

// noJoinFlat tells whether a round is in truth a row: it was turned and never
// joined.
func (res *result) noJoinFlat(o *order) bool { return res.turned && !res.joined }

// setClaim keeps the edge that the pattern claims beside the one it makes.
func (w *worker) setClaim(o *order, res, other *result, row *Row, closed bool) {
	switch {
	case other != nil:
		w.claim = whole(row, w.keep(other.body), false, closed)
	case res.fault != nil:
		total, ok := w.statedTotal(o, res)
		if !ok {
			total = res.body.Counting
			if res.base != nil && res.base.body != nil {
				total = res.base.counting()
			}
		}
		w.next = whole(row, claimed(res.body, total), false, closed)
		w.held = true
	case len(res.count) > 0:
		if total, ok := w.statedTotal(o, res); ok {
			w.claim = whole(row, claimed(res.body, total), false, closed)
		}
	}
}

// leaveOpen keeps what the row left unworked for another side.
func (w *worker) leaveOpen(o *order, res *result, row *Row) {
	if res.rest == nil || (!res.left && res.over == 0) || res.rest.counting() == 0 {
		return
	}
	if res.fault != nil && res.fault.Kind != Unworked {
		return
	}
	op := &opening{edge: res.rest, row: row.Below, side: row.Side, num: o.number}
	if len(res.count) > 0 {
		if total, ok := w.statedTotal(o, res); ok {
			shift := total - res.body.Counting
			claim := *res.rest
			if claim.from += shift; claim.from >= 0 && claim.from <= claim.to {
				op.claim = &claim
			}
		}
	}
	if res.leftRest {
		split := &Split{Base: row.Below, Left: res.rest.counting(), Sides: [][]*Row{{row}}, Names: []string{w.pieceName()}}
		w.piece.Splits = append(w.piece.Splits, split)
		w.split, op.split = split, split
		w.restarts = append(w.restarts, o.number)
	}
	w.open = append(w.open, op)
}

// remember keeps the row's words, to be worked again.
func (w *worker) remember(o *order, res *result) {
	have := 0
	if res.base != nil {
		have = res.base.counting()
	}
	ws := &words{line: o.words, steps: o.steps, round: o.round, label: o.label, number: o.number, delta: res.body.Counting - have, side: w.facing}
	if o.number > 0 {
		if o.again && o.line != o.words {
			ws.number = 0
		}
		w.wordsOf[o.number] = ws
	}
	if o.line.Tree.Label != nil && o.line.Tree.Label.Name != "" && !o.again {
		w.named[o.line.Tree.Label.Name] = ws
	}
	w.order = append(w.order, ws)
}

// face tells which side of the work faces in this row, and checks the label.
func (w *worker) face(o *order, res *result) notation.Side {
	expect := w.facing
	if w.flipNext || turnsFirst(o.steps) && !w.turned {
		expect = flip(expect)
	}
	w.flipNext = false
	if o.side == notation.NoSide {
		w.facing = expect
		return expect
	}
	if expect != notation.NoSide && expect != o.side {
		if w.otherFace {
			w.otherFace = false
			w.facing = o.side
			return o.side
		}
		w.otherFace = true
		if !w.held {
			w.fault(Fault{Kind: WrongSide, Line: o.line, Span: o.sideAt, Row: o.label, A: int(o.side), B: int(expect)})
		}
		w.facing = expect
		return expect
	}
	w.otherFace = false
	w.facing = o.side
	return o.side
}
