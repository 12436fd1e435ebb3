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
	case p.takeAny("as|same") || p.take("work|worked|cont|continue|complete|crochet", "as|same|in|rep|repeating"):
		as = true
		p.filler("as|for|in|the|same|given|on|way|manner|repeating|rep|pattern|work")
	case p.take("work|working|follow|cont|continue", "row|rows|rnd|rnds|round|rounds"):
		p.i--
	default:
		return false
	}
	switch {
	case p.has("last|previous|prev|above|these|past"):
		p.i++
		if p.startsNumber() {
			a.Last = p.number()
		}
		p.filler("inc|dec|pattern")
		if !p.takeAny("row|rows|rnd|rnds|round|rounds") {
			p.i = from
			return false
		}
		if a.Last == nil {
			a.Last = &Number{Values: []Value{{N: 1}}, Span: p.span(p.i - 1)}
		}
	case p.startsNumber() && p.hasAfterNumber("row|rows|rnd|rnds|round|rounds"):
		a.Last = p.number()
		p.i++
		p.filler("above")
	case p.takeAny("row|rows|rnd|rnds|round|rounds"):
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
	case as && p.peek(0).kind == word && !p.has("established|follows|foll|before|shown|written|directed|set|a|it|you|if|needed|desired|many|stitch|st"):
		at := p.i
		for !p.done() && p.peek(0).kind == word && p.i < at+5 && !p.has("reversing|until|to|from|omitting|except|ending") {
			p.i++
		}
		if p.i == at {
			p.i = from
			return false
		}
		a.Of = p.text[p.toks[at].start:p.toks[p.i-1].end]
	case as && p.has("established|before|set"):
		p.i++
		a.Pattern = true
	default:
		p.i = from
		return false
	}
	return true
}

// refs reads the row numbers of a reference: "2 and 3", "2-6", "2, 3 and 4".
func (p *parser) refs(l *Label) {
	for {
		n := p.rangeNumber()
		if n == nil {
			return
		}
		r := one(n)
		if (p.has("-") || p.has("--") || p.has("to") || p.has("through") || p.has("thru")) && (p.hasNumber(1) || p.peek(1).kind == live) {
			p.i++
			r.To = p.rangeNumber()
		}
		l.Ranges = append(l.Ranges, r)
		at := p.i
		p.take(",")
		p.takeAny("and|&|+")
		p.takeAny("row|rows|rnd|rnds|round|rounds|then")
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
	return p.takeAny("row|rows|rnd|rnds|round|rounds") || anyOf(p.toks[p.i-1].text, "row|rows|rnd|rnds|round|rounds|")
}

// evenRows reads "work even", "work 6 rows even", "cont in pat".
func (p *parser) evenRows(a *Again) bool {
	from := p.i
	p.filler("keeping|keep|cont|continue|continuing|work|working|and|to|proceed|crochet")
	if p.i == from && !p.has("even") {
		return false
	}
	if p.startsNumber() && p.hasAfterNumber("row|rows|rnd|rnds|round|rounds") {
		a.RowCount = p.number()
		p.i++
		p.filler("more|straight|in|of")
		switch {
		case p.takeAny("even|straight"):
			a.Even = true
		case p.takeAny("pat|patt|pattern|stitch-pattern"):
			a.Pattern = true
		case p.toks[p.i-1].text == "straight":
			a.Even = true
		default:
			p.i = from
			return false
		}
		return true
	}
	switch {
	case p.takeAny("even|straight|evenly") && !p.has("across|around|along|spaced|in"):
		a.Even = true
		p.filler("in|as|pat|patt|pattern|established")
		return true
	case p.has("in|the|with|as") || p.has("pat|patt|pattern"):
		p.filler("in|the|this|with|est|st|stitch|as|same|manner|way|your|cont|of")
		if p.takeAny("pat|patt|pattern|established|est|patterns") {
			a.Pattern = true
			p.filler("as|established|est|set|in|stitch|across|around|only|for|the|now")
			return true
		}
	}
	p.i = from
	return false
}

// againTail reads how often, how long, and where to stop.
func (p *parser) againTail(a *Again) {
	for {
		from := p.i
		p.take(",")
		p.filler("and|then|for")
		switch {
		case a.Times == nil && p.timesOf(a):
		case p.takeAny("alternately|alternating|alternate|consecutively|in|turn"):
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
		case p.ending(a):
		case p.has("reversing|reverse"):
			a.Mirrored = true
			p.toMark()
		case p.has("of|from|on|as") && len(a.Rows) > 0 && p.hasAny(1, "back|front|left|right|sleeve|body|the|rnd|row|chart|pattern|pat|patt|mesh|first"):
			at := p.i + 1
			p.toMark()
			a.Of = p.text[p.toks[at].start:p.toks[p.i-1].end]
		case p.takeAny("pat|patt|pattern|again|only|above|more|throughout|here"):
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

// until reads "until piece measures 14 (14½, 15) in from beg".
func (p *parser) until(a *Again) bool {
	from := p.i
	if p.take("same", "number|no", "of", "rows|rnds|rounds", "as") || p.take("to", "match") {
		at := p.i
		p.toMark()
		if p.i > at {
			a.Until = &Extent{Span: p.span(from), SameAs: p.text[p.toks[at].start:p.toks[p.i-1].end]}
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
		if p.toks[from].text == "until" || p.toks[from].text == "til" {
			p.toMark()
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
	if p.toks[p.i-1].text == "row" || p.toks[p.i-1].text == "rnd" {
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

// measure reads a length: "14 (14½, 15) in [35.5 (37, 38) cm]".
func (p *parser) measure() *Measure {
	from := p.i
	m := p.oneMeasure()
	if m == nil {
		p.i = from
		return nil
	}
	at := p.i
	if (p.has("[") || p.has("(") || p.has("/")) && m.Unit != NoUnit {
		pair := p.peek(0).pair
		p.i++
		if also := p.oneMeasure(); also != nil && also.Unit != m.Unit && (pair < 0 || p.i == pair) {
			m.Also = also
			if pair >= 0 {
				p.i = pair + 1
			}
		} else {
			p.i = at
		}
	}
	m.Span = p.span(from)
	return m
}

func (p *parser) oneMeasure() *Measure {
	from := p.i
	m := &Measure{}
	switch t := p.peek(0); {
	case t.kind == live:
		m.Live = t.text
		p.i++
	case t.kind == number:
		m.Values = append(m.Values, float64(t.n)+t.frac)
		p.i++
		p.measureUnit(m)
		p.measureSizes(m)
	case (t.text == "(" || t.text == "[") && t.pair > 0 && p.peek(1).kind == number:
		p.measureSizes(m)
	default:
		return nil
	}
	p.measureUnit(m)
	if m.Unit == NoUnit {
		p.i = from
		return nil
	}
	m.Span = p.span(from)
	return m
}

func (p *parser) measureSizes(m *Measure) {
	for {
		t := p.peek(0)
		switch {
		case (t.text == "(" || t.text == "[" || t.text == "{") && t.pair > 0:
			var list []float64
			unit := NoUnit
			for i := p.i + 1; i < t.pair; i++ {
				switch u := &p.toks[i]; {
				case u.kind == number:
					list = append(list, float64(u.n)+u.frac)
				case u.kind == mark && anyOf(u.text, ",|;|:|/|-|--|\"|"):
				case u.kind == word && anyOf(u.text, "in|cm|inches|inch|ins|mm|"):
					unit = unitOf(u.text)
				default:
					return
				}
			}
			if len(list) == 0 || unit != NoUnit && m.Unit != NoUnit && unit != m.Unit {
				return
			}
			m.Values = append(m.Values, list...)
			p.i = t.pair + 1
		case t.text == "," && p.peek(1).kind == number && len(m.Values) < p.opt.Sizes && len(m.Values) > 0:
			p.i++
			m.Values = append(m.Values, float64(p.peek(0).n)+p.peek(0).frac)
			p.i++
		case (t.text == "-" || t.text == "--") && p.peek(1).kind == number && len(m.Values) > 0:
			p.i++
			m.Values = append(m.Values, float64(p.peek(0).n)+p.peek(0).frac)
			p.i++
		default:
			return
		}
	}
}

func (p *parser) measureUnit(m *Measure) {
	if m.Unit != NoUnit {
		return
	}
	if p.has("\"") || p.has("'", "'") {
		m.Unit = Inch
		p.i++
		p.take("'")
		return
	}
	if u := unitOf(p.peek(0).text); u != NoUnit && p.peek(0).kind == word {
		if p.peek(0).text == "in" && p.peek(1).kind == word && anyOf(p.peek(1).text, "next|each|first|last|same|ring|the|st|sts|top|") {
			return
		}
		m.Unit = u
		p.i++
		if p.has(".") && p.i < p.end && !p.peek(0).space && p.peek(1).kind == word {
			p.i++
		}
	}
}

func unitOf(s string) Unit {
	switch s {
	case "in", "ins", "inch", "inches":
		return Inch
	case "cm", "cms", "centimetres", "centimeters", "centimetre", "centimeter":
		return Centimetre
	case "mm", "millimetres", "millimeters":
		return Millimetre
	}
	return NoUnit
}
