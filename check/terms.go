package check

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

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

// DefinitionDiffers: a definition is headed by one stitch and explains another.
const DefinitionDiffers diag.Code = "definition-differs"

// MixedTerms: words of the other English are used.
const MixedTerms diag.Code = "mixed-terms"

// terms compares the list of abbreviations with the stitches used, and looks
// for words of the other English.
func terms(c *checker) {
	c.definitions()
	c.abbreviations()
	c.mixed()
}

// definitions holds the name that a definition is headed by against what it
// explains: "hdc2tog = half double crochet 3 together", or an sc3tog of two
// legs.
func (c *checker) definitions() {
	for _, line := range c.d.Lines {
		if line.Kind == design.Instruction || line.Kind == design.Foundation {
			continue
		}
		for _, entry := range entriesOf(line) {
			c.definitionOf(line, entry)
		}
	}
}

// An entry explains one word; at is where it stands in its line.
type entry struct {
	text string
	at   int
}

// entriesOf parts a line that explains one word, or several: "inc = 2 sc in same
// st, dec = sc2tog".
func entriesOf(line *design.Line) []entry {
	if strings.Count(line.Text, "=") < 2 {
		if line.Kind != design.Definition {
			return nil
		}
		return []entry{{line.Text, 0}}
	}
	var list []entry
	for from := 0; from <= len(line.Text); {
		end := len(line.Text)
		if i := strings.IndexAny(line.Text[from:], ",;\n|"); i >= 0 {
			end = from + i
		}
		e := entry{line.Text[from:end], from}
		if lead, rest, ok := strings.Cut(e.text, ":"); ok && strings.Contains(rest, "=") { // "Abbreviations: sc = single crochet"
			e = entry{rest, from + len(lead) + 1}
		}
		equals := strings.Index(e.text, "=")
		if i := strings.Index(e.text, ". "); i > equals {
			e.text = e.text[:i]
		}
		if equals >= 0 {
			list = append(list, e)
		}
		from = end + 1
	}
	return list
}

// definitionOf holds one word against what it is said to mean.
func (c *checker) definitionOf(line *design.Line, e entry) {
	head, body, ok := cutEntry(e.text)
	if !ok {
		return
	}
	short := strings.Trim(head, " \t-*•")
	is, known := c.d.Stitches.Lookup(short, c.d.Terms)
	means, told := c.d.Stitches.Lookup(strings.Trim(body, " \t.;"), c.d.Terms)
	at := e.at + strings.Index(e.text, short)
	switch {
	case told && known && is != means && is != stitch.Increase && is != stitch.Decrease && strings.Contains(strings.TrimSpace(body), " "):
		c.definition(line, at, short, fmt.Sprintf("%s is explained as %s, which is %s.", short, strings.Trim(body, " \t.;"), c.d.Stitches.Name(means, c.d.Terms)))
	case told && !known && looksLikeStitch(short) && near(short, c.d.Stitches.Name(means, c.d.Terms)):
		c.definition(line, at, short, fmt.Sprintf("%s is not in the stitch list; what it is explained as is %s.", short, c.d.Stitches.Name(means, c.d.Terms)))
	case !told && known && looksLikeStitch(short) && strings.HasSuffix(strings.ToLower(body), "together"):
		c.definition(line, at, short, fmt.Sprintf("%s is explained as %s, which is another stitch.", short, strings.TrimSpace(body)))
	case known && is == stitch.Increase && startsOtherThanTwo(body):
		c.definition(line, at, short, fmt.Sprintf("%s is explained with a number that is not 2; an increase is 2 in one st.", short))
	case known && is == stitch.Decrease && (told && c.d.Stitches.Stitch(means).Uses != 2 || togetherOther(body)):
		c.definition(line, at, short, fmt.Sprintf("%s is explained as %s, which is not 2 sts worked together.", short, strings.Trim(body, " \t.;")))
	case groupDiffers(body) != "":
		c.definition(line, at, short, fmt.Sprintf("%s is explained with %s.", short, groupDiffers(body)))
	case line.Defines != stitch.None:
		s := c.d.Stitches.Stitch(line.Defines)
		if legs := legsIn(short); legs > 0 && s.Uses > 0 && len(s.Unread) == 0 && len(s.Moves) > 0 && legsOf(s) != legs {
			c.definition(line, at, short, fmt.Sprintf("%s is worked over %d places by its name and over %d as it is explained.", short, legs, legsOf(s)))
		}
	}
}

var (
	groupMade  = regexp.MustCompile(`(?i)\b(\d+) ?([a-z]+) (?:in|into) `)
	groupNamed = regexp.MustCompile(`(?i)\b(\d+)[ -]([a-z]+) group`)
)

// groupDiffers tells that the stitches a definition makes are not as many as the
// group it speaks of: "4 dc in same st, ... in first dc of 5-dc group". It is
// empty where they agree.
func groupDiffers(body string) string {
	made, named := groupMade.FindStringSubmatch(body), groupNamed.FindStringSubmatch(body)
	if made == nil || named == nil || !strings.EqualFold(made[2], named[2]) || made[1] == named[1] {
		return ""
	}
	return made[1] + " " + made[2] + " and then a group of " + named[1]
}

// togetherOther tells whether what a decrease means is a number of stitches
// together other than 2: "sc1tog".
func togetherOther(body string) bool {
	body = strings.Trim(strings.ToLower(body), " \t.;")
	legs := legsIn(body)
	return strings.HasSuffix(body, "tog") && legs > 0 && legs != 2
}

// startsOtherThanTwo tells whether what an increase means begins with a number
// other than 2: "3 sc in same st".
func startsOtherThanTwo(body string) bool {
	body = strings.TrimLeft(body, " \t")
	n := len(body) - len(strings.TrimLeft(body, "0123456789"))
	return n > 0 && body[:n] != "2"
}

func (c *checker) definition(line *design.Line, at int, short, message string) {
	c.add(diag.Finding{Severity: diag.Error, Code: DefinitionDiffers, Piece: title(line), Row: short,
		Span: diag.Span{Start: line.Start + at, End: line.Start + at + len(short)}, Message: message})
}

// near tells whether two names differ in no more than one letter.
func near(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	n := 0
	for i := range len(a) {
		if a[i] != b[i] {
			n++
		}
	}
	return n == 1
}

// legsIn is the 3 of "sc3tog", 0 for other names.
func legsIn(name string) int {
	name = strings.TrimSuffix(strings.ToLower(name), "tog")
	if n := len(name); n > 0 && name[n-1] >= '1' && name[n-1] <= '9' {
		return int(name[n-1] - '0')
	}
	return 0
}

// legsOf counts how often the hook goes into the work.
func legsOf(s *stitch.Stitch) int {
	n := 0
	for _, m := range s.Moves {
		if m.Do == stitch.Insert {
			n++
		}
	}
	return n
}

// cutEntry parts a definition's head from what it means.
func cutEntry(text string) (head, body string, ok bool) {
	at := strings.IndexAny(text, "=:–—")
	if dash := strings.Index(text, " - "); dash > 0 && (at < 0 || dash < at) {
		return text[:dash], text[dash+3:], true
	}
	if at <= 0 {
		return "", "", false
	}
	_, size := utf8.DecodeRuneInString(text[at:])
	return text[:at], text[at+size:], true
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
		if line.Kind != design.Definition || specialStitch(line) {
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

// specialStitch tells whether a definition explains how a stitch is worked: it
// is no entry of a list of abbreviations.
func specialStitch(line *design.Line) bool {
	_, body, _ := cutEntry(line.Text)
	return line.Defines != stitch.None && (strings.Contains(body, " in ") || len(line.Text) > 60)
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
		if _, rest, ok := strings.Cut(strings.ToLower(part), "abbreviations:"); ok && rest != "" {
			list = append(list, entryWords(rest)...)
			continue
		}
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
	other, name := c.otherTerms()
	for _, line := range c.d.Lines {
		if !ordered(line) {
			continue
		}
		for _, word := range wordsOf(line.Text) {
			if ours, ok := other[strings.ToLower(word.text)]; ok {
				if u := unknownName(line); u != nil && u.Span.Start == line.Start+word.at {
					continue // notWorked speaks of it
				}
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

// otherTerms is the words that only the other English has, each with ours, and
// what that English is called.
func (c *checker) otherTerms() (words map[string]string, name string) {
	if c.d.Terms == stitch.UK {
		return usOnly, "US"
	}
	return ukOnly, "UK"
}
