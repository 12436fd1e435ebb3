package check

import (
	"fmt"
	"slices"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/fabric"
	"rowproof/notation"
	"rowproof/stitch"
)

// NotWorked: an instruction that could not be worked, and is named so that
// nothing is unproved in silence.
const NotWorked diag.Code = "not-worked"

// NothingToWork is a file with words and no instruction among them.
const NothingToWork diag.Code = "nothing-to-work"

// UnreadWords: a row was worked, and some of its words were not understood.
const UnreadWords diag.Code = "unread-words"

// UnknownStitch: a word is almost the name of a stitch, and no dictionary has
// it.
const UnknownStitch diag.Code = "unknown-stitch"

// notWorked names every instruction that was not worked, and the words that
// stopped it.
func notWorked(c *checker) {
	for _, line := range c.d.Lines {
		if !ordered(line) {
			continue
		}
		if c.unknownStitch(line) {
			continue
		}
		worst := c.worst(line)
		if worst == fabric.Done || worst == fabric.ByMeasure {
			if line.Read != design.ReadWhole {
				c.add(diag.Finding{Severity: diag.Warning, Code: UnreadWords, Span: c.unreadSpan(line), Piece: title(line), Row: c.lineLabel(line),
					Message: orLine(c.lineLabel(line)) + " was worked without words that were not understood: “" + line.Unread + "”."})
			}
			continue
		}
		if c.hasError(line) {
			continue
		}
		c.add(diag.Finding{Severity: diag.Warning, Code: NotWorked, Span: c.unreadSpan(line), Piece: title(line), Row: c.lineLabel(line),
			Message: orLine(c.lineLabel(line)) + " was not worked" + c.because(line) + ".", Repair: c.nearWords(line)})
	}
}

// nothingToWork keeps a file without a single row from passing for a good one.
func nothingToWork(c *checker) {
	empty := slices.ContainsFunc(c.findings, func(f diag.Finding) bool { return f.Code == design.CodeEmptyFile })
	if empty || slices.ContainsFunc(c.d.Lines, ordered) {
		return
	}
	c.add(diag.Finding{Severity: diag.Error, Code: NothingToWork, Message: "There is no row to work in this file.",
		Detail: "A row starts with its number, as in “Row 1:” or “Rnd 1:”, and a foundation chain with “Ch”."})
}

// unreadSpan is the first words not understood, or the line.
func (c *checker) unreadSpan(line *design.Line) diag.Span {
	if line.Tree != nil && len(line.Tree.Unread) > 0 {
		return line.Tree.Unread[0]
	}
	for _, fault := range c.faultsOn(line) {
		if !fault.Span.IsZero() {
			return fault.Span
		}
	}
	return line.Span
}

// faultsOn lists the faults of a line, over all sizes.
func (c *checker) faultsOn(line *design.Line) []fabric.Fault {
	if c.faultsBy == nil {
		c.faultsBy = map[*design.Line][]fabric.Fault{}
		for _, f := range c.fabrics {
			for _, fault := range f.Faults {
				c.faultsBy[fault.Line] = append(c.faultsBy[fault.Line], fault)
			}
		}
	}
	return c.faultsBy[line]
}

// because says what stopped a line.
func (c *checker) because(line *design.Line) string {
	if line.Unread != "" {
		return ": these words were not understood: “" + line.Unread + "”"
	}
	for _, fault := range c.faultsOn(line) {
		switch fault.Kind {
		case fabric.NotUnderstood:
			return fmt.Sprintf(": “%s” does not say what to do stitch by stitch", strings.TrimSpace(fault.Text))
		case fabric.NoGauge:
			return ": it is worked to a length, and no gauge tells how many rows that is"
		case fabric.NoEdge:
			return ": nothing before it tells what it is worked into"
		}
	}
	return ": the rows it stands on were not worked"
}

// nearWords offers stitch names like the words that were not understood.
func (c *checker) nearWords(line *design.Line) string {
	if line.Tree == nil || line.Tree.Label == nil {
		return ""
	}
	for _, word := range strings.Fields(line.Unread) {
		if near := c.d.Stitches.Near(strings.Trim(word, ".,;:()[]"), c.d.Terms); len(near) > 0 && len(word) > 2 {
			return "did you mean " + strings.Join(near, " or ") + "?"
		}
	}
	return ""
}

// unknownStitch looks, among the words of a line that were not understood, for
// one that is almost the name of a stitch.
func (c *checker) unknownStitch(line *design.Line) bool {
	if line.Tree == nil || line.Tree.Label == nil {
		return false
	}
	if name := unknownName(line); name != nil {
		near := c.d.Stitches.Near(name.Text, c.d.Terms)
		f := diag.Finding{Severity: diag.Error, Code: UnknownStitch, Span: name.Span, Piece: title(line), Row: c.lineLabel(line),
			Sizes: slices.Clone(c.d.Sizes), Message: name.Text + " is not in the stitch list."}
		other, english := c.otherTerms()
		if ours := other[strings.ToLower(name.Text)]; ours != "" {
			f.Code, f.Repair = MixedTerms, ours
			f.Message = fmt.Sprintf("“%s” is a %s word in a pattern written in %s terms, and cannot be worked.", name.Text, english, c.d.Terms)
		} else if len(near) > 0 {
			f.Message = fmt.Sprintf("%s is not in the stitch list. Did you mean %s?", name.Text, strings.Join(near, " or "))
			f.Repair = near[0]
		}
		c.add(f)
		return true
	}
	for _, span := range line.Tree.Unread {
		for _, word := range wordsOf(c.d.Source[span.Start:span.End]) {
			if len(word.text) < 4 || !looksLikeStitch(word.text) {
				continue
			}
			near := c.d.Stitches.Near(word.text, c.d.Terms)
			if len(near) == 0 {
				continue
			}
			c.add(diag.Finding{Severity: diag.Error, Code: UnknownStitch, Piece: title(line), Row: c.lineLabel(line),
				Span:    diag.Span{Start: span.Start + word.at, End: span.Start + word.at + len(word.text)},
				Message: fmt.Sprintf("%s is not in the stitch list. Did you mean %s?", word.text, near[0]), Repair: near[0]})
			return true
		}
	}
	return false
}

// looksLikeStitch tells whether a word has the shape of a stitch's short name:
// letters with a figure among them.
func looksLikeStitch(word string) bool {
	digits := strings.IndexAny(word, "0123456789")
	return digits > 0 && digits < len(word)-1
}

// unknownName is the first stitch name of a line that no dictionary has, nil
// for none.
func unknownName(line *design.Line) *notation.StitchName {
	var found *notation.StitchName
	notation.Walk(line.Tree, func(s notation.Step) bool {
		if w, ok := s.(*notation.Work); ok && found == nil && w.Stitch != nil && w.Stitch.Kind == stitch.None && len(w.Stitch.Text) > 0 {
			found = w.Stitch
		}
		return found == nil
	})
	return found
}
