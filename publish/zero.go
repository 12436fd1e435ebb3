package publish

import (
	"strings"

	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// A pruning takes out of one line what does nothing in the size being written:
// the steps that a list of sizes gives a 0, "sc in last 0 (3) sts".
type pruning struct {
	*edition
	line *design.Line
	cut  edits
}

// prune returns what is to be left out of l. none is set when nothing is left
// that orders anything, as of "Rep last row 0 (1, 2) more times."
func (e *edition) prune(l *design.Line) (cut edits, none bool) {
	if e.size == allSizes || l.Tree == nil || l.Kind != design.Instruction && l.Kind != design.Foundation {
		return nil, false
	}
	p := &pruning{edition: e, line: l}
	if p.noRow() || p.noOrder() {
		return nil, true
	}
	p.steps(l.Tree.Steps, labelEnd(l), l.End, true)
	p.counts()
	return p.cut, false
}

// zero tells whether a list of sizes, or a live number, has a 0 or a dash in
// the size being written. A 0 typed alone is the designer's own slip and stays.
func (e *edition) zero(n *notation.Number) bool {
	switch {
	case n == nil:
		return false
	case n.Live != "":
		v, ok := e.at(n)
		return ok && v.N == 0
	case len(n.Values) < 2 || len(n.Values) != e.sizes:
		return false
	}
	v := n.Values[e.size]
	return v.None || v.N == 0
}

// noRow tells whether the label of the line has no row in this size: "Next 0
// (2, 4) rows", "Rows 5-4 (5-6, 5-8)". Of several ranges the empty ones are
// left out.
func (p *pruning) noRow() bool {
	label := p.line.Tree.Label
	if label == nil {
		return false
	}
	if label.Next && p.zero(label.Count) {
		return true
	}
	empty := make([]bool, len(label.Ranges))
	alive := 0
	for i, r := range label.Ranges {
		if empty[i] = p.emptyRange(r); !empty[i] {
			alive++
		}
	}
	if alive == 0 {
		return len(empty) > 0
	}
	spans := make([]notation.Span, len(label.Ranges))
	for i, r := range label.Ranges {
		spans[i] = rangeSpan(r)
	}
	p.listed(spans, empty)
	return false
}

// emptyRange tells whether a range ends before it begins.
func (e *edition) emptyRange(r notation.Range) bool {
	if r.From == nil || r.To == nil || r.From == r.To || len(r.From.Values) < 2 && len(r.To.Values) < 2 && r.From.Live == "" && r.To.Live == "" {
		return false
	}
	from, okFrom := e.at(r.From)
	to, okTo := e.at(r.To)
	return okFrom && okTo && !from.None && !to.None && to.N == from.N-1
}

func rangeSpan(r notation.Range) notation.Span {
	if r.From == nil {
		return notation.Span{}
	}
	if r.To == nil {
		return r.From.Span
	}
	return spanAt(min(r.From.Start, r.To.Start), max(r.From.End, r.To.End))
}

// noOrder tells whether no step of a line without a row of its own does
// anything.
func (p *pruning) noOrder() bool {
	if label := p.line.Tree.Label; label != nil && len(label.Ranges) > 0 {
		return false
	}
	rows, dead := p.line.Tree.Label == nil, p.dead(p.line.Tree.Steps)
	any := false
	for i, s := range p.line.Tree.Steps {
		switch s := s.(type) {
		case *notation.Remark:
			continue
		case *notation.Again, *notation.Shape:
			rows = true
		case *notation.Group: // "[Rep Row 2] 0 (1, 2) times"
			rows = rows || len(s.Body) == 1 && hasAgain(s.Body)
		}
		if !dead[i] {
			return false
		}
		any = true
	}
	return any && rows
}

// dead tells of each step of a list whether it does nothing in this size. A
// step that goes on in words that were not understood may do something.
func (p *pruning) dead(list []notation.Step) []bool {
	dead := make([]bool, len(list))
	for i, s := range list {
		var before notation.Step
		if i > 0 {
			before = list[i-1]
		}
		dead[i] = p.nothing(s, before)
		if _, unread := s.(*notation.Unknown); unread && i > 0 && strings.TrimSpace(p.text(p.end(before), s.At().Start)) == "" {
			dead[i-1] = false
		}
	}
	return dead
}

// orders returns the steps of l that do something in the size being written.
func (e *edition) orders(l *design.Line) []notation.Step {
	if e.size == allSizes {
		return l.Tree.Steps
	}
	p := &pruning{edition: e, line: l}
	dead := p.dead(l.Tree.Steps)
	var kept []notation.Step
	for i, s := range l.Tree.Steps {
		if !dead[i] {
			kept = append(kept, s)
		}
	}
	return kept
}

// nothing tells whether a step does nothing in this size.
func (p *pruning) nothing(s, before notation.Step) bool {
	switch s := s.(type) {
	case *notation.Work:
		return p.zero(s.Times) && p.inNoPlace(s.Places) || p.noPlaces(s.Places)
	case *notation.Chains:
		return p.zero(s.N)
	case *notation.Skip:
		return p.noPlaces(s.Places)
	case *notation.Group:
		if s.Times != nil && p.zero(s.Times.N) && !s.Times.More || p.nothings(s.Body) {
			return p.inNoPlace(s.In)
		}
		return p.noPlaces(s.In)
	case *notation.Star:
		return s.Times != nil && p.zero(s.Times.N) && !s.Times.More || p.nothings(s.Body)
	case *notation.Evenly:
		return p.zero(s.N) && (s.Change == 0 || goesAlong(before))
	case *notation.Leave:
		return p.zero(s.N)
	case *notation.Again:
		return s.Times != nil && p.zero(s.Times.N) || p.zero(s.RowCount) || s.Until != nil && p.noLength(s.Until.Length)
	case *notation.Shape:
		for _, part := range s.Plan {
			if !p.zero(part.Times) {
				return false
			}
		}
		return len(s.Plan) > 0
	}
	return false
}

// nothings tells whether a passage does nothing in this size.
func (p *pruning) nothings(list []notation.Step) bool {
	any := false
	for i, dead := range p.dead(list) {
		switch list[i].(type) {
		case *notation.Remark, *notation.Stop:
			continue
		}
		if !dead {
			return false
		}
		any = true
	}
	return any
}

func (p *pruning) noLength(m *notation.Measure) bool {
	return m != nil && len(m.Values) > 1 && len(m.Values) == p.sizes && m.Values[p.size] == 0
}

// noPlaces tells whether every place named is none: "in last 0 sts".
func (p *pruning) noPlaces(places []*notation.Place) bool {
	for _, pl := range places {
		if !p.noPlace(pl) {
			return false
		}
	}
	return len(places) > 0
}

func (p *pruning) noPlace(pl *notation.Place) bool {
	switch pl.Which {
	case notation.Next, notation.First, notation.Last, notation.Remaining, notation.Centre:
		return pl.Then == nil && p.zero(pl.N)
	}
	return false
}

// inNoPlace tells whether stitches that are not made leave no place behind:
// none is named, or it is one the hook is in already. "0 (1) sc in next st"
// passes over a stitch.
func (p *pruning) inNoPlace(places []*notation.Place) bool {
	for _, pl := range places {
		switch {
		case p.noPlace(pl) || pl.New:
		case pl.Which == notation.Same || pl.Which == notation.Ring || pl.What == notation.ARing:
		default:
			return false
		}
	}
	return true
}

// goesAlong tells whether a step is "sc in each st across", which says with
// what stitch changes are spread.
func goesAlong(s notation.Step) bool {
	w, ok := s.(*notation.Work)
	if !ok || w.Last != nil || len(w.Places) != 1 {
		return false
	}
	pl := w.Places[0]
	return pl.Which == notation.Each && pl.What == notation.AnyStitch && !pl.New && pl.Of == nil && (pl.To == nil || pl.To.End)
}

// onward returns the words for the rest of the row or round.
func (p *pruning) onward() string {
	if label := p.line.Tree.Label; label != nil {
		switch label.Is {
		case notation.Round:
			return "around"
		case notation.Row:
			return "across"
		}
	}
	for _, s := range p.line.Tree.Steps {
		if join, ok := s.(*notation.Join); ok && !join.Not {
			return "around"
		}
	}
	return "to end"
}

// plainWords returns the order to work plainly to the end of the row, in the
// stitch last worked along a row; "" when that is not known.
func (p *pruning) plainWords() string {
	var kind stitch.Kind
	for _, l := range p.design.Lines {
		if l == p.line {
			break
		}
		if l.Tree == nil || l.Kind != design.Instruction || !p.applies(l) {
			continue
		}
		notation.Walk(l.Tree, func(s notation.Step) bool {
			if w, ok := s.(*notation.Work); ok && len(w.Places) > 0 && w.Places[len(w.Places)-1].Which == notation.Each && w.Stitch.Kind != stitch.None {
				kind = w.Stitch.Kind
			}
			return true
		})
	}
	if kind == stitch.None {
		return ""
	}
	return p.design.Stitches.Name(kind, p.to) + " in each st " + p.onward()
}

// skipWord is the verb for passing over a stitch.
func (p *pruning) skipWord() string {
	if p.to == stitch.UK {
		return "miss"
	}
	return "sk"
}
