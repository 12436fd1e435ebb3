package stitch

import "rowproof/diag"

// group reads a bracket and what follows it: "[...] 3 times in same st",
// "(...) twice", "(4 loops on hook)".
func (r *reader) group(s *sequence, open token, depth int) {
	from := r.at
	r.at++
	if depth >= mostDepth {
		r.skipBracket(s, from)
		return
	}
	body := r.sequence(depth + 1)
	if r.tok().kind != endToken {
		r.at++
	}
	g := node{op: opGroup, n: 1, body: body}
	if n, ok := r.timesAfter(); ok {
		g.n = n
	}
	g.where = r.places()
	if n, ok := r.timesAfter(); ok && g.n == 1 {
		g.n = n
	}
	if g.where.fresh > 1 && g.n == 1 && freshInside(body) {
		g.n, g.where = r.bounded(g.where.fresh, from), place{} // "[insert hook in next st ...] over next 3 sts"
	}
	g.start, g.end = open.start, r.toks[r.at-1].end
	if g.n == 1 && !g.where.told {
		s.nodes = append(s.nodes, body...)
		return
	}
	s.nodes = append(s.nodes, g)
}

// freshInside tells whether a passage goes into a new place by itself.
func freshInside(body []node) bool {
	for i := range body {
		if body[i].where.fresh > 0 {
			return true
		}
	}
	return len(body) > 0 && body[0].op != opStitch
}

// skipBracket passes over a bracket nested too deep to be meant.
func (r *reader) skipBracket(s *sequence, from int) {
	for open := 1; open > 0 && r.tok().kind != endToken; r.at++ {
		switch r.tok().low {
		case "(", "[", "{":
			open++
		case ")", "]", "}":
			open--
		}
	}
	r.add(s, from, node{op: opUnread, n: 1})
}

// timesAfter reads "3 times", "twice", "x 3", "3x", "a total of 3 times" if it
// stands next.
func (r *reader) timesAfter() (int, bool) {
	from := r.at
	for r.word("a", "total", "of", "for", "altogether", "work", "this", "repeat") {
	}
	switch {
	case r.word("once"):
		r.word("more", "again")
		return 1, true
	case r.word("twice"):
		r.word("more", "again")
		return 2, true
	case r.word("thrice"):
		return 3, true
	case r.is(0, "x", "times") && r.peek(1).kind == numToken:
		r.at += 2
		return r.bounded(r.toks[r.at-1].n, r.at-1), true
	case r.tok().kind == numToken:
		n := r.tok()
		r.at++
		if r.word("or") {
			r.word("more")
		} else {
			r.word("more", "additional")
		}
		if r.word("times", "time", "x") {
			r.word("more")
			return r.bounded(n.n, r.at-1), true
		}
	}
	r.at = from
	return 0, false
}

// bounded keeps a number of times within what a stitch can need. at is a token
// of the number.
func (r *reader) bounded(n, at int) int {
	if n <= mostTimes {
		return n
	}
	if r.times == 0 {
		r.cut = diag.Span{Start: r.toks[at].start, End: r.toks[at].end}
		if r.toks[at].kind != numToken && at > 0 && r.toks[at-1].kind == numToken {
			r.cut = diag.Span{Start: r.toks[at-1].start, End: r.toks[at].end}
		}
	}
	r.times = max(r.times, n)
	return mostTimes
}

// readStar takes a star: the first opens a passage, the second closes it.
func (r *reader) readStar(s *sequence) {
	if s.star < 0 || s.starEnd >= 0 {
		s.star, s.starEnd = len(s.nodes), -1
		return
	}
	s.starEnd = len(s.nodes)
	if n, ok := r.timesAfter(); ok && n > 1 && r.reps < mostReps {
		r.reps++
		s.again(s.star, s.starEnd, n-1)
	}
}

// again appends a passage n more times.
func (s *sequence) again(from, to, n int) {
	if n <= 0 || from >= to {
		return
	}
	g := node{op: opGroup, n: n, body: append([]node(nil), s.nodes[from:to]...), start: s.nodes[from].start, end: s.nodes[to-1].end}
	s.nodes = append(s.nodes, g)
}

// repeat reads "rep from * twice more", "repeat 2 more times in same st".
func (r *reader) repeat(s *sequence) bool {
	from := r.at
	if r.reps == mostReps || !r.word("rep", "repeat", "repeating") {
		return false
	}
	r.reps++
	r.word("this", "these", "steps", "step")
	starred := false
	for r.word("from", "between", "bet", "*", "to", "first", "last", "the", "steps", "'s", "s") {
		starred = starred || r.toks[r.at-1].low == "*"
	}
	n, ok := r.timesAfter()
	where := r.places()
	if !ok {
		n, ok = r.timesAfter()
	}
	if !ok {
		// "rep from * for desired length": as often as the maker likes.
		r.toClauseEnd()
		if !starred {
			r.add(s, from, node{op: opUnread, n: 1})
		}
		return true
	}
	begin, end := s.sentence, len(s.nodes)
	if starred && s.star >= 0 {
		begin = s.star
		if s.starEnd >= 0 {
			end = s.starEnd
		}
	}
	if !where.told {
		s.again(begin, end, n)
		return true
	}
	// A repeat "in same st" shares its place with the first working.
	s.again(begin, end, n)
	if last := len(s.nodes) - 1; last >= 0 && s.nodes[last].op == opGroup {
		s.nodes[last].where = where
	}
	return true
}

// toClauseEnd passes over words up to the next comma, stop or bracket.
func (r *reader) toClauseEnd() {
	for r.tok().kind == wordToken || r.tok().kind == numToken {
		r.at++
	}
}
