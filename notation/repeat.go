package notation

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
	if !p.tokAt(at).space || p.done() {
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
		end := max(o.steps[n-1].At().End, s.p.at+s.p.tokAt(o.at).end)
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
	if len(s.open) == 0 && !p.has("rep|repeat|rpt|repeating|rept|reps|repeats|work|working|worked|from|and|then|(|[") {
		return false, nil
	}
	if p.has("(|[", "rep|repeat|rpt") && p.peek(0).pair > 0 && p.peek(0).pair < p.i+12 { // "(repeat 6 times)"
		p.i++
	}
	if !p.repWords() {
		p.i = from
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
		if isMark(p.peek(0).text) && begin != "" { // "between * *"
			stop = s.markName()
		} else if p.has("to|and|through|-|--|until") && isMark(p.peek(1).text) || p.has("to", "next|second|last|the") && isMark(p.peek(2).text) {
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
