package notation

import "strings"

// label reads what stands before the colon; nil when the line has no label.
func (p *parser) label() *Label {
	from := p.i
	l := &Label{}
	if !p.labelHead(l) {
		p.i = from
		return nil
	}
	l.Span = p.span(from)
	p.labelTail(l)
	return l
}

// rowWord reads "row", "rnds", "round".
func (p *parser) rowWord(l *Label) bool {
	switch t := p.peek(0).text; {
	case anyOf(t, "row|rows|"):
		l.Is = Row
	case anyOf(t, "rnd|rnds|round|rounds|"):
		l.Is = Round
	default:
		return false
	}
	p.i++
	return true
}

func (p *parser) labelHead(l *Label) bool {
	for p.peek(0).text == "*" || p.peek(0).text == "**" {
		p.i++
		if p.i > 3 {
			return false
		}
	}
	t := p.peek(0)
	switch {
	case p.rowWord(l):
		if p.takeAny("no|number|#|.") {
			p.take(".")
		}
		if !p.hasNumber(0) && p.peek(0).kind != live {
			return false
		}
		return p.ranges(l)
	case t.kind == ordinal || ordinalWords[t.text] > 0 || t.text == "first":
		return p.ordinalLabel(l)
	case t.text == "next" || t.text == "following":
		p.i++
		if p.startsNumber() {
			l.Count = p.number()
		}
		if !p.rowWord(l) {
			return false
		}
		l.Next = true
		return p.labelEnds()
	case t.text == "r" && p.hasNumber(1) && !p.peek(1).space:
		p.i++
		return p.ranges(l) && p.labelEnds()
	case p.hasNumber(0) && t.frac == 0 && (p.peek(1).text == "." || p.peek(1).text == ":" || p.peek(1).text == ")") && p.peek(1).space == false && p.peek(2).space && p.i == 0 && p.end > 4:
		l.Ranges = []Range{one(p.number())}
		return true
	case anyOf(t.text, "foundation|set-up|setup|base|dec|inc|decrease|increase|rib|ribbing|joining|joined|edging|turning|plain|even|shaping|mesh|border|starting|short|buttonhole|eyelet|color|pattern|cluster|shell|raglan|neck|"):
		name := t.text
		p.i++
		if !p.rowWord(l) {
			return false
		}
		l.Name = map[string]string{"decrease": "dec", "increase": "inc", "setup": "set-up"}[name]
		if l.Name == "" {
			l.Name = name
		}
		if p.hasNumber(0) {
			return p.ranges(l)
		}
		return p.labelEnds()
	case t.text == "set" && p.has("set", "-", "up"):
		p.i += 3
		l.Name = "set-up"
		return p.rowWord(l)
	}
	return false
}

// labelEnds tells whether a label without a number ends here.
func (p *parser) labelEnds() bool {
	t := p.peek(0)
	return t.text == ":" || t.text == "(" || t.text == "-" || t.text == "--" || t.text == "." || t.text == "," || p.done()
}

func one(n *Number) Range { return Range{From: n, To: n} }

func (p *parser) ordinalLabel(l *Label) bool {
	n, ok := p.nth()
	if !ok {
		if !p.take("first") {
			return false
		}
		n = &Number{Values: []Value{{N: 1}}, Span: p.span(p.i - 1)}
	}
	if (p.has("to") || p.has("-") || p.has("--") || p.has("and")) && p.peek(1).kind == ordinal {
		and := p.has("and")
		p.i++
		m, _ := p.nth()
		if !p.rowWord(l) {
			return false
		}
		if and {
			l.Ranges = []Range{one(n), one(m)}
		} else {
			l.Ranges = []Range{{From: n, To: m}}
		}
		return true
	}
	if !p.rowWord(l) {
		return false
	}
	l.Ranges = []Range{one(n)}
	return p.labelEnds() || p.peek(0).space
}

// ranges reads "4", "4-9", "4, 6 and 8", "2-70 (2-76, 2-84)", "2-5 (7, 8)".
func (p *parser) ranges(l *Label) bool {
	for {
		from := p.rangeNumber()
		if from == nil {
			return len(l.Ranges) > 0
		}
		r := one(from)
		if (p.has("-") || p.has("--") || p.has("to") || p.has("through") || p.has("thru") || p.has("/")) && (p.hasNumber(1) || p.peek(1).kind == live || p.peek(1).kind == ordinal) {
			p.i++
			to := p.rangeNumber()
			r = Range{From: from, To: to}
			if p.rangeList(&r) {
			} else if p.listIn(p.i) > 0 && to != nil {
				p.sizes(to)
				to.Span.End = p.span(p.i - 1).End
			}
		} else if p.rangeList(&r) {
		} else if k := p.listIn(p.i); k > 1 && p.opt.Sizes > 1 && k == p.opt.Sizes-1 {
			p.sizes(from)
			from.Span.End = p.span(p.i - 1).End
		}
		l.Ranges = append(l.Ranges, r)
		at := p.i
		if p.take(",", "and|&") || p.take(",") || p.take("and|&") || p.take("+") {
			if p.hasNumber(0) && !p.peek(0).isStep(p) {
				continue
			}
			if p.take("all|every") {
				p.andAll(l)
				return true
			}
			p.rowWord(&Label{})
			if p.hasNumber(0) && p.i > at+1 {
				continue
			}
			p.i = at
		}
		return true
	}
}

// isStep tells whether a number begins an instruction: "Row 2, 3 dc in next".
func (t *token) isStep(p *parser) bool {
	from := p.i
	p.i++
	_, n := p.lookup()
	next := p.peek(0)
	p.i = from
	return n > 0 || (next.kind == word && !anyOf(next.text, "and|to|through|"))
}

// andAll reads "all WS rows", "all even rows".
func (p *parser) andAll(l *Label) {
	p.filler("other|following|foll|rem|remaining")
	t := p.peek(0).text
	switch {
	case anyOf(t, "ws|rs|even|odd|"):
		l.AndAll = t
		p.i++
	case t == "wrong" || t == "right":
		l.AndAll = t[:1] + "s"
		p.i++
		p.takeAny("side")
	}
	p.filler("numbered|side")
	p.rowWord(&Label{})
}

// rangeNumber is one number of a label, without a list of sizes.
func (p *parser) rangeNumber() *Number {
	t := p.peek(0)
	if t.kind == live {
		return p.number()
	}
	if !p.hasNumber(0) && t.kind != ordinal {
		return nil
	}
	p.i++
	return &Number{Span: p.span(p.i - 1), Values: []Value{{N: t.n}}}
}

// rangeList reads the ranges of further sizes: "(2-76, 2-84)".
func (p *parser) rangeList(r *Range) bool {
	open := p.peek(0)
	if (open.text != "(" && open.text != "[") || open.pair < 0 {
		return false
	}
	var from, to []Value
	pairs := false
	i := p.i + 1
	for i < open.pair {
		if p.toks[i].kind != number {
			if t := p.toks[i].text; (t == "-" || t == "--") && (i+1 == open.pair || p.toks[i+1].text == ",") {
				from, to = append(from, Value{None: true}), append(to, Value{None: true})
				i++
				if i < open.pair {
					i++
				}
				continue
			}
			return false
		}
		a := Value{N: p.toks[i].n}
		b := a
		i++
		if i+1 < open.pair && (p.toks[i].text == "-" || p.toks[i].text == "--" || p.toks[i].text == "to") && p.toks[i+1].kind == number {
			b = Value{N: p.toks[i+1].n}
			i += 2
			pairs = true
		}
		from, to = append(from, a), append(to, b)
		if i < open.pair && (p.toks[i].text == "," || p.toks[i].text == ";" || p.toks[i].text == ":" || p.toks[i].text == "/") {
			i++
		}
	}
	if !pairs {
		return false
	}
	p.i = open.pair + 1
	span := Span{r.From.Start, p.at + p.toks[open.pair].end}
	a := &Number{Span: span, Values: append([]Value{r.From.Values[0]}, from...)}
	b := &Number{Span: span, Values: append([]Value{r.To.Values[0]}, to...)}
	r.From, r.To = a, b
	return true
}

// labelTail reads the side and remarks after a label, and its colon.
func (p *parser) labelTail(l *Label) {
	for range 6 {
		t := p.peek(0)
		switch {
		case t.text == ":" || t.text == "." || t.text == "-" || t.text == "--" || t.text == "*" && p.peek(1).text == "*" || t.text == "," || t.text == "**":
			p.i++
		case t.text == ")" && t.pair < 0:
			p.i++
		case (t.text == "(" || t.text == "[") && t.pair > 0 && p.labelRemark(l):
		case p.sideWords(&l.Side):
			p.takeAny("facing|row|rows|rnd")
		default:
			return
		}
	}
}

// labelRemark reads "(RS)", "(inc row)", "(WS, dec row)".
func (p *parser) labelRemark(l *Label) bool {
	from, closing := p.i, p.peek(0).pair
	p.i++
	if p.sideWords(&l.Side) {
		for p.i < closing && (p.peek(0).text == "," || anyOf(p.peek(0).text, "facing|row|and|side|")) {
			p.i++
		}
		if p.i < closing {
			l.Remark = p.words(p.i, closing)
		}
		p.i = closing + 1
		return true
	}
	for i := p.i; i < closing; i++ {
		if t := &p.toks[i]; t.kind == number || t.kind == mark && t.text != "," && t.text != "-" {
			p.i = from
			return false
		}
	}
	if closing-p.i > 6 {
		p.i = from
		return false
	}
	if _, n := p.lookup(); n > 0 && !anyOf(p.peek(0).text, "inc|dec|increase|decrease|shell|") {
		p.i = from
		return false
	}
	l.Remark = p.words(p.i, closing)
	p.i = closing + 1
	return true
}

func (p *parser) words(from, to int) string {
	var b strings.Builder
	for i := from; i < to; i++ {
		if i > from && p.toks[i].space {
			b.WriteByte(' ')
		}
		b.WriteString(p.toks[i].text)
	}
	return b.String()
}

// sideWords reads "RS", "wrong side".
func (p *parser) sideWords(s *Side) bool {
	switch {
	case p.take("rs"), p.take("right", "side"), p.take("right", "-", "side"):
		*s = RightSide
	case p.take("ws"), p.take("wrong", "side"), p.take("wrong", "-", "side"):
		*s = WrongSide
	default:
		return false
	}
	return true
}
