package publish

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
)

// Findings writes what a check found: each finding with its place marked, then
// a summary with the counts of every piece in every size.
func Findings(w io.Writer, r *check.Report, s Screen) error {
	t := newTerminal(w, s)
	x := newLineIndex(r.Design.Source)
	findings := slices.Clone(r.Findings)
	slices.SortStableFunc(findings, diag.Compare)
	for i := range findings[:min(len(findings), mostShown)] {
		t.finding(r.Design.File, x, &findings[i])
		t.rule()
		t.line()
	}
	if more := findings[min(len(findings), mostShown):]; len(more) > 0 {
		t.paragraph(0, fmt.Sprintf("Not shown here: %s. Mend the first ones and check again; many may go with them. With --json all are listed.", tallyOf(more)))
		t.line()
	}
	t.verdict(r)
	t.counts(r)
	t.instructions(r)
	return t.out.Flush()
}

// mostShown is how many findings are written out for a reader.
const mostShown = 400

// tally counts findings by severity.
type tally struct{ errors, warnings, notes int }

func tallyOf(findings []diag.Finding) tally {
	var n tally
	for _, f := range findings {
		switch f.Severity {
		case diag.Error:
			n.errors++
		case diag.Warning:
			n.warnings++
		default:
			n.notes++
		}
	}
	return n
}

func (n tally) String() string {
	var parts []string
	if n.errors > 0 {
		parts = append(parts, plural(n.errors, "error"))
	}
	if n.warnings > 0 {
		parts = append(parts, plural(n.warnings, "warning"))
	}
	if n.notes > 0 {
		parts = append(parts, plural(n.notes, "note"))
	}
	return strings.Join(parts, ", ")
}

// verdict says in one sentence how it went.
func (t *terminal) verdict(r *check.Report) {
	n := tallyOf(r.Findings)
	file := fileName(r.Design.File)
	switch {
	case n.errors > 0:
		t.line(t.dye(red, fmt.Sprintf("%s in %s", n, file)))
		return
	case r.Rows == 0:
		t.line(t.dye(yellow, fmt.Sprintf("There is no row to work in %s.", file)))
	case r.Instructions.NotWorked > 0:
		t.line(t.dye(yellow, fmt.Sprintf("Every row that was worked comes out%s, but not every line was worked.", inSizes(r.Sizes))))
	default:
		t.line(t.dye(green, fmt.Sprintf("Every row comes out%s.", inSizes(r.Sizes))))
	}
	if n != (tally{}) {
		t.linef("%s in %s", n, file)
	}
}

// inSizes returns " in all nine sizes", " in both sizes", or nothing for a
// pattern in one size.
func inSizes(sizes []string) string {
	switch len(sizes) {
	case 0, 1:
		return ""
	case 2:
		return " in both sizes"
	}
	return " in all " + numberWord(len(sizes)) + " sizes"
}

// instructions tells what became of every line: there is no third case.
func (t *terminal) instructions(r *check.Report) {
	n := r.Instructions
	if n.Total == 0 {
		return
	}
	t.line()
	parts := []string{fmt.Sprintf("%s worked stitch by stitch", grouped(n.Worked))}
	if n.Measured > 0 {
		parts = append(parts, fmt.Sprintf("%s worked to a length", grouped(n.Measured)))
	}
	if n.NotWorked > 0 {
		parts = append(parts, fmt.Sprintf("%s not worked", grouped(n.NotWorked)))
	}
	t.paragraph(0, fmt.Sprintf("%s: %s.", plural(n.Total, "instruction"), listed(parts)))
	if lines := notWorked(r); len(lines) > 0 {
		t.paragraph(0, fmt.Sprintf("Not worked: %s.", lineList(lines)))
	}
	sizes := ""
	if len(r.Sizes) > 1 {
		sizes = ", all sizes together"
	}
	t.paragraph(0, fmt.Sprintf("%s and %s%s.", plural(r.Rows, "row"), stitches(r.Stitches), sizes))
}

func stitches(n int) string {
	if n == 1 {
		return "1 stitch"
	}
	return grouped(n) + " stitches"
}

// counts writes a table: the stitches at the end of each part of the pattern,
// and its rows. A part is what stands under one heading, so the two sides of a
// split piece are told apart.
func (t *terminal) counts(r *check.Report) {
	var rows []tableRow
	for _, part := range parts(r) {
		rows = append(rows, pieceRows(part, max(1, len(r.Sizes)))...)
	}
	if len(rows) == 0 {
		return
	}
	heads := r.Sizes
	if len(heads) < 2 {
		heads = []string{""}
	}
	t.line()
	t.table("Stitches at the end of each piece, and its rows", heads, rows)
}

// parts gathers the rows of all pieces under their headings, in the order the
// headings are first worked.
func parts(r *check.Report) []*check.Piece {
	sections := map[int]*design.Section{}
	for _, l := range r.Design.Lines {
		sections[l.Number] = l.Section
	}
	type key struct {
		section *design.Section
		piece   string
	}
	at := map[key]*check.Piece{}
	var out []*check.Piece
	for _, p := range r.Pieces {
		for _, row := range p.Rows {
			k := key{sections[row.Line], ""}
			name := p.Name
			if k.section != nil && k.section.Title != "" {
				name = k.section.Title
			} else {
				k.piece = name
			}
			if at[k] == nil {
				at[k] = &check.Piece{Name: name}
				out = append(out, at[k])
			}
			at[k].Rows = append(at[k].Rows, row)
		}
	}
	return out
}

// tableRow is a name and a value a size. A row without values is a heading.
type tableRow struct {
	name   string
	values []string
}

// pieceRows returns the lines of the table for one piece.
func pieceRows(p *check.Piece, sizes int) []tableRow {
	last, made := make([]string, sizes), make([]string, sizes)
	rows := make([]int, sizes)
	for i := range last {
		last[i] = "–"
	}
	for _, row := range p.Rows {
		for i := 0; i < sizes && i < len(row.Counts); i++ {
			if row.Counts[i] < 0 {
				continue
			}
			last[i] = strconv.Itoa(row.Counts[i])
			rows[i]++
		}
	}
	if slices.Max(rows) == 0 {
		return nil
	}
	for i, n := range rows {
		made[i] = strconv.Itoa(n)
	}
	name := printable(p.Name)
	if name == "" {
		name = "The pattern"
	}
	return []tableRow{{name: name}, {name: "  stitches", values: last}, {name: "  rows", values: made}}
}

// table writes rows under heads, in as many blocks as the width asks for.
func (t *terminal) table(title string, heads []string, rows []tableRow) {
	names, cells := 2, 3
	for _, r := range rows {
		if r.values != nil {
			names = max(names, columns(r.name))
		}
		for _, v := range r.values {
			cells = max(cells, columns(v))
		}
	}
	for i := range heads {
		cells = max(cells, min(columns(heads[i]), 12))
	}
	names, cells = names+2, cells+2
	t.line(t.dye(faint, title))
	across := max(1, (t.width-names)/cells)
	for from := 0; from < len(heads); from += across {
		to := min(len(heads), from+across)
		if from > 0 {
			t.line()
		}
		t.tableBlock(heads, rows, from, to, names, cells)
	}
}

func (t *terminal) tableBlock(heads []string, rows []tableRow, from, to, names, cells int) {
	if heads[0] != "" {
		head := padTo("", names)
		for _, h := range heads[from:to] {
			head += padLeft(headOf(printable(h), cells-1), cells)
		}
		t.line(t.dye(strong, head))
	}
	for _, r := range rows {
		if r.values == nil {
			for _, l := range wrap(r.name, t.width) {
				t.line(l)
			}
			continue
		}
		l := padTo(r.name, names)
		for _, v := range r.values[from:to] {
			l += padLeft(v, cells)
		}
		t.line(l)
	}
}
