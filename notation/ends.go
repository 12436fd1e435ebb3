package notation

import (
	"rowproof/stitch"
)

// turnStep reads "turn", "do not turn", "turn work".
func (p *parser) turnStep() []Step {
	from := p.i
	if p.takeAny("rotate|rotating") { // to work along an edge: the row is not turned by it
		p.filler("work|the|piece|your|90|degrees|clockwise|counterclockwise")
		if t := p.peek(0); !p.done() && t.kind != mark {
			p.i = from
			return nil
		}
		return []Step{&Remark{Span: p.span(from)}}
	}
	not := p.not()
	if p.take("dnt") {
		return []Step{&Turn{Span: p.span(from), Not: true}}
	}
	p.filler("and")
	if !p.takeAny("turn|turning|turned") {
		return nil
	}
	if p.has("ch|chain") && p.prev(1).text == "turning" {
		return nil
	}
	p.filler("work|the|piece|your|over|at|end|of|row|rows|rnd")
	return []Step{&Turn{Span: p.span(from), Not: not}}
}

// not reads "do not", "don't".
func (p *parser) not() bool {
	return p.take("do", "not") || p.take("don", "'", "t") || p.take("dont") || p.take("without") || p.take("does", "not") || p.take("never")
}

// joinStep reads "join with sl st in first sc", "ss to top of 3ch", "join".
func (p *parser) joinStep() []Step {
	from := p.i
	not := p.not()
	j := &Join{Not: not, Stitch: stitch.SlipStitch}
	switch {
	case p.takeAny("join|joined|joining|close"):
		if p.has("a|b|c|d|mc|cc|new|yarn|color|colour|ca|cb|strand|c1|c2") && !not {
			return nil
		}
		if p.take("into", "a|the", "ring|circle") || p.take("into", "ring|circle") || p.take("in", "a", "ring|circle") {
			j.Ring = true
		}
		p.filler("the|rnd|round|rnds|rounds|work|ring|it|this|each|ends|at|end|of|row|circle|chain|ch|together|last|first|st|sts|stitch")
		if p.takeAny("with|by|using|w") || p.take("/") {
			p.filler("/|a|an|working")
			if s := p.stitchName(); s != nil {
				j.Stitch = s.Kind
			} else {
				p.filler("slip|sl|st|stitch|ss")
			}
		} else if s := p.slip(); s {
		}
		if p.takeAny("in|into|to|at|on|through") {
			if p.has("form|make|a") && p.hasAny(1, "a|ring|circle|form") {
				p.i--
			} else if pl := p.target(); pl != nil {
				j.Place = pl
			}
		}
	case !not && p.slip():
		// "ss to first dc", "sl st in top of beg ch-3 to join"
		if p.take("to", "join|close") {
			p.filler("rnd|round|the|ring")
			j.Span = p.span(from)
			return []Step{j}
		}
		if p.has("to", "form|make") || p.has("into|in", "a", "ring|circle") {
			if p.takeAny("into|in") {
				p.i += 2
				j.Ring = true
			}
			break
		}
		if !p.takeAny("to|in|into|through") {
			return nil
		}
		at := p.i
		pl := p.target()
		if pl == nil {
			return nil
		}
		j.Place = pl
		to := p.tokAt(at-1).text == "to"
		joins := p.has("to", "join|close|form") || p.take("joining")
		if !joins && !(to && (pl.Which == First || pl.Which == Top)) && !(pl.Which == First && p.lastWords()) && !(pl.Which == Top && pl.What == TurningChain) && !(pl.Which == Nth && pl.Of != nil && p.lastWords()) {
			return nil
		}
	default:
		return nil
	}
	p.filler("loosely")
	if at := p.i; p.takeAny("with|by|using|w") {
		p.filler("/|a|an")
		if !p.slip() {
			p.i = at
		}
	}
	if p.take("to", "join|close") {
		p.filler("rnd|round|the|ring")
	}
	if p.take("to|and", "form|make") || p.take("forming|making") {
		p.filler("a|the|into")
		j.Ring = p.takeAny("ring|circle|loop") || j.Ring
	}
	if p.takeAny("round") {
	}
	j.Span = p.span(from)
	return []Step{j}
}

// slip reads the name of the slip stitch.
func (p *parser) slip() bool {
	from := p.i
	p.filler("a|with")
	if k, n := p.lookup(); n > 0 && k == stitch.SlipStitch {
		p.i += n
		return true
	}
	p.i = from
	return false
}

// lastWords tells whether nothing but a turn or a count follows.
func (p *parser) lastWords() bool {
	for i := p.i; i < p.end; i++ {
		t := &p.toks[i]
		switch {
		case t.kind == mark && (t.text == "(" || t.text == "[") || t.kind == number:
			return true
		case t.kind == mark:
		case anyOf(t.text, "turn|do|not|and|"):
			return true
		default:
			return false
		}
	}
	return true
}

// foundationStep reads a magic ring by itself: "make a magic ring", "MR, ...",
// "pull closed".
func (p *parser) foundationStep() []Step {
	from := p.i
	if p.takeAny("pull|tighten|close|draw") {
		p.filler("the|ring|circle|tail|closed|tight|tightly|to|close|up|end|yarn|gently|opening|shut|and|magic|center|hole|loop|firmly")
		if p.i > from+1 && p.hasWord(from, p.i, "ring|circle|tail|closed|close|tight|tightly|shut|hole|magic|center|opening") {
			return []Step{&MagicRing{Span: p.span(from), Close: true}}
		}
		return nil
	}
	p.filler("make|form|start|begin|with|work|into|in|create|a|an|the|using|to")
	p.filler("adjustable")
	switch {
	case p.take("magic|adjustable|sliding", "ring|circle|loop"), p.take("mr"), p.tokAt(from).text == "mc" && p.has("mc", ",|:") && p.take("mc"), p.i > from && p.prev(1).text == "adjustable" && p.takeAny("ring|loop|circle"):
		return []Step{&MagicRing{Span: p.span(from)}}
	}
	return nil
}
