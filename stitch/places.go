package stitch

import "strings"

// placeWords begin a place phrase.
var placeWords = wordSet("in into under around through over from at behind below between bet beneath back " +
	"round front to")

// verbs begin an instruction, so that "and" before one ends a place phrase.
var verbs = wordSet("yo yoh yrh wrh yon yarn insert reinsert re-insert pull draw drop remove pick complete finish close work " +
	"make keep keeping leave leaving hold holding chain ch place catch slip take rep repeat wrap insert then until skip sk miss " +
	"pulling drawing inserting bring pass join omit omitting finishing completing grab return hook ending end leaving sl ss")

// places reads the place phrases that stand next: "in next st", "around post of
// next dc from front to back", "2 rows below".
func (r *reader) places() place {
	var p place
	for {
		switch {
		case placeWords[r.tok().low] && r.tok().kind == wordToken && !(r.is(0, "to") && !r.is(1, "the", "right", "left", "front", "back")):
		case r.is(0, "all", "both", "each", "evenly") && placeWords[r.peek(1).low]:
			r.at++
		case r.tok().kind == numToken && r.is(1, "row", "rows", "rnd", "rnds", "round", "rounds") && r.is(2, "below", "down", "lower"):
		case p.told && r.is(0, ",") && r.is(1, "from") && r.is(2, "front", "back", "the", "right", "left"):
			r.at++
		default:
			return p
		}
		p.merge(r.place())
	}
}

// place reads one place phrase up to where the next instruction, or mark, is.
func (r *reader) place() place {
	p := place{told: true}
	first := true
	for ; !r.placeEnds(first); r.at++ {
		first = false
		p.take(r)
	}
	if first {
		r.at++
	}
	return p
}

// placeEnds tells whether the phrase is over at the next token.
func (r *reader) placeEnds(first bool) bool {
	t := r.tok()
	switch t.kind {
	case endToken:
		return true
	case markToken:
		return t.low != "-" && t.low != "/" || r.claimAhead(1)
	case numToken:
		return r.timesAhead(0)
	}
	switch t.low {
	case "twice", "thrice", "once":
		return true
	case "and", "then":
		return t.low == "then" || r.is(1, "then") || verbs[r.peek(1).low] || r.stitchAhead(1) || r.timesAhead(1)
	case "until", "yo", "yoh", "yrh", "wrh", "keeping", "leaving", "holding", "together", "tog", "omitting", "but", "pulling", "drawing", "ending",
		"insert", "pull", "rep", "repeat", "work":
		return true
	}
	return !first && (t.low == "complete" || t.low == "finish" || t.low == "inserting")
}

// timesAhead tells whether "3 times" or "3x" stands n tokens on.
func (r *reader) timesAhead(n int) bool {
	if r.is(n, "twice", "once") {
		return true
	}
	if r.peek(n).kind != numToken {
		return false
	}
	n++
	if r.is(n, "more", "additional") {
		n++
	}
	return r.is(n, "times", "time", "x")
}

// stitchAhead tells whether an order to make a stitch stands n tokens on: "2 dc
// in", "ch 3".
func (r *reader) stitchAhead(n int) bool {
	if r.is(n, "another", "a", "an", "one") {
		n++
	}
	if r.peek(n).kind == numToken {
		_, words := r.stitchAt(r.at + n + 1)
		return words > 0 && !r.isSpace(n+1+words)
	}
	_, words := r.stitchAt(r.at + n)
	return words > 0 && r.is(n+words, "in", "into", "around", "over")
}

// isSpace tells whether "sp" or "lp" stands n tokens on, so that a stitch name
// before it names a place.
func (r *reader) isSpace(n int) bool {
	return r.is(n, "sp", "sps", "space", "spaces", "lp", "lps", "loop", "loops", "from")
}

// take adds what one word of a phrase tells.
func (p *place) take(r *reader) {
	t := r.tok()
	switch t.low {
	case "next", "following", "foll":
		n := 1
		if r.peek(1).kind == numToken && !r.peek(2).glued {
			n = r.bounded(r.peek(1).n, r.at+1)
		}
		p.fresh += n
	case "each":
		p.each = true
		if r.is(1, "of") && r.peek(2).kind == numToken {
			p.fresh += r.bounded(r.peek(2).n, r.at+2)
		}
	case "right", "left":
		if !p.same && r.is(-1, "the") && p.fresh == 0 {
			p.fresh = 1
		}
	case "same", "skipped", "missed", "unworked", "indicated", "designated", "specified", "stated", "directed":
		p.same = true
	case "first", "1st":
		p.first = true
		if r.is(1, "ch", "chain") {
			p.own = true
		}
	case "made", "bar", "just", "prev", "previous", "group", "cluster", "popcorn", "shell", "itself", "side", "picot", "strand", "strands":
		p.own = true
	case "last":
		if !r.is(1, "row", "rnd", "round") {
			p.own = true
		}
	case "top":
		p.own = !r.is(1, "of") || !r.is(2, "next", "same") && !r.is(3, "next", "same")
	case "base":
		p.base, p.own = true, true
	case "loop", "loops", "lp", "lps", "flo", "blo":
		p.only = p.only || t.low[0] == 'f' || t.low[0] == 'b' || r.is(-1, "front", "back")
	case "hook":
		if r.is(-1, "from") {
			p.own = true
		}
	case "dropped", "free":
		p.loose = true
	case "front":
		p.turnTo(Front)
	case "back":
		p.turnTo(Back)
	case "post", "stem", "posts", "stems":
		p.post |= aroundPost
	case "below", "lower":
		p.below = max(p.below, 1)
		if n := r.peek(-2); n.kind == numToken && r.is(-1, "row", "rows", "rnd", "rnds", "round", "rounds") {
			p.below = max(1, r.bounded(n.n, r.at-2))
		}
	}
	if strings.HasPrefix(t.low, "ch-") {
		p.first = false
	}
}

// aroundPost marks a place that is a post, whichever side the hook comes from.
const aroundPost Side = 1 << 4

// turnTo notes the first side named.
func (p *place) turnTo(s Side) {
	if p.post&^aroundPost == NoSide {
		p.post |= s
	}
}

// side is the side from which a post is worked, NoSide when the place is none.
func (p *place) side() Side {
	if p.post&aroundPost == 0 {
		return NoSide
	}
	return p.post &^ aroundPost
}
