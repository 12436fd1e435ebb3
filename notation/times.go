package notation

// times reads "6 times", "twice", "x 6", "4 (5, 6) more times", "once more".
func (p *parser) times() *Times {
	from := p.i
	t := &Times{}
	p.filler("a|total|of|worked|work|repeat|for|another")
	switch {
	case p.has("x") || p.has("*") && p.hasNumber(1) && !p.peek(0).space && !p.peek(1).space:
		p.i++
		if t.N = p.bareNumber(); t.N == nil {
			p.i = from
			return nil
		}
		p.takeAny("times|time")
	case p.has("once|twice|thrice"):
		t.N = &Number{Values: []Value{{N: timesWords[p.peek(0).text]}}}
		p.i++
		t.N.Span = p.span(p.i - 1)
		p.timesList(t)
		t.More = p.takeAny("more|again")
	case p.startsNumber():
		t.N = p.number()
		more := p.takeAny("more|additional|further")
		if !p.takeAny("times|time|x|tms") {
			p.i = from
			return nil
		}
		p.timesList(t)
		t.More = p.takeAny("more|again") || more
	default:
		p.i = from
		return nil
	}
	p.filler("total|altogether|all")
	if p.i > from && p.prev(1).text == "in" {
		p.i--
	}
	t.Span = p.span(from)
	return t
}

var timesWords = map[string]int{"once": 1, "twice": 2, "thrice": 3}

// timesList reads how often in further sizes when each has its own words:
// "twice [3 times]{3 times}", "once (twice, 3 times)".
func (p *parser) timesList(t *Times) {
	for p.has("(|[|{") && p.peek(0).pair > 0 {
		var list []Value
		for i := p.i + 1; i < p.peek(0).pair; i++ {
			switch u := &p.toks[i]; {
			case u.kind == number && u.frac == 0 && i+1 < p.end && anyOf(p.tokAt(i+1).text, "times|time|"):
				list = append(list, Value{N: u.n})
			case timesWords[u.text] > 0:
				list = append(list, Value{N: timesWords[u.text]})
			case anyOf(u.text, "times|time|,|:|;|/|"):
			default:
				return
			}
		}
		if len(list) == 0 {
			return
		}
		t.N.Values = append(t.N.Values, list...)
		p.i = p.peek(0).pair + 1
		t.N.Span.End = p.span(p.i - 1).End
	}
}

// repTimes reads how often a rep clause works its passage.
func (p *parser) repTimes() *Times {
	from := p.i
	t := &Times{Fit: true}
	if l := p.limit(); l != nil {
		t.To, t.Fit = l, false
		if l.End {
			at := p.i
			p.take(",")
			if m := p.limit(); m != nil && !m.End {
				t.To = m
			} else {
				p.i = at
			}
		}
		if n := p.times(); n != nil && t.To.End { // "around 6 times"
			t.N, t.To, t.Unsure = n.N, nil, !n.More
			t.More = true
		}
	} else if n := p.times(); n != nil {
		said := n.More
		*t = *n
		t.More, t.Unsure = true, !said
		if v := t.N.Values; len(v) == 1 && v[0].N == 1 {
			t.Unsure = false
		}
		p.takeAny("across|around")
	} else if p.startsNumber() && !p.spaceAhead() {
		at := p.i
		num := p.number()
		if p.has(",") || p.has(".") || p.done() || p.has(";") {
			t.N, t.More, t.Unsure, t.Fit = num, true, true, false
		} else {
			p.i = at
		}
	}
	t.Span = p.span(from)
	if p.i == from {
		t.Span = Span{Start: p.at + len(p.text), End: p.at + len(p.text)}
		if from > 0 {
			t.Span = Span{Start: p.at + p.tokAt(from-1).start, End: p.at + p.tokAt(from-1).end}
		}
	}
	p.repEnding(t)
	return t
}

// repEnding reads "ending last rep at **", "ending with sc in last st",
// "omitting last ch-3", "working last tr in top of tch".
func (p *parser) repEnding(t *Times) {
	for {
		from := p.i
		if !p.take(",") && !p.take(";") && p.has(".|(|--|-", "ending|end|omitting|omit|working") {
			p.i++
		}
		p.filler("but")
		switch {
		case p.endAt(t):
		case p.has("omitting|omit|omitted|leaving", "the|last|final|ch|off"):
			p.i++
			p.takeAny("off")
			p.filler("the|last|final")
			if s := p.step(); s != nil {
				t.Omit = s
			} else if pl := (&Place{}); p.unit(pl) {
				t.Omit = []Step{&Chains{Span: p.span(from), N: pl.Chains}}
			}
			p.filler("on|last|rep|repeat|of|the|in|at|end|final")
		default:
			p.i = from
			if pl := p.workingLast(); pl != nil {
				t.Last = pl
				continue
			}
			p.i = from
			return
		}
	}
}

// endAt reads "ending last rep at **", "ending with B".
func (p *parser) endAt(t *Times) bool {
	from := p.i
	if !p.takeAny("ending|end|ends") {
		return false
	}
	p.filler("the|last|final|rep|repeat|row|rnd|round|your")
	switch {
	case p.takeAny("at|on|with|by|in|after|"):
		p.filler("the|a|working|first")
	case p.i == from+1:
		p.i = from
		return false
	}
	if isMark(p.peek(0).text) {
		st := &stars{p: p}
		t.EndAt = st.markName()
		return true
	}
	if p.sideWords(new(Side)) || p.has("row|rnd|round") {
		p.i = from
		return false
	}
	for {
		at := p.i
		s := p.step()
		if s == nil {
			p.i = at
			break
		}
		t.Ending = append(t.Ending, s...)
		if at = p.i; !p.take("and") && !p.take(",") || p.has("turn|join|ch|rep") || !p.placedWork() {
			p.i = at
			break
		}
	}
	if len(t.Ending) == 0 {
		p.i = from
		return false
	}
	return true
}

// placedWork tells whether more stitches follow.
func (p *parser) placedWork() bool {
	if p.startsNumber() || p.has("sk|skip|miss") {
		return true
	}
	_, n := p.lookup()
	return n > 0
}
