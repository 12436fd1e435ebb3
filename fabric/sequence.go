package fabric

import (
	"maps"
	"slices"

	"rowproof/design"
	"rowproof/notation"
)

// The order in which numbered rows are worked: each label follows on from the
// rows before it, rows named ahead ("Rows 4 and 6") wait their turn, and lines
// such as "Row 2 and all WS rows" fill in where nothing else is written.

// sequence checks that the numbers of a label follow on from the row before,
// and returns the numbers to go by. After a wrong one the next label may follow
// on from the number it has or from the one it should have: one slip is
// reported once.
func (w *worker) sequence(line *design.Line, list []int) []int {
	n, l := list[0], line.Tree.Label
	expect := w.number + 1
	for n > w.number+1 && w.fillIn(n) {
		expect = w.number + 1
	}
	meant, any := w.meant, w.anyLabel
	w.meant, w.anyLabel = 0, false
	rejoined := w.rejoined
	w.rejoined = false
	switch {
	case n == expect || n == expect+w.loose:
	case any || meant > 0 && n == meant+1:
	case !w.begun && (n <= 1 || slices.Contains(w.restarts, n) || len(w.wordsOf) == 0 && (w.next == nil || w.next.dark)):
	case !w.begun && n == w.number+1+w.loose:
	case rejoined && (n <= 1 || slices.Contains(w.restarts, n)):
	default:
		expect += w.loose
		w.fault(Fault{Kind: LabelGap, Line: line, Span: l.Span, Row: w.labelText(l, n), A: n, B: expect, C: w.number, D: w.loose})
		w.mislabelled = true
		if last := list[len(list)-1]; len(l.Ranges) == 1 && len(list) > 1 && expect <= last && last-expect < len(list)+3 {
			return countFrom(expect, last) // the range begins with the wrong number
		}
		w.meant = expect + len(list) - 1
	}
	return list
}

// once drops the numbers of a label that an earlier line has named already.
func (w *worker) once(line *design.Line, list []int) []int {
	l := line.Tree.Label
	twice := func(n int) bool { return w.later[n] != nil }
	i := slices.IndexFunc(list, twice)
	if len(w.later) == 0 || i < 0 {
		return list
	}
	n := list[i]
	w.fault(Fault{Kind: LabelTwice, Line: line, Span: l.Span, Row: w.labelText(l, n), A: n, Text: placeOf(w.later[n].line)})
	w.mislabelled = true
	return slices.DeleteFunc(list, twice)
}

// placeOf names a line to the reader: "line 12".
func placeOf(line *design.Line) string { return "line " + itoa(line.Number) }

// countFrom lists the numbers from a to b.
func countFrom(a, b int) []int {
	list := make([]int, 0, b-a+1)
	for n := a; n <= b; n++ {
		list = append(list, n)
	}
	return list
}

// fillIn works the next row from a line such as "Row 2 and all WS rows".
func (w *worker) fillIn(n int) bool {
	next := w.number + 1
	ws := w.filler(next)
	if ws == nil || next >= n {
		return false
	}
	o := order{line: ws.line, words: ws.line, number: next, round: ws.round, again: true, label: w.labelText(ws.line.Tree.Label, next)}
	if orders := agains(ws.steps); orders != nil {
		w.againAll(ws.line, orders, []int{next})
	} else {
		w.steps(ws.steps, o)
	}
	w.number = next
	w.catchUp()
	return true
}

// filler is the line that speaks of Row next among others: "Row 2 and all WS
// rows"; nil when there is none.
func (w *worker) filler(next int) *words {
	side := flip(w.facing)
	for _, ws := range slices.Backward(w.andAll) {
		if ws.label == "even" && next%2 == 0 || ws.label == "odd" && next%2 == 1 ||
			ws.label == "ws" && (side == notation.WrongSide || side == notation.NoSide) ||
			ws.label == "rs" && (side == notation.RightSide || side == notation.NoSide) {
			return ws
		}
	}
	return nil
}

// catchUp works the rows named ahead whose turn has come.
func (w *worker) catchUp() {
	for {
		o, ok := w.later[w.number+1]
		if !ok {
			return
		}
		delete(w.later, w.number+1)
		w.number++
		if orders := agains(o.steps); orders != nil {
			w.againAll(o.line, orders, []int{o.number})
			continue
		}
		w.steps(o.steps, *o)
	}
}

// flush works what was named ahead when the piece ends.
func (w *worker) flush() {
	if w.piece == nil {
		return
	}
	for _, n := range slices.Sorted(maps.Keys(w.later)) {
		o := w.later[n]
		if o == nil {
			continue
		}
		if expect := w.number + 1 + w.loose; n > expect && !w.mislabelled {
			w.fault(Fault{Kind: LabelGap, Line: o.line, Span: o.line.Tree.Label.Span, Row: o.label, A: n, B: expect, C: w.number, D: w.loose})
			w.mislabelled = true
		}
		w.number = n - 1
		w.catchUp()
	}
}
