package notation

// bracket reads "( ... )" and tells its seven jobs apart.
func (p *parser) bracket() []Step {
	open := p.peek(0)
	if open.kind != mark || open.text != "(" && open.text != "[" && open.text != "{" {
		return nil
	}
	from := p.i
	if open.pair < 0 || open.pair >= p.end {
		p.i++
		return []Step{&Remark{Span: p.span(from)}}
	}
	closing := open.pair
	if p.opt.Sizes > 1 && p.listIn(p.i) == p.opt.Sizes {
		return nil
	}
	if n := p.listIn(p.i); n > 0 && closing+1 >= p.end || p.i+1 == closing {
		p.i = closing + 1
		return []Step{&Remark{Span: p.span(from)}}
	}
	p.i = closing + 1
	g := &Group{}
	p.groupTail(g)
	after := p.i
	if g.Times == nil && len(g.In) == 0 {
		if s := p.remarkBracket(from, closing); s != nil {
			return s
		}
	}
	if p.depth++; p.depth > maxDepth {
		p.depth--
		p.i = closing + 1
		span := p.span(from)
		p.unread = append(p.unread, span)
		return []Step{&Unknown{Span: span}}
	}
	end := p.end
	p.i, p.end = from+1, closing
	g.Body = p.sequence(false)
	p.end, p.i = end, after
	p.depth--
	g.Span = p.span(from)
	return []Step{g}
}

// groupTail reads what stands after a bracket: times, a place, a limit.
func (p *parser) groupTail(g *Group) {
	from := p.i
	if t := p.times(); t != nil {
		g.Times = t
		at := p.i
		if p.takeAny("in|into|around") {
			p.inPlaces(g, at)
		}
		return
	}
	p.i = from
	switch {
	case p.has("in|into|around|over|on") && !(p.has("around") && p.endOfPlace(1)):
		p.i++
		p.inPlaces(g, from)
		at := p.i
		if t := p.times(); t != nil {
			g.Times = t
		} else {
			p.i = at
		}
	case p.has("across|around|along"), p.has("to|until", "end|last|next|tch|marker|marked|top|within|corner"):
		if l := p.limit(); l != nil {
			g.Times = &Times{Span: l.Span, To: l}
		}
	case p.has("rep|repeat|rpt"):
		p.i++
		p.filler("this|these|the|to|from|bracketed|section")
		if t := p.times(); t != nil {
			g.Times = t
			g.Times.More = true
		} else if l := p.limit(); l != nil {
			g.Times = &Times{Span: l.Span, To: l}
		} else {
			p.i = from
		}
	case p.has("each", "in"):
		p.i++
		p.groupTail(g)
	}
}

func (p *parser) inPlaces(g *Group, back int) {
	pl := p.target()
	if pl == nil {
		p.i = back
		return
	}
	g.In = append(g.In, pl)
	for {
		at := p.i
		if !p.take("and") || !p.takeAny("in|into") {
			p.i = at
			return
		}
		q := p.target()
		if q == nil {
			p.i = at
			return
		}
		g.In = append(g.In, q)
	}
}

// remarkBracket reads a bracket that orders nothing: "(RS)", "(shell made)",
// "(counts as dc)", "(see Notes)".
func (p *parser) remarkBracket(from, closing int) []Step {
	end := p.end
	p.i, p.end = from+1, closing
	defer func() { p.end = end }()
	if c := p.countsWords(); c != nil {
		p.i = closing + 1
		switch {
		case p.chain != nil && p.chain.Counts == nil && !p.note:
			p.chain.Counts = c
			return []Step{}
		case p.skip != nil && p.skip.Counts == nil:
			p.skip.Counts = c
			return []Step{}
		}
		return []Step{&Rule{Span: p.span(from), About: AboutTurningChain, Counts: c}}
	}
	p.i = from + 1
	if c := p.count(closing); c != nil && len(c.Items) > 0 && (c.Items[0].What != StitchOrSpace) {
		p.i = closing + 1
		c.Span = p.span(from)
		p.counts = append(p.counts, c)
		return []Step{}
	}
	orders := false
	for i := from + 1; i < closing; i++ {
		p.i = i
		if t := &p.toks[i]; t.kind == word {
			if beginsOrder[t.text] {
				orders = true
			}
			if _, n := p.lookup(); n > 0 {
				orders = true
			}
		}
	}
	last := p.tokAt(closing - 1).text
	if !orders || p.hasWord(from, closing, "see|made|completed|same|rather|instead|like|example|optional|note|if|is|are|these|here|will|should|you|loops|hook|i|called|means|corner|page|photo|picture") || anyOf(last, "made|worked|completed|") || anyOf(p.tokAt(from+1).text, "see|bet|between|") || p.tokAt(from+1).text == "this" || p.tokAt(from+1).text == "note" || p.tokAt(from+1).text == "you" {
		p.i = closing + 1
		return []Step{&Remark{Span: p.span(from)}}
	}
	return nil
}

// hasWord tells whether one of the words stands between two tokens.
func (p *parser) hasWord(from, to int, list string) bool {
	for i := from; i < to && i < from+30; i++ {
		if p.tokAt(i).kind == word && anyOf(p.tokAt(i).text, list) {
			return true
		}
	}
	return false
}
