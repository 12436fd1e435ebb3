package notation

// nth reads an ordinal: "2nd", "third".
func (p *parser) nth() (*Number, bool) {
	t := p.peek(0)
	v := ordinalWords[t.text]
	if t.kind == ordinal {
		v = t.n
	} else if t.kind != word || v == 0 {
		if t.text == "first" && anyOf(p.peek(1).text, "ch|chain|") {
			v = 1
		} else {
			return nil, false
		}
	}
	from := p.i
	p.i++
	n := &Number{Values: []Value{{N: v}}}
	if p.listIn(p.i) > 0 { // "3rd (4th, 5th)" is rare; "2nd (3, 3) ch" is not
		p.sizes(n)
	}
	n.Span = p.span(from)
	return n, true
}

func (p *parser) nthPlace(pl *Place, n *Number) bool {
	pl.Which, pl.N = Nth, n
	if p.has("of|in") && p.chainNumberAt(1) { // "3rd of 5ch"
		pl.What = Chain
	} else if !p.unit(pl) {
		return false
	}
	switch {
	case p.take("from", "the|your", "hook"), p.take("from", "hook"), p.take("from", "the|your"), pl.What == Chain && p.take("from"):
		pl.What = Chain
		return true
	case p.has("of|in|from|on") && !p.has("of|on|from", "row|rnd|round") && !p.has("of|on", "the", "row|rnd|round"):
	default:
		return true
	}
	from := p.i
	p.i++
	p.filler("the")
	if pl.What == TurningChain || pl.What == Space {
		pl.What = Chain
	}
	at := p.i
	of := &Place{}
	switch {
	case p.numberedChain(of):
		of.Which = Top
	case p.which(of):
	case !p.turningUnit(of):
		p.i = from
		return true
	}
	next := p.tokAt(at).text == "next" || p.tokAt(at).text == "same" || p.tokAt(at).text == "each"
	if pl.What == Chain && (of.What == Chain || of.What == AnyStitch && of.Which != Same) {
		of.What = TurningChain
		p.chainCount(of)
	}
	if of.What == TurningChain {
		if of.Which = Top; next {
			of.What, of.Which = Space, Next
		}
	}
	of.Span = p.span(at)
	pl.Of = of
	return true
}
