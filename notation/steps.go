package notation

// sequence reads steps until the tokens run out. top tells that we are not
// inside a bracket: stated counts and rep clauses stand there.
func (p *parser) sequence(top bool) []Step {
	var steps []Step
	st := &stars{p: p}
	for !p.done() {
		from := p.i
		if p.separator() {
			continue
		}
		if top && p.statedCount(len(steps) > 0 || len(st.open) > 0) {
			continue
		}
		if st.mark(&steps) {
			continue
		}
		if done, more := st.rep(&steps); done {
			steps = append(steps, more...)
			continue
		}
		s := p.step()
		if s == nil {
			s = p.unknown()
		}
		if p.i == from { // never stand still
			p.i++
		}
		for _, one := range s {
			p.noteStep(one)
			st.push(&steps, one)
		}
	}
	st.finish(&steps)
	return steps
}

// noteStep keeps what a remark or a rep clause may speak of.
func (p *parser) noteStep(s Step) {
	p.chain, p.skip = nil, nil
	switch s := s.(type) {
	case *Chains:
		p.chain = s
	case *Skip:
		p.skip = s
	case *Work, *Group, *Again, *Evenly:
		p.made = true
	}
}

// separator passes over marks and words between steps.
func (p *parser) separator() bool {
	t := p.peek(0)
	if t.kind == mark {
		switch t.text {
		case ",", ";", ".", ":", "!", "&", "--", "-", "/", "\"", "'", ")", "]", "}", "|", "+", "=", "?":
			if (t.text == "--" || t.text == "-" || t.text == "=") && p.countFollows() {
				return false
			}
			if (t.text == "--" || t.text == "-") && p.listIn(p.i+1) > 0 {
				return false
			}
			p.i++
			return true
		}
		return false
	}
	if t.kind != word {
		return false
	}
	if anyOf(t.text, "and|then|now|also|finally|again|please|simply|carefully|just|still|so|&|lastly|afterwards|meanwhile") {
		p.i++
		return true
	}
	if anyOf(t.text, "to|at") && p.hasAny(1, "begin|start") {
		p.i += 2
		return true
	}
	if anyOf(t.text, "work|make|place|do|crochet|put|add|working|making|complete|with|using|you|will") && p.workAhead() {
		p.i++
		return true
	}
	return false
}

// workAhead tells whether a stitch or a count of stitches follows "work".
func (p *parser) workAhead() bool {
	from := p.i
	p.i++
	p.filler("a|an|the|another|your|only")
	ok := false
	if t := p.peek(0); anyOf(t.text, "(|[|*|**|") && !p.has("*", "to") {
		ok = p.tokAt(from).text != "with" && p.tokAt(from).text != "using"
	}
	if p.startsNumber() {
		p.number()
	}
	if p.has("dec|inc|decrease|increase|rows|row|rnds|rounds|rnd|round", "row|rnd|round|of|even|in|rows") {
		p.i = from
		return false
	}
	p.filler("more|regular|standard|single-crochet")
	if _, n := p.lookup(); n > 0 {
		ok = true
	}
	if anyOf(p.tokAt(from).text, "place|with|using|you|will|add|put") && p.i == from+1 && !ok {
		ok = false
	}
	p.i = from
	return ok
}

// unknown takes words that are not understood, up to the next mark or the next
// word that begins an order.
func (p *parser) unknown() []Step {
	from := p.i
	p.i++
	for !p.done() && !p.orderStarts() {
		p.i++
	}
	span := p.span(from)
	p.unread = append(p.unread, span)
	return []Step{&Unknown{Span: span}}
}

// orderStarts tells whether the token at hand may begin a step.
func (p *parser) orderStarts() bool {
	t := p.peek(0)
	if t.kind == mark {
		return anyOf(t.text, ",|.|;|:|(|[|{|*|**|)|]|}|!|")
	}
	if t.kind == word {
		if beginsOrder[t.text] {
			return true
		}
		if p.prev(1).kind == word && anyOf(p.prev(1).text, "of|for|a|the|your|each|all|") {
			return false
		}
		_, n := p.lookup()
		return n > 0
	}
	return false
}

var beginsOrder = map[string]bool{"sk": true, "skip": true, "miss": true, "turn": true, "join": true, "rep": true, "repeat": true,
	"fasten": true, "leave": true, "leaving": true, "inc": true, "dec": true}

// step reads one step, or the few that one phrase gives. nil if none is
// understood; the position is then where it was.
func (p *parser) step() []Step {
	if p.nest++; p.nest > 2*maxDepth {
		p.nest--
		return nil
	}
	defer func() { p.nest-- }()
	from := p.i
	for _, read := range readers {
		if s := read(p); s != nil {
			return s
		}
		p.i = from
	}
	return nil
}

// readers are the kinds of phrase, the more telling before the more general.
var readers []func(*parser) []Step

func init() {
	readers = []func(*parser) []Step{
		(*parser).bracket,
		(*parser).aside,
		(*parser).rule,
		(*parser).again,
		(*parser).shape,
		(*parser).foundationStep,
		(*parser).yarn,
		(*parser).turnStep,
		(*parser).joinStep,
		(*parser).skipStep,
		(*parser).leaveStep,
		(*parser).evenlyStep,
		(*parser).sideStep,
		(*parser).chainStep,
		(*parser).workStep,
		(*parser).placeFirst,
		(*parser).remarkStep,
		(*parser).unlisted,
	}
}
