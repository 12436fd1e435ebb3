package stitch

import (
	"maps"
	"slices"
)

// A Dictionary is a list of stitches and of the names they go by in US and UK
// terms. It is read-only once built, except through Add.
type Dictionary struct {
	stitches   []*Stitch // by Kind; the first is no stitch
	own, under names     // names added here; names shared with the dictionary it was cloned from
}

// names finds kinds by the keys of their names, see key.
type names struct {
	us, uk map[string]Kind
	words  map[string]int // by the first word of a name: the most words such a name has
}

func newNames(n int) names {
	return names{us: make(map[string]Kind, n), uk: make(map[string]Kind, n), words: make(map[string]int, n/4)}
}

// newDictionary makes an empty dictionary with room for n names.
func newDictionary(n int) *Dictionary {
	return &Dictionary{stitches: []*Stitch{{}}, own: newNames(n)}
}

// Clone returns a dictionary with the same stitches, to which a pattern's own
// can be added without changing d.
func (d *Dictionary) Clone() *Dictionary {
	c := &Dictionary{stitches: slices.Clone(d.stitches), own: newNames(0), under: d.own}
	if d.under.us != nil {
		c.under = d.under
		c.own = names{us: maps.Clone(d.own.us), uk: maps.Clone(d.own.uk), words: maps.Clone(d.own.words)}
	}
	return c
}

// mostStitches keeps a Kind within its type however many a pattern defines.
const mostStitches = 60000

// Add puts s into the dictionary and returns its Kind. A stitch of the same
// name is replaced and its Kind kept, so that a designer's own "cl" is the one
// her rows mean; names of s that belonged to other stitches are s's from now on.
//
// Edge items of s with neither a Kind nor Chains, and a Base of None, stand for
// s itself and are given its Kind. Once the dictionary holds 60000 stitches,
// further names are not added and Add returns None.
func (d *Dictionary) Add(s *Stitch) Kind {
	k := d.place(s)
	if k == None {
		if len(d.stitches) >= mostStitches {
			return None
		}
		k = Kind(len(d.stitches))
		d.stitches = append(d.stitches, nil)
	}
	s.Kind = k
	for i := range s.Edge {
		if s.Edge[i] == (EdgeItem{}) {
			s.Edge[i].Kind = k
		}
	}
	if s.Base == None {
		s.Base = k
	}
	d.stitches[k] = s
	d.nameAll(d.own.us, k, s.US, s.USName)
	d.nameAll(d.own.us, k, s.Also...)
	d.nameAll(d.own.uk, k, s.UK, s.UKName)
	d.nameAll(d.own.uk, k, s.AlsoUK...)
	return k
}

// place is the Kind under which s is known already, None if it is new.
func (d *Dictionary) place(s *Stitch) Kind {
	if k := d.same(s.USName, s.US, US); k != None {
		return k
	}
	return d.same(s.UKName, s.UK, UK)
}

func (d *Dictionary) nameAll(in map[string]Kind, k Kind, names ...string) {
	for _, name := range names {
		d.name(in, name, k)
	}
}

// name lets k be found by name.
func (d *Dictionary) name(in map[string]Kind, name string, k Kind) {
	var buf [mostKey]byte
	if b, ok := key(&buf, name); ok && len(b) > 0 {
		in[string(b)] = k
		first, n := firstWord(name)
		d.own.words[first] = max(d.own.words[first], n)
	}
}

// Stitch returns the stitch of kind k, and for a kind the dictionary does not
// have a stitch without names. It is never nil.
func (d *Dictionary) Stitch(k Kind) *Stitch {
	if int(k) >= len(d.stitches) {
		return d.stitches[None]
	}
	return d.stitches[k]
}

// Len is the number of kinds, None included: every Kind is below it.
func (d *Dictionary) Len() int { return len(d.stitches) }

// Name returns the abbreviation of k: "sc", in UK terms "dc".
func (d *Dictionary) Name(k Kind, t Terms) string {
	if s := d.Stitch(k); t == UK {
		return s.UK
	} else {
		return s.US
	}
}

// FullName returns the full name of k: "single crochet", in UK terms "double
// crochet".
func (d *Dictionary) FullName(k Kind, t Terms) string {
	if s := d.Stitch(k); t == UK {
		return s.UKName
	} else {
		return s.USName
	}
}

// Plural returns the name of k as it stands after a number: "24 sc", "5 shells",
// "3 V-sts".
func (d *Dictionary) Plural(k Kind, t Terms) string {
	name := d.Name(k, t)
	if name == "" || name[len(name)-1] == 's' {
		return name
	}
	if d.Stitch(k).takesS(name, t) {
		return name + "s"
	}
	return name
}

// takesS tells whether a name takes an s after a number: whole words and names
// that end in "st" do, abbreviations as "sc" and "hdc2tog" do not.
func (s *Stitch) takesS(name string, t Terms) bool {
	switch {
	case name == "ch", name == "cl", len(name) > 3 && (name[len(name)-3:] == " st" || name[len(name)-3:] == "-st"):
		return true
	case t == UK:
		return name == s.UKName
	}
	return name == s.USName
}
