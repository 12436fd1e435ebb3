package notation

import (
	"strings"

	"rowproof/stitch"
)

// stitchName reads the name of a stitch, longest first; nil if none comes next.
func (p *parser) stitchName() *StitchName {
	from := p.i
	loop := BothLoops
	if l := p.loopWords(); l != BothLoops {
		loop = l
		p.filler("only|of|each")
	}
	k, n := p.lookup()
	if n == 0 {
		p.i = from
		return nil
	}
	nameAt := p.i
	p.i += n
	s := &StitchName{Span: p.span(nameAt), Kind: k, Loop: loop}
	s.Text = p.text[s.Span.Start-p.at : s.Span.End-p.at]
	s.Plural = strings.HasSuffix(strings.ToLower(s.Text), "s") && p.opt.Stitches.Name(k, p.opt.Terms) != strings.ToLower(s.Text)
	if loop == BothLoops {
		here := p.i
		p.filler("in|through|thru")
		if l := p.loopWords(); l != BothLoops && !p.has("of") {
			s.Loop = l
			p.filler("only")
		} else {
			p.i = here
		}
	}
	return s
}

// lookup finds the stitch whose name comes next, and its length in tokens.
func (p *parser) lookup() (stitch.Kind, int) {
	t := p.peek(0)
	if t.kind != word && !(t.kind == number && p.peek(1).kind == word) {
		return 0, 0
	}
	if t.kind == number { // "2 dc tog"
		for n := 2; n < 4 && t.frac == 0 && p.peek(n-1).kind == word; n++ {
			if !anyOf(p.peek(n).text, "tog|together|") {
				continue
			}
			name := t.text + p.peek(1).text
			if n == 3 {
				name += " " + p.peek(2).text
			}
			if k, ok := p.opt.Stitches.Lookup(name+"tog", p.opt.Terms); ok {
				return k, n + 1
			}
		}
		return 0, 0
	}
	if notNames[t.text] {
		return 0, 0
	}
	// "dc tog", "sc 2 tog", "dc dec"
	if k, ok := p.opt.Stitches.Lookup(t.text, p.opt.Terms); ok {
		if u := p.peek(1); u.kind == number && anyOf(p.peek(2).text, "tog|together|") {
			if kk, ok := p.opt.Stitches.Lookup(t.text+u.text+"tog", p.opt.Terms); ok {
				return kk, 3
			}
		}
		if u := p.peek(1).text; anyOf(u, "dec|decrease|") && k != stitch.Chain && !strings.Contains(t.text, "tog") {
			if kk, ok := p.opt.Stitches.Lookup(t.text+"2tog", p.opt.Terms); ok {
				return kk, 2
			}
		}
	}
	name, best, bestKind := "", 0, stitch.Kind(0)
	for n := 0; n < 6; n++ {
		t := p.peek(n)
		if t.kind != word && !(t.kind == number && n > 0) {
			break
		}
		if n > 0 {
			if t.space {
				name += " "
			}
		}
		name += t.text
		if k, ok := p.opt.Stitches.Lookup(name, p.opt.Terms); ok {
			best, bestKind = n+1, k
		}
	}
	if best == 0 && strings.HasSuffix(t.text, "st") && len(t.text) > 3 {
		if k, ok := p.opt.Stitches.Lookup(strings.TrimSuffix(t.text, "st")+"-st", p.opt.Terms); ok {
			return k, 1
		}
	}
	return bestKind, best
}

var notNames = map[string]bool{"st": true, "sts": true, "stitch": true, "stitches": true, "in": true, "a": true, "p": true, "row": true, "rnd": true, "round": true, "turn": true, "next": true}

// loopWords reads "BLO", "back loop only", "front lps".
func (p *parser) loopWords() Loop {
	from := p.i
	p.filler("the|working|work")
	switch t := p.peek(0).text; {
	case anyOf(t, "blo|bl|blp|blps|tbl|"):
		p.i++
		return BackLoop
	case anyOf(t, "flo|fl|flp|flps|tfl|"):
		p.i++
		return FrontLoop
	case t == "3lo":
		p.i++
		return ThirdLoop
	case anyOf(t, "back|front|third|3rd|rear|") && anyOf(p.peek(1).text, "lp|lps|loop|loops|"):
		p.i += 2
		p.filler("only")
		switch t {
		case "back", "rear":
			return BackLoop
		case "front":
			return FrontLoop
		}
		return ThirdLoop
	case anyOf(t, "back|front|") && anyOf(p.peek(1).text, "lp-only|loop-only|"):
		p.i += 2
		if t == "back" {
			return BackLoop
		}
		return FrontLoop
	}
	p.i = from
	return BothLoops
}

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
			p.space(&Place{})
			pl.What = StitchOrSpace
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

// which reads "next 5 sts", "each st across", "2nd ch from hook".
func (p *parser) which(pl *Place) bool {
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
			return p.unit(pl) || true
		}
		if p.has("first|last|rem|remaining") {
			return p.which(pl)
		}
		if p.startsNumber() && !p.spaceAhead() {
			pl.Which, pl.N = Next, p.number()
			return p.unit(pl)
		}
		pl.Which = Each
		p.filler("rem|remaining|single|and|every|unworked")
		if p.takeAny("other") { // "every other st" leaves some out: not told here
			return false
		}
		if !p.unit(pl) {
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
		if p.takeAny("unworked|skipped|free|unused") {
			pl.Which = Remaining
		}
		if p.startsNumber() && !p.spaceAhead() && p.peek(1).text != "-" {
			pl.N = p.number()
		}
		p.takeAny("unworked|skipped|free|unused|marked")
		p.unit(pl)
		p.ofPlace(pl)
		return true
	case anyOf(t.text, "first|1st|"):
		if p.has("first|1st", "ch", "-") || p.has("first|1st", "ch|chain", "from|of") || p.hasNumber(1) && p.hasAny(2, "ch") && !p.hasAny(3, "sp|-|s") && p.made {
			break
		}
		p.i++
		pl.Which = First
		if p.takeAny("unworked|skipped|free") {
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
	each := p.toks[max(0, p.i-1)].text == "each" || p.toks[max(0, p.i-1)].text == "every"
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
	case pl.What == Space && (p.unit(q) && (q.What == AStitch || q.What == AnyStitch)):
	case pl.What != Space && (p.space(q) || p.takeAny("ch|chs|chain|chains")):
	default:
		p.i = from
		return
	}
	pl.What, pl.Kind, pl.Chains = StitchOrSpace, 0, nil
}

// turningUnit reads the chain whose top is meant.
func (p *parser) turningUnit(pl *Place) bool {
	p.filler("beg|beginning|starting|turning|first|initial")
	from := p.i
	if p.hasNumber(0) && p.peek(1).text == "ch" {
		pl.Chains = p.number()
		p.i++
		pl.What = TurningChain
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

// spaceAhead tells whether a number belongs to a chain space: "2ch-sp".
func (p *parser) spaceAhead() bool {
	from := p.i
	ok := p.space(&Place{})
	p.i = from
	return ok
}

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
	if p.has("of|in") && p.hasNumber(1) && p.hasAny(2, "ch|chs") { // "3rd of 5ch"
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
	case p.hasNumber(0) && p.hasAny(1, "ch|chs") && !p.hasAny(2, "-|sp|lp"):
		of.Chains, of.What, of.Which = p.number(), TurningChain, Top
		p.i++
	case p.which(of):
	case !p.turningUnit(of):
		p.i = from
		return true
	}
	next := p.toks[at].text == "next" || p.toks[at].text == "same" || p.toks[at].text == "each"
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
	p.filler("the|first|last|previous|prev|sl|st|join|joining|joined|was|made|dc|sc|hdc|tr|stitch|slip|tch|beg|ch|base|of|worked|cluster|you|just|your|where")
}

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
		case p.take("end"):
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
	return nil
}
