package fabric

import (
	"slices"
	"strings"

	"rowproof/design"
	"rowproof/notation"
)

// lineOf works one line of the document.
func (w *worker) lineOf(line *design.Line) {
	if line.Tree == nil {
		return
	}
	if line.Kind != design.Instruction && line.Kind != design.Foundation {
		w.checkpoint(line)
		return
	}
	if line.Only != nil && w.size < len(line.Only) && !line.Only[w.size] {
		return
	}
	changed := line.Section != w.section
	if w.starts(line, changed) {
		w.flush()
		w.startPiece(line)
	}
	w.enter(line)
	if changed && w.piece != nil && line.Section != nil {
		w.begun = false
	}
	if line.Tree.Label != nil {
		w.labelled(line)
		return
	}
	w.unlabelled(line)
}

// checkpoint holds the last row against a count that stands by itself: "You
// will have 61 (63, 65) sts."
func (w *worker) checkpoint(line *design.Line) bool {
	t := line.Tree
	if len(t.Counts) == 0 || t.Label != nil || w.lastRow == nil || w.held || line.Section == nil || line.Section.Kind != design.PieceSection {
		return false
	}
	if line.Only != nil && w.size < len(line.Only) && !line.Only[w.size] {
		return false
	}
	for _, s := range t.Steps {
		if _, ok := s.(*notation.Remark); !ok {
			return false
		}
	}
	for _, f := range w.compare(w.lastRow.Body, nil, &order{line: line, counts: t.Counts}) {
		f.Row = w.lastRow.Label
		w.fault(f)
		break
	}
	return true
}

// starts tells whether a line begins a new piece.
func (w *worker) starts(line *design.Line, changed bool) bool {
	if w.piece == nil {
		return true
	}
	t := line.Tree
	if len(w.piece.Rows) == 0 && w.next == nil {
		return ownStart(t.Steps) || (changed && t.Label != nil)
	}
	afresh := changed || w.fastened
	if line.Pattern != "" {
		return changed
	}
	if t.Label != nil {
		first, ok := w.firstNumber(t.Label)
		return ok && first <= 1 && len(w.piece.Rows) > 0 && afresh && ownStart(t.Steps)
	}
	return afresh && ownStart(t.Steps)
}

// ownStart tells whether steps make their own foundation: a chain, a ring, or
// foundation stitches.
func ownStart(steps []notation.Step) bool {
	chain := false
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Chains:
			chain = true
		case *notation.MagicRing:
			return true
		case *notation.Join:
			if chain {
				return true
			}
		case *notation.Work:
			for _, p := range s.Places {
				if p.Which == notation.Ring || p.What == notation.ARing {
					return true
				}
				if chain && p.Which == notation.Nth && p.What == notation.Chain && p.Of == nil {
					return true
				}
			}
			return foundationStitch(s)
		case *notation.Group:
			return slices.ContainsFunc(s.In, func(p *notation.Place) bool { return p.Which == notation.Ring || p.What == notation.ARing })
		case *notation.JoinYarn, *notation.Again, *notation.Star, *notation.Skip, *notation.Evenly:
			return false
		}
	}
	return chain
}

func foundationStitch(s *notation.Work) bool {
	return len(s.Places) == 0 && s.Stitch.Text != "" && (s.Stitch.Text[0] == 'f' || s.Stitch.Text[0] == 'F')
}

// numbers lists the row numbers of a label in this size.
func (w *worker) numbers(line *design.Line) (list []int, ok bool) {
	l := line.Tree.Label
	for _, rg := range l.Ranges {
		from, to := w.near(rg.From), w.near(rg.To)
		if rg.To == nil {
			to = from
		}
		if from < 0 || to < 0 {
			continue // not for this size
		}
		if to < from {
			if to < from-1 {
				w.fault(Fault{Kind: BackwardRange, Line: line, Span: l.Span, Row: w.labelText(l, from), A: from, B: to})
				return nil, false
			}
			continue
		}
		if to-from > maxRows || len(list) > maxRows {
			w.fault(Fault{Kind: TooLong, Line: line, Span: l.Span, Row: w.labelText(l, from), A: to - from})
			w.outcome(line, NotWorked)
			return nil, false
		}
		for n := from; n <= to; n++ {
			list = append(list, n)
		}
	}
	return list, true
}

// near is a number's value in this size; when its list does not fit the sizes,
// the nearest entry it has; -1 when the line is not for this size.
func (w *worker) near(n *notation.Number) int {
	if n == nil {
		return 1
	}
	if v, ok := w.d.Value(n, w.size); ok {
		return v
	}
	if len(n.Values) == 0 {
		return -1
	}
	v := n.Values[min(w.size, len(n.Values)-1)]
	if v.None {
		return -1
	}
	return v.N
}

func (w *worker) firstNumber(l *notation.Label) (int, bool) {
	if len(l.Ranges) == 0 {
		return 0, false
	}
	n := w.near(l.Ranges[0].From)
	return n, n >= 0
}

// labelText names a row as the pattern does.
func (w *worker) labelText(l *notation.Label, n int) string {
	if text := w.ordinalLabel(l, n); text != "" {
		return text
	}
	word := "Row"
	if l.Is == notation.Round || (l.Is == notation.UnknownRow && w.next != nil && w.next.closed) {
		word = "Rnd"
	}
	if n > 0 || len(l.Ranges) > 0 {
		return word + " " + itoa(n)
	}
	if l.Name != "" {
		return capital(l.Name) + " " + lower(word)
	}
	return "Next " + lower(word)
}

// ordinalLabel names a row as "3rd row" where the pattern does; "" elsewhere.
func (w *worker) ordinalLabel(l *notation.Label, n int) string {
	text := w.d.Source[l.Span.Start:min(l.Span.End, len(w.d.Source))]
	i := 0
	for i < len(text) && text[i] >= '0' && text[i] <= '9' {
		i++
	}
	if i == 0 || i+2 > len(text) || !strings.Contains("st nd rd th", strings.ToLower(text[i:i+2])) {
		return ""
	}
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		end = map[int]string{1: "st", 2: "nd", 3: "rd"}[n%10]
		if end == "" {
			end = "th"
		}
	}
	word := "row"
	if l.Is == notation.Round {
		word = "rnd"
	}
	return itoa(n) + end + " " + word
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-32) + s[1:]
}

func lower(s string) string {
	if s == "Row" {
		return "row"
	}
	return "rnd"
}

// labelled works a line with a label, as many rows as the label says.
func (w *worker) labelled(line *design.Line) {
	l := line.Tree.Label
	if len(l.Ranges) == 0 {
		w.unnumbered(line)
		return
	}
	list, ok := w.numbers(line)
	if !ok {
		return
	}
	if list = w.once(line, list); len(list) == 0 {
		return
	}
	list = w.sequence(line, list)
	if l.AndAll != "" {
		w.andAll = append(w.andAll, &words{line: line, steps: line.Tree.Steps, label: l.AndAll, round: l.Is == notation.Round})
	}
	run := 1
	for run < len(list) && list[run] == list[run-1]+1 {
		run++
	}
	for _, n := range list[run:] { // "Rows 4 and 6": the later ones wait their turn
		w.later[n] = &order{line: line, words: line, steps: line.Tree.Steps, number: n, round: w.isRound(l), label: w.labelText(l, n)}
	}
	w.run1(line, list[:run])
	w.number, w.loose, w.begun = list[run-1], 0, true
	if ws := w.wordsOf[w.number]; w.meant > 0 && ws != nil && w.wordsOf[w.meant] == nil {
		w.wordsOf[w.meant] = ws // the row may be referred to by the number it should have
	}
	w.catchUp()
}

// run1 works a line under consecutive numbers.
func (w *worker) run1(line *design.Line, list []int) {
	if orders := agains(line.Tree.Steps); orders != nil {
		w.againAll(line, orders, list)
		return
	}
	if s := shapeStep(line.Tree.Steps); s != nil {
		w.shape(line, s, list)
		return
	}
	l := line.Tree.Label
	for i, n := range list {
		o := order{line: line, words: line, label: w.labelText(l, n), number: n, round: w.isRound(l)}
		if i == 0 {
			o.side, o.sideAt = l.Side, l.Span
		}
		if i == len(list)-1 {
			o.counts = line.Tree.Counts
		}
		w.steps(line.Tree.Steps, o)
	}
}

func (w *worker) isRound(l *notation.Label) bool {
	return l.Is == notation.Round || (l.Is == notation.UnknownRow && (w.conv.spiral || w.next == nil || w.next.closed || w.next.ring))
}

// unnumbered works "Next row", "Next 3 rows", "Dec row".
func (w *worker) unnumbered(line *design.Line) {
	l := line.Tree.Label
	n := 1
	if l.Count != nil {
		v, ok := w.d.Value(l.Count, w.size)
		if !ok || v < 1 || v > maxRows {
			return
		}
		n = v
	}
	list, rows := make([]int, n), len(w.piece.Rows)
	if orders := agains(line.Tree.Steps); orders != nil {
		w.againAll(line, orders, list)
	} else if s := shapeStep(line.Tree.Steps); s != nil {
		w.shape(line, s, list)
	} else {
		for i := range list {
			o := order{line: line, words: line, label: w.labelText(l, 0), round: w.isRound(l)}
			if i == 0 {
				o.side, o.sideAt = l.Side, l.Span
			}
			if i == n-1 {
				o.counts = line.Tree.Counts
			}
			w.steps(line.Tree.Steps, o)
		}
	}
	if made := len(w.piece.Rows) - rows; made > 0 {
		n = made // the repeats may not fill the label, which has been told
	}
	w.loose += n
}

// unlabelled works a line without a label: a foundation, a row-less order, or
// several of them.
func (w *worker) unlabelled(line *design.Line) {
	t := line.Tree
	if w.checkpoint(line) {
		w.outcome(line, Done)
		return
	}
	if orders := agains(t.Steps); orders != nil {
		rows := len(w.piece.Rows)
		w.state(line, t.Steps)
		w.againAll(line, orders, nil)
		w.loose += len(w.piece.Rows) - rows
		return
	}
	if s := shapeStep(t.Steps); s != nil {
		rows := len(w.piece.Rows)
		w.shape(line, s, nil)
		w.loose += len(w.piece.Rows) - rows
		return
	}
	if w.foundationLine(line) {
		return
	}
	o := order{line: line, words: line, counts: t.Counts, label: "", round: w.next != nil && w.next.closed}
	rows := len(w.piece.Rows)
	w.steps(t.Steps, o)
	w.loose += len(w.piece.Rows) - rows
}

// foundationLine makes the foundation a line orders, if that is what it does.
func (w *worker) foundationLine(line *design.Line) bool {
	if w.next != nil {
		return false
	}
	var chain *notation.Chains
	ring, joined := false, false
	for _, s := range line.Tree.Steps {
		switch s := s.(type) {
		case *notation.Chains:
			if chain != nil {
				return false
			}
			chain = s
		case *notation.Join:
			joined, ring = !s.Not, s.Ring
		case *notation.MagicRing:
			w.next = &edge{body: w.keep(&Body{}), ring: true, closed: true}
			w.ready = true
		case *notation.Work, *notation.Group, *notation.Star, *notation.Evenly, *notation.Again, *notation.JoinYarn:
			return false
		}
	}
	if chain == nil {
		if w.next != nil {
			w.outcome(line, Done)
		}
		return w.next != nil
	}
	n, ok := w.d.Value(chain.N, w.size)
	if !ok {
		if n = w.near(chain.N); n < 0 {
			return true
		}
	}
	w.outcome(line, Done)
	if n > maxRow {
		w.fault(Fault{Kind: TooLong, Line: line, Span: chain.Span, A: n})
		w.outcome(line, NotWorked)
		n = 0
	}
	body := w.keep(foundationChain(n))
	w.foundation = body
	w.piece.Start = n
	w.fab.Stitches += n
	w.next = &edge{body: body, to: n, chains: n, ring: ring, closed: joined}
	return true
}

// steps works a list of steps as one row, or as several where the work is
// turned or the yarn joined again in the middle.
func (w *worker) steps(steps []notation.Step, o order) {
	parts := split(steps)
	for i, part := range parts {
		one := o
		one.steps = part
		one.partial = i < len(parts)-1 && makesMore(parts[i+1:])
		if one.partial {
			one.counts = nil
		}
		if w.state(o.line, part); !makes(part) {
			continue
		}
		w.row(&one)
	}
}

func makesMore(parts [][]notation.Step) bool { return slices.ContainsFunc(parts, makes) }

// split cuts steps where a row ends before the line does.
func split(steps []notation.Step) [][]notation.Step {
	var parts [][]notation.Step
	start, making, ended := 0, false, false
	for i, s := range steps {
		switch s := s.(type) {
		case *notation.Turn:
			ended = ended || (making && !s.Not)
		case *notation.FastenOff:
			ended = ended || !s.Not
		case *notation.JoinYarn:
			if i > start && (making || ended) {
				parts = append(parts, steps[start:i])
				start, making, ended = i, false, false
			}
		case *notation.Work, *notation.Group, *notation.Star, *notation.Skip, *notation.Evenly:
			if ended { // the row is done: this begins another
				cut := i
				for cut > start && opens(steps[cut-1]) {
					cut--
				}
				parts = append(parts, steps[start:cut])
				start, ended = cut, false
			}
			if _, only := s.(*notation.Skip); !only {
				making = true
			}
		}
	}
	if start < len(steps) {
		parts = append(parts, steps[start:])
	}
	return parts
}

// opens tells whether a step before the first stitch belongs to the row to
// come: its turning chain.
func opens(s notation.Step) bool {
	switch s.(type) {
	case *notation.Chains, *notation.Rule, *notation.OtherSide, *notation.Color:
		return true
	}
	return false
}

// makes tells whether steps make a stitch or use a place.
func makes(steps []notation.Step) bool {
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Work, *notation.Group, *notation.Star, *notation.Evenly, *notation.Orphan:
			return true
		case *notation.JoinYarn:
			if s.Standing {
				return true
			}
		}
	}
	return false
}

// state takes what a line says besides making stitches: joining and fastening
// off yarn, turning, chains for the row to come.
func (w *worker) state(line *design.Line, steps []notation.Step) {
	making := makes(steps) || agains(steps) != nil
	skipped := []*notation.Skip{}
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.JoinYarn:
			w.joinYarn(line, s, skipped)
		case *notation.Skip:
			if !making || hasJoin(steps) {
				skipped = append(skipped, s)
			}
		case *notation.FastenOff:
			if !making {
				w.fastened = !s.Not
			}
		case *notation.Turn:
			if !making && !s.Not {
				w.turned, w.flipNext = true, true
			}
		case *notation.Chains:
			if !making && w.next != nil {
				w.pending = s
			}
		case *notation.MagicRing:
			if !making && !s.Close && w.next == nil {
				w.next = &edge{body: w.keep(&Body{}), ring: true, closed: true}
				w.ready = true
			}
		}
	}
	if !making {
		if understood(steps) {
			w.outcome(line, Done)
		} else {
			w.outcome(line, NotWorked)
		}
	}
}

func understood(steps []notation.Step) bool {
	for _, s := range steps {
		if _, ok := s.(*notation.Unknown); ok {
			return false
		}
	}
	return true
}

func hasJoin(steps []notation.Step) bool {
	for _, s := range steps {
		if _, ok := s.(*notation.JoinYarn); ok {
			return true
		}
	}
	return false
}

// joinYarn starts yarn afresh: on the side left open, or on the whole edge.
func (w *worker) joinYarn(line *design.Line, s *notation.JoinYarn, skipped []*notation.Skip) {
	w.rejoined, w.fastened = true, false
	op := w.takeOpening(line, s)
	if op == nil {
		w.joinEdge(s)
		return
	}
	e := *op.edge
	side := op.side
	if s.Side != notation.NoSide && side != notation.NoSide && s.Side != side {
		e = fromOtherEnd(e)
		side = s.Side
	} else if s.FromEnd {
		e = fromOtherEnd(e)
	}
	w.next, w.claim, w.ready = skipOn(w, &e, skipped), nil, true
	if op.claim != nil {
		c := *op.claim
		if e.reversed != op.edge.reversed {
			c = fromOtherEnd(c)
		}
		w.claim = skipOn(w, &c, skipped)
	}
	w.lastRow, w.turned, w.flipNext, w.pending, w.held = op.row, false, false, nil, false
	w.facing, w.otherFace = side, false
	if op.split != nil {
		w.split = op.split
		op.split.Sides = append(op.split.Sides, nil)
		op.split.Names = append(op.split.Names, w.pieceName())
	}
	w.outcome(line, Done)
}

// fromOtherEnd lays the free places of an edge from their other end.
func fromOtherEnd(e edge) edge {
	n := len(e.body.Top)
	e.reversed = !e.reversed
	e.from, e.to = n-e.to, n-e.from
	return e
}

// skipOn passes over the places that stand between the sides.
func skipOn(w *worker, e *edge, skipped []*notation.Skip) *edge {
	items := e.items()
	for _, s := range skipped {
		for _, p := range s.Places {
			n, ok := w.d.Value(p.N, w.size)
			if p.N == nil {
				n, ok = 1, true
			}
			for ; ok && n > 0 && e.from < e.to; e.from++ {
				if items[e.from].is(Counts) {
					n--
				}
			}
		}
	}
	return e
}

// takeOpening picks the side left open that a joining speaks of: the one of
// the row it names, or the last.
func (w *worker) takeOpening(line *design.Line, s *notation.JoinYarn) *opening {
	if s.Place != nil && (s.Place.What == notation.RowEnd || s.Place.Which == notation.Edge || s.Place.What == notation.Foundation) {
		return nil
	}
	if len(w.open) == 0 {
		return nil
	}
	pick := len(w.open) - 1
	if n := w.near(s.Row); s.Row != nil && n > 0 {
		for i := pick; i >= 0; i-- {
			if op := w.open[i]; op.row != nil && op.row.Number == n {
				pick = i
				break
			}
		}
		if op := w.open[pick]; op.row != nil && op.row.Number != 0 && op.row.Number != n {
			w.fault(Fault{Kind: NoneLeft, Line: line, Span: s.Row.Span, A: n, B: op.row.Number})
		}
	}
	op := w.open[pick]
	w.open = append(w.open[:pick], w.open[pick+1:]...)
	for n := op.num; n > 0 && w.wordsOf[n] != nil; n++ { // this side has rows of its own
		delete(w.wordsOf, n)
	}
	return op
}

// joinEdge joins yarn to a whole edge.
func (w *worker) joinEdge(s *notation.JoinYarn) {
	claim := w.claim
	w.claim, w.pending, w.held, w.split = nil, nil, false, nil
	p := s.Place
	switch {
	case p != nil && (p.What == notation.RowEnd || p.Which == notation.Edge):
		w.next = &edge{body: w.keep(rowEnds(w.rowEnds())), to: w.rowEnds()}
	case p != nil && p.What == notation.Foundation && w.foundation != nil:
		w.next = &edge{body: w.foundation, to: len(w.foundation.Top)}
	case w.next == nil || w.piece == nil || (p != nil && elsewhere(p)) || len(w.piece.Splits) > 0:
		w.next = &edge{body: &Body{}, dark: true}
	default:
		e := *w.next
		if s.Side != notation.NoSide && w.facing != notation.NoSide && !e.closed {
			e.reversed = s.Side != w.facing
		} else if !e.closed {
			e.reversed = !s.FromEnd
		}
		w.next = &e
		if claim != nil {
			c := *claim
			c.reversed = e.reversed
			w.claim = &c
		}
	}
	w.ready, w.turned, w.flipNext = true, false, false
	if s.Side != notation.NoSide {
		w.facing = s.Side
	} else {
		w.facing = notation.NoSide
	}
	w.otherFace = false
}

// elsewhere tells whether a place is not on the last row.
func elsewhere(p *notation.Place) bool { return p.Which == notation.Any || p.What == notation.Corner }

func shapeStep(steps []notation.Step) *notation.Shape {
	for _, s := range steps {
		if a, ok := s.(*notation.Shape); ok {
			return a
		}
	}
	return nil
}
