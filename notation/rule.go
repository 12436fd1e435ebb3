package notation

import "rowproof/stitch"

// rule reads a sentence that governs other lines.
func (p *parser) rule() []Step {
	from := p.i
	r := &Rule{}
	if p.has("note|notes") && p.hasAny(1, ":|.|1|2") {
		p.i += 2
		p.filler(":|.")
		p.note = true
		return []Step{&Remark{Span: p.span(from)}}
	}
	switch {
	case p.termsRule(r), p.repeatRule(r), p.multipleRule(r), p.spiralRule(r), p.spacesRule(r), p.turningRule(r), p.joinRule(r), p.loopRule(r), p.turnRule(r):
		r.Span = p.span(from)
		return []Step{r}
	}
	p.i = from
	return nil
}

func (p *parser) termsRule(r *Rule) bool {
	from := p.i
	for k := 0; k < 8; k++ {
		t := p.peek(k)
		if t.kind == mark && t.text != ":" {
			break
		}
		if anyOf(t.text, "us|uk|american|british|") && (anyOf(p.peek(k+1).text, "terms|terminology|crochet|english|abbreviations|") || anyOf(p.peek(k+1).text, "(|") || k > 0 && anyOf(p.peek(k-1).text, "terms|terminology|:|")) {
			r.About = AboutTerms
			r.Terms = stitch.US
			if t.text == "uk" || t.text == "british" {
				r.Terms = stitch.UK
			}
			p.toSentence()
			return true
		}
	}
	p.i = from
	return false
}

// repeatRule reads "12-st rep", "worked on a 6-st, 4-row rep".
func (p *parser) repeatRule(r *Rule) bool {
	from := p.i
	p.filler("worked|work|on|over|a|an|the|pattern|is")
	if n := p.number(); n != nil && p.take("-") && p.takeAny("st|stitch|sts") {
		if p.take(",") {
			p.number()
			p.take("-")
			p.takeAny("row|rnd|round")
		}
		if p.takeAny("rep|repeat|multiple") {
			p.filler("pattern|pat")
			r.About, r.Multiple = AboutMultiple, &Multiple{Of: n}
			return true
		}
	}
	p.i = from
	return false
}

func (p *parser) multipleRule(r *Rule) bool {
	from := p.i
	m := &Multiple{}
	p.filler("worked|over|work|stitch|pattern|pat|st|is|a|an|any|the|with|:")
	if p.takeAny("ch|chain") {
		m.OfChains = true
		p.filler("a|any|an")
	}
	p.filler("even|odd|foundation")
	if !p.takeAny("multiple|multiples|mult") || !p.take("of") {
		p.i = from
		return false
	}
	if m.Of = p.number(); m.Of == nil {
		p.i = from
		return false
	}
	p.multipleUnit(m)
	for p.has("+") || p.has("plus") {
		p.i++
		n := p.number()
		if n == nil {
			break
		}
		if m.Plus == nil {
			m.Plus = n
		} else {
			m.Add = n
		}
		p.multipleUnit(m)
		p.take(",")
	}
	if p.has("(") && p.hasAny(1, "add|plus|+") {
		closing := p.peek(0).pair
		p.i += 2
		m.Add = p.number()
		if closing > 0 {
			p.i = closing + 1
		}
	}
	p.filler("for|the|foundation|base|beg|turning|ch|chain|starting|tch|t-ch|edge|sts|st")
	r.About, r.Multiple = AboutMultiple, m
	return true
}

func (p *parser) multipleUnit(m *Multiple) {
	if p.has("ch|chs|chains") && m.Plus == nil {
		m.OfChains = true
	}
	p.filler("sts|st|stitches|chs|ch|chains|shells")
}

func (p *parser) spiralRule(r *Rule) bool {
	from := p.i
	p.filler("worked|work|working|this|is|piece|in|continuous|a|all|are|the|rnds|rounds|hat|body|and|will|be")
	if p.takeAny("spiral|spirals") || p.tokAt(max(from, p.i-1)).text == "continuous" && p.takeAny("rounds|rnds") {
		r.About = AboutSpiral
		p.toMark()
		return true
	}
	p.i = from
	if p.not() && p.takeAny("join") && p.takeAny("rnds|rounds|rnd|at|each|round|the|ends") {
		p.toMark()
		r.About = AboutSpiral
		return true
	}
	p.i = from
	return false
}

// spacesRule reads "Ch-1 sps count as sts".
func (p *parser) spacesRule(r *Rule) bool {
	from := p.i
	p.filler("the|each|all|every|count|counting")
	pl := &Place{}
	if !p.space(pl) {
		p.i = from
		return false
	}
	at := p.i
	p.filler("are|is|always|also|and|sts|each")
	c := p.countsWords()
	if c == nil && at > from && p.tokAt(from).text == "count" && p.takeAny("as") {
		c = &Counts{}
	}
	if c == nil {
		p.i = from
		return false
	}
	r.About, r.Chains, r.Counts = AboutSpaces, pl.Chains, c
	p.filler("a|st|sts|stitch|stitches|one|1|each|throughout|in|st|count|as")
	return true
}

// turningRule reads "The turning ch 1 does not count as a st", "Ch 2 at beg of
// rnds does not count", "beg ch-3 counts as first dc".
func (p *parser) turningRule(r *Rule) bool {
	from := p.i
	p.filler("the|a|your|note|:|all|each|every|unless|otherwise|stated")
	p.filler("turning|beg|beginning|starting|initial|first")
	switch {
	case p.has("ch|chain|chs|chains"):
		p.i++
		p.take("(", "s", ")")
		p.take("-")
		p.filler("of|a")
		if p.hasNumber(0) || p.numberAt(0) {
			r.Chains = p.number()
		}
	case p.hasNumber(0) && p.hasAny(1, "ch|chain"):
		r.Chains = p.number()
		p.i++
	case p.takeAny("tch|t-ch"):
	default:
		p.i = from
		return false
	}
	if p.has("(") || p.has("[") { // "Ch 3 (counts as dc)" makes the chain
		p.i = from
		return false
	}
	if p.row && !p.note && !p.made && p.tokAt(from).text != "the" && p.has("count|counts|does|do|-|--|=|,|here|never") {
		p.i = from // "Row 2: Ch 3 counts as dc, ..." makes it too
		return false
	}
	other := p.otherChain()
	p.filler("made|worked|at|the|beg|beginning|start|of|each|every|a|row|rows|rnd|rnds|round|rounds|and|turn|turning|all|an|or|never|for|in|throughout|pattern|this|s|on|always|hdc|dc|sc|htr|tr|sts|st|is|,")
	for p.i > from && anyOf(p.prev(1).text, "never|always|is|") {
		p.i--
	}
	c := p.countsWords()
	if c == nil {
		p.i = from
		return false
	}
	if other != nil {
		c.Of = other
	}
	r.About, r.Counts = AboutTurningChain, c
	p.filler("throughout|here|and|in|the|this|pattern|of|each|row|rnd|unless|otherwise|stated|noted|all|rows|rnds|rounds")
	return true
}

// otherChain reads the second chain of "ch 1 and ch 2 do not count", nil when
// there is none.
func (p *parser) otherChain() *Number {
	from := p.i
	if p.takeAny("and|or|&") {
		if p.takeAny("ch|chain") {
			p.take("-")
			if p.hasNumber(0) {
				return p.number()
			}
		} else if p.hasNumber(0) && p.hasAny(1, "ch|chain") {
			n := p.number()
			p.i++
			return n
		}
	}
	p.i = from
	return nil
}

// joinRule reads "Join with sl st in first st at end of each rnd".
func (p *parser) joinRule(r *Rule) bool {
	from := p.i
	s := p.joinStep()
	if s == nil {
		p.i = from
		return false
	}
	j := s[0].(*Join)
	if !(p.has("at", "end|the") || p.has("to", "close|join|end") || p.has("unless") || p.has("each|every", "rnd|round")) {
		p.i = from
		return false
	}
	at := p.i
	p.toMark()
	for i := at; i < p.i; i++ {
		if anyOf(p.tokAt(i).text, "each|every|rnds|rounds|unless|all|") {
			r.About, r.Join = AboutJoins, j.Place
			return true
		}
	}
	p.i = from
	return false
}

// loopRule reads "working in back lps only".
func (p *parser) loopRule(r *Rule) bool {
	from := p.i
	if !p.takeAny("working|work|all|worked|crochet") {
		return false
	}
	p.filler("in|through|rows|are|rnds|sts|stitches|into|the|worked|from|this|point|row|rnd|is|under|on")
	l := p.loopWords()
	if l == BothLoops {
		p.i = from
		return false
	}
	p.filler("only|of|throughout|for|this|row|rnd|each|now|on|the")
	if p.i > from && p.prev(1).text == "each" {
		p.i--
	}
	if p.has("st|sts") {
		p.i = from
		return false
	}
	r.About, r.Loop = AboutLoop, l
	return true
}

// turnRule reads "turn at end of each row".
func (p *parser) turnRule(r *Rule) bool {
	from := p.i
	p.not()
	if p.takeAny("turn") && p.take("at|after") {
		at := p.i
		p.toMark()
		for i := at; i < p.i; i++ {
			if anyOf(p.tokAt(i).text, "each|every|rows|rounds|rnds|") {
				r.About = AboutTurning
				return true
			}
		}
	}
	p.i = from
	return false
}
