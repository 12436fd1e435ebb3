package notation

import (
	"strings"
)

// placeFirst reads an order that names its place first: "in next st, work (sc,
// ch 2, sc)", "starting in 2nd ch from hook, sc in each ch".
func (p *parser) placeFirst() []Step {
	from := p.i
	p.takeAny("starting|beginning|start|begin|beg|working|work|crochet")
	if !p.takeAny("in|into|at|with|around|from") {
		return nil
	}
	if p.has("both", "loops|lps") && !p.hasAny(2, "of") {
		p.i += 2
		return []Step{&Rule{Span: p.span(from), About: AboutLoop, Loop: BothLoops}}
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
