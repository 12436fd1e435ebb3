package notation

// skipStep reads "sk next 2 sts", "miss 1tr", "skp 3".
func (p *parser) skipStep() []Step {
	from := p.i
	if !p.takeAny("sk|skip|skipping|miss|missing|skp|skips|sks|skipped") {
		return nil
	}
	s := &Skip{}
	for {
		p.filler("the|over|a|working")
		at := p.i
		pl := p.target()
		if pl == nil {
			if !p.startsNumber() {
				if len(s.Places) == 0 && (p.done() || p.peek(0).kind == mark) {
					pl = &Place{Which: Next, Span: p.span(from)}
				} else {
					break
				}
			} else {
				pl = &Place{Which: Next, N: p.number()}
				pl.Span = p.span(at)
			}
		}
		s.Places = append(s.Places, pl)
		at = p.i
		if !(p.take("and") || p.take("&")) || !p.has("next|first|last|the|following") && !p.startsNumber() || p.startsNumber() && !p.skipUnit() {
			p.i = at
			break
		}
	}
	if len(s.Places) == 0 {
		return nil
	}
	p.filler("for|the|back|front|neck|unworked|underarm|center|centre|opening|edge|armhole|sleeve|thumb|and|leave|them|st|sts")
	for anyOf(p.prev(1).text, "and|the|for|") {
		p.i--
	}
	s.Span = p.span(from)
	if p.has("(") || p.has("[") {
		s.Counts = p.countsBracket()
	}
	return []Step{s}
}

func (p *parser) skipUnit() bool {
	from := p.i
	ok := p.spaceAhead()
	p.i = from
	return ok
}
