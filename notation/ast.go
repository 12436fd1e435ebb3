package notation

import (
	"rowproof/diag"
	"rowproof/stitch"
)

// A Span is a run of bytes in the document.
type Span = diag.Span

// A Line is one instruction as read: "Row 3 (WS): Ch 1, sc in each st across,
// turn. (24 sc)". Lines without a label ("Ch 25." or "Fasten off.") are Lines
// too. A Line is never missing: what was not understood stands in Unread, and
// as *Unknown among the steps, so that nothing is dropped in silence.
type Line struct {
	Span
	Label  *Label   // nil when the line has none
	Steps  []Step   // in the order the hook makes them
	Counts []*Count // stated counts, in the order written; usually one
	Unread []Span   // words that were not understood, in order
}

// RowOrRound tells flat work from circular.
type RowOrRound uint8

const (
	UnknownRow RowOrRound = iota // "7." or "R7:" with nothing to tell
	Row
	Round
)

// A Label is what stands before the instruction: "Row 3 (WS):", "Rnds 5-8:",
// "Next row:", "Dec row (RS):", "1st row:".
type Label struct {
	Span
	Is RowOrRound
	// Ranges holds the numbers of the label. "Row 4" is one range with From
	// and To equal; "Rows 4-9" one; "Rows 4 and 6" two; "Rows 2-70 (2-76, 2-84)"
	// one whose From and To have a value a size. Empty for "Next row".
	Ranges []Range
	Side   Side
	Next   bool    // "Next row", "Next 3 rows"
	Count  *Number // the 3 of "Next 3 rows"; nil is 1
	Name   string  // "Dec", "Foundation", "Set-up", "Rib": lower case, "" for none
	Remark string  // other words in brackets: "inc", "dec row"; lower case
	// AndAll is the kind of later row the line also stands for: "ws", "rs",
	// "even", "odd", "" for none ("Row 2 and all WS rows:").
	AndAll string
}

// A Range is a run of row numbers, both ends included.
type Range struct{ From, To *Number }

// Side is the face of the work toward the maker.
type Side uint8

const (
	NoSide Side = iota
	RightSide
	WrongSide
)

// A Number is a count as written: "24", "twelve", "twice" (2), "24 (26, 28)",
// "{body + 1}". A live number in braces has its expression in Live and no
// Values; design knows what it stands for.
type Number struct {
	Span
	Values []Value // one for all sizes, or one a size in the order written
	Live   string  // text between the braces, trimmed; "" for a typed number
}

// A Value is one entry of a Number. None is "-", "–" or "—": the line does not
// apply to that size.
type Value struct {
	N    int
	None bool
}

// A Measure is a length as written: "14 (14½, 15) in [35.5 (37, 38) cm]".
// Values are in Unit.
type Measure struct {
	Span
	Values []float64
	Live   string
	Unit   Unit
	Also   *Measure // the same lengths in the other unit, as printed beside
}

// Unit is a unit of length.
type Unit uint8

const (
	NoUnit Unit = iota
	Inch
	Centimetre
	Millimetre
)

// A Step is one thing the maker does, or is told. The types below, and no
// others, are Steps.
type Step interface{ At() Span }

// Work is the making of stitches: "sc in next st", "2 dc in each of next 3
// sts", "sc2tog over next 2 sts", "3 hdc", "fsc 40", "shell in next ch-2 sp".
//
// Times is how many are made in one place when a place is named, and how many
// are made altogether, one in each next place, when none is ("sc 7", "12 hdc").
// Places holds one place for each "in ... and in ...": "dc in next dc and in
// each dc across, working last dc in top of tch" has two places and a Last.
type Work struct {
	Span
	Times  *Number     // nil is one
	Stitch *StitchName // never nil
	Places []*Place    // nil when no place is named
	Last   *Place      // where the last one goes, if told apart; nil otherwise
	Counts *Counts     // of the chains skipped at the hook: "(skipped ch-3 counts as dc)"; nil when not told
}

// A StitchName is a stitch as named in the text.
type StitchName struct {
	Span
	Kind   stitch.Kind // 0 for a name that no dictionary has
	Text   string      // as written
	Loop   Loop        // "BLO sc", "sc in BLO": which loop of the place
	Plural bool
}

// Loop is the part of a stitch's top, or the post, that the hook goes under.
type Loop uint8

const (
	BothLoops Loop = iota
	FrontLoop
	BackLoop
	ThirdLoop
	Post // "around the post of"; the stitch name tells front from back
)

// A Place is where stitches go.
type Place struct {
	Span
	Which  Which
	N      *Number     // the N of "next N", "each of next N", "last N", "Nth ch from hook", "first N"; nil is 1
	What   What        // what kind of place
	Kind   stitch.Kind // the stitch named, when What is AStitch ("next dc"); 0 otherwise
	Chains *Number     // the n of "ch-n sp" or "2nd ch of ch-n"; nil when not said
	Loop   Loop
	Below  *Number // "2 rows below": how many rows further down than usual
	Of     *Place  // "3rd ch of tch": N is 3, What is Chain, Of the tch; "sp before next st": Of is the stitch
	To     *Limit  // where "each ..." ends; nil is the end of the row
	Then   *Place  // worked over both at once: "sc2tog over next st and next ch-1 sp", "in ch-sp and st at once"
	First  bool    // with Same: "same st as first sc"
	New    bool    // "each X just made", "last st made": in this row, not the one below
}

// Which picks places along the edge.
type Which uint8

const (
	Next      Which = iota // next, next N, each of next N
	Each                   // each ... to the limit
	First                  // first, first N
	Last                   // last, last N
	Same                   // same st, same st as join, st at base of tch
	Nth                    // "2nd ch from hook", "3rd ch of tch"
	Centre                 // center st, center ch
	Top                    // top of tch, top of beg ch-3
	Any                    // any ch-2 sp
	Between                // sp between next 2 sts
	Before                 // sp before next st
	Remaining              // "next unworked st", "first skipped st", "rem sts"
	Marked                 // marked st
	Ring                   // in ring, in magic ring
	Edge                   // row-ends, evenly along edge
)

// What is the kind of place.
type What uint8

const (
	AnyStitch    What = iota // st, sts
	AStitch                  // a named stitch: Kind says which
	Space                    // ch-n sp, sp, lp, loop
	Chain                    // a single ch of a foundation, a tch or a space
	TurningChain             // tch, beg ch-3
	RowEnd                   // row-end, end of row, edge
	ARing
	StitchOrSpace // "each st and ch-1 sp across", "each st and sp"
	Foundation    // "foundation ch", "opposite side of foundation ch", "rem lp of ch"
	Corner        // corner sp, corner st
	StitchOrChain // "each st and each ch around": the chains of a space one by one
)

// A Limit is where a run along the edge stops.
type Limit struct {
	Span
	End    bool    // across, around, to end: the whole rest
	Last   *Number // "to last 3 sts": how many are left
	What   What    // unit of Last, or the thing reached for Next
	Kind   stitch.Kind
	Chains *Number
	Next   bool // "to next ch-1 sp", "to marker", "to tch", "to corner", "to marked st": up to, not including
	Marked bool
}

// Chains makes chains: "ch 3", "3ch", "ch 3 (counts as dc)". Counts is nil
// when the line does not say whether it counts.
type Chains struct {
	Span
	N      *Number
	Counts *Counts
}

// Counts says what a turning chain stands for: "counts as dc, ch 1", "does not
// count as a st". Throughout is "here and throughout".
type Counts struct {
	Span
	As         stitch.Kind // 0 with Not unset: "counts as a st"
	Times      *Number     // the 1 of "counts as 1tr"; nil when not told
	Chains     *Number     // further chains that make a space, nil for none
	Skipped    *Number     // "and 1 missed ch": chains of the foundation left under it
	Not        bool
	Of         *Number // the chains spoken of: the 3 of "skipped ch-3 counts as dc"; nil when not told
	Throughout bool
}

// Skip passes over places: "sk next 2 sts", "miss 1tr", "sk next ch-1 sp".
// "sk first tr and next ch-sp" has two places.
type Skip struct {
	Span
	Places []*Place
	Counts *Counts // "miss 3ch (count as 1tr)"; nil when not told
}

// Group is a bracket: "(dc, ch 1, dc) in next st", "[sc, ch 3] 4 times",
// "(2 dc, ch 1) 3 times in next sp", "[dc in next 2 sts] to last 2 sts".
type Group struct {
	Span
	Body  []Step
	Times *Times   // nil: once
	In    []*Place // nil: each step has its own place
}

// Star is a passage marked with a star and worked again: "*A; rep from *
// across". Body is the passage, From the mark.
type Star struct {
	Span
	Mark  string // "*", "**", "†"
	Body  []Step
	Times *Times // from the rep clause; nil when the rep is missing
	Rep   Span   // the rep clause
}

// Stop is a mark inside a Star or Group where the last repeat ends, "**" in
// "*A**, B; rep from * around, ending last rep at **".
type Stop struct {
	Span
	Mark string
}

// Orphan is a "rep from *" with no star to go back to.
type Orphan struct {
	Span
	Times *Times
}

// Times says how often a passage is worked.
//
// Exactly one of N, To and Fit holds. More counts the first working apart:
// "rep from * 4 more times" is N 4, More: five in all. A star with "rep from *
// 5 times" and no "more" is read with More set too, as custom has it (Unsure
// is then set), and a bracket with "5 times" without More.
type Times struct {
	Span
	N      *Number
	More   bool
	Unsure bool   // "rep from * 5 times": 5 or 6? custom says 6
	To     *Limit // across, around, to end, to last N sts, to next ch sp
	Fit    bool   // "rep from *" with nothing said: to the end of the row
	EndAt  string // "ending last rep at **": the mark
	Ending []Step // "ending last rep with sc in next st": instead of what no longer fits
	Last   *Place // "working last dc in top of tch": where the last stitch of all goes
	Omit   []Step // "omitting last ch-3": left out of the last repeat
}

// Turn turns the work. Not is "do not turn".
type Turn struct {
	Span
	Not bool
}

// Join closes a round with a slip stitch, or joins a chain into a ring. Not is
// "do not join".
type Join struct {
	Span
	Place  *Place      // nil: the first stitch
	Stitch stitch.Kind // the joining stitch, usually slip stitch
	Ring   bool        // "to form ring"
	Not    bool
}

// FastenOff ends the yarn. Not is "do not fasten off".
type FastenOff struct {
	Span
	Not bool
}

// JoinYarn starts yarn afresh: "With RS facing, join A with sl st in first
// skipped st". With "standing dc in ..." Stitch is that stitch and counts.
type JoinYarn struct {
	Span
	Color    string
	Side     Side // the face said to be toward the maker
	Place    *Place
	Row      *Number // "in next unworked st of Row 30"
	Stitch   stitch.Kind
	Standing bool
	FromEnd  bool // at the other end of the row: "join at armhole edge", "at outer edge"
}

// Color changes colour: "change to B", "with A", "drop A".
type Color struct {
	Span
	Name string
	Drop bool
}

// Leave leaves places unworked: "leaving rem sts unworked" (N nil), "leave
// last 5 sts unworked", "leave tch unworked" (Place).
type Leave struct {
	Span
	N     *Number
	Place *Place
}

// MagicRing makes an adjustable ring. Close is "pull closed".
type MagicRing struct {
	Span
	Close bool
}

// OtherSide goes on along the other side of the foundation chain, or along the
// row-ends: "working along opposite side of foundation ch", "working along
// row-ends".
type OtherSide struct {
	Span
	RowEnds bool
}

// Evenly works stitches along an edge or spreads changes over a row: "work 72
// sc evenly along edge" (Along), "inc 6 sts evenly across" (Change 1),
// "dec 4 sts evenly" (Change -1).
type Evenly struct {
	Span
	N      *Number
	Stitch *StitchName
	Along  bool
	Change int
}

// Again works whole rows again: "Rep Rows 2 and 3", "Rep last 4 rows 7 (8, 9)
// more times", "as Row 6", "Rep Row 2 until piece measures 10 in".
type Again struct {
	Span
	Rows        []Range // the rows named; empty with Last or Name
	Last        *Number // "last 2 rows"; "last row" is 1
	Name        string  // "Dec row": lower case name without "row"
	Of          string  // "of Back", "as for Left Front": the piece, "" for this one
	Times       *Times  // nil: once, or as the label has it
	Until       *Extent
	Alternately bool        // "alternately", "rep Rows 2 and 3 alternately"
	Pattern     bool        // "work in pat", "cont in pat as established"
	Even        bool        // "work even", "work N rows even"
	RowCount    *Number     // "for 12 rows", "work 6 rows even"
	Stitch      *StitchName // the stitch of "work 10 rows of hdc"; nil when not told
	Ending      []Step      // "as Row 5, ending with dc in last st"
	Mirrored    bool        // "reversing shaping"
	EndSide     Side        // "ending with a WS row"
	EndRow      *Number     // "ending with a Row 3"
}

// Extent is a length to work to: "until piece measures 14 (14½, 15) in from
// beg", or "same number of rows as Back".
type Extent struct {
	Span
	Length *Measure
	From   string // "beg", "armhole", "marker", "": lower case as written
	SameAs string // a piece
}

// Shape is shaping told in prose: "Dec 1 st at each end every 4th row 6 times,
// then every 6th row twice", "Work Inc row every 4th row 8 times".
type Shape struct {
	Span
	Change int     // +1 or -1 for each stitch of N; 0 when a named row is worked
	N      *Number // stitches at each place, nil is 1
	Where  string  // "each end", "neck edge", "beg", "armhole edge": lower case
	Ends   int     // how many places: 2 for each end, 1 for an edge, 0 not told
	Row    string  // the named row, "inc", "dec"
	Left   *Number // "until 10 sts rem"; nil when not told
	Plan   []Every
}

// Every is a part of a Shape's plan: each Nth row, so many times.
type Every struct {
	Span          // the comma before it taken in; zero for "alternately"
	Every *Number // 1 is every row, 2 every other row
	Times *Number
	Side  Side // "every RS row"
	Next  bool // "on next row"
}

// Rule is a sentence that governs other lines: "Ch-1 sps count as sts", "The
// turning ch 1 does not count as a st", "Ch 2 at beg of rnds does not count",
// "Join with sl st in first st at end of each rnd".
type Rule struct {
	Span
	About    RuleAbout
	Chains   *Number // the ch-1 or ch 2 spoken of; nil: any
	Counts   *Counts // for turning chains and spaces
	Multiple *Multiple
	Join     *Place
	Terms    stitch.Terms
	Loop     Loop // "working in back loops only" for a whole row or piece
}

// RuleAbout is what a Rule governs.
type RuleAbout uint8

const (
	AboutTurningChain RuleAbout = iota + 1
	AboutSpaces
	AboutJoins    // how rounds are joined
	AboutSpiral   // "do not join rounds", "worked in a spiral"
	AboutTurning  // "do not turn at the ends of rounds", "turn at end of each row"
	AboutMultiple // "Multiple of 6 sts + 1"
	AboutTerms    // "This pattern uses UK terms"
	AboutLoop     // "working in back loops only throughout"
)

// Multiple is the set of counts a stitch pattern fits: 6 + 1, and add more
// chains for the foundation. OfChains is "chain a multiple of".
type Multiple struct {
	Of, Plus, Add *Number
	OfChains      bool
}

// Marker places, moves or removes a marker, or weaves, sews, stuffs, blocks:
// something done that makes no stitch. Do names it: "place marker", "move
// marker", "sew", "weave", "block", "stuff", "cut", "fold", "pin", "other".
type Marker struct {
	Span
	Do    string
	Place *Place
}

// Remark is text that orders nothing: "(shell made)", "(see Notes)", "taking
// care not to twist".
type Remark struct{ Span }

// Unknown is text that was not understood.
type Unknown struct{ Span }

// Count is a stated count: "(24 sc)", "—48 (52, 56) sts", "24 dc, 12 ch-1 sps",
// "2 sts dec'd".
type Count struct {
	Span
	Items  []CountItem
	Change int  // +1 "inc'd", -1 "dec'd", 0 a total
	Each   bool // "each row"
	Remain bool // "rem"
	Apart  bool // the turning chain is listed apart: "(25tr + 3ch)"
}

// CountItem is one kind in a Count.
type CountItem struct {
	N      *Number
	What   What // AnyStitch for "sts" or nothing said
	Kind   stitch.Kind
	Chains *Number // the 1 of "ch-1 sps"
	Bare   bool    // no unit was written: "(54)"
	Text   string  // the unit as written
}

func (s *Work) At() Span      { return s.Span }
func (s *Chains) At() Span    { return s.Span }
func (s *Skip) At() Span      { return s.Span }
func (s *Group) At() Span     { return s.Span }
func (s *Star) At() Span      { return s.Span }
func (s *Stop) At() Span      { return s.Span }
func (s *Orphan) At() Span    { return s.Span }
func (s *Turn) At() Span      { return s.Span }
func (s *Join) At() Span      { return s.Span }
func (s *FastenOff) At() Span { return s.Span }
func (s *JoinYarn) At() Span  { return s.Span }
func (s *Color) At() Span     { return s.Span }
func (s *Leave) At() Span     { return s.Span }
func (s *MagicRing) At() Span { return s.Span }
func (s *OtherSide) At() Span { return s.Span }
func (s *Evenly) At() Span    { return s.Span }
func (s *Again) At() Span     { return s.Span }
func (s *Shape) At() Span     { return s.Span }
func (s *Rule) At() Span      { return s.Span }
func (s *Marker) At() Span    { return s.Span }
func (s *Remark) At() Span    { return s.Span }
func (s *Unknown) At() Span   { return s.Span }
