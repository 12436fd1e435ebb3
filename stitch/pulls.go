package stitch

// wraps turns the yarn overs said so far into wraps.
func (m *machine) wraps() {
	for ; m.yos > 0 && !m.over; m.yos-- {
		m.move(&node{}, Move{Do: Wrap})
	}
	m.yos = 0
}

// takeYO takes the yarn over that belongs to a pull; others are wraps.
func (m *machine) takeYO() bool {
	had := m.yos > 0
	m.yos = max(0, m.yos-1)
	m.wraps()
	return had
}

func (m *machine) pickUp(n *node) {
	k := max(1, m.dropped)
	m.dropped = 0
	m.move(n, Move{PickUp, k})
}

// pullUp pulls up loops. With a place of its own it goes in first: "pull up a
// loop in each of next 2 sts".
func (m *machine) pullUp(n *node) {
	if !m.inserted && !n.where.told && n.n == 1 {
		if m.yos == 0 {
			return // "pull up a long loop" with nothing on the yarn: the loop there is drawn longer
		}
		m.wraps()
		m.insert(&node{op: opInsert}) // "(yo, pull up a loop) 3 times in next st"
		m.move(n, Move{Do: Pull})
		return
	}
	if n.where.told && !m.inserted {
		times := max(1, n.where.fresh)
		for i := 0; i < times && !m.over; i++ {
			m.wraps()
			in := *n
			in.where.fresh = min(1, n.where.fresh)
			m.insert(&in)
			for range n.n {
				m.move(n, Move{Do: Pull})
			}
		}
		return
	}
	m.yos = max(0, m.yos-1)
	m.wraps()
	m.held = 0
	if n.where.told && !m.inRow {
		m.place(n.where, false)
	}
	for range n.n {
		m.move(n, Move{Do: Pull})
	}
}

func (m *machine) through(n *node) {
	m.takeYO()
	k := n.n
	if k == allLoops {
		k = m.loops + m.held
	}
	held := m.held
	m.held = 0
	switch {
	case held > 0 && k <= held:
		m.move(n, Move{Do: Pull}) // through the loops of the row alone
	case held > 0 && k-held == 1:
		m.move(n, Move{Do: Slip})
	default:
		m.move(n, Move{Through, k - held})
	}
}

// via pulls through the work and loops on the hook at once.
func (m *machine) via(n *node) {
	m.takeYO()
	k := n.n
	if k == allLoops {
		k = m.loops
	}
	if k <= 1 && m.loops >= 1 {
		m.move(n, Move{Do: Slip})
		return
	}
	m.move(n, Move{Through, k})
}

// lead pulls a loop through, with nothing said of what it goes through: the
// dropped loop, or a new one after the hook went in, or else through all.
func (m *machine) lead(n *node) {
	switch {
	case m.dropped > 0 && m.yos == 0:
		m.pickUp(n)
		m.move(n, Move{Do: Draw})
	case m.picked && m.yos == 0:
		m.move(n, Move{Do: Draw})
	case m.inserted && !m.closing:
		m.takeYO()
		m.move(n, Move{Do: Pull})
	default:
		m.takeYO()
		m.move(n, Move{Through, max(1, m.loops)})
	}
}
