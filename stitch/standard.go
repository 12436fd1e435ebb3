package stitch

import (
	_ "embed"
	"strings"
	"sync"
)

//go:embed dictionary.txt
var dictionaryText string

// Standard returns the stitches of dictionary.txt, which is read the first
// time. All callers share it: Clone it before adding to it.
func Standard() *Dictionary { return standard() }

var standard = sync.OnceValue(func() *Dictionary { return readDictionary(dictionaryText) })

// readDictionary reads a dictionary file. An entry is a paragraph: a line of
// names, then, indented, the definition as a designer would write it. Names are
// the abbreviation, the full name, and others; after a bar the same in UK
// terms, as far as they do not follow from the US ones by shifting each word by
// one. A line that begins with # is a remark.
//
// Stitches get their Kind by their order.
func readDictionary(text string) *Dictionary {
	d := newDictionary(512)
	var names, definition string
	var r reader
	end := func() {
		if names != "" {
			d.Add(d.entry(&r, names, definition))
		}
		names, definition = "", ""
	}
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.TrimSpace(line) == "":
			end()
		case line[0] != ' ':
			end()
			names = line
		default:
			definition = strings.TrimLeft(definition+" "+strings.TrimSpace(line), " ")
		}
	}
	end()
	return d
}

// entry reads one paragraph.
func (d *Dictionary) entry(r *reader, names, definition string) *Stitch {
	s := &Stitch{Uses: 1, Edge: []EdgeItem{{}}, Text: definition}
	us, uk, _ := strings.Cut(names, "|")
	s.US, s.USName, s.Also = threeNames(us)
	s.UK, s.UKName, s.AlsoUK = threeNames(strings.TrimPrefix(strings.TrimSpace(uk), "UK "))
	if s.UK == "" {
		s.UK = toUK(s.US)
	}
	if s.UKName == "" {
		s.UKName = toUK(s.USName)
	}
	if s.AlsoUK == nil {
		for _, name := range s.Also {
			s.AlsoUK = append(s.AlsoUK, toUK(name))
		}
	}
	s.AlsoUK = distinct(append(s.AlsoUK, ukSpellings(s.UK, s.UKName)...), s.UK, s.UKName)
	_, m := r.run(d, definition, 0, US)
	m.give(s, definition, nil)
	switch Kind(len(d.stitches)) {
	case Increase:
		s.Family, s.Legs = Open, 2
		s.Edge = []EdgeItem{{Kind: SingleCrochet}, {Kind: SingleCrochet}}
		s.Base = SingleCrochet
	case Decrease:
		s.Family, s.Legs, s.Uses = Together, 2, 2
		s.Base = SingleCrochet
	}
	return s
}

// threeNames parts "sc, single crochet; other, names".
func threeNames(s string) (abbr, full string, also []string) {
	first, others, _ := strings.Cut(s, ";")
	abbr, full, _ = strings.Cut(first, ",")
	abbr, full = strings.TrimSpace(abbr), strings.TrimSpace(full)
	for _, name := range strings.Split(others, ",") {
		if name = strings.TrimSpace(name); name != "" {
			also = append(also, name)
		}
	}
	return abbr, full, also
}

// ukSpellings gives the further ways in which UK patterns write a name: "exdc"
// for an extended stitch, "rtf", "tr/rf" and "raised treble front" for a post
// stitch.
//
// Source: docs/sources.md T5, T11; the words with raised from memory.
func ukSpellings(abbr, full string) []string {
	if rest, ok := strings.CutPrefix(full, "extended "); ok && rest != full {
		return []string{"ex" + strings.TrimPrefix(abbr, "e")}
	}
	for _, side := range [...][2]string{{"front", "FP"}, {"back", "BP"}} {
		of, ok := strings.CutPrefix(full, side[0]+" post ")
		plain, fp := strings.CutPrefix(abbr, side[1])
		if !ok || !fp || strings.HasSuffix(abbr, "tog") {
			continue
		}
		f := side[0][:1]
		names := []string{plain + "/r" + f, "r" + plain + f, "r" + f + plain, "raised " + of + " " + side[0], "raised " + side[0] + " " + of}
		if plain == "tr" || plain == "dc" {
			names = append(names, "r"+plain[:1]+f)
		}
		return names
	}
	return nil
}
