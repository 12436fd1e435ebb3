// Package fabric works a design stitch by stitch, one size at a time, and
// keeps the result as a graph: every stitch knows the place it was worked into.
//
// Work never stops at a mistake. It records a Fault, goes on from the count
// the pattern claims or from the count it made, whichever the next row fits,
// and holds back what only follows from the slip before.
//
// A Fabric is read-only once built. Rows that are the same row again share one
// Body: they were worked once and are counted often.
package fabric

import (
	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// A Fabric is a design as worked in one size.
type Fabric struct {
	Size     int // index into design.Sizes
	Pieces   []*Piece
	Faults   []Fault
	Outcomes map[*design.Line]Outcome // what became of each instruction line
	Customs  []Custom                 // conventions the pattern left unsaid, and how they were taken
	Chains   []TurningChain           // every turning chain as written, once a line
	PickUps  []PickUpCount            // stitches told to be worked along row-ends
	Rows     int                      // rows and rounds worked
	Stitches int                      // stitches made, chains and slip stitches included
}

// A Piece is one run of work, from its foundation to the last row on it.
type Piece struct {
	Name     string // its section's heading, "" for none
	Line     *design.Line
	Start    int // chains of the foundation, or stitches of a foundation row
	Hook     int // chains left free at the hook by the first row
	Rows     []*Row
	Sections []*design.Section // every section that works on it
	Splits   []*Split
}

// A Split is a row that left stitches unworked for another side.
type Split struct {
	Base  *Row     // the row both sides stand on; nil on the foundation
	Sides [][]*Row // the rows of each side, in the order worked
	Names []string // the heading each side was worked under
	Left  int      // stitches left unworked by the first side
}

// A Row is one row or round, as worked in one size.
type Row struct {
	Number int    // as printed; 0 for a row without a number
	Label  string // "Row 12", "Rnd 3", "Next row"
	Round  bool
	Side   notation.Side // which face is toward the maker, NoSide if never told
	Line   *design.Line  // the line that orders this row
	Words  *design.Line  // the line whose words were worked: another for "Rep Row 2"
	Piece  *Piece
	Below  *Row // the row it stands on, nil on a foundation
	*Body
}

// A Body is the stitches of a row. Rows that are the same again share it.
type Body struct {
	Stitches []Worked // in the order the hook makes them
	Top      []Item   // the edge it leaves for the next row, in the same order
	Counting int      // items of Top that count as stitches
	Made     int      // stitches made, each chain of a space counted
	// Patched tells that Top was mended to a claimed count after a fault, so
	// Stitches and Top do not agree.
	Patched bool

	id       int
	reversed []Item
	kinds    map[stitch.Kind]int
}

// A Worked is one stitch as made.
type Worked struct {
	Into int32 // index of the place into the Top of the row below; -1 for none (a chain, a ring, a row-end)
	Kind stitch.Kind
	N    uint16 // chains, for a chain space or turning chain; 1 for a stitch
	Uses uint8  // places used, from Into on in working order
	Down uint8  // rows further down than the row below
	Loop notation.Loop
	Flag Flags // Tch for a turning chain
}

// An Item is one place on an edge: the top of a stitch, a chain space, a
// turning chain, a chain of a foundation, or a row-end.
type Item struct {
	Kind   stitch.Kind // stitch.None for a chain space or row-end
	Chains uint16      // chains of a space, or of the turning chain
	Flag   Flags
}

// Flags tell about an Item.
type Flags uint16

const (
	Counts   Flags = 1 << iota // counts as a stitch
	Tch                        // is a turning chain
	Idle                       // is there, but neither counts nor is meant to be worked
	AChain                     // is a single chain of a foundation
	EndOfRow                   // is a row-end
	Marked                     // carries a marker
	Ring                       // is a ring
	Gap                        // is a gap between stitches worked apart, with no chain over it
	Opens                      // is the first of a group of stitches, such as a shell
	Closes                     // is the last of a group
)

func (it Item) is(f Flags) bool { return it.Flag&f != 0 }

// space tells whether the item is a chain space.
func (it Item) space() bool {
	return it.Kind == stitch.None && it.Chains > 0 && it.Flag&(Tch|AChain) == 0
}

// An Outcome is what became of an instruction line.
type Outcome uint8

// Outcomes, from the best. A line is as bad as its worst size.
const (
	NotReached Outcome = iota // orders nothing in this size
	Done                      // worked stitch by stitch
	ByMeasure                 // worked to a length, through the gauge
	NotWorked                 // could not be worked; Fabric.Faults says why
)

// A Custom is a convention that no word of the pattern settles, and how it was
// taken.
type Custom struct {
	Line   *design.Line
	Span   notation.Span
	Row    string
	N      int         // chains of the turning chain; 0 for chain spaces
	Counts bool        // taken to count as a stitch
	Extra  bool        // and the first stitch is worked all the same
	As     stitch.Kind // the stitch that follows it
	Tried  bool        // custom did not come out, this did
}

// A TurningChain is a chain at the start of a row, as written.
type TurningChain struct {
	Line   *design.Line
	Span   notation.Span
	Row    string
	N      int
	Counts bool
	Sure   bool        // a word of the pattern says whether it counts
	Wide   bool        // it is said to go on to a space
	AtHook bool        // it is the chains of the foundation left free at the hook
	First  stitch.Kind // what it stands for, or the first stitch after it
	Post   bool        // the first stitch after it is worked around a post
}

// A PickUpCount is a told number of stitches worked along row-ends.
type PickUpCount struct {
	Line    *design.Line
	Span    notation.Span
	Made    int
	RowEnds int
}
