package check

import (
	"slices"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
)

// Bounds of the search for repairs: it works the pattern again for each try.
const (
	mostRepairs   = 3       // findings looked into
	mostTries     = 40      // tries for one finding
	longestRepair = 200_000 // bytes of a pattern that is worked again
)

// FindRepairs looks, for errors of rows that do not come out, for the one
// number that puts them right: it is changed by one or two, the whole pattern
// is worked again, and the change is offered only if it takes the error away,
// brings no other, and no second change would do the same.
func (r *Report) FindRepairs() {
	if len(r.Design.Source) > longestRepair {
		return
	}
	looked := 0
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Severity != diag.Error || f.Repair != "" || !mayRepair[f.Code] {
			continue
		}
		if looked++; looked > mostRepairs {
			return
		}
		f.Repair = r.repair(*f)
	}
}

// mayRepair are the codes whose cause may be one number.
var mayRepair = map[diag.Code]bool{RepeatRemainder: true, RunsOut: true, StatedCount: true, LeftUnworked: true, LeftCount: true, SidesDiffer: true, Multiple: true}

// repair tries changes for one finding and returns the words of the only one
// that works, "" when there is none or more than one.
func (r *Report) repair(f diag.Finding) string {
	c := &checker{d: r.Design}
	found, words := 0, ""
	tries := 0
	for _, n := range r.suspects(f) {
		for _, by := range []int{-1, 1, -2, 2} {
			to := r.changed(n, by, f.Sizes)
			text := c.withNumbers(n.Span, to)
			if text == "" || len(to) == 0 {
				continue
			}
			if tries++; tries > mostTries || found > 1 {
				return ""
			}
			if r.comesOut(n.Span, text) {
				found++
				words = around(r.Design.Source, n.Span, text)
			}
		}
	}
	if found != 1 {
		return ""
	}
	return words
}

// suspects are the numbers that may be the slip: those of the row, and the
// chain it is worked into when it is the first.
func (r *Report) suspects(f diag.Finding) []*notation.Number {
	var list []*notation.Number
	line := (&checker{d: r.Design}).lineAt(f.Span.Start)
	if line == nil || line.Tree == nil {
		return nil
	}
	for _, n := range notation.Numbers(line.Tree) {
		if line.Tree.Label == nil || n.Span.Start >= line.Tree.Label.End {
			list = append(list, n)
		}
	}
	for i, l := range r.Design.Lines {
		if l == line && i > 0 && r.Design.Lines[i-1].Kind == design.Foundation {
			list = append(list, notation.Numbers(r.Design.Lines[i-1].Tree)...)
		}
	}
	return slices.DeleteFunc(list, func(n *notation.Number) bool { return n.Live != "" })
}

// changed is a number's values in the sizes of a finding, changed by so much.
func (r *Report) changed(n *notation.Number, by int, sizes []string) map[int]int {
	to := map[int]int{}
	count := r.Design.SizeCount()
	for size := range count {
		if len(r.Design.Sizes) > 0 && !slices.Contains(sizes, r.Design.Sizes[size]) {
			continue
		}
		v, ok := r.Design.Value(n, size)
		if !ok || v+by < 1 {
			return nil
		}
		to[size] = v + by
	}
	return to
}

// comesOut works the pattern with one number written otherwise and tells
// whether it has one error fewer.
func (r *Report) comesOut(at notation.Span, text string) bool {
	source := r.Design.Source[:at.Start] + text + r.Design.Source[at.End:]
	again := Run(design.Read(r.Design.File, []byte(source)))
	return again.Errors() == r.Errors()-1
}

// around gives a changed number with the words beside it, as much as shows
// where it stands.
func around(source string, at notation.Span, text string) string {
	from, to := at.Start, at.End
	for words := 0; from > 0 && source[from-1] != '\n' && at.Start-from < 30; from-- {
		if source[from-1] == ' ' {
			if words++; words > 2 {
				break
			}
		}
	}
	for words := 0; to < len(source) && source[to] != '\n' && to-at.End < 30; to++ {
		if source[to] == ' ' {
			if words++; words > 2 {
				break
			}
		}
	}
	return source[from:at.Start] + text + source[at.End:to]
}
