package notation

import (
	"rowproof/stitch"
)

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
		if st.mark() {
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
			st.push(&steps, one)
		}
	}
	st.finish(&steps)
	return steps
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
	if anyOf(t.text, "and|then|now|also|next,|finally|again|please|simply|carefully|just|still|so|next:|&|") && !(t.text == "then" && false) {
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
	p.filler("a|an|the|another|your|in|only")
	ok := false
	if t := p.peek(0); anyOf(t.text, "(|[|*|**|") && !p.has("*", "to") {
		ok = p.toks[from].text != "with" && p.toks[from].text != "using"
	}
	if p.startsNumber() {
		p.number()
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

func (p *parser) countFollows() bool {
	from := p.i
	p.i++
	c := p.count(p.sentenceEnd())
	p.i = from
	return c != nil
}

// sentenceEnd is the token that ends the sentence at hand.
func (p *parser) sentenceEnd() int {
	for i := p.i; i < p.end && i < p.i+200; i++ {
		t := &p.toks[i]
		if t.kind == mark && (t.text == "." || t.text == "!") && (i+1 >= p.end || p.toks[i+1].space || p.toks[i+1].kind == mark) && !abbreviated(p, i) {
			return i
		}
	}
	return min(p.end, p.i+200)
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
	if !dash && !start && !p.has("for", "a", "total") && !p.has("total") && !p.has("you|we", "will|should|now|have") {
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
	t := &p.toks[p.i-1]
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
	return []Step{&Unknown{span}}
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
		if p.toks[p.i-1].kind == word && anyOf(p.toks[p.i-1].text, "of|for|a|the|your|each|all|") {
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
		(*parser).remarkStep,
	}
}

// chainStep reads "ch 3", "3ch", "make 64 ch", "chain (40, 44)".
func (p *parser) chainStep() []Step {
	from := p.i
	c := &Chains{}
	switch {
	case p.takeAny("ch|chain|chs|chains") && !p.has("-"):
		p.filler("a|another")
		if c.N = p.number(); c.N == nil {
			if !(p.done() || p.peek(0).kind == mark || p.has("and")) {
				return nil
			}
			c.N = &Number{Values: []Value{{N: 1}}, Span: p.span(from)}
		}
		p.filler("more|chs|chains|sts|stitches|for")
	case p.i == from && p.startsNumber():
		c.N = p.number()
		if !p.takeAny("ch|chs|chain|chains") || p.has("-") || p.has("sp") || p.has("sps") || p.has("lp") {
			return nil
		}
	default:
		return nil
	}
	c.Span = p.span(from)
	if p.has("from", "hook") {
		return nil
	}
	c.Counts = p.countsBracket()
	p.filler("to|for|at|beg|as")
	if p.i > from && p.has("turning|t-ch|tch") {
		p.i++
		p.filler("ch|chain")
	}
	for p.i > from && anyOf(p.toks[p.i-1].text, "to|for|at|beg|as|") {
		p.i--
	}
	return []Step{c}
}

// countsBracket reads "(counts as dc, ch 1)", "(does not count as a st)", "=
// first tr", nil when nothing is said.
func (p *parser) countsBracket() *Counts {
	from := p.i
	if (p.has("(") || p.has("[")) && p.peek(0).pair > 0 {
		closing := p.peek(0).pair
		end := p.end
		p.i++
		p.end = closing
		c := p.countsWords()
		p.end = end
		if c != nil {
			p.i = closing + 1
			return c
		}
		p.i = from
		return nil
	}
	p.take(",")
	p.take("--|-")
	if c := p.countsWords(); c != nil {
		return c
	}
	p.i = from
	return nil
}

// countsWords reads what a chain counts as.
func (p *parser) countsWords() *Counts {
	from := p.i
	c := &Counts{}
	p.filler("this|the|skipped|missed|beg|beginning|turning|first|here|and|note|:|it|which|these|unworked|will|starting|do|does|always")
	p.i = from
	lead := 0
	for ; p.i < p.end && lead < 12; p.i++ {
		lead++
		t := p.peek(0)
		if anyOf(t.text, "counts|count|counted|counting|=|is|not|doesn|never|now") || t.kind == mark && anyOf(t.text, ".|;|") {
			break
		}
		if t.kind == number && p.i > from && anyOf(p.toks[p.i-1].text, "-|ch|") {
			c.Of = &Number{Span: p.span(p.i), Values: []Value{{N: t.n}}}
			c.Of.Span = Span{p.at + t.start, p.at + t.end}
		} else if t.kind == number && anyOf(p.peek(1).text, "ch|chs|skipped|missed|") {
			c.Of = &Number{Span: Span{p.at + t.start, p.at + t.end}, Values: []Value{{N: t.n}}}
		} else if !anyOf(t.text, "this|the|skipped|missed|beg|beginning|turning|first|here|and|note|:|it|which|these|unworked|will|starting|do|does|always|ch|chs|chain|chains|-|sk|skip|last|t|tch|st|sts|only|ch-sp|") {
			p.i = from
			return nil
		}
	}
	switch {
	case p.take("does|do|did", "not", "count"), p.take("doesn|don", "'", "t", "count"), p.take("not", "counted"), p.take("never", "counts|count"), p.take("not", "count"), p.take("is|are", "not", "counted"), p.take("doesnt", "count"), p.take("not", "counting"):
		c.Not = true
		p.filler("as|a|an|st|sts|stitch|stitches|the|first|1st|in|st-count|count|any|total|your|row|rnd|here|throughout|toward|towards|for|one|1|at|beg|beginning|of|each|rows|rnds|rounds|round|and|pattern|dc|hdc|tr|sc|htr|")
		if p.i > 0 {
			for k := from; k < p.i; k++ {
				if p.toks[k].text == "throughout" || p.toks[k].text == "here" {
					c.Throughout = true
				}
			}
		}
		return c
	case p.take("counts|count|counted", "as"), p.take("counts|count", "for"), p.take("=", "to"), p.take("="), p.take("is|are", "counted", "as"), p.take("counting", "as"), p.take("now", "counts", "as"):
	default:
		p.i = from
		return nil
	}
	p.countsAs(c)
	return c
}

// countsAs reads the stitch, the chains and the skipped chains.
func (p *parser) countsAs(c *Counts) {
	p.filler("a|an|the|first|1st|one|your|always")
	if p.hasNumber(0) && !p.hasNth(1, "ch|missed|skipped") {
		c.Times = p.number()
	}
	p.filler("first|1st")
	if _, n := p.lookup(); n > 0 && !p.has("ch") {
		c.As, n = p.lookup()
		p.i += n
	} else {
		p.filler("st|sts|stitch")
	}
	for {
		from := p.i
		p.filler(",|and|plus|+|&|a|an|the")
		switch {
		case p.has("ch|chain") && p.hasNumber(1):
			p.i++
			c.Chains = p.number()
			p.takeAny("sp|space")
			continue
		case p.has("ch", "-") && p.hasNumber(2):
			p.i += 2
			c.Chains = p.number()
			p.takeAny("sp|space")
			continue
		case p.hasNumber(0) && p.hasNth(1, "ch|chs|chain|chains|ch-sp") && !p.has("-"):
			c.Chains = p.number()
			p.i++
			p.takeAny("sp|space")
			continue
		case p.startsNumber() && (p.hasNth(1, "missed|skipped|sk")):
			c.Skipped = p.number()
			p.i++
			p.filler("ch|chs|chain|st|sts|chains")
			continue
		case p.has("here") || p.has("throughout") || p.has("through") || p.has("now"):
			c.Throughout = true
			p.filler("here|and|throughout|through|out|pattern|now|the|entire")
			continue
		case p.takeAny("st|sts|stitch|stitches|first|row|rnd|in|on|of|each|this|every|all|rows|rnds|rounds"):
			continue
		}
		p.i = from
		return
	}
}

func (p *parser) hasNth(k int, list string) bool { return anyOf(p.peek(k).text, list+"|") }

// workStep reads stitches made: "2 dc in next st", "sc 7", "sc2tog over next 2
// sts", "inc".
func (p *parser) workStep() []Step {
	from := p.i
	w := &Work{}
	p.filler("a|an|one-more|another|the|work|make|regular|standard|last|first|only|more|place|working|your|remaining")
	if p.startsNumber() {
		w.Times = p.number()
		p.filler("more|-|x|of|regular|sets")
	}
	w.Stitch = p.stitchName()
	if w.Stitch == nil {
		return nil
	}
	if w.Stitch.Kind == stitch.Chain {
		return nil
	}
	if w.Times == nil && p.startsNumber() && !p.spaceAhead() { // "sc 7", "hdc 18 (19, 20)"
		at := p.i
		w.Times = p.bareNumber()
		if p.takeAny("times") {
		} else if p.has("x") {
			p.i = at
			w.Times = nil
		} else {
			p.filler("sts|stitches|st|more")
		}
	} else if w.Times == nil && p.has("twice") {
		w.Times = &Number{Values: []Value{{N: 2}}, Span: p.span(p.i)}
		w.Times.Span = Span{p.at + p.peek(0).start, p.at + p.peek(0).end}
		p.i++
	}
	w.Counts = p.workCounts()
	p.places(w)
	if p.startsNumber() && p.hasAfterNumber("times") && len(w.Places) == 0 && w.Times == nil {
		w.Times = p.number()
		p.i++
	}
	if w.Counts == nil {
		w.Counts = p.workCounts()
	}
	if w.Counts != nil {
		p.more(w)
	}
	p.lastIn(w)
	w.Span = p.span(from)
	return []Step{w}
}

func (p *parser) workCounts() *Counts {
	if !(p.has("(") || p.has("[")) {
		return nil
	}
	return p.countsBracket()
}

// places reads where a stitch goes: one place, or several joined by "and in".
func (p *parser) places(w *Work) {
	from := p.i
	each := false
	if p.take("each", "in|into") {
		each = true
		p.i--
	}
	_ = each
	switch {
	case p.has("in|into|around|over|on|through|thru|onto|under|along") && !(p.has("around|along") && p.endOfPlace(1)):
		over := p.has("over")
		p.i++
		p.filler("around|the")
		at := p.i
		pl := p.target()
		if pl == nil {
			p.i = from
			return
		}
		if p.toks[at-1].text == "around" && pl.Loop == BothLoops {
			pl.Loop = Post
		}
		w.Places = append(w.Places, pl)
		if over && p.has("and") {
			p.then(pl)
		}
		p.more(w)
	case p.has("next|following|nxt") && !p.has("next", "row|rnd|round"), p.has("first|last|each|same") && p.placeAhead():
		if pl := p.target(); pl != nil {
			w.Places = append(w.Places, pl)
			p.more(w)
		}
	case p.has("across|around|along") || p.has("to|until", "end|last|next|tch|marker|top|within|corner|marked|the|first"):
		if l := p.limit(); l != nil {
			w.Places = append(w.Places, &Place{Span: l.Span, Which: Each, To: l})
			p.followOver(w)
		}
	}
}

// endOfPlace tells whether "around" stands alone: "sc around, join".
func (p *parser) endOfPlace(k int) bool {
	t := p.peek(k)
	return t.kind == mark || anyOf(t.text, "to|and|join|turn|for|until|")
}

func (p *parser) placeAhead() bool {
	from := p.i
	pl := p.target()
	p.i = from
	return pl != nil
}

func (p *parser) followOver(w *Work) {
	from := p.i
	if p.take("and") && p.take("in|into") {
		p.i = from
		p.more(w)
		return
	}
	p.i = from
}

// then reads the second place of a stitch worked over two.
func (p *parser) then(pl *Place) {
	from := p.i
	p.i++
	p.filler("over|in|into")
	if q := p.target(); q != nil {
		pl.Then = q
		pl.Span.End = q.Span.End
		return
	}
	p.i = from
}

// more reads further places: "and in each ch across", "and each ch".
func (p *parser) more(w *Work) {
	for {
		from := p.i
		p.take(",")
		if !p.take("and|&") && !p.take("then") {
			p.i = from
			return
		}
		p.filler("also|then")
		if !p.take("in|into|around|over") && !p.has("each") && !(p.has("next|last|first") && len(w.Places) > 0) {
			p.i = from
			return
		}
		pl := p.target()
		if pl == nil {
			p.i = from
			return
		}
		w.Places = append(w.Places, pl)
	}
}

// lastIn reads "working last dc in top of tch".
func (p *parser) lastIn(w *Work) {
	if pl := p.workingLast(); pl != nil {
		w.Last = pl
	}
}

func (p *parser) workingLast() *Place {
	from := p.i
	p.take(",")
	p.filler("and|with|by")
	if !p.takeAny("working|work|making|placing") {
		p.i = from
		return nil
	}
	p.filler("the")
	if !p.take("last") {
		p.i = from
		return nil
	}
	if _, n := p.lookup(); n > 0 {
		p.i += n
	} else {
		p.filler("st|stitch|one")
	}
	if !p.takeAny("in|into|on") {
		p.i = from
		return nil
	}
	pl := p.target()
	if pl == nil {
		p.i = from
	}
	return pl
}

// skipStep reads "sk next 2 sts", "miss 1tr", "skp 3".
func (p *parser) skipStep() []Step {
	from := p.i
	if !p.takeAny("sk|skip|skipping|miss|missing|skp|skips|sks|skipped") {
		return nil
	}
	s := &Skip{}
	for {
		p.filler("the|over|a|working")
		at := p.i
		pl := p.target()
		if pl == nil {
			if !p.startsNumber() {
				if len(s.Places) == 0 && (p.done() || p.peek(0).kind == mark) {
					pl = &Place{Which: Next, Span: p.span(from)}
				} else {
					break
				}
			} else {
				pl = &Place{Which: Next, N: p.number()}
				pl.Span = p.span(at)
			}
		}
		s.Places = append(s.Places, pl)
		at = p.i
		if !(p.take("and") || p.take("&")) || !p.has("next|first|last|the|following") && !p.startsNumber() || p.startsNumber() && !p.skipUnit() {
			p.i = at
			break
		}
	}
	if len(s.Places) == 0 {
		return nil
	}
	p.filler("for|the|back|front|neck|unworked|underarm|center|centre|opening|edge")
	s.Span = p.span(from)
	return []Step{s}
}

func (p *parser) skipUnit() bool {
	from := p.i
	ok := p.spaceAhead()
	p.i = from
	return ok
}
