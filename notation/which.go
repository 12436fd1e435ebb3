package notation

// which reads "next 5 sts", "each st across", "2nd ch from hook".
func (p *parser) which(pl *Place) bool {
	if p.nest++; p.nest > 2*maxDepth {
		p.nest--
		return false
	}
	defer func() { p.nest-- }()
	from := p.i
	t := p.peek(0)
	switch {
	case anyOf(t.text, "post|stem|"):
		p.i++
		pl.Loop = Post
		p.filler("of|the|around")
		return p.which(pl)
	case p.take("front|back", "post|posts"):
		pl.Loop = Post
		p.filler("of|the")
		return p.which(pl)
	case anyOf(t.text, "each|every|ea|"):
		p.i++
		p.filler("of|the")
		if p.takeAny("next|following|foll") {
			p.filler("the")
			pl.Which, pl.N = Next, p.number()
			p.unit(pl)
			return true
		}
		if p.has("first|last|rem|remaining") {
			return p.which(pl)
		}
		if p.startsNumber() && !p.spaceAhead() {
			pl.Which, pl.N = Next, p.number()
			return p.unit(pl)
		}
		pl.Which = Each
		p.filler("rem|remaining|and|every|unworked")
		if !p.has("single", "crochet") {
			p.filler("rem|remaining|single|and|every|unworked")
		}
		if p.takeAny("other") { // "every other st" leaves some out: not told here
			return false
		}
		if !p.unit(pl) && !p.has("across|around|along") {
			return p.rowEnds(pl)
		}
		p.withSpaces(pl)
		if at := p.i; p.takeAny("of|in") && p.whichWord() {
			if q := p.target(); q != nil {
				pl.Of, pl.To = q, q.To
			}
		} else {
			p.i = at
		}
		if pl.To == nil {
			pl.To = p.limit()
		}
		return true
	case anyOf(t.text, "next|following|foll|nxt|"):
		p.i++
		p.filler("the|available")
		pl.Which = Next
		if p.takeAny("unworked|skipped|missed|free|unused") {
			pl.Which = Remaining
		}
		if p.startsNumber() && !p.spaceAhead() && p.peek(1).text != "-" {
			pl.N = p.number()
		}
		p.takeAny("unworked|skipped|missed|free|unused|marked")
		p.unit(pl)
		p.ofPlace(pl)
		return true
	case anyOf(t.text, "first|1st|"):
		if p.spaceAt(1) {
			p.i++
			pl.Which = First
			p.space(pl)
			p.ofPlace(pl)
			return true
		}
		if p.has("first|1st", "ch", "-") || p.has("first|1st", "ch|chain", "from|of") || p.hasNumber(1) && p.hasAny(2, "ch") && !p.hasAny(3, "sp|-|s") && p.made {
			break
		}
		p.i++
		pl.Which = First
		if p.takeAny("unworked|skipped|missed|free") {
			pl.Which = Remaining
		}
		if p.startsNumber() && !p.spaceAhead() {
			pl.N = p.number()
		}
		p.unit(pl)
		return true
	case t.text == "last":
		p.i++
		pl.Which = Last
		if p.startsNumber() && !p.spaceAhead() {
			pl.N = p.number()
		}
		p.unit(pl)
		return true
	case t.text == "same":
		p.i++
		pl.Which = Same
		p.unit(pl)
		if p.takeAny("as|where|with") {
			p.filler("the")
			pl.First = p.has("first|beg|beginning")
			p.joinWords()
		}
		return true
	case anyOf(t.text, "unworked|skipped|free|unused|") && anyOf(p.peek(1).text, "lp|loop|lps|loops|"):
		p.i++
		pl.Which, pl.What = Next, Foundation
		p.i++
		if p.takeAny("of") {
			p.filler("the")
			p.which(&Place{})
		}
		return true
	case anyOf(t.text, "unworked|skipped|missed|free|"):
		p.i++
		pl.Which = Remaining
		if p.startsNumber() && !p.spaceAhead() {
			pl.N = p.number()
		}
		return p.unit(pl)
	case anyOf(t.text, "rem|remaining|"):
		p.i++
		pl.Which = Each
		if p.startsNumber() && !p.spaceAhead() {
			pl.N, pl.Which = p.number(), Next
		}
		if anyOf(p.peek(0).text, "lp|loop|lps|loops|") && anyOf(p.peek(1).text, "of|") {
			p.i += 2
			p.filler("the|foundation|beg|beginning|starting|base|first|each")
			p.takeAny("ch|chs|chain|chains")
			pl.What = Foundation
			if pl.Which == Each {
				pl.To = p.limit()
			}
			return true
		}
		if !p.unit(pl) {
			return false
		}
		if pl.Which == Each {
			pl.To = p.limit()
		}
		return true
	case anyOf(t.text, "any|"):
		p.i++
		pl.Which = Any
		return p.unit(pl)
	case anyOf(t.text, "marked|"):
		p.i++
		pl.Which = Marked
		p.unit(pl)
		return true
	case anyOf(t.text, "center|centre|middle|"):
		p.i++
		pl.Which = Centre
		if p.startsNumber() && !p.spaceAhead() {
			pl.N = p.number()
		}
		p.unit(pl)
		if p.take("of") {
			if pl.Of = p.target(); pl.Of != nil && pl.Of.What == TurningChain && pl.Of.Which == Next {
				pl.Of.What = Space
			}
		}
		return true
	case anyOf(t.text, "top|"):
		p.i++
		p.filler("of|the|lp|loop")
		pl.Which = Top
		if p.has("last|first|next|same|each|following") && !p.has("first|last", "ch|3|4|5|2") && !(p.hasNumber(1) && p.hasAny(2, "ch")) {
			q := &Place{}
			if p.which(q) {
				*pl = *q
				return true
			}
		}
		return p.turningUnit(pl)
	case anyOf(t.text, "base|"):
		p.i++
		p.filler("of|the|beg|turning|starting|same|first|initial")
		pl.Which = Same
		if q := (&Place{}); p.hasNumber(0) && p.hasAny(1, "ch|chain") {
			p.i += 2
		} else {
			p.unit(q)
			p.chainCount(q)
		}
		return true
	case t.text == "magic" && anyOf(p.peek(1).text, "ring|circle|loop|"), t.text == "mr", t.text == "mc":
		p.i++
		p.takeAny("ring|circle|loop")
		pl.Which, pl.What = Ring, ARing
		return true
	case anyOf(t.text, "ring|circle|"):
		p.i++
		pl.Which, pl.What = Ring, ARing
		return true
	case anyOf(t.text, "sp|space|spaces|sps|") && anyOf(p.peek(1).text, "bet|between|before|"):
		before := p.peek(1).text == "before"
		p.i += 2
		p.filler("the|next")
		if before {
			pl.Which = Before
		} else if p.takeAny("groups|group|shells|clusters|sets") { // granny rows: the gap itself
			pl.Which, pl.What = Next, Space
			return true
		} else {
			pl.Which = Between
			p.number()
		}
		p.unit(&Place{})
		return true
	case p.has("bet|between") || p.has("both", "loops|lps"):
		if p.take("both", "loops|lps") {
			if p.take("of") {
				p.filler("the")
				return p.which(pl)
			}
			return true
		}
		p.i++
		p.filler("the|next")
		pl.Which = Between
		p.number()
		p.unit(&Place{})
		return true
	}
	if p.rowEnds(pl) {
		return true
	}
	if n, ok := p.nth(); ok {
		return p.nthPlace(pl, n)
	}
	if t.text == "first" { // "first ch-3", "first ch from hook"
		p.i++
		pl.Which = First
		if p.unit(pl) {
			if pl.What == TurningChain {
				pl.Which = Top
			}
			return true
		}
	}
	if p.startsNumber() && !p.spaceAhead() { // "over 2 sts"
		pl.Which, pl.N = Next, p.number()
		if p.unit(pl) {
			return true
		}
		p.i = from
		return false
	}
	if p.unit(pl) {
		if pl.What == TurningChain {
			pl.Which = Top
		}
		p.ofPlace(pl)
		return true
	}
	p.i = from
	return false
}

// rowEnds reads "end of each row", "row ends", "side of each row", "ends of
// rows".
func (p *parser) rowEnds(pl *Place) bool {
	from := p.i
	each := p.tokAt(max(0, p.i-1)).text == "each" || p.tokAt(max(0, p.i-1)).text == "every"
	switch {
	case p.take("row|rows", "end|ends|side|sides|edge"), p.take("row-end|row-ends"), p.take("row", "-", "end|ends"):
	case p.take("end|ends|side|sides|edge", "of"):
		p.filler("the|all")
		each = p.takeAny("each|every") || each
		if !p.takeAny("row|rows|rnd") {
			p.i = from
			return false
		}
	case each && p.take("row|rows") && (p.done() || p.peek(0).kind == mark || p.has("along|down|up|across|around|of")):
	default:
		p.i = from
		return false
	}
	pl.What = RowEnd
	if each || anyOf(p.prev(1).text, "rows|ends|sides|row-ends|") {
		pl.Which = Each
		pl.To = p.limit()
	}
	return true
}

// whichWord tells whether a word that picks places comes next, articles apart.
func (p *parser) whichWord() bool {
	k := 0
	if p.has("the") {
		k = 1
	}
	if p.hasAny(k, "next|same|each|every|first|last|following|foll|corner|any|marked") {
		return true
	}
	from := p.i
	p.i += k
	_, n := p.lookup()
	p.i = from
	return n > 0
}

// ofPlace reads what a place is part of: "ch-2 sp of next shell".
func (p *parser) ofPlace(pl *Place) {
	from := p.i
	if !p.takeAny("of|on") || !p.whichWord() || p.has("the", "row|rnd|round") || p.has("next|last|first", "row|rnd|round") {
		p.i = from
		return
	}
	q := p.target()
	if q == nil {
		p.i = from
		return
	}
	pl.Of = q
	if q.Which == Each && pl.Which == Next && pl.N == nil {
		pl.Which, pl.To = Each, q.To
	}
}
