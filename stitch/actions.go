package stitch

// yarnOver reads "yo", "yarn over hook twice", "wrap yarn round hook 7 times".
func (r *reader) yarnOver(s *sequence) bool {
	from := r.at
	n := 1
	if r.tok().kind == numToken && (r.is(1, "yo", "yos", "yo's", "yoh", "yrh") || r.is(1, "yarn") && r.is(2, "over", "overs")) {
		n = r.bounded(r.tok().n, r.at)
		r.at++
	}
	switch {
	case r.word("yo", "yoh", "yrh", "wrh", "yon", "yos", "yo's"):
		r.hookWords()
	case r.is(0, "yarn") && r.is(1, "over", "overs", "round", "around"):
		r.at += 2
		r.hookWords()
	case r.is(0, "wrap", "wind", "wrapping", "bring", "pass", "lay", "loop") && r.is(1, "yarn", "the", "thread") && r.yarnRoundHook():
	case r.is(0, "grab", "catch", "hook") && (r.is(1, "yarn", "thread") || r.is(1, "the") && r.is(2, "yarn", "thread")):
		r.at += 2
		r.word("yarn", "thread")
	case r.is(0, "wrap") && r.is(1, "hook"):
		r.at += 2
	default:
		return false
	}
	if more, ok := r.timesAfter(); ok {
		n = more
	}
	r.unfinished = false
	r.add(s, from, node{op: opYO, n: n})
	return true
}

// hookWords passes over "the hook" after a yarn over.
func (r *reader) hookWords() {
	if r.is(0, "hook") {
		r.at++
	} else if r.is(0, "the") && r.is(1, "hook") {
		r.at += 2
	}
}

// yarnRoundHook takes "wrap yarn over hook".
func (r *reader) yarnRoundHook() bool {
	for i := 1; i < 6; i++ {
		if r.is(i, "hook") {
			r.at += i + 1
			return true
		}
		if !r.is(i, "the", "yarn", "thread", "over", "around", "round", "your") {
			return false
		}
	}
	return false
}

// insert reads "insert hook in next st".
func (r *reader) insert(s *sequence) bool {
	from := r.at
	if !r.word("insert", "reinsert", "re-insert", "inserting", "ins", "put") {
		return false
	}
	r.word("the", "your")
	if !r.word("hook") && !(placeWords[r.tok().low] && r.toks[from].low != "put") {
		return false
	}
	if r.is(0, "again") {
		r.at++
	}
	r.word("from", "right") // "from the back" is read with the place
	if r.toks[r.at-1].low == "from" {
		r.at--
	}
	where := r.places()
	if where.fresh == 0 && !where.told {
		where = place{}
	}
	r.add(s, from, node{op: opInsert, where: where})
	return true
}

// drop reads "drop loop from hook", "remove hook", "take hook out of loop".
func (r *reader) drop(s *sequence) bool {
	from := r.at
	switch {
	case r.word("drop", "dropping"), r.word("remove", "withdraw"), r.is(0, "take") && r.clauseHas("out", "off"),
		r.is(0, "slip") && r.clauseHas("loop", "lp") && r.clauseHas("off"):
	default:
		return false
	}
	if !r.clauseHas("loop", "lp", "hook", "st", "it", "stitch") {
		return false
	}
	r.toActionEnd()
	r.add(s, from, node{op: opDrop, n: 1})
	return true
}

// pickUp reads "pick up dropped loop", "place dropped loop back on hook".
func (r *reader) pickUp(s *sequence) bool {
	from := r.at
	if !r.is(0, "pick", "picking", "catch", "grab", "place", "put", "return", "hook", "replace", "slip") || !r.clauseHas("loop", "lp", "loops", "lps") {
		return false
	}
	if r.is(0, "pick", "picking") && !r.clauseHas("dropped", "free", "released", "working", "that") {
		return false // "pick up a loop" is a new one
	}
	r.toActionEnd()
	r.add(s, from, node{op: opPickUp, n: 1})
	return true
}

// toActionEnd passes over the words of one action: up to a mark, or to "and"
// or "then" before another.
func (r *reader) toActionEnd() {
	for ; r.tok().kind == wordToken || r.tok().kind == numToken; r.at++ {
		if r.is(0, "and", "then", "twice", "until") || r.timesAhead(0) || r.is(0, "insert", "yo", "yrh", "yoh") {
			return
		}
	}
}

// clauseHas tells whether one of the words comes before the action ends.
func (r *reader) clauseHas(words ...string) bool {
	for i := 0; i < 16; i++ {
		t := r.peek(i)
		if t.kind == endToken || t.kind == markToken && t.low != "-" || i > 0 && (t.low == "and" || t.low == "then") && verbs[r.peek(i+1).low] {
			return false
		}
		for _, w := range words {
			if t.low == w {
				return true
			}
		}
	}
	return false
}

// finish reads "complete as dc", "finish as a normal sc".
func (r *reader) finish(s *sequence) bool {
	from := r.at
	if !r.word("complete", "finish", "completing", "finishing", "close", "end", "work") {
		return false
	}
	as := r.toks[from].low != "work"
	for r.word("the", "st", "stitch", "a", "an", "as", "off", "like", "usual", "for", "normal", "regular", "rest", "of", "it", "remaining", "in", "same", "way") {
		as = as || r.toks[r.at-1].low == "off"
	}
	kind, words := r.stitchAt(r.at)
	if words == 0 || !as {
		return false
	}
	r.at += words
	r.word("as")
	r.word("usual", "normal")
	if r.is(-1, "usual", "normal") && r.is(-2, "as") || r.tok().kind == markToken || r.tok().kind == endToken || r.is(0, "and", "then") {
		r.add(s, from, node{op: opFinish, kind: kind})
		return true
	}
	return false
}
