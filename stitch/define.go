package stitch

import (
	"slices"
	"strings"

	"rowproof/diag"
)

// mostText is how long a definition can be; what is longer defines no stitch.
const mostText = 4000

// ReadDefinition reads a designer's definition of one stitch, such as
//
//	Cluster (cl): [Yo, insert hook in indicated st and pull up a loop, yo and
//	pull through 2 loops] 3 times in same st (4 loops on hook), yo and pull
//	through all 4 loops.
//
// in terms t. at is the byte of the document where text begins. The stitch is
// not in the dictionary until it is added; it is nil if text defines none, as
// a row, a heading, or a line of an abbreviation list that gives a known stitch
// its name.
//
// The loops are counted move by move. There is one finding for one slip: a
// wrong number of loops said to be on the hook (LoopsOnHook), a stitch that
// needs more loops than there are or leaves other than one (LoopsLeft), or a
// passage worked more often than can be meant (TooManyTimes). Words that were
// not understood stand in Unread and are no finding; if they move loops, the
// loops are not judged from there on and Moves is nil.
func (d *Dictionary) ReadDefinition(text string, at int, t Terms) (*Stitch, []diag.Finding) {
	if len(text) > mostText || d.IsGlossary(text, t) {
		return nil, nil
	}
	h, ok := readHead(text)
	if !ok {
		return nil, nil
	}
	known := d.same(h.name, h.abbr, t)
	s := d.start(h, known, t)
	s.Text = strings.TrimSpace(text)
	s.Defined = diag.Span{Start: at, End: at + len(text)}
	r, m := d.run(text, h.body, t)
	if !m.says() && (known == None && !soundsLikeStitch(h) || strings.TrimSpace(text[h.body:]) == "") {
		return nil, nil
	}
	findings := m.findings(r, report{name: h.asWritten, at: at, terms: t})
	m.give(s, text, findings)
	s.keepKnown(d.Stitch(known), h)
	return s, findings
}

// run reads and works the definition that begins at byte body of text.
func (d *Dictionary) run(text string, body int, t Terms) (*reader, *machine) {
	return (&reader{}).run(d, text, body, t)
}

// run is Dictionary.run; a reader that is used again keeps its room for tokens.
func (r *reader) run(d *Dictionary, text string, body int, t Terms) (*reader, *machine) {
	*r = reader{d: d, text: text, terms: t, toks: tokens(r.toks[:0], text)}
	for r.toks[r.at].start < body && r.toks[r.at].kind != endToken {
		r.at++
	}
	nodes := r.read()
	m := newMachine(d, r.claims)
	m.work(nodes)
	m.wraps()
	return r, m
}

// says tells whether anything a hook does was understood.
func (m *machine) says() bool { return len(m.moves) > 0 }

// same is the stitch of the dictionary that has this name; None if it is new.
// An abbreviation alone makes two stitches one only where it can mean nothing
// else: "Front post dc (FPdc)" is FPdc, but a "Corner loop (cl)" is no cluster.
func (d *Dictionary) same(name, abbr string, t Terms) Kind {
	if k, ok := d.Lookup(name, t); ok {
		return k
	}
	k, ok := d.Lookup(abbr, t)
	if !ok {
		return None
	}
	switch d.Stitch(k).Family {
	case Closed, Open, Picot, Spike:
		return None
	}
	return k
}

// start makes a stitch with the names of h, and what the dictionary has of the
// stitch of that name.
func (d *Dictionary) start(h head, known Kind, t Terms) *Stitch {
	s := &Stitch{Uses: 1, Edge: []EdgeItem{{}}}
	if known != None {
		*s = *d.Stitch(known)
		s.Edge = slices.Clone(s.Edge)
		s.Also = append([]string{s.US, s.USName}, s.Also...)
		s.AlsoUK = append([]string{s.UK, s.UKName}, s.AlsoUK...)
	}
	name, abbr := asInRow(h.name), asInRow(h.abbr)
	if abbr == "" {
		abbr = name
		if full := d.FullName(known, t); full != "" {
			name = full
		}
	}
	switch {
	case t != UK:
		s.US, s.USName, s.Also = abbr, name, append(s.Also, h.also...)
		s.UK, s.UKName = toUK(abbr), toUK(name)
		for _, also := range h.also {
			s.AlsoUK = append(s.AlsoUK, toUK(also))
		}
	default:
		s.UK, s.UKName, s.AlsoUK = abbr, name, append(s.AlsoUK, h.also...)
		s.US, s.USName = toUS(abbr), toUS(name)
		for _, also := range h.also {
			s.Also = append(s.Also, toUS(also))
		}
	}
	s.Also = distinct(s.Also, s.US, s.USName)
	s.AlsoUK = distinct(s.AlsoUK, s.UK, s.UKName)
	return s
}

// distinct drops from names what stands in it twice, and the two main names.
func distinct(names []string, main ...string) []string {
	var out []string
	for _, n := range names {
		if n != "" && !slices.Contains(main, n) && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// asInRow gives a name that stands at the head of its definition as it would
// stand in a row: "Shell" is "shell", "V-st" and "FPdc" stay.
func asInRow(name string) string {
	if len(name) < 2 || name[0] < 'A' || name[0] > 'Z' || !(name[1] >= 'a' && name[1] <= 'z' || name[1] == ' ') {
		return name
	}
	return strings.ToLower(name[:1]) + name[1:]
}

// soundsLikeStitch tells whether a head can be a stitch although nothing of its
// definition was understood.
func soundsLikeStitch(h head) bool {
	low := strings.ToLower(h.name + " " + h.abbr)
	for _, word := range []string{"stitch", "cluster", "shell", "puff", "bobble", "popcorn", "picot", "crochet", "treble", "post", "fan", "v-st", "x-st", "2tog", "3tog"} {
		if strings.Contains(low, word) {
			return true
		}
	}
	return strings.HasSuffix(low, " st") || strings.HasSuffix(low, "-st")
}

// give fills s with what was learned. findings is what is wrong
// with the definition: moves that do not hold together are not kept.
func (m *machine) give(s *Stitch, text string, findings []diag.Finding) {
	s.Unread = nil
	for _, n := range m.unread {
		s.Unread = append(s.Unread, strings.TrimSpace(text[n.start:n.end]))
	}
	blind := m.blind || m.over || slices.ContainsFunc(findings, func(f diag.Finding) bool { return f.Code == TooManyTimes })
	if !m.says() {
		return
	}
	if blind && s.Kind != None {
		return // what the dictionary has of a stitch of this name stands
	}
	m.settle(s)
	s.Moves, s.YarnOvers = nil, 0
	if blind {
		return
	}
	s.Moves = m.moves
	for _, mv := range m.moves {
		s.YarnOvers += mv.YarnOvers()
	}
	if len(m.faults) > 0 {
		s.Moves = nil
	}
}

// keepKnown keeps what a name says better than the words: "sc2tog" uses two
// places, whatever places its definition names; a plain or foundation stitch is
// what it always is, however its making is told.
func (s *Stitch) keepKnown(known *Stitch, h head) {
	if known.Kind == None {
		if n := togOf(h.name + " " + h.abbr); n > 1 && s.Family != Open {
			s.Family, s.Uses, s.Legs, s.Edge = Together, max(n, s.Uses), max(n, s.Legs), []EdgeItem{{}}
		}
		return
	}
	switch {
	case known.Family == FoundationStitch || known.Kind <= ExtendedSingle:
		kept := *known
		kept.Text, kept.Defined, kept.Unread = s.Text, s.Defined, s.Unread
		kept.Edge = slices.Clone(known.Edge)
		kept.Also = distinct(append(s.Also, s.US, s.USName), kept.US, kept.USName)
		kept.AlsoUK = distinct(append(s.AlsoUK, s.UK, s.UKName), kept.UK, kept.UKName)
		*s = kept
	case known.Family == Together:
		s.Family, s.Uses, s.Legs, s.Base, s.Edge = Together, known.Uses, known.Legs, known.Base, []EdgeItem{{}}
		s.Height, s.TurningChain = known.Height, known.TurningChain
	case known.Family == PostStitch && s.Family == Plain:
		s.Family, s.Post = PostStitch, known.Post
	case known.Family == Closed && s.Family == Together:
		s.Family = Closed // a cluster over several places
	}
}

// togOf is the 3 of "dc3tog" and of "3 together", 0 if there is none.
func togOf(name string) int {
	var buf [mostKey]byte
	b, ok := key(&buf, name)
	if !ok {
		return 0
	}
	i := strings.Index(string(b), "tog")
	if i < 1 || !isDigit(b[i-1]) {
		return 0
	}
	return int(b[i-1] - '0')
}
