package notation

// limit reads where a run along the edge stops: "across", "to last 3 sts", "to
// next ch-1 sp". nil if nothing is said.
func (p *parser) limit() *Limit {
	from := p.i
	p.filler("all|the|way")
	switch {
	case p.takeAny("across|around|along"):
		p.filler("the|row|rnd|round|edge|entire|piece|way|side|sides|all|whole|ring|edges|of|work|row|top|bottom|long|short|other|again")
		if p.has("to|until", "last|next|end|tch|marker") || p.has("to", "within") {
			if l := p.limit(); l != nil {
				l.Span = p.span(from)
				return l
			}
		}
		return &Limit{Span: p.span(from), End: true}
	case p.take("until|till|to", "you", "reach") || p.has("to|until|till|up|til") && p.hasAny(1, "end|the|last|next|tch|top|marker|corner|within|beg|turning|marked|first|center|each|you|to|ch|sp|before|m"):
		if p.prev(1).text != "reach" {
			p.i++
		}
		p.filler("to|the|within|before|you|reach|there|are|only|very")
		l := &Limit{}
		switch {
		case p.takeAny("end") || p.has("beg|beginning|start") && !p.hasAny(1, "ch|chain|of") && p.takeAny("beg|beginning|start"):
			p.filler("of|the|row|rnd|round|ch|chain|chains|rows")
			l.End = true
		case p.takeAny("last"):
			pl := &Place{}
			l.Last = p.number()
			if l.Last == nil {
				l.Last = &Number{Values: []Value{{N: 1}}}
			}
			p.unit(pl)
			l.What, l.Kind, l.Chains = pl.What, pl.Kind, pl.Chains
			p.filler("remain|rem|are|left|of|row|rnd|remaining|the|round|before|on")
			for anyOf(p.prev(1).text, "the|on|before|") {
				p.i--
			}
		case p.takeAny("marker|m"):
			l.Next, l.Marked = true, true
		default:
			p.filler("next|top|of|first|beg|center|centre|each")
			if p.takeAny("marked") {
				l.Marked = true
			}
			pl := &Place{}
			if !p.unit(pl) && !l.Marked {
				p.i = from
				return nil
			}
			l.Next, l.What, l.Kind, l.Chains = true, pl.What, pl.Kind, pl.Chains
			if p.take("left|remain|remaining") {
			}
		}
		l.Span = p.span(from)
		return l
	}
	p.i = from
	if p.takeAny("until|till") { // "until 3 sts remain"
		p.filler("only|there|are|the")
		if n := p.number(); n != nil {
			pl := &Place{}
			if p.unit(pl) && p.takeAny("remain|rem|are|left|remaining") {
				p.filler("left|rem|remaining|unworked")
				return &Limit{Span: p.span(from), Last: n, What: pl.What, Kind: pl.Kind, Chains: pl.Chains}
			}
		}
	}
	p.i = from
	return nil
}
