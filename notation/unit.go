package notation

import (
	"rowproof/stitch"
)

// unit reads what kind of place is meant: "sts", "dc", "ch-2 sp", "ch".
func (p *parser) unit(pl *Place) bool {
	t := p.peek(0)
	switch {
	case anyOf(t.text, "st|sts|stitch|stitches|stch|"):
		p.i++
		if p.take("(", "s", ")") {
		}
		pl.What = AnyStitch
		if p.has("and|&|or", "ch|chs|chain|chains") || p.has("and|&|or", "sp|sps|space|spaces") {
			p.i++
			pl.What = StitchOrSpace
			if !p.space(&Place{}) && p.takeAny("ch|chs|chain|chains") {
				pl.What = StitchOrChain
			}
		}
		return true
	case p.space(pl):
		return true
	case anyOf(t.text, "tch|t-ch|tchs|turning-ch|turning-chain|"):
		p.i++
		pl.What = TurningChain
		return true
	case anyOf(t.text, "turning|beg|beginning|starting|initial|foundation|base|") && anyOf(p.peek(1).text, "ch|chain|chs|chains|") && anyOf(t.text, "foundation|base|"):
		p.i += 2
		pl.What = Foundation
		return true
	case anyOf(t.text, "turning|beg|beginning|starting|first|initial|") && anyOf(p.peek(1).text, "ch|chain|chs|"), t.text == "t" && p.has("t", "-", "ch"):
		p.i += 2
		if t.text == "t" {
			p.i++
		}
		pl.What = TurningChain
		p.chainCount(pl)
		return true
	case anyOf(t.text, "beg|beginning|turning|starting|") && (p.peek(1).kind == number) && anyOf(p.peek(2).text, "ch|chain|"):
		p.i++
		pl.Chains = p.number()
		p.i++
		pl.What = TurningChain
		return true
	case anyOf(t.text, "ch|chs|chain|chains|"):
		p.i++
		p.take("(", "s", ")")
		pl.What = Chain
		if p.has("-") && p.hasNumber(1) {
			p.i++
			pl.Chains = p.number()
			if p.takeAny("sp|sps|space|spaces|lp|lps|loop|loops|arch|arches") {
				pl.What = Space
			} else {
				pl.What = TurningChain
				if p.takeAny("turning|beg|beginning|starting") {
					p.takeAny("ch|chain")
				}
			}
		}
		return true
	case anyOf(t.text, "row-end|row-ends|edge|edges|"):
		p.i++
		pl.What = RowEnd
		return true
	case t.text == "row" && anyOf(p.peek(1).text, "end|ends|"):
		p.i += 2
		pl.What = RowEnd
		return true
	case anyOf(t.text, "ring|circle|"):
		p.i++
		pl.What = ARing
		return true
	case anyOf(t.text, "corner|corners|"):
		p.i++
		if at := p.i; !p.space(pl) {
			p.i = at
			p.takeAny("sp|sps|space|st|sts|stitch")
		}
		pl.What = Corner
		return true
	case p.hasNumber(0) && p.peek(1).text == "-" && p.hyphenStitch(pl):
		return true
	case anyOf(t.text, "place|spot|"):
		p.i++
		return true
	}
	if k, n := p.lookup(); n > 0 {
		p.i += n
		if !p.has("sp|sps|space|lp", "of|in|on") && p.takeAny("sp|sps|space|spaces") { // "V-st sp": the space of it
			pl.What = Space
			return true
		}
		pl.What, pl.Kind = AStitch, k
		return true
	}
	return false
}

// hyphenStitchAt reads "2-dc cl" from token i on, and only if it names a stitch
// of its own.
func (p *parser) hyphenStitchAt(pl *Place, i int) bool {
	from := p.i
	p.i = i
	plain := p.i + 2
	if p.peek(1).text == "-" && p.hyphenStitch(pl) && p.i > plain+1 {
		return true
	}
	p.i = from
	return false
}

// hyphenStitch reads "5-dc group", "3-dc cluster".
func (p *parser) hyphenStitch(pl *Place) bool {
	from := p.i
	p.i += 2
	k, n := p.lookup()
	if n == 0 || k == stitch.Chain {
		p.i = from
		return false
	}
	p.i += n
	pl.What, pl.Kind = AStitch, k
	if !p.takeAny("group|groups|grp|set|sets|fan|fans|block") {
		if whole, n := p.lookup(); n > 0 {
			pl.Kind = whole
			p.i += n
		}
	}
	return true
}

func (p *parser) hasNumber(k int) bool { t := p.peek(k); return t.kind == number && t.frac == 0 }

// space reads a chain space: "ch-2 sp", "2ch-sp", "sp", "ch-5 lp".
func (p *parser) space(pl *Place) bool {
	from := p.i
	switch {
	case p.takeAny("sp|sps|space|spaces|lp|lps|loop|loops|arch|arches"):
		p.take("(", "s", ")")
		pl.What = Space
		return true
	case p.take("ch-sp|ch-sps|chain-sp"):
		pl.What = Space
		return true
	case p.has("ch|chain|chs") && (anyOf(p.peek(1).text, "sp|sps|space|spaces|lp|lps|loop|loops|") || p.peek(1).text == "-" && anyOf(p.peek(2).text, "sp|sps|space|spaces|lp|loop|")):
		p.i++
		p.take("-")
		p.i++
		pl.What = Space
		return true
	case p.has("ch|chain") && (p.peek(1).text == "-" && p.hasNumber(2) || p.hasNumber(1)):
		p.i++
		p.take("-")
		n := p.number()
		p.take("-")
		p.takeAny("corner")
		if p.takeAny("sp|sps|space|spaces|lp|lps|loop|loops|arch|arches") {
			pl.What, pl.Chains = Space, n
			return true
		}
	case p.hasNumber(0) && (p.peek(1).text == "ch" || p.peek(1).text == "-" && p.peek(2).text == "ch" || p.peek(1).text == "ch-sp" || p.peek(1).text == "chain"):
		n := p.number()
		p.take("-")
		whole := p.take("ch-sp")
		if !whole {
			p.i++
			p.take("-")
		}
		if whole || p.takeAny("sp|sps|space|spaces|lp|lps|loop|loops|arch|arches") {
			pl.What, pl.Chains = Space, n
			return true
		}
	}
	p.i = from
	return false
}

// chainCount reads the n of "beg ch-3".
func (p *parser) chainCount(pl *Place) {
	if p.has("-") && p.hasNumber(1) {
		p.i++
		pl.Chains = p.number()
	} else if p.hasNumber(0) {
		pl.Chains = p.number()
	}
	if p.takeAny("sp|space") {
		pl.What = Space
	}
}

// withSpaces reads "and ch-1 sp" after "each st": both are worked into.
func (p *parser) withSpaces(pl *Place) {
	from := p.i
	if !p.takeAny("and|&|or") {
		return
	}
	p.take("in|into")
	p.takeAny("each|every")
	if pl.What != AStitch && pl.What != AnyStitch && pl.What != Space {
		p.i = from
		return
	}
	q := &Place{}
	switch {
	case pl.What == Space && (p.unit(q) && (q.What == AStitch || q.What == AnyStitch)) && !p.has("in|into"):
	case pl.What != Space && p.space(q):
	case pl.What != Space && p.takeAny("ch|chs|chain|chains"):
		pl.What, pl.Kind, pl.Chains = StitchOrChain, 0, nil
		return
	default:
		p.i = from
		return
	}
	if pl.What != Space {
		pl.Chains = q.Chains
	}
	pl.What, pl.Kind = StitchOrSpace, 0
}

// turningUnit reads the chain whose top is meant.
func (p *parser) turningUnit(pl *Place) bool {
	p.filler("beg|beginning|starting|turning|first|initial")
	from := p.i
	if p.numberedChain(pl) {
		return true
	}
	if !p.unit(pl) {
		p.i = from
		pl.What = TurningChain
		return true
	}
	if pl.What == Chain {
		pl.What = TurningChain
		p.chainCount(pl)
		pl.What = TurningChain
	}
	return true
}

// chainNumberAt tells whether a number of chains that is no space stands k
// tokens on: "3ch", "3-ch", "3 chains".
func (p *parser) chainNumberAt(k int) bool {
	if !p.hasNumber(k) {
		return false
	}
	if p.peek(k+1).text == "-" {
		k++
	}
	return p.hasAny(k+1, "ch|chs|chain|chains") && !p.hasAny(k+2, "-|sp|sps|space|spaces|lp|lps|loop|loops")
}

// numberedChain reads the turning chain of "top of 3-ch".
func (p *parser) numberedChain(pl *Place) bool {
	if !p.chainNumberAt(0) {
		return false
	}
	pl.Chains, pl.What = p.number(), TurningChain
	p.take("-")
	p.i++
	return true
}

// spaceAt tells whether a chain space stands k tokens on.
func (p *parser) spaceAt(k int) bool {
	p.i += k
	ok := p.spaceAhead()
	p.i -= k
	return ok
}

// spaceAhead tells whether a number belongs to a chain space: "2ch-sp".
func (p *parser) spaceAhead() bool {
	from := p.i
	ok := p.space(&Place{})
	p.i = from
	return ok
}
