package stitch

import "rowproof/diag"

// A reader reads the words of a definition into nodes. It never fails: what it
// does not understand becomes an opUnread.
type reader struct {
	d     *Dictionary
	text  string
	terms Terms
	toks  []token
	at    int // the next token

	claims int // how many claims were read
	reps   int // how many passages were told to be repeated by "rep from *"
	times  int // how many repeats had to be cut down
	cut    diag.Span

	unfinished bool // "keeping last loop of each on hook" holds for the stitches to come
	lost       int  // first token of words not understood, -1 for none
}

const (
	// mostDepth is how deep brackets may stand in one another.
	mostDepth = 12
	// mostTimes is how often a stitch may repeat one passage: bullions wrap
	// some twenty times, nothing known repeats more than forty.
	mostTimes = 100
	// mostReps is how often a definition may send the maker back to a star.
	mostReps = 20
)

// A sequence is what stands between two brackets.
type sequence struct {
	nodes            []node
	star, starEnd    int // where a "*" stands among nodes, and where the second; -1 for none
	sentence, clause int // where the sentence and the clause began
}

// read reads the whole text.
func (r *reader) read() []node {
	r.lost = -1
	var nodes []node
	for r.tok().kind != endToken {
		nodes = append(nodes, r.sequence(0)...)
		if r.tok().kind != endToken {
			r.at++ // a bracket that closes nothing
		}
	}
	return nodes
}

// sequence reads up to a closing bracket, which it leaves, or the end.
func (r *reader) sequence(depth int) []node {
	s := sequence{star: -1, starEnd: -1}
	for {
		t := r.tok()
		if t.kind == endToken || t.kind == markToken && isCloser(t.low) {
			r.giveUp(&s)
			return s.nodes
		}
		if t.kind == markToken {
			r.readMark(&s, t, depth)
			continue
		}
		from := r.at
		if r.instruction(&s) {
			r.settle(&s, from)
			continue
		}
		r.at = from + 1
		if r.lost < 0 && remarks[t.low] && !r.clauseHas("yo", "insert", "pull", "draw") {
			r.toClauseEnd()
			continue
		}
		if fill[t.low] {
			continue
		}
		if r.lost < 0 {
			r.lost = from
		}
	}
}

// readMark takes a bracket, a star or a stop.
func (r *reader) readMark(s *sequence, t token, depth int) {
	switch t.low {
	case "(", "[", "{":
		r.giveUp(s)
		r.group(s, t, depth)
		return
	case "*":
		r.giveUp(s)
		r.at++
		r.readStar(s)
		return
	case ".", ";", "!":
		r.giveUp(s)
		if t.low != ";" {
			s.sentence = len(s.nodes)
			r.unfinished = false
		}
		s.clause = len(s.nodes)
	case ",", ":":
		r.giveUp(s)
		s.clause = len(s.nodes)
	}
	r.at++
}

// settle puts words lost before an instruction ahead of it.
func (r *reader) settle(s *sequence, from int) {
	if r.lost < 0 {
		return
	}
	at := r.at
	r.at = from
	lost := r.takeLost()
	r.at = at
	if lost.op == 0 {
		return
	}
	s.nodes = append(s.nodes, lost)
}

// giveUp notes the words since the last instruction as not understood.
func (r *reader) giveUp(s *sequence) {
	if lost := r.takeLost(); lost.op != 0 {
		s.nodes = append(s.nodes, lost)
	}
}

func (r *reader) takeLost() node {
	if r.lost < 0 || r.lost >= r.at {
		r.lost = -1
		return node{}
	}
	first, last := r.lost, r.at-1
	r.lost = -1
	if r.harmless(first, last) {
		return node{}
	}
	lost := node{op: opUnread, start: r.toks[first].start, end: r.toks[last].end}
	for i := first; i <= last; i++ {
		if aboutLoops[r.toks[i].low] {
			lost.n = 1
		}
	}
	return lost
}

// harmless tells whether words that were not read give the maker nothing to
// do: "taking care not to twist", "cluster made", "this forms a small ball".
func (r *reader) harmless(first, last int) bool {
	if idle[r.toks[first].low] {
		return true
	}
	for i := first; i <= last; i++ {
		switch r.toks[i].low {
		case "see":
			return r.is(i+1-r.at, "note", "notes", "note:")
		case "knot", "made", "completed", "complete", "formed", "done":
			return true
		}
	}
	return false
}

func (r *reader) tok() token { return r.toks[r.at] }

// peek is the token n further on.
func (r *reader) peek(n int) token { return r.toks[max(0, min(r.at+n, len(r.toks)-1))] }

// word takes the next token if it is one of the words.
func (r *reader) word(words ...string) bool {
	t := r.tok()
	if t.kind == endToken {
		return false
	}
	for _, w := range words {
		if t.low == w {
			r.at++
			return true
		}
	}
	return false
}

// is tells whether the token n further on is one of the words.
func (r *reader) is(n int, words ...string) bool {
	t := r.peek(n)
	for _, w := range words {
		if t.low == w {
			return true
		}
	}
	return false
}

func isCloser(mark string) bool { return mark == ")" || mark == "]" || mark == "}" }

// add appends a node that began at token from and ends before the next.
func (r *reader) add(s *sequence, from int, n node) {
	n.start, n.end = r.toks[from].start, r.toks[max(from, r.at-1)].end
	s.nodes = append(s.nodes, n)
}

// fill is words that may stand between instructions and say nothing of their own.
var fill = wordSet("and then the a an to now of so on work make with all again once next begin start as in " +
	"st stitch directed indicated following steps follows made into following: up each together once also or " +
	"working worked work: is are you your for it this them same hook close closing secure eye return forward pass")

// remarks is words that begin a clause which orders nothing.
var remarks = wordSet("taking being careful note this these push pushing tug creates forms")

// idle is words that begin a remark which gives nothing to do.
var idle = wordSet("taking being careful note this these push pushing tug counts count made creates forms form " +
	"should will may be careful always usually typically special note:")

// aboutLoops is words that move loops: where they are not understood, the loops
// on the hook are unknown from there on, which a node's n of 1 says.
var aboutLoops = wordSet("loop loops lp lps hook yo yoh yrh yarn insert pull draw through wrap drop")

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for i := 0; i < len(words); {
		j := i
		for j < len(words) && words[j] != ' ' {
			j++
		}
		set[words[i:j]] = true
		i = j + 1
	}
	return set
}
