package notation

var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50,
}

var ordinalWords = map[string]int{"second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8}

// startsNumber tells whether a count comes next.
func (p *parser) startsNumber() bool { return p.numberAt(0) }

func (p *parser) numberAt(k int) bool {
	t := p.peek(k)
	switch t.kind {
	case number:
		return t.frac == 0
	case live:
		return true
	case word:
		return numberWords[t.text] > 0
	}
	if t.text == "(" || t.text == "[" {
		return p.listAlone(p.i + k)
	}
	return (t.text == "--" || t.text == "-") && p.peek(k+1).text == "(" && p.listIn(p.i+k+1) > 0
}

// listAlone tells whether a bracket holds the numbers of all sizes, with none
// before it: "ch (40, 44, 50)", "(20, 22, 24) sc".
func (p *parser) listAlone(open int) bool {
	k := p.listIn(open)
	if k < 2 {
		return false
	}
	if open > 0 && anyOf(p.tokAt(open-1).text, "ch|chain|") || k == p.opt.Sizes {
		return true
	}
	if p.opt.Sizes == 1 || open > 0 && p.tokAt(open-1).kind == number {
		return false
	}
	next := p.toks[open].pair + 1
	if next >= p.end || p.tokAt(next).kind != word {
		return false
	}
	if anyOf(p.tokAt(next).text, "st|sts|stitches|ch|chs|") {
		return true
	}
	_, ok := p.opt.Stitches.Lookup(p.tokAt(next).text, p.opt.Terms)
	return ok
}

// listIn counts the entries of a bracket that holds nothing but a list of
// numbers, 0 if it holds something else.
func (p *parser) listIn(open int) int {
	if open >= len(p.toks) || p.toks[open].pair < 0 {
		return 0
	}
	n, want := 0, true
	for i := open + 1; i < p.toks[open].pair; i++ {
		t := &p.toks[i]
		switch {
		case t.kind == number && t.frac == 0 || t.kind == word && numberWords[t.text] > 0 && want:
			n, want = n+1, false
		case (t.text == "-" || t.text == "--") && want && t.kind == mark && (i+1 == p.toks[open].pair || p.tokAt(i+1).text == "," || p.tokAt(i+1).text == ";" || p.tokAt(i+1).text == ":"):
			n, want = n+1, false
		case t.text == "," || t.text == ";" || t.text == ":" || t.text == "/" || t.text == "-" || t.text == "--":
			want = true
		default:
			return 0
		}
	}
	return n
}

// number reads a count, nil when none comes next.
func (p *parser) number() *Number {
	from := p.i
	t := p.peek(0)
	n := &Number{}
	switch {
	case t.kind == live:
		n.Live = t.text
		p.i++
		n.Span = p.span(from)
		return n
	case t.kind == number && t.frac == 0:
		n.Values = append(n.Values, Value{N: t.n})
		p.i++
	case t.kind == word && numberWords[t.text] > 0:
		n.Values = append(n.Values, Value{N: numberWords[t.text]})
		p.i++
	case t.text == "-" || t.text == "--":
		if p.listIn(p.i+1) == 0 {
			return nil
		}
		n.Values = append(n.Values, Value{None: true})
		p.i++
	case (t.text == "(" || t.text == "[") && p.listAlone(p.i):
		p.entries(n)
		n.Span = p.span(from)
		return n
	default:
		return nil
	}
	p.sizes(n)
	n.Span = p.span(from)
	return n
}

// sizes reads the further sizes of a count: "(20, 24)", "(20) 24 (28)", ", (20,
// 24)", "/9", ", 2, 3 (4, 5)".
func (p *parser) sizes(n *Number) {
	for {
		t := p.peek(0)
		switch {
		case t.text == "(" || t.text == "[" || t.text == "{":
			k := p.listIn(p.i)
			if k == 0 || !p.isSizes(n, k) {
				return
			}
			p.entries(n)
			// "18 (20) 24 (28) 30"
			if k == 1 && p.opt.Sizes != len(n.Values) {
				if u := p.peek(0); u.kind == number && u.frac == 0 && (p.listIn(p.i+1) == 1 || p.opt.Sizes == len(n.Values)+1 || p.opt.Sizes == 0) {
					n.Values = append(n.Values, Value{N: u.n})
					p.i++
				}
			}
		case t.text == "," && len(n.Values) == 1 && p.listIn(p.i+1) > 1 && (p.opt.Sizes == 0 || p.listIn(p.i+1) == p.opt.Sizes-1):
			p.i++
		case t.text == "," && len(n.Values) > 1 && len(n.Values) < p.opt.Sizes && p.listIn(p.i+1) > 1: // "1, 2, 3, (4, 5, 6)"
			p.i++
		case t.text == "," && p.plainList(len(n.Values)):
			p.i++
			n.Values = append(n.Values, Value{N: p.peek(0).n})
			p.i++
		case t.text == "-" && !t.space && p.hyphenList(len(n.Values)):
			n.Values = append(n.Values, Value{N: p.peek(1).n})
			p.i += 2
		case t.text == "/" && !t.space && p.peek(1).kind == number && !p.peek(1).space && p.opt.Sizes != 1:
			n.Values = append(n.Values, Value{N: p.peek(1).n})
			p.i += 2
		default:
			return
		}
	}
}

// isSizes tells whether a bracket of k numbers goes on with a list of sizes,
// and is no count of its own: "(24)" after a full stop.
func (p *parser) isSizes(n *Number, k int) bool {
	if p.opt.Sizes > 0 && len(n.Values) >= p.opt.Sizes && p.opt.Sizes > 1 {
		return false
	}
	if k == 1 && p.bare && p.opt.Sizes != len(n.Values)+1 && p.endsLine(p.peek(0).pair+1) && p.listIn(p.peek(0).pair+1) == 0 && len(n.Values) == 1 {
		return false
	}
	return p.opt.Sizes != 1 || k > 1
}

// hyphenList tells whether "-16-18" goes on with a list of sizes.
func (p *parser) hyphenList(have int) bool {
	glued := func(k int) bool {
		return p.peek(k).text == "-" && !p.peek(k).space && p.hasNumber(k+1) && !p.peek(k+1).space
	}
	if !glued(0) || anyOf(p.peek(2).text, "ch|row|st|") && have+1 != p.opt.Sizes {
		return false
	}
	return have > 1 || glued(2) || p.opt.Sizes == 2
}

// bareNumber reads a number that a stated count may follow in brackets: the 6
// of "sc 6 (18)".
func (p *parser) bareNumber() *Number {
	p.bare = true
	n := p.number()
	p.bare = false
	return n
}

// plainList tells whether bare numbers go on to a bracket and make up the
// sizes: "1, 2, 3, (4, 5, 6) {7, 8, 9}".
func (p *parser) plainList(have int) bool {
	if p.opt.Sizes < 3 || have >= p.opt.Sizes || p.peek(1).kind != number || p.peek(1).frac != 0 {
		return false
	}
	k, n := 0, have
	for p.peek(k).text == "," && p.peek(k+1).kind == number && n < p.opt.Sizes {
		n++
		k += 2
	}
	for p.peek(k).text == "," || p.listIn(p.i+k) > 0 {
		if p.peek(k).text == "," {
			k++
			continue
		}
		n += p.listIn(p.i + k)
		k += p.toks[p.i+k].pair - (p.i + k) + 1
	}
	return n == p.opt.Sizes
}

// entries takes the numbers of a bracket.
func (p *parser) entries(n *Number) {
	closing := p.toks[p.i].pair
	want := true
	for p.i++; p.i < closing; p.i++ {
		t := p.peek(0)
		switch {
		case t.kind == number:
			n.Values = append(n.Values, Value{N: t.n})
			want = false
		case t.kind == word:
			n.Values = append(n.Values, Value{N: numberWords[t.text]})
			want = false
		case (t.text == "-" || t.text == "--") && want && (p.i+1 == closing || p.peek(1).text == "," || p.peek(1).text == ";" || p.peek(1).text == ":"):
			n.Values = append(n.Values, Value{None: true})
			want = false
		default:
			want = true
		}
	}
	p.i = closing + 1
}
