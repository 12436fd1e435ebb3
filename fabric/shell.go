package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// A group of stitches made as one, such as a shell or a V-st, is a place of the
// row after it: "sc in 3rd dc of next shell". Its first and last stitch carry
// Opens and Closes.

// groupItems marks where a group of stitches begins and ends on a row's top.
func groupItems(items []Item) {
	if n := len(items); n > 1 {
		items[0].Flag |= Opens
		items[n-1].Flag |= Closes
	}
}

// startsGroup tells whether the hook meets the first stitch of a group at it.
func (r *run) startsGroup(it Item) bool {
	if r.base != nil && r.base.reversed {
		return it.is(Closes)
	}
	return it.is(Opens)
}

// endOfGroup is the place where the group that i is part of ends.
func (r *run) endOfGroup(i int) int {
	for j := i; j < len(r.items); j++ {
		if it := r.items[j]; it.is(Opens|Closes) && !r.startsGroup(it) {
			return j
		} else if j > i && r.startsGroup(it) {
			break
		}
	}
	return i
}

// isGroup tells whether a stitch is a group of several.
func (r *run) isGroup(k stitch.Kind) bool {
	info := r.w.kind(k)
	return k != stitch.None && info.open && len(info.items) > 1
}

// inGroup works into one stitch of a group: "3rd dc of next shell", "center dc
// of next shell". known is false when the edge has no group of its own ahead.
func (r *run) inGroup(s *notation.Work, p *notation.Place, kind stitch.Kind, times int) (ok, known bool) {
	start := r.groupAhead(p.Of)
	if start == noPlace {
		return false, false
	}
	end := r.endOfGroup(start)
	var legs []int
	for i := start; i <= end && i < r.hi; i++ {
		if it := r.items[i]; it.is(Counts) && !it.space() && (p.What != notation.AStitch || r.w.goesBy(it.Kind, p.Kind)) {
			legs = append(legs, i)
		}
	}
	at := (len(legs) - 1) / 2
	if p.Which == notation.Nth {
		n, ok := r.value(p.N)
		if !ok {
			return false, true
		}
		at = n - 1
	}
	if at < 0 || at >= len(legs) {
		return r.fail(NoPlace, p.Span, 0, 0, 0, 0, r.describe(p)), true
	}
	r.pass(start, p.Span, false)
	r.begun = true
	r.used(legs[at])
	r.groupEnd = end
	return r.emit(kind, times, legs[at], 1, p), true
}

// groupAhead is where the next group of the kind that of names begins, or the
// last one of the row.
func (r *run) groupAhead(of *notation.Place) int {
	if of.What != notation.AStitch || !r.isGroup(of.Kind) {
		return noPlace
	}
	at := noPlace
	for i := r.pos; i < r.hi; i++ {
		if !r.startsGroup(r.items[i]) {
			continue
		}
		if at = i; of.Which != notation.Last {
			break
		}
	}
	return at
}

// leftOfGroup tells whether the places from i to j are but the rest of a group
// that has been worked into.
func (r *run) leftOfGroup(i, j int) bool {
	return i <= r.groupEnd && i < j && r.count(r.groupEnd+1, j) == 0
}
