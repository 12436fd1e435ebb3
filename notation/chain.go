package notation

// chainStep reads "ch 3", "3ch", "make 64 ch", "chain (40, 44)".
func (p *parser) chainStep() []Step {
	from := p.i
	c := &Chains{}
	p.filler("make|work|a|an|another|commence|begin|start|with|of|foundation|beg|also|crochet|initial|starting|turning|the|your|each")
	switch {
	case p.takeAny("ch|chain|chs|chains"):
		if p.has("-") && p.hasNumber(1) && !p.hasAny(2, "sp|sps|lp|lps|loop|space|arch|spaces|loops") {
			p.i++
		}
		p.filler("a|another|of|loosely|on|work")
		if c.N = p.number(); c.N == nil {
			if p.hasAny(0, "l|i") && p.peek(1).kind != word {
				c.N = &Number{Values: []Value{{N: 1}}, Span: p.span(p.i)}
				c.N.Span = Span{Start: p.at + p.peek(0).start, End: p.at + p.peek(0).end}
				p.i++
			} else if !(p.done() || p.peek(0).kind == mark && !p.has("-") || p.has("and|turn")) || p.i != from+1 {
				return nil
			} else {
				c.N = &Number{Values: []Value{{N: 1}}, Span: p.span(from)}
			}
		} else if p.has("-", "ch|st|stitch") || p.has("rows|sps|times") {
			return nil
		}
		p.filler("more|chs|chains|sts|stitches|loosely")
	case p.startsNumber():
		c.N = p.number()
		p.filler("more|loose|foundation")
		if !p.takeAny("ch|chs|chain|chains") || p.has("-", "sp|lp|sps|loop|space") || p.has("sp|sps|lp|lps|loop|space|spaces|loops") {
			return nil
		}
		p.filler("sts|stitches|loosely")
	default:
		return nil
	}
	c.Span = p.span(from)
	if p.has("from", "hook") || p.has("from", "the", "hook") {
		return nil
	}
	c.Counts = p.countsBracket()
	p.chainPurpose()
	return []Step{c}
}

// chainPurpose passes over what the chains are for: "to turn", "for turning
// ch", "for first dc".
func (p *parser) chainPurpose() {
	from := p.i
	switch {
	case p.takeAny("for") && !p.has("next|each|row"):
		p.filler("the|a|your|first|turning|foundation|beg|base|chain|ch|tch|t-ch|corner|sp|space|thumb|picot|dc|tr|hdc|sc|armhole|underarm|buttonhole|neck|loop|left|right|side|button|st|stitch|opening|sleeve")
	case p.take("to", "turn") && p.done() || p.take("as", "a|the|your", "turning|foundation|base|starting", "chain|ch"):
	case p.take("at", "underarm|underarms"), p.take("to", "form"):
		p.toMark()
	default:
		p.i = from
	}
}

// countsBracket reads "(counts as dc, ch 1)", "(does not count as a st)", "=
// first tr", nil when nothing is said.
func (p *parser) countsBracket() *Counts {
	from := p.i
	if (p.has("(") || p.has("[")) && p.peek(0).pair > 0 {
		closing := p.peek(0).pair
		end := p.end
		p.i++
		p.end = closing
		c := p.countsWords()
		p.end = end
		if c != nil {
			p.i = closing + 1
			return c
		}
		p.i = from
		return nil
	}
	p.take(",")
	p.take("--|-")
	p.take("which|this|it")
	if c := p.countsWords(); c != nil {
		return c
	}
	p.i = from
	return nil
}

// countsWords reads what a chain counts as.
func (p *parser) countsWords() *Counts {
	from := p.i
	c := &Counts{}
	p.filler("this|the|skipped|missed|beg|beginning|turning|first|here|and|note|:|it|which|these|unworked|will|starting|do|does|always")
	p.i = from
	lead := 0
	for ; p.i < p.end && lead < 12; p.i++ {
		lead++
		t := p.peek(0)
		if anyOf(t.text, "counts|count|counted|counting|=|is|not|doesn|don|never|now") || t.kind == mark && anyOf(t.text, ".|;|") {
			break
		}
		if t.kind == number && p.i > from && anyOf(p.prev(1).text, "-|ch|") {
			c.Of = &Number{Span: p.span(p.i), Values: []Value{{N: t.n}}}
			c.Of.Span = Span{Start: p.at + t.start, End: p.at + t.end}
		} else if t.kind == number && anyOf(p.peek(1).text, "ch|chs|skipped|missed|") {
			c.Of = &Number{Span: Span{Start: p.at + t.start, End: p.at + t.end}, Values: []Value{{N: t.n}}}
		} else if !anyOf(t.text, "this|the|skipped|missed|beg|beginning|turning|first|here|and|note|:|it|which|these|unworked|will|starting|do|does|always|ch|chs|chain|chains|-|sk|skip|last|t|tch|st|sts|only|ch-sp|") {
			p.i = from
			return nil
		}
	}
	switch {
	case p.take("does|do|did", "not", "count"), p.take("doesn|don", "'", "t", "count"), p.take("not", "counted"), p.take("never", "counts|count"), p.take("not", "count"), p.take("is|are", "not", "counted"), p.take("doesnt", "count"), p.take("not", "counting"):
		c.Not = true
		p.filler("as|a|an|st|sts|stitch|stitches|the|first|1st|in|st-count|count|any|total|your|row|rnd|here|throughout|toward|towards|for|one|1|at|beg|beginning|of|each|rows|rnds|rounds|round|and|pattern|dc|hdc|tr|sc|htr|")
		if p.i > 0 {
			for k := from; k < p.i; k++ {
				if p.tokAt(k).text == "throughout" || p.tokAt(k).text == "here" {
					c.Throughout = true
				}
			}
		}
		return c
	case p.atFirst(from):
	case p.take("counts|count|counted", "as"), p.take("count|counts") && p.has("first|1"), p.take("stands|acts|serves|used|works", "as|for"), p.take("replaces"), p.take("counts|count", "for"), p.take("=", "to"), p.take("="), p.take("is|are", "counted", "as"), p.take("counting", "as"), p.take("now", "counts", "as"):
	default:
		p.i = from
		return nil
	}
	p.countsAs(c)
	return c
}

// atFirst takes "(first dc made)" and "(first dc)", which say what a chain
// counts as in fewest words.
func (p *parser) atFirst(from int) bool {
	if p.i == from || p.tokAt(from).text != "first" && p.tokAt(from).text != "1st" {
		p.i = max(p.i, from)
	}
	at := p.i
	p.i = from
	if p.take("first|1st") {
		if k, n := p.lookup(); n > 0 && k > 1 {
			end := p.i + n
			if end >= p.end || p.tokAt(end).text == "made" && end+1 >= p.end {
				return true
			}
		}
	}
	p.i = at
	return false
}

// countsAs reads the stitch, the chains and the skipped chains.
func (p *parser) countsAs(c *Counts) {
	p.filler("a|an|the|first|1st|one|your|always")
	if p.hasNumber(0) && !p.hasNth(1, "ch|missed|skipped") {
		c.Times = p.number()
	}
	p.filler("first|1st")
	if _, n := p.lookup(); n > 0 && !p.has("ch") {
		c.As, n = p.lookup()
		p.i += n
	} else {
		p.filler("st|sts|stitch")
	}
	for {
		from := p.i
		p.filler(",|and|plus|+|&|a|an|the")
		switch {
		case p.has("ch|chain") && p.hasNumber(1):
			p.i++
			c.Chains = p.number()
			p.takeAny("sp|space")
			continue
		case p.has("ch", "-") && p.hasNumber(2):
			p.i += 2
			c.Chains = p.number()
			p.takeAny("sp|space")
			continue
		case p.hasNumber(0) && p.hasNth(1, "ch|chs|chain|chains|ch-sp") && !p.has("-"):
			c.Chains = p.number()
			p.i++
			p.takeAny("sp|space")
			continue
		case p.startsNumber() && (p.hasNth(1, "missed|skipped|sk|unworked|free")):
			c.Skipped = p.number()
			p.i++
			p.filler("ch|chs|chain|st|sts|chains")
			continue
		case p.has("here") || p.has("throughout") || p.has("through") || p.has("now"):
			c.Throughout = true
			p.filler("here|and|throughout|through|out|pattern|now|the|entire")
			continue
		case p.takeAny("st|sts|stitch|stitches|first|row|rnd|in|on|of|each|this|every|all|rows|rnds|rounds"):
			continue
		}
		p.i = from
		return
	}
}

func (p *parser) hasNth(k int, list string) bool { return anyOf(p.peek(k).text, list) }
