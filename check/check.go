// Package check holds a worked design against itself and says what does not
// come out: findings, in words a crocheter can act on, with the counting shown
// size by size and, where one is certain, a repair she could type.
//
// It changes nothing. One slip gives one finding: what only follows from it is
// held back. Every code has a page under pages/, with an example that is run.
package check

import (
	"cmp"
	"slices"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/fabric"
)

// A Report is all that is known of a design after every row was worked.
type Report struct {
	Design       *design.Design
	Sizes        []string // nil for a pattern in one size
	Instructions Instructions
	Rows         int // rows and rounds worked, all sizes together
	Stitches     int // stitches worked, all sizes together
	Findings     []diag.Finding
	Pieces       []Piece
	Fabrics      []*fabric.Fabric // one a size
}

// Instructions says what became of the instruction lines. Each is worked, or
// worked to a length through the gauge, or not worked and named in a finding.
type Instructions struct {
	Total, Worked, Measured, NotWorked int
}

// A Piece is a table of the counts of one piece.
type Piece struct {
	Name string
	Rows []RowCount
}

// A RowCount is the stitch count of a row in each size, -1 where the size does
// not have it.
type RowCount struct {
	Label  string
	Line   int
	Counts []int
}

// Errors returns how many findings are errors.
func (r *Report) Errors() int { return r.count(diag.Error) }

// Warnings returns how many findings are warnings.
func (r *Report) Warnings() int { return r.count(diag.Warning) }

func (r *Report) count(s diag.Severity) int {
	n := 0
	for _, f := range r.Findings {
		if f.Severity == s {
			n++
		}
	}
	return n
}

// Run works a design in all its sizes and reports what it finds.
func Run(d *design.Design) *Report {
	c := &checker{d: d, fabrics: fabric.Work(d), errorsAt: map[*design.Line][]int{}}
	c.add(d.Findings...)
	for _, look := range looks {
		look(c)
	}
	r := &Report{Design: d, Sizes: d.Sizes, Findings: c.sorted(), Fabrics: c.fabrics}
	for _, f := range c.fabrics {
		r.Rows += f.Rows
		r.Stitches += f.Stitches
	}
	r.Instructions = c.instructions()
	r.Pieces = c.pieces()
	return r
}

// looks are the checks, in the order they are made. A later one may hold back
// what an earlier one explains.
var looks = []func(*checker){
	sizeLists,
	faults,
	turningChains,
	pickUps,
	multiples,
	seams,
	sizeOrder,
	unitPairs,
	materials,
	terms,
	customs,
	notWorked,
	nothingToWork,
}

// A checker gathers findings.
type checker struct {
	d        *design.Design
	fabrics  []*fabric.Fabric
	findings []diag.Finding
	faultsBy map[*design.Line][]fabric.Fault
	errorsAt map[*design.Line][]int // indexes of the errors that stand on a line
}

func (c *checker) add(list ...diag.Finding) {
	for _, f := range list {
		if line := c.lineAt(f.Span.Start); line != nil && f.Severity == diag.Error {
			c.errorsAt[line] = append(c.errorsAt[line], len(c.findings))
		}
		c.findings = append(c.findings, f)
	}
}

// lineAt is the line that an offset stands on, nil for none.
func (c *checker) lineAt(offset int) *design.Line {
	i, _ := slices.BinarySearchFunc(c.d.Lines, offset, func(l *design.Line, at int) int { return cmp.Compare(l.End, at) })
	if i < len(c.d.Lines) && c.d.Lines[i].Start <= offset {
		return c.d.Lines[i]
	}
	return nil
}

// sorted puts the findings in the order of the document and takes out doubles.
func (c *checker) sorted() []diag.Finding {
	slices.SortStableFunc(c.findings, diag.Compare)
	return slices.CompactFunc(c.findings, func(a, b diag.Finding) bool {
		return a.Span == b.Span && a.Code == b.Code && a.Message == b.Message
	})
}

// hasError tells whether an error was found on a line.
func (c *checker) hasError(line *design.Line) bool { return len(c.errorsAt[line]) > 0 }

// hasErrorAt tells whether an error stands at a place already; of is the code
// it must have, "" for any.
func (c *checker) hasErrorAt(span diag.Span, of diag.Code) bool {
	for _, i := range c.errorsAt[c.lineAt(span.Start)] {
		f := c.findings[i]
		if f.Span.Start < span.End && span.Start < f.Span.End && (of == "" || f.Code == of) {
			return true
		}
	}
	return false
}

// sizeNames turns indexes of sizes into names; nil for a pattern in one size.
func (c *checker) sizeNames(sizes []int) []string {
	if len(c.d.Sizes) == 0 {
		return nil
	}
	names := make([]string, 0, len(sizes))
	for _, s := range sizes {
		names = append(names, c.d.Sizes[s])
	}
	return names
}

// instructions counts what became of the lines.
func (c *checker) instructions() Instructions {
	var n Instructions
	for _, line := range c.d.Lines {
		if !ordered(line) {
			continue
		}
		n.Total++
		switch c.worst(line) {
		case fabric.Done:
			n.Worked++
		case fabric.ByMeasure:
			n.Measured++
		default:
			n.NotWorked++
		}
	}
	return n
}

// ordered tells whether a line is an instruction to be worked.
func ordered(line *design.Line) bool {
	return line.Kind == design.Instruction || line.Kind == design.Foundation
}

// worst is the worst outcome of a line over the sizes that have it.
func (c *checker) worst(line *design.Line) fabric.Outcome {
	worst := fabric.NotReached
	for _, f := range c.fabrics {
		worst = max(worst, f.Outcomes[line])
	}
	return worst
}

// pieces builds the tables of counts.
func (c *checker) pieces() []Piece {
	var list []Piece
	if len(c.fabrics) == 0 {
		return nil
	}
	for i, p := range c.fabrics[0].Pieces {
		piece := Piece{Name: p.Name}
		at := map[string]int{}
		for size, f := range c.fabrics {
			if i >= len(f.Pieces) {
				continue
			}
			for k, row := range f.Pieces[i].Rows {
				key := row.Label
				if row.Number == 0 || key == "" {
					key += "#" + itoa(k)
				}
				if row.Line != nil && row.Line.Section != nil {
					key += "\x00" + itoa(row.Line.Section.Line)
				}
				idx, ok := at[key]
				if !ok {
					idx = len(piece.Rows)
					at[key] = idx
					counts := slices.Repeat([]int{-1}, len(c.fabrics))
					piece.Rows = append(piece.Rows, RowCount{Label: row.Label, Line: row.Line.Number, Counts: counts})
				}
				piece.Rows[idx].Counts[size] = row.Counting
			}
		}
		list = append(list, piece)
	}
	return list
}
