package notation

import "strings"

// count reads a stated count up to the token stop, nil if the words there are
// none: "24 sc", "48 (52, 56) sts rem", "12 dc, 6 ch-2 sps", "2 sts dec'd".
func (p *parser) count(stop int) *Count {
	from, end := p.i, p.end
	if stop < p.end {
		p.end = stop
	}
	c := p.countItems()
	ok := c != nil && p.done() && c.together()
	p.end = end
	if !ok {
		p.i = from
		return nil
	}
	c.Span = p.span(from)
	return c
}

// together makes one item of a list of sizes with its unit at the end, "(10,
// 12, 14 sts)", and rejects bare numbers that count nothing.
func (c *Count) together() bool {
	bare := 0
	for bare < len(c.Items) && c.Items[bare].Bare {
		bare++
	}
	switch {
	case bare <= 1 && (bare == 0 || len(c.Items) == 1):
		return true
	case bare != len(c.Items)-1:
		return false
	}
	last := c.Items[bare]
	n := &Number{Span: Span{Start: c.Items[0].N.Start, End: last.N.End}}
	for _, it := range c.Items {
		n.Values = append(n.Values, it.N.Values...)
	}
	last.N = n
	c.Items = []CountItem{last}
	return true
}

// countItems reads as many items as there are.
func (p *parser) countItems() *Count {
	c := &Count{}
	p.countLead()
	for {
		item, ok := p.countItem(c)
		if !ok {
			return nil
		}
		c.Items = append(c.Items, item)
		p.countTail(c)
		at := p.i
		p.filler(",|and|+|&|;|plus")
		if p.i == at || p.done() || !p.startsNumber() {
			p.i = at
			break
		}
		if c.Apart = c.Apart || p.prev(1).text == "+"; len(c.Items) > 12 {
			return nil
		}
	}
	return c
}

func (p *parser) countLead() {
	for k := 0; k < 6; k++ {
		switch {
		case p.take("for", "a", "total", "of"), p.take("total", "of"), p.takeAny("total|totals|=|--|-|count|now|stitch"):
		case p.take("you|we", "will|should", "now", "have"), p.take("you|we", "will|should", "have"), p.take("you|we", "now", "have"), p.take("you|we", "have"), p.take("there", "are|is"), p.take("for", "total", "of"), p.take("should", "have"), p.take("you|we", "should|will"), p.take("now", "have"), p.take("ending", "with"), p.take("there", "will", "be"), p.take("you", "'", "ll", "have"):
		case p.take("a", "total", "of"), p.take("st", "count"), p.take("total", "sts"), p.take("count", ":"), p.take("total", ":"), p.take("sts", ":"):
		case len(p.toks) > p.i+1 && p.peek(0).text == ":":
			p.i++
		default:
			return
		}
	}
}

func (p *parser) countItem(c *Count) (CountItem, bool) {
	item := CountItem{}
	if p.spaceAhead() { // "14 1ch-sp" has its number before; "6 ch-2 sps" too
		return item, false
	}
	if item.N = p.number(); item.N == nil {
		return item, false
	}
	from := p.i
	p.filler("total")
	pl := &Place{}
	switch {
	case p.unit(pl):
		item.What, item.Kind, item.Chains = pl.What, pl.Kind, pl.Chains
		if pl.What == TurningChain || pl.What == Chain {
			c.Apart = c.Apart || len(c.Items) > 0
		}
		item.Text = p.text[p.tokAt(from).start:p.prev(1).end]
	case p.takeAny("half|partial|quarter") && p.unit(pl): // "2 half shells": not told stitch by stitch
		item.What = StitchOrSpace
		item.Text = p.text[p.tokAt(from).start:p.prev(1).end]
	case p.done() || anyOf(p.peek(0).text, ".|,|)|]|}|+|"):
		item.Bare = true
	case p.peek(0).kind == word && (p.peek(1).text == "" || anyOf(p.peek(1).text, ".|,|and|)|rem|remain|total|")) && !orderWords[p.peek(0).text]:
		item.Text = p.peek(0).text
		item.What = StitchOrSpace
		p.i++
		if anyOf(item.Text, "inc|incs|dec|decs|") || strings.HasPrefix(item.Text, "increase") || strings.HasPrefix(item.Text, "decrease") {
			return item, false
		}
	default:
		return item, false
	}
	return item, true
}

// orderWords begin an order and are no unit of a count.
var orderWords = map[string]bool{"times": true, "time": true, "more": true, "rows": true, "row": true, "rnds": true, "rounds": true, "x": true, "in": true, "cm": true, "inches": true, "mm": true, "balls": true, "size": true, "sizes": true, "turn": true, "twice": true}

func (p *parser) countTail(c *Count) {
	for {
		switch {
		case p.take("dec", "'", "d"), p.take("decd"), p.take("decreased"), p.take("dec"):
			c.Change = -1
		case p.take("inc", "'", "d"), p.take("incd"), p.take("increased"), p.take("added"), p.take("inc"):
			c.Change = 1
		case p.takeAny("rem|remain|remaining|left"):
			c.Remain = true
		case p.take("each", "row|rnd|round|side|end|section"), p.take("on|at", "each", "side|end"):
			c.Each = true
		case p.take("incl|including|includes|counting", "ch") || p.take("incl|including", "the"):
			if p.hasNumber(0) {
				p.i++
			}
			p.filler("-|ch|tch|turning|beg|chain|as|a|st|first|sts")
		case p.takeAny("made|total|altogether|around|across|now|worked|in|all|for|now|each|side|on"):
		default:
			return
		}
	}
}
