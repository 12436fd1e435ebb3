package publish

import (
	"fmt"
	"maps"
	"slices"

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

	// Rows named ahead, "Rows 4 and 6", wait for their turn; lines such as
	// "Row 2 and all WS rows" stand for the rows that nothing else tells.
	later   map[int]*design.Line // by row number: the line whose words it has
	fillers []filler
	section *design.Section
}

// A filler is a line that speaks of every other row from one on.
type filler struct {
	line *design.Line
	row  int
}

func newRowWriter(e *edition, every bool) *rowWriter {
	return &rowWriter{edition: e, every: every, rowOf: map[int]*design.Line{}, later: map[int]*design.Line{}}
}

// lines returns what is written for l: nothing, the line as it is, or a line
// for each of its rows, with the rows that other lines put before and after it.
func (w *rowWriter) lines(l *design.Line) ([]*outLine, error) {
	if !w.every {
		return w.own(l)
	}
	var out []*outLine
	if l.Section != w.section {
		out = w.ahead(true)
		w.section, w.fillers = l.Section, nil
	}
	if w.applies(l) {
		out = append(out, w.filledIn(l)...)
	}
	own, err := w.own(l)
	if err != nil {
		return nil, err
	}
	out = append(append(out, own...), w.ahead(false)...)
	if w.written > maxRows {
		return nil, tooManyRows()
	}
	return out, nil
}

func tooManyRows() error {
	return &SizeError{fmt.Sprintf("the pattern has more than %s rows; that is too many to write out one by one.", grouped(maxRows))}
}

// ahead writes the rows named ahead whose turn has come, or all that are left.
func (w *rowWriter) ahead(all bool) []*outLine {
	var out []*outLine
	if all {
		for _, n := range slices.Sorted(maps.Keys(w.later)) {
			out = append(out, w.oneRow(w.later[n], n)...)
		}
		clear(w.later)
		return out
	}
	for words := w.later[w.last+1]; words != nil; words = w.later[w.last+1] {
		delete(w.later, w.last+1)
		out = append(out, w.oneRow(words, w.last+1)...)
	}
	return out
}

// filledIn writes the rows before l that only a line such as "Row 2 and all WS
// rows" tells.
func (w *rowWriter) filledIn(l *design.Line) []*outLine {
	if l.Tree == nil || l.Tree.Label == nil || len(l.Tree.Label.Ranges) == 0 || w.last == 0 {
		return nil
	}
	next, ok := w.at(l.Tree.Label.Ranges[0].From)
	var out []*outLine
	for ok && next.N > w.last+1 {
		i := slices.IndexFunc(w.fillers, func(f filler) bool { return (w.last+1-f.row)%2 == 0 })
		if i < 0 {
			break
		}
		out = append(append(out, w.oneRow(w.fillers[i].line, w.last+1)...), w.ahead(false)...)
	}
	return out
}

// oneRow writes a row in the words of a line that told it before. What that
// line states was said of its own row.
func (w *rowWriter) oneRow(words *design.Line, n int) []*outLine {
	out := w.rowsOf(words, []int{n}, []*design.Line{words}, false)
	w.written += len(out)
	w.last = n
	return out
}

// own returns what is written for l itself.
func (w *rowWriter) own(l *design.Line) ([]*outLine, error) {
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
			return nil, tooManyRows()
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

// repeats returns the orders to work rows again that a line consists of; again
// tells whether it has any, though it may do something else too.
func (w *rowWriter) repeats(l *design.Line) (orders []*notation.Again, again bool) {
	other := false
	for _, s := range w.orders(l) {
		switch s := s.(type) {
		case *notation.Again:
			orders = append(orders, s)
		case *notation.Remark:
		default:
			other = true
		}
	}
	if again = len(orders) > 0; other {
		orders = nil
	}
	return orders, again
}

// writeOut returns a line for each row of l, or nil when l is one row in its
// own words or cannot be written out.
func (w *rowWriter) writeOut(l *design.Line, rows []int) []*outLine {
	orders, again := w.repeats(l)
	switch {
	case again && orders == nil:
		return nil
	case again:
		return w.repeated(l, orders, rows)
	case len(rows) == 1 && l.Tree.Label.AndAll != "":
		w.fillers = append(w.fillers, filler{l, rows[0]})
		return w.rowsOf(l, rows, []*design.Line{l}, true)
	case len(rows) < 2:
		return nil
	}
	words := make([]*design.Line, len(rows))
	for i := range words {
		words[i] = l
	}
	return w.inTurn(l, rows, words)
}

// inTurn writes the rows of a line that follow one another, and keeps the others
// until their turn comes.
func (w *rowWriter) inTurn(l *design.Line, rows []int, words []*design.Line) []*outLine {
	run := 1
	for run < len(rows) && rows[run] == rows[run-1]+1 {
		run++
	}
	out := w.rowsOf(l, rows[:run], words[:run], true)
	if out != nil {
		for i, n := range rows[run:] {
			w.later[n] = words[run+i]
		}
	}
	return out
}

// repeated writes out a line that repeats other rows.
func (w *rowWriter) repeated(l *design.Line, orders []*notation.Again, rows []int) []*outLine {
	if l.Tree.Label != nil && len(rows) == 0 {
		return nil
	}
	var words []*design.Line
	for i, again := range orders {
		if again.Until != nil || again.Of != "" || again.Pattern || again.Even || again.Mirrored || again.Name != "" || again.Ending != nil {
			return nil
		}
		recent := w.recent
		if len(words) > 0 {
			recent = append(slices.Clip(recent), words...)
		}
		set := w.repeatedSet(again, recent)
		if len(set) == 0 {
			return nil
		}
		times, ok := w.timesOf(again.Times)
		n := times * len(set)
		if len(rows) > 0 && i == len(orders)-1 { // the label tells how many
			n, ok = len(rows)-len(words), true
		}
		if !ok || n < 0 || n > maxRows {
			return nil
		}
		for k := range n {
			words = append(words, set[k%len(set)])
		}
	}
	if len(rows) == 0 {
		if w.last == 0 || len(words) == 0 {
			return nil
		}
		rows = span(w.last+1, w.last+len(words))
	}
	return w.inTurn(l, rows, words)
}

// repeatedSet returns the words of the rows that are repeated, nil when one of
// them is not known. recent are those of the rows before, in order.
func (w *rowWriter) repeatedSet(again *notation.Again, recent []*design.Line) []*design.Line {
	var set []*design.Line
	if again.Last != nil {
		n, ok := w.at(again.Last)
		if !ok || n.N < 1 || n.N > len(recent) {
			return nil
		}
		set = append(set, recent[len(recent)-n.N:]...)
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
