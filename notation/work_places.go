package notation

// places reads where a stitch goes: one place, or several joined by "and in".
func (p *parser) places(w *Work) {
	from := p.i
	p.take("each", "in|into")
	if p.i > from {
		p.i--
	}
	switch {
	case p.takeAny("evenly|even") && p.has("along|around|across|down|up|over|in|on"):
		p.edgePlace(w, from)
	case p.i == from && p.alongEdge() && !p.has("across|around|along", "each|next|first|last"):
		p.edgePlace(w, from)
	case p.i == from && p.has("across|along|over", "first|next|last") || p.i == from && p.has("in|into|around|over|on|through|thru|onto|under|along|down|up") && !(p.has("around|along|down|up") && p.endOfPlace(1)):
		over := p.has("over")
		p.i++
		p.filler("around|the")
		at := p.i
		pl := p.target()
		if pl == nil {
			p.i = from
			return
		}
		if p.tokAt(at-1).text == "around" && pl.Loop == BothLoops {
			pl.Loop = Post
		}
		w.Places = append(w.Places, pl)
		if over && p.has("and") {
			p.then(pl)
		}
		p.more(w)
	case p.i == from && p.has("bet|between"):
		if pl := p.target(); pl != nil {
			w.Places = append(w.Places, pl)
		}
	case p.i > from:
		p.i = from
	case p.has("next|following|nxt") && !p.has("next", "row|rnd|round"), p.has("first|last|each|same|every|1st|rem|remaining") && p.placeAhead():
		if pl := p.target(); pl != nil {
			w.Places = append(w.Places, pl)
			p.more(w)
		}
	case p.has("across|around|along") || p.has("all", "across|around|along|the") || p.has("to|until|till", "end|last|next|tch|marker|top|within|corner|marked|the|first|you|center|beg|ch|sp|before") || p.has("until|till") && p.numberAt(1):
		if l := p.limit(); l != nil {
			w.Places = append(w.Places, &Place{Span: l.Span, Which: Each, To: l})
			p.followOver(w)
		}
	}
}

// endOfPlace tells whether "around" stands alone: "sc around, join".
func (p *parser) endOfPlace(k int) bool {
	t := p.peek(k)
	return t.kind == mark || anyOf(t.text, "to|and|join|turn|for|until|")
}

// edgePlace reads "evenly around entire edge": stitches along an edge whose
// number is not told.
func (p *parser) edgePlace(w *Work, from int) {
	p.i++
	at := p.i
	for !p.done() && p.peek(0).kind == word && p.i < at+8 && !anyOf(p.peek(0).text, "join|turn|and|ch|working|placing|with|making|in|fasten|then|ending|working|to|changing|skipping|until|starting|for|do|work|increasing") {
		p.i++
	}
	pl := &Place{Span: p.span(from), Which: Edge, What: RowEnd}
	w.Places = append(w.Places, pl)
	p.placing()
}

// placing passes over how stitches are spread along an edge: ", placing 1 sc in
// each row end".
func (p *parser) placing() {
	from := p.i
	p.take(",")
	if !p.takeAny("placing|working|making") || p.has("last|the|in|along|back|front|through") {
		p.i = from
		return
	}
	p.toMark()
}

func (p *parser) placeAhead() bool {
	from := p.i
	pl := p.target()
	p.i = from
	return pl != nil
}

func (p *parser) followOver(w *Work) {
	from := p.i
	if p.take("and") && p.take("in|into") {
		p.i = from
		p.more(w)
		return
	}
	p.i = from
}

// then reads the second place of a stitch worked over two.
func (p *parser) then(pl *Place) {
	from := p.i
	p.i++
	p.filler("over|in|into")
	if q := p.target(); q != nil {
		pl.Then = q
		pl.Span.End = q.Span.End
		return
	}
	p.i = from
}

// more reads further places: "and in each ch across", "and each ch".
func (p *parser) more(w *Work) {
	for {
		from := p.i
		p.take(",")
		if !p.take("and|&") && !p.take("then") {
			p.i = from
			return
		}
		p.filler("also|then")
		if p.has("across|around") && len(w.Places) > 0 && p.endOfPlace(1) { // "dc in next st and across"
			if l := p.limit(); l != nil {
				w.Places = append(w.Places, &Place{Span: l.Span, Which: Each, To: l})
			}
			return
		}
		if !p.take("in|into|around|over") && !p.has("each|every") && !(p.has("next|last|first") && len(w.Places) > 0) {
			p.i = from
			return
		}
		pl := p.target()
		if pl == nil {
			p.i = from
			return
		}
		if k := len(w.Places) - 1; k >= 0 && pl.Which == Each && w.Places[k].Which == Each && w.Places[k].To == nil && (pl.What == Space) != (w.Places[k].What == Space) {
			// "in each st and in each ch-1 sp across" goes along once
			last := w.Places[k]
			if pl.What == Space {
				last.Chains = pl.Chains
			}
			last.What, last.Kind, last.To = StitchOrSpace, 0, pl.To
			last.Span.End = pl.Span.End
			continue
		}
		if k := len(w.Places) - 1; k >= 0 && pl.Which == Each && pl.What == Chain && w.Places[k].Which == Each && w.Places[k].To == nil {
			last := w.Places[k] // "in each st and in each ch around"
			last.What, last.Kind, last.To = StitchOrChain, 0, pl.To
			last.Span.End = pl.Span.End
			continue
		}
		w.Places = append(w.Places, pl)
	}
}

// lastIn reads "working last dc in top of tch".
func (p *parser) lastIn(w *Work) {
	if pl := p.workingLast(); pl != nil {
		w.Last = pl
	}
}

func (p *parser) workingLast() *Place {
	from := p.i
	p.take(",")
	p.filler("and|with|by")
	if !p.takeAny("working|work|making|placing") {
		p.i = from
		return nil
	}
	p.filler("the")
	if !p.take("last") {
		p.i = from
		return nil
	}
	if _, n := p.lookup(); n > 0 {
		p.i += n
	} else {
		p.filler("st|stitch|one")
	}
	if !p.takeAny("in|into|on") {
		p.i = from
		return nil
	}
	pl := p.target()
	if pl == nil {
		p.i = from
	}
	return pl
}
