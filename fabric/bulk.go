package fabric

import (
	"slices"

	"rowproof/notation"
	"rowproof/stitch"
)

// Most repeats meet the same places again and again. Once a passage has been
// worked, and the places it used come again in the same order, what it made is
// made again, without going through its steps.

// plainBody tells whether what a passage makes depends on nothing but the
// places it uses: each step takes the next places, one after another.
func plainBody(body []notation.Step) bool {
	for _, s := range body {
		switch s := s.(type) {
		case *notation.Work:
			if s.Last != nil || s.Stitch.Kind == stitch.Increase || s.Stitch.Kind == stitch.Decrease {
				return false
			}
			for _, p := range s.Places {
				if !plainPlace(p) {
					return false
				}
			}
		case *notation.Skip:
			for _, p := range s.Places {
				if !plainPlace(p) {
					return false
				}
			}
		case *notation.Group:
			if s.Times != nil && s.Times.N == nil || !plainBody(s.Body) {
				return false
			}
			for _, p := range s.In {
				if !plainPlace(p) {
					return false
				}
			}
		case *notation.Chains, *notation.Remark, *notation.Color:
		default:
			return false
		}
	}
	return true
}

func plainPlace(p *notation.Place) bool {
	return (p.Which == notation.Next || p.Which == notation.Same) && p.Of == nil && p.Then == nil && p.What != notation.TurningChain
}

// again makes what the passage made between two snapshots once more, for as
// long as the same places come, at most most times. It returns how often.
func (r *run) again(from snapshot, most int) int {
	wide := r.pos - from.pos
	if wide <= 0 || r.sub != 0 || from.sub != 0 || len(r.soft) != from.soft || r.same < from.pos {
		return 0
	}
	stitches, top := r.body.Stitches[from.stitches:], r.body.Top[from.top:]
	made := r.body.Made - from.made
	step := int32(wide)
	if r.base.reversed {
		step = -step
	}
	times := min(most, r.sameAhead(wide)/wide, (maxRow-len(r.body.Stitches))/max(1, len(stitches)))
	if times <= 0 {
		return 0
	}
	r.body.Stitches = slices.Grow(r.body.Stitches, times*len(stitches))
	r.body.Top = slices.Grow(r.body.Top, times*len(top))
	for t := range times {
		by := step * int32(t+1)
		for _, s := range stitches {
			if s.Into >= 0 {
				s.Into += by
			}
			r.body.Stitches = append(r.body.Stitches, s)
		}
		r.body.Top = append(r.body.Top, top...)
	}
	r.body.Made += made * times
	r.pos += wide * times
	r.same += wide * times
	r.lastMade += wide * times
	return times
}

// sameAhead is how many places from r.pos on are the same as the places wide
// before them.
func (r *run) sameAhead(wide int) int {
	n := 0
	for r.pos+n < r.hi && r.items[r.pos+n] == r.items[r.pos+n-wide] {
		n++
	}
	return n
}
