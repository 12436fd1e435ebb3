package notation

import (
	"strconv"

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
		p.filler("more|-|x|of|regular|sets|standard")
	}
	if w.Stitch == nil && p.prev(1).text == "-" && p.prev(2).kind == number { // "2-dc cl"
		at := p.i
		if pl := (&Place{}); p.hyphenStitchAt(pl, at-2) {
			w.Times = nil
			w.Stitch = &StitchName{Span: p.span(at - 2), Kind: pl.Kind}
			w.Stitch.Text = p.text[w.Stitch.Span.Start-p.at : w.Stitch.Span.End-p.at]
		}
	}
	if w.Stitch == nil {
		p.filler("beg|beginning")
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
	p.filler("loosely|very")
	p.places(w)
	if w.Counts == nil {
		w.Counts = p.workCounts()
	}
	if w.Counts != nil {
		p.more(w)
	}
	if len(w.Places) == 1 && w.Times == nil && p.take("to", "join") { // "dc in first sc to join"
		p.filler("rnd|round|the")
		return []Step{&Join{Span: p.span(from), Place: w.Places[0], Stitch: w.Stitch.Kind}}
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

func (p *parser) workCounts() *Counts {
	if !(p.has("(") || p.has("[")) {
		return nil
	}
	return p.countsBracket()
}
