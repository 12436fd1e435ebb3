package notation

import (
	"slices"
	"strings"

	"rowproof/stitch"
)

func sortBy[T any](list []*T, cmp func(a, b *T) int) { slices.SortStableFunc(list, cmp) }

// A Rewrite says what to replace when a line is printed. The zero Rewrite
// replaces nothing.
type Rewrite struct {
	To      stitch.Terms // UnknownTerms keeps the terms
	Number  func(*Number) (string, bool)
	Measure func(*Measure) (string, bool)
}

// An edit is words to put in the place of others.
type edit struct {
	span Span
	text string
}

// Print gives back the author's words of a line with terms, numbers and
// lengths replaced, and all else as it stands. src is the text the line was
// parsed from, at its offset in the document.
func Print(l *Line, src string, at int, from Options, rw Rewrite) string {
	var edits []edit
	add := func(s Span, text string) {
		if s.Start >= at && s.End <= at+len(src) && s.Start < s.End {
			edits = append(edits, edit{s, text})
		}
	}
	if rw.Number != nil {
		for _, n := range Numbers(l) {
			if text, ok := rw.Number(n); ok {
				add(n.Span, text)
			}
		}
	}
	if rw.Measure != nil {
		for _, m := range Measures(l) {
			if text, ok := rw.Measure(m); ok {
				add(m.Span, text)
			}
		}
	}
	if rw.To != stitch.UnknownTerms && rw.To != from.Terms {
		if t := NewTranslator(from.Terms, rw.To); t != nil {
			t.Each(src, func(start, end int, words string) {
				add(Span{Start: at + start, End: at + end}, words)
			})
		}
	}
	return splice(src, at, edits)
}

// splice puts edits into a text. Where two overlap the first holds.
func splice(src string, at int, edits []edit) string {
	slices.SortStableFunc(edits, func(a, b edit) int {
		if d := a.span.Start - b.span.Start; d != 0 {
			return d
		}
		return b.span.End - a.span.End
	})
	var b strings.Builder
	done := at
	for _, e := range edits {
		if e.span.Start < done {
			continue
		}
		b.WriteString(src[done-at : e.span.Start-at])
		b.WriteString(e.text)
		done = e.span.End
	}
	b.WriteString(src[done-at:])
	return b.String()
}

// ParseNumber reads a count that stands alone, nil if the text is none.
func ParseNumber(text string, at int, opt Options) *Number {
	if opt.Stitches == nil {
		opt.Stitches = stitch.Standard()
	}
	p := &parser{text: text, at: at, opt: opt}
	p.scan(text)
	p.end = len(p.toks)
	n := p.number()
	if n == nil || !p.done() {
		return nil
	}
	return n
}
