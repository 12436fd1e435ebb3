// Package stitch knows what each stitch is: a run of hook moves on a stack of
// loops, the places it goes into, what it leaves on the edge for the next row,
// its names in US and UK terms.
//
// The dictionary is a text file in the trade's own words (dictionary.txt),
// read by the same reader that reads a designer's Special Stitches, so a new
// stitch needs no new code.
package stitch

import "rowproof/diag"

// Terms tells which of the two English naming systems a pattern uses.
type Terms uint8

const (
	UnknownTerms Terms = iota
	US
	UK
)

// String returns "US", "UK" or "".
func (t Terms) String() string { return [...]string{"", "US", "UK"}[t] }

// A Kind is a stitch of a Dictionary, as an index into it. 0 is no stitch.
type Kind uint16

// The kinds every dictionary has, under the same index.
const (
	None Kind = iota
	Chain
	SlipStitch
	SingleCrochet
	HalfDouble
	DoubleCrochet
	Treble
	DoubleTreble
	TripleTreble
	ExtendedSingle
	// Increase and Decrease are the toy-pattern words "inc" and "dec": two of
	// the row's stitch in one place, or two places as one. The row decides
	// the stitch; nothing said means sc.
	Increase
	Decrease
)

// A Stitch is what the dictionary knows of one stitch.
type Stitch struct {
	Kind           Kind
	US, UK         string     // abbreviations: "sc", "dc"
	USName, UKName string     // full names: "single crochet", "double crochet"
	Also           []string   // further US names: "trc", "blsc"
	AlsoUK         []string   // further UK names: "ttr", "tr/rf"
	Moves          []Move     // the hook moves in order, repeats written out; nil when not understood
	Uses           int        // places of the row below it uses: sc2tog 2, most 1, picot 0
	Edge           []EdgeItem // what it leaves for the next row, in order of making
	Base           Kind       // the plain stitch it is a form of: sc2tog -> sc; itself for a plain one
	Family         Family
	Legs           int       // unfinished or finished stitches it is made of: 3 of a 3-dc cluster; else 0
	YarnOvers      int       // loops of yarn laid, the measure of how much it takes
	Height         float64   // in turning chains: sl st 0, sc 1, hdc 2, dc 3, tr 4
	TurningChain   int       // chains that bring the hook to its height
	Post           Side      // the post is worked from this side; NoSide for the top of a stitch
	Below          int       // rows below the usual one: spike 1
	Defined        diag.Span // place of the definition, for a designer's own stitch
	Text           string    // the definition as written
	Unread         []string  // parts of the definition that were not understood
}

// An EdgeItem is one thing a stitch leaves on the edge: a stitch top, or, with
// Chains more than 0 and Kind None, a chain space.
type EdgeItem struct {
	Kind   Kind
	Chains int
}

// Family groups stitches by how they are made.
type Family uint8

// The families.
const (
	Plain            Family = iota // sc, dc, esc
	Together                       // sc2tog: places drawn into one
	Closed                         // cluster, bobble, puff, popcorn: many legs, one top
	Open                           // shell, V-stitch: many tops from one place
	PostStitch                     // FPdc: around the stem
	FoundationStitch               // fsc: makes its own chain
	Picot                          // chains on top of a stitch
	Spike                          // into a row further down
)

// Side is the side from which a post is worked.
type Side uint8

// The sides.
const (
	NoSide Side = iota
	Front
	Back
)
