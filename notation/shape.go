package notation

// shape reads shaping told in prose: "Dec 1 st at each end every 4th row 6
// times", "Work Dec row every 4th row 3 times".
func (p *parser) shape() []Step {
	from := p.i
	s := &Shape{}
	p.filler("at|the|same|time|and|,|cont|in|pat|pattern|also|then|to|for|beg|on|shape|neck|armhole|top|sleeve|cap|:")
	if p.i > from && !p.has("inc|dec|increase|decrease|increasing|decreasing") {
		p.i = from
	}
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
	if s.Row == "" {
		if p.startsNumber() {
			s.N = p.number()
		}
		if p.has("in|to", "the|next|pat|patt|each|first|last|same|top") || p.has("evenly") {
			p.i = from
			return nil
		}
		if _, n := p.lookup(); n > 0 && s.N != nil { // "dec 1 sc at each end"
			p.i += n
		}
		alone := s.N == nil
		if p.takeAny("st|sts|stitch|stitches") {
			alone = false
		}
		p.filler("st|sts|only")
		if !p.where(s) && !p.has("every|next|alternately|foll|following") && !p.has("on|in|each", "every|next|each|foll|following|row|rnd|ws|rs") {
			p.i = from
			return nil
		}
		if alone && !p.has("alternately|every|each|on|next|foll") && s.Ends == 0 {
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
	p.shapeUntil(s)
	s.Span = p.span(from)
	return []Step{s}
}

// shapeUntil reads "until 10 sts rem", "to 42 sts".
func (p *parser) shapeUntil(s *Shape) {
	from := p.i
	p.take(",")
	p.filler("or|you")
	if p.takeAny("until|till|til|to") {
		p.filler("there|are|you|have|only|a|total|of")
		if n := p.number(); n != nil && p.takeAny("st|sts|stitches|sc|dc|hdc") {
			s.Left = n
			p.filler("rem|remain|remaining|left|are|on|in|each|side|total|row|the")
			return
		}
	}
	p.i = from
	if n := p.number(); n != nil && p.take("st|sts|stitches", "rem|remain|left|remaining") {
		s.Left = n
		return
	}
	p.i = from
}

// where reads "at each end", "at neck edge", "each side".
func (p *parser) where(s *Shape) bool {
	from := p.i
	p.filler("at|on|to|in|of|the")
	at := p.i
	switch {
	case p.has("each|every|both", "end|side", "of") && !p.hasAny(3, "row|rnd|every|each|next|foll|following|the|this|these|alt|last|rs|ws|all|needle"):
		return false
	case p.takeAny("armhole|neck|underarm|armholes|neckline|side|center|front") && (p.done() || p.peek(0).kind == mark || p.has("every|on|each|next|for|edge|edges|until")):
		p.takeAny("edge|edges")
		s.Ends = 1
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
	p.filler("of|on|only")
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
		case p.take("row|rnd|round"), p.take("the", "row|rnd|round"):
			continue
		case p.take("alternately|alternatively"):
			p.filler("on")
			p.alternate(s)
			return
		case p.has("next|this|foll|following") && (p.hasAny(1, "row|rnd|round|rs|ws|and|right|wrong") || p.numberAt(1)):
			p.i++
			p.sideWords(&e.Side)
			p.takeAny("row|rnd|round")
			e.Next = true
			s.Plan = append(s.Plan, e)
			p.filler("and|,|then|in")
			if t := p.times(); t != nil {
				s.Plan[len(s.Plan)-1].Times = t.N
			} else if p.startsNumber() && p.hasAfterNumber("rows|rnds|rounds") { // "on next 4 rows"
				s.Plan[len(s.Plan)-1].Times = p.number()
				s.Plan[len(s.Plan)-1].Every = &Number{Values: []Value{{N: 1}}}
				p.i++
			}
			s.Plan[len(s.Plan)-1].Span = p.span(from)
			if p.has("every|foll|following|each|alt") || p.has("and|then|,", "every|foll|following|each|then|on|alt") {
				continue
			}
			return
		case p.takeAny("every|each|foll|following|alt|alternate"):
			alt := p.prev(1).text
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
			e.Span = p.span(from)
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

// alternate reads "every 2nd and 4th row 5 times" after "alternately".
func (p *parser) alternate(s *Shape) {
	from := p.i
	p.takeAny("every|each")
	var list []Every
	for len(list) < 4 {
		e := Every{}
		if p.takeAny("other|alt") {
			e.Every = &Number{Values: []Value{{N: 2}}, Span: p.span(p.i - 1)}
		} else if n, ok := p.nth(); ok {
			e.Every = n
		} else if n := p.number(); n != nil {
			e.Every = n
		} else {
			break
		}
		list = append(list, e)
		if p.takeAny("row|rows|rnd|rnds|round|rounds") && !p.has("and") {
			break
		}
		p.filler("and|,|every")
	}
	if len(list) == 0 {
		p.i = from
		return
	}
	if t := p.times(); t != nil {
		for i := range list {
			list[i].Times = t.N
		}
	}
	s.Plan = append(s.Plan, list...)
}
