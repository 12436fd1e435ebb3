package fabric

import (
	"strconv"

	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// A worker works one design in one size, line by line.
type worker struct {
	d     *design.Design
	size  int
	conv  conventions
	fab   *Fabric
	kinds []kindInfo

	piece      *Piece
	section    *design.Section
	next       *edge      // what the next row is worked into; nil for nothing yet
	claim      *edge      // the same as the pattern claims it, after a fault
	lastRow    *Row       // the row next stands on
	open       []*opening // sides left unworked, the newest last
	pending    *notation.Chains
	turned     bool // the work has been turned since the last row
	facing     notation.Side
	otherFace  bool // a label said the other side: it may be right
	fastened   bool
	dark       bool  // what is worked into is not known: lines before were not worked
	foundation *Body // of this piece
	hookChains int   // chains left free at the hook by the first row

	number      int  // of the last row with a number
	loose       int  // rows without a number since: the next label counts all of them or none
	mislabelled bool // a label of this piece has a wrong number
	meant       int  // the number it should have had, after a wrong label; 0 otherwise
	anyLabel    bool // how many rows there are is in doubt: the next label is not held to its number
	begun       bool
	wordsOf     map[int]*words
	named       map[string]*words
	order       []*words // words of every row, in order, for "last 4 rows"
	andAll      []*words // "Row 2 and all WS rows"
	split       *Split
	restarts    []int // numbers a row may start again from: sides of a split

	ready    bool                  // next lies as the row will meet it
	flipNext bool                  // the face turns before the next row
	held     bool                  // what does not come out now only follows from a slip before
	rejoined bool                  // yarn was joined since the last row with a number
	full     bool                  // the pattern is longer than any can be
	slips    map[*design.Line]bool // lines whose words hold a slip: it comes again with them
	told     bool                  // and that was said
	inDoubt  bool                  // a fault of the line at hand explains what its count is not
	later    map[int]*order        // rows named ahead: "Rows 4 and 6"

	chainsSeen map[notation.Span]bool
	memo       map[memoKey]*result
	bodies     map[uint64][]*Body
	spare      Body // room of a row that was the same as one kept
	ids        int
	undecided  bool // a convention was taken by custom
	spacesMade bool
	firstSpace *design.Line // the first line that makes a chain space
	pickUps    []pickUp
}

// words are the steps of a row, to be worked again when it is referred to.
type words struct {
	line   *design.Line
	steps  []notation.Step
	round  bool
	label  string
	number int           // of the row they were first worked as; 0 for none
	delta  int           // stitches the row added
	side   notation.Side // that faced when they were first worked
}

// An opening is the part of an edge that a side left unworked.
type opening struct {
	edge  *edge
	claim *edge
	row   *Row          // the row below it
	side  notation.Side // which side faced when it was left
	num   int           // number of the row that left it
	split *Split
}

// A pickUp is a told number of stitches along row-ends.
type pickUp struct {
	line  *design.Line
	n     *notation.Number
	made  int
	along int
}

// kindInfo is what a run needs to know of a stitch, at hand.
type kindInfo struct {
	uses       int
	made       int
	single     bool
	item       Item
	items      []Item
	base       stitch.Kind
	foundation bool
	open       bool
}

// kind returns what a run needs to know of a stitch.
func (w *worker) kind(k stitch.Kind) *kindInfo {
	for int(k) >= len(w.kinds) {
		w.kinds = append(w.kinds, w.kindInfo(stitch.Kind(len(w.kinds))))
	}
	return &w.kinds[k]
}

func (w *worker) kindInfo(k stitch.Kind) kindInfo {
	if k == stitch.None || int(k) >= w.d.Stitches.Len() {
		return kindInfo{uses: 1, made: 1, single: true, item: Item{Kind: k, Flag: Counts}, items: []Item{{Kind: k, Flag: Counts}}, base: k}
	}
	s := w.d.Stitches.Stitch(k)
	info := kindInfo{uses: s.Uses, base: s.Base, foundation: s.Family == stitch.FoundationStitch, open: s.Family == stitch.Open}
	if k == stitch.Increase || k == stitch.Decrease {
		info.uses, info.base = 1, stitch.SingleCrochet
		if k == stitch.Decrease {
			info.uses = 2
		}
	}
	if info.base == stitch.None {
		info.base = k
	}
	for _, e := range s.Edge {
		it := Item{Kind: e.Kind, Chains: uint16(e.Chains), Flag: Counts}
		if e.Chains > 0 {
			it = Item{Chains: uint16(e.Chains)}
			if w.conv.spaceCounts(e.Chains) {
				it.Flag = Counts
			}
			info.made += e.Chains
		} else {
			info.made++
		}
		info.items = append(info.items, it)
	}
	if info.open {
		groupItems(info.items)
	}
	if info.made == 0 {
		info.made = max(1, s.YarnOvers)
	}
	if len(info.items) == 1 {
		info.single, info.item = true, info.items[0]
	}
	return info
}

// goesBy tells whether a stitch may be called by the name of want: it is that
// stitch, or a form of it.
func (w *worker) goesBy(is, want stitch.Kind) bool {
	if is == want {
		return true
	}
	if is == stitch.None || want == stitch.None {
		return false
	}
	return w.kind(is).base == want
}

// together is the stitch that works two of k as one.
func (w *worker) together(k stitch.Kind) stitch.Kind {
	if k == stitch.None {
		k = stitch.SingleCrochet
	}
	name := w.d.Stitches.Name(k, stitch.US) + "2tog"
	if t, ok := w.d.Stitches.Lookup(name, stitch.US); ok {
		return t
	}
	return stitch.Decrease
}

// tall gives the plain stitch whose turning chain a row needs.
func (w *worker) tall(k stitch.Kind) stitch.Kind {
	if k == stitch.Increase || k == stitch.Decrease {
		return stitch.SingleCrochet
	}
	if b := w.kind(k).base; b != stitch.None {
		return b
	}
	return k
}

// prevailing is the stitch that an edge has most of.
func (w *worker) prevailing(e *edge) stitch.Kind {
	if e == nil {
		return stitch.SingleCrochet
	}
	tally := make([]int, w.d.Stitches.Len()+1)
	best := stitch.SingleCrochet
	for _, it := range e.body.Top {
		if it.is(Counts) && it.Kind != stitch.None && it.Kind != stitch.Chain && int(it.Kind) < len(tally) {
			k := w.kind(it.Kind).base
			if tally[k]++; tally[k] > tally[best] {
				best = k
			}
		}
	}
	return best
}

// rowEnds is how many rows the piece has along its side.
func (w *worker) rowEnds() int {
	if w.piece == nil {
		return 0
	}
	return min(len(w.piece.Rows), maxRow)
}

// say keeps what a row says of its turning chain for the rows after it.
func (w *worker) say(n int, said *notation.Counts) {
	for _, rule := range w.conv.turning {
		if rule.n == n && rule.counts == said {
			return
		}
	}
	w.conv.turning = append(w.conv.turning, turningRule{n, said})
}

func itoa(n int) string { return strconv.Itoa(n) }

// spanOf is the span of a number, or of what it belongs to.
func spanOf(n *notation.Number, or notation.Span) notation.Span {
	if n == nil || n.Span.IsZero() {
		return or
	}
	return n.Span
}

// fault records a fault, with the row and piece at hand.
func (w *worker) fault(f Fault) {
	if w.piece != nil && f.Piece == "" {
		f.Piece = w.pieceName()
	}
	w.fab.Faults = append(w.fab.Faults, f)
}

// pieceName is the heading under which the work stands.
func (w *worker) pieceName() string {
	if w.section != nil && w.section.Title != "" {
		return w.section.Title
	}
	if w.piece != nil {
		return w.piece.Name
	}
	return ""
}

// outcome notes what became of a line; the worst stays.
func (w *worker) outcome(line *design.Line, o Outcome) {
	if w.fab.Outcomes[line] < o {
		w.fab.Outcomes[line] = o
	}
}

// startPiece begins a new piece.
func (w *worker) startPiece(line *design.Line) {
	w.piece = &Piece{Line: line}
	if line.Section != nil {
		w.piece.Name = line.Section.Title
		w.piece.Sections = append(w.piece.Sections, line.Section)
	}
	w.dropEmpty()
	w.fab.Pieces = append(w.fab.Pieces, w.piece)
	w.next, w.claim, w.lastRow, w.open, w.pending, w.split = nil, nil, nil, nil, nil, nil
	w.turned, w.facing, w.otherFace, w.fastened, w.dark = false, notation.NoSide, false, false, false
	w.ready, w.flipNext, w.held, w.later = false, false, false, map[int]*order{}
	w.meant, w.anyLabel, w.mislabelled = 0, false, false
	w.foundation, w.hookChains, w.number, w.loose, w.begun = nil, 0, 0, 0, false
	w.wordsOf, w.named, w.order, w.andAll, w.restarts = map[int]*words{}, map[string]*words{}, nil, nil, nil
}

// dropEmpty takes back the last piece when nothing was made of it.
func (w *worker) dropEmpty() {
	if n := len(w.fab.Pieces); n > 0 && len(w.fab.Pieces[n-1].Rows) == 0 && w.fab.Pieces[n-1].Start == 0 {
		w.fab.Pieces = w.fab.Pieces[:n-1]
	}
}

// enter notes the section a line stands in.
func (w *worker) enter(line *design.Line) {
	if line.Section == w.section {
		return
	}
	w.section = line.Section
	if w.piece == nil || line.Section == nil {
		return
	}
	for _, s := range w.piece.Sections {
		if s == line.Section {
			return
		}
	}
	w.piece.Sections = append(w.piece.Sections, line.Section)
}

// flip is the other side.
func flip(s notation.Side) notation.Side {
	switch s {
	case notation.RightSide:
		return notation.WrongSide
	case notation.WrongSide:
		return notation.RightSide
	}
	return s
}
