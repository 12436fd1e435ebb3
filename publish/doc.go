// Package publish writes what the other stages know: findings and readings for
// a terminal or as JSON, and the pattern itself as plain text or as a web
// page, in all sizes or one, in US or UK terms. One writer a file.
//
// It measures and decides nothing, and changes none of the designer's words
// but the numbers, terms and units she asked to have changed. In the text of one
// size it leaves out the steps that size has none of. The same design and the
// same options always give the same bytes.
package publish
