// Package design reads a pattern document, plain text or Markdown, with or
// without front matter, into sections, sizes, numbers and instruction lines
// with exact positions. It works no stitch.
//
// Read never fails on any bytes: what is wrong becomes a finding with its
// place, and reading goes on.
package design

import (
	"rowproof/diag"
	"rowproof/measure"
	"rowproof/notation"
	"rowproof/stitch"
)

// A Design is one pattern document, as read. It is read-only once built.
type Design struct {
	File     string
	Source   string // the whole file; every Span points into it
	Title    string
	Sizes    []string // as printed: "S", "M", "2X"; nil for a pattern in one size
	Terms    stitch.Terms
	TermsBy  string             // how the terms are known: "said so", "the words used", "custom"
	Stitches *stitch.Dictionary // the standard one with the pattern's own stitches
	Gauges   []Gauge
	Sections []*Section
	Lines    []*Line // every line that is not blank, in order
	Numbers  []*Named
	Seams    []Seam
	Front    *FrontMatter   // nil when there is none
	Findings []diag.Finding // what reading found: front matter, encoding, definitions, size lists

	// TermWords are the words that tell US from UK terms, each with how often
	// it stands in the pattern, in the order first met.
	TermWords []TermWord
	// SizesBy is how the sizes are known: "front matter", "size line", "the
	// number lists" or "" for a pattern in one size.
	SizesBy string
	SizesAt diag.Span // where the sizes are named; the first list when none names them

	places places
	live   map[string]liveNumber // live numbers of the text, worked out in every size
	byName map[string]*Named
}

// A TermWord is a word that stands in one of the two naming systems only.
type TermWord struct {
	Word  string // lower case: "hdc", "miss"
	Terms stitch.Terms
	Count int
	First diag.Span
}

// A Kind says what a line is for.
type Kind uint8

const (
	Prose Kind = iota
	Heading
	Note
	Definition
	Foundation
	Instruction
	Assembly
)

// A SectionKind says what a section holds.
type SectionKind uint8

const (
	OtherSection SectionKind = iota
	PieceSection
	NotesSection
	StitchSection // special stitches, stitch patterns, abbreviations
	GaugeSection
	SizesSection
	MaterialsSection
	AssemblySection
)

// A Section is a heading and the lines up to the next. Text before any heading
// is a section without a title.
type Section struct {
	Title string    // "Left Side of Neck"; "" before any heading
	Line  int       // of the heading, from 1
	Span  diag.Span // of the heading's text
	Level int       // Markdown level; plain text headings are 2, the title 1
	Kind  SectionKind
	Times *notation.Number // the 2 of "Sleeve (make 2)"; nil is one
	Lines []*Line
}

// A ReadState says how much of a line was understood.
type ReadState uint8

const (
	ReadNone ReadState = iota
	ReadPart
	ReadWhole
)

// A Line is one instruction, note or other line of text. A long instruction
// may run over several physical lines.
type Line struct {
	diag.Span
	Number  int // physical line it starts on, from 1
	Last    int // physical line it ends on
	Kind    Kind
	Section *Section
	Only    []bool         // by size: whether the line is for it ("Size L only"); nil is all
	Text    string         // Source of the Span, with Markdown marks blanked to spaces: offsets are kept
	Tree    *notation.Line // what was read; never nil for instruction, foundation, assembly, note
	Defines stitch.Kind    // the stitch a Definition defines; 0 otherwise
	Read    ReadState
	Unread  string // the words not understood, joined with " … "
	Pattern string // a named stitch pattern this line belongs to ("Mesh Pat"); "" otherwise
}

// A Named is a live number: a name of the front matter bound to a value a size.
type Named struct {
	Name   string
	Values []int // one a size
	Span   diag.Span
}

// A Gauge is a gauge line: so many stitches and rows over a length.
type Gauge struct {
	Span          diag.Span
	Stitches      float64 // over Width; 0 when not given
	Rows          float64 // over Height; 0 when not given
	Width, Height measure.Length
	Pattern       string // "moss stitch", "hdc"; lower case as written; "" not said
}

// A Seam names two edges that must meet.
type Seam struct {
	Span diag.Span
	A, B SeamEdge
}

// A SeamEdge is an edge of a piece: "Back top", "Front, Left Side of Neck top",
// "Sleeve side". Edge is "top" (stitches of the last row), "side" (rows) or
// "start" (stitches of the first row).
type SeamEdge struct {
	Piece, Part, Edge string
}

// FrontMatter is the YAML between the first two --- lines. Only what later
// stages need is kept here.
type FrontMatter struct {
	Span  diag.Span // from the first --- to the end of the last
	Units string    // "in", "cm" or ""
	Hook  string
	Yarn  string
	Keys  []Key // every key with its value as written, in order
}

// A Key is a top key of the front matter, as written.
type Key struct {
	Name string
	Text string // the value on one line; nested values as written, joined with "; "
	Span diag.Span
}

// SizeCount returns the number of sizes, at least 1.
func (d *Design) SizeCount() int { return max(1, len(d.Sizes)) }
