package notation

import "strings"

// bracket reads "( ... )" and tells its seven jobs apart.
func (p *parser) bracket() []Step {
	open := p.peek(0)
	if open.kind != mark || open.text != "(" && open.text != "[" && open.text != "{" {
		return nil
	}
	from := p.i
	if open.pair < 0 || open.pair >= p.end {
		p.i++
		return []Step{&Remark{p.span(from)}}
	}
	closing := open.pair
	if p.opt.Sizes > 1 && p.listIn(p.i) == p.opt.Sizes {
		return nil
	}
	if n := p.listIn(p.i); n > 0 && closing+1 >= p.end || p.i+1 == closing {
		p.i = closing + 1
		return []Step{&Remark{p.span(from)}}
	}
	p.i = closing + 1
	g := &Group{}
	p.groupTail(g)
	after := p.i
	if g.Times == nil && len(g.In) == 0 {
		if s := p.remarkBracket(from, closing); s != nil {
			return s
		}
	}
	if p.depth++; p.depth > maxDepth {
		p.depth--
		p.i = closing + 1
		span := p.span(from)
		p.unread = append(p.unread, span)
		return []Step{&Unknown{span}}
	}
	end := p.end
	p.i, p.end = from+1, closing
	g.Body = p.sequence(false)
	p.end, p.i = end, after
	p.depth--
	g.Span = p.span(from)
	return []Step{g}
}

// groupTail reads what stands after a bracket: times, a place, a limit.
func (p *parser) groupTail(g *Group) {
	from := p.i
	if t := p.times(); t != nil {
		g.Times = t
		at := p.i
		if p.takeAny("in|into|around") {
			p.inPlaces(g, at)
		}
		return
	}
	p.i = from
	switch {
	case p.has("in|into|around|over|on") && !(p.has("around") && p.endOfPlace(1)):
		p.i++
		p.inPlaces(g, from)
		at := p.i
		if t := p.times(); t != nil {
			g.Times = t
		} else {
			p.i = at
		}
	case p.has("across|around|along"), p.has("to|until", "end|last|next|tch|marker|marked|top|within|corner"):
		if l := p.limit(); l != nil {
			g.Times = &Times{Span: l.Span, To: l}
		}
	case p.has("rep|repeat|rpt"):
		p.i++
		p.filler("this|these|the|to|from|bracketed|section")
		if t := p.times(); t != nil {
			g.Times = t
			g.Times.More = true
		} else if l := p.limit(); l != nil {
			g.Times = &Times{Span: l.Span, To: l}
		} else {
			p.i = from
		}
	case p.has("each", "in"):
		p.i++
		p.groupTail(g)
	}
}

func (p *parser) inPlaces(g *Group, back int) {
	pl := p.target()
	if pl == nil {
		p.i = back
		return
	}
	g.In = append(g.In, pl)
	for {
		at := p.i
		if !p.take("and") || !p.takeAny("in|into") {
			p.i = at
			return
		}
		q := p.target()
		if q == nil {
			p.i = at
			return
		}
		g.In = append(g.In, q)
	}
}

// times reads "6 times", "twice", "x 6", "4 (5, 6) more times", "once more".
func (p *parser) times() *Times {
	from := p.i
	t := &Times{}
	p.filler("a|total|of|worked|work|repeat|for|another")
	switch {
	case p.has("x") || p.has("*") && p.hasNumber(1) && !p.peek(0).space:
		p.i++
		if t.N = p.bareNumber(); t.N == nil {
			p.i = from
			return nil
		}
		p.takeAny("times|time")
	case p.has("once|twice|thrice"):
		n := map[string]int{"once": 1, "twice": 2, "thrice": 3}[p.peek(0).text]
		t.N = &Number{Values: []Value{{N: n}}, Span: Span{p.at + p.peek(0).start, p.at + p.peek(0).end}}
		p.i++
		t.More = p.takeAny("more")
	case p.startsNumber():
		t.N = p.number()
		more := p.takeAny("more|additional|further")
		if !p.takeAny("times|time|x") {
			p.i = from
			return nil
		}
		t.More = p.takeAny("more") || more
	default:
		p.i = from
		return nil
	}
	p.filler("total|altogether|all")
	if p.i > from && p.toks[p.i-1].text == "in" {
		p.i--
	}
	t.Span = p.span(from)
	return t
}

// remarkBracket reads a bracket that orders nothing: "(RS)", "(shell made)",
// "(counts as dc)", "(see Notes)".
func (p *parser) remarkBracket(from, closing int) []Step {
	end := p.end
	p.i, p.end = from+1, closing
	defer func() { p.end = end }()
	if c := p.countsWords(); c != nil {
		p.i = closing + 1
		return []Step{&Rule{Span: p.span(from), About: AboutTurningChain, Counts: c}}
	}
	p.i = from + 1
	if c := p.count(closing); c != nil && len(c.Items) > 0 && (c.Items[0].What != StitchOrSpace) {
		p.i = closing + 1
		c.Span = p.span(from)
		p.counts = append(p.counts, c)
		return []Step{&Remark{p.span(from)}}
	}
	orders := false
	for i := from + 1; i < closing; i++ {
		p.i = i
		if t := &p.toks[i]; t.kind == word {
			if beginsOrder[t.text] {
				orders = true
			}
			if _, n := p.lookup(); n > 0 {
				orders = true
			}
		}
	}
	last := p.toks[closing-1].text
	if !orders || anyOf(last, "made|worked|completed|") || p.toks[from+1].text == "see" || p.toks[from+1].text == "this" || p.toks[from+1].text == "note" || p.toks[from+1].text == "you" {
		p.i = closing + 1
		return []Step{&Remark{p.span(from)}}
	}
	return nil
}

// stars keeps the passages that marks have opened in a line.
type stars struct {
	p    *parser
	open []*openStar
	last map[string][]Step // passages closed, by their mark
}

type openStar struct {
	mark   string
	at     int // token of the mark
	steps  []Step
	closed bool // a second mark of the same kind has closed it
}

// push adds a step to the innermost open passage, or to the line.
func (s *stars) push(steps *[]Step, one Step) {
	for i := len(s.open) - 1; i >= 0; i-- {
		if !s.open[i].closed {
			s.open[i].steps = append(s.open[i].steps, one)
			return
		}
	}
	if len(s.open) > 0 {
		// between a closed passage and its rep clause
		s.open[0].steps = append(s.open[0].steps, one)
		return
	}
	*steps = append(*steps, one)
}

// mark takes a star or dagger that opens or closes a passage.
func (s *stars) mark() bool {
	p := s.p
	t := p.peek(0)
	if t.kind != mark || t.text == "" || !strings.Contains("* ** *** † ‡ § #", t.text) || t.text == " " {
		return false
	}
	at := p.i
	for i := len(s.open) - 1; i >= 0; i-- {
		if s.open[i].mark == t.text && !s.open[i].closed && len(s.open[i].steps) > 0 {
			// "*A*; rep ...": the passage ends here
			p.i++
			if i == len(s.open)-1 {
				s.open[i].closed = true
			}
			return true
		}
	}
	p.i++
	if t.text == "**" && len(s.open) > 0 && !s.open[len(s.open)-1].closed {
		// a mark inside: where the last repeat stops, or another passage; the
		// rep clause tells
		o := s.open[len(s.open)-1]
		o.steps = append(o.steps, &Stop{Span: p.span(at), Mark: t.text})
		return true
	}
	s.open = append(s.open, &openStar{mark: t.text, at: at})
	return true
}

// repWords tells whether a rep clause comes next, and passes over its verb.
func (p *parser) repWords() bool {
	from := p.i
	p.filler("and|then|work|*")
	if p.takeAny("rep|repeat|rpt|repeating|reps|repeats|work") && !(p.toks[p.i-1].text == "work" && !p.has("from|between", "*|**|†")) {
		if p.has("row|rows|rnd|rnds|round|rounds|last|pattern|this|these|for|until|all|inc|dec|both|above|instructions|steps|step|1st|2nd") || p.hasNumber(0) && !p.has("from") && false {
			if !p.has("last") || !p.has("last", "*") {
				p.i = from
				return false
			}
		}
		return true
	}
	p.i = from
	return false
}

// rep reads a rep clause and closes the passage it goes back to.
func (s *stars) rep(steps *[]Step) (bool, []Step) {
	p := s.p
	from := p.i
	if len(s.open) == 0 && !p.has("rep|repeat|rpt|repeating|work|and|then|ending|end") {
		return false, nil
	}
	if s.endClause() {
		return true, nil
	}
	if !p.repWords() {
		// "* ... * 6 times", "*A* x 4"
		if n := len(s.open); n > 0 && s.open[n-1].closed {
			if t := p.times(); t != nil && p.i > from {
				s.close(steps, n-1, t, from)
				return true, nil
			}
			p.i = from
			if l := p.limit(); l != nil && l.End {
				s.close(steps, n-1, &Times{Span: l.Span, To: l}, from)
				return true, nil
			}
			p.i = from
		}
		return false, nil
	}
	begin, stop := "", ""
	switch {
	case p.takeAny("from|between|bet"):
		p.filler("the|first|last|single|one")
		begin = s.markName()
		p.filler("'|s|sts")
		if p.has("to|and|through|-|--") && isMark(p.peek(1).text) {
			p.i++
			stop = s.markName()
			p.filler("'|s")
		}
	case isMark(p.peek(0).text):
		begin = s.markName()
		if p.has("to|and|-|--") && isMark(p.peek(1).text) {
			p.i++
			stop = s.markName()
		}
		p.filler("'|s")
	case len(s.open) == 0:
		p.i = from
		return false, nil
	}
	p.take(",")
	t := p.repTimes()
	s.last1(t)
	idx := -1
	for i := len(s.open) - 1; i >= 0; i-- {
		if begin == "" || s.open[i].mark == begin {
			idx = i
			break
		}
	}
	if idx < 0 {
		if body, ok := s.last[begin]; ok && begin != "" { // worked before in this line
			s.again(steps, body, stop, t, from)
			return true, nil
		}
		if body := s.stopped(begin); body != nil {
			s.again(steps, body, stop, t, from)
			return true, nil
		}
		return true, []Step{&Orphan{Span: p.span(from), Times: t}}
	}
	if stop != "" && stop != begin {
		s.toMark(steps, idx, stop, t, from)
		return true, nil
	}
	s.close(steps, idx, t, from)
	return true, nil
}

func isMark(t string) bool {
	return t == "*" || t == "**" || t == "***" || t == "†" || t == "‡" || t == "#"
}

func (s *stars) markName() string {
	t := s.p.peek(0).text
	if isMark(t) {
		s.p.i++
		if t == "*" && s.p.peek(0).text == "*" && !s.p.peek(0).space {
			s.p.i++
			return "**"
		}
		return t
	}
	return ""
}

// stopped finds the passage that a "**" inside another opens.
func (s *stars) stopped(name string) []Step {
	for i := len(s.open) - 1; i >= 0; i-- {
		for k, st := range s.open[i].steps {
			if m, ok := st.(*Stop); ok && m.Mark == name {
				return s.open[i].steps[k+1:]
			}
		}
	}
	return nil
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
		if n := p.times(); n != nil && t.To.End { // "across, 6 times in all"
			_ = n
		}
	} else if n := p.times(); n != nil {
		said := n.More
		*t = *n
		t.More, t.Unsure = true, !said
		if v := t.N.Values; len(v) == 1 && v[0].N == 1 {
			t.Unsure = false
		}
		if p.takeAny("across|around") {
		}
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
		t.Span = Span{p.at + len(p.text), p.at + len(p.text)}
		if from > 0 {
			t.Span = Span{p.at + p.toks[from-1].start, p.at + p.toks[from-1].end}
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
		p.take(",")
		p.take(";")
		switch {
		case p.endAt(t):
		case p.takeAny("omitting|omit|omitted|leaving") && p.takeAny("the|last|final"):
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

// endClause reads an "ending last rep at **" that stands after its rep clause
// and a full stop.
func (s *stars) endClause() bool { return false }

func (s *stars) last1(t *Times) {}

// close makes a Star of an open passage and of all that stands in it.
func (s *stars) close(steps *[]Step, idx int, t *Times, from int) {
	p := s.p
	o := s.open[idx]
	for i := len(s.open) - 1; i > idx; i-- { // what was opened inside and never closed
		o.steps = append(o.steps, &Star{Span: p.span(s.open[i].at), Mark: s.open[i].mark, Body: s.open[i].steps})
	}
	body := o.steps
	s.open = s.open[:idx]
	if s.last == nil {
		s.last = map[string][]Step{}
	}
	s.last[o.mark] = body
	star := &Star{Span: p.span(o.at), Mark: o.mark, Body: body, Times: t, Rep: p.span(from)}
	s.push(steps, star)
}

// toMark works only the stretch up to a second mark again: "rep from * to **
// once".
func (s *stars) toMark(steps *[]Step, idx int, stop string, t *Times, from int) {
	p := s.p
	o := s.open[idx]
	body := o.steps
	s.open = s.open[:idx]
	if s.last == nil {
		s.last = map[string][]Step{}
	}
	s.last[o.mark] = body
	head := upTo(body, stop)
	for _, one := range body {
		if m, ok := one.(*Stop); ok && m.Mark == stop {
			continue
		}
		s.push(steps, one)
	}
	again := *t
	again.More, again.Unsure = false, false
	s.push(steps, &Star{Span: p.span(from), Mark: o.mark, Body: head, Times: &again, Rep: p.span(from)})
}

func upTo(body []Step, stop string) []Step {
	for k, st := range body {
		if m, ok := st.(*Stop); ok && m.Mark == stop {
			return body[:k]
		}
	}
	return body
}

// again works a passage of this line once more.
func (s *stars) again(steps *[]Step, body []Step, stop string, t *Times, from int) {
	if stop != "" {
		body = upTo(body, stop)
	}
	again := *t
	again.More, again.Unsure = false, false
	s.push(steps, &Star{Span: s.p.span(from), Mark: "*", Body: body, Times: &again, Rep: s.p.span(from)})
}

// finish closes what no rep clause has closed.
func (s *stars) finish(steps *[]Step) {
	for len(s.open) > 0 {
		o := s.open[0]
		rest := s.open[1:]
		s.open = nil
		star := &Star{Span: s.p.span(o.at), Mark: o.mark, Body: o.steps}
		for i := len(rest) - 1; i >= 0; i-- {
			star.Body = append(star.Body, &Star{Span: s.p.span(rest[i].at), Mark: rest[i].mark, Body: rest[i].steps})
		}
		*steps = append(*steps, star)
	}
}
