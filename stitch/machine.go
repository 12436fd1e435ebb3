package stitch

// A machine works the nodes of a definition move by move and keeps what it
// learns of the stitch on the way.
type machine struct {
	d     *Dictionary
	loops int
	yos   int // yarn overs said, of which it is not yet known what they are for
	moves []Move
	steps []step // for the counting shown with a finding
	spent int

	inserted bool // the last thing done was to insert the hook
	dropped  int  // loops dropped and not picked up
	picked   bool // a dropped loop was just picked up
	closing  bool // from the first drop on: legs are no longer counted

	last    node // the last pulling through loops
	claims  []claimed
	faults  []fault // what the loops do not allow, in order
	blind   bool    // words about the hook were not understood: loops are unknown from here on
	over    bool    // more was asked for than any stitch is
	unread  []node
	held    int    // loops of the row that the hook went under and holds: "front loop of each of next 2 sts"
	implied bool   // uses is one only because something was worked and no place told
	legs    int    // own insertions into the row
	parts   []part // stitches and chains, in order
	uses    int
	inRow   bool // some place of the row was gone into
	shared  int  // more than 0 inside a group that has its own place
	where   place
	turning int // as told, -1 when not
	height  int // the same
	form    Kind
}

// A step is a move or a whole stitch as done, and the loops after it.
type step struct {
	move  Move
	kind  Kind // a whole stitch, or None
	loops int
}

// A part is a stitch, chains, or a "counts as" in what a stitch is made of.
type part struct {
	kind       Kind // None for chains
	chains     int
	own        bool // worked into the stitch itself: "sl st in first ch"
	unfinished bool
	counts     bool // chains that count as kind and then chains
}

// A claimed is a claim about the loops on the hook, as met.
type claimed struct {
	node        node
	met         bool
	first, last int // loops there, the first and the last time
	steps       int // steps done the first time
}

// A fault is a move the loops do not allow, or loops left over.
type fault struct {
	node  node
	loops int // on the hook before it
	need  int
	steps int
}

// mostSpent bounds the moves of one definition.
const mostSpent = 4000

func newMachine(d *Dictionary, claims int) *machine {
	return &machine{d: d, loops: 1, claims: make([]claimed, claims), turning: -1, height: -1,
		moves: make([]Move, 0, 24), steps: make([]step, 0, 24)}
}

// work does the nodes in order.
func (m *machine) work(nodes []node) {
	for i := range nodes {
		if m.over {
			return
		}
		if m.spent++; m.spent > mostSpent {
			m.over = true
			return
		}
		m.do(&nodes[i])
	}
}

func (m *machine) do(n *node) {
	switch n.op {
	case opYO:
		m.yos += n.n
		return
	case opThrough, opVia, opLead, opPull:
	default:
		m.wraps()
	}
	switch n.op {
	case opInsert:
		m.insert(n)
	case opPull:
		m.pullUp(n)
	case opThrough:
		m.through(n)
	case opVia:
		m.via(n)
	case opLead:
		m.lead(n)
	case opDrop:
		m.closing = true
		m.dropped += n.n
		m.move(n, Move{Drop, n.n})
	case opPickUp:
		m.pickUp(n)
	case opStitch:
		m.stitch(n)
	case opChain:
		m.chain(n)
	case opGroup:
		m.group(n)
	case opClaim:
		m.claim(n)
	case opUntil:
		for m.loops > n.n && m.loops > 1 && !m.over {
			m.move(n, Move{Through, 2})
		}
	case opFinish:
		m.finish(n)
	default:
		m.tell(n)
	}
}

// tell takes what moves no loop.
func (m *machine) tell(n *node) {
	switch n.op {
	case opCounts:
		m.counts(n)
	case opSkip:
		m.uses += n.where.fresh
		m.implied = false
		m.inRow = true
	case opHere:
		m.place(n.where, len(m.moves) > 0 && n.where.fresh == 0)
	case opTurning:
		m.turning = n.n
	case opHeight:
		m.height = n.n
	case opForm:
		m.form = n.kind
	case opUnread:
		m.unread = append(m.unread, *n)
		m.blind = m.blind || n.n > 0
	}
}

// move does one move.
func (m *machine) move(n *node, mv Move) {
	if m.spent++; m.spent > mostSpent {
		m.over = true
		return
	}
	after, ok := mv.Loops(m.loops)
	if !ok {
		if !m.blind {
			m.faults = append(m.faults, fault{*n, m.loops, max(1, mv.N), len(m.steps)})
		}
		after = 1
	}
	if mv.Do == Through && n.op == opThrough {
		m.last = *n
	}
	m.loops = after
	m.moves = append(m.moves, mv)
	m.steps = append(m.steps, step{move: mv, loops: after})
	m.inserted = mv.Do == Insert
	m.picked = mv.Do == PickUp
}

func (m *machine) insert(n *node) {
	own := m.place(n.where, false)
	if !own && !m.closing {
		m.legs++
	}
	m.move(n, Move{Do: Insert})
	if n.where.only {
		m.held += max(1, n.where.fresh)
	}
	if n.where.loose && m.dropped > 0 {
		m.pickUp(n)
	}
}

// group works a passage as often as told.
func (m *machine) group(n *node) {
	if n.where.told {
		m.place(n.where, len(m.moves) > 0 && n.where.fresh == 0)
		m.shared++
		defer func() { m.shared-- }()
	}
	for i := 0; i < n.n && !m.over; i++ {
		if m.spent++; m.spent > mostSpent {
			m.over = true // a repeat of nothing costs too
		}
		m.work(n.body)
	}
	m.wraps()
}

// claim notes the loops where a claim stands.
func (m *machine) claim(n *node) {
	c := &m.claims[n.id]
	if m.blind {
		return
	}
	if !c.met {
		*c = claimed{node: *n, met: true, first: m.loops, steps: len(m.steps)}
	}
	c.last = m.loops
	if m.held > 0 && n.n == m.loops+m.held {
		c.last = n.n // the loops of the row are counted with those of the yarn
	}
}

// place notes where the hook goes and tells whether that is the stitch itself.
func (m *machine) place(p place, own bool) bool {
	if p.side() != NoSide || p.post&aroundPost != 0 {
		m.where.post |= p.post
	}
	m.where.below = max(m.where.below, p.below)
	m.where.base = m.where.base || p.base
	made := len(m.parts) > 0 || m.legs > 0
	fresh := p.fresh
	if fresh == 0 && p.first {
		if made {
			own = true
		} else {
			fresh = 1
		}
	}
	if own || p.own && fresh == 0 {
		return true
	}
	if m.shared > 0 {
		fresh = 0
	}
	if fresh > 0 && m.implied {
		m.uses = 0 // "dc, ch 1, dc in next st": all of it goes there
	}
	m.uses += fresh
	m.implied = m.uses == 0 || m.implied && fresh == 0
	m.uses = max(1, m.uses)
	m.inRow = true
	return false
}
