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
		for _, e := range Terms(src, at, from, rw.To) {
			add(e.span, e.text)
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

// words that differ between the two Englishes and name no stitch.
// Source: docs/sources.md, T8, T30 and terms.csv.
var toUK = map[string]string{"skip": "miss", "sk": "miss", "skipping": "missing", "skipped": "missed", "gauge": "tension", "color": "colour", "center": "centre"}
var toUS = map[string]string{"miss": "sk", "missing": "skipping", "missed": "skipped", "tension": "gauge", "colour": "color", "centre": "center", "yrh": "yo", "yoh": "yo"}

// Terms lists the replacements that turn a text into the other English: names
// of stitches, and words such as skip and miss.
func Terms(src string, at int, from Options, to stitch.Terms) []edit {
	if from.Stitches == nil {
		from.Stitches = stitch.Standard()
	}
	p := &parser{text: src, at: at, opt: from}
	p.scan(src)
	p.end = len(p.toks)
	words := toUK
	if to == stitch.US {
		words = toUS
	}
	var edits []edit
	for p.i < p.end {
		t := p.peek(0)
		k, n := p.lookup()
		switch {
		case n > 0 && t.kind == word:
			name := src[t.start:p.tokAt(p.i+n-1).end]
			if text := renamed(from, k, name, to); text != name {
				edits = append(edits, edit{Span{Start: at + t.start, End: at + p.tokAt(p.i+n-1).end}, text})
			}
			p.i += n
		case t.kind == word && words[t.text] != "":
			edits = append(edits, edit{Span{Start: at + t.start, End: at + t.end}, like(src[t.start:t.end], words[t.text])})
			p.i++
		default:
			p.i++
		}
	}
	return edits
}

// renamed gives a stitch its name in the other terms, in the form it was
// written: short or in full, one or several.
func renamed(from Options, k stitch.Kind, name string, to stitch.Terms) string {
	d := from.Stitches
	short, full := d.Name(k, from.Terms), d.FullName(k, from.Terms)
	low := strings.ToLower(name)
	other := d.Name(k, to)
	if other == "" || short == other && full == d.FullName(k, to) {
		return name
	}
	switch {
	case low == strings.ToLower(short):
	case full != "" && strings.HasPrefix(low, strings.ToLower(full)):
		other = d.FullName(k, to)
		if strings.HasSuffix(low, "s") && !strings.HasSuffix(strings.ToLower(full), "s") {
			other += "s"
		}
	case strings.TrimSuffix(low, "s") == strings.ToLower(short):
		other += "s"
	case strings.Contains(low, " ") && len(low) > 8:
		other = d.FullName(k, to)
	}
	return like(name, other)
}

// like gives text the capitals of the words it replaces.
func like(old, text string) string {
	if old == "" || text == "" {
		return text
	}
	if c := old[0]; c >= 'A' && c <= 'Z' {
		if len(old) > 1 && old == strings.ToUpper(old) && len(old) > 2 && text == strings.ToLower(text) {
			return strings.ToUpper(text)
		}
		if text[0] >= 'a' && text[0] <= 'z' {
			return string(text[0]-32) + text[1:]
		}
	}
	return text
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
