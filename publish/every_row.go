package publish

import (
	"fmt"

	"rowproof/design"
	"rowproof/notation"
)

// maxRows is how many rows are written out at most. The longest blankets have
// a few hundred.
const maxRows = 20000

// A rowWriter writes out the lines of a design in order. When every row is
// wanted it keeps the words of each row, for the rows that repeat it.
type rowWriter struct {
	*edition
	every   bool
	rowOf   map[int]*design.Line // by row number: the line whose words it was worked from
	recent  []*design.Line       // the same, in the order worked
	last    int                  // number of the last row, 0 when not known
	written int
}

func newRowWriter(e *edition, every bool) *rowWriter {
	return &rowWriter{edition: e, every: every, rowOf: map[int]*design.Line{}}
}

// lines returns what is written for l: nothing, the line as it is, or a line
// for each of its rows.
func (w *rowWriter) lines(l *design.Line) ([]*outLine, error) {
	whole := w.lineAsIs(l)
	if whole == nil {
		return nil, nil
	}
	if !w.every || l.Tree == nil || l.Kind != design.Instruction {
		return []*outLine{whole}, nil
	}
	if l.Only != nil && w.size == allSizes {
		return nil, w.differ(l)
	}
	rows, err := w.rowNumbers(l)
	if err != nil {
		return nil, err
	}
	if out := w.writeOut(l, rows); out != nil {
		w.written += len(out)
		if w.written > maxRows {
			return nil, &SizeError{fmt.Sprintf("the pattern has more than %s rows; that is too many to write out one by one.", grouped(maxRows))}
		}
		return out, nil
	}
	w.remember(l, rows)
	return []*outLine{whole}, nil
}

// rowNumbers returns the rows a line stands for, nil when they are not told in
// numbers or there are more than can be written.
func (w *rowWriter) rowNumbers(l *design.Line) ([]int, error) {
	label := l.Tree.Label
	if label == nil {
		return nil, nil
	}
	if label.Next && len(label.Ranges) == 0 {
		n, ok := w.at(label.Count)
		if !ok {
			return nil, w.differ(l)
		}
		if w.last == 0 || n.N < 1 || n.N > maxRows {
			return nil, nil
		}
		return span(w.last+1, w.last+n.N), nil
	}
	var rows []int
	for _, r := range label.Ranges {
		from, okFrom := w.at(r.From)
		to, okTo := from, okFrom
		if r.To != nil {
			to, okTo = w.at(r.To)
		}
		if !okFrom || !okTo {
			return nil, w.differ(l)
		}
		if from.N < 1 || to.N < from.N || to.N-from.N > maxRows {
			return nil, nil
		}
		rows = append(rows, span(from.N, to.N)...)
	}
	return rows, nil
}

func span(from, to int) []int {
	rows := make([]int, 0, to-from+1)
	for n := from; n <= to; n++ {
		rows = append(rows, n)
	}
	return rows
}

// differ is the error for rows that are not the same in every size.
func (w *rowWriter) differ(l *design.Line) error {
	return &SizeError{fmt.Sprintf("the rows of line %d are not the same in every size, so they cannot be written out for all sizes at once. Choose one with --size, as in --size %s.", l.Number, w.firstSize())}
}

func (w *rowWriter) firstSize() string {
	if len(w.design.Sizes) > 0 {
		return w.design.Sizes[0]
	}
	return "M"
}

// remember keeps the words of the rows of l, for later rows to repeat.
func (w *rowWriter) remember(l *design.Line, rows []int) {
	words := l
	if _, again := w.repeats(l); again {
		words = nil
	}
	for _, n := range rows {
		w.rowOf[n] = words
		w.last = n
	}
	if l.Tree.Label != nil {
		for range max(1, len(rows)) {
			w.recent = append(w.recent, words)
		}
	}
	if l.Tree.Label == nil || len(rows) == 0 {
		w.last = w.lastOf(l)
	}
}

// lastOf returns the row number known after l: none after a row that has no
// number.
func (w *rowWriter) lastOf(l *design.Line) int {
	if l.Tree.Label != nil || hasAgain(w.orders(l)) {
		return 0
	}
	return w.last
}

func hasAgain(steps []notation.Step) bool {
	for _, s := range steps {
		if _, ok := s.(*notation.Again); ok {
			return true
		}
	}
	return false
}

// repeats returns the Again a line consists of, if it does nothing else.
func (w *rowWriter) repeats(l *design.Line) (*notation.Again, bool) {
	var again *notation.Again
	for _, s := range w.orders(l) {
		switch n := s.(type) {
		case *notation.Again:
			if again != nil {
				return nil, true
			}
			again = n
		case *notation.Remark:
		default:
			if again != nil {
				return nil, true
			}
		}
	}
	return again, again != nil
}

// writeOut returns a line for each row of l, or nil when l is one row in its
// own words or cannot be written out.
func (w *rowWriter) writeOut(l *design.Line, rows []int) []*outLine {
	again, isAgain := w.repeats(l)
	switch {
	case isAgain && again == nil:
		return nil
	case isAgain:
		return w.repeated(l, again, rows)
	case len(rows) < 2 || !consecutive(rows):
		return nil
	}
	words := make([]*design.Line, len(rows))
	for i := range words {
		words[i] = l
	}
	return w.rowsOf(l, rows, words)
}

func consecutive(rows []int) bool { return rows[len(rows)-1]-rows[0] == len(rows)-1 }

// repeated writes out a line that repeats other rows.
func (w *rowWriter) repeated(l *design.Line, again *notation.Again, rows []int) []*outLine {
	if again.Until != nil || again.Of != "" || again.Pattern || again.Even || again.Mirrored ||
		again.Name != "" || again.Ending != nil || l.Tree.Label != nil && len(rows) == 0 {
		return nil
	}
	set := w.repeatedSet(again)
	if len(set) == 0 {
		return nil
	}
	if len(rows) == 0 {
		times, ok := w.timesOf(again.Times)
		if !ok || w.last == 0 || times*len(set) > maxRows {
			return nil
		}
		rows = span(w.last+1, w.last+times*len(set))
		if times == 0 {
			return nil
		}
	}
	if !consecutive(rows) {
		return nil
	}
	words := make([]*design.Line, len(rows))
	for i := range rows {
		words[i] = set[i%len(set)]
	}
	return w.rowsOf(l, rows, words)
}

// repeatedSet returns the words of the rows that are repeated, nil when one of
// them is not known.
func (w *rowWriter) repeatedSet(again *notation.Again) []*design.Line {
	var set []*design.Line
	if again.Last != nil {
		n, ok := w.at(again.Last)
		if !ok || n.N < 1 || n.N > len(w.recent) {
			return nil
		}
		set = append(set, w.recent[len(w.recent)-n.N:]...)
	}
	for _, r := range again.Rows {
		from, okFrom := w.at(r.From)
		to, okTo := from, okFrom
		if r.To != nil {
			to, okTo = w.at(r.To)
		}
		if !okFrom || !okTo || to.N < from.N || to.N-from.N > maxRows {
			return nil
		}
		for n := from.N; n <= to.N; n++ {
			set = append(set, w.rowOf[n])
		}
	}
	for _, l := range set {
		if l == nil {
			return nil
		}
	}
	return set
}

// timesOf returns how often the rows are worked again.
func (w *rowWriter) timesOf(t *notation.Times) (int, bool) {
	if t == nil {
		return 1, true
	}
	if t.N == nil || t.To != nil || t.Fit {
		return 0, false
	}
	n, ok := w.at(t.N)
	return n.N, ok && !n.None && n.N >= 0 && n.N <= maxRows
}
