package design

import "rowproof/diag"

// The codes of what reading can find. Each is explained beside the place that
// reports it.
const (
	CodeEmptyFile     diag.Code = "empty-file"          // nothing but blanks
	CodeTooLong       diag.Code = "file-too-long"       // more than can be a pattern
	CodeLineTooLong   diag.Code = "line-too-long"       // more than can be one instruction
	CodeEncoding      diag.Code = "encoding"            // read, but not written in UTF-8
	CodeNotText       diag.Code = "not-text"            // a byte that is no letter
	CodeOpenComment   diag.Code = "comment-not-closed"  // <!-- without -->
	CodeFrontMatter   diag.Code = "front-matter"        // a line of the front matter that cannot be read
	CodeFrontOpen     diag.Code = "front-matter-open"   // no closing ---
	CodeUnknownKey    diag.Code = "unknown-key"         // a key that means nothing here
	CodeFrontValue    diag.Code = "front-matter-value"  // a value that does not fit its key
	CodeTooManySizes  diag.Code = "too-many-sizes"      // more than mostSizes
	CodeSizeTwice     diag.Code = "size-twice"          // one name for two sizes
	CodeSizesDisagree diag.Code = "sizes-disagree"      // front matter and size line, or two size lines
	CodeSizesGuessed  diag.Code = "sizes-not-named"     // only the number lists tell how many there are
	CodeUnknownSize   diag.Code = "unknown-size"        // "Size Q only"
	CodeExpression    diag.Code = "number-not-readable" // arithmetic that cannot be read
	CodeUnknownName   diag.Code = "unknown-number"      // a name that no number has
	CodeCycle         diag.Code = "number-in-a-circle"  // numbers that need each other
	CodeNotWhole      diag.Code = "number-not-whole"    // a division that leaves something over
	CodeNumberRange   diag.Code = "number-out-of-range" // below zero or past counting
	CodeListLength    diag.Code = "number-list-length"  // a list that does not fit the sizes
	CodeSeam          diag.Code = "seam-not-readable"   // a seam that names no two edges
	CodeGauge         diag.Code = "gauge-not-readable"  // a gauge without stitches, rows or length
)
