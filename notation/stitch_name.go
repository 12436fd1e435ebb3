package notation

import (
	"strings"

	"rowproof/stitch"
)

// stitchName reads the name of a stitch, longest first; nil if none comes next.
func (p *parser) stitchName() *StitchName {
	from := p.i
	loop := BothLoops
	if l := p.loopWords(); l != BothLoops {
		loop = l
		p.filler("only|of|each")
	}
	k, n := p.lookup()
	if n == 0 {
		p.i = from
		return nil
	}
	nameAt := p.i
	p.i += n
	s := &StitchName{Span: p.span(nameAt), Kind: k, Loop: loop}
	s.Text = p.text[s.Span.Start-p.at : s.Span.End-p.at]
	s.Plural = strings.HasSuffix(strings.ToLower(s.Text), "s") && p.opt.Stitches.Name(k, p.opt.Terms) != strings.ToLower(s.Text)
	if loop == BothLoops {
		here := p.i
		p.filler("in|through|thru")
		if l := p.loopWords(); l != BothLoops && !p.has("of") {
			s.Loop = l
			p.filler("only")
		} else {
			p.i = here
		}
	}
	return s
}

// lookup finds the stitch whose name comes next, and its length in tokens.
func (p *parser) lookup() (stitch.Kind, int) {
	t := p.peek(0)
	if t == &noToken {
		return 0, 0
	}
	if t.looked == 0 {
		kind, n := p.find()
		t.kindOf, t.looked = kind, int8(n+1)
	}
	return t.kindOf, int(t.looked) - 1
}

// find is lookup without its memory.
func (p *parser) find() (stitch.Kind, int) {
	t := p.peek(0)
	if t.kind != word && !(t.kind == number && p.peek(1).kind == word) {
		return 0, 0
	}
	if t.kind == number { // "2 dc tog"
		for n := 2; n < 4 && t.frac == 0 && p.peek(n-1).kind == word; n++ {
			if !anyOf(p.peek(n).text, "tog|together|") {
				continue
			}
			name := t.text + p.peek(1).text
			if n == 3 {
				name += " " + p.peek(2).text
			}
			if k, ok := p.opt.Stitches.Lookup(name+"tog", p.opt.Terms); ok {
				return k, n + 1
			}
		}
		return 0, 0
	}
	if notNames[t.text] {
		return 0, 0
	}
	// "dc tog", "sc 2 tog", "dc dec"
	if k, ok := p.opt.Stitches.Lookup(t.text, p.opt.Terms); ok {
		if u := p.peek(1); u.kind == number && anyOf(p.peek(2).text, "tog|together|") {
			if kk, ok := p.opt.Stitches.Lookup(t.text+u.text+"tog", p.opt.Terms); ok {
				return kk, 3
			}
		}
		if u := p.peek(1).text; anyOf(u, "dec|decrease|") && k != stitch.Chain && !strings.Contains(t.text, "tog") {
			if kk, ok := p.opt.Stitches.Lookup(t.text+"2tog", p.opt.Terms); ok {
				return kk, 2
			}
		}
	}
	name, best, bestKind := "", 0, stitch.Kind(0)
	for n := 0; n < 6; n++ {
		t := p.peek(n)
		if t.kind != word && !(t.kind == number && n > 0) {
			break
		}
		if n > 0 {
			if t.space {
				name += " "
			}
		}
		name += t.text
		if k, ok := p.opt.Stitches.Lookup(name, p.opt.Terms); ok {
			best, bestKind = n+1, k
		}
	}
	if best == 0 && strings.HasSuffix(t.text, "st") && len(t.text) > 3 {
		if k, ok := p.opt.Stitches.Lookup(strings.TrimSuffix(t.text, "st")+"-st", p.opt.Terms); ok {
			return k, 1
		}
	}
	return bestKind, best
}

var notNames = map[string]bool{"st": true, "sts": true, "stitch": true, "stitches": true, "in": true, "a": true, "p": true, "row": true, "rnd": true, "round": true, "turn": true, "next": true}

// loopWords reads "BLO", "back loop only", "front lps".
func (p *parser) loopWords() Loop {
	from := p.i
	p.filler("the|working|work")
	switch t := p.peek(0).text; {
	case anyOf(t, "blo|bl|blp|blps|tbl|"):
		p.i++
		return BackLoop
	case anyOf(t, "flo|fl|flp|flps|tfl|"):
		p.i++
		return FrontLoop
	case t == "3lo":
		p.i++
		return ThirdLoop
	case anyOf(t, "back|front|third|3rd|rear|") && anyOf(p.peek(1).text, "lp|lps|loop|loops|"):
		p.i += 2
		p.filler("only")
		switch t {
		case "back", "rear":
			return BackLoop
		case "front":
			return FrontLoop
		}
		return ThirdLoop
	case anyOf(t, "back|front|") && anyOf(p.peek(1).text, "lp-only|loop-only|"):
		p.i += 2
		if t == "back" {
			return BackLoop
		}
		return FrontLoop
	}
	p.i = from
	return BothLoops
}
