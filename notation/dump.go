package notation

import (
	"strconv"
	"strings"

	"rowproof/stitch"
)

// String writes what the line says, without places and in one wording: "(row 3
// ws) (ch 1) (sc (each st end)) (turn) (count 24 sc)". Two lines that say the
// same have the same string.
func (l *Line) String() string {
	d := dumper{}
	if l.Label != nil {
		d.label(l.Label)
	}
	d.steps(l.Steps)
	for _, c := range l.Counts {
		d.count(c)
	}
	return d.b.String()
}

// Equal tells whether two lines say the same, wherever they stand and in
// whatever words.
func Equal(a, b *Line) bool { return a.String() == b.String() }

// A dumper writes a tree as words in parentheses.
type dumper struct{ b strings.Builder }

// open begins a list.
func (d *dumper) open(words ...string) {
	if d.b.Len() > 0 {
		if s := d.b.String(); s[len(s)-1] != '(' {
			d.b.WriteByte(' ')
		}
	}
	d.b.WriteByte('(')
	d.b.WriteString(strings.Join(words, " "))
}

func (d *dumper) close() { d.b.WriteByte(')') }

// word adds a word to the list at hand, none if it is empty.
func (d *dumper) word(s string) {
	if s == "" {
		return
	}
	d.b.WriteByte(' ')
	d.b.WriteString(s)
}

// flag adds a word if it is true.
func (d *dumper) flag(is bool, s string) {
	if is {
		d.word(s)
	}
}

// number adds a number, none if it is nil.
func (d *dumper) number(lead string, n *Number) {
	if n != nil {
		d.word(lead + n.said())
	}
}

// text adds words of the author as "key=words", in one spelling.
func (d *dumper) text(key, s string) {
	if s != "" {
		d.word(key + "=" + strconv.Quote(oneSpelling.Replace(strings.ToLower(s))))
	}
}

var oneSpelling = strings.NewReplacer("colour", "color", "centre", "center", "miss", "skip", "skipping", "skip", "sking", "skip")

// said writes a number's values in one form.
func (n *Number) said() string {
	if n.Live != "" {
		return "{" + n.Live + "}"
	}
	var b strings.Builder
	for i, v := range n.Values {
		if i > 0 {
			b.WriteByte('/')
		}
		if v.None {
			b.WriteByte('-')
		} else {
			b.WriteString(strconv.Itoa(v.N))
		}
	}
	return b.String()
}

var sideNames = [...]string{"", "rs", "ws"}
var loopNames = [...]string{"", "flo", "blo", "3lo", "post"}
var whichNames = [...]string{"next", "each", "first", "last", "same", "nth", "center", "top", "any", "between", "before", "remaining", "marked", "ring", "edge"}
var whatNames = [...]string{"st", "stitch", "sp", "chain", "tch", "row-end", "ring", "st-or-sp", "foundation", "corner", "st-or-chain"}
var unitNames = [...]string{"", "in", "cm", "mm"}

// kindName is the US name of a kind, as the standard dictionary has it.
func kindName(k stitch.Kind) string {
	if k == stitch.None {
		return "?"
	}
	if d := stitch.Standard(); int(k) < d.Len() {
		if s := d.Name(k, stitch.US); s != "" {
			return strings.ReplaceAll(s, " ", "-")
		}
	}
	return "own" + strconv.Itoa(int(k))
}

func (d *dumper) label(l *Label) {
	d.open([...]string{"label", "row", "rnd"}[l.Is])
	for _, r := range l.Ranges {
		d.rang(r)
	}
	d.word(sideNames[l.Side])
	d.flag(l.Next, "next")
	d.number("count=", l.Count)
	d.text("name", l.Name)
	d.text("remark", l.Remark)
	d.text("all", l.AndAll)
	d.close()
}

func (d *dumper) rang(r Range) {
	switch {
	case r.From == nil:
	case r.To == nil || r.To == r.From || r.To.said() == r.From.said():
		d.word(r.From.said())
	default:
		d.word(r.From.said() + ".." + r.To.said())
	}
}

func (d *dumper) steps(steps []Step) {
	for _, s := range steps {
		d.step(s)
	}
}

func (d *dumper) step(s Step) {
	switch s := s.(type) {
	case *Work:
		d.work(s)
	case *Chains:
		d.open("ch")
		d.number("", s.N)
		d.counts(s.Counts)
		d.close()
	case *Skip:
		d.open("sk")
		d.places(s.Places)
		d.counts(s.Counts)
		d.close()
	case *Group:
		d.open("group")
		d.steps(s.Body)
		d.times(s.Times)
		if len(s.In) > 0 {
			d.open("in")
			d.places(s.In)
			d.close()
		}
		d.close()
	case *Star:
		d.open(s.Mark)
		d.steps(s.Body)
		d.times(s.Times)
		d.close()
	case *Stop:
		d.open("stop", s.Mark)
		d.close()
	case *Orphan:
		d.open("orphan")
		d.times(s.Times)
		d.close()
	case *Again:
		d.again(s)
	case *Shape:
		d.shape(s)
	case *Rule:
		d.rule(s)
	default:
		d.plainStep(s)
	}
}

// plainStep writes the steps that hold no others.
func (d *dumper) plainStep(s Step) {
	switch s := s.(type) {
	case *Turn:
		d.open("turn")
		d.flag(s.Not, "not")
	case *Join:
		d.open("join")
		d.flag(s.Not, "not")
		d.flag(s.Stitch != stitch.SlipStitch, kindName(s.Stitch))
		d.flag(s.Ring, "to-ring")
		d.place(s.Place)
	case *FastenOff:
		d.open("fasten-off")
		d.flag(s.Not, "not")
	case *JoinYarn:
		d.open("join-yarn")
		d.text("color", s.Color)
		d.word(sideNames[s.Side])
		d.flag(s.Stitch != stitch.None, kindName(s.Stitch))
		d.flag(s.Standing, "standing")
		d.flag(s.FromEnd, "from-end")
		d.number("row=", s.Row)
		d.place(s.Place)
	case *Color:
		d.open("color")
		d.text("name", s.Name)
		d.flag(s.Drop, "drop")
	case *Leave:
		d.open("leave")
		d.number("", s.N)
		d.place(s.Place)
	case *MagicRing:
		d.open("magic-ring")
		d.flag(s.Close, "close")
	case *OtherSide:
		d.open("other-side")
		d.flag(s.RowEnds, "row-ends")
	case *Evenly:
		d.open("evenly")
		d.number("", s.N)
		if s.Stitch != nil {
			d.word(kindName(s.Stitch.Kind))
		}
		d.flag(s.Along, "along")
		d.flag(s.Change > 0, "inc")
		d.flag(s.Change < 0, "dec")
	case *Marker:
		d.open("do")
		d.text("what", s.Do)
		d.place(s.Place)
	case *Remark:
		d.open("remark")
	case *Unknown:
		d.open("UNKNOWN")
	}
	d.close()
}

func (d *dumper) work(w *Work) {
	d.open(kindName(w.Stitch.Kind))
	if w.Stitch.Kind == stitch.None {
		d.text("name", w.Stitch.Text)
	}
	d.number("x", w.Times)
	d.word(loopNames[w.Stitch.Loop])
	d.places(w.Places)
	if w.Last != nil {
		d.open("last")
		d.place(w.Last)
		d.close()
	}
	d.counts(w.Counts)
	d.close()
}

func (d *dumper) places(list []*Place) {
	for _, p := range list {
		d.place(p)
	}
}

func (d *dumper) place(p *Place) {
	if p == nil {
		return
	}
	d.open(whichNames[p.Which])
	d.number("", p.N)
	d.what(p.What, p.Kind, p.Chains)
	d.word(loopNames[p.Loop])
	d.number("below=", p.Below)
	d.flag(p.New, "new")
	if p.Of != nil {
		d.open("of")
		d.place(p.Of)
		d.close()
	}
	if p.Then != nil {
		d.open("then")
		d.place(p.Then)
		d.close()
	}
	d.limit(p.To)
	d.close()
}

// what writes a kind of place: "st", "dc", "ch-2-sp".
func (d *dumper) what(w What, k stitch.Kind, chains *Number) {
	name := whatNames[w]
	if w == AStitch {
		name = kindName(k)
	}
	if chains != nil {
		name = "ch-" + chains.said() + "-" + name
	}
	d.word(name)
}

func (d *dumper) limit(l *Limit) {
	if l == nil {
		return
	}
	d.open("to")
	d.flag(l.End, "end")
	if !l.End {
		d.number("last ", l.Last)
		d.flag(l.Next, "next")
		d.flag(l.Marked, "marked")
		d.what(l.What, l.Kind, l.Chains)
	}
	d.close()
}

func (d *dumper) times(t *Times) {
	if t == nil {
		return
	}
	d.open("times")
	d.number("", t.N)
	d.flag(t.More, "more")
	d.flag(t.Unsure, "unsure")
	d.flag(t.Fit, "fit")
	d.limit(t.To)
	d.text("end-at", t.EndAt)
	if len(t.Ending) > 0 {
		d.open("ending")
		d.steps(t.Ending)
		d.close()
	}
	if t.Last != nil {
		d.open("last")
		d.place(t.Last)
		d.close()
	}
	if len(t.Omit) > 0 {
		d.open("omit")
		d.steps(t.Omit)
		d.close()
	}
	d.close()
}

func (d *dumper) counts(c *Counts) {
	if c == nil {
		return
	}
	d.open("counts")
	d.flag(c.Not, "not")
	d.flag(c.As != stitch.None, kindName(c.As))
	d.number("ch=", c.Chains)
	d.number("skipped=", c.Skipped)
	d.number("of=", c.Of)
	d.flag(c.Throughout, "throughout")
	d.close()
}

func (d *dumper) again(a *Again) {
	d.open("again")
	for _, r := range a.Rows {
		d.rang(r)
	}
	d.number("last=", a.Last)
	d.text("name", a.Name)
	d.text("of", a.Of)
	d.flag(a.Alternately, "alternately")
	d.flag(a.Pattern, "pattern")
	d.flag(a.Even, "even")
	d.number("rows=", a.RowCount)
	if a.Stitch != nil {
		d.word("of " + kindName(a.Stitch.Kind))
	}
	d.flag(a.Mirrored, "mirrored")
	d.flag(a.EndSide != NoSide, "end="+sideNames[a.EndSide])
	d.number("end-row=", a.EndRow)
	d.times(a.Times)
	if u := a.Until; u != nil {
		d.open("until")
		d.measure(u.Length)
		d.text("from", u.From)
		d.text("same", u.SameAs)
		d.close()
	}
	if len(a.Ending) > 0 {
		d.open("ending")
		d.steps(a.Ending)
		d.close()
	}
	d.close()
}

func (d *dumper) measure(m *Measure) {
	if m == nil {
		return
	}
	if m.Live != "" {
		d.word("{" + m.Live + "}" + unitNames[m.Unit])
	} else {
		var b strings.Builder
		for i, v := range m.Values {
			if i > 0 {
				b.WriteByte('/')
			}
			b.WriteString(strconv.FormatFloat(v, 'g', 5, 64))
		}
		d.word(b.String() + unitNames[m.Unit])
	}
	if m.Also != nil {
		d.measure(m.Also)
	}
}

func (d *dumper) shape(s *Shape) {
	d.open("shape")
	d.flag(s.Change > 0, "inc")
	d.flag(s.Change < 0, "dec")
	d.number("", s.N)
	d.text("row", s.Row)
	d.text("where", s.Where)
	d.number("left=", s.Left)
	d.flag(s.Ends > 0, "ends="+strconv.Itoa(s.Ends))
	for _, e := range s.Plan {
		d.open("every")
		d.number("", e.Every)
		d.word(sideNames[e.Side])
		d.flag(e.Next, "next")
		d.number("x", e.Times)
		d.close()
	}
	d.close()
}

var ruleNames = [...]string{"", "turning-chain", "spaces", "joins", "spiral", "turning", "multiple", "terms", "loop"}

func (d *dumper) rule(r *Rule) {
	d.open("rule", ruleNames[r.About])
	d.number("ch=", r.Chains)
	d.counts(r.Counts)
	if m := r.Multiple; m != nil {
		d.number("of=", m.Of)
		d.number("plus=", m.Plus)
		d.number("add=", m.Add)
		d.flag(m.OfChains, "chains")
	}
	d.place(r.Join)
	d.flag(r.Terms != stitch.UnknownTerms, strings.ToLower(r.Terms.String()))
	d.word(loopNames[r.Loop])
	d.close()
}

func (d *dumper) count(c *Count) {
	d.open("count")
	for _, it := range c.Items {
		d.open()
		d.b.WriteString(it.N.said())
		switch {
		case it.Bare:
		case it.What == AnyStitch && !isStitchWord(it.Text):
			d.text("unit", it.Text)
		default:
			d.what(it.What, it.Kind, it.Chains)
		}
		d.close()
	}
	d.flag(c.Change > 0, "inc")
	d.flag(c.Change < 0, "dec")
	d.flag(c.Each, "each")
	d.flag(c.Remain, "rem")
	d.flag(c.Apart, "apart")
	d.close()
}

// isStitchWord tells whether a unit is "st" or "sts", however written.
func isStitchWord(s string) bool {
	switch strings.ToLower(strings.TrimRight(s, ".")) {
	case "", "st", "sts", "st(s)", "stitch", "stitches", "stitch(es)", "total sts", "total stitches":
		return true
	}
	return false
}
