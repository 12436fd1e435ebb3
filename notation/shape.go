package notation

// shape reads shaping told in prose: "Dec 1 st at each end every 4th row 6
// times", "Work Dec row every 4th row 3 times".
func (p *parser) shape() []Step {
	from := p.i
	s := &Shape{}
	p.filler("at|the|same|time|and|,|cont|in|pat|pattern")
	start := p.i
	switch {
	case p.takeAny("inc|increase|increasing"):
		s.Change = 1
	case p.takeAny("dec|decrease|decreasing"):
		s.Change = -1
	case p.takeAny("work|rep|repeat|working"):
		p.filler("the|an|a")
		if !(p.has("inc|dec|increase|decrease") && p.hasAny(1, "row|rnd|round")) {
			p.i = from
			return nil
		}
		s.Row = map[string]string{"inc": "inc", "increase": "inc", "dec": "dec", "decrease": "dec"}[p.peek(0).text]
		p.i += 2
	default:
		p.i = from
		return nil
	}
	_ = start
	if s.Row == "" {
		if p.startsNumber() {
			s.N = p.number()
		}
		if !p.takeAny("st|sts|stitch|stitches") && s.N == nil {
			p.i = from
			return nil
		}
		p.filler("st|sts")
		if !p.where(s) && !p.has("every|on|next|alternately") {
			p.i = from
			return nil
		}
	}
	p.plan(s)
	if len(s.Plan) == 0 {
		if s.Row != "" {
			p.i = from
			return nil
		}
		s.Plan = []Every{{}}
	}
	if s.Where == "" {
		p.where(s)
	}
	s.Span = p.span(from)
	return []Step{s}
}

// where reads "at each end", "at neck edge", "each side".
func (p *parser) where(s *Shape) bool {
	from := p.i
	p.filler("at|on|to|in|of|the")
	at := p.i
	switch {
	case p.take("each|both", "end|ends|side|sides|edge|edges"), p.take("beg|beginning", "and", "end"), p.take("beg", "&", "end"):
		s.Ends = 2
	case p.has("neck|armhole|front|side|outer|inner|sleeve|shoulder|center|raglan|left|right") && p.hasAny(1, "edge|end|side"):
		p.i += 2
		s.Ends = 1
	case p.takeAny("beg|beginning|end|start"):
		s.Ends = 1
	case p.take("each", "raglan|marker|corner"):
		p.filler("line|marker")
	default:
		p.i = from
		return false
	}
	s.Where = p.words(at, p.i)
	p.filler("of|on")
	return true
}

// plan reads "every 4th row 6 times, then every 6th row twice".
func (p *parser) plan(s *Shape) {
	for {
		from := p.i
		p.take(",")
		p.filler("then|and|on|of|in|work|also")
		e := Every{}
		switch {
		case p.has("next|this|foll|following") && p.hasAny(1, "row|rnd|round|rs|ws|and"):
			p.i++
			p.sideWords(&e.Side)
			p.takeAny("row|rnd|round")
			e.Next = true
			s.Plan = append(s.Plan, e)
			p.filler("and|,|then|in")
			if p.has("every|foll|following|each") {
				continue
			}
			return
		case p.takeAny("every|each|foll|following|alt|alternate"):
			alt := p.toks[p.i-1].text
			p.filler("foll|following")
			switch {
			case p.takeAny("other|alt|alternate|second"), alt == "alt", alt == "alternate":
				e.Every = &Number{Values: []Value{{N: 2}}, Span: p.span(from)}
			case p.peek(0).kind == ordinal || ordinalWords[p.peek(0).text] > 0:
				e.Every, _ = p.nth()
			case p.sideWords(&e.Side):
			case p.startsNumber():
				e.Every = p.number()
			}
			p.sideWords(&e.Side)
			if !p.takeAny("row|rows|rnd|rnds|round|rounds") {
				p.i = from
				return
			}
			p.filler("a|total|of|for|until")
			if t := p.times(); t != nil {
				e.Times = t.N
			}
			s.Plan = append(s.Plan, e)
			continue
		case len(s.Plan) == 0 && p.startsNumber() && p.hasAfterNumber("times|time"):
			t := p.times()
			e.Times = t.N
			s.Plan = append(s.Plan, e)
			continue
		}
		p.i = from
		return
	}
}
