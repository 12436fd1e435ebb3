package notation

// again reads orders to work whole rows once more: "Rep Rows 2 and 3", "As 3rd
// row", "Work 6 rows even", "cont in pat".
func (p *parser) again() []Step {
	from := p.i
	a := &Again{}
	switch {
	case p.repRows(a):
	case p.evenRows(a):
	default:
		return nil
	}
	p.againTail(a)
	a.Span = p.span(from)
	return []Step{a}
}

func (p *parser) repRows(a *Again) bool {
	from := p.i
	as := false
	switch {
	case p.takeAny("rep|repeat|rpt|repeating|repeats"):
		p.filler("as|for|working|in|the|these|this|all|of|from")
	case p.has("as|same|work|worked|cont|continue|complete|crochet|finish|make", "established|est|set|before|same", "number|no"):
		return false
	case p.has("as|same", "follows|foll|folls|shown|many|needed|desired|you|if|it|a|st|stitch|sp|place|time|far|before"):
		return false
	case p.takeAny("as|same|like") || p.take("work|worked|cont|continue|complete|crochet|finish|make|working|identical", "as|same|rep|repeating|like|to") && !p.has("end|last|match|the|marker|marked|within|follows|foll|next"):
		as = true
		p.filler("as|for|in|the|same|given|on|way|manner|repeating|rep|work|of")
	case p.take("work|working|follow|cont|continue", "row|rows|rnd|rnds|round|rounds"):
		p.i--
	case p.namedRowTimes():
		p.i++
	case p.i > 0 && p.prev(1).text == "then" && p.has("row|rows|rnd|rnds|round|rounds") && p.hasNumber(1): // "Rep Rows 2 and 3 twice, then Row 2"
	default:
		return false
	}
	switch {
	case p.has("last|previous|prev|above|past|preceding") || p.prev(1).text == "these" || p.prev(1).text == "this" && p.has("row|rnd|round"):
		p.takeAny("last|previous|prev|above|past|preceding|these")
		if p.startsNumber() {
			a.Last = p.number()
		}
		p.filler("inc|dec|pattern|rep|repeat|of")
		if !p.takeAny("row|rows|rnd|rnds|round|rounds") {
			p.i = from
			return false
		}
		if a.Last == nil {
			a.Last = &Number{Values: []Value{{N: 1}}, Span: p.span(p.i - 1)}
		}
	case !as && p.startsNumber() && p.hasAfterNumber("row|rows|rnd|rnds|round|rounds"):
		n := p.number()
		p.i++
		if anyOf(p.tokAt(from+1).text, "for|another|a|more|this|it|pattern|pat|patt|until") {
			a.RowCount, a.Pattern = n, true // "Rep for 12 rows"
		} else {
			a.Last = n
		}
		p.filler("above")
	case !as && p.has("until|til|till"): // "Rep until piece measures 10 in"
		a.Pattern = true
	case p.takeAny("row|rows|rnd|rnds|round|rounds") || p.has("r") && p.hasNumber(1) && p.takeAny("r"):
		l := &Label{}
		if !p.hasNumber(0) && p.peek(0).kind != live {
			p.i = from
			return false
		}
		p.refs(l)
		a.Rows = l.Ranges
	case p.peek(0).kind == ordinal || ordinalWords[p.peek(0).text] > 0 || p.has("first", "row|rnd|and"):
		l := &Label{}
		if !p.ordinalRefs(l) {
			p.i = from
			return false
		}
		a.Rows = l.Ranges
	case p.has("inc|dec|increase|decrease|rib|set-up|foundation|shaping|plain|pattern|pat|patt") && p.hasAny(1, "row|rnd|round"):
		a.Name = map[string]string{"increase": "inc", "decrease": "dec"}[p.peek(0).text]
		if a.Name == "" {
			a.Name = p.peek(0).text
		}
		p.i += 2
	case as && p.peek(0).kind == word && !p.has("established|est|patt|pat|pattern|manner|number|follows|foll|before|shown|written|directed|set|a|it|you|if|needed|desired|many|stitch|st"):
		at := p.i
		for !p.done() && p.peek(0).kind == word && p.i < at+5 && !p.has("reversing|until|to|from|omitting|except|ending|for|but|with|and|only|working|then") {
			p.i++
		}
		if p.i == at {
			p.i = from
			return false
		}
		a.Of = p.text[p.tokAt(at).start:p.prev(1).end]
	case as && p.has("established|before|set"):
		p.i++
		a.Pattern = true
	default:
		p.i = from
		return false
	}
	return true
}

// namedRowTimes tells whether a named row is to be worked so many times: "Work
// Inc Rnd once more", not "Work Inc row every 4th row 3 times".
func (p *parser) namedRowTimes() bool {
	if !p.has("work|working", "inc|dec|increase|decrease", "row|rnd|round") {
		return false
	}
	return p.hasAny(3, "once|twice|thrice") && !p.hasAny(4, "every|each") ||
		p.numberAt(3) && p.hasAny(4, "more|times|time") && p.hasAny(5, "times|time|.|more")
}

// countUnit tells whether the number just read, with the list that may follow
// it, counts stitches.
func (p *parser) countUnit() bool {
	from := p.i
	if t := p.peek(0); (t.text == "(" || t.text == "[") && t.pair > 0 {
		p.i = t.pair + 1
	}
	_, n := p.lookup()
	unit := n > 0 || p.has("st|sts|stitches")
	p.i = from
	return unit
}

// refs reads the row numbers of a reference: "2 and 3", "2-6", "2, 3 and 4".
func (p *parser) refs(l *Label) {
	for {
		n := p.rangeNumber()
		if n == nil {
			return
		}
		r := one(n)
		if p.has("-|--|to|through|thru") && (p.hasNumber(1) || p.peek(1).kind == live || p.hasAny(1, "r|row|rnd") && p.hasNumber(2)) {
			dash := p.i
			p.i++
			p.takeAny("r|row|rnd")
			r.To = p.rangeNumber()
			if p.countUnit() { // "Rep Row 2—36 (38, 40) sc"
				p.i, r = dash, one(n)
			}
		}
		l.Ranges = append(l.Ranges, r)
		at := p.i
		p.take(",")
		p.takeAny("and|&|+")
		if !p.takeAny("row|rows|rnd|rnds|round|rounds|then") && p.has("r") && p.hasNumber(1) {
			p.i++
		}
		if p.i == at || !p.hasNumber(0) && p.peek(0).kind != live || p.hasAfterNumber("more|times|time|x|additional") {
			p.i = at
			return
		}
	}
}

func (p *parser) ordinalRefs(l *Label) bool {
	read := func() *Number {
		if p.take("first") {
			return &Number{Values: []Value{{N: 1}}, Span: p.span(p.i - 1)}
		}
		n, _ := p.nth()
		return n
	}
	n := read()
	if n == nil {
		return false
	}
	r := one(n)
	p.takeAny("row|rows|rnd|rnds|round|rounds")
	if (p.has("to") || p.has("-") || p.has("--")) && (p.peek(1).kind == ordinal || ordinalWords[p.peek(1).text] > 0) {
		p.i++
		r.To = read()
	}
	l.Ranges = append(l.Ranges, r)
	if p.has("and|&") && (p.peek(1).kind == ordinal || ordinalWords[p.peek(1).text] > 0) {
		p.i++
		if m := read(); m != nil {
			l.Ranges = append(l.Ranges, one(m))
		}
	}
	return p.takeAny("row|rows|rnd|rnds|round|rounds") || anyOf(p.prev(1).text, "row|rows|rnd|rnds|round|rounds|")
}

// againTail reads how often, how long, and where to stop.
func (p *parser) againTail(a *Again) {
	for {
		from := p.i
		p.take(",")
		if a.Until == nil && p.has("for|until|til|till") && p.until(a) {
			continue
		}
		p.filler("and|then|for")
		switch {
		case a.Times == nil && p.timesOf(a):
		case p.takeAny("alternately|alternating|alternate|consecutively|colors|colours") || p.take("in", "turn|order|sequence"):
			a.Alternately = true
			p.filler("turn|order|sequence")
		case p.has("for|another|a", "total") || p.startsNumber() && p.hasAfterNumber("more|row|rows|rnds|rnd|rounds|additional|total"):
			p.filler("a|total|of|another")
			n := p.number()
			p.filler("more|additional|total|further")
			if !p.takeAny("row|rows|rnd|rnds|round|rounds") || n == nil {
				p.i = from
				return
			}
			a.RowCount = n
			p.filler("more|total|in|all")
		case a.Until == nil && p.until(a):
		case a.Times == nil && (a.Pattern || a.Even) && p.has("to|across|around|along|until|within"):
			l := p.limit()
			if l == nil {
				p.i = from
				return
			}
			a.Times = &Times{Span: l.Span, To: l}
		case p.ending(a):
		case p.has("reversing|reverse|mirroring|but", "all|shaping|the|reversing|shapings|neck|side|reverse"):
			a.Mirrored = true
			p.toMark()
		case (a.Pattern || a.Even) && p.takeAny("increasing|inc") && p.has("as|every|in"):
			p.i = from
			return
		case p.has("of|from|on|as") && len(a.Rows) > 0 && p.hasAny(1, "back|front|left|right|sleeve|body|the|rnd|row|chart|pattern|pat|patt|mesh|first"):
			at := p.i + 1
			for p.i++; !p.done() && p.peek(0).kind == word && p.i < at+5 && !p.has("until|for|twice|once|to|ending"); p.i++ {
			}
			if p.i == at {
				p.i = from
				return
			}
			if anyOf(p.tokAt(at).text, "chart|pattern|pat|patt|") {
				continue
			}
			a.Of = p.text[p.tokAt(at).start:p.prev(1).end]
		case p.takeAny("pat|patt|pattern|again|only|above|more|throughout|here|worked|consecutively"):
		default:
			p.i = from
			return
		}
	}
}

func (p *parser) timesOf(a *Again) bool {
	if t := p.times(); t != nil {
		a.Times = t
		return true
	}
	return false
}
