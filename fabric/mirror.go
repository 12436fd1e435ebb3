package fabric

import (
	"rowproof/notation"
	"rowproof/stitch"
)

// sameEnd is the first row of the second of two sides that is shaped at the
// same end of the row as its fellow of the first, where the sides should mirror
// each other; nil when there is none or it cannot be told.
//
// Two sides begun with the same face toward the maker are worked in the same
// direction, so one is shaped at the start of a row and the other at its end.
func sameEnd(a, b []*Row) *Row {
	if a[0].Side == notation.NoSide || a[0].Side != b[0].Side || len(a) != len(b) {
		return nil
	}
	for i := range b {
		if b[i].Side != a[i].Side || b[i].Body.Patched || a[i].Body.Patched {
			return nil
		}
		start, end := shapedEnds(a[i].Body)
		otherStart, otherEnd := shapedEnds(b[i].Body)
		if start != end && start == otherStart && end == otherEnd {
			return b[i]
		}
	}
	return nil
}

// shapedEnds is how many stitches a row gains or loses in its first half and in
// its second.
func shapedEnds(b *Body) (start, end int) {
	last := int32(-1)
	for k, s := range b.Stitches {
		change := 0
		switch {
		case s.Flag&Tch != 0 || s.Kind == stitch.Chain || s.Kind == stitch.SlipStitch:
			continue
		case s.Uses > 1:
			change = 1 - int(s.Uses)
		case s.Into >= 0 && s.Into == last:
			change = 1
		}
		last = s.Into
		if 2*k < len(b.Stitches) {
			start += change
		} else {
			end += change
		}
	}
	return start, end
}
