package notation

import "rowproof/stitch"

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
		if anyOf(p.toks[from+1].text, "for|another|a|more|this|it|pattern|pat|patt|until") {
			a.RowCount, a.Pattern = n, true // "Rep for 12 rows"
		} else {
			a.Last = n
		}
		p.filler("above")
	case !as && p.has("until|til|till"): // "Rep until piece measures 10 in"
		a.Pattern = true
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
	case as && p.peek(0).kind == word && !p.has("established|est|patt|pat|pattern|manner|number|follows|foll|before|shown|written|directed|set|a|it|you|if|needed|desired|many|stitch|st"):
		at := p.i
		for !p.done() && p.peek(0).kind == word && p.i < at+5 && !p.has("reversing|until|to|from|omitting|except|ending|for|but|with|and|only|working|then") {
			p.i++
		}
		if p.i == at {
			p.i = from
			return false
		}
		a.Of = p.text[p.toks[at].start:p.prev(1).end]
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
	return p.takeAny("row|rows|rnd|rnds|round|rounds") || anyOf(p.prev(1).text, "row|rows|rnd|rnds|round|rounds|")
}

// evenRows reads "work even", "work 6 rows even", "cont in pat".
func (p *parser) evenRows(a *Again) bool {
	from := p.i
	if p.take("work|working|worked|cont", "same") || p.take("same") || p.take("work|make", "the", "same") {
		p.i--
		if p.has("same", "number|no|amount", "of", "rows|rnds|rounds") {
			a.Pattern = true
			return true
		}
		p.i = from
	}
	p.filler("keeping|keep|cont|continue|continuing|work|working|and|to|proceed|crochet|make|do|patt|pat|then|should|each|side|rep|repeat|established")
	if p.i == from && !p.has("even") {
		return false
	}
	if p.prev(1).text == "patt" || p.prev(1).text == "pat" {
		if n := p.i; p.startsNumber() && p.hasAfterNumber("row|rows|rnd|rnds|round|rounds") { // "Patt 6 rows."
			a.RowCount, a.Pattern = p.number(), true
			p.i++
			return true
		} else if p.i = n; n-from > 1 {
			a.Pattern = true
			p.patternName()
			return true
		}
		p.i--
	}
	if p.startsNumber() && (p.hasAfterNumber("row|rows|rnd|rnds|round|rounds") || p.hasAfterNumber("more", "row|rows|rnd|rnds|round|rounds")) {
		a.RowCount = p.number()
		p.take("more")
		p.i++
		p.filler("more|straight|total")
		switch {
		case p.takeAny("even|straight|plain"), p.prev(1).text == "straight":
			a.Even = true
			p.filler("in|pat|patt|pattern")
		case p.takeAny("in|of|as|with"):
			p.filler("the|established|this|est|same|st|stitch")
			switch {
			case p.takeAny("pat|patt|pattern|established|set|stitch-pattern|color|colour|way|manner"):
				a.Pattern = true
				p.patternName()
			case p.stitchRows(a):
			default:
				a.Pattern = true
				p.patternName()
			}
		default:
			a.Pattern = true // "work 4 rows"
		}
		return true
	}
	switch {
	case p.takeAny("even|straight|evenly") && !p.has("across|around|along|spaced|multiple|in", "next|the|each|of"):
		a.Even = true
		if p.take("in|as|on|for") {
			if p.prev(1).text == "for" || !p.has("rows|st|sts") && p.stitchRows(a) {
				if p.prev(1).text == "for" {
					p.i--
				}
			}
		}
		p.patternName()
		return true
	case p.take("as", "established|set|est|before|instructed|given"):
		a.Pattern = true
		p.filler("in|pat|patt|pattern")
		return true
	case p.has("for") && p.toks[from].text != "for":
		at := p.i
		if p.until(&Again{}) {
			p.i = at
			a.Pattern = true
			return true
		}
		p.i = from
		return false
	case p.has("in|the|with|est|established") || p.has("pat|patt|pattern"):
		at := p.i
		p.filler("in|the|this|with|est|established|same|manner|way|your|cont|of|as")
		for k := 0; k < 3 && p.peek(0).kind == word && p.hasAny(1, "pat|patt|pattern|st|stitch"); k++ { // "in Mesh Pat"
			p.i++
		}
		if p.takeAny("pat|patt|pattern|established|est|patterns|stitch|st") && (p.prev(1).text != "st" || p.i-at > 2) {
			a.Pattern = true
			p.patternName()
			return true
		}
		p.i = at
		if p.take("in", "rows|rnds|rounds", "of") || p.take("in") {
			at = p.i - 1
		}
		if p.i > at && p.stitchRows(a) && p.has("for|until|to|rows|rnds|row|rounds|rnd|as") {
			p.filler("rows|rnds|rounds")
			return true
		}
	}
	p.i = from
	return false
}

// patternName passes over words that say which pattern goes on.
func (p *parser) patternName() {
	p.filler("as|established|est|set|in|stitch|across|around|only|the|now|pat|patt|pattern|instructed|before|throughout|this|way|manner|st|of|above|given|rows|working|stripe|sequence|color|colors|for")
	for anyOf(p.prev(1).text, "for|the|as|of|in|working|this|") && p.i > 1 {
		p.i--
	}
}

// stitchRows reads the stitch of "10 rows of hdc".
func (p *parser) stitchRows(a *Again) bool {
	from := p.i
	s := p.stitchName()
	if s == nil || s.Kind == stitch.Chain || p.has("in|into") && !p.has("in", "each|every", "st") {
		p.i = from
		return false
	}
	p.take("in", "each|every", "st")
	a.Stitch = s
	return true
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
		case p.takeAny("alternately|alternating|alternate|consecutively") || p.take("in", "turn|order|sequence"):
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
			if anyOf(p.toks[at].text, "chart|pattern|pat|patt|") {
				continue
			}
			a.Of = p.text[p.toks[at].start:p.prev(1).end]
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

// until reads "until piece measures 14 (14½, 15) in from beg".
func (p *parser) until(a *Again) bool {
	from := p.i
	if p.take("same", "number|no|amount", "of", "rows|rnds|rounds", "as") || p.take("to", "match") {
		p.filler("for|on|the|as")
		at := p.i
		p.toMark()
		if p.i > at {
			a.Until = &Extent{Span: p.span(from), SameAs: p.text[p.toks[at].start:p.prev(1).end]}
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
