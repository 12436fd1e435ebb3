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
	if anyOf(t.text, "and|then|now|also|finally|again|please|simply|carefully|just|still|so|&|lastly|afterwards|meanwhile|&|") && !(t.text == "then" && false) {
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
		ok = p.toks[from].text != "with" && p.toks[from].text != "using"
	}
	if p.startsNumber() {
		p.number()
	}
	if p.has("dec|inc|decrease|increase|rows|row|rnds|rounds|rnd|round", "row|rnd|round|of|even|in|rows") {
		p.i = from
		return false
	}
	p.filler("more|regular|standard|single-crochet")
	if _, n := p.lookup(); n > 0 || p.loopWords() != BothLoops && false {
		ok = true
	}
	if anyOf(p.toks[from].text, "place|with|using|you|will|add|put") && p.i == from+1 && !ok {
		ok = false
	}
	p.i = from
	return ok
}

// countAhead tells whether the words at hand may state a count.
func (p *parser) countAhead() bool {
	return p.startsNumber() || p.has("total|totals|count|for|you|we|now|there|a|st|sts|stitch|stitches|=|--|-|:|should|ending")
}

func (p *parser) countFollows() bool {
	from := p.i
	p.i++
	if !p.countAhead() {
		p.i = from
		return false
	}
	c := p.count(p.sentenceEnd())
	p.i = from
	return c != nil
}

// sentenceEnd is the token that ends the sentence at hand.
func (p *parser) sentenceEnd() int {
	for i := p.i; i < p.end && i < p.i+120; i++ {
		t := &p.toks[i]
		if t.kind == mark && (t.text == "." || t.text == "!") && (i+1 >= p.end || p.toks[i+1].space || p.toks[i+1].kind == mark) && !abbreviated(p, i) {
			return i
		}
	}
	return min(p.end, p.i+120)
}

// abbreviated tells whether a full stop belongs to an abbreviation: "sts.".
func abbreviated(p *parser, i int) bool { return false }

// statedCount reads a stated count at the top level of a line.
func (p *parser) statedCount(after bool) bool {
	t := p.peek(0)
	from := p.i
	if (t.text == "(" || t.text == "[" || t.text == "{") && t.kind == mark && t.pair > 0 {
		if !after && t.text == "(" && p.listIn(p.i) == p.opt.Sizes {
			return false
		}
		// A group or repeat has a place or times after it.
		next := &noToken
		if t.pair+1 < p.end {
			next = &p.toks[t.pair+1]
		}
		if next.kind == word && anyOf(next.text, "in|into|times|time|twice|x|across|around|once|to|over|more|") || next.kind == number && !p.endsLine(t.pair+1) {
			return false
		}
		p.i++
		if c := p.count(t.pair); c != nil {
			p.i = t.pair + 1
			c.Span = p.span(from)
			p.counts = append(p.counts, c)
			return true
		}
		p.i = from
		return false
	}
	start := after && p.sentenceStarts()
	dash := (t.text == "--" || t.text == "-" || t.text == "=") && t.kind == mark && p.listIn(p.i+1) == 0
	if dash {
		p.i++
	}
	if p.i == 0 && (p.has("there", "are") || p.has("stitch|st", "count") || p.numberAt(0) && p.hasAfterNumber("sts|stitches|st")) {
		start = true
	}
	if !dash && !start && !p.has("for", "a", "total") && !p.has("total") && !p.has("you|we", "will|should|now|have") {
		return false
	}
	if !p.countAhead() {
		p.i = from
		return false
	}
	if c := p.count(p.sentenceEnd()); c != nil {
		c.Span = p.span(from)
		p.counts = append(p.counts, c)
		return true
	}
	p.i = from
	return false
}

// endsLine tells whether nothing but marks follows token i.
func (p *parser) endsLine(i int) bool {
	for k := 0; i < p.end; i, k = i+1, k+1 {
		if k > 40 || p.toks[i].kind != mark && p.toks[i].kind != number {
			return false
		}
	}
	return true
}

// sentenceStarts tells whether the token at hand begins a sentence.
func (p *parser) sentenceStarts() bool {
	if p.i == 0 {
		return false
	}
	t := p.prev(1)
	return t.kind == mark && (t.text == "." || t.text == ":" || t.text == ")" || t.text == "]" || t.text == "!" || t.text == ";") || t.kind == word && anyOf(t.text, "turn|around|across|join|")
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
