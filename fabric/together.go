package fabric

import "rowproof/notation"

// together tells how many of the steps go along the edge as one: "sc in each sc
// and 2 sc in each ch-2 sp across" has two, each for its own kind of place. It
// is 0 when the first step goes by itself.
func together(steps []notation.Step) int {
	n, spaces, stitches := 0, false, false
	for _, s := range steps {
		p := eachPlace(s)
		if p == nil {
			break
		}
		switch p.What {
		case notation.Space, notation.Corner:
			spaces = true
		case notation.AnyStitch, notation.AStitch:
			stitches = true
		default:
			return 0
		}
		if n++; p.To != nil {
			break
		}
	}
	if n < 2 || !spaces || !stitches {
		return 0
	}
	return n
}

// alreadySpread tells whether the first step only says with what stitch the
// changes of the second are spread: "sc around, inc 6 sts evenly".
func alreadySpread(steps []notation.Step) bool {
	if len(steps) < 2 {
		return false
	}
	p := eachPlace(steps[0])
	e, ok := steps[1].(*notation.Evenly)
	return ok && e.Change != 0 && p != nil && p.What == notation.AnyStitch && (p.To == nil || p.To.End)
}

// eachPlace is the "each ..." place of a step that has no other, nil when it
// has none.
func eachPlace(s notation.Step) *notation.Place {
	var places []*notation.Place
	switch s := s.(type) {
	case *notation.Work:
		if s.Last != nil && !inTurningChain(s.Last) {
			return nil
		}
		places = s.Places
	case *notation.Group:
		places = s.In
	}
	if len(places) != 1 || places[0].Which != notation.Each || places[0].New || places[0].Of != nil {
		return nil
	}
	return places[0]
}

// alongTogether goes along the edge once and works at each place the step that
// names it; the last step says where to stop.
func (r *run) alongTogether(steps []notation.Step) bool {
	end, ok := r.limit(eachPlace(steps[len(steps)-1]).To)
	if !ok {
		return false
	}
	for _, s := range steps {
		if w, ok := s.(*notation.Work); ok && w.Last != nil {
			if _, ok := r.turningChain(w.Last); !ok {
				return false
			}
		}
	}
	chains := make([]int, len(steps))
	for k, s := range steps {
		chains[k] = chainsOf(r.w.d, eachPlace(s).Chains, r.w.size)
	}
	for i := r.pos; i < end; i++ {
		for k, s := range steps {
			p := eachPlace(s)
			if (p.What == notation.AnyStitch && r.items[i].space()) || !r.fits(r.items[i], p, chains[k]) {
				continue
			}
			r.used(i)
			if !r.workAt(s, i) {
				return false
			}
			break
		}
	}
	r.pos, r.sub = max(r.pos, end), 0
	return true
}

// workAt works a step in the place at idx, whatever place it names.
func (r *run) workAt(s notation.Step, idx int) bool {
	r.begun = true
	switch s := s.(type) {
	case *notation.Work:
		times, ok := r.value(s.Times)
		if !ok {
			return false
		}
		kind, each := r.plain(s)
		return r.emit(kind, times*each, idx, 1, s.Places[0])
	case *notation.Group:
		times, ok := r.timesOf(s)
		if !ok {
			return false
		}
		return r.inside(s, idx, times)
	}
	return true
}
