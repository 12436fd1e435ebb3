package publish

import (
	"strings"

	"rowproof/notation"
)

// A bond is how strongly a mark ties two steps together or parts them. Where a
// step is taken out, the mark that parts more stays.
type bond int

const (
	joined   bond = iota // "and", "then" or nothing
	comma                // ", "
	semi                 // "; "
	sentence             // ". "
	boundary             // the start or end of the line or passage
)

// capital stands where a step was taken out whose words began with a capital
// letter: the words that follow then do, too.
const capital = '\x01'

// steps takes out of a list of steps those that do nothing, and goes on inside
// the others. The words of the list stand between from and to.
func (p *pruning) steps(list []notation.Step, from, to int, top bool) {
	dead := p.dead(list)
	alive := false
	for i, s := range list {
		if _, ok := s.(*notation.Remark); !dead[i] && !ok {
			alive = true
		}
	}
	if !alive {
		return
	}
	for i := range list {
		if i > 0 && dead[i-1] && !dead[i] && p.belongs(list[i], p.end(list[i-1])) {
			dead[i] = true
		}
	}
	for i := 0; i < len(list); i++ {
		if !dead[i] {
			p.inside(list[i], from, to)
			from = max(from, p.end(list[i]))
			continue
		}
		last := i
		for last+1 < len(list) && dead[last+1] && !p.countBetween(p.end(list[last]), list[last+1].At().Start) {
			last++
		}
		next := to
		if last+1 < len(list) {
			next = list[last+1].At().Start
		}
		p.takeOut(from, list[i].At().Start, p.end(list[last]), next, i == 0, last+1 == len(list), top)
		from = max(from, p.end(list[last]))
		i = last
	}
}

// text returns the words of the line between two places of the document.
func (p *pruning) text(from, to int) string {
	from, to = max(from, p.line.Start), min(to, p.line.End)
	if from >= to {
		return ""
	}
	return p.line.Text[from-p.line.Start : to-p.line.Start]
}

// end returns where a step ends, with what its chains count as and are for.
func (p *pruning) end(s notation.Step) int {
	end := s.At().End
	var counts *notation.Counts
	switch s := s.(type) {
	case *notation.Chains:
		counts = s.Counts
	case *notation.Skip:
		counts = s.Counts
	}
	if counts != nil && counts.End > end {
		end = counts.End
		if after := p.text(end, end+1); after == ")" || after == "]" {
			end++
		}
	}
	if _, ok := s.(*notation.Chains); ok {
		end += purpose(p.text(end, p.line.End))
	}
	return end
}

// purpose returns how long the words are that say what chains are for: "for
// underarm", "to turn".
func purpose(s string) int {
	for _, word := range []string{" for ", " to ", " as ", " at "} {
		if strings.HasPrefix(s, word) {
			n := strings.IndexAny(s, ",;.:([*)]")
			if and := strings.Index(s, " and "); and >= 0 && (n < 0 || and < n) {
				n = and
			}
			if n < 0 {
				n = len(s)
			}
			return n
		}
	}
	return 0
}

// belongs tells whether a remark speaks of the step that ends at end: nothing
// parts them.
func (p *pruning) belongs(s notation.Step, end int) bool {
	_, ok := s.(*notation.Remark)
	return ok && s.At().Start >= end && strings.TrimSpace(p.text(end, s.At().Start)) == ""
}

func (p *pruning) countBetween(from, to int) bool {
	for _, c := range p.line.Tree.Counts {
		if c.Start >= from && c.End <= to {
			return true
		}
	}
	return false
}

// takeOut leaves out the words of steps from start to end, with the mark before
// or after them. The step before ends at from, the one after begins at to.
func (p *pruning) takeOut(from, start, end, to int, first, last, top bool) {
	lead, mark, before := p.bondBefore(from, start)
	if first && (before < sentence || mark <= from) {
		before = boundary
	}
	next, after := p.bondAfter(end, to, last)
	if before < sentence && after >= before {
		p.cut.add(spanAt(mark, end), "")
		return
	}
	if after == boundary {
		if before == sentence { // the full stop of the sentence before stays
			p.cut.add(spanAt(lead, end), "")
		} else {
			p.cut.add(spanAt(start, end), "")
		}
		return
	}
	words := ""
	if word := p.text(lead, lead+1); after < sentence && (before == sentence || top && before == boundary) && word != "" && word == strings.ToUpper(word) && isLetter(word[0]) {
		words = string(capital)
	}
	p.cut.add(spanAt(lead, next), words)
}

// bondBefore looks at what stands between the end of a step at from and the
// start of the next. lead is where the words that lead into it begin, "work",
// and mark where the marks before them do.
func (p *pruning) bondBefore(from, start int) (lead, mark int, b bond) {
	s := p.text(from, start)
	i := len(s)
	for i > 0 && (isLetter(s[i-1]) || isBlank(s[i-1]) || s[i-1] == '&') {
		i--
	}
	lead = from + i + len(s[i:]) - len(strings.TrimLeft(s[i:], " \t\n\r"))
	for i > 0 && strings.IndexByte(" \t\r\n,;.:!-", s[i-1]) >= 0 {
		b = max(b, bondOf(s[i-1]))
		i--
	}
	return lead, from + i, b
}

// bondAfter looks at what stands between a step that ends at end and to, where
// the next begins. next is where the words begin that stay.
func (p *pruning) bondAfter(end, to int, last bool) (next int, b bond) {
	s := p.text(end, to)
	i := 0
	for i < len(s) && (isBlank(s[i]) || bondOf(s[i]) > joined || s[i] == '&') {
		b = max(b, bondOf(s[i]))
		i++
	}
	for _, word := range []string{"and ", "then "} {
		if strings.HasPrefix(s[i:], word) {
			i += len(word)
		}
	}
	rest := strings.TrimRight(s[i:], " \t\r\n")
	switch {
	case last && rest == "" && b < sentence:
		b = boundary
	case last || strings.Trim(rest, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ ") != "" && rest[0] == '(':
		b = max(b, sentence) // a stated count, a rep clause
		if b == sentence && !strings.ContainsAny(s[:i], ".!:") {
			b = boundary
		}
	}
	return end + i, b
}

func bondOf(c byte) bond {
	switch c {
	case ',', '-':
		return comma
	case ';':
		return semi
	case '.', ':', '!':
		return sentence
	}
	return joined
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// inside looks for what does nothing within a step that does something.
func (p *pruning) inside(s notation.Step, from, to int) {
	switch s := s.(type) {
	case *notation.Work:
		if p.zero(s.Times) && len(s.Places) == 1 {
			p.skipped(s.Span, s.Places[0])
			return
		}
		p.places(s.Places)
	case *notation.Skip:
		p.places(s.Places)
	case *notation.Group:
		p.group(s)
	case *notation.Star:
		p.star(s)
	case *notation.Evenly:
		if words := p.plainWords(); p.zero(s.N) && words != "" {
			p.cut.add(s.Span, words)
		}
	case *notation.Again:
		if s.Times != nil {
			p.limit(s.Times.To)
		}
	case *notation.Shape:
		p.plan(s)
	}
}

// skipped turns "0 (1) sc in next st" into the stitch that is passed over.
func (p *pruning) skipped(s notation.Span, pl *notation.Place) {
	if (pl.Which == notation.Next || pl.Which == notation.First) && pl.Start > s.Start {
		p.cut.add(spanAt(s.Start, pl.Start), p.skipWord()+" ")
	}
}

// places takes out the places that are none, of several.
func (p *pruning) places(list []*notation.Place) {
	spans, dead := make([]notation.Span, len(list)), make([]bool, len(list))
	for i, pl := range list {
		spans[i], dead[i] = pl.Span, p.noPlace(pl)
		p.limit(pl.To)
	}
	p.listed(spans, dead)
}

// listed takes some of a list out, with what joins them to the others.
func (p *pruning) listed(spans []notation.Span, dead []bool) {
	kept := -1
	for i := range spans {
		switch {
		case !dead[i] && kept < 0 && i > 0:
			p.cut.add(spanAt(spans[0].Start, spans[i].Start), "")
			kept = i
		case !dead[i]:
			kept = i
		case kept >= 0:
			p.cut.add(spanAt(spans[i-1].End, spans[i].End), "")
		}
	}
}

// limit turns "to last 0 sts" into the rest of the row.
func (p *pruning) limit(l *notation.Limit) {
	if l == nil || !p.zero(l.Last) {
		return
	}
	before := strings.TrimRight(p.text(p.line.Start, l.Start), " ,")
	for _, word := range []string{"across", "around", "along"} {
		if strings.HasSuffix(before, " "+word) { // "rep from * across to last 0 sts"
			p.cut.add(spanAt(p.line.Start+len(before), l.Span.End), "")
			return
		}
	}
	p.cut.add(l.Span, p.onward())
}

func (p *pruning) group(s *notation.Group) {
	p.places(s.In)
	if len(s.Body) == 0 {
		return
	}
	open, shut := p.brackets(s)
	if t := s.Times; t != nil {
		switch {
		case p.zero(t.N) && t.More && len(s.In) == 0 && shut > open: // worked once
			p.cut.add(spanAt(open, open+1), "")
			p.cut.add(spanAt(shut, s.End), "")
		case p.zero(t.N) && !t.More || p.nothings(s.Body):
			if len(s.In) == 1 {
				p.skipped(s.Span, s.In[0])
			}
			return
		}
		p.limit(t.To)
	} else if p.nothings(s.Body) {
		if len(s.In) == 1 {
			p.skipped(s.Span, s.In[0])
		}
		return
	}
	if shut > open {
		p.steps(s.Body, open+1, shut, false)
	} else {
		p.steps(s.Body, s.Start, s.End, false)
	}
}

// brackets returns where the brackets of a group stand; both are its start for
// "sc in next st 6 times", which has none.
func (p *pruning) brackets(s *notation.Group) (open, shut int) {
	last := s.Body[len(s.Body)-1].At().End
	if s.Body[0].At().Start == s.Start {
		return s.Start, s.Start
	}
	if i := strings.IndexAny(p.text(last, s.End), ")]}"); i >= 0 {
		return s.Start, last + i
	}
	return s.Start, s.Start
}

func (p *pruning) star(s *notation.Star) {
	if len(s.Body) == 0 {
		return
	}
	first, last := s.Body[0].At(), s.Body[len(s.Body)-1]
	if !within(first, s.Span) {
		return // a passage that stands elsewhere is worked again
	}
	to := s.End
	if s.Times != nil {
		to = s.Rep.Start
	}
	p.steps(s.Body, s.Start+len(s.Mark), to, false)
	t := s.Times
	if t == nil {
		return
	}
	p.limit(t.To)
	if p.zero(t.N) && t.More && !p.markNeeded(s) { // worked once: no mark, no rep clause
		p.cut.add(spanAt(s.Start, first.Start), "")
		_, mark, _ := p.bondBefore(p.end(last), s.Rep.Start)
		p.cut.add(spanAt(mark, s.Rep.End), "")
		return
	}
	p.ending(t)
}

// markNeeded tells whether something else goes back to the mark of a star, or
// stops at a mark in it.
func (p *pruning) markNeeded(star *notation.Star) bool {
	needed := false
	notation.Walk(p.line.Tree, func(s notation.Step) bool {
		switch s := s.(type) {
		case *notation.Stop:
			needed = needed || within(s.Span, star.Span)
		case *notation.Star:
			needed = needed || s != star && s.Mark == star.Mark && len(s.Body) > 0 && !within(s.Body[0].At(), s.Span)
		}
		return true
	})
	return needed
}

// ending takes out "ending with sc in last 0 (2) sts".
func (p *pruning) ending(t *notation.Times) {
	if len(t.Ending) == 0 || t.EndAt != "" || len(t.Omit) > 0 || t.Last != nil {
		return
	}
	if p.nothings(t.Ending) {
		p.cut.add(spanAt(t.End, p.end(t.Ending[len(t.Ending)-1])), "")
		return
	}
	p.steps(t.Ending, t.Ending[0].At().Start, p.end(t.Ending[len(t.Ending)-1]), false)
}

// plan takes the parts of a shaping that are worked 0 times out.
func (p *pruning) plan(s *notation.Shape) {
	kept := false
	var first notation.Span // of the parts before the first that is kept
	for _, part := range s.Plan {
		switch dead := p.zero(part.Times); {
		case part.Span.IsZero():
			return
		case dead && kept:
			p.cut.add(part.Span, "")
		case dead && first.IsZero():
			first = part.Span
		case !dead && !kept && !first.IsZero():
			text := p.text(part.Start, part.End)
			bare := strings.TrimLeft(text, " ,;")
			for _, word := range []string{"and ", "then "} {
				bare = strings.TrimPrefix(bare, word)
			}
			p.cut.add(spanAt(first.Start, part.Start+len(text)-len(bare)), "")
			kept = true
		case !dead:
			kept = true
		}
	}
}

// counts takes out of stated counts what there is none of: "30 sc, 0 (2) ch-1
// sps".
func (p *pruning) counts() {
	for _, c := range p.line.Tree.Counts {
		kept := 0
		for _, item := range c.Items {
			if !p.zero(item.N) {
				kept++
			}
		}
		switch {
		case kept == len(c.Items):
		case kept > 0:
			p.countItems(c)
		case c.Change != 0 || p.dashes(c):
			span := countSpan(p.line, c.Span)
			before := strings.TrimRight(p.text(p.line.Start, span.Start), " ")
			if strings.HasSuffix(before, ".") && p.text(span.End, span.End+1) == "." {
				span.End++
			}
			p.cut.add(span, "")
		}
	}
}

// dashes tells whether a count has a dash for this size.
func (p *pruning) dashes(c *notation.Count) bool {
	for _, item := range c.Items {
		if n := item.N; len(n.Values) != p.sizes || !n.Values[p.size].None {
			return false
		}
	}
	return true
}

func (p *pruning) countItems(c *notation.Count) {
	end := c.End
	if strings.ContainsAny(p.text(c.Start, c.Start+1), "([{") && strings.ContainsAny(p.text(end-1, end), ")]}") {
		end--
	}
	spans, dead := make([]notation.Span, len(c.Items)), make([]bool, len(c.Items))
	for i, item := range c.Items {
		dead[i] = p.zero(item.N)
		spans[i] = spanAt(item.N.Start, end)
		if i > 0 {
			text := p.text(spans[i-1].Start, item.N.Start)
			// the unit before, without the marks and the "and" that follow it
			text = strings.TrimSuffix(strings.TrimRight(text, " ,;+&"), " and")
			spans[i-1].End = spans[i-1].Start + len(strings.TrimRight(text, " ,;+&"))
		}
	}
	p.listed(spans, dead)
}
