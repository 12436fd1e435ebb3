package notation

import (
	"rowproof/stitch"
)

// evenRows reads "work even", "work 6 rows even", "cont in pat".
func (p *parser) evenRows(a *Again) bool {
	from := p.i
	p.filler("work|make|finish")
	if p.rowAround(from) != nil { // an edging, see evenlyStep
		p.i = from
		return false
	}
	p.i = from
	if p.take("work|working|worked|cont", "same") || p.take("same") || p.take("work|make", "the", "same") {
		p.i--
		if p.has("same", "number|no|amount", "of", "rows|rnds|rounds") {
			a.Pattern = true
			return true
		}
		p.i = from
	}
	p.filler("keeping|keep|cont|continue|continuing|work|working|and|to|proceed|crochet|make|do|patt|pat|then|should|each|side|rep|repeat|established")
	if p.i == from && !p.has("even") {
		return false
	}
	if p.prev(1).text == "patt" || p.prev(1).text == "pat" {
		if n := p.i; p.startsNumber() && p.hasAfterNumber("row|rows|rnd|rnds|round|rounds") { // "Patt 6 rows."
			a.RowCount, a.Pattern = p.number(), true
			p.i++
			return true
		} else if p.i = n; n-from > 1 {
			a.Pattern = true
			p.patternName()
			return true
		}
		p.i--
	}
	if p.startsNumber() && (p.hasAfterNumber("row|rows|rnd|rnds|round|rounds") || p.hasAfterNumber("more", "row|rows|rnd|rnds|round|rounds")) {
		a.RowCount = p.number()
		p.take("more")
		p.i++
		p.filler("more|straight|total")
		switch {
		case p.takeAny("even|straight|plain"), p.prev(1).text == "straight":
			a.Even = true
			p.filler("in|pat|patt|pattern")
		case p.takeAny("in|of|as|with"):
			p.filler("the|established|this|est|same|st|stitch")
			switch {
			case p.takeAny("pat|patt|pattern|established|set|stitch-pattern|color|colour|way|manner"):
				a.Pattern = true
				p.patternName()
			case p.stitchRows(a):
			default:
				a.Pattern = true
				p.patternName()
			}
		default:
			a.Pattern = true // "work 4 rows"
		}
		return true
	}
	switch {
	case p.takeAny("even|straight|evenly") && !p.has("across|around|along|spaced|multiple|in", "next|the|each|of"):
		a.Even = true
		if p.take("in|as|on|for") {
			if p.prev(1).text == "for" || !p.has("rows|st|sts") && p.stitchRows(a) {
				if p.prev(1).text == "for" {
					p.i--
				}
			}
		}
		p.patternName()
		return true
	case p.take("as", "established|set|est|before|instructed|given"):
		a.Pattern = true
		p.filler("in|pat|patt|pattern")
		return true
	case p.has("for") && p.tokAt(from).text != "for":
		at := p.i
		if p.until(&Again{}) {
			p.i = at
			a.Pattern = true
			return true
		}
		p.i = from
		return false
	case p.has("in|the|with|est|established") || p.has("pat|patt|pattern"):
		at := p.i
		p.filler("in|the|this|with|est|established|same|manner|way|your|cont|of|as")
		for k := 0; k < 3 && p.peek(0).kind == word && p.hasAny(1, "pat|patt|pattern|st|stitch"); k++ { // "in Mesh Pat"
			p.i++
		}
		if p.takeAny("pat|patt|pattern|established|est|patterns|stitch|st") && (p.prev(1).text != "st" || p.i-at > 2) {
			a.Pattern = true
			p.patternName()
			return true
		}
		p.i = at
		if p.take("in", "rows|rnds|rounds", "of") || p.take("in") {
			at = p.i - 1
		}
		if p.i > at && p.stitchRows(a) && p.has("for|until|to|rows|rnds|row|rounds|rnd|as") {
			p.filler("rows|rnds|rounds")
			return true
		}
	}
	p.i = from
	return false
}

// patternName passes over words that say which pattern goes on.
func (p *parser) patternName() {
	p.filler("as|established|est|set|in|stitch|across|around|only|the|now|pat|patt|pattern|instructed|before|throughout|this|way|manner|st|of|above|given|rows|working|stripe|sequence|color|colors|for")
	for anyOf(p.prev(1).text, "for|the|as|of|in|working|this|") && p.i > 1 {
		p.i--
	}
}

// stitchRows reads the stitch of "10 rows of hdc".
func (p *parser) stitchRows(a *Again) bool {
	from := p.i
	s := p.stitchName()
	if s == nil || s.Kind == stitch.Chain || p.has("in|into") && !p.has("in", "each|every", "st") {
		p.i = from
		return false
	}
	p.take("in", "each|every", "st")
	a.Stitch = s
	return true
}
