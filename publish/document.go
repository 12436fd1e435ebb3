package publish

import (
	"fmt"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
	"rowproof/stitch"
)

// sizesLine returns the edit of the line that names the sizes, when one of
// them was chosen.
func (e *edition) sizesLine(l *design.Line) (edit, bool) {
	if e.size == allSizes || e.sizes < 2 || isTableRow(e.words(l.Span)) {
		return edit{}, false
	}
	span, found := sizeNames(l.Text, e.design.Sizes)
	if !found {
		return edit{}, false
	}
	name := e.design.Sizes[e.size]
	for _, many := range []string{"Sizes: ", "SIZES: ", "sizes: "} {
		if before, ok := strings.CutSuffix(l.Text[:span.Start], many); ok {
			span.Start = len(before)
			name = notation.LikeCase(many[:5], "size") + ": " + name
		}
	}
	if span.Start == len("Sizes ") && strings.EqualFold(l.Text[:span.Start], "Sizes ") {
		name, span.Start = notation.LikeCase(l.Text[:len("Sizes")], "size")+": "+name, 0
	}
	return edit{spanAt(l.Start+span.Start, l.Start+span.End), name}, true
}

// severalSizesWords stand in the sentences that tell how to read a pattern in
// several sizes.
var severalSizesWords = []string{"for the smallest size", "changes for larger sizes", "larger sizes are in", "one number applies", "a dash means", "does not apply to that size"}

// severalSizes takes out the sentences that tell how to read a pattern in
// several sizes, when one is written. A sentence may go on in the next line.
func (e *edition) severalSizes(c *edits, l *design.Line) {
	goesOn := e.unfinished == l.Number
	e.unfinished = 0
	for from := 0; from < len(l.Text); {
		to, ends := len(l.Text), strings.HasSuffix(strings.TrimRight(l.Text, " "), ".")
		if i := strings.Index(l.Text[from:], ". "); i >= 0 {
			to, ends = from+i+2, true
		}
		if goesOn || hasAny(l.Text[from:min(to, from+300)], severalSizesWords) {
			c.add(spanAt(l.Start+from, l.Start+to), "")
			if !ends {
				e.unfinished = l.Last + 1
			}
		}
		from, goesOn = to, false
	}
}

func hasAny(text string, words []string) bool {
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

// termNames are the words for each system in a terms line.
var termNames = [...]string{stitch.US: "US", stitch.UK: "UK"}

// termsLine turns the name of the system in "This pattern uses US terms".
func (e *edition) termsLine(c *edits, l *design.Line) {
	if e.terms == nil {
		return
	}
	if span, ok := termsNamed(l.Text, e.design.Terms); ok {
		c.add(spanAt(l.Start+span.Start, l.Start+span.End), termNames[e.to])
	}
}

// termsNamed finds the name of the system before "terms" in text.
func termsNamed(text string, from stitch.Terms) (diag.Span, bool) {
	spellings := []string{"US", "U.S.", "American"}
	if from == stitch.UK {
		spellings = []string{"UK", "U.K.", "British"}
	}
	for _, name := range spellings {
		for at := 0; ; {
			i := strings.Index(text[at:], name)
			if i < 0 {
				break
			}
			i += at
			at = i + len(name)
			if i > 0 && isLetter(text[i-1]) {
				continue
			}
			after := strings.ToLower(text[at:min(len(text), at+30)])
			after = strings.TrimPrefix(strings.TrimLeft(after, " -*_:"), "crochet ")
			if strings.HasPrefix(after, "term") || strings.HasPrefix(after, "notation") || strings.HasPrefix(after, "abbrev") {
				return spanAt(i, at), true
			}
		}
		if i := strings.Index(text, "erms: "+name); i >= 0 {
			return spanAt(i+6, i+6+len(name)), true
		}
	}
	return diag.Span{}, false
}

// withoutMarker takes "Size L only:", "For sizes M and L:" or "All sizes:" off
// the start of a line. only tells that the line is for some sizes; if not,
// nothing but "All sizes:" is taken off.
func withoutMarker(s string, only bool) string {
	colon := strings.IndexByte(s, ':')
	if colon < 0 || colon > 120 {
		return s
	}
	head := strings.TrimPrefix(strings.ToLower(s[:colon]), "for ")
	all := strings.HasPrefix(head, "all sizes")
	if !all && !(only && (strings.HasPrefix(head, "size") || strings.Contains(head, "other sizes"))) {
		return s
	}
	return strings.TrimSpace(s[colon+1:])
}

// preface adds what the front matter told and no line of the pattern tells:
// the title, the sizes, the terms and the gauge, so that the page stands alone.
func (e *edition) preface(opt Options) {
	var add []*outLine
	if e.design.Front != nil {
		add = append(add, e.sizesPreface()...)
		add = append(add, e.gaugePreface()...)
	}
	if line := e.termsPreface(opt); line != nil {
		add = append(add, line)
	}
	at := 0
	if len(e.lines) > 0 && e.lines[0].kind == design.Heading {
		at = 1
	} else if e.design.Front != nil && e.design.Title != "" {
		title := &outLine{kind: design.Heading, level: 1, text: e.design.Title, marked: e.design.Title}
		add = append([]*outLine{title}, add...)
	}
	if len(add) == 0 {
		return
	}
	for i, line := range add {
		line.blank = i == 0 || e.isMarkdown()
	}
	if at < len(e.lines) {
		e.lines[at].blank = true
	}
	e.lines = append(e.lines[:at:at], append(add, e.lines[at:]...)...)
}

func note(format string, args ...any) *outLine {
	text := fmt.Sprintf(format, args...)
	return &outLine{kind: design.Note, text: text, marked: text}
}

func (e *edition) sizesPreface() []*outLine {
	if e.sizes < 2 || e.anyLine(func(l *design.Line) bool { _, ok := sizeNames(l.Text, e.design.Sizes); return ok }) {
		return nil
	}
	if e.size != allSizes {
		return []*outLine{note("Size: %s", e.design.Sizes[e.size])}
	}
	return []*outLine{note("Sizes: %s (%s)", e.design.Sizes[0], strings.Join(e.design.Sizes[1:], ", "))}
}

func (e *edition) termsPreface(opt Options) *outLine {
	told := e.anyLine(func(l *design.Line) bool { _, ok := termsNamed(l.Text, e.design.Terms); return ok })
	if told || e.to == stitch.UnknownTerms || e.design.Front == nil && e.terms == nil {
		return nil
	}
	return note("This pattern uses %s terms.", termNames[e.to])
}

func (e *edition) gaugePreface() []*outLine {
	var out []*outLine
	for _, g := range e.design.Gauges {
		if !within(g.Span, e.design.Front.Span) {
			return nil
		}
	}
	for _, g := range e.design.Gauges {
		if g.Width == 0 && g.Height == 0 {
			continue
		}
		word := "Gauge"
		if e.to == stitch.UK {
			word = "Tension"
		}
		out = append(out, note("%s: %s", word, e.gaugeWords(g)))
	}
	return out
}

// gaugeWords writes a gauge of the front matter as a line of a pattern.
func (e *edition) gaugeWords(g design.Gauge) string {
	text := e.design.Source[g.Span.Start:g.Span.End]
	if i := strings.IndexByte(text, ':'); i >= 0 {
		text = strings.TrimSpace(text[i+1:])
	}
	var c edits
	e.proseChanges(&c, text, 0)
	text = tidy(c.splice(text, 0, spanAt(0, len(text))))
	if g.Pattern == "" || strings.Contains(strings.ToLower(text), g.Pattern) {
		return text
	}
	what, state, _ := strings.Cut(text, ",")
	if state != "" {
		state = "," + state
	}
	return what + " in " + g.Pattern + state
}

func (e *edition) anyLine(is func(*design.Line) bool) bool {
	for _, l := range e.design.Lines {
		if is(l) {
			return true
		}
	}
	return false
}
