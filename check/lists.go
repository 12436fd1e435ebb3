package check

import (
	"fmt"
	"slices"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
)

// SizeList: a list has another number of entries than the pattern has sizes.
const SizeList diag.Code = "size-list"

// SizeOutOfLine: one size breaks a list that is otherwise even.
const SizeOutOfLine diag.Code = "size-out-of-line"

// sizeLists holds every list against the sizes of the pattern. Where all lists
// agree with each other and none with the sizes, the line of the sizes is wrong,
// and that is one finding.
func sizeLists(c *checker) {
	var bad []diag.Finding
	lengths := map[int]int{}
	for _, line := range c.d.Lines {
		if !ordered(line) || line.Tree == nil {
			continue
		}
		for _, n := range notation.Numbers(line.Tree) {
			if len(n.Values) > 1 {
				lengths[len(n.Values)]++
			}
			if problem := c.d.ListProblem(n); problem != "" {
				bad = append(bad, diag.Finding{Severity: diag.Error, Code: SizeList, Span: n.Span, Piece: title(line), Row: c.lineLabel(line),
					Sizes: slices.Clone(c.d.Sizes), Message: problem, Detail: c.listDetail(n)})
			}
		}
	}
	if len(bad) > 2 && len(lengths) == 1 && !c.d.SizesAt.IsZero() {
		for length, n := range lengths {
			bad = []diag.Finding{{Severity: diag.Error, Code: SizeList, Span: c.d.SizesAt, Sizes: slices.Clone(c.d.Sizes), Also: []diag.Span{bad[0].Span},
				Message: fmt.Sprintf("Here are %s, and each of the %d lists of the pattern has %d numbers.", plural(max(1, len(c.d.Sizes)), "size"), n, length),
				Detail:  "The sizes read are " + strings.Join(c.d.Sizes, ", ") + "."}}
		}
	}
	for _, f := range bad {
		c.add(f)
	}
}

// listDetail sets the numbers of a list beside the sizes.
func (c *checker) listDetail(n *notation.Number) string {
	if len(n.Values) == 0 || len(c.d.Sizes) == 0 {
		return ""
	}
	text := ""
	for i, s := range c.d.Sizes {
		if i > 0 {
			text += "\n"
		}
		switch {
		case i >= len(n.Values):
			text += s + "  no number"
		case n.Values[i].None:
			text += s + "  –"
		default:
			text += s + "  " + itoa(n.Values[i].N)
		}
	}
	if extra := len(n.Values) - len(c.d.Sizes); extra > 0 {
		text += fmt.Sprintf("\nand %s more than there are sizes", plural(extra, "number"))
	}
	return text
}

// title is the heading a line stands under.
func title(line *design.Line) string {
	if line.Section == nil {
		return ""
	}
	return line.Section.Title
}

// lineLabel names the row a line orders, in its first size.
func (c *checker) lineLabel(line *design.Line) string {
	if line.Tree == nil || line.Tree.Label == nil {
		return ""
	}
	l := line.Tree.Label
	word := "Row"
	if l.Is == notation.Round {
		word = "Rnd"
	}
	if len(l.Ranges) == 0 && l.Name != "" {
		return strings.ToUpper(l.Name[:1]) + l.Name[1:] + " " + strings.ToLower(word)
	}
	if len(l.Ranges) == 0 {
		return "Next " + map[string]string{"Row": "row", "Rnd": "rnd"}[word]
	}
	from, _ := c.d.Value(l.Ranges[0].From, 0)
	last := l.Ranges[len(l.Ranges)-1]
	to := from
	if last.To != nil {
		to, _ = c.d.Value(last.To, 0)
	}
	if to > from {
		return fmt.Sprintf("%ss %d-%d", word, from, to)
	}
	return fmt.Sprintf("%s %d", word, from)
}

// sizeOrder looks for a size that breaks a list whose other sizes go evenly, as
// a slip of one figure does: 19 (16, 23, 30) for 9 (16, 23, 30).
func sizeOrder(c *checker) {
	if len(c.d.Sizes) < 4 {
		return
	}
	for _, line := range c.d.Lines {
		if !ordered(line) || line.Tree == nil || c.hasError(line) {
			continue
		}
		for _, n := range notation.Numbers(line.Tree) {
			list, ok := c.values(n)
			if !ok {
				continue
			}
			i, should := outOfLine(list)
			if i < 0 {
				continue
			}
			f := diag.Finding{Severity: diag.Error, Code: SizeOutOfLine, Span: n.Span, Piece: title(line), Row: c.lineLabel(line),
				Sizes:   []string{c.d.Sizes[i]},
				Message: fmt.Sprintf("The number for size %s, %d, is out of line with the other sizes.", c.d.Sizes[i], list[i]),
				Detail:  c.listDetail(n)}
			if should > 0 {
				f.Repair = c.withNumbers(n.Span, map[int]int{i: should})
			}
			c.add(f)
		}
	}
}

// values lists a number's value in each size; ok is false unless it has one
// written for each.
func (c *checker) values(n *notation.Number) ([]int, bool) {
	if len(n.Values) != len(c.d.Sizes) || n.Live != "" {
		return nil, false
	}
	list := make([]int, len(n.Values))
	for i, v := range n.Values {
		if v.None {
			return nil, false
		}
		list[i] = v.N
	}
	return list, true
}

// outOfLine finds the one number of a list that cannot be meant: the others
// rise by equal steps and it breaks the order by a figure too many or too few,
// or it is many times its neighbours. should is what the step would make it, 0
// when that is not known. i is -1 when there is none.
func outOfLine(list []int) (i, should int) {
	for i := range list {
		rest := slices.Delete(slices.Clone(list), i, i+1)
		if most := slices.Max(rest); most >= 2 && slices.Min(rest) >= 1 && list[i] >= 8*most {
			return i, 0
		}
		step, ok := equalSteps(list, i)
		if !ok || step <= 0 {
			continue
		}
		should := 0
		if i > 0 {
			should = list[i-1] + step
		} else {
			should = list[1] - step
		}
		breaks := i > 0 && list[i] < list[i-1] || i < len(list)-1 && list[i] > list[i+1]
		if off := list[i] - should; breaks && should > 0 && off%10 == 0 {
			return i, should
		}
	}
	return -1, 0
}

// equalSteps tells whether the numbers but the ith rise by equal steps.
func equalSteps(list []int, but int) (step int, ok bool) {
	last, found := -1, false
	for i := range list {
		if i == but {
			continue
		}
		if last >= 0 {
			d, n := list[i]-list[last], i-last
			if d%n != 0 || found && d/n != step {
				return 0, false
			}
			step, found = d/n, true
		}
		last = i
	}
	return step, found && len(list) >= 4
}
