package notation

// leaveStep reads "leaving rem sts unworked", "leave last 5 sts unworked".
func (p *parser) leaveStep() []Step {
	from := p.i
	if !p.takeAny("leave|leaving") {
		return nil
	}
	l := &Leave{}
	p.filler("the|all|and")
	rest := p.takeAny("rem|remaining|other|rest|remainder")
	if rest {
		p.filler("of|the")
		if p.startsNumber() && !p.spaceAhead() {
			l.N = p.number()
		}
		p.unit(&Place{})
	} else if p.takeAny("last|next|center|centre|middle|first") || p.startsNumber() {
		if p.startsNumber() && !p.spaceAhead() {
			l.N = p.number()
		} else {
			l.N = &Number{Values: []Value{{N: 1}}, Span: p.span(from)}
		}
		pl := &Place{}
		p.unit(pl)
	} else if pl := p.target(); pl != nil {
		l.Place = pl
	} else {
		p.i = from
		if p.i++; p.tail() {
			return []Step{&Remark{Span: p.span(from)}}
		}
		return nil
	}
	p.filler("in|of|row|rnd|are|is")
	if !p.takeAny("unworked|unused|free|open|unstitched|unfinished|undone") && !p.take("for") && !(rest && (p.done() || p.peek(0).kind == mark)) {
		if p.i = from + 1; p.tail() {
			return []Step{&Remark{Span: p.span(from)}}
		}
		return nil
	}
	p.filler("for|neck|at|this|time|armhole|opening|sleeve|the|now|shoulder|second|other|side|back|front|center|centre")
	l.Span = p.span(from)
	return []Step{l}
}

// evenlyStep reads "work 72 sc evenly along edge", "inc 6 sts evenly across",
// "sc evenly around".
func (p *parser) evenlyStep() []Step {
	from := p.i
	p.filler("work|make|place|pick|up|and|finish")
	if s := p.rowAround(from); s != nil {
		return s
	}
	e := &Evenly{}
	switch {
	case p.takeAny("inc|increase|increasing"):
		e.Change = 1
	case p.takeAny("dec|decrease|decreasing"):
		e.Change = -1
	}
	if p.startsNumber() {
		e.N = p.number()
	}
	if e.Change == 0 {
		if e.Stitch = p.stitchName(); e.Stitch == nil {
			p.filler("sts|stitches")
			if e.N == nil {
				return nil
			}
		}
	} else {
		p.filler("sts|stitches|st")
		if _, n := p.lookup(); n > 0 {
			p.i += n
		}
	}
	if e.N == nil && p.startsNumber() {
		e.N = p.number()
		p.filler("sts|stitches")
	}
	if e.N == nil || !p.takeAny("evenly|evenly-spaced|even") && !(e.Change == 0 && p.alongEdge()) {
		return nil
	}
	p.filler("spaced|spread")
	if p.has("across|around|along|over|in|to|on|up|down|through") || p.done() || p.peek(0).kind == mark {
		p.toMark()
	}
	e.Along = e.Change == 0
	e.Span = p.span(from)
	if e.Change != 0 && p.has(":") && p.peek(1).text != "" { // how it is done follows
		return []Step{&Remark{Span: e.Span}}
	}
	return []Step{e}
}

// alongEdge tells whether stitches with a number go along an edge: "sc 40 along
// neck edge", "54 sc around armhole".
func (p *parser) alongEdge() bool {
	if !p.has("along|around|across|down|up") {
		return false
	}
	for k := 1; k < 6; k++ {
		t := p.peek(k)
		if t.kind == mark {
			return false
		}
		if anyOf(t.text, "edge|edges|armhole|armholes|neck|neckline|side|sides|opening|row-ends|ends|front|border|hem|cuff") {
			return true
		}
	}
	return false
}

// rowAround reads "1 row of sc evenly around neck edge": a row along an edge
// whose number of stitches is not told.
func (p *parser) rowAround(from int) []Step {
	at := p.i
	p.filler("with|a|one|1")
	if p.takeAny("row|rnd|round") && p.takeAny("of") {
		if s := p.stitchName(); s != nil && (p.has("evenly|even") || p.alongEdge()) {
			w := &Work{Stitch: s}
			if p.has("evenly|even") {
				p.edgePlace(w, p.i)
			} else {
				p.i--
				p.edgePlace(w, p.i+1)
			}
			w.Span = p.span(from)
			return []Step{w}
		}
	}
	p.i = at
	return nil
}

// sideStep reads "working along opposite side of foundation ch", "working
// along row-ends".
func (p *parser) sideStep() []Step {
	from := p.i
	p.filler("now|continue|cont|rotate|turn|and|to|piece|the|do|not|then|your|begin|beg|start")
	if !p.takeAny("working|work|crochet|go|rotate|continuing") && p.i > from && !anyOf(p.prev(1).text, "continue|cont|rotate|to") {
		p.i = from
	}
	if !p.takeAny("along|across|down|up|in|on|around|over|into") {
		return nil
	}
	p.filler("the|other|in")
	o := &OtherSide{}
	switch {
	case p.prev(1).text == "other" && p.has("side|edge", "of", "the|foundation|beg|beginning|starting|chain|ch|chs|base") && !p.has("side", "of", "the", "row|piece|body"):
		p.i += 2
		p.filler("the")
		if !p.has("foundation|beg|beginning|starting|chain|ch|chs|base") {
			return nil
		}
	case p.takeAny("row-ends|row-end") || p.take("row|side|sides|raw|long|short", "ends|edges|edge|of") || p.takeAny("side|sides|edge") && (p.done() || p.peek(0).kind == mark || p.has("of|edge")) || p.take("ends", "of") && p.has("rows|row") || p.take("side", "of", "rows"):
		o.RowEnds = true
	case p.takeAny("opposite|other|second|remaining|rem|unused|free|bottom|underside") || p.prev(1).text == "other":
		p.filler("the|side|of|lp|lps|loop|loops|rem|edge")
		p.filler("the")
		if !p.has("foundation|beg|beginning|starting|chain|ch|chs|base|set") {
			return nil
		}
	default:
		return nil
	}
	p.toMark()
	o.Span = p.span(from)
	return []Step{o}
}
