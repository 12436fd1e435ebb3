package stitch

import "strings"

// instruction reads one thing the maker is told, appends it and returns true;
// or takes nothing and returns false.
func (r *reader) instruction(s *sequence) bool {
	from := r.at
	for _, read := range [...]func(*reader, *sequence) bool{
		(*reader).yarnOver, (*reader).insert, (*reader).claim, (*reader).until, (*reader).keepLast,
		(*reader).drop, (*reader).pickUp, (*reader).pull, (*reader).finish, (*reader).repeat, (*reader).counts,
		(*reader).facts, (*reader).skip, (*reader).chains, (*reader).stitches, (*reader).here,
	} {
		if read(r, s) {
			return true
		}
		r.at = from
	}
	return false
}

// counts reads "counts as first dc", "counts as dc, ch 1", "counts as a st".
func (r *reader) counts(s *sequence) bool {
	from := r.at
	if !r.word("counts", "count", "counting", "counted") || !r.word("as") {
		return false
	}
	n := node{op: opCounts}
	r.word("a", "an", "the", "1", "one")
	r.word("first", "1st", "beg", "beginning")
	if kind, words := r.stitchAt(r.at); words > 0 {
		r.at += words
		n.kind = kind
	} else if !r.word("st", "stitch") {
		return false
	}
	if r.is(0, ",", "and", "+", "plus") && (r.chainCount(1) > 0) {
		r.at++
		n.n = r.chainCount(0)
		r.at += 2
	}
	for r.word("here", "and", "throughout", "made", "st", "stitch", "sp", "space") {
	}
	r.add(s, from, n)
	return true
}

// chainCount is the n of "ch n" standing i tokens on, 0 when there is none.
func (r *reader) chainCount(i int) int {
	if r.is(i, "ch", "chain", "ch-") && r.peek(i+1).kind == numToken {
		return min(mostTimes, r.peek(i+1).n)
	}
	return 0
}

// facts reads what the dictionary tells beside the moves: "Turning ch 3",
// "Height 2", "A form of dc".
func (r *reader) facts(s *sequence) bool {
	from := r.at
	switch {
	case r.word("turning") && r.word("ch", "chain") && r.tok().kind == numToken:
		r.at++
		r.add(s, from, node{op: opTurning, n: min(mostTimes, r.toks[r.at-1].n)})
		return true
	case r.word("height") && r.tok().kind == numToken:
		r.at++
		r.add(s, from, node{op: opHeight, n: min(mostTimes, r.toks[r.at-1].n)})
		return true
	case r.word("form") && r.word("of"):
		r.word("a", "an")
		kind, words := r.stitchAt(r.at)
		if words == 0 {
			return false
		}
		r.at += words
		r.add(s, from, node{op: opForm, kind: kind})
		return true
	}
	return false
}

// skip reads "sk next 2 sts".
func (r *reader) skip(s *sequence) bool {
	from := r.at
	if !r.word("sk", "skip", "miss", "skipping", "missing") {
		return false
	}
	p := place{told: true}
	if r.tok().kind == numToken {
		p.fresh = r.bounded(r.tok().n, r.at)
		r.at++
	} else {
		first := true
		for ; !r.placeEnds(first); r.at++ {
			first = false
			p.take(r)
		}
		p.fresh = max(1, p.fresh)
	}
	for r.word("st", "sts", "stitch", "stitches", "ch", "chs") {
	}
	p.own, p.same, p.first = false, false, false
	r.add(s, from, node{op: opSkip, where: p})
	return true
}

// chains reads "ch 3", "ch3", "3ch", "chain three", "make 3 chains".
func (r *reader) chains(s *sequence) bool {
	from := r.at
	n := 0
	t := r.tok()
	if _, words := r.stitchAt(r.at); words > 1 {
		return false // "ch-3 picot"
	}
	switch {
	case r.chainCount(0) > 0:
		n = r.bounded(r.peek(1).n, r.at+1)
		r.at += 2
	case t.kind == numToken && r.is(1, "ch", "chs", "chain", "chains") && !r.isSpace(2):
		n = r.bounded(t.n, r.at)
		r.at += 2
	case t.kind == wordToken && (strings.HasPrefix(t.low, "ch-") || strings.HasPrefix(t.low, "ch")) && !r.isSpace(1):
		digits := strings.TrimPrefix(t.low[2:], "-")
		for i := 0; i < len(digits); i++ {
			if !isDigit(digits[i]) {
				return false
			}
			n = min(mostNumber, n*10+int(digits[i]-'0'))
		}
		r.at++
		n = r.bounded(n, r.at-1)
	}
	if n == 0 {
		return false
	}
	r.word("loosely", "tightly")
	r.add(s, from, node{op: opChain, n: n, where: r.places()})
	return true
}

// stitches reads "5 dc in same st", "dc in each of next 3 sts", "3 dc tog".
func (r *reader) stitches(s *sequence) bool {
	from := r.at
	n := 1
	if kind, end := r.numbered(); end > 0 {
		r.at = end
		r.add(s, from, node{op: opStitch, n: 1, kind: kind, where: r.places(), unfinished: r.unfinished})
		return true
	}
	if r.word("a", "an", "another", "one", "each") {
	} else if r.tok().kind == numToken {
		n = r.bounded(r.tok().n, r.at)
		r.at++
		r.word("more", "complete", "full", "-", "separate")
	}
	unfinished := r.unfinished
	if r.word("unfinished", "incomplete", "partial", "unclosed") {
		unfinished = true
	}
	kind, words := r.stitchAt(r.at)
	if words == 0 || kind == Increase || kind == Decrease || r.isSpace(words) {
		return false
	}
	r.at += words
	if r.word("made", "completed", "complete", "formed") {
		return true // "(ch made)" says what has been done
	}
	if r.is(0, "worked", "working") && placeWords[r.peek(1).low] {
		r.at++
	}
	where := r.places()
	if r.is(0, "tog", "together") && n > 1 {
		r.at++
		if k, ok := r.d.find(r.d.Stitch(kind).US+string(rune('0'+min(n, 9)))+"tog", US); ok {
			kind, n = k, 1
		}
	}
	if !where.told {
		where = r.places()
	}
	if kind == Chain {
		r.add(s, from, node{op: opChain, n: n, where: where})
		return true
	}
	r.add(s, from, node{op: opStitch, n: n, kind: kind, where: where, unfinished: unfinished})
	return true
}

// numbered finds a stitch whose name begins with a number, as "5-dc shell", and
// the token after it; 0 if none stands next.
func (r *reader) numbered() (Kind, int) {
	if r.tok().kind != numToken || !r.is(1, "-") {
		return None, 0
	}
	for n := 3; n > 1; n-- {
		last := r.peek(n)
		if last.kind != wordToken {
			continue
		}
		if k, ok := r.d.Lookup(r.text[r.tok().start:last.end], r.terms); ok {
			return k, r.at + n + 1
		}
	}
	return None, 0
}

// stitchAt finds the stitch named at token i, and how many tokens the name has;
// 0 if none is.
func (r *reader) stitchAt(i int) (Kind, int) {
	if i >= len(r.toks) || i < 0 || r.toks[i].kind != wordToken {
		return None, 0
	}
	first := r.toks[i]
	for n := min(r.d.mostWords(first.low), len(r.toks)-i); n > 0; n-- {
		last := r.toks[i+n-1]
		if last.kind == markToken || last.kind == endToken || n > 1 && strings.ContainsAny(r.text[first.end:last.start], "([{}]),;.:*") {
			continue
		}
		if k, ok := r.d.Lookup(r.text[first.start:last.end], r.terms); ok {
			return k, n
		}
	}
	return None, 0
}

// here reads a place that stands before what goes into it: "In next st, work
// (dc, ch 1, dc)".
func (r *reader) here(s *sequence) bool {
	from := r.at
	if !placeWords[r.tok().low] && !(r.is(0, "all", "both") && placeWords[r.peek(1).low]) {
		return false
	}
	where := r.places()
	if !where.told {
		return false
	}
	// "dc, ch 1, dc all in same st" comes after what it is about.
	r.add(s, from, node{op: opHere, where: where})
	return true
}
