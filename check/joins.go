package check

import (
	"fmt"
	"slices"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/fabric"
	"rowproof/notation"
)

// PickUp: stitches along row-ends are one to a row in most sizes, and one or
// two off in another.
const PickUp diag.Code = "pick-up"

// Multiple: the foundation does not fit the multiple the pattern states.
const Multiple diag.Code = "multiple"

// Seam: two edges that are to be joined do not have the same count.
const Seam diag.Code = "seam"

// pickUps compares, over the sizes, stitches worked along row-ends with the
// rows they stand on.
func pickUps(c *checker) {
	type place struct {
		line *design.Line
		span notation.Span
		at   []fabric.PickUpCount
		size []int
	}
	var places []*place
	for size, f := range c.fabrics {
		for _, p := range f.PickUps {
			i := slices.IndexFunc(places, func(q *place) bool { return q.span == p.Span })
			if i < 0 {
				i = len(places)
				places = append(places, &place{line: p.Line, span: p.Span})
			}
			places[i].at = append(places[i].at, p)
			places[i].size = append(places[i].size, size)
		}
	}
	for _, p := range places {
		var off []int
		for i, at := range p.at {
			if d := at.Made - at.RowEnds; d != 0 && d >= -2 && d <= 2 {
				off = append(off, i)
			} else if d != 0 {
				off = nil
				break
			}
		}
		if len(off) == 0 || len(off)*2 > len(p.at) || c.hasErrorAt(p.span, "") {
			continue
		}
		var sizes []int
		detail := ""
		to := map[int]int{}
		for _, i := range off {
			sizes = append(sizes, p.size[i])
			to[p.size[i]] = p.at[i].RowEnds
			detail += fmt.Sprintf("%s  %s, %s\n", c.sizeName(p.size[i]), plural(p.at[i].RowEnds, "row-end"), plural(p.at[i].Made, "st"))
		}
		c.add(diag.Finding{Severity: diag.Error, Code: PickUp, Span: p.span, Piece: title(p.line), Row: c.lineLabel(p.line),
			Sizes:   c.sizeNames(sizes),
			Message: "The stitches along the row-ends are one to a row in the other sizes, and not in size " + strings.Join(c.sizeNames(sizes), ", ") + ".",
			Detail:  strings.TrimSuffix(detail, "\n"), Repair: c.withNumbers(p.span, to)})
	}
}

func (c *checker) sizeName(i int) string {
	if i < len(c.d.Sizes) {
		return c.d.Sizes[i]
	}
	return ""
}

// multiples holds the foundation of the piece that follows a stated multiple
// against it.
func multiples(c *checker) {
	for _, line := range c.d.Lines {
		tree := line.Tree
		if line.Kind == design.Definition {
			tree = c.multipleIn(line)
		}
		if tree == nil {
			continue
		}
		for _, s := range tree.Steps {
			if rule, ok := s.(*notation.Rule); ok && rule.About == notation.AboutMultiple && rule.Multiple != nil {
				c.multiple(line, rule)
			}
		}
	}
}

// multipleIn reads the multiple that stands in a definition: "Marsh stitch:
// multiple of 2 sts + 1 (add 2 for foundation ch)".
func (c *checker) multipleIn(line *design.Line) *notation.Line {
	at := strings.Index(strings.ToLower(line.Text), "multiple of")
	if at < 0 {
		return nil
	}
	return notation.Parse(line.Text[at:], line.Start+at, notation.Options{Terms: c.d.Terms, Stitches: c.d.Stitches, Sizes: len(c.d.Sizes)})
}

func (c *checker) multiple(line *design.Line, rule *notation.Rule) {
	m := rule.Multiple
	var off []int
	detail := ""
	var piece *fabric.Piece
	for size, f := range c.fabrics {
		p := pieceAfter(f, line)
		if p == nil || p.Start == 0 {
			return
		}
		of, ok := c.d.Value(m.Of, size)
		if !ok || of < 1 {
			return
		}
		if of == 1 { // every count is a multiple of 1: nothing is said by it
			c.add(diag.Finding{Severity: diag.Error, Code: Multiple, Span: rule.Span, Piece: p.Name, Sizes: c.sizeNames([]int{size}),
				Message: "A multiple of 1 says nothing: every count is one."})
			return
		}
		plus := c.orZero(m.Plus, size)
		have, unit := p.Start-p.Hook, "st"
		if m.OfChains {
			have, unit = p.Start, "ch"
			plus += c.orZero(m.Add, size)
		} else if add := c.orZero(m.Add, size); m.Add != nil && add != p.Hook {
			off = append(off, size)
			detail += fmt.Sprintf("%s  %s are left free at the hook, %d are added\n", c.sizeName(size), plural(p.Hook, "ch"), add)
			piece = p
			continue
		}
		if rest := (have - plus) % of; rest != 0 || have < plus {
			off = append(off, size)
			detail += fmt.Sprintf("%s  %s: %d times %d plus %d is %d\n", c.sizeName(size), plural(have, unit), max(0, have-plus)/of, of, plus, max(0, have-plus)/of*of+plus)
		}
		piece = p
	}
	if len(off) == 0 || c.hasError(piece.Line) || len(piece.Rows) > 0 && c.hasError(piece.Rows[0].Line) {
		return
	}
	c.add(diag.Finding{Severity: diag.Error, Code: Multiple, Span: rule.Span, Also: []diag.Span{piece.Line.Span}, Piece: piece.Name, Sizes: c.sizeNames(off),
		Message: "The foundation does not fit the multiple that is stated.", Detail: strings.TrimSpace(detail)})
}

func (c *checker) orZero(n *notation.Number, size int) int {
	if n == nil {
		return 0
	}
	v, _ := c.d.Value(n, size)
	return v
}

// pieceAfter is the piece a note is about: the one whose section it stands in,
// or the next after it.
func pieceAfter(f *fabric.Fabric, line *design.Line) *fabric.Piece {
	for _, p := range f.Pieces {
		if p.Line.Start > line.Start {
			return p
		}
	}
	return nil
}

// seams holds the edges that the front matter says are joined against each
// other.
func seams(c *checker) {
	for _, s := range c.d.Seams {
		a, okA := c.edgeOf(s, s.A)
		b, okB := c.edgeOf(s, s.B)
		if !okA || !okB {
			continue
		}
		var off []int
		detail := ""
		for size := range c.fabrics {
			if a[size] != b[size] {
				off = append(off, size)
				detail += fmt.Sprintf("%s  %d and %d\n", c.sizeName(size), a[size], b[size])
			}
		}
		if len(off) == 0 || c.anyErrors() {
			continue
		}
		c.add(diag.Finding{Severity: diag.Error, Code: Seam, Span: s.Span, Sizes: c.sizeNames(off),
			Message: fmt.Sprintf("%s and %s are to be joined and do not have the same count.", edgeName(s.A), edgeName(s.B)),
			Detail:  strings.TrimSuffix(detail, "\n")})
	}
}

// anyErrors tells whether a row does not come out: what does not meet then may
// only follow from it.
func (c *checker) anyErrors() bool {
	return slices.ContainsFunc(c.findings, func(f diag.Finding) bool { return f.Severity == diag.Error && f.Code != Seam })
}

func edgeName(e design.SeamEdge) string {
	name := e.Piece
	if e.Part != "" {
		name += ", " + e.Part
	}
	return strings.TrimSpace(name + " " + e.Edge)
}

// edgeOf measures an edge in every size: stitches of a top or start, rows of a
// side.
func (c *checker) edgeOf(s design.Seam, e design.SeamEdge) ([]int, bool) {
	counts := make([]int, len(c.fabrics))
	for size, f := range c.fabrics {
		n, ok := edgeCount(f, e)
		if !ok {
			c.add(diag.Finding{Severity: diag.Error, Code: Seam, Span: s.Span,
				Message: fmt.Sprintf("The seam names %s, and no rows are worked there.", edgeName(design.SeamEdge{Piece: e.Piece, Part: e.Part})),
				Detail:  "Rows are worked under: " + strings.Join(pieceNames(f), ", ") + "."})
			return nil, false
		}
		counts[size] = n
	}
	return counts, true
}

func pieceNames(f *fabric.Fabric) []string {
	var names []string
	for _, p := range f.Pieces {
		for _, s := range p.Sections {
			if s.Title != "" && !slices.Contains(names, s.Title) {
				names = append(names, s.Title)
			}
		}
	}
	return names
}

func edgeCount(f *fabric.Fabric, e design.SeamEdge) (int, bool) {
	for _, p := range f.Pieces {
		part := e.Part
		switch {
		case called(p.Name, e.Piece):
		case part == "" && slices.ContainsFunc(p.Sections, func(s *design.Section) bool { return called(s.Title, e.Piece) }):
			part = e.Piece
		default:
			continue
		}
		var rows []*fabric.Row
		for _, r := range p.Rows {
			if part == "" || (r.Line.Section != nil && called(r.Line.Section.Title, part)) {
				rows = append(rows, r)
			}
		}
		if len(rows) == 0 {
			return 0, false
		}
		switch e.Edge {
		case "side":
			return height(rows[len(rows)-1]), true
		case "start":
			return rows[0].Counting, true
		}
		return rows[len(rows)-1].Counting, true
	}
	return 0, false
}

// height is how many rows stand on each other up to r.
func height(r *fabric.Row) int {
	n := 0
	for ; r != nil; r = r.Below {
		n++
	}
	return n
}

// called tells whether a heading is the name of a piece: "Sleeve (make 2)" is
// called Sleeve.
func called(heading, name string) bool {
	heading, name = strings.ToLower(strings.TrimSpace(heading)), strings.ToLower(strings.TrimSpace(name))
	if heading == name {
		return true
	}
	head, _, _ := strings.Cut(heading, "(")
	head = strings.TrimSpace(head)
	return head == name || head == name+"s" || head+"s" == name
}
