package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// onFoundation tells whether the row is worked into a chain: slip stitches there
// are the stitches of its first row.
func (r *run) onFoundation() bool {
	return r.base != nil && r.base.chains > 0 && !r.base.closed
}

// travels tells whether a slip stitch at the start of a row only moves the
// hook: other work follows it.
func (r *run) travels() bool {
	for f := len(r.frames) - 1; f >= 0; f-- {
		for _, s := range r.frames[f].steps[r.frames[f].next:] {
			switch s := s.(type) {
			case *notation.Chains:
				return true
			case *notation.Work:
				if s.Stitch.Kind != stitch.SlipStitch {
					return true
				}
			case *notation.Group, *notation.Star:
				return true
			case *notation.Turn, *notation.FastenOff:
				return false
			}
		}
	}
	return false
}

// travel moves along by slip stitches, which add no place and are not counted.
func (r *run) travel(s *notation.Work, times int) bool {
	made := len(r.body.Top)
	ok := true
	if len(s.Places) == 0 {
		for range times {
			if _, ok = r.next(anyPlace); !ok {
				return r.short(s.Span, 1)
			}
			r.body.Stitches = append(r.body.Stitches, Worked{Kind: stitch.SlipStitch, Into: r.origin(r.same), Uses: 1, N: 1})
			r.body.Made++
		}
	}
	if r.base != nil && r.base.joined && r.pos == r.low && len(s.Places) > 0 && fromHere(s.Places[0]) {
		r.pos = min(r.hi, r.firstPlace()+1) // the hook stands in the first stitch
	}
	start, before := r.pos, len(r.body.Stitches)
	for _, p := range s.Places {
		if ok = r.place(s, p, stitch.SlipStitch, 1); !ok {
			break
		}
		if t := p.To; t != nil && (t.What == notation.Space || t.What == notation.Corner) && !r.slipsOn() { // "sl st to corner sp" goes into it
			goal := &notation.Place{Span: p.Span, Which: notation.Next, What: t.What, Chains: t.Chains}
			if ok = r.place(s, goal, stitch.SlipStitch, 1); !ok {
				break
			}
		}
	}
	if n := len(r.body.Stitches) - before; ok && n > 0 && r.base != nil && !r.base.dark {
		if gap := r.count(start, r.same) - n + 1; gap > 0 && r.base.joined {
			r.warn(SilentSkip, s.Span, gap, 0, "")
			r.soft[len(r.soft)-1].Soft = false
		}
	}
	r.body.Top = r.body.Top[:made]
	r.begun = false
	if ok && r.base != nil && r.base.closed && !r.base.ring {
		r.rotate()
	}
	return ok
}

// slipsOn tells whether the next step is a slip stitch as well.
func (r *run) slipsOn() bool {
	f := r.frames[len(r.frames)-1]
	if f.next >= len(f.steps) {
		return false
	}
	w, ok := f.steps[f.next].(*notation.Work)
	return ok && w.Stitch.Kind == stitch.SlipStitch
}

// fromHere tells whether a place is told from the first stitch of the round on,
// in which the hook stands: "next 2 dc", "first ch-2 sp".
func fromHere(p *notation.Place) bool {
	return p.Which == notation.Next || p.Which == notation.First && (p.What == notation.Space || p.What == notation.Corner)
}

// rotate makes the place travelled to the start of the round.
func (r *run) rotate() {
	at := r.same
	if at <= 0 || at >= len(r.items) || r.hi != len(r.items) {
		return
	}
	turned := make([]Item, 0, len(r.items))
	turned = append(turned, r.items[at:]...)
	r.items = append(turned, r.items[:at]...)
	r.rot = (r.rot + at) % len(r.items)
	r.over += at
	r.pos, r.sub, r.same, r.groupEnd = 0, 0, 0, noPlace
	if !r.startsGroup(r.items[0]) {
		r.groupEnd = r.endOfGroup(0)
	}
}
