package publish

import (
	"cmp"
	"slices"
	"strings"

	"rowproof/diag"
)

// An edit puts other words in the place of a span of the document.
type edit struct {
	diag.Span
	words string
}

// edits are collected for one line, in any order. Where two overlap, the one
// added first holds.
type edits []edit

func (e *edits) add(span diag.Span, words string) {
	if span.End >= span.Start {
		*e = append(*e, edit{span, words})
	}
}

// covers tells whether one of the edits replaces all of a span.
func (e edits) covers(span diag.Span) bool {
	return slices.ContainsFunc(e, func(one edit) bool { return within(span, one.Span) })
}

// settled returns the edits in order of place, those that overlap an earlier
// one left out.
func (e edits) settled() edits {
	type ranked struct {
		edit
		rank int
	}
	all := make([]ranked, len(e))
	for i, one := range e {
		all[i] = ranked{one, i}
	}
	slices.SortStableFunc(all, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.rank, b.rank))
	})
	var out edits
	var rank int
	for _, next := range all {
		if n := len(out); n > 0 && next.Start < out[n-1].End {
			if next.rank < rank {
				out[n-1], rank = next.edit, next.rank
			}
			continue
		}
		out, rank = append(out, next.edit), next.rank
	}
	return out
}

// splice returns the part of text in span with the edits carried out. Words
// outside the span are left alone. base is where text begins in the document.
func (e edits) splice(text string, base int, span diag.Span) string {
	var b strings.Builder
	at := span.Start
	for _, one := range e.settled() {
		if one.Start < at || one.End > span.End {
			continue
		}
		b.WriteString(text[at-base : one.Start-base])
		b.WriteString(one.words)
		at = one.End
	}
	b.WriteString(text[at-base : span.End-base])
	return b.String()
}
