package notation

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

// remarkStep takes words that order nothing.
func (p *parser) remarkStep() []Step {
	from := p.i
	t := p.peek(0)
	switch {
	case p.has("starting|beginning|beg|start", "at|from|with") && p.hasAny(2, "lower|bottom|top|neck|cuff|hem|the|side|waist|center|centre|back|front|upper|underarm|shoulder|crown"), p.has("change|switch|changing", "to", "smaller|larger|a"):
		p.toClause()
	case p.has("with|using", "larger|smaller|size|hook|rs|ws|right|wrong|work|yarn|two|double|one|your"), p.has("with|using|use|switch|change") && p.hookAhead(), p.has("make", "slip|a", "knot|slip"), p.has("pull|draw|bring", "through|yarn|lp|loop|up|tight|tightly"), p.has("use", "a|stitch|marker|markers|st"):
		p.toClause()
	case p.take("taking|being|making|make|take", "care|careful|sure|certain"), p.take("be", "careful|sure"), p.take("careful", "not", "to"), p.take("making", "sure"), p.take("without", "twisting"), p.take("not", "to", "twist"), p.take("do", "not", "twist"):
		p.toMark()
	case p.has("as|like", "shown|pictured|before|established|usual"):
		p.toMark()
	case p.has("for", "neck|armhole|sleeve|shoulder|front|back|left|right|first|second|seaming|sewing|opening"):
		p.toMark()
	case p.has("place|pm|pl|move|slip|remove|mark|put|add|replace|attach") && p.hasMarkerWord():
		s := &Marker{Do: "place marker"}
		if anyOf(t.text, "move|slip|replace") {
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
	case p.has("make|work|crochet", "the|a|your") && (p.hasAny(2, "swatch") || p.hasAny(3, "swatch")): // "Make the swatch at least 6 in square"
		p.toSentence()
	case p.row && t.text == "block" && p.peek(1).kind == mark && anyOf(p.peek(1).text, ",|]|)"): // of filet: a row makes it
		return nil
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
	"stuff": "stuff", "fill": "stuff", "fold": "fold", "cut": "cut", "trim": "cut", "lay": "fold", "place": "fold", "turn": "", "attach": "sew", "secure": "sew",
	"thread": "sew", "ease": "pin", "hold": "fold", "whip": "sew", "gather": "sew", "assemble": "sew",
}

// hookAhead tells whether a hook is spoken of: "using 5 mm hook".
func (p *parser) hookAhead() bool {
	for k := 1; k < 7; k++ {
		if t := p.peek(k); t.kind == mark && !anyOf(t.text, "(|)|/|-|") {
			return false
		} else if anyOf(t.text, "hook|needle") {
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
		if p.tokAt(from).text != "at" {
			p.toMark()
		}
	case p.has("work|working|cont|continue", "on", "these|this|the|first|last|only"):
		p.toMark()
	case p.has("working|work|in", "in|into|back", "the|back|bump|bumps", "back|bump|bumps|hump|humps|of") && p.backBumps():
	case p.headingAhead():
	case p.has("begin|beg|start|continue|cont|continuing", "working|to|in|the", "in|work|rows|rounds|rnds|the|continuous", "rows|rounds|rnds|round|rnd|in|continuous") && !p.hasAny(4, "of") && !p.hasAny(3, "of"), p.has("work|working|continue|cont", "in", "rows|rounds|rnds|the|continuous", "round|rnd|rounds|rnds"), p.has("work|continue|cont", "in", "rounds|rnds|round"), p.has("to", "work", "back|along|across|in|the"):
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

// backBumps takes "working in back bumps of ch".
func (p *parser) backBumps() bool {
	from := p.i
	p.toMark()
	return p.hasWord(from, p.i, "bump|bumps|hump|humps")
}

// headingAhead takes a heading before a colon: "Border:", "Armhole shaping:".
func (p *parser) headingAhead() bool {
	if p.i > 0 && !p.sentenceStarts() || p.peek(0).kind != word || !p.peek(0).cap {
		return false
	}
	for k := 1; k < 5; k++ {
		t := p.peek(k)
		if t.text == ":" && t.kind == mark {
			p.i += k + 1
			return true
		}
		if t.kind != word || t.text == "rep" {
			return false
		}
	}
	return false
}
