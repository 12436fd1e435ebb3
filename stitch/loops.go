package stitch

// loopWords is what a loop is called.
func (r *reader) isLoop(n int) bool { return r.is(n, "loop", "loops", "lp", "lps") }

// claimAhead tells whether "4 loops" stands n tokens on.
func (r *reader) claimAhead(n int) bool {
	return r.peek(n).kind == numToken && r.isLoop(n+1)
}

// claim reads "4 loops on hook", "you now have 4 lps", "3 loops left".
func (r *reader) claim(s *sequence) bool {
	from := r.at
	for r.word("you", "you'll", "now", "will", "should", "have", "there", "are", "is", "be", "leaving", "leaves", "total", "of", "with", "still", "=", "making", "for", "a", "that", "makes") {
	}
	if !r.claimAhead(0) && !(r.tok().kind == wordToken && r.is(0, "one", "1") && r.isLoop(1)) {
		if !(r.is(0, "one") && r.isLoop(1)) {
			return false
		}
	}
	num := r.at
	n := 1
	if r.tok().kind == numToken {
		n = r.tok().n
	}
	if r.is(-1, "-", "to") || r.is(-1, "or") {
		return false
	}
	r.at += 2
	for r.word("now", "rem", "remain", "remaining", "remains", "left", "are", "is", "should", "be", "total", "still", "on", "the", "your", "hook", "in", "all") {
	}
	t := r.tok()
	if t.kind != markToken && t.kind != endToken && !r.is(0, "and", "then") && !verbs[t.low] {
		return false
	}
	if r.toks[r.at-1].low == "all" && r.is(-2, "loops", "lps") && from == num && t.kind == endToken {
		return false
	}
	c := node{op: opClaim, n: n, id: r.claims, start: r.toks[num].start, end: r.toks[num].end}
	r.claims++
	s.nodes = append(s.nodes, c)
	return true
}

// until reads "until 2 loops remain on hook", "until last loop of each remains".
func (r *reader) until(s *sequence) bool {
	from := r.at
	if !r.word("until", "til", "till", "to") {
		return false
	}
	for r.word("there", "are", "you", "have", "only", "the") {
	}
	num := r.at
	n := 0
	switch {
	case r.claimAhead(0):
		n = r.tok().n
	case r.is(0, "last", "one") && (r.isLoop(1) || r.is(1, "yo", "step")):
	default:
		return false
	}
	r.toActionEnd()
	if last := len(s.nodes) - 1; last >= 0 && s.nodes[last].op == opStitch {
		s.unfinish(r)
		if n > 1 {
			s.nodes = append(s.nodes, node{op: opClaim, n: n, id: r.claims, start: r.toks[num].start, end: r.toks[num].end})
			r.claims++
		}
		return true
	}
	r.add(s, from, node{op: opUntil, n: max(1, n)})
	return true
}

// keepLast reads "keeping last loop of each on hook": of the stitches just
// read, or else of those to come.
func (r *reader) keepLast(s *sequence) bool {
	switch {
	case r.word("keep", "keeping", "leave", "leaving", "hold", "holding", "retain", "retaining", "reserve", "reserving"):
		if !r.clauseHas("loop", "lp", "loops", "lps") || !r.clauseHas("last", "each", "one", "final", "1") {
			return false
		}
	case r.word("omit", "omitting", "without", "except", "minus", "before"):
		if !r.clauseHas("last", "final", "completing", "finishing", "closing") {
			return false
		}
	default:
		return false
	}
	for ; r.tok().kind == wordToken || r.tok().kind == numToken; r.at++ {
		if r.is(0, "work", "make", "then", "yo") || r.is(0, "and") || r.timesAhead(0) || r.is(-1, "hook") {
			break
		}
	}
	s.unfinish(r)
	return true
}

// unfinish leaves the last loop of the stitches that end s on the hook, or of
// the stitches to come when s ends with none.
func (s *sequence) unfinish(r *reader) {
	any := false
	for i := len(s.nodes) - 1; i >= s.clause; i-- {
		if s.nodes[i].op != opStitch || s.nodes[i].unfinished {
			break
		}
		s.nodes[i].unfinished, any = true, true
	}
	if last := len(s.nodes) - 1; !any && last >= 0 && s.nodes[last].op == opStitch {
		s.nodes[last].unfinished, any = true, true
	}
	if !any {
		r.unfinished = true
	}
}

// pull reads all that pulls a loop: up, through the work, or through loops.
func (r *reader) pull(s *sequence) bool {
	from := r.at
	if !r.word("pull", "draw", "pulling", "drawing", "bring", "pass", "pick", "work", "drag", "take") {
		return false
	}
	verb := r.toks[from].low
	if verb == "work" && !r.word("off") || verb == "take" && !r.word("off") {
		return false
	}
	dropped := false
	for r.word("the", "yarn", "thread", "it", "hook", "back", "out", "this", "that", "dropped", "working", "a", "new") {
		dropped = dropped || r.is(-1, "dropped", "it", "this", "that")
	}
	if r.tok().kind == wordToken && r.is(0, "tight", "tightly", "snug", "snugly", "closed", "gently", "firmly") {
		r.toActionEnd()
		return true
	}
	if verb == "work" || verb == "take" {
		return r.throughLoops(s, from)
	}
	return r.pullUp(s, from) || r.pullThrough(s, from, dropped)
}

// pullUp reads the rest of "pull up a long loop", "draw up 2 loops".
func (r *reader) pullUp(s *sequence, from int) bool {
	at := r.at
	n := 1
	up := r.word("up")
	for r.word("a", "an", "one", "the", "another", "long", "large", "tall", "longer", "loose", "yarn", "up", "1", "hook") {
		up = up || r.is(-1, "up")
	}
	if r.tok().kind == numToken && r.isLoop(1) {
		n = r.bounded(r.tok().n, r.at)
		r.at++
	}
	loop := r.isLoop(0)
	if loop {
		r.at++
		up = up || r.word("up")
	}
	if !up || r.is(0, "through", "thru") && !r.pullsThroughWork() {
		r.at = at
		return false
	}
	where := r.places()
	if !where.told {
		r.pullDetail()
		where = r.places()
	}
	r.add(s, from, node{op: opPull, n: n, where: where})
	return true
}

// pullDetail passes over the height a loop is pulled to.
func (r *reader) pullDetail() {
	for ; r.tok().kind == wordToken || r.tok().kind == numToken; r.at++ {
		if verbs[r.tok().low] || placeWords[r.tok().low] && r.tok().low != "to" || r.is(0, "and", "twice") || r.timesAhead(0) || r.claimAhead(0) {
			return
		}
	}
}

// pullsThroughWork tells whether "through st" goes through the work and no loop.
func (r *reader) pullsThroughWork() bool {
	return !r.clauseHas("loops", "lps", "all", "both") || r.clauseHas("front", "back")
}

// pullThrough reads the rest of "pull through 2 loops", "draw loop through st",
// "pull through st and loop on hook".
func (r *reader) pullThrough(s *sequence, from int, dropped bool) bool {
	noun := false
	for r.word("a", "loop", "lp", "yarn", "up", "one", "1") {
		noun = true
		dropped = dropped || r.is(-2, "dropped")
	}
	if !r.word("through", "thru", "tru") {
		return false
	}
	if dropped {
		where := r.throughWhat()
		r.add(s, from, node{op: opLead, where: where})
		return true
	}
	if r.tok().kind == markToken || r.tok().kind == endToken || r.is(0, "and", "then") {
		op := node{op: opLead}
		r.add(s, from, op)
		return true
	}
	return r.throughTarget(s, from, noun)
}

// throughWhat passes over what the dropped loop is pulled through.
func (r *reader) throughWhat() place {
	p := place{told: true, own: true}
	for ; r.tok().kind == wordToken && !r.is(0, "and", "then", "twice"); r.at++ {
	}
	return p
}

// workWords is what the hook goes through that is no loop on it.
var workWords = wordSet("st stitch sts stitches work fabric ch chain post sp space bar chs sc dc hdc tr both same ring it center top next first front")

// throughTarget reads what is pulled through.
func (r *reader) throughTarget(s *sequence, from int, noun bool) bool {
	work, loops, n, side := false, false, 0, false
	for ; r.tok().kind == wordToken || r.tok().kind == numToken; r.at++ {
		t := r.tok()
		switch {
		case t.kind == numToken && (r.is(1, "times", "time", "x") || r.is(1, "more") && r.is(2, "times", "time")), r.is(0, "twice"),
			r.is(0, "then"), r.is(0, "and") && (verbs[r.peek(1).low] || r.stitchAhead(1)), r.is(0, "to", "until") && loops, r.is(0, "in", "into", "around") && loops:
			return r.endThrough(s, from, work, loops || n != 0, n, side, noun)
		case t.kind == numToken:
			n = min(mostNumber, t.n)
			loops = loops || r.isLoop(1) || r.tokEnds(1)
		case r.is(0, "all", "every", "everything"):
			n, loops = allLoops, true
		case r.is(0, "both"):
			n = 2
			loops = loops || r.isLoop(1) || r.tokEnds(1) || r.is(1, "on", "rem", "remaining")
		case r.is(0, "one", "1", "last", "first", "next", "remaining", "rem", "final"):
		case r.is(0, "loop", "lp"):
			loops = true
			if n == 0 {
				n = 1
			}
		case r.is(0, "loops", "lps"):
			loops = true
			if n == 0 {
				n = allLoops
			}
		case r.is(0, "front", "back"):
			side = true
		case workWords[t.low]:
			work = true
		}
	}
	return r.endThrough(s, from, work, loops, n, side, noun)
}

// tokEnds tells whether an action ends n tokens on.
func (r *reader) tokEnds(n int) bool {
	k := r.peek(n).kind
	return k == endToken || k == markToken || r.is(n, "and", "then")
}

// endThrough appends what throughTarget found.
func (r *reader) endThrough(s *sequence, from int, work, loops bool, n int, side, noun bool) bool {
	switch {
	case side, work && !loops, !loops && n == 0 && noun:
		r.add(s, from, node{op: opPull, n: 1})
	case work:
		r.add(s, from, node{op: opVia, n: n})
	case loops:
		r.add(s, from, node{op: opThrough, n: n})
	default:
		return false
	}
	if times, ok := r.timesAfter(); ok && times > 1 {
		s.repeatLast(times)
	}
	return true
}

// repeatLast repeats the last action, with the yarn over that belongs to it:
// "yo and pull through 2 loops twice".
func (s *sequence) repeatLast(times int) {
	from := len(s.nodes) - 1
	if from > 0 && s.nodes[from-1].op == opYO && s.nodes[from-1].n == 1 {
		from--
	}
	s.again(from, len(s.nodes), times-1)
}

// throughLoops reads the rest of "work off 2 loops".
func (r *reader) throughLoops(s *sequence, from int) bool {
	if !r.clauseHas("loop", "loops", "lp", "lps", "all") && r.tok().kind != numToken {
		return false
	}
	return r.throughTarget(s, from, false)
}
