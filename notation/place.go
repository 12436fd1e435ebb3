package notation

// target reads where stitches go, after "in", "into", "over", "around". It is
// nil when no place comes next.
func (p *parser) target() *Place {
	from := p.i
	pl := &Place{}
	p.filler("the|a|an|your|this|that|to|all")
	if l := p.loopWords(); l != BothLoops {
		pl.Loop = l
		p.filler("only|of|the|in")
	}
	ok := p.which(pl)
	if !ok && pl.Loop == BothLoops {
		p.i = from
		return nil
	}
	if !ok { // "in BLO" alone
		pl.Which = Next
		pl.Span = p.span(from)
		return pl
	}
	p.followers(pl)
	pl.Span = p.span(from)
	return pl
}

// followers reads what may stand after a place.
func (p *parser) followers(pl *Place) {
	for {
		from := p.i
		switch {
		case p.startsNumber() && (p.hasAfterNumber("row|rows|rnd|rnds|round|rounds", "below|down|previous")):
			pl.Below = p.number()
			p.i += 2
			if at := p.i; p.has("next|the|same|first|last") {
				q := &Place{}
				p.filler("the")
				if !p.which(q) {
					p.i = at
				}
			}
			continue
		case p.take("from", "hook"), p.take("from", "the", "hook"):
			continue
		case pl.What == Space && (p.take("bet|between", "groups|shells|clusters|sets") || p.take("bet|between", "3", "-", "dc|tr", "groups|clusters")):
			continue
		case p.take("from|in", "row|rnd|round", "below|before"), p.take("of", "row|rnd|round", "below"), p.take("in|of|on", "previous|prev|last", "row|rnd|round"):
			continue
		case p.has("made|worked|only"):
			if p.peek(0).text == "made" {
				pl.New = true
			}
			p.i++
			continue
		case p.take("just", "made"):
			pl.New = true
			continue
		case p.has("of", "row|rnd|round|rows") && p.hasNumber(2):
			p.i += 2
			p.ofRow = p.number()
			continue
		case p.has("as|where") && p.hasAny(1, "join|joining|joined|sl|last|prev|previous|first"):
			p.i++
			p.joinWords()
			continue
		case p.take("at", "base", "of"):
			p.filler("the|beg")
			p.unit(&Place{})
			pl.Which = Same
			continue
		case pl.To == nil && p.has("across|around|along|to") && pl.Which != Each:
			if pl.Which == Next && pl.N == nil && p.has("across|around") {
				pl.Which = Each
				pl.To = p.limit()
				continue
			}
			if p.has("across|around|along") {
				p.i++
				p.filler("the|row|rnd|round|edge|entire")
				continue
			}
		}
		p.i = from
		return
	}
}

func (p *parser) hasAny(k int, list string) bool { return anyOf(p.peek(k).text, list) }

func (p *parser) hasAfterNumber(words ...string) bool {
	from := p.i
	p.number()
	ok := p.has(words...)
	p.i = from
	return ok
}

func (p *parser) joinWords() {
	p.filler("the|first|last|previous|prev|your|beg|beginning|turning|starting")
	if p.hasNumber(0) && p.hasAny(1, "ch") {
		p.i++
	}
	if p.takeAny("ch|chain") {
		p.take("-")
		if p.hasNumber(0) {
			p.i++
		}
	}
	p.filler("the|first|last|previous|prev|sl|st|join|joining|joined|was|made|dc|sc|hdc|htr|tr|dtr|stitch|slip|tch|beg|ch|base|of|worked|cluster|you|just|your|where")
}
