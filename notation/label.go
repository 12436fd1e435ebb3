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
	for k := 0; k < 3 && anyOf(p.peek(0).text, "*|**|***|"); k++ {
		p.i++
	}
	t := p.peek(0)
	switch {
	case p.rowWord(l):
		return p.numberedLabel(l)
	case t.kind == ordinal || ordinalWords[t.text] > 0 || t.text == "first":
		return p.ordinalLabel(l)
	case t.text == "next" || t.text == "following" || t.text == "foll" || p.has("on|for|the|work", "next|following|foll"):
		return p.nextLabel(l)
	case t.text == "r" && p.hasNumber(1):
		p.i++
		return p.ranges(l) && (p.labelEnds() || !p.tokAt(1).space)
	case p.i < 4 && p.bareLabel():
		l.Ranges = []Range{one(p.number())}
		return true
	}
	return p.namedLabel(l)
}

// numberedLabel reads the numbers of "Row 4". A row that is only spoken of,
// "Rows 2-5 form pat", is no label.
func (p *parser) numberedLabel(l *Label) bool {
	if p.takeAny("no|number|#|.") {
		p.take(".")
	}
	if !p.hasNumber(0) && p.peek(0).kind != live || !p.ranges(l) {
		return false
	}
	return !p.has("form|forms|is|are|make|makes|establish|set|sets|should|will|counts|of", "pat|patt|pattern|the|your|a|same|worked|right|wrong|be|have|for|as|rs|ws") || p.has("of")
}

// nextLabel reads "Next row", "Next 3 rows", "On next RS row".
func (p *parser) nextLabel(l *Label) bool {
	if p.has("on|for|the|work") {
		p.i++
	}
	p.i++
	if p.startsNumber() {
		l.Count = p.number()
	}
	p.sideWords(&l.Side)
	if !p.rowWord(l) {
		return false
	}
	l.Next = true
	return p.labelEnds() || p.peek(0).kind == word && !p.has("and|every|only|as|of") || p.hasNumber(0)
}

// bareLabel tells whether a number alone labels the row: "9. dc around".
func (p *parser) bareLabel() bool {
	t := p.peek(0)
	if !p.hasNumber(0) || p.end-p.i < 3 || p.i > 0 && p.prev(1).kind != mark {
		return false
	}
	m := p.peek(1)
	if m.kind != mark || m.space || !anyOf(m.text, ".|:|)|") {
		return false
	}
	return p.peek(2).space && p.peek(2).text != "(" || t.n < 200 && m.text != "." && p.peek(2).kind != number
}

// knownNames are names that rows are given; others need a colon after them.
const knownNames = "foundation|set-up|setup|base|dec|inc|decrease|increase|rib|ribbing|joining|joined|edging|turning|plain|even|shaping|mesh|border|starting|short|buttonhole|eyelet|color|pattern|cluster|shell|raglan|neck|"

// namedLabel reads "Dec row", "Set-up rnd", "Foundation row 1".
func (p *parser) namedLabel(l *Label) bool {
	from := p.i
	known := anyOf(p.peek(0).text, knownNames) || p.has("set", "-", "up")
	for k := 0; k < 5; k++ {
		if t := p.peek(0); t.kind != word && t.text != "-" || k == 0 && anyOf(t.text, "rep|repeat|rpt|work|as|same|this|these|each|every|until|for|ending|cont|continue|in|on|at|of|to|last|sc|dc|ch|turn|join|all|from|with|after|end|over|and|if|you|a|the|begin|note|") && !p.has("last", "row|rnd|round", ":") {
			return false
		}
		if k > 0 && p.rowWord(l) {
			name := p.words(from, p.i-1)
			if short := shortNames[name]; short != "" {
				name = short
			}
			l.Name = name
			if p.hasNumber(0) {
				return p.ranges(l) && (known || p.has(":|(|[|."))
			}
			return known && p.labelEnds() || p.has(":") || p.has("(|[") && p.peek(0).pair > 0 && p.peek(0).pair+1 < p.end && p.tokAt(p.peek(0).pair+1).text == ":"
		}
		p.i++
	}
	return false
}

var shortNames = map[string]string{"decrease": "dec", "increase": "inc", "setup": "set-up", "set up": "set-up", "decreasing": "dec", "increasing": "inc"}

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
		if p.has("-|--|to|through|thru|until|/") && (p.hasNumber(1) || p.peek(1).kind == live || p.peek(1).kind == ordinal || anyOf(p.peek(1).text, "r|row|rnd|round|rows|") && p.hasNumber(2)) && !(p.peek(0).space && p.isStepAt(1)) {
			p.i++
			p.takeAny("r|row|rnd|round|rows")
			to := p.rangeNumber()
			r = Range{From: from, To: to}
			if p.rangeList(&r) {
			} else if p.listIn(p.i) > 0 && to != nil {
				p.sizes(to)
				to.Span.End = p.span(p.i - 1).End
			}
		} else if p.rangeList(&r) {
		} else if k := p.listIn(p.i); k > 1 && (p.opt.Sizes > 1 && k == p.opt.Sizes-1 || p.opt.Sizes == 0 && p.tokAt(p.peek(0).pair+1).text == ":") {
			p.sizes(from)
			from.Span.End = p.span(p.i - 1).End
		}
		l.Ranges = append(l.Ranges, r)
		at := p.i
		if p.take("(", "and|&", "all|every|each") { // "Row 2 (and all WS rows)"
			p.andAll(l)
			p.take(")")
			return true
		}
		if p.take(",", "and|&") || p.take(",") || p.take("and|&") || p.take("+") {
			if p.hasNumber(0) && !p.peek(0).isStep(p) {
				continue
			}
			if p.take("all|every|each") {
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

// isStepAt tells whether the number k tokens on begins an instruction: "Row 3 -
// 2 sc in first st".
func (p *parser) isStepAt(k int) bool {
	if !p.hasNumber(k) {
		return false
	}
	from := p.i
	p.i += k + 1
	_, n := p.lookup()
	p.i = from
	return n > 0
}

// andAll reads "all WS rows", "all even rows".
func (p *parser) andAll(l *Label) {
	p.filler("other|following|foll|rem|remaining|alt|alternate|the")
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
	if anyOf(p.prev(1).text, "alt|alternate|other|") && len(l.Ranges) > 0 && len(l.Ranges[0].From.Values) > 0 {
		l.AndAll = [...]string{"even", "odd"}[l.Ranges[0].From.Values[0].N&1]
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
		if p.tokAt(i).kind != number {
			if t := p.tokAt(i).text; (t == "-" || t == "--") && (i+1 == open.pair || p.tokAt(i+1).text == ",") {
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
		if i+1 < open.pair && (p.tokAt(i).text == "-" || p.tokAt(i).text == "--" || p.tokAt(i).text == "to") && p.tokAt(i+1).kind == number {
			b = Value{N: p.toks[i+1].n}
			i += 2
			pairs = true
		}
		from, to = append(from, a), append(to, b)
		if i < open.pair && (p.tokAt(i).text == "," || p.tokAt(i).text == ";" || p.tokAt(i).text == ":" || p.tokAt(i).text == "/") {
			i++
		}
	}
	if !pairs {
		return false
	}
	p.i = open.pair + 1
	for p.has("(|[") && p.opt.Sizes != len(from)+1 && p.nest < maxDepth { // size groups: "(12-16) (14-18)"
		next := Range{From: &Number{Values: []Value{{}}}, To: &Number{Values: []Value{{}}}}
		p.nest++
		ok := p.rangeList(&next)
		p.nest--
		if !ok {
			break
		}
		from, to = append(from, next.From.Values[1:]...), append(to, next.To.Values[1:]...)
	}
	span := Span{Start: r.From.Start, End: p.span(p.i - 1).End}
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
		if i > from && p.tokAt(i).space {
			b.WriteByte(' ')
		}
		b.WriteString(p.tokAt(i).text)
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
