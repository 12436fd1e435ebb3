// Package diag holds findings: what is wrong in a pattern, where, in which
// sizes, and how to put it right, in words a crocheter can act on.
//
// Every stage that reads or works a pattern reports with it; none stops at a
// mistake. A fault in the world (a file that cannot be read) is an error, not
// a finding.
package diag

import "cmp"

// A Severity says how much a finding matters.
type Severity int

// The severities, from the least.
const (
	Note    Severity = iota + 1 // worth knowing; nothing to repair
	Warning                     // the pattern works and will trouble someone
	Error                       // the pattern does not work
)

// String returns the severity as printed: "error", "warning" or "note".
func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	case Note:
		return "note"
	}
	return ""
}

// A Code names a check. Codes are stable: they stand in docs and in JSON.
type Code string

// A Span is a run of bytes in the document, from Start up to, not including,
// End. The zero Span is "no place".
type Span struct{ Start, End int }

// IsZero reports whether s is no place at all.
func (s Span) IsZero() bool { return s == Span{} }

// A Finding is one thing to put right or to know.
type Finding struct {
	Severity Severity
	Code     Code
	Span     Span     // the fewest bytes that show it
	Also     []Span   // other places to look at, as the row it disagrees with
	Piece    string   // heading of the piece, "" outside one
	Row      string   // "Row 12", "Rnd 3", "Cluster"; "" outside one
	Sizes    []string // sizes it concerns, in the pattern's order; nil for a pattern with one size
	Message  string   // one sentence that stands alone
	Detail   string   // the counting, a line a size, to be checked with a finger
	Repair   string   // words that could be typed into the pattern; "" when none is certain
}

// Compare orders findings by place, then severity (the gravest first), then
// code: the order they are printed in.
func Compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(a.Span.Start, b.Span.Start),
		cmp.Compare(b.Severity, a.Severity),
		cmp.Compare(a.Code, b.Code),
		cmp.Compare(a.Message, b.Message))
}
