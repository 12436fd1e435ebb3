package notation

// countAhead tells whether the words at hand may state a count.
func (p *parser) countAhead() bool {
	return p.startsNumber() || p.has("total|totals|count|for|you|we|now|there|a|st|sts|stitch|stitches|=|--|-|:|should|ending")
}

func (p *parser) countFollows() bool {
	from := p.i
	p.i++
	if !p.countAhead() {
		p.i = from
		return false
	}
	c := p.count(p.sentenceEnd())
	p.i = from
	return c != nil
}

// sentenceEnd is the token that ends the sentence at hand.
func (p *parser) sentenceEnd() int {
	for i := p.i; i < p.end && i < p.i+120; i++ {
		t := &p.toks[i]
		if t.kind == mark && (t.text == "." || t.text == "!") && (i+1 >= p.end || p.tokAt(i+1).space || p.tokAt(i+1).kind == mark) {
			return i
		}
	}
	return min(p.end, p.i+120)
}

// statedCount reads a stated count at the top level of a line.
func (p *parser) statedCount(after bool) bool {
	t := p.peek(0)
	from := p.i
	if (t.text == "(" || t.text == "[" || t.text == "{") && t.kind == mark && t.pair > 0 {
		if !after && t.text == "(" && p.listIn(p.i) == p.opt.Sizes {
			return false
		}
		// A group or repeat has a place or times after it.
		next := &noToken
		if t.pair+1 < p.end {
			next = &p.toks[t.pair+1]
		}
		if next.kind == word && anyOf(next.text, "in|into|times|time|twice|x|across|around|once|to|over|more|") || next.kind == number && !p.endsLine(t.pair+1) {
			return false
		}
		p.i++
		if c := p.count(t.pair); c != nil {
			p.i = t.pair + 1
			c.Span = p.span(from)
			p.counts = append(p.counts, c)
			return true
		}
		p.i = from
		return false
	}
	start := after && p.sentenceStarts()
	dash := (t.text == "--" || t.text == "-" || t.text == "=") && t.kind == mark && p.listIn(p.i+1) == 0
	if dash {
		p.i++
	}
	if p.i == 0 && (p.has("there", "are") || p.has("stitch|st", "count") || p.numberAt(0) && p.hasAfterNumber("sts|stitches|st")) {
		start = true
	}
	if !dash && !start && !p.has("for", "a", "total") && !p.has("total") && !p.has("you|we", "will|should|now|have") {
		return false
	}
	if !p.countAhead() {
		p.i = from
		return false
	}
	if c := p.count(p.sentenceEnd()); c != nil {
		c.Span = p.span(from)
		p.counts = append(p.counts, c)
		return true
	}
	p.i = from
	return false
}

// endsLine tells whether nothing but marks follows token i.
func (p *parser) endsLine(i int) bool {
	for k := 0; i < p.end; i, k = i+1, k+1 {
		if k > 40 || p.tokAt(i).kind != mark && p.tokAt(i).kind != number {
			return false
		}
	}
	return true
}

// sentenceStarts tells whether the token at hand begins a sentence.
func (p *parser) sentenceStarts() bool {
	if p.i == 0 {
		return false
	}
	t := p.prev(1)
	return t.kind == mark && (t.text == "." || t.text == ":" || t.text == ")" || t.text == "]" || t.text == "!" || t.text == ";") || t.kind == word && anyOf(t.text, "turn|around|across|join|")
}
