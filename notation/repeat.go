package notation

// bracket reads "( ... )" and tells its seven jobs apart.
func (p *parser) bracket() []Step {
	open := p.peek(0)
	if open.kind != mark || open.text != "(" && open.text != "[" && open.text != "{" {
		return nil
	}
	from := p.i
	if open.pair < 0 || open.pair >= p.end {
		p.i++
		return []Step{&Remark{Span: p.span(from)}}
	}
	closing := open.pair
	if p.opt.Sizes > 1 && p.listIn(p.i) == p.opt.Sizes {
		return nil
	}
	if n := p.listIn(p.i); n > 0 && closing+1 >= p.end || p.i+1 == closing {
		p.i = closing + 1
		return []Step{&Remark{Span: p.span(from)}}
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
		return []Step{&Unknown{Span: span}}
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
			case u.kind == number && u.frac == 0 && i+1 < p.end && anyOf(p.toks[i+1].text, "times|time|"):
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

// remarkBracket reads a bracket that orders nothing: "(RS)", "(shell made)",
// "(counts as dc)", "(see Notes)".
func (p *parser) remarkBracket(from, closing int) []Step {
	end := p.end
	p.i, p.end = from+1, closing
	defer func() { p.end = end }()
	if c := p.countsWords(); c != nil {
		p.i = closing + 1
		switch {
		case p.chain != nil && p.chain.Counts == nil && !p.note:
			p.chain.Counts = c
			return []Step{}
		case p.skip != nil && p.skip.Counts == nil:
			p.skip.Counts = c
			return []Step{}
		}
		return []Step{&Rule{Span: p.span(from), About: AboutTurningChain, Counts: c}}
	}
	p.i = from + 1
	if c := p.count(closing); c != nil && len(c.Items) > 0 && (c.Items[0].What != StitchOrSpace) {
		p.i = closing + 1
		c.Span = p.span(from)
		p.counts = append(p.counts, c)
		return []Step{}
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
	if !orders || p.hasWord(from, closing, "see|made|completed|same|rather|instead|like|example|optional|note|if|is|are|these|here|will|should|you|loops|hook|i|called|means|corner|page|photo|picture") || anyOf(last, "made|worked|completed|") || p.toks[from+1].text == "see" || p.toks[from+1].text == "this" || p.toks[from+1].text == "note" || p.toks[from+1].text == "you" {
		p.i = closing + 1
		return []Step{&Remark{Span: p.span(from)}}
	}
	return nil
}

// hasWord tells whether one of the words stands between two tokens.
func (p *parser) hasWord(from, to int, list string) bool {
	for i := from; i < to && i < from+30; i++ {
		if p.toks[i].kind == word && anyOf(p.toks[i].text, list+"|") {
			return true
		}
	}
	return false
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
	n      int  // how many steps stand before that mark
}

// mostStars is how many passages may be open at once.
const mostStars = 16

// push adds a step to the innermost open passage, or to the line.
func (s *stars) push(steps *[]Step, one Step) {
	if k := len(s.open) - 1; k >= 0 {
		s.open[k].steps = append(s.open[k].steps, one)
		return
	}
	*steps = append(*steps, one)
}

// mark takes a star or dagger that opens or closes a passage.
func (s *stars) mark(steps *[]Step) bool {
	p := s.p
	t := p.peek(0)
	if t.kind != mark || !isMark(t.text) {
		return false
	}
	at := p.i
	p.i++
	for i := len(s.open) - 1; i >= 0; i-- {
		if o := s.open[i]; o.mark == t.text && !o.closed {
			if len(o.steps) == 0 {
				o.at = at // a second star with nothing between
			} else if s.closes(at) || i < len(s.open)-1 {
				s.fold(i)
				o.closed, o.n = true, len(o.steps)
			} else {
				break
			}
			return true
		}
	}
	if t.text == "**" && len(s.open) > 0 && !s.open[len(s.open)-1].closed {
		// a mark inside: where the last repeat stops, or another passage; the
		// rep clause tells
		s.push(steps, &Stop{Span: p.span(at), Mark: t.text})
		return true
	}
	if len(s.open) >= mostStars {
		return true
	}
	for k := len(s.open) - 1; k >= 0 && s.open[k].closed && s.open[k].mark == t.text; k-- {
		s.abandon(steps, k) // "*A*, B, *C*": A is not repeated any more
	}
	s.open = append(s.open, &openStar{mark: t.text, at: at})
	return true
}

// closes tells whether a second star ends a passage rather than begins
// another: it stands close after a word, or a rep clause follows.
func (s *stars) closes(at int) bool {
	p := s.p
	if !p.toks[at].space || p.done() {
		return true
	}
	next := p.peek(0)
	return next.space || next.kind == mark || p.has("rep|repeat|rpt|repeating|x|across|around") || p.startsNumber()
}

// fold makes stars without a rep clause of what stands open inside passage i.
func (s *stars) fold(i int) {
	for len(s.open)-1 > i {
		k := len(s.open) - 1
		s.abandon(nil, k)
	}
}

// abandon closes passage k, which no rep clause has closed.
func (s *stars) abandon(steps *[]Step, k int) {
	o := s.open[k]
	s.open = s.open[:k]
	n := len(o.steps)
	if o.closed {
		n = o.n
	}
	if n > 0 {
		end := o.steps[n-1].At().End
		s.push(steps, &Star{Span: Span{Start: s.p.span(o.at).Start, End: end}, Mark: o.mark, Body: o.steps[:n:n]})
	}
	for _, one := range o.steps[n:] {
		s.push(steps, one)
	}
}

// repWords tells whether a rep clause comes next, and passes over its verb.
func (p *parser) repWords() bool {
	from := p.i
	p.filler("and|then")
	if p.has("work|working|worked", "from|between|bet", "*|**|***|†|‡|††|first") || p.has("from|between|bet", "*|**|***|†|††", "to|and|twice|once|-|across|around") {
		p.takeAny("work|working|worked")
		return true
	}
	if !p.takeAny("rep|repeat|rpt|repeating|reps|repeats|rept") {
		p.i = from
		return false
	}
	if p.has("row|rows|rnd|rnds|round|rounds|pattern|pat|patt|this|these|for|until|all|inc|dec|both|above|instructions|steps|step|1st|2nd|as|in|last|previous|prev|other|on|second|third") && !p.has("for|all|in", "across|around|along|*|the") || p.peek(0).kind == ordinal || p.hasNumber(0) && p.hasAny(1, "rows|rnds|rounds|row") {
		p.i = from
		return false
	}
	return true
}

// rep reads a rep clause and closes the passage it goes back to.
func (s *stars) rep(steps *[]Step) (bool, []Step) {
	p := s.p
	from := p.i
	if len(s.open) == 0 && !p.has("rep|repeat|rpt|repeating|work|and|then|ending|end") {
		return false, nil
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
	p.filler("instructions|sequence|pattern|section|everything|again")
	switch {
	case p.takeAny("from|between|bet|btw|btwn"):
		p.filler("the|first|last|single|one|asterisk|asterisks|stars|beginning|beg|star|two|start|of|row|rnd|round|to")
		begin = s.markName()
		p.filler("'|s|sts")
		if p.has("to|and|through|-|--|until") && isMark(p.peek(1).text) || p.has("to", "next|second|last|the") && isMark(p.peek(2).text) {
			p.i++
			p.filler("next|second|last|the")
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
	}
	if p.take(",") && isMark(p.peek(0).text) {
		p.i--
	}
	t := p.repTimes()
	if begin == "" && len(s.open) == 0 {
		if p.i == from+1 && t.Fit {
			p.i = from
			return false, nil
		}
		s.wholeLine(steps, t, from)
		return true, nil
	}
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

// isMark tells whether a token marks a passage.
func isMark(t string) bool {
	switch t {
	case "*", "**", "***", "†", "††", "†††", "‡", "‡‡", "#", "§":
		return true
	}
	return false
}

// wholeLine reads "sc 3, inc, repeat 5 more times": with no star, what is
// worked again begins after the turning chain.
func (s *stars) wholeLine(steps *[]Step, t *Times, from int) {
	p := s.p
	k := 0
	for ; k < len(*steps); k++ {
		if !opening((*steps)[k]) {
			break
		}
	}
	body := append([]Step(nil), (*steps)[k:]...)
	if len(body) == 0 {
		*steps = append(*steps, &Orphan{Span: p.span(from), Times: t})
		return
	}
	if t.N != nil && t.Unsure { // "repeat 6 times" with nothing to go back to: 6 in all
		t.More = false
	}
	*steps = append((*steps)[:k:k], &Star{Span: Span{Start: body[0].At().Start, End: p.span(from).End}, Body: body, Times: t, Rep: p.span(from)})
}

// opening tells whether a step only gets a row ready.
func opening(s Step) bool {
	switch s.(type) {
	case *Chains, *Turn, *Join, *JoinYarn, *Color, *Remark, *Rule, *MagicRing, *FastenOff:
		return true
	}
	return false
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
			t.Span = Span{Start: p.at + p.toks[from-1].start, End: p.at + p.toks[from-1].end}
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

// close makes a Star of an open passage and of all that stands in it.
func (s *stars) close(steps *[]Step, idx int, t *Times, from int) {
	p := s.p
	s.fold(idx)
	o := s.open[idx]
	s.open = s.open[:idx]
	body := o.steps
	if o.closed {
		body = body[:o.n:o.n]
	}
	s.keep(o.mark, body)
	if o.closed && len(o.steps) > o.n { // "*A*, B, rep from * to * twice"
		for _, one := range o.steps {
			s.push(steps, one)
		}
		s.again(steps, body, "", t, from)
		return
	}
	s.push(steps, &Star{Span: p.span(o.at), Mark: o.mark, Body: body, Times: t, Rep: p.span(from)})
}

// keep remembers a passage for a later rep clause.
func (s *stars) keep(mark string, body []Step) {
	if s.last == nil {
		s.last = map[string][]Step{}
	}
	s.last[mark] = body
}

// toMark works only the stretch up to a second mark again: "rep from * to **
// once".
func (s *stars) toMark(steps *[]Step, idx int, stop string, t *Times, from int) {
	p := s.p
	o := s.open[idx]
	s.fold(idx)
	body := o.steps
	s.open = s.open[:idx]
	s.keep(o.mark, body)
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
		s.abandon(steps, len(s.open)-1)
	}
}
