package notation

import (
	"rowproof/stitch"
)

// yarn reads fastening off, joining yarn, and colours.
func (p *parser) yarn() []Step {
	from := p.i
	not := p.not()
	switch {
	case p.take("fo") || p.takeAny("fasten|finish|end|cut|break|tie|bind|f|fastening|ending") && p.offWords():
		p.filler("off|yarn|the|securely|thread|here|working|color|all|colors")
		p.yarnName()
		p.take("and", "fasten|finish", "off")
		if p.has("and", "pull|draw|secure|cut|break") || p.has(",", "pull|draw") {
			p.i++
			p.toMark()
		}
		s := []Step{&FastenOff{Span: p.span(from), Not: not}}
		at := p.i
		p.take(",")
		p.take("and")
		if p.takeAny("leaving|leave") && p.tail() {
			s = append(s, &Remark{Span: p.span(at)})
		} else {
			p.i = at
		}
		return s
	}
	p.i = from
	if s := p.joinYarn(); s != nil {
		return s
	}
	p.i = from
	return p.color()
}

// offWords tells whether "fasten", "cut" or "end" does end the yarn.
func (p *parser) offWords() bool {
	switch p.prev(1).text {
	case "fasten", "finish", "tie":
		return p.takeAny("off") || p.take("-", "off") || p.has("yarn")
	case "bind":
		return p.take("off")
	case "end":
		return p.take("off")
	case "f":
		return p.take("/", "o") || p.take("off")
	}
	p.filler("the")
	return p.takeAny("yarn|thread|off|a|b|mc|cc")
}

// tail reads "a long tail for seaming".
func (p *parser) tail() bool {
	from := p.i
	for p.i < p.end && p.i < from+14 {
		t := p.peek(0)
		if t.kind == mark && anyOf(t.text, ".|;|") || t.kind == mark && t.text == "," {
			break
		}
		p.i++
	}
	for i := from; i < p.i; i++ {
		if anyOf(p.tokAt(i).text, "tail|length|end|yarn|tails|thread|") {
			return true
		}
	}
	p.i = from
	return false
}

// joinYarn reads "With RS facing, join A with sl st in first skipped st",
// "attach yarn at the underarm", "standing dc in any ch-2 sp".
func (p *parser) joinYarn() []Step {
	from := p.i
	j := &JoinYarn{}
	if p.takeAny("with|keeping|having|holding|from") || p.has("rs|ws|right|wrong") {
		p.filler("the")
		if p.sideWords(&j.Side) {
			p.filler("of|work|piece|facing|towards|toward|you|up|side|front|back|the|body|sleeve|yoke|fabric|together")
			p.take(",")
			p.filler("and|,")
			p.side = j.Side
		} else {
			p.i = from
		}
	}
	p.filler("and|then|working")
	verb := p.i
	standing := false
	switch {
	case p.takeAny("begin|start|make|work|beg") && p.takeAny("with"):
		p.filler("a")
		if !p.takeAny("standing") {
			p.i = from
			return nil
		}
		standing = true
	case p.takeAny("standing"):
		standing = true
	case p.takeAny("join|rejoin|attach|reattach|re-join") || p.take("re", "-", "join") || p.take("re", "-", "attach"):
		p.articles()
		if color, ok := p.yarnName(); ok {
			j.Color = color
		} else if p.tokAt(verb).text == "join" && j.Side == NoSide && p.side == NoSide {
			p.i = from
			return nil
		}
	default:
		if j.Side != NoSide && verb > from { // "With RS facing, sk next 16 sts, join yarn ..."
			p.i = verb
			return []Step{&Remark{Span: p.span(from)}}
		}
		p.i = from
		return nil
	}
	if j.Side == NoSide {
		j.Side = p.side
	}
	if standing {
		s := p.stitchName()
		if s == nil {
			p.i = from
			return nil
		}
		j.Standing, j.Stitch = true, s.Kind
	}
	p.filler("again")
	if p.takeAny("with|by|using|w") {
		p.filler("/|a|the|an")
		if s := p.stitchName(); s != nil {
			j.Stitch = s.Kind
			if s.Kind == stitch.SlipStitch {
				j.Stitch = s.Kind
			}
		} else {
			p.filler("slip|knot|on|hook|standing")
		}
	} else {
		p.slip()
	}
	if p.takeAny("in|into|to|at|around|on") {
		if pl := p.target(); pl != nil {
			j.Place = pl
			p.joinPlace(j)
		} else {
			p.edgeWords(j)
		}
	}
	j.Span = p.span(from)
	return []Step{j}
}

// joinPlace reads what may follow the place where yarn is joined: "of Row 30".
func (p *parser) joinPlace(j *JoinYarn) {
	j.Row = p.ofRow
	if p.take("of|from|on", "row|rnd|round") && p.hasNumber(0) {
		j.Row = p.number()
	}
	p.restOfPlace()
}

// restOfPlace passes over the rest of the words about a place.
func (p *parser) restOfPlace() {
	if !p.has("of|at|from|on|after|before|where|for|along|left|by|nearest|closest|to|in") {
		return
	}
	p.toMark()
}

// edgeWords reads a place that is named in other words: "at the underarm".
func (p *parser) edgeWords(j *JoinYarn) {
	from := p.i
	p.toMark()
	j.Place = &Place{Span: p.span(from), Which: Any}
	for i := from; i < p.i; i++ {
		switch t := p.tokAt(i).text; {
		case anyOf(t, "row-end|row-ends|side|edge|"):
			if anyOf(t, "row-end|row-ends|") {
				j.Place.Which, j.Place.What = Edge, RowEnd
			}
			for k := from; k < p.i; k++ {
				if anyOf(p.tokAt(k).text, "armhole|outer|outside|side|other|") {
					j.FromEnd = true
				}
			}
		}
	}
}

// color reads "change to B", "with A", "drop A", "using C2".
func (p *parser) color() []Step {
	from := p.i
	c := &Color{}
	switch {
	case p.takeAny("change|changing|switch|switching"):
		p.filler("color|colour|colors|to|the|new|yarn|back")
	case p.takeAny("drop"):
		c.Drop = true
		p.filler("the")
	case p.takeAny("with|using|in|use|work") && p.colorAhead():
		p.filler("the")
	default:
		return nil
	}
	if name, ok := p.yarnName(); ok {
		c.Name = name
	} else if t := p.peek(0); t.kind == word && (len(t.text) <= 2 || t.text == "main" || t.text == "contrast" || t.text == "contrasting") && !anyOf(t.text, "in|to|at|st|ch|sc|dc|") || t.kind == number && p.prev(1).kind == word {
		c.Name = p.text[t.start:t.end]
		p.i++
		p.filler("color|colour|yarn")
	} else if p.i == from+1 {
		return nil
	}
	at := p.i
	if p.takeAny("in|on|at") && p.takeAny("the|last|final") {
		p.toMark()
	} else {
		p.i = at
	}
	c.Span = p.span(from)
	return []Step{c}
}

// articles passes over words before the name of a yarn. A capital A is a name.
func (p *parser) articles() {
	for {
		if t := p.peek(0); t.text == "a" && t.cap {
			return
		}
		if !p.takeAny("the|new|a|your|working|main|same|strand|of|ball|next") {
			return
		}
	}
}

// yarnName reads "yarn", "color B", "MC", "A", "C2". The name of plain yarn is
// empty.
func (p *parser) yarnName() (string, bool) {
	from := p.i
	if p.takeAny("yarn|thread|color|colour|cotton|yarns|wool") {
		if t := p.peek(0); t.kind == number && t.frac == 0 || t.kind == word && (len(t.text) == 1 && (t.cap || t.text != "a") || yarnNames[t.text]) {
			p.i++
			return p.text[t.start:t.end], true
		}
		return "", true
	}
	t := p.peek(0)
	if t.kind != word || !yarnNames[t.text] && !(len(t.text) == 1 && t.cap && t.text != "i") {
		p.i = from
		return "", false
	}
	p.i++
	name := p.text[t.start:t.end]
	p.takeAny("yarn|color|colour|thread")
	return name, true
}

var yarnNames = wordSet("mc cc ca cb cd ce c1 c2 c3 c4 c5 cc1 cc2 cc3 a b c d e f main contrast contrasting white black red blue green yellow pink grey gray brown orange purple cream beige")

func (p *parser) colorAhead() bool {
	t := p.peek(0)
	if anyOf(t.text, "yarn|color|colour|main|contrast|contrasting|mc|cc|ca|cb|") {
		return true
	}
	if t.kind == word && len(t.text) <= 2 && anyOf(t.text, "a|b|c|d|e|f|c1|c2|c3|c4|") {
		u := p.peek(1)
		return t.cap || u.kind == mark || u.kind == number || anyOf(u.text, "ch|make|work|and|join|")
	}
	return false
}
