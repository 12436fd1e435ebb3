package notation

import (
	"strings"
	"unicode"

	"rowproof/stitch"
)

// stems pairs the basic names of the two systems, US first. Each is one step
// apart. Source: docs/sources.md T4, T6, T7, T8.
var stems = [...][2]string{
	{"sc", "dc"}, {"hdc", "htr"}, {"dc", "tr"}, {"tr", "dtr"}, {"dtr", "trtr"}, {"trtr", "qtr"},
	{"esc", "edc"}, {"ehdc", "ehtr"}, {"edc", "etr"}, {"etr", "edtr"},
}

// spellings are other ways to write a stem, that are read and never written.
var spellings = [...][2]string{stitch.US: {"trc", "tr"}, stitch.UK: {"ttr", "trtr"}}

// names pairs the full names. "crochet" after the last word is taken in too.
var names = [...][2]string{
	{"single crochet", "double crochet"},
	{"half double crochet", "half treble crochet"},
	{"double crochet", "treble crochet"},
	{"treble crochet", "double treble crochet"},
	{"double treble crochet", "triple treble crochet"},
	{"triple treble crochet", "quadruple treble crochet"},
}

// nameSpellings are shorter or older full names, and the name they stand for.
var nameSpellings = [...][][2]string{
	stitch.US: {
		{"half double", "half double crochet"}, {"triple crochet", "treble crochet"},
		{"treble", "treble crochet"}, {"double treble", "double treble crochet"}, {"triple treble", "triple treble crochet"},
	},
	stitch.UK: {
		{"half treble", "half treble crochet"}, {"treble", "treble crochet"},
		{"double treble", "double treble crochet"}, {"triple treble", "triple treble crochet"},
		{"quadruple treble", "quadruple treble crochet"},
	},
}

// tradeWords are other words that differ. Source: docs/sources.md T8 and
// similar; common practice.
var tradeWords = [...]map[string]string{
	stitch.US: {"sk": "miss", "skip": "miss", "skips": "misses", "skipped": "missed", "skipping": "missing", "gauge": "tension", "gauges": "tensions"},
	stitch.UK: {"miss": "skip", "misses": "skips", "missed": "skipped", "missing": "skipping", "tension": "gauge", "tensions": "gauges"},
}

// A Translator turns stitch names, and words such as skip and gauge, of one
// system of terms into those of the other, all in one pass, so that no name is
// turned twice.
type Translator struct {
	from   stitch.Terms
	stems  map[string]string
	others map[string]string
	names  map[string]string
}

// NewTranslator returns nil when the terms are the same or one is not known.
func NewTranslator(from, to stitch.Terms) *Translator {
	if from == to || from == stitch.UnknownTerms || to == stitch.UnknownTerms {
		return nil
	}
	t := &Translator{from: from, stems: map[string]string{}, names: map[string]string{}, others: tradeWords[from]}
	a, b := int(from-stitch.US), int(to-stitch.US)
	for _, s := range stems {
		t.stems[s[a]] = s[b]
	}
	s := spellings[from]
	t.stems[s[0]] = t.stems[s[1]]
	for _, n := range names {
		t.names[n[a]] = n[b]
	}
	for _, n := range nameSpellings[from] {
		t.names[n[0]] = t.names[n[1]]
	}
	return t
}

// Each visits the words of text that differ, in order: the bytes they stand on
// and what they turn into.
func (t *Translator) Each(text string, visit func(start, end int, words string)) {
	for i := 0; i < len(text); {
		if !latin(text[i]) {
			i++
			continue
		}
		end, words := t.at(text, i)
		if words != "" {
			visit(i, end, words)
		}
		i = end
	}
}

// at reads the word at i, or the name of several words, and returns its end
// and what it turns into, "" for a word that stays.
func (t *Translator) at(text string, i int) (end int, words string) {
	end, words = t.name(text, i)
	if words != "" {
		return end, words
	}
	end = i
	for end < len(text) && latin(text[end]) {
		end++
	}
	word := text[i:end]
	if other, ok := t.others[strings.ToLower(word)]; ok {
		return end, LikeCase(word, other)
	}
	// Words such as "dc2tog" and "dcs" go on after the stem.
	if n := togAfter(text, end); n > 0 {
		return end, t.abbreviation(word)
	}
	if stem, ok := strings.CutSuffix(word, "s"); ok && len(stem) > 1 {
		if turned := t.abbreviation(stem); turned != "" {
			return end, turned + "s"
		}
	}
	return end, t.abbreviation(word)
}

// abbreviation turns "sc", "FPdc", "fsc" and the like, or returns "".
func (t *Translator) abbreviation(word string) string {
	if turned, ok := t.stems[strings.ToLower(word)]; ok {
		return LikeCase(word, turned)
	}
	for _, prefix := range []string{"fp", "bp", "f", "r", "l"} {
		if len(word) <= len(prefix) || !strings.EqualFold(word[:len(prefix)], prefix) {
			continue
		}
		rest := word[len(prefix):]
		if turned, ok := t.stems[strings.ToLower(rest)]; ok {
			return word[:len(prefix)] + LikeCase(rest, turned)
		}
	}
	return ""
}

// longestName is how many words the longest full name has.
const longestName = 3

// name reads the longest full name at i.
func (t *Translator) name(text string, i int) (end int, words string) {
	key, at := "", i
	for n := 0; n < longestName; n++ {
		from := at
		for at < len(text) && latin(text[at]) {
			at++
		}
		if at == from {
			break
		}
		if n > 0 {
			key += " "
		}
		key += strings.ToLower(text[from:at])
		if len(key) > 32 {
			break
		}
		if turned, ok := t.names[key]; ok {
			end, words = at, turned
		}
		from = at
		for at < len(text) && (text[at] == ' ' || text[at] == '\n' || text[at] == '-') {
			at++
		}
		if at == from || at > from+3 {
			break
		}
	}
	if words == "" {
		return i, ""
	}
	return end, LikeCase(text[i:end], words)
}

// togAfter returns the length of "2tog" or " 2 tog" at i, 0 for none.
func togAfter(text string, i int) int {
	j := i
	for j < len(text) && text[j] >= '0' && text[j] <= '9' {
		j++
	}
	if j > i && strings.HasPrefix(text[j:], "tog") {
		return j + 3 - i
	}
	return 0
}

func latin(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// LikeCase writes words as model is written: all capitals, each word with a
// capital, a first capital, or none.
func LikeCase(model, words string) string {
	letters, upper := 0, 0
	for _, r := range model {
		if unicode.IsLetter(r) {
			letters++
			if unicode.IsUpper(r) {
				upper++
			}
		}
	}
	switch {
	case letters > 1 && upper == letters:
		return strings.ToUpper(words)
	case upper > 1 && strings.ContainsAny(model, " -"):
		parts := strings.Split(words, " ")
		for i, p := range parts {
			parts[i] = capitalOf(p)
		}
		return strings.Join(parts, " ")
	case model != "" && unicode.IsUpper(rune(model[0])):
		return capitalOf(words)
	}
	return words
}

func capitalOf(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
