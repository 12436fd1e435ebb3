package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// skippedLeft tells whether p speaks of places that this row has just skipped:
// "sk next dc, dc in next dc, dc in skipped dc".
func (r *run) skippedLeft(p *notation.Place) bool {
	n, _ := r.valueQuiet(p.N)
	return p.Of == nil && r.base != nil && n > 0 && n <= r.count(r.skipped[0], r.skipped[1])
}

// intoSkipped works into the places last skipped, in order, and goes on from
// where the row stands.
func (r *run) intoSkipped(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) bool {
	n, ok := r.value(p.N)
	r.begun = true
	for i := r.skipped[0]; ok && i < r.skipped[1] && n > 0; i++ {
		r.skipped[0] = i + 1
		if !r.items[i].is(Counts) {
			continue
		}
		n--
		ok = r.emit(kind, times, i, 1, p)
	}
	return ok
}

// ontoUnworked goes on along the places that an earlier row left unworked, once
// this row has used up its own: "sc in next 10 unworked sts of Row 2".
func (r *run) ontoUnworked(p *notation.Place) {
	open := r.w.open
	if r.base == nil || len(open) == 0 || !r.begun || r.count(r.pos, r.hi) > 0 {
		return
	}
	e := *open[len(open)-1].edge
	if n, _ := r.valueQuiet(p.N); e.counting() >= n {
		r.workInto(&e)
	}
}
