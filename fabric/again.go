package fabric

import (
	"math"
	"slices"
	"strings"

	"rowproof/design"
	"rowproof/notation"
)

// again works whole rows again, by one order of a line. list holds the numbers
// of the label; zeros for rows without a number, nil for a line without a label.
// What the line states holds for the last row of its last order.
func (w *worker) again(line *design.Line, a *notation.Again, list []int, last bool) {
	set, ok := w.referred(line, a)
	if ok && w.onFoundationOnly(set) {
		w.fault(Fault{Kind: NoRow, Line: line, Span: a.Span, Row: w.lineLabel(line), A: set[0].number, Text: "foundation"})
		ok = false
	}
	if !ok {
		w.outcome(line, NotWorked)
		w.spread(line, list)
		return
	}
	set = w.respective(line, set, list)
	w.inDoubt = false
	total, measured, ok := w.howMany(line, a, set, list)
	if !ok {
		w.outcome(line, NotWorked)
		w.held = true
		return
	}
	if !w.inDoubt {
		w.checkFace(line, a, set, list)
	}
	for i := range total {
		ws := set[i%len(set)]
		o := order{line: line, words: ws.line, steps: ws.steps, round: ws.round, label: ws.label, again: true}
		if i < len(list) {
			o.number = list[i]
			if l := line.Tree.Label; l != nil {
				o.label = w.labelText(l, o.number)
				if i == 0 {
					o.side, o.sideAt = l.Side, l.Span
				}
			}
		}
		if i == total-1 && last {
			o.counts = line.Tree.Counts
		}
		w.steps(ws.steps, o)
	}
	w.inDoubt = false
	if measured {
		w.outcome(line, ByMeasure)
	} else {
		w.outcome(line, Done)
	}
}

// respective is the part of a set that goes with some rows of a label that has
// as many: "Rows 6 and 8: Rep Rows 2 and 4".
func (w *worker) respective(line *design.Line, set []*words, list []int) []*words {
	l := line.Tree.Label
	if l == nil || len(l.Ranges) < 2 || len(l.Ranges) != len(set) || len(list) != 1 {
		return set
	}
	for i, rg := range l.Ranges {
		if w.near(rg.From) == list[0] {
			return set[i : i+1]
		}
	}
	return set
}

// onFoundationOnly tells whether rows to be worked again hold the first row of
// the piece, worked into its foundation chain: there is none to go into again.
func (w *worker) onFoundationOnly(set []*words) bool {
	if len(w.order) == 0 || w.next == nil || w.next.chains > 0 {
		return false
	}
	first := w.order[0]
	return slices.ContainsFunc(set, func(ws *words) bool {
		return ws.line == first.line && ws.number == first.number && fromHook(ws.steps)
	})
}

// fromHook tells whether steps go into a chain counted from the hook.
func fromHook(steps []notation.Step) bool {
	return slices.ContainsFunc(steps, func(s notation.Step) bool {
		work, ok := s.(*notation.Work)
		return ok && slices.ContainsFunc(work.Places, func(p *notation.Place) bool {
			return p.Which == notation.Nth && p.What == notation.Chain && p.Of == nil
		})
	})
}

// checkFace looks for rows of the same face that are worked one after the other,
// and for a set of shaped rows that is worked again with the other
// face toward the maker: its shaping would fall on the other edge.
func (w *worker) checkFace(line *design.Line, a *notation.Again, set []*words, list []int) {
	for i := 1; i < len(set) && len(list) != 1; i++ {
		one, next := set[i-1], set[i]
		if !next.round && one.side != notation.NoSide && one.side == next.side && one.line != next.line && one.number > 0 && next.number > one.number+1 {
			if between := w.wordsOf[one.number+1]; between == nil || between.side != flip(one.side) {
				continue // the work is not turned
			}
			w.fault(Fault{Kind: SameFace, Line: line, Span: a.Span, Row: w.lineLabel(line), A: one.number, B: next.number, C: int(one.side), Soft: true})
			return
		}
	}
	if w.mislabelled || len(set)%2 != 0 || len(list) == 0 || list[0] == 0 || set[0].round || set[0].number == 0 || a.Last != nil {
		return
	}
	if (list[0]-set[0].number)%2 == 0 {
		return
	}
	for _, ws := range set {
		if ws.delta != 0 {
			w.fault(Fault{Kind: OtherFace, Line: line, Span: a.Span, Row: w.lineLabel(line), A: list[0], B: set[0].number})
			return
		}
	}
}

// spread gives the label's rows their numbers when they could not be worked, so
// that the next label still follows on.
func (w *worker) spread(line *design.Line, list []int) {
	w.held = true
	if len(line.Tree.Counts) == 0 || w.next == nil || w.next.body == nil {
		return
	}
	o := &order{line: line, words: line, counts: line.Tree.Counts}
	res := &result{body: w.next.body, base: w.next, fault: &Fault{}}
	if total, ok := w.statedTotal(o, res); ok {
		w.next = whole(w.lastRow, claimed(w.next.body, total), w.next.reversed, w.next.closed)
		w.claim = nil
	}
}

// referred finds the words of the rows that are worked again.
func (w *worker) referred(line *design.Line, a *notation.Again) ([]*words, bool) {
	switch {
	case a.Mirrored || a.Of != "":
		w.notUnderstood(line, a.Span)
		return nil, false
	case a.Name != "":
		if ws := w.named[a.Name]; ws != nil {
			return []*words{ws}, true
		}
		w.fault(Fault{Kind: NoRow, Line: line, Span: a.Span, Row: w.lineLabel(line), Text: a.Name + " row"})
		return nil, false
	case a.Last != nil:
		n, ok := w.d.Value(a.Last, w.size)
		if !ok || n < 1 {
			return nil, false
		}
		if n > len(w.order) {
			w.fault(Fault{Kind: NoRow, Line: line, Span: a.Span, Row: w.lineLabel(line), A: n, Text: "last " + itoa(n) + " rows"})
			return nil, false
		}
		return append([]*words(nil), w.order[len(w.order)-n:]...), true
	case a.Even || a.Pattern:
		return w.evenWords(line, a)
	}
	return w.numbered(line, a)
}

// evenWords are the words of the last row that neither adds nor takes away.
func (w *worker) evenWords(line *design.Line, a *notation.Again) ([]*words, bool) {
	for i := len(w.order) - 1; i >= 0; i-- {
		if ws := w.order[i]; ws.delta == 0 && ws.steps != nil {
			return []*words{ws}, true
		}
	}
	w.notUnderstood(line, a.Span)
	return nil, false
}

func (w *worker) notUnderstood(line *design.Line, at notation.Span) {
	w.fault(Fault{Kind: NotUnderstood, Line: line, Span: at, Row: w.lineLabel(line), Text: w.d.Source[at.Start:at.End], Soft: true})
}

// lineLabel names the row a line orders.
func (w *worker) lineLabel(line *design.Line, or ...string) string {
	l := line.Tree.Label
	if l == nil || len(l.Ranges) == 0 {
		if len(or) > 0 {
			return or[0]
		}
		return ""
	}
	n, _ := w.firstNumber(l)
	last := n
	if len(l.Ranges) > 0 {
		r := l.Ranges[len(l.Ranges)-1]
		if r.To != nil {
			last = w.near(r.To)
		}
	}
	text := w.labelText(l, n)
	if last > n && strings.HasPrefix(text, "R") {
		return strings.Replace(text, " ", "s ", 1) + "-" + itoa(last)
	}
	return text
}

func (w *worker) numbered(line *design.Line, a *notation.Again) ([]*words, bool) {
	var set []*words
	seen := map[*words]bool{}
	for _, rg := range a.Rows {
		from := w.near(rg.From)
		to := from
		if rg.To != nil {
			to = w.near(rg.To)
		}
		if from < 0 || to < from || to-from > maxRows {
			w.fault(Fault{Kind: BackwardRange, Line: line, Span: a.Span, Row: w.lineLabel(line), A: from, B: to})
			return nil, false
		}
		for n := from; n <= to; n++ {
			ws := w.wordsOf[n]
			if ws == nil && n > 0 && n <= w.number && w.held {
				return nil, false // it was not worked, and that has been told
			}
			if ws == nil {
				w.fault(Fault{Kind: NoRow, Line: line, Span: w.refSpan(a, n), Row: w.lineLabel(line), A: n})
				return nil, false
			}
			if seen[ws] && len(a.Rows) > 1 && w.repeatsItself(a) { // "Rep Rows 3 and 3"
				w.fault(Fault{Kind: NoRow, Line: line, Span: w.refSpan(a, n), Row: w.lineLabel(line), A: n, Text: "twice"})
				return nil, false
			}
			seen[ws] = true
			set = append(set, ws)
		}
	}
	return set, len(set) > 0
}

// repeatsItself tells whether a reference names the same number twice. Two
// numbers may well have the same words.
func (w *worker) repeatsItself(a *notation.Again) bool {
	seen := map[int]bool{}
	for _, rg := range a.Rows {
		from, to := w.near(rg.From), w.near(rg.From)
		if rg.To != nil {
			to = w.near(rg.To)
		}
		for n := from; n <= to; n++ {
			if seen[n] {
				return true
			}
			seen[n] = true
		}
	}
	return false
}

// refSpan is where a reference names row n.
func (w *worker) refSpan(a *notation.Again, n int) notation.Span {
	for _, rg := range a.Rows {
		if rg.From != nil && w.near(rg.From) == n {
			return spanOf(rg.From, a.Span)
		}
		if rg.To != nil && w.near(rg.To) == n {
			return spanOf(rg.To, a.Span)
		}
	}
	return a.Span
}

// howMany is how many rows are worked, and whether a length decided it.
func (w *worker) howMany(line *design.Line, a *notation.Again, set []*words, list []int) (total int, measured, ok bool) {
	sets, told := 0, false
	if a.Times != nil && a.Times.N != nil {
		n := w.near(a.Times.N)
		if n < 0 {
			return 0, false, true
		}
		if n > maxRows {
			w.fault(Fault{Kind: TooLong, Line: line, Span: a.Times.Span, Row: w.lineLabel(line), A: n})
			return 0, false, false
		}
		sets, told = n, true
	}
	if len(list) > 0 {
		total = len(list)
		switch {
		case told && sets*len(set) != total:
			w.fault(Fault{Kind: RangeTimes, Line: line, Span: spanOf(a.Times.N, a.Span), Row: w.lineLabel(line), A: total, B: len(set), C: sets})
		case !told && total%len(set) != 0 && a.EndRow == nil && a.EndSide == notation.NoSide && a.Until == nil:
			w.fault(Fault{Kind: RangeUneven, Line: line, Span: line.Tree.Label.Span, Row: w.lineLabel(line), A: total, B: len(set)})
			w.anyLabel, w.inDoubt = true, true
		}
		return total, a.Until != nil && a.Until.Length != nil, true
	}
	switch {
	case a.RowCount != nil:
		n := w.near(a.RowCount)
		return max(0, min(n, maxRows)), false, n <= maxRows
	case told:
		return sets * len(set), false, true
	case a.Until != nil:
		return w.untilLength(line, a, len(set))
	case a.Even || a.Pattern:
		w.notUnderstood(line, a.Span)
		return 0, false, false
	}
	return len(set), false, true
}

// untilLength turns a length into rows by the gauge: the nearest number of
// rows, whole sets, ended on the side told.
func (w *worker) untilLength(line *design.Line, a *notation.Again, set int) (int, bool, bool) {
	m := a.Until.Length
	if m == nil || len(m.Values) == 0 {
		w.notUnderstood(line, a.Span)
		return 0, false, false
	}
	rate := 0.0 // rows per cm
	for _, g := range w.d.Gauges {
		if g.Rows > 0 && g.Height > 0 {
			rate = g.Rows / float64(g.Height)
			break
		}
	}
	if rate == 0 {
		w.fault(Fault{Kind: NoGauge, Line: line, Span: m.Span, Row: w.lineLabel(line), Soft: true})
		return 0, false, false
	}
	v := m.Values[min(w.size, len(m.Values)-1)]
	switch m.Unit {
	case notation.Inch:
		v *= 2.54
	case notation.Millimetre:
		v /= 10
	}
	rows := int(math.Round(v*rate)) - w.rowsSince(a.Until.From)
	rows = min(max(rows, 0), maxRows)
	if set > 1 {
		rows = (rows + set/2) / set * set
	}
	if w.endsOn(rows) == flip(a.EndSide) && a.EndSide != notation.NoSide {
		rows++
	}
	return rows, true, true
}

// endsOn is the face of the last row after so many more in rows turned, when it
// is known.
func (w *worker) endsOn(rows int) notation.Side {
	if w.next == nil || w.next.closed || rows == 0 {
		return notation.NoSide
	}
	if rows%2 == 1 {
		return flip(w.facing)
	}
	return w.facing
}

// rowsSince is how many rows are worked from the place a length is measured
// from.
func (w *worker) rowsSince(from string) int {
	if from == "" || strings.Contains(from, "beg") || strings.Contains(from, "start") || strings.Contains(from, "foundation") || strings.Contains(from, "ch") {
		return len(w.piece.Rows)
	}
	n := 0
	for i := len(w.piece.Rows) - 1; i >= 0 && w.piece.Rows[i].Line.Section == w.section; i-- {
		n++
	}
	return n
}

// shape works shaping told in prose: so many stitches at each end, at every
// Nth row, with plain rows between.
func (w *worker) shape(line *design.Line, s *notation.Shape, list []int) {
	if s.Row != "" {
		w.shapeByRow(line, s, list)
		return
	}
	plain := w.plainRow(line)
	if s.Ends == 0 || len(s.Plan) == 0 || w.next == nil || w.next.dark {
		w.fault(Fault{Kind: NotUnderstood, Line: line, Span: s.Span, Row: w.lineLabel(line), Text: w.d.Source[s.Span.Start:s.Span.End], Soft: true})
		w.outcome(line, NotWorked)
		w.spread(line, list)
		return
	}
	by, ok := 1, true
	if s.N != nil {
		by, ok = w.d.Value(s.N, w.size)
	}
	if !ok {
		w.outcome(line, NotWorked)
		return
	}
	plan := w.plan(s)
	if !w.planFits(line, s, plan, list) {
		return
	}
	for _, e := range plan {
		for range e.times {
			if len(w.piece.Rows) > maxRows {
				return
			}
			for range e.every - 1 {
				w.row(&order{line: line, words: plain.line, steps: plain.steps, round: plain.round, label: w.lineLabel(line), again: true})
			}
			if !w.shapedRow(line, plain, s.Change*by*s.Ends) {
				return
			}
		}
	}
	w.afterShape(line)
}

// an interval is a part of a plan in this size.
type interval struct{ every, times int }

func (w *worker) plan(s *notation.Shape) []interval {
	var list []interval
	for _, e := range s.Plan {
		every, times := 1, 1
		if e.Every != nil {
			every = w.near(e.Every)
		}
		if e.Side != notation.NoSide {
			every = 2
		}
		if e.Times != nil {
			times = w.near(e.Times)
		}
		if every < 1 || times < 1 || every > maxRows || times > maxRows || every*times > maxRows {
			continue
		}
		list = append(list, interval{every, times})
	}
	return list
}

// plainWords are the words of the last row that keeps its count.
func (w *worker) plainWords() (*words, bool) {
	for i := len(w.order) - 1; i >= 0; i-- {
		if w.order[i].delta == 0 {
			return w.order[i], true
		}
	}
	return nil, false
}

// plainRow is the row worked between shaped rows: the last that kept its count,
// or one stitch of the usual kind in each stitch.
func (w *worker) plainRow(line *design.Line) *words {
	if ws, ok := w.plainWords(); ok {
		return ws
	}
	name := &notation.StitchName{Kind: w.prevailing(w.next)}
	each := &notation.Place{Which: notation.Each}
	return &words{line: line, steps: []notation.Step{&notation.Work{Span: line.Span, Stitch: name, Places: []*notation.Place{each}}}}
}

// planFits holds a shaping plan against the rows its label has. Where it does
// not fit, the rows are taken as the label and the stated count have them.
func (w *worker) planFits(line *design.Line, s *notation.Shape, plan []interval, list []int) bool {
	rows := 0
	for _, e := range plan {
		rows += e.every * e.times
	}
	if len(list) < 2 || rows == len(list) || s.Plan[0].Next {
		return true
	}
	w.fault(Fault{Kind: ShapeRows, Line: line, Span: s.Span, Row: w.lineLabel(line), A: len(list), B: rows})
	w.outcome(line, Done)
	w.spread(line, list)
	return false
}

// shapedRow works a plain row with the count changed at its ends.
func (w *worker) shapedRow(line *design.Line, plain *words, change int) bool {
	o := &order{line: line, words: plain.line, steps: plain.steps, round: plain.round, label: w.lineLabel(line), again: true}
	res := w.try(o, w.baseFor(o, w.next), false)
	total := res.body.Counting + change
	if total < 1 {
		w.fault(Fault{Kind: RunsOut, Line: line, Span: line.Span, Row: o.label, A: 1 - total, D: res.body.Counting})
		w.outcome(line, NotWorked)
		return false
	}
	b := claimed(res.body, total)
	b.Stitches, b.Made = res.body.Stitches, res.body.Made+change
	b.Patched = true
	res.body, res.fault, res.count = b, nil, nil
	w.advance(o, res, nil)
	return true
}

func (w *worker) afterShape(line *design.Line) {
	w.outcome(line, Done)
	if w.lastRow == nil || len(line.Tree.Counts) == 0 {
		return
	}
	o := &order{line: line, words: line, counts: line.Tree.Counts}
	res := &result{body: w.lastRow.Body}
	for _, f := range w.compare(w.lastRow.Body, nil, o) {
		f.Row = w.lineLabel(line)
		if !w.held {
			w.fault(f)
		}
		if total, ok := w.statedTotal(o, res); ok {
			w.claim = whole(w.lastRow, claimed(w.lastRow.Body, total), w.next.reversed, w.next.closed)
		}
		break
	}
}

// shapeByRow works a named row at every Nth row: "Work Dec row every 4th row 3
// times".
func (w *worker) shapeByRow(line *design.Line, s *notation.Shape, list []int) {
	ws := w.named[s.Row]
	plain := w.plainRow(line)
	if ws == nil || w.next == nil || len(s.Plan) == 0 {
		w.fault(Fault{Kind: NotUnderstood, Line: line, Span: s.Span, Row: w.lineLabel(line), Text: w.d.Source[s.Span.Start:s.Span.End], Soft: true})
		w.outcome(line, NotWorked)
		w.spread(line, list)
		return
	}
	plan := w.plan(s)
	if !w.planFits(line, s, plan, list) {
		return
	}
	for _, e := range plan {
		for range e.times {
			for range e.every - 1 {
				w.row(&order{line: line, words: plain.line, steps: plain.steps, round: plain.round, label: w.lineLabel(line), again: true})
			}
			w.steps(ws.steps, order{line: line, words: ws.line, label: w.lineLabel(line), round: ws.round, again: true})
			if len(w.piece.Rows) > maxRows {
				return
			}
		}
	}
	w.afterShape(line)
}
