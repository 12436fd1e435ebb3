package publish

import (
	"strings"

	"rowproof/notation"
)

// step tells one step. Remarks order nothing and are passed over.
func (s speaker) step(step notation.Step) string {
	switch n := step.(type) {
	case *notation.Work:
		return s.work(n)
	case *notation.Chains:
		return "chain " + s.number(n.N) + s.countsAs(n.Counts)
	case *notation.Skip:
		return "skip " + strings.ReplaceAll(s.places(n.Places), " and into ", " and ")
	case *notation.Group:
		return s.group(n)
	case *notation.Star:
		return s.star(n)
	case *notation.Stop:
		return "(the last time stop here)"
	case *notation.Orphan:
		return "repeat from a star that is not there"
	case *notation.Turn:
		return not(n.Not) + "turn"
	case *notation.Join:
		return s.join(n)
	case *notation.FastenOff:
		return not(n.Not) + "fasten off"
	case *notation.JoinYarn:
		return s.joinYarn(n)
	case *notation.Color:
		if n.Drop {
			return "drop " + n.Name
		}
		return "go on in " + n.Name
	case *notation.Leave:
		return s.leave(n)
	case *notation.MagicRing:
		if n.Close {
			return "pull the ring closed"
		}
		return "make a magic ring"
	case *notation.Unknown:
		return "[not understood: " + s.said(n.Span) + "]"
	case *notation.Remark:
		return ""
	}
	return s.longStep(step)
}

// longStep tells the steps that stand for more than a row.
func (s speaker) longStep(step notation.Step) string {
	switch n := step.(type) {
	case *notation.OtherSide:
		if n.RowEnds {
			return "go on along the row-ends"
		}
		return "go on along the other side of the foundation chain"
	case *notation.Evenly:
		return s.evenly(n)
	case *notation.Again:
		return s.again(n)
	case *notation.Shape:
		return s.shape(n)
	case *notation.Rule:
		return "a rule for other rows: " + s.said(n.Span)
	case *notation.Marker:
		return n.Do
	}
	return s.said(step.At())
}

func not(no bool) string {
	if no {
		return "do not "
	}
	return ""
}

func (s speaker) work(n *notation.Work) string {
	words := ""
	if !one(n.Times) {
		words = s.number(n.Times) + " "
	}
	if n.Stitch != nil {
		words += small(n.Stitch.Text) + loopWords(n.Stitch.Loop)
	}
	if len(n.Places) > 0 {
		into := " into "
		if n.Stitch != nil && strings.Contains(n.Stitch.Text, "tog") {
			into = " over "
		}
		words += into + s.places(n.Places)
	}
	if n.Last != nil {
		words += ", the last one into " + s.place(n.Last)
	}
	return words
}

// small takes the capital off a name at the start of a sentence: "Hdc", not
// "FPdc".
func small(name string) string {
	if len(name) > 1 && name[0] >= 'A' && name[0] <= 'Z' && name[1] >= 'a' && name[1] <= 'z' {
		return strings.ToLower(name[:1]) + name[1:]
	}
	return name
}

func loopWords(l notation.Loop) string {
	switch l {
	case notation.FrontLoop:
		return " in the front loop"
	case notation.BackLoop:
		return " in the back loop"
	case notation.ThirdLoop:
		return " in the third loop"
	case notation.Post:
		return " around the post"
	}
	return ""
}

func (s speaker) countsAs(c *notation.Counts) string {
	switch {
	case c == nil:
		return ""
	case c.Not:
		return " (does not count as a stitch)"
	}
	return " (" + s.said(c.Span) + ")"
}

func (s speaker) group(n *notation.Group) string {
	words := "(" + s.steps(n.Body) + ")"
	if n.In != nil {
		words += " all into " + s.places(n.In)
	}
	if t := s.times(n.Times, false); t != "" {
		words += " " + t
	}
	return words
}

func (s speaker) star(n *notation.Star) string {
	if n.Times == nil {
		return "from a star that nothing repeats: " + s.steps(n.Body)
	}
	words := "repeat " + s.times(n.Times, true) + ": [" + s.steps(n.Body) + "]"
	if n.Times.EndAt != "" {
		words += ", the last time only as far as the stop"
	}
	if ending := s.steps(n.Times.Ending); ending != "" {
		words += ", ending with " + ending
	}
	if omit := s.steps(n.Times.Omit); omit != "" {
		words += ", the last time without " + omit
	}
	return words
}

func (s speaker) join(n *notation.Join) string {
	words := not(n.Not) + "join"
	if n.Not {
		return words
	}
	if n.Ring {
		return words + " into a ring"
	}
	if n.Place != nil {
		return words + " to " + s.place(n.Place)
	}
	return words + " to the first stitch"
}

func (s speaker) joinYarn(n *notation.JoinYarn) string {
	words := "join the yarn"
	if n.Color != "" {
		words = "join " + n.Color
	}
	if n.Place != nil {
		words += " in " + s.place(n.Place)
	}
	if n.Row != nil {
		words += " of row " + s.number(n.Row)
	}
	if n.FromEnd {
		words += " at the other end"
	}
	return words + sideWords(n.Side)
}

func (s speaker) leave(n *notation.Leave) string {
	switch {
	case n.Place != nil:
		return "leave " + s.place(n.Place) + " unworked"
	case n.N != nil:
		return "leave " + s.number(n.N) + " unworked"
	}
	return "leave the rest unworked"
}

func (s speaker) evenly(n *notation.Evenly) string {
	what := "stitches"
	if n.Stitch != nil {
		what = n.Stitch.Text
	}
	switch {
	case n.Change > 0:
		return "spread " + s.number(n.N) + " increases evenly"
	case n.Change < 0:
		return "spread " + s.number(n.N) + " decreases evenly"
	}
	return "work " + s.number(n.N) + " " + what + " evenly along the edge"
}

func (s speaker) again(n *notation.Again) string {
	words := "work again "
	switch {
	case n.Pattern:
		words = "go on in pattern"
	case n.Even:
		words = "work even"
	case n.Last != nil && one(n.Last):
		words += "the last row"
	case n.Last != nil:
		words += "the last " + s.number(n.Last) + " rows"
	case n.Name != "":
		words += "the " + n.Name + " row"
	case len(n.Rows) > 0:
		words += strings.ToLower(s.ranges("Row", n.Rows))
	default:
		words = s.said(n.Span)
	}
	if n.Of != "" {
		words += " of " + n.Of
	}
	if n.Alternately {
		words += " in turn"
	}
	if t := s.times(n.Times, false); t != "" {
		words += ", " + t
		if n.Times.More && !strings.Contains(t, "once") {
			words += " more"
		}
	}
	if n.RowCount != nil {
		words += " for " + s.number(n.RowCount) + " rows"
	}
	return words + s.until(n)
}

func (s speaker) until(n *notation.Again) string {
	words := ""
	switch {
	case n.Until == nil:
	case n.Until.SameAs != "":
		words += ", as many rows as " + n.Until.SameAs
	case n.Until.Length != nil:
		words += " until it measures " + s.said(n.Until.Length.Span)
	}
	if n.Mirrored {
		words += ", mirrored"
	}
	if ending := s.steps(n.Ending); ending != "" {
		words += ", ending with " + ending
	}
	return words
}

func (s speaker) shape(n *notation.Shape) string {
	var words string
	switch {
	case n.Row != "":
		words = "work the " + n.Row + " row"
	case n.Change > 0:
		words = "increase " + s.number(n.N)
	default:
		words = "decrease " + s.number(n.N)
	}
	if n.Where != "" {
		words += " at " + n.Where
	}
	for i, e := range n.Plan {
		if i > 0 {
			words += ", then"
		}
		switch {
		case e.Next:
			words += " on the next row"
		case one(e.Every):
			words += " on every row"
		default:
			words += " on every " + s.number(e.Every) + "th row"
		}
		if e.Times != nil {
			words += ", " + s.number(e.Times) + " times"
		}
	}
	return words
}
