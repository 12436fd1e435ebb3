package publish

import (
	"strings"

	"rowproof/design"
)

// isTableRow tells whether a line of the document is a row of a Markdown table.
func isTableRow(source string) bool { return strings.HasPrefix(strings.TrimLeft(source, " "), "|") }

// cellsOf takes a table row apart.
func cellsOf(row string) []string {
	row = strings.TrimSpace(row)
	row = strings.TrimSuffix(strings.TrimPrefix(row, "|"), "|")
	cells := strings.Split(row, "|")
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells
}

// isRuler tells whether the cells are the line under a table's head.
func isRuler(cells []string) bool {
	for _, c := range cells {
		if strings.Trim(c, "-:") != "" || c == "" {
			return false
		}
	}
	return true
}

// oneColumn keeps of a table with a column for each size only the one that is
// written. keep holds the columns of the table at hand, nil for all.
type oneColumn struct {
	keep []int
	in   bool
}

// row sets the cells of a table row, only those that are kept. The first row
// of a table takes the line under it along, which is no line of the design.
func (o *oneColumn) row(e *edition, l *design.Line, out *outLine, first bool) {
	if first {
		o.keep, o.in = e.columnsFor(cellsOf(e.words(l.Span))), true
	}
	out.cells = o.kept(cellsOf(out.marked))
	out.marked = rowOfCells(out.cells)
	if ruler := cellsOf(e.design.LineText(l.Last + 1)); first && isRuler(ruler) {
		out.marked += "\n" + rowOfCells(o.kept(ruler))
	}
}

func (o *oneColumn) kept(cells []string) []string {
	if o.keep == nil {
		return cells
	}
	var kept []string
	for _, i := range o.keep {
		if i < len(cells) {
			kept = append(kept, cells[i])
		}
	}
	return kept
}

func rowOfCells(cells []string) string { return "| " + strings.Join(cells, " | ") + " |" }

// columnsFor returns the columns to keep of a table with this head: the names
// of the rows and the size that is written.
func (e *edition) columnsFor(head []string) []int {
	sizes := e.design.Sizes
	if e.size == allSizes || len(sizes) < 2 || len(head) < len(sizes) {
		return nil
	}
	from := len(head) - len(sizes)
	for i, name := range sizes {
		if head[from+i] != name {
			return nil
		}
	}
	var keep []int
	for i := range from {
		keep = append(keep, i)
	}
	return append(keep, from+e.size)
}

// plainTable writes the rows of a table in columns, without marks.
func plainTable(rows [][]string) []string {
	var widths []int
	for _, row := range rows {
		for i, c := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], columns(c))
		}
	}
	var out []string
	for _, row := range rows {
		var b strings.Builder
		for i, c := range row {
			if i == 0 {
				b.WriteString(padTo(c, widths[i]))
			} else {
				b.WriteString("  " + padLeft(c, widths[i]))
			}
		}
		out = append(out, strings.TrimRight(b.String(), " "))
	}
	return out
}
