package notation

import "rowproof/stitch"

// turnStep reads "turn", "do not turn", "turn work".
func (p *parser) turnStep() []Step {
	from := p.i
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
		if !p.takeAny("to|in|into|through") {
			return nil
		}
		at := p.i
		pl := p.target()
		if pl == nil {
			return nil
		}
		j.Place = pl
		to := p.toks[at-1].text == "to"
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
		p.filler("a|the")
		j.Ring = p.takeAny("ring|circle|loop")
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
		if anyOf(p.toks[i].text, "tail|length|end|yarn|tails|thread|") {
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
		} else if p.toks[verb].text == "join" && j.Side == NoSide && p.side == NoSide {
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

// toMark passes over words up to the next mark.
func (p *parser) toMark() {
	for !p.done() {
		t := p.peek(0)
		if t.kind == mark && anyOf(t.text, ",|.|;|:|(|[|*|)|") {
			return
		}
		p.i++
	}
}

// edgeWords reads a place that is named in other words: "at the underarm".
func (p *parser) edgeWords(j *JoinYarn) {
	from := p.i
	p.toMark()
	j.Place = &Place{Span: p.span(from), Which: Any}
	for i := from; i < p.i; i++ {
		switch t := p.toks[i].text; {
		case anyOf(t, "row-end|row-ends|side|edge|"):
			if anyOf(t, "row-end|row-ends|") {
				j.Place.Which, j.Place.What = Edge, RowEnd
			}
			for k := from; k < p.i; k++ {
				if anyOf(p.toks[k].text, "armhole|outer|outside|side|other|") {
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

// leaveStep reads "leaving rem sts unworked", "leave last 5 sts unworked".
func (p *parser) leaveStep() []Step {
	from := p.i
	if !p.takeAny("leave|leaving") {
		return nil
	}
	l := &Leave{}
	p.filler("the|all|and")
	if p.takeAny("rem|remaining|other|rest|remainder") {
		p.filler("of|the")
		if p.startsNumber() && !p.spaceAhead() {
			l.N = p.number()
		}
		p.unit(&Place{})
	} else if p.takeAny("last|next|center|centre|middle|first") || p.startsNumber() {
		if p.startsNumber() && !p.spaceAhead() {
			l.N = p.number()
		} else {
			l.N = &Number{Values: []Value{{N: 1}}, Span: p.span(from)}
		}
		pl := &Place{}
		p.unit(pl)
	} else if pl := p.target(); pl != nil {
		l.Place = pl
	} else {
		p.i = from
		if p.i++; p.tail() {
			return []Step{&Remark{Span: p.span(from)}}
		}
		return nil
	}
	p.filler("in|of|row|rnd|are|is")
	if !p.takeAny("unworked|unused|free|open|unstitched") && !p.take("for") {
		if p.i = from + 1; p.tail() {
			return []Step{&Remark{Span: p.span(from)}}
		}
		return nil
	}
	p.filler("for|neck|at|this|time|armhole|opening|sleeve|the|now|shoulder|second|other|side")
	l.Span = p.span(from)
	return []Step{l}
}

// evenlyStep reads "work 72 sc evenly along edge", "inc 6 sts evenly across",
// "sc evenly around".
func (p *parser) evenlyStep() []Step {
	from := p.i
	p.filler("work|make|place|pick|up")
	e := &Evenly{}
	switch {
	case p.takeAny("inc|increase|increasing"):
		e.Change = 1
	case p.takeAny("dec|decrease|decreasing"):
		e.Change = -1
	}
	if p.startsNumber() {
		e.N = p.number()
	}
	if e.Change == 0 {
		if e.Stitch = p.stitchName(); e.Stitch == nil {
			p.filler("sts|stitches")
			if e.N == nil {
				return nil
			}
		}
	} else {
		p.filler("sts|stitches|st")
		if _, n := p.lookup(); n > 0 {
			p.i += n
		}
	}
	if e.N == nil && p.startsNumber() {
		e.N = p.number()
		p.filler("sts|stitches")
	}
	if !p.takeAny("evenly|evenly-spaced|even") || e.N == nil {
		return nil
	}
	p.filler("spaced|spread")
	if p.has("across|around|along|over|in|to|on|up|down|through") || p.done() || p.peek(0).kind == mark {
		p.toMark()
	}
	e.Along = e.Change == 0
	e.Span = p.span(from)
	return []Step{e}
}

// sideStep reads "working along opposite side of foundation ch", "working
// along row-ends".
func (p *parser) sideStep() []Step {
	from := p.i
	p.filler("now|continue|cont|rotate|turn|and|to|piece|the|do|not|then|your|begin|beg|start")
	if !p.takeAny("working|work|crochet|go|rotate|continuing") {
		p.i = from
	}
	if !p.takeAny("along|across|down|up|in|on|around|over|into") {
		return nil
	}
	p.filler("the|other|in")
	o := &OtherSide{}
	switch {
	case p.takeAny("row-ends|row-end") || p.take("row|side|sides|raw|long|short", "ends|edges|edge|of") || p.takeAny("side|sides|edge") && (p.done() || p.peek(0).kind == mark || p.has("of|edge")) || p.take("ends", "of") && p.has("rows|row") || p.take("side", "of", "rows"):
		o.RowEnds = true
	case p.takeAny("opposite|other|second|remaining|rem|unused|free|bottom|underside") || p.prev(1).text == "other":
		p.filler("the|side|of|lp|lps|loop|loops|rem|edge")
		p.filler("the")
		if !p.has("foundation|beg|beginning|starting|chain|ch|chs|base|set") {
			return nil
		}
	default:
		return nil
	}
	p.toMark()
	o.Span = p.span(from)
	return []Step{o}
}

// foundationStep reads a magic ring by itself: "make a magic ring", "MR, ...",
// "pull closed".
func (p *parser) foundationStep() []Step {
	from := p.i
	if p.takeAny("pull|tighten|close|draw") {
		p.filler("the|ring|circle|tail|closed|tight|tightly|to|close|up|end|yarn|gently|opening|shut|and|magic|center|hole|loop|firmly")
		if p.i > from+1 {
			return []Step{&MagicRing{Span: p.span(from), Close: true}}
		}
		return nil
	}
	p.filler("make|form|start|begin|with|work|into|in|create|a|an|the|using|to")
	p.filler("adjustable")
	switch {
	case p.take("magic|adjustable|sliding", "ring|circle|loop"), p.take("mr"), p.toks[from].text == "mc" && p.has("mc", ",|:") && p.take("mc"), p.i > from && p.prev(1).text == "adjustable" && p.takeAny("ring|loop|circle"):
		return []Step{&MagicRing{Span: p.span(from)}}
	}
	return nil
}

// remarkStep takes words that order nothing.
func (p *parser) remarkStep() []Step {
	from := p.i
	t := p.peek(0)
	switch {
	case p.has("with|using", "larger|smaller|size|hook|rs|ws|right|wrong|work|yarn|two|double|one|your"), p.has("with|using|use|switch|change") && p.hookAhead(), p.has("make", "slip|a", "knot|slip"), p.has("pull|draw|bring", "through|yarn|lp|loop|up|tight|tightly"), p.has("use", "a|stitch|marker|markers|st"):
		p.toClause()
	case p.take("taking|being|making|make|take", "care|careful|sure|certain"), p.take("be", "careful|sure"), p.take("making", "sure"), p.take("without", "twisting"), p.take("not", "to", "twist"), p.take("do", "not", "twist"):
		p.toMark()
	case p.has("as|like", "shown|pictured|before|established|usual"):
		p.toMark()
	case p.has("for", "neck|armhole|sleeve|shoulder|front|back|left|right|first|second|seaming|sewing|opening"):
		p.toMark()
	case p.has("place|pm|pl|move|slip|remove|mark|put|add") && p.hasMarkerWord():
		s := &Marker{Do: "place marker"}
		if anyOf(t.text, "move|slip|") {
			s.Do = "move marker"
		} else if t.text == "remove" {
			s.Do = "remove marker"
		}
		p.toMark()
		s.Span = p.span(from)
		return []Step{s}
	case p.has("pm"), p.has("sm"), p.has("mm"):
		s := &Marker{Do: map[string]string{"pm": "place marker", "sm": "move marker", "mm": "move marker"}[t.text]}
		p.toMark()
		s.Span = p.span(from)
		return []Step{s}
	case doing[t.text] != "" && (p.i == 0 || p.prev(1).kind == mark || p.prev(1).text == "and"):
		s := &Marker{Do: doing[t.text]}
		p.toSentence()
		s.Span = p.span(from)
		return []Step{s}
	case p.sideWords(new(Side)):
		p.filler("facing|you|side|of|work")
	case p.has("loosely|tightly|securely|firmly|gently|neatly|snugly|carefully|evenly|only|together|alternately"):
		p.i++
	default:
		return nil
	}
	return []Step{&Remark{Span: p.span(from)}}
}

func (p *parser) hasMarkerWord() bool {
	if p.has("pm") || p.has("mark") {
		return true
	}
	for k := 1; k < 6; k++ {
		if anyOf(p.peek(k).text, "marker|markers|m|pm|stitch-marker|") {
			return true
		}
	}
	return false
}

// toSentence passes over words up to the end of the sentence.
func (p *parser) toSentence() { p.i = max(p.i+1, p.sentenceEnd()) }

// doing are the things done that make no stitch.
var doing = map[string]string{
	"sew": "sew", "seam": "sew", "whipstitch": "sew", "mattress": "sew", "stitch": "sew", "graft": "sew", "matching": "sew",
	"weave": "weave", "darn": "weave", "hide": "weave", "block": "block", "steam": "block", "wash": "block", "dampen": "block", "pin": "pin",
	"stuff": "stuff", "fold": "fold", "cut": "cut", "trim": "cut", "lay": "fold", "place": "fold", "turn": "", "attach": "sew", "secure": "sew",
	"thread": "sew", "insert": "sew", "repeat": "", "ease": "pin", "hold": "fold", "wrap": "fold",
}

// hookAhead tells whether a hook is spoken of: "using 5 mm hook".
func (p *parser) hookAhead() bool {
	for k := 1; k < 7; k++ {
		if t := p.peek(k); t.kind == mark && !anyOf(t.text, "(|)|/|-|") {
			return false
		} else if t.text == "hook" {
			return true
		}
	}
	return false
}

// toClause passes over words up to a mark, or to an "and" before an order.
func (p *parser) toClause() {
	for p.i++; !p.done(); p.i++ {
		t := p.peek(0)
		if t.kind == mark && anyOf(t.text, ",|.|;|:|(|[|*|)|") || t.text == "and" && (p.hasAny(1, "ch|make|work|join|turn|fasten|pull|chain") || p.hasNumber(1)) {
			return
		}
	}
}

// aside takes sentences that order nothing by themselves: which sizes a line is
// for, which rows form the pattern, how the work goes on.
func (p *parser) aside() []Step {
	from := p.i
	switch {
	case p.has("size|sizes") && p.toColon("only"), p.has("all|for|other", "sizes|size|all") && p.toColon(""):
	case p.has("row|rows|rnds|rounds|rnd|these|this|last|the|above") && p.formsPattern():
	case p.take("cont|continue|work|proceed|cont", "as", "foll|follows|folls|following|below"), p.take("as", "follows|foll|folls"):
		p.filler(":")
	case p.has("keeping|keep", "cont|continuity|pattern|pat|patt|in|to|the|stripe|color"), p.take("at", "same", "time"), p.take("at", "the", "same", "time"), p.take("at", "the|same", "time"):
		if p.toks[from].text != "at" {
			p.toMark()
		}
	case p.has("work|working|cont|continue", "on", "these|this|the|first|last|only"):
		p.toMark()
	case p.take("finish|complete|work", "to", "match|correspond"), p.take("reversing|reverse", "all|shaping|shapings|the"):
		p.toMark()
		p.take(",", "reversing|reverse")
		p.toMark()
		return []Step{&Again{Span: p.span(from), Mirrored: true}}
	default:
		p.i = from
		return nil
	}
	if p.i == from {
		return nil
	}
	return []Step{&Remark{Span: p.span(from)}}
}

// toColon passes over words up to a colon, or to the end of a short line. last,
// if any, must stand among them.
func (p *parser) toColon(last string) bool {
	from, found := p.i, last == ""
	for k := 0; k < 16 && !p.done(); k++ {
		t := p.peek(0)
		if t.text == ":" {
			break
		}
		if found && t.kind == mark || t.text == "." {
			break
		}
		found = found || t.text == last
		p.i++
	}
	if !found || !p.done() && !p.has(":") && !p.has("-|--|.|,") {
		p.i = from
		return false
	}
	p.take(":")
	return true
}

// formsPattern takes "Rows 2-5 form pat", "These 4 rows form Mesh Pat".
func (p *parser) formsPattern() bool {
	from := p.i
	for k := 0; k < 9 && !p.done(); k++ {
		t := p.peek(0)
		if anyOf(t.text, "form|forms|establish|establishes|make|sets|set|complete|completes|is|are|creates|create|constitute|") && k > 0 {
			if anyOf(t.text, "is|are|make|set|") && !p.hasAny(1, "the|pat|patt|pattern|up|right|wrong|rs|ws|now|repeated|your|one|a") {
				break
			}
			p.toMark()
			return true
		}
		if t.kind == mark && !anyOf(t.text, "-|--|,|(|)|") {
			break
		}
		p.i++
	}
	p.i = from
	return false
}
