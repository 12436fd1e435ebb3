package notation

import (
	"strconv"
	"strings"

	"rowproof/stitch"
)

// workStep reads stitches made: "2 dc in next st", "sc 7", "sc2tog over next 2
// sts", "inc".
func (p *parser) workStep() []Step {
	from := p.i
	w := &Work{}
	p.filler("a|an|one-more|another|the|work|make|regular|standard|last|first|only|more|place|working|your|remaining|each|all|also|put|complete")
	if p.has("dec|inc|decrease|increase", "row|rows|rnd|round") {
		return nil
	}
	if _, n := p.lookup(); n > 0 && p.peek(0).kind == number { // "2 dc tog"
		w.Stitch = p.stitchName()
	} else if p.startsNumber() {
		w.Times = p.number()
		p.filler("more|-|x|of|regular|sets|standard|single")
	}
	if w.Stitch == nil {
		w.Stitch = p.stitchName()
	}
	if w.Stitch == nil || w.Stitch.Kind == stitch.Chain {
		return nil
	}
	if w.Times == nil && p.startsNumber() && !p.spaceAhead() { // "sc 7", "hdc 18 (19, 20)"
		w.Times = p.bareNumber()
		if p.has("rows|rnds|rounds|row") {
			return nil
		}
		if !p.takeAny("times") {
			p.filler("sts|stitches|st|more")
		}
	}
	w.Counts = p.workCounts()
	p.places(w)
	if w.Counts == nil {
		w.Counts = p.workCounts()
	}
	if w.Counts != nil {
		p.more(w)
	}
	w.Last = p.workingLast()
	p.together(w)
	p.startingIn(w)
	w.Span = p.span(from)
	return p.workTimes(w, from)
}

// workTimes reads "6 times", "x 6", "twice" after a stitch.
func (p *parser) workTimes(w *Work, from int) []Step {
	at := p.i
	t := p.times()
	switch {
	case t == nil:
		p.i = at
		return []Step{w}
	case w.Times == nil && len(w.Places) == 0:
		w.Times = t.N
		w.Span = p.span(from)
		return []Step{w}
	}
	return []Step{&Group{Span: p.span(from), Body: []Step{w}, Times: t}}
}

// together reads "sc next 2 sts tog": the places told are drawn into one.
func (p *parser) together(w *Work) {
	if len(w.Places) != 1 || w.Places[0].N == nil || len(w.Places[0].N.Values) != 1 || !p.has("tog|together") {
		return
	}
	name := p.opt.Stitches.Name(w.Stitch.Kind, p.opt.Terms) + strconv.Itoa(w.Places[0].N.Values[0].N) + "tog"
	if k, ok := p.opt.Stitches.Lookup(name, p.opt.Terms); ok {
		w.Stitch.Kind = k
		p.i++
	}
}

// startingIn reads "starting in 2nd ch from hook" after "sc in each ch".
func (p *parser) startingIn(w *Work) {
	from := p.i
	p.take(",")
	if !p.takeAny("starting|beginning|start|begin|beg") || !p.takeAny("in|with|at|from|into") {
		p.i = from
		return
	}
	if pl := p.target(); pl != nil && pl.Which == Nth && p.fromHook(w, pl) {
		return
	}
	p.i = from
}

// fromHook puts the chain where a row begins before the places it goes on
// with.
func (p *parser) fromHook(w *Work, first *Place) bool {
	switch {
	case len(w.Places) == 0:
		w.Places = []*Place{first}
	case len(w.Places) == 1 && w.Places[0].Which == Each:
		rest := w.Places[0]
		rest.What, rest.Kind = Chain, 0
		w.Places = []*Place{first, rest}
	default:
		return false
	}
	return true
}

// placeFirst reads an order that names its place first: "in next st, work (sc,
// ch 2, sc)", "starting in 2nd ch from hook, sc in each ch".
func (p *parser) placeFirst() []Step {
	from := p.i
	p.takeAny("starting|beginning|start|begin|beg|working|work|crochet")
	if !p.takeAny("in|into|at|with|around|from") {
		return nil
	}
	if at := p.i; p.loopWords() != BothLoops {
		p.i = at
		loop := p.loopWords()
		p.filler("only")
		if p.has("of") {
			return nil
		}
		return []Step{&Rule{Span: p.span(from), About: AboutLoop, Loop: loop}}
	}
	pl := p.target()
	if pl == nil || pl.Which == Each && pl.To != nil && pl.To.End && pl.What == AnyStitch {
		return nil
	}
	for p.takeAny(",|:|work|make|place|put|and|also|then|crochet|do") {
	}
	at := p.i
	if s := p.bracket(); s != nil { // never read twice, for brackets nest
		g, ok := first(s).(*Group)
		if ok && len(g.In) == 0 && (g.Times == nil || g.Times.N != nil) {
			g.In = []*Place{pl}
			g.Span = p.span(from)
			return []Step{g}
		}
		span := pl.Span
		p.unread = append(p.unread, span)
		return append([]Step{&Unknown{Span: span}}, s...)
	}
	p.i = at
	w, ok := first(p.workStep()).(*Work)
	if !ok {
		return nil
	}
	if pl.Which == Nth && pl.Of == nil {
		ok = p.fromHook(w, pl)
	} else if ok = len(w.Places) == 0; ok {
		w.Places = []*Place{pl}
	}
	if !ok {
		return nil
	}
	w.Span = p.span(from)
	return []Step{w}
}

// first is the first of a list of steps, nil if there is none.
func first(steps []Step) Step {
	if len(steps) == 0 {
		return nil
	}
	return steps[0]
}

// unlisted reads a stitch that no dictionary has, known by its place: "petal in
// next ch-3 sp".
func (p *parser) unlisted() []Step {
	from := p.i
	w := &Work{}
	if p.startsNumber() {
		w.Times = p.number()
	}
	name := p.i
	for k := 0; k < 3 && p.peek(0).kind == word && !notStitch[p.peek(0).text]; k++ {
		p.i++
	}
	if p.i == name || !p.has("in|into|around|over") || !p.hasAny(1, "next|first|last|same|each|any|the|top|center|ring|corner|ch") || p.has("in|into|around|over", "the", "row|round|rnd|back|front|pattern|round|same|last") {
		return nil
	}
	w.Stitch = &StitchName{Span: p.span(name)}
	w.Stitch.Text = p.text[w.Stitch.Span.Start-p.at : w.Stitch.Span.End-p.at]
	p.places(w)
	if len(w.Places) == 0 {
		return nil
	}
	w.Span = p.span(from)
	return []Step{w}
}

// notStitch are words that begin or join orders and name no stitch.
var notStitch = wordSet(`in into around over and or the a an of for to from with on at by as this that these those it is are
	insert pull yo yoh yrh yarn place work make continue cont sew weave join attach fasten change turn repeat rep rpt sk skip miss
	leave keep hold begin beg start end ending finish do does not you your will should count counts row rows rnd rnds round rounds
	st sts stitch stitches ch chs hook loop loops lp lps sp sps space remaining rem next last first same each every pm marker mark
	move worked working made draw hold put slip knit purl pattern pat patt until then now also only all both side right left front back
	pick up knot tie stuff starting beginning evenly across along place marked new old color colour join joining insert measure`)

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
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
	p.take("each", "in|into")
	if p.i > from {
		p.i--
	}
	switch {
	case p.takeAny("evenly|even") && p.has("along|around|across|down|up|over|in|on"):
		p.edgePlace(w, from)
	case p.i == from && p.has("across|along|over", "first|next|last") || p.i == from && p.has("in|into|around|over|on|through|thru|onto|under|along|down|up") && !(p.has("around|along|down|up") && p.endOfPlace(1)):
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
	case p.i == from && p.has("bet|between"):
		if pl := p.target(); pl != nil {
			w.Places = append(w.Places, pl)
		}
	case p.i > from:
		p.i = from
	case p.has("next|following|nxt") && !p.has("next", "row|rnd|round"), p.has("first|last|each|same|every|1st|rem|remaining") && p.placeAhead():
		if pl := p.target(); pl != nil {
			w.Places = append(w.Places, pl)
			p.more(w)
		}
	case p.has("across|around|along") || p.has("all", "across|around|along|the") || p.has("to|until|till", "end|last|next|tch|marker|top|within|corner|marked|the|first|you|center|beg|ch|sp|before"):
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

// edgePlace reads "evenly around entire edge": stitches along an edge whose
// number is not told.
func (p *parser) edgePlace(w *Work, from int) {
	p.i++
	at := p.i
	for !p.done() && p.peek(0).kind == word && p.i < at+8 && !anyOf(p.peek(0).text, "join|turn|and|ch|working|placing|with|making|in|fasten|then|ending|working|to|changing|skipping|until|starting|for|do|work|increasing") {
		p.i++
	}
	pl := &Place{Span: p.span(from), Which: Edge, What: RowEnd}
	w.Places = append(w.Places, pl)
	p.placing()
}

// placing passes over how stitches are spread along an edge: ", placing 1 sc in
// each row end".
func (p *parser) placing() {
	from := p.i
	p.take(",")
	if !p.takeAny("placing|working|making") || p.has("last|the|in|along|back|front|through") {
		p.i = from
		return
	}
	p.toMark()
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
		if !p.take("in|into|around|over") && !p.has("each|every") && !(p.has("next|last|first") && len(w.Places) > 0) {
			p.i = from
			return
		}
		pl := p.target()
		if pl == nil {
			p.i = from
			return
		}
		if k := len(w.Places) - 1; k >= 0 && pl.Which == Each && w.Places[k].Which == Each && w.Places[k].To == nil && (pl.What == Space) != (w.Places[k].What == Space) {
			// "in each st and in each ch-1 sp across" goes along once
			last := w.Places[k]
			last.What, last.Kind, last.Chains, last.To = StitchOrSpace, 0, nil, pl.To
			last.Span.End = pl.Span.End
			continue
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
