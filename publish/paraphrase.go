package publish

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rowproof/design"
	"rowproof/notation"
)

// A speaker tells in plain words how a line was understood. It reads the tree,
// not the text, so that a wrong reading can be heard.
type speaker struct{ source string }

// Paraphrase tells in plain words how l was understood: "Row 3, wrong side:
// chain 1; sc into each st to the end; turn. Says 24 sc". It is "" for a line
// that orders nothing.
func Paraphrase(d *design.Design, l *design.Line) string {
	if l.Tree == nil {
		return ""
	}
	s := speaker{d.Source}
	var b strings.Builder
	if l.Tree.Label != nil {
		b.WriteString(s.label(l.Tree.Label))
	}
	if steps := s.steps(l.Tree.Steps); steps != "" {
		if b.Len() > 0 {
			b.WriteString(": ")
		}
		b.WriteString(steps)
	}
	if counts := s.counts(l.Tree.Counts); counts != "" {
		if b.Len() > 0 {
			b.WriteString(". ")
		}
		b.WriteString(counts)
	}
	return b.String()
}

// said returns the words of a span on one line.
func (s speaker) said(span notation.Span) string {
	start := min(max(span.Start, 0), len(s.source))
	end := min(max(span.End, start), len(s.source))
	return strings.Join(strings.Fields(s.source[start:end]), " ")
}

// number returns n as digits, a size list as written.
func (s speaker) number(n *notation.Number) string {
	if n == nil {
		return "1"
	}
	if n.Live == "" && len(n.Values) == 1 {
		return value(n.Values[0])
	}
	if n.Live != "" {
		return "{" + n.Live + "}"
	}
	var words []string
	for _, v := range n.Values {
		words = append(words, value(v))
	}
	if len(words) == 0 {
		return "?"
	}
	if slices.Min(words) == slices.Max(words) {
		return words[0]
	}
	return words[0] + " (" + strings.Join(words[1:], ", ") + ")"
}

func value(v notation.Value) string {
	if v.None {
		return "–"
	}
	return strconv.Itoa(v.N)
}

// one tells whether n is a single 1, or not said.
func one(n *notation.Number) bool {
	return n == nil || n.Live == "" && len(n.Values) == 1 && n.Values[0] == notation.Value{N: 1}
}

func (s speaker) label(l *notation.Label) string {
	row := "Row"
	switch {
	case l.Is == notation.Round:
		row = "Round"
	case l.Is == notation.UnknownRow:
		row = "Row or round"
	}
	var words string
	switch {
	case l.Next && l.Count != nil:
		words = "The next " + s.number(l.Count) + " " + strings.ToLower(row) + "s"
	case l.Next:
		words = "The next " + strings.ToLower(row)
	case len(l.Ranges) > 0:
		words = s.ranges(row, l.Ranges)
	default:
		words = row
	}
	if l.Name != "" {
		words += ", the " + l.Name + " " + strings.ToLower(row)
	}
	if l.AndAll != "" {
		words += " and all " + l.AndAll + " " + strings.ToLower(row) + "s after it"
	}
	return words + sideWords(l.Side)
}

func sideWords(side notation.Side) string {
	switch side {
	case notation.RightSide:
		return ", right side"
	case notation.WrongSide:
		return ", wrong side"
	}
	return ""
}

func (s speaker) ranges(row string, ranges []notation.Range) string {
	var words []string
	many := len(ranges) > 1
	for _, r := range ranges {
		from, to := s.number(r.From), s.number(r.To)
		if r.To == nil || from == to {
			words = append(words, from)
			continue
		}
		many = true
		words = append(words, from+" to "+to)
	}
	if many {
		row += "s"
	}
	return row + " " + listed(words)
}

func (s speaker) counts(counts []*notation.Count) string {
	var words []string
	for _, c := range counts {
		var items []string
		for _, i := range c.Items {
			text := i.Text
			if text == "" {
				text = "stitches"
			}
			items = append(items, s.number(i.N)+" "+text)
		}
		what := listed(items)
		switch {
		case c.Change > 0:
			what += " more"
		case c.Change < 0:
			what += " fewer"
		}
		if what != "" {
			words = append(words, "Says "+what)
		}
	}
	return strings.Join(words, "; ")
}

func (s speaker) steps(steps []notation.Step) string {
	var words []string
	for _, step := range steps {
		if w := s.step(step); w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, "; ")
}

func (s speaker) places(places []*notation.Place) string {
	var words []string
	for _, p := range places {
		words = append(words, s.place(p))
	}
	return strings.Join(words, " and into ")
}

// place tells where: the words of the pattern, and how far when the tree knows.
func (s speaker) place(p *notation.Place) string {
	if p == nil {
		return ""
	}
	text := trimPreposition(s.said(p.Span))
	if p.Which == notation.Each && p.To == nil {
		return bareRun(text) + " to the end"
	}
	if p.To != nil {
		if i := p.To.Start - p.Start; i > 0 && i <= p.End-p.Start {
			text = trimPreposition(s.said(notation.Span{Start: p.Start, End: p.To.Start}))
		}
		return strings.TrimSpace(bareRun(text) + " " + s.limit(p.To))
	}
	if text == "" {
		return "the next place"
	}
	return text
}

// bareRun returns what a run is worked into: "each st" of "each st across".
func bareRun(text string) string {
	for _, end := range []string{" across", " around", " to end"} {
		text = strings.TrimSuffix(text, end)
	}
	switch text {
	case "", "across", "around", "to", "to end":
		return "each place"
	}
	return text
}

func trimPreposition(text string) string {
	for _, p := range []string{"into ", "in ", "over ", "on ", "around ", "to ", "across "} {
		if rest, ok := strings.CutPrefix(text, p); ok {
			return rest
		}
	}
	return text
}

func (s speaker) limit(l *notation.Limit) string {
	switch {
	case l == nil:
		return ""
	case l.End:
		return "to the end"
	case l.Last != nil:
		if one(l.Last) {
			return "until 1 is left"
		}
		return fmt.Sprintf("until %s are left", s.number(l.Last))
	}
	return strings.TrimSpace("up to " + trimPreposition(s.said(l.Span)))
}

func (s speaker) times(t *notation.Times, star bool) string {
	switch {
	case t == nil:
		return ""
	case t.N != nil && star && t.More:
		return "once and " + s.number(t.N) + " more times"
	case t.N != nil && one(t.N):
		return "once"
	case t.N != nil:
		return s.number(t.N) + " times"
	case t.To != nil:
		return s.limit(t.To)
	}
	return "to the end"
}
