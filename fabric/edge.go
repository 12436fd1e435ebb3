package fabric

import (
	"slices"

	"rowproof/stitch"
)

// An edge is what a row is worked into: the top of the row below, or part of
// it, in the order the hook meets it.
type edge struct {
	row      *Row  // the row below; nil for a foundation or ring
	body     *Body // never nil
	reversed bool  // the hook meets the last place made first, as after a turn
	from, to int   // the part of the working order that is still free
	ring     bool  // stitches may be worked into the ring itself
	closed   bool  // a round: the end meets the start
	joined   bool  // and the hook stands in its first stitch
	dark     bool  // what is there is not known: only told numbers can be worked
	chains   int   // foundation chains at the start, for "Nth ch from hook"
}

// items returns every place of the whole edge in working order.
func (e *edge) items() []Item {
	if !e.reversed {
		return e.body.Top
	}
	if e.body.reversed == nil && len(e.body.Top) > 0 {
		e.body.reversed = slices.Clone(e.body.Top)
		slices.Reverse(e.body.reversed)
	}
	return e.body.reversed
}

// counting returns how many free places count as stitches.
func (e *edge) counting() int {
	items := e.items()
	from, to := max(0, e.from), min(e.to, len(items))
	if from >= to {
		return 0
	}
	return counting(items[from:to])
}

func counting(items []Item) int {
	n := 0
	for _, it := range items {
		if it.is(Counts) {
			n++
		}
	}
	return n
}

// whole returns the edge a finished body leaves.
func whole(row *Row, body *Body, reversed, closed bool) *edge {
	return &edge{row: row, body: body, reversed: reversed, to: len(body.Top), closed: closed}
}

// foundationChain returns the body of n chains. Its order is the order made, so
// the first row works it reversed.
func foundationChain(n int) *Body {
	b := &Body{Top: make([]Item, n), Stitches: make([]Worked, n), Counting: n, Made: n}
	for i := range b.Top {
		b.Top[i] = Item{Kind: stitch.Chain, Chains: 1, Flag: Counts | AChain}
		b.Stitches[i] = Worked{Kind: stitch.Chain, Into: -1, N: 1}
	}
	return b
}

// rowEnds returns an edge of one place a row.
func rowEnds(n int) *Body {
	b := &Body{Top: make([]Item, n), Counting: n}
	for i := range b.Top {
		b.Top[i] = Item{Flag: Counts | EndOfRow}
	}
	return b
}

// claimed returns the edge that a row would leave if it came out at the total
// the pattern states: b's, with places put in or taken out in the middle, where
// patterns repeat themselves.
func claimed(b *Body, total int) *Body {
	top := slices.Clone(b.Top)
	if len(top) == 0 && total > 0 && total <= maxRow {
		top = slices.Repeat([]Item{{Kind: stitch.SingleCrochet, Flag: Counts}}, total)
	}
	for diff := total - counting(top); diff > 0; diff = total - counting(top) {
		run := middle(top, diff)
		if len(run) == 0 {
			break
		}
		at := (len(top)-len(run))/2 + len(run)
		top = slices.Insert(top, at, run...)
	}
	if diff := counting(top) - total; diff > 0 {
		top = cutMiddle(top, diff)
	}
	return &Body{Top: top, Counting: counting(top), Patched: true}
}

// middle copies a run of top with at most n counting places, from its middle.
func middle(top []Item, n int) []Item {
	if len(top) == 0 {
		return nil
	}
	size := min(n, max(1, len(top)-2))
	at := (len(top) - size) / 2
	run := slices.Clone(top[at : at+size])
	if counting(run) == 0 {
		for _, it := range top {
			if it.is(Counts) {
				return []Item{it}
			}
		}
		return nil
	}
	for counting(run) > n {
		run = run[:len(run)-1]
	}
	for i := range run {
		run[i].Flag &^= Tch | Marked
	}
	return run
}

// cutMiddle takes n counting places out of top, from its middle on, and what
// stands between them; the turning chain stays while it can.
func cutMiddle(top []Item, n int) []Item {
	start := max(0, (len(top)-n)/2)
	if start == 0 && len(top) > 0 && top[0].is(Tch) {
		start = 1
	}
	end := start
	for ; end < len(top) && n > 0; end++ {
		if top[end].is(Counts) {
			n--
		}
	}
	for ; start > 0 && n > 0; start-- {
		if top[start-1].is(Counts) {
			n--
		}
	}
	return slices.Delete(top, start, end)
}
