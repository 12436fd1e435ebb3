package check

import (
	"fmt"
	"strings"
	"unicode"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
	"rowproof/stitch"
)

// UndefinedTerm: a stitch is used that the pattern's list of abbreviations
// leaves out.
const UndefinedTerm diag.Code = "undefined-term"

// UnusedTerm: the list of abbreviations names a stitch that no row uses.
const UnusedTerm diag.Code = "unused-term"

// MixedTerms: words of the other English are used.
const MixedTerms diag.Code = "mixed-terms"

// terms compares the list of abbreviations with the stitches used, and looks
// for words of the other English.
func terms(c *checker) {
	c.abbreviations()
	c.mixed()
}

// minList is how many entries make a list of abbreviations: fewer are special
// stitches only.
const minList = 4

// abbreviations compares what is defined with what is used.
func (c *checker) abbreviations() {
	defined := map[string]*design.Line{}
	entries := 0
	var order []string
	for _, line := range c.d.Lines {
		if line.Kind != design.Definition {
			continue
		}
		for _, word := range entryWords(line.Text) {
			if defined[word] == nil {
				defined[word] = line
				order = append(order, word)
			}
			entries++
		}
	}
	if entries < minList {
		return
	}
	used := c.wordsUsed()
	seen := map[stitch.Kind]bool{}
	for _, line := range c.d.Lines {
		if !ordered(line) || line.Tree == nil {
			continue
		}
		notation.Walk(line.Tree, func(s notation.Step) bool {
			w, ok := s.(*notation.Work)
			if !ok || w.Stitch == nil || w.Stitch.Kind == stitch.None || seen[w.Stitch.Kind] {
				return true
			}
			seen[w.Stitch.Kind] = true
			if !c.isDefined(w.Stitch, defined) {
				c.add(diag.Finding{Severity: diag.Warning, Code: UndefinedTerm, Span: w.Stitch.Span, Piece: title(line), Row: c.lineLabel(line),
					Message: fmt.Sprintf("%s is used and is not in the list of abbreviations.", w.Stitch.Text),
					Repair:  fmt.Sprintf("%s = %s", c.d.Stitches.Name(w.Stitch.Kind, c.d.Terms), c.d.Stitches.FullName(w.Stitch.Kind, c.d.Terms))})
			}
			return true
		})
	}
	for _, word := range order {
		line := defined[word]
		if used[word] || c.usedForm(word, used) {
			continue
		}
		at := strings.Index(strings.ToLower(line.Text), word)
		span := line.Span
		if at >= 0 {
			span = diag.Span{Start: line.Start + at, End: line.Start + at + len(word)}
		}
		c.add(diag.Finding{Severity: diag.Warning, Code: UnusedTerm, Span: span, Piece: title(line),
			Message: fmt.Sprintf("%s is defined and no row uses it.", line.Text[max(0, at):max(0, at)+len(word)])})
	}
}

// isDefined tells whether the list has a stitch, under any of its names.
func (c *checker) isDefined(name *notation.StitchName, defined map[string]*design.Line) bool {
	s := c.d.Stitches.Stitch(name.Kind)
	if !s.Defined.IsZero() {
		return true
	}
	names := []string{name.Text, s.US, s.UK, s.USName, s.UKName, c.d.Stitches.Name(name.Kind, c.d.Terms)}
	for _, n := range append(names, s.Also...) {
		if n != "" && defined[strings.ToLower(n)] != nil {
			return true
		}
	}
	return name.Kind == stitch.Chain
}

// usedForm tells whether a word is used in another form: plural, or with a
// number.
func (c *checker) usedForm(word string, used map[string]bool) bool {
	if used[word+"s"] || used[strings.TrimSuffix(word, "s")] || used[strings.TrimSuffix(word, "(s)")] || used[strings.TrimSuffix(word, "(s)")+"s"] {
		return true
	}
	return strings.ContainsAny(word, " -/") || len(word) < 2
}

// wordsUsed is every word of the lines that are no definitions.
func (c *checker) wordsUsed() map[string]bool {
	used := map[string]bool{}
	for _, line := range c.d.Lines {
		text := line.Text
		if line.Kind == design.Definition {
			if _, text, _ = strings.Cut(text, ":"); line.Defines == stitch.None {
				continue
			}
		}
		for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
			w = strings.ToLower(w)
			used[w] = true
			used[strings.TrimLeft(w, "0123456789")] = true
			used[strings.TrimRight(w, "0123456789")] = true
		}
	}
	return used
}

// entryWords is what an entry of a list defines: the words before the sign that
// parts them from their meaning. An entry may be one of several in a line.
func entryWords(text string) []string {
	var list []string
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' || r == '|' }) {
		at := strings.IndexAny(part, "=:–—")
		if dash := strings.Index(part, " - "); dash >= 0 && (at < 0 || dash < at) {
			at = dash
		}
		if at <= 0 {
			continue
		}
		head := strings.Trim(part[:at], " \t*•-.,")
		for _, w := range strings.FieldsFunc(head, func(r rune) bool { return r == '(' || r == ')' || r == ',' || r == '/' }) {
			if w = strings.ToLower(strings.TrimSpace(w)); w != "" && w != "s" && len(w) < 24 {
				list = append(list, w)
			}
		}
	}
	return list
}

// ukOnly and usOnly are words that one English has and the other has not.
// Source: docs/sources.md, T8 and T30.
var (
	ukOnly = map[string]string{"htr": "hdc", "miss": "skip", "tension": "gauge", "ss": "sl st", "trtr": "dtr", "dtr2tog": "tr2tog", "htr2tog": "hdc2tog"}
	usOnly = map[string]string{"sc": "dc", "hdc": "htr", "sc2tog": "dc2tog", "hdc2tog": "htr2tog", "sk": "miss", "fsc": "fdc", "esc": "edc"}
)

// mixed looks, in the instructions, for words of the other English.
func (c *checker) mixed() {
	other, name := ukOnly, "UK"
	if c.d.Terms == stitch.UK {
		other, name = usOnly, "US"
	}
	for _, line := range c.d.Lines {
		if !ordered(line) {
			continue
		}
		for _, word := range wordsOf(line.Text) {
			if ours, ok := other[strings.ToLower(word.text)]; ok {
				c.add(diag.Finding{Severity: diag.Warning, Code: MixedTerms, Span: diag.Span{Start: line.Start + word.at, End: line.Start + word.at + len(word.text)},
					Piece: title(line), Row: c.lineLabel(line),
					Message: fmt.Sprintf("“%s” is a %s word in a pattern written in %s terms.", word.text, name, c.d.Terms), Repair: ours})
				return
			}
		}
	}
}

// A wordAt is a word and where it stands.
type wordAt struct {
	at   int
	text string
}

func wordsOf(text string) []wordAt {
	var list []wordAt
	start := -1
	for i := 0; i <= len(text); i++ {
		letter := i < len(text) && (text[i] >= 'a' && text[i] <= 'z' || text[i] >= 'A' && text[i] <= 'Z' || text[i] >= '0' && text[i] <= '9')
		if letter && start < 0 {
			start = i
		}
		if !letter && start >= 0 {
			s, skip := text[start:i], 0
			for skip < len(s) && s[skip] >= '0' && s[skip] <= '9' {
				skip++
			}
			list = append(list, wordAt{start + skip, s[skip:]})
			start = -1
		}
	}
	return list
}
