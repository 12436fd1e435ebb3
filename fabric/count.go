package fabric

import (
	"slices"

	"rowproof/notation"
	"rowproof/stitch"
)

// compare holds the stated counts against what the row makes.
func (w *worker) compare(b *Body, base *edge, o *order) []Fault {
	if len(o.counts) == 0 {
		return nil
	}
	c := o.counts[len(o.counts)-1]
	if c.Change != 0 {
		return w.compareChange(b, base, o, c)
	}
	var faults []Fault
	for i, item := range c.Items {
		for _, other := range c.Items[:min(i, 8)] {
			if item.What != notation.AnyStitch && item.What == other.What && item.Kind == other.Kind && item.Text == other.Text &&
				chainsOf(w.d, item.Chains, w.size) == chainsOf(w.d, other.Chains, w.size) {
				return []Fault{{Kind: CountTwice, Line: o.line, Span: spanOf(item.Chains, item.N.Span), Text: w.unit(item)}}
			}
		}
		n, ok := w.d.Value(item.N, w.size)
		if !ok || item.N == nil {
			continue
		}
		made, known := w.tally(b, item, c)
		if !known || made == n {
			continue
		}
		if len(c.Items) == 1 && item.What == notation.AStitch && w.total(b) == n {
			continue
		}
		if item.What == notation.AStitch && made-w.inGroups(b, item.Kind, c)-w.formsTold(b, item.Kind, c) == n {
			continue // "10 V-sts, 2 dc", "10 dc, 12 FPdc": the others are told apart
		}
		faults = append(faults, Fault{Kind: WrongCount, Line: o.line, Span: item.N.Span, A: n, B: made, D: w.total(b), Text: w.unit(item)})
	}
	return faults
}

// inGroups counts the stitches of a kind that stand in groups the same count
// names: the dc of its V-sts.
func (w *worker) inGroups(b *Body, k stitch.Kind, c *notation.Count) int {
	n := 0
	for _, item := range c.Items[:min(len(c.Items), 8)] {
		if item.What != notation.AStitch || item.Kind == k {
			continue
		}
		each := 0
		for _, it := range w.kind(item.Kind).items {
			if it.is(Counts) && it.Kind == k {
				each++
			}
		}
		if each == 0 {
			continue
		}
		for _, s := range b.Stitches {
			if s.Kind == item.Kind {
				n += each
			}
		}
	}
	return n
}

// formsTold counts the forms of a stitch that the same count tells by their own
// names: the FPdc beside the dc.
func (w *worker) formsTold(b *Body, k stitch.Kind, c *notation.Count) int {
	n := 0
	for have, m := range b.kinds {
		if have == k || w.kind(have).base != k || !w.closesTo(have, k) {
			continue
		}
		if slices.ContainsFunc(c.Items[:min(len(c.Items), 8)], func(item notation.CountItem) bool { return item.What == notation.AStitch && item.Kind == have }) {
			n += m
		}
	}
	return n
}

func (w *worker) compareChange(b *Body, base *edge, o *order, c *notation.Count) []Fault {
	if base == nil || base.body == nil || len(c.Items) == 0 {
		return nil
	}
	n, ok := w.d.Value(c.Items[0].N, w.size)
	if !ok {
		return nil
	}
	made := c.Change * (w.total(b) - base.counting())
	if made == n {
		return nil
	}
	return []Fault{{Kind: WrongCount, Line: o.line, Span: c.Items[0].N.Span, A: n, B: made, D: w.total(b), Text: "change"}}
}

// total is the stitch count of a row.
func (w *worker) total(b *Body) int { return b.Counting }

// tally counts what an item of a stated count speaks of. known is false when
// the row's stitches cannot tell, as for "5 blocks".
func (w *worker) tally(b *Body, item notation.CountItem, c *notation.Count) (n int, known bool) {
	switch item.What {
	case notation.Space, notation.Corner:
		chains := chainsOf(w.d, item.Chains, w.size)
		for _, it := range b.Top {
			if it.space() && (chains == 0 || int(it.Chains) == chains) {
				n++
			}
		}
		return n, true
	case notation.AStitch:
		return w.tallyKind(b, item.Kind, c)
	case notation.TurningChain, notation.Chain:
		return 0, false
	case notation.AnyStitch:
		n = b.Counting
		if c.Apart {
			n -= turningChains(b)
		}
		return n, item.Bare || item.Text == "" || isStitches(item.Text)
	}
	return 0, false
}

// isStitches tells whether a unit is "st" or "sts".
func isStitches(s string) bool {
	switch s {
	case "st", "sts", "stitch", "stitches", "st.", "sts.", "st(s)", "St", "Sts", "STS", "ST", "Stitches":
		return true
	}
	return false
}

func turningChains(b *Body) int {
	n := 0
	for _, it := range b.Top {
		if it.is(Tch) && it.is(Counts) {
			n++
		}
	}
	return n
}

// tallyKind counts the stitches of a kind, its forms included: sc2tog is a sc.
func (w *worker) tallyKind(b *Body, k stitch.Kind, c *notation.Count) (int, bool) {
	if k == stitch.None {
		return 0, false
	}
	if b.kinds == nil {
		b.kinds = map[stitch.Kind]int{}
		for _, it := range b.Top {
			if it.is(Counts) && it.Kind != stitch.None {
				b.kinds[it.Kind]++
			}
		}
	}
	if info := w.kind(k); info.open || info.uses == 0 || len(info.items) == 0 {
		n := 0
		for _, s := range b.Stitches {
			if s.Kind == k {
				n++
			}
		}
		if n == 0 && info.open {
			return fans(b)
		}
		return n, n > 0
	}
	n := 0
	for have, m := range b.kinds {
		if have == k || (w.kind(have).base == k && w.closesTo(have, k)) {
			n += m
		}
	}
	if c.Apart {
		for _, it := range b.Top {
			if it.is(Tch) && it.Kind == k {
				n--
			}
		}
	}
	return n, true
}

// fans counts the fans of a row that are written out, "5 dc in next st", where
// the count calls them shells or fans. known is false when they are not all of
// one size: halves and corners may be counted with them or not.
func fans(b *Body) (n int, known bool) {
	size := 0
	for i := 0; i < len(b.Stitches); {
		into, j := b.Stitches[i].Into, i+1
		for j < len(b.Stitches) && b.Stitches[j].Into == into {
			j++
		}
		if k := j - i; k > 2 && into >= 0 {
			if size > 0 && k != size {
				return 0, false
			}
			size = k
			n++
		}
		i = j
	}
	return n, n > 0
}

// closesTo tells whether a form of a stitch is counted under its plain name.
// Clusters, puffs, bobbles and popcorns are named apart.
func (w *worker) closesTo(have, k stitch.Kind) bool {
	f := w.d.Stitches.Stitch(have).Family
	return f != stitch.Closed && f != stitch.Open
}

// unit names what an item counts, in the pattern's words.
func (w *worker) unit(item notation.CountItem) string {
	if item.Text != "" {
		return item.Text
	}
	return "sts"
}

// statedTotal is the number of counting places the row would have if its
// stated count were right.
func (w *worker) statedTotal(o *order, res *result) (int, bool) {
	if len(o.counts) == 0 {
		return 0, false
	}
	c := o.counts[len(o.counts)-1]
	total, any := 0, false
	if c.Change != 0 {
		if len(c.Items) == 0 || res.base == nil {
			return 0, false
		}
		n, ok := w.d.Value(c.Items[0].N, w.size)
		return res.base.counting() + c.Change*n, ok
	}
	rest := res.body.Counting
	for _, item := range c.Items {
		n, ok := w.d.Value(item.N, w.size)
		if !ok {
			return 0, false
		}
		if n > maxRow {
			return 0, false
		}
		switch item.What {
		case notation.AnyStitch:
			return n, true
		case notation.AStitch:
			made, known := w.tallyKind(res.body, item.Kind, c)
			if !known || made != n && w.kind(item.Kind).open {
				return 0, false // a shell more is several stitches more
			}
			total, rest, any = total+n, rest-made, true
		case notation.Space:
			if chains := chainsOf(w.d, item.Chains, w.size); w.conv.spaceCounts(chains) {
				made, _ := w.tally(res.body, item, c)
				total, rest = total+n, rest-made
			}
		}
	}
	if res.fault == nil {
		total += max(0, rest)
	}
	return total, any
}
