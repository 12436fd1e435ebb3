package check

import (
	"fmt"
	"slices"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/fabric"
	"rowproof/notation"
	"rowproof/stitch"
)

// TurningChainVaries: one row starts with another number of chains than the
// other rows of the same stitch.
const TurningChainVaries diag.Code = "turning-chain-varies"

// TurningChainNote: a note speaks of a turning chain that no row has.
const TurningChainNote diag.Code = "turning-chain-note"

// turningChains holds the turning chains of the pattern against each other and
// against what the notes say of them.
func turningChains(c *checker) {
	chains := c.allChains()
	tally := map[stitch.Kind]map[int]int{}
	for _, t := range chains {
		if tally[t.First] == nil {
			tally[t.First] = map[int]int{}
		}
		tally[t.First][t.N]++
	}
	for _, n := range c.notedChains() { // a note speaks for the rows it governs
		for first, t := range tally {
			if t[n] > 0 && c.d.Stitches.Stitch(first).TurningChain == n {
				t[n] += 2
			}
		}
	}
	post := map[stitch.Kind]map[int]bool{} // the chains that rows of post stitches start with
	for _, t := range chains {
		if t.Post && post[t.First] == nil {
			post[t.First] = map[int]bool{}
		}
		if t.Post {
			post[t.First][t.N] = true
		}
	}
	for _, t := range chains {
		usual, times, all := most(tally[t.First])
		if usual == t.N || times < 2 || times*3 < all*2 || c.hasError(t.Line) || c.customAtHook(t) {
			continue
		}
		if t.Post && t.N == usual-1 || !t.Post && post[t.First][usual] && t.N == usual+1 {
			continue // a row of post stitches is lower by a chain
		}
		c.add(diag.Finding{Severity: diag.Error, Code: TurningChainVaries, Span: t.Span, Piece: title(t.Line), Row: t.Row,
			Sizes:   slices.Clone(c.d.Sizes),
			Message: fmt.Sprintf("%s starts with ch %d, and the other %s rows start with ch %d.", orLine(t.Row), t.N, c.d.Stitches.Name(t.First, c.d.Terms), usual),
			Detail:  fmt.Sprintf("ch %d  %s\nch %d  this one", usual, plural(times, "time"), t.N),
			Repair:  fmt.Sprintf("ch %d", usual)})
	}
	c.turningNotes(chains)
}

// customAtHook tells whether chains left free at the hook are as many as the
// stitch is tall: hdc in the 3rd ch, though the rows start with ch 1.
func (c *checker) customAtHook(t fabric.TurningChain) bool {
	return t.AtHook && c.d.Stitches.Stitch(t.First).TurningChain == t.N
}

func orLine(row string) string {
	if row == "" {
		return "This line"
	}
	return row
}

// most returns the number of chains found most often, how often, and how many
// there are in all.
func most(tally map[int]int) (n, times, all int) {
	for k, v := range tally {
		all += v
		if v > times || v == times && k < n {
			n, times = k, v
		}
	}
	return n, times, all
}

// allChains lists every turning chain as written, once, in document order.
func (c *checker) allChains() []fabric.TurningChain {
	var list []fabric.TurningChain
	seen := map[notation.Span]bool{}
	for _, f := range c.fabrics {
		for _, t := range f.Chains {
			if !seen[t.Span] {
				seen[t.Span] = true
				list = append(list, t)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b fabric.TurningChain) int { return a.Span.Start - b.Span.Start })
	return list
}

// notedChains lists the turning chains that notes speak of.
func (c *checker) notedChains() []int {
	var list []int
	c.eachTurningNote(func(_ *design.Line, rule *notation.Rule) {
		for _, chains := range []*notation.Number{rule.Chains, rule.Counts.Of} {
			if n, ok := c.d.Value(chains, 0); ok && chains != nil {
				list = append(list, n)
			}
		}
	})
	return list
}

// eachTurningNote visits every note about a turning chain of so many.
func (c *checker) eachTurningNote(visit func(*design.Line, *notation.Rule)) {
	for _, line := range c.d.Lines {
		if line.Tree == nil {
			continue
		}
		for _, s := range line.Tree.Steps {
			if rule, ok := s.(*notation.Rule); ok && rule.About == notation.AboutTurningChain && rule.Chains != nil && rule.Counts != nil {
				visit(line, rule)
			}
		}
	}
}

// turningNotes looks for a note about a turning chain that no row has.
func (c *checker) turningNotes(chains []fabric.TurningChain) {
	if len(chains) < 2 {
		return
	}
	c.eachTurningNote(func(line *design.Line, rule *notation.Rule) {
		if n, _ := c.d.Value(rule.Chains, 0); rule.Counts.Of != nil {
			if m, _ := c.d.Value(rule.Counts.Of, 0); m == n {
				c.add(diag.Finding{Severity: diag.Error, Code: TurningChainNote, Span: rule.Counts.Of.Span, Piece: title(line),
					Sizes: slices.Clone(c.d.Sizes), Message: fmt.Sprintf("This note names ch %d twice.", n), Detail: "The rows start with " + chainList(chains) + "."})
				return
			}
		}
		for _, number := range []*notation.Number{rule.Chains, rule.Counts.Of} {
			if number == nil {
				continue
			}
			n, ok := c.d.Value(number, 0)
			if !ok || slices.ContainsFunc(chains, func(t fabric.TurningChain) bool { return t.N == n }) {
				continue
			}
			c.turningNote(line, number, n, chains)
		}
	})
}

func (c *checker) turningNote(line *design.Line, number *notation.Number, n int, chains []fabric.TurningChain) {
	c.add(diag.Finding{Severity: diag.Error, Code: TurningChainNote, Span: number.Span, Piece: title(line),
		Sizes:   slices.Clone(c.d.Sizes),
		Message: fmt.Sprintf("This note speaks of a turning ch %d, and no row starts with ch %d.", n, n),
		Detail:  "The rows start with " + chainList(chains) + "."})
}

// chainList names the chains that rows start with: "ch 1 and ch 3".
func chainList(chains []fabric.TurningChain) string {
	var ns []int
	for _, t := range chains {
		if !slices.Contains(ns, t.N) {
			ns = append(ns, t.N)
		}
	}
	slices.Sort(ns)
	text := ""
	for i, n := range ns {
		switch {
		case i > 0 && i == len(ns)-1:
			text += " and "
		case i > 0:
			text += ", "
		}
		text += "ch " + itoa(n)
	}
	return text
}
