package fabric

import (
	"rowproof/design"
	"rowproof/notation"
)

// agains lists the orders of a line to work whole rows again: "Rep Rows 2 and 3
// 4 times, then rep Row 2 once more" has two.
func agains(steps []notation.Step) []*notation.Again {
	var list []*notation.Again
	for _, s := range steps {
		switch s := s.(type) {
		case *notation.Again:
			list = append(list, s)
		case *notation.Group: // "[Rep Row 2] 0 (1, 2) times"
			if len(s.Body) != 1 || s.Times == nil || s.Times.N == nil {
				continue
			}
			if a, ok := s.Body[0].(*notation.Again); ok && a.Times == nil {
				again := *a
				again.Times = s.Times
				list = append(list, &again)
			}
		}
	}
	return list
}

// againAll works the orders of a line one after the other. Each takes the rows
// it asks for of those the label has, the last what is left.
func (w *worker) againAll(line *design.Line, orders []*notation.Again, list []int) {
	last := len(orders) - 1
	if len(list) > 0 && last > 0 {
		list = w.fill(line, orders, list)
	}
	for i, a := range orders {
		part := list
		if n, ok := w.rowsOf(a); ok && i < last {
			n = min(n, len(list))
			part, list = list[:n], list[n:]
			if n == 0 && list != nil {
				continue
			}
		} else {
			list = nil
		}
		w.again(line, a, part, i == last)
	}
}

// fill holds the rows that several orders make together against those of the
// label, and returns numbers for as many as they make.
func (w *worker) fill(line *design.Line, orders []*notation.Again, list []int) []int {
	total := 0
	for _, a := range orders {
		n, ok := w.rowsOf(a)
		if !ok {
			return list
		}
		total += n
	}
	if total == len(list) || total > maxRows {
		return list
	}
	w.fault(Fault{Kind: RangeTimes, Line: line, Span: line.Tree.Label.Span, Row: w.lineLabel(line), A: len(list), C: total})
	for step := min(1, list[0]); len(list) < total; { // rows without a number are zeros
		list = append(list, list[len(list)-1]+step)
	}
	return list[:total]
}

// rowsOf is how many rows an order makes by itself, when its words tell.
func (w *worker) rowsOf(a *notation.Again) (n int, ok bool) {
	switch {
	case a.RowCount != nil:
		n = w.near(a.RowCount)
		return max(0, min(n, maxRows)), true
	case a.Until != nil || a.EndRow != nil || a.Mirrored || a.Of != "":
		return 0, false
	case a.Last != nil:
		n = max(0, w.near(a.Last)) // a dash is none in this size
	case len(a.Rows) > 0:
		for _, rg := range a.Rows {
			from, to := w.near(rg.From), w.near(rg.From)
			if rg.To != nil {
				to = w.near(rg.To)
			}
			if from < 0 || to < from || to-from > maxRows {
				return 0, false
			}
			n += to - from + 1
		}
	default:
		n = 1
	}
	if a.Times != nil && a.Times.N != nil {
		times := max(0, w.near(a.Times.N))
		if times > maxRows || n > maxRows {
			return 0, false
		}
		n *= times
	}
	return min(n, maxRows), true
}
