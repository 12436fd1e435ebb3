package design

import (
	"fmt"
	"strconv"
	"strings"

	"rowproof/diag"
	"rowproof/notation"
)

// A rawNumber is a named number as the front matter has it.
type rawNumber struct {
	name  piece
	items []piece
	list  bool // a value a size
}

// A liveNumber is arithmetic of the text worked out in every size.
type liveNumber struct {
	values []int
	ok     bool
}

// longestExpression is how long arithmetic may be, in bytes.
const longestExpression = 1000

// Value returns what a number is in a size, counted from 0. A nil number is
// 1. The second result is false when it has no value there: a dash, a list
// that does not fit the sizes, a name that is not bound.
func (d *Design) Value(n *notation.Number, size int) (int, bool) {
	switch {
	case n == nil:
		return 1, true
	case size < 0 || size >= d.SizeCount():
		return 0, false
	case n.Live != "":
		l, known := d.live[n.Live]
		if !known {
			l = d.workLive(n.Live, diag.Span{}, false)
		}
		if !l.ok {
			return 0, false
		}
		return l.values[size], true
	case len(n.Values) == 1:
		return n.Values[0].N, !n.Values[0].None
	case len(n.Values) == d.SizeCount():
		return n.Values[size].N, !n.Values[size].None
	}
	return 0, false
}

// ListProblem says why a number's list does not fit the sizes, "" when it
// does: "2 numbers where there are 3 sizes".
func (d *Design) ListProblem(n *notation.Number) string {
	if n == nil || n.Live != "" || len(n.Values) <= 1 || len(n.Values) == d.SizeCount() {
		return ""
	}
	if d.SizeCount() == 1 {
		return fmt.Sprintf("%d numbers where the pattern has one size", len(n.Values))
	}
	return fmt.Sprintf("%d numbers where there are %d sizes", len(n.Values), d.SizeCount())
}

// Number returns the named number, nil when there is none of that name.
func (d *Design) Number(name string) *Named { return d.byName[cleanName(name)] }

// settleNumbers works out the named numbers, once the sizes are known.
func (r *reader) settleNumbers() {
	if r.front == nil {
		return
	}
	s := &settler{r: r, state: make([]int, len(r.front.numbers)), index: map[string]int{}}
	for i, raw := range r.front.numbers {
		name := cleanName(raw.name.text)
		if !validName(name) {
			r.badValue(raw.name.span, fmt.Sprintf("a number cannot be named %q: a name starts with a letter and holds letters, figures and spaces.", raw.name.text), "")
			continue
		}
		if _, twice := s.index[name]; twice {
			r.badValue(raw.name.span, fmt.Sprintf("the number %s stands twice.", name), "Keep one of the two.")
			continue
		}
		s.index[name] = i
		s.names = append(s.names, name)
	}
	for _, name := range s.names {
		s.settle(s.index[name])
	}
	for _, name := range s.names {
		if n := r.d.byName[name]; n != nil {
			r.d.Numbers = append(r.d.Numbers, n)
		}
	}
}

func validName(name string) bool {
	e, err := parseExpression(name, func(s string) bool { return s == name })
	return err == nil && e.op == 'v' && len(name) <= 60
}

// A settler works out named numbers that need each other.
type settler struct {
	r     *reader
	state []int // 0 not yet, 1 being worked, 2 done
	index map[string]int
	names []string
	stack []int
}

func (s *settler) isName(name string) bool { _, ok := s.index[name]; return ok }

// settle works out number i and all it needs.
func (s *settler) settle(i int) {
	d := s.r.d
	raw := s.r.front.numbers[i]
	if s.state[i] != 0 {
		return
	}
	s.state[i] = 1
	s.stack = append(s.stack, i)
	defer func() { s.state[i] = 2; s.stack = s.stack[:len(s.stack)-1] }()
	if len(raw.items) == 0 {
		s.r.badValue(raw.name.span, fmt.Sprintf("the number %s has no value.", raw.name.text), "")
		return
	}
	sizes := d.SizeCount()
	if raw.list && len(raw.items) != sizes && len(raw.items) > 1 {
		d.report(diag.Error, CodeListLength, span(raw.items),
			fmt.Sprintf("The number %s has %s, but the pattern has %s.", raw.name.text, count(len(raw.items), "value"), count(sizes, "size")),
			sizesAgainst(d, raw.items), "")
		return
	}
	values := make([]int, sizes)
	for k, item := range raw.items {
		e, ok := s.read(item)
		if !ok {
			return
		}
		for size := range values {
			if len(raw.items) > 1 && size != k {
				continue
			}
			n, bad := e.work(s.valueIn(size))
			if bad != nil {
				s.r.workProblem(e, item, bad, s.valueIn)
				return
			}
			if n < 0 {
				d.report(diag.Error, CodeNumberRange, item.span, fmt.Sprintf("The number %s comes out below zero (%d)%s.", raw.name.text, n, d.inSize(size)), "", "")
				return
			}
			values[size] = n
		}
	}
	name := cleanName(raw.name.text)
	d.byName[name] = &Named{Name: name, Values: values, Span: raw.name.span}
}

// read parses one value and settles the numbers it names.
func (s *settler) read(item piece) (*expression, bool) {
	d := s.r.d
	if len(item.text) > longestExpression {
		d.report(diag.Error, CodeExpression, item.span, "This arithmetic is too long to be read.", "", "")
		return nil, false
	}
	e, err := parseExpression(item.text, s.isName)
	if err != nil {
		s.r.arithProblem(item, err)
		return nil, false
	}
	for _, v := range e.names(nil) {
		i, known := s.index[v.name]
		if !known {
			s.r.unknownNumber(within(item, v.start, v.end), v.name, s.names)
			return nil, false
		}
		if s.state[i] == 1 {
			s.circle(i, within(item, v.start, v.end))
			return nil, false
		}
		s.settle(i)
		if d.byName[v.name] == nil {
			return nil, false // reported where that number stands
		}
	}
	return e, true
}

func (s *settler) valueIn(size int) func(string) (int, bool) {
	return s.r.d.valueIn(size)
}

func (d *Design) valueIn(size int) func(string) (int, bool) {
	return func(name string) (int, bool) {
		if n := d.byName[name]; n != nil {
			return n.Values[size], true
		}
		return 0, false
	}
}

// circle reports numbers that need each other.
func (s *settler) circle(i int, at diag.Span) {
	var names []string
	for k := len(s.stack) - 1; k >= 0; k-- {
		names = append([]string{cleanName(s.r.front.numbers[s.stack[k]].name.text)}, names...)
		if s.stack[k] == i {
			break
		}
		if len(names) > 20 {
			break
		}
	}
	message := fmt.Sprintf("The number %s needs itself.", names[0])
	if len(names) > 1 {
		message = fmt.Sprintf("The numbers %s need each other, so none of them has a value.", strings.Join(names, ", "))
	}
	s.r.d.report(diag.Error, CodeCycle, at, message, "", "Give one of them a value of its own.")
}

// within places a part of an item's text in the document.
func within(item piece, start, end int) diag.Span {
	return diag.Span{Start: min(item.span.Start+start, item.span.End), End: min(item.span.Start+max(end, start+1), max(item.span.End, item.span.Start+1))}
}

func span(items []piece) diag.Span {
	return diag.Span{Start: items[0].span.Start, End: items[len(items)-1].span.End}
}

// sizesAgainst shows sizes and values side by side.
func sizesAgainst(d *Design, items []piece) string {
	var b strings.Builder
	for i := 0; i < max(len(d.Sizes), len(items)) && i < mostSizes+1; i++ {
		name, value := "-", "nothing"
		if i < len(d.Sizes) {
			name = d.Sizes[i]
		}
		if i < len(items) {
			value = items[i].text
		}
		fmt.Fprintf(&b, "%s  %s\n", name, value)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func (d *Design) inSize(size int) string {
	if len(d.Sizes) == 0 {
		return ""
	}
	return " in size " + d.Sizes[size]
}

func (r *reader) arithProblem(item piece, err *arithError) {
	r.d.report(diag.Error, CodeExpression, within(item, err.start, err.end), err.message, "", err.repair)
}

func (r *reader) unknownNumber(at diag.Span, name string, names []string) {
	message := fmt.Sprintf("No number is named %q.", name)
	repair := ""
	if near := nearest(name, names); near != "" {
		message = fmt.Sprintf("No number is named %q. Did you mean %q?", name, near)
		repair = near
	}
	detail := ""
	if len(names) > 0 {
		detail = "The numbers are " + strings.Join(names[:min(len(names), 30)], ", ") + "."
	}
	r.d.report(diag.Error, CodeUnknownName, at, message, detail, repair)
}

// workProblem reports arithmetic that does not come out, size by size.
func (r *reader) workProblem(e *expression, item piece, bad *workError, valueIn func(int) func(string) (int, bool)) {
	d := r.d
	at := within(item, bad.at.start, bad.at.end)
	switch bad.code {
	case '0':
		d.report(diag.Error, CodeNotWhole, at, "Here a number is divided by nothing (0).", "", "")
		return
	case 'L':
		d.report(diag.Error, CodeNumberRange, at, "This comes out too large to count with.", "", "")
		return
	}
	var detail strings.Builder
	var sizes []string
	for size := range d.SizeCount() {
		_, wrong := e.work(valueIn(size))
		name := ""
		if len(d.Sizes) > 0 {
			name = d.Sizes[size] + "  "
		}
		switch {
		case wrong == nil:
			if n, err := bad.at.work(valueIn(size)); err == nil {
				fmt.Fprintf(&detail, "%scomes out: %d\n", name, n)
			}
		case wrong.code == '/':
			fmt.Fprintf(&detail, "%s%d divided by %d leaves %d over\n", name, wrong.a, wrong.b, abs(wrong.a%wrong.b))
			if len(d.Sizes) > 0 {
				sizes = append(sizes, d.Sizes[size])
			}
		}
	}
	message := fmt.Sprintf("%q does not come out whole.", item.text)
	if len(sizes) > 0 {
		message = fmt.Sprintf("%q does not come out whole in size %s.", item.text, strings.Join(sizes, ", "))
		if len(sizes) > 1 {
			message = fmt.Sprintf("%q does not come out whole in sizes %s.", item.text, strings.Join(sizes, ", "))
		}
	}
	d.report(diag.Error, CodeNotWhole, at, message, strings.TrimSuffix(detail.String(), "\n"), "")
	d.Findings[len(d.Findings)-1].Sizes = sizes
}

func abs(n int) int { return max(n, -n) }

// workLive works out arithmetic of the text in every size. With report set it
// says what is wrong, at the place the text stands.
func (d *Design) workLive(text string, at diag.Span, report bool) liveNumber {
	r := &reader{d: d}
	item := piece{text: text, span: at}
	isName := func(s string) bool { return d.byName[s] != nil }
	if len(text) > longestExpression {
		return liveNumber{}
	}
	e, err := parseExpression(text, isName)
	if err != nil {
		if report {
			r.arithProblem(item, err)
		}
		return liveNumber{}
	}
	for _, v := range e.names(nil) {
		if d.byName[v.name] == nil {
			if report {
				r.unknownNumber(within(item, v.start, v.end), v.name, d.names())
			}
			return liveNumber{}
		}
	}
	l := liveNumber{values: make([]int, d.SizeCount()), ok: true}
	for size := range l.values {
		n, bad := e.work(d.valueIn(size))
		if bad != nil {
			if report {
				r.workProblem(e, item, bad, d.valueIn)
			}
			return liveNumber{}
		}
		if n < 0 {
			if report {
				d.report(diag.Error, CodeNumberRange, at, fmt.Sprintf("%q comes out below zero (%s)%s.", text, strconv.Itoa(n), d.inSize(size)), "", "")
			}
			return liveNumber{}
		}
		l.values[size] = n
	}
	return l
}

// names lists the named numbers in order.
func (d *Design) names() []string {
	list := make([]string, 0, len(d.Numbers))
	for _, n := range d.Numbers {
		list = append(list, n.Name)
	}
	return list
}

// checkLive works out the live numbers of a line, each once in a document.
func (d *Design) checkLive(l *Line) {
	for i := 0; i < len(l.Text); i++ {
		if l.Text[i] != '{' {
			continue
		}
		end := strings.IndexByte(l.Text[i:min(len(l.Text), i+longestExpression)], '}')
		if end < 0 {
			return
		}
		inner := l.Text[i+1 : i+end]
		if open := strings.LastIndexByte(inner, '{'); open >= 0 {
			i += open
			continue
		}
		text := strings.TrimSpace(inner)
		start := l.Start + i + 1 + strings.Index(inner, text)
		i += end
		if _, known := d.live[text]; known || !d.isLive(text) {
			continue
		}
		before := len(d.Findings)
		d.live[text] = d.workLive(text, diag.Span{Start: start, End: start + len(text)}, true)
		for k := before; k < len(d.Findings); k++ {
			d.Findings[k].Piece = l.Section.Title
		}
	}
}

// filledIn are the parts the program fills in, which are no numbers.
var filledIn = set("gauge sizes materials abbreviations schematic chart notes measurements yarn hook")

// isLive tells live numbers from other things in braces: "{24 sts}", "{ch 1,
// dc}", "{gauge}".
func (d *Design) isLive(text string) bool {
	if text == "" || d.Front == nil {
		return false
	}
	first, _, _ := strings.Cut(lower(text), ":")
	if filledIn[first] || strings.ContainsAny(text, ",;:") {
		return false
	}
	e, err := parseExpression(text, func(s string) bool { return d.byName[s] != nil })
	if err != nil {
		return strings.ContainsAny(text, "+/=") || len(d.Numbers) > 0 && !mentionsStitch(words(text)) && strings.ContainsAny(text, "abcdefghijklmnopqrstuvwxyz")
	}
	names := e.names(nil)
	for _, v := range names {
		if d.byName[v.name] != nil {
			return true
		}
	}
	ws := words(text)
	return len(names) > 0 && !mentionsStitch(ws) && !contains(ws, "times", "sts", "st", "twice", "rows", "rnds", "once")
}
