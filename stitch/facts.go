package stitch

// settle gives s what the machine learned of it. What it could not learn
// stays as it is.
func (m *machine) settle(s *Stitch) {
	whole := m.wholeStitches()
	s.Base = m.base(whole)
	s.Post, s.Below = m.where.side(), m.where.below
	s.Family = m.family(whole)
	s.Uses = m.usesOf(s)
	s.Legs = m.legsOf(s, whole)
	s.Edge = m.edge(s)
	m.heights(s)
}

// wholeStitches is the kinds of the finished or unfinished stitches it is made
// of, those apart that only close it.
func (m *machine) wholeStitches() []Kind {
	var kinds []Kind
	for _, p := range m.parts {
		if p.kind != None && !p.own {
			kinds = append(kinds, p.kind)
		}
	}
	return kinds
}

// unclosed tells whether stitches of it were left unfinished.
func (m *machine) unclosed() bool {
	for _, p := range m.parts {
		if p.unfinished {
			return true
		}
	}
	return false
}

// family tells how it is made.
func (m *machine) family(whole []Kind) Family {
	legs := m.legs + len(whole)
	made := m.legs > 0 || m.unclosed()
	switch {
	case m.where.base:
		return FoundationStitch
	case !m.inRow && m.chained() && legs == 0:
		return Picot
	case m.closing:
		return Closed
	case made && legs > 1 && m.uses > 1, m.uses > 1 && legs == 1:
		return Together
	case made && legs > 1:
		return Closed
	case len(whole) > 1:
		return Open
	case len(whole) == 1 && m.spaced():
		return Open
	case m.where.post&aroundPost != 0:
		return PostStitch
	case m.where.below > 0:
		return Spike
	case len(whole) == 1:
		return m.d.Stitch(whole[0]).Family
	}
	return Plain
}

// chained tells whether it has chains and something worked into them, as a
// picot has; chains alone are no picot.
func (m *machine) chained() bool {
	chains, into := false, false
	for _, p := range m.parts {
		chains = chains || p.kind == None
		into = into || p.kind != None
	}
	return chains && into
}

// spaced tells whether a stitch of it comes with chains that stand for a
// stitch, or with a space.
func (m *machine) spaced() bool {
	for i, p := range m.parts {
		if p.counts || p.kind == None && (i == 0 && p.chains > 1 || i > 0) && i+1 < len(m.parts) && !m.parts[i+1].own {
			return true
		}
	}
	return false
}

// usesOf is how many places of the row below it uses.
func (m *machine) usesOf(s *Stitch) int {
	switch {
	case s.Family == FoundationStitch || s.Family == Picot || !m.inRow && m.legs == 0:
		return 0
	}
	return max(1, m.uses)
}

// legsOf is how many stitches it is made of, 0 for a single one.
func (m *machine) legsOf(s *Stitch, whole []Kind) int {
	switch s.Family {
	case Open:
		legs := 0
		for _, e := range m.edge(s) {
			if e.Chains == 0 {
				legs++
			}
		}
		return legs
	case Together, Closed:
		legs := m.legs + len(whole)
		for _, p := range m.parts {
			if p.counts && !p.own && p.kind == None {
				legs++
			}
		}
		return max(1, legs)
	}
	return 0
}

// base is the plain stitch it is a form of, None for itself.
func (m *machine) base(whole []Kind) Kind {
	switch {
	case m.form != None:
		return m.form
	case len(whole) > 0:
		return m.d.Stitch(whole[0]).Base
	case m.legs == 0:
		return None
	}
	if m.legs == 1 && m.uses <= 1 && m.where == (place{}) {
		return m.d.sameMoves(m.moves)
	}
	return m.legBase()
}

// legBase tells a leg's stitch from its yarn overs: none is sc, one hdc or dc,
// two tr.
func (m *machine) legBase() Kind {
	wraps := 0
	for wraps < len(m.moves) && m.moves[wraps].Do == Wrap {
		wraps++
	}
	switch wraps {
	case 0:
		return SingleCrochet
	case 1:
		if m.closesByTwo() {
			return DoubleCrochet
		}
		return HalfDouble
	case 2, 3, 4:
		return Treble + Kind(wraps-2)
	}
	return None
}

// closesByTwo tells whether the first leg is worked off by two loops.
func (m *machine) closesByTwo() bool {
	inserts, through := 0, 0
	for _, mv := range m.moves {
		switch {
		case mv.Do == Insert:
			inserts++
		case mv == Move{Through, 2} && inserts == 1:
			through++
		}
	}
	return through > 0
}

// sameMoves is the plain stitch made by the same moves, None if none is.
func (d *Dictionary) sameMoves(moves []Move) Kind {
	for k := SlipStitch; k <= TripleTreble && int(k) < len(d.stitches); k++ {
		if equalMoves(d.stitches[k].Moves, moves) {
			return k
		}
	}
	return None
}

func equalMoves(a, b []Move) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// edge is what it leaves for the next row.
func (m *machine) edge(s *Stitch) []EdgeItem {
	switch s.Family {
	case Picot:
		return nil
	case Open:
	default:
		if n := m.onlyChains(); n > 0 {
			return []EdgeItem{{Chains: n}}
		}
		return []EdgeItem{{}}
	}
	var edge []EdgeItem
	chains, lead := 0, true
	for i, p := range m.parts {
		switch {
		case p.counts:
			kind := p.kind
			if kind == None {
				kind = s.Base
			}
			edge = append(edge, EdgeItem{Kind: kind})
			chains, lead = p.chains, false
		case p.own:
			chains = 0 // a picot: its chains stand on the stitch before
		case p.kind == None:
			chains += p.chains
		default:
			if lead {
				edge, chains = m.leading(edge, chains, i)
			}
			edge = space(edge, chains)
			edge = append(edge, m.d.Stitch(p.kind).edgeOr(p.kind)...)
			chains, lead = 0, false
		}
	}
	return space(edge, chains)
}

// onlyChains is how many chains it is, 0 if it is more than chains.
func (m *machine) onlyChains() int {
	for _, mv := range m.moves {
		if mv != (Move{Through, 1}) {
			return 0
		}
	}
	return len(m.moves)
}

// leading reads chains at the beginning by custom: as many as the stitch is
// high stand for it, further ones are a space, fewer are nothing.
//
// Source: docs/sources.md T21, T22, T23.
func (m *machine) leading(edge []EdgeItem, chains, i int) ([]EdgeItem, int) {
	base := m.d.Stitch(m.parts[i].kind).Base
	high := int(m.d.Stitch(base).Height)
	if high < 2 || chains < high {
		return edge, 0
	}
	return append(edge, EdgeItem{Kind: base}), chains - high
}

// space adds a chain space.
func space(edge []EdgeItem, chains int) []EdgeItem {
	if chains == 0 {
		return edge
	}
	return append(edge, EdgeItem{Chains: chains})
}

// edgeOr is the edge of a known stitch, k itself when nothing is known of it.
func (s *Stitch) edgeOr(k Kind) []EdgeItem {
	if s.Edge == nil && s.Family != Picot {
		return []EdgeItem{{Kind: k}}
	}
	return s.Edge
}

// mostTurning is the longest turning chain that wraps alone can tell of.
const mostTurning = 7

// heights gives the turning chain and height: as told, or those of its base, or
// by its wraps.
func (m *machine) heights(s *Stitch) {
	if base := m.d.Stitch(s.Base); s.Base != None && base.Kind == s.Base {
		s.Height, s.TurningChain = base.Height, base.TurningChain
	} else if m.legs > 0 {
		for s.TurningChain = 1; s.TurningChain <= len(m.moves) && m.moves[s.TurningChain-1].Do == Wrap; s.TurningChain++ {
		}
		if s.TurningChain > 1 && m.closesByTwo() {
			s.TurningChain++
		}
		if s.TurningChain > mostTurning {
			s.TurningChain = 3 // a coil of many wraps is about as high as dc
		}
		s.Height = float64(s.TurningChain)
	}
	if m.turning >= 0 {
		s.TurningChain, s.Height = m.turning, float64(m.turning)
	}
	if m.height >= 0 {
		s.Height = float64(m.height)
	}
}
