package check

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/fabric"
	"rowproof/notation"
)

// A group is one fault as it shows in one size or several.
type group struct {
	kind   fabric.FaultKind
	line   *design.Line
	span   notation.Span
	faults []sized
}

// A sized fault is a fault in one size.
type sized struct {
	size int
	fabric.Fault
}

// one is the first fault of the group.
func (g *group) one() fabric.Fault { return g.faults[0].Fault }

// sizes lists the sizes of the group.
func (g *group) sizes() []int {
	var list []int
	for _, f := range g.faults {
		list = append(list, f.size)
	}
	return list
}

// same tells whether a number of the fault is the same in every size it shows
// in.
func (g *group) same(of func(fabric.Fault) int) bool {
	for _, f := range g.faults {
		if of(f.Fault) != of(g.one()) {
			return false
		}
	}
	return true
}

// faults turns what the fabric could not make into findings, one for each
// place, whatever the number of sizes.
func faults(c *checker) {
	groups := c.groups()
	slices.SortStableFunc(groups, func(a, b *group) int { return cmp.Compare(follows(a), follows(b)) })
	for _, g := range groups {
		if g.kind == fabric.NotUnderstood || g.kind == fabric.NoEdge {
			continue // notWorked speaks of these
		}
		if follows(g) > 0 && c.hasError(g.line) {
			continue // another size, or another count, tells the same slip
		}
		f := c.finding(g)
		if f.Code == "" || (f.Severity == diag.Error && c.hasErrorAt(g.span, SizeList)) {
			continue
		}
		c.add(f)
	}
}

// follows ranks what may only follow from another fault of its line: a count
// that is off where the row does not come out, and the face of rows repeated.
func follows(g *group) int {
	switch g.kind {
	case fabric.WrongCount:
		return 1
	case fabric.OtherFace:
		return 2
	}
	return 0
}

// groups gathers the faults of all sizes by place, in the document's order.
func (c *checker) groups() []*group {
	type key struct {
		kind fabric.FaultKind
		span notation.Span
		soft bool
	}
	at := map[key]*group{}
	var list []*group
	for size, f := range c.fabrics {
		for _, fault := range f.Faults {
			k := key{fault.Kind, fault.Span, fault.Soft}
			g := at[k]
			if g == nil {
				g = &group{kind: fault.Kind, line: fault.Line, span: fault.Span}
				at[k] = g
				list = append(list, g)
			}
			if n := len(g.faults); n > 0 && g.faults[n-1].size == size {
				continue // the same place again, as in a range of rows
			}
			g.faults = append(g.faults, sized{size, fault})
		}
	}
	slices.SortStableFunc(list, func(a, b *group) int {
		return cmp.Or(cmp.Compare(a.span.Start, b.span.Start), cmp.Compare(a.kind, b.kind))
	})
	return list
}

// finding words a group.
func (c *checker) finding(g *group) diag.Finding {
	one := g.one()
	f := diag.Finding{Severity: diag.Error, Span: g.span, Piece: one.Piece, Row: one.Row, Sizes: c.sizeNames(g.sizes())}
	if one.Soft {
		f.Severity = diag.Warning
	}
	word, ok := wording[g.kind]
	if !ok {
		return f
	}
	f.Code = word.code
	f.Message, f.Detail, f.Repair = word.say(c, g)
	f.Message = agree(f.Message, one.Row)
	return f
}

// agree puts a sentence about one row into the plural where its label has
// several: "Rows 4-9 make", not "makes".
func agree(message, label string) string {
	rest, ok := strings.CutPrefix(message, label+" ")
	if !ok || !strings.HasPrefix(label, "Rows ") && !strings.HasPrefix(label, "Rnds ") {
		return message
	}
	verb, rest, _ := strings.Cut(rest, " ")
	switch {
	case verb == "does" || verb == "goes":
		verb = verb[:2]
	case verb == "is":
		verb = "are"
	case verb == "has":
		verb = "have"
	case strings.HasSuffix(verb, "sses") || strings.HasSuffix(verb, "ches") || strings.HasSuffix(verb, "shes"):
		verb = verb[:len(verb)-2]
	case strings.HasSuffix(verb, "s"):
		verb = verb[:len(verb)-1]
	}
	rest = strings.NewReplacer("than it has", "than they have", "count it states", "count they state", "of stitches it says", "of stitches they say").Replace(rest)
	return label + " " + verb + " " + rest
}

// in names the sizes of a group for a sentence: "" when it shows in all,
// " in size XL", " in sizes S, M and XL".
func (c *checker) in(g *group) string {
	n := len(g.faults)
	if len(c.d.Sizes) == 0 || n == len(c.d.Sizes) {
		return ""
	}
	names := c.sizeNames(g.sizes())
	if n == 1 {
		return " in size " + names[0]
	}
	return " in sizes " + strings.Join(names[:n-1], ", ") + " and " + names[n-1]
}

// table writes a line for each size: "  M   2 sts left over".
func (c *checker) table(g *group, say func(fabric.Fault) string) string {
	if len(c.d.Sizes) == 0 {
		return say(g.one())
	}
	width := 0
	for _, s := range g.sizes() {
		width = max(width, len([]rune(c.d.Sizes[s])))
	}
	var b strings.Builder
	for i, f := range g.faults {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%-*s  %s", width, c.d.Sizes[f.size], say(f.Fault))
	}
	return b.String()
}

// row names the row for the start of a sentence.
func row(f fabric.Fault) string {
	if f.Row == "" {
		return "This line"
	}
	return f.Row
}

// plural writes a count with its unit: "1 st", "2 sts".
func plural(n int, unit string) string {
	switch {
	case n == 1:
		return "1 " + unit
	case strings.HasSuffix(unit, "ch"):
		return itoa(n) + " " + unit + "s"
	}
	return itoa(n) + " " + unit + "s"
}

func itoa(n int) string { return strconv.Itoa(n) }

// withNumbers writes a size list again with the numbers of some sizes changed,
// in the form in which it was written. It returns "" when the list does not
// have a number for each size.
func (c *checker) withNumbers(span notation.Span, to map[int]int) string {
	text := c.d.Source[span.Start:span.End]
	var at [][2]int
	for i := 0; i < len(text); {
		if text[i] < '0' || text[i] > '9' {
			i++
			continue
		}
		j := i
		for j < len(text) && text[j] >= '0' && text[j] <= '9' {
			j++
		}
		at = append(at, [2]int{i, j})
		i = j
	}
	n := c.d.SizeCount()
	if len(at) != n {
		if len(at) != 1 || len(to) != n {
			return ""
		}
		for i := 1; i < n; i++ {
			if to[i] != to[0] {
				return ""
			}
		}
	}
	for i := len(at) - 1; i >= 0; i-- {
		if v, ok := to[i]; ok {
			text = text[:at[i][0]] + itoa(v) + text[at[i][1]:]
		}
	}
	return text
}

// sideName is RS or WS.
func sideName(n int) string {
	if notation.Side(n) == notation.RightSide {
		return "RS"
	}
	return "WS"
}
