package publish

import (
	"fmt"
	"strings"

	"rowproof/design"
	"rowproof/notation"
	"rowproof/stitch"
)

// Options say how a pattern is to be written. The zero Options are the pattern
// as it stands, for all sizes.
type Options struct {
	Size     string        // one of the design's sizes, any case; "" is all of them
	Terms    stitch.Terms  // the stitch names to use; UnknownTerms keeps the pattern's own
	Units    notation.Unit // Inch or Centimetre alone; NoUnit keeps what is written
	EveryRow bool          // ranges of rows are written out, row by row
}

// A SizeError is a size that cannot be written: unknown, or needed and missing.
type SizeError struct{ what string }

func (e *SizeError) Error() string { return e.what }

// allSizes is the size index for a pattern in all its sizes.
const allSizes = -1

// sizeIndex returns the place of the size asked for among the design's.
func sizeIndex(d *design.Design, name string) (int, error) {
	if name == "" {
		return allSizes, nil
	}
	for i, s := range d.Sizes {
		if s == name {
			return i, nil
		}
	}
	for i, s := range d.Sizes {
		if strings.EqualFold(s, strings.TrimSpace(name)) {
			return i, nil
		}
	}
	if len(d.Sizes) == 0 {
		return 0, &SizeError{fmt.Sprintf("the pattern names no sizes, so there is no size %q to choose.", name)}
	}
	return 0, &SizeError{fmt.Sprintf("the pattern has no size %q; its sizes are %s.", name, listed(d.Sizes))}
}
