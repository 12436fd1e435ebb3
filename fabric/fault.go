package fabric

import (
	"rowproof/design"
	"rowproof/notation"
)

// FaultKind tells what does not come out.
type FaultKind uint8

const (
	WrongCount        FaultKind = iota + 1 // A stated, B made; Text the unit
	Remainder                              // a repeat leaves B over: A a time, C times, D places in all
	RunsOut                                // the row needs A more than the D the row below has
	Unworked                               // A places left without a word
	NoPlace                                // Text is not on the edge
	NoRow                                  // Row A is referred to, and not there
	RangeUneven                            // A rows in the label, sets of B
	RangeTimes                             // A rows in the label, C times a set of B; B 0: C rows in all
	BackwardRange                          // Rows A-B with B before A
	LabelGap                               // Row A where B should follow Row C and D rows without a number
	LabelTwice                             // Row A stands in Text too
	WrongSide                              // the label's side is not the one that faces
	RepWithoutStar                         // rep from * with no star
	StarWithoutRep                         // a star that nothing repeats
	Endless                                // a repeat that uses no stitch
	TooLong                                // more stitches than any pattern has
	TurningPlace                           // Ath ch of a turning chain whose top is the Bth
	JoinPlace                              // joined into ch-A, the round began with ch-B
	ChainTooShort                          // Ath ch from hook of B chains
	SidesDiffer                            // two sides end with A and B
	NotUnderstood                          // Text was not understood
	NoEdge                                 // nothing to work into
	NoGauge                                // a length without a gauge to turn it into rows
	LeftCount                              // "leave N unworked": A said, B left
	ShapeRows                              // a shaping plan takes B rows, the label has A
	PickUp                                 // A stitches along B row-ends
	BadNumber                              // a list or a live number without a value
	SilentSkip                             // A stitches passed over without a word
	OtherKind                              // into Text, the row below has others
	CountKind                              // the number fits, the kind named does not
	TurningArithmetic                      // ch A counts as Text and ch B: that takes C; B -1: said to count as A
	DecUneven                              // a decrease over A places uses B each
	Nothing                                // an order to make or use none, in every size
	OtherFace                              // shaped Row B is worked again as Row A, with the other face
	SameFace                               // Rows A and B are worked one after the other, and both show side C
	NoneLeft                               // yarn joined in Row A, the places left are of Row B
	OffMarker                              // a decrease over A places is not centred on the marked st
	CountTwice                             // Text is stated twice
	TallChain                              // ch A before a stitch that takes ch B
)

// A Fault is one thing that does not come out, in one size.
type Fault struct {
	Kind       FaultKind
	Line       *design.Line
	Span       notation.Span
	Row        string // "Row 12"
	Piece      string
	A, B, C, D int
	Text       string
	Soft       bool // it works and may trouble someone
	Settled    Settled
}

// Settled tells which of two numbers the rows after a WrongCount fit.
type Settled uint8

// What the rows after fit.
const (
	Unsettled Settled = iota
	ByMade            // the number made: the stated count is the slip
	ByStated          // the number stated: the stitches are the slip
	ByNeither         // neither
)
