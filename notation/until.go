package notation

// until reads "until piece measures 14 (14½, 15) in from beg".
func (p *parser) until(a *Again) bool {
	from := p.i
	if p.take("same", "number|no|amount", "of", "rows|rnds|rounds", "as") || p.take("to", "match") {
		p.filler("for|on|the|as")
		at := p.i
		p.toMark()
		if p.i > at {
			a.Until = &Extent{Span: p.span(from), SameAs: p.text[p.tokAt(at).start:p.prev(1).end]}
		}
		return a.Until != nil
	}
	if !p.takeAny("until|til|till|to|for") {
		return false
	}
	e := &Extent{}
	for k := 0; k < 12 && !p.done(); k++ {
		if m := p.measure(); m != nil {
			e.Length = m
			break
		}
		if t := p.peek(0); t.kind == mark || t.kind == number {
			break
		}
		p.i++
	}
	if e.Length == nil {
		if p.tokAt(from).text == "until" || p.tokAt(from).text == "til" {
			p.toMark()
			if p.has("(") && p.listIn(p.i) > 0 { // "until you have 60 (66, 72) sts"
				p.i = p.peek(0).pair + 1
				p.toMark()
			}
			e.Span = p.span(from)
			a.Until = e
			return true
		}
		p.i = from
		return false
	}
	if p.takeAny("from|above|below|after|beyond|past") {
		p.filler("the|last")
		at := p.i
		p.toMark()
		if p.i > at {
			e.From = p.words(at, p.i)
		}
	} else {
		p.filler("long|in|length|total|or|desired|tall|deep|wide")
	}
	e.Span = p.span(from)
	a.Until = e
	return true
}

// ending reads "ending with a WS row", "ending with Row 3", "ending with dc in
// last st".
func (p *parser) ending(a *Again) bool {
	from := p.i
	if !p.takeAny("ending|end|ends|finishing") {
		return false
	}
	p.filler("with|on|after|having|worked|a|an|at|by")
	if p.sideWords(&a.EndSide) {
		p.filler("row|rnd|facing|for|next")
		return true
	}
	if p.takeAny("row|rnd|round") && p.hasNumber(0) {
		a.EndRow = p.number()
		p.filler("of|the|pat|patt|pattern")
		return true
	}
	if p.prev(1).text == "row" || p.prev(1).text == "rnd" {
		p.i--
	}
	if p.peek(0).kind == ordinal {
		a.EndRow, _ = p.nth()
		p.filler("row|rnd|of|pat|pattern")
		return true
	}
	if s := p.step(); s != nil {
		a.Ending = s
		return true
	}
	p.i = from
	return false
}
