package stitch

// stitch works whole stitches, or all of them but the last loop.
func (m *machine) stitch(n *node) {
	s := m.d.Stitch(n.kind)
	times := n.n
	if f := n.where.fresh; f > 1 && (times == 1 || n.where.each) {
		times = min(mostSpent, times*f) // "dc in each of next 3 sts"
	}
	own := m.place(n.where, n.kind == SlipStitch && !n.where.told)
	moves := s.Moves
	if len(moves) == 0 {
		m.blind = true
		m.unread = append(m.unread, *n)
		return
	}
	if n.unfinished {
		last := len(moves) - 1
		if moves[last].Do != Through {
			m.unread = append(m.unread, *n)
			return
		}
		moves = moves[:last]
	}
	for i := 0; i < times && !m.over; i++ {
		m.whole(n, moves)
		m.parts = append(m.parts, part{kind: n.kind, own: own, unfinished: n.unfinished})
	}
}

// whole does the moves of a known stitch on top of the loops there are.
func (m *machine) whole(n *node, moves []Move) {
	if m.spent += len(moves); m.spent > mostSpent {
		m.over = true
		return
	}
	for _, mv := range moves {
		after, ok := mv.Loops(m.loops)
		if !ok && !m.blind {
			m.faults = append(m.faults, fault{*n, m.loops, max(1, mv.N), len(m.steps)})
		}
		m.loops = after
	}
	m.moves = append(m.moves, moves...)
	m.steps = append(m.steps, step{kind: n.kind, loops: m.loops})
	m.inserted, m.picked = false, false
}

func (m *machine) chain(n *node) {
	for i := 0; i < n.n && !m.over; i++ {
		m.move(n, Move{Through, 1})
	}
	m.parts = append(m.parts, part{chains: n.n})
}

// counts makes the chains before it stand for a stitch.
func (m *machine) counts(n *node) {
	last := len(m.parts) - 1
	if last < 0 || m.parts[last].kind != None {
		return
	}
	m.parts[last] = part{kind: n.kind, chains: n.n, counts: true}
}

// finish ends an unfinished stitch as a plain one: with the moves that stitch
// has once its loop is pulled up.
func (m *machine) finish(n *node) {
	moves := m.d.Stitch(n.kind).Moves
	at, loops := -1, 1
	for i, mv := range moves {
		loops, _ = mv.Loops(loops)
		if mv.Do == Pull {
			at = i + 1
			break
		}
	}
	if at < 0 {
		m.unread = append(m.unread, *n)
		m.blind = true
		return
	}
	if m.inserted {
		at-- // "insert hook in next st, finish as sc": its loop is still to be pulled up
	}
	for _, mv := range moves[at:] {
		m.move(n, mv)
	}
	if m.form == None && m.legs == 1 {
		m.form = n.kind
	}
}
