package design

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"

	"rowproof/diag"
	"rowproof/stitch"
)

// largestFront is how many bytes of front matter are read.
const largestFront = 256 << 10

// front is the front matter as read, before sizes and numbers are settled.
type front struct {
	numbers []rawNumber
	seams   []piece
}

// A piece is a scalar of the front matter: its text and where it stands.
type piece struct {
	text string
	span diag.Span
}

// frontKeys are the keys that mean something, in the order they are offered.
var frontKeys = []string{"title", "terms", "sizes", "units", "gauge", "hook", "yarn", "numbers", "seams", "stitches"}

// laterKeys may stand in the front matter and are not used by checking.
var laterKeys = set("ease swatch measurements counts author by date version notes")

// frontMatter reads the front matter, if there is any, and returns where the
// body starts.
func (r *reader) frontMatter() int {
	d := r.d
	open, end, body, ok := d.frontLines()
	if !ok {
		return 0
	}
	last := min(end, len(d.places.ends)-1)
	d.Front = &FrontMatter{Span: diag.Span{Start: d.places.starts[open], End: d.places.ends[last]}}
	r.front = &front{}
	if d.places.starts[last]-d.places.starts[open] > largestFront {
		d.report(diag.Error, CodeFrontMatter, d.wordAt(d.places.starts[open]),
			fmt.Sprintf("The front matter is longer than %d kB, so it was not read.", largestFront>>10), "", "")
		return body
	}
	seen := map[string]diag.Span{}
	for from := open + 1; from < end; {
		to := from + 1
		for to < end && !d.startsKey(to) {
			to++
		}
		r.chunk(from, to, seen)
		from = to
	}
	return body
}

// frontLines finds the two --- lines, counted from 0, and where the body
// starts after the second.
func (d *Design) frontLines() (open, end, body int, ok bool) {
	for open < len(d.places.starts) && strings.Trim(d.LineText(open+1), blanks) == "" {
		open++
	}
	if strings.TrimRight(d.LineText(open+1), blanks) != "---" {
		return 0, 0, 0, false
	}
	keys := 0
	for end = open + 1; end < len(d.places.starts); end++ {
		text := strings.TrimRight(d.LineText(end+1), blanks)
		if text == "---" || text == "..." {
			body = len(d.Source)
			if end+1 < len(d.places.starts) {
				body = d.places.starts[end+1]
			}
			return open, end, body, keys > 0 || end == open+1
		}
		if i := strings.IndexByte(text, ':'); i > 0 && i < 40 && text[0] != '#' {
			keys++
		}
	}
	return d.openFront(open)
}

// openFront guesses where front matter ends that no --- closes: at the first
// blank line or heading.
func (d *Design) openFront(open int) (int, int, int, bool) {
	if i := strings.IndexByte(d.LineText(open+2), ':'); i < 1 || i > 40 || rowLabel(d.LineText(open+2), words(d.LineText(open + 2)[:i])).words > 0 {
		return 0, 0, 0, false
	}
	end := open + 1
	for end < len(d.places.starts) {
		text := strings.Trim(d.LineText(end+1), blanks)
		if text == "" || strings.HasPrefix(text, "# ") {
			break
		}
		end++
	}
	d.report(diag.Error, CodeFrontOpen, diag.Span{Start: d.places.starts[open], End: d.places.ends[open]},
		fmt.Sprintf("Line %d: the front matter starts here and is never closed.", open+1), "",
		"Put a line with --- after its last line.")
	body := len(d.Source)
	if end < len(d.places.starts) {
		body = d.places.starts[end]
	}
	return open, end, body, true
}

// startsKey reports whether a line, from 0, starts a new key: no blank, dash,
// bracket or comment first.
func (d *Design) startsKey(line int) bool {
	text := d.LineText(line + 1)
	return text != "" && strings.IndexByte(" \t-#]})", text[0]) < 0
}

// chunk reads the lines of one key, from line from up to, not including, to,
// both from 0. A slip in one key does not harm the others.
func (r *reader) chunk(from, to int, seen map[string]diag.Span) {
	d := r.d
	var b strings.Builder
	blankOnly := true
	for i := from; i < to; i++ {
		text := d.LineText(i + 1)
		if t := strings.Trim(text, blanks); t != "" && t[0] != '#' {
			blankOnly = false
		}
		b.WriteString(text)
		b.WriteByte('\n')
	}
	if blankOnly {
		return
	}
	text := b.String()
	if at, why, how := plainSlip(text); at >= 0 {
		line := strings.Count(text[:at], "\n")
		start := d.places.starts[from+line] + at - (strings.LastIndexByte(text[:at], '\n') + 1)
		r.frontError(diag.Span{Start: start, End: min(start+1, len(d.Source))}, why, how)
		return
	}
	file, err := parseYAML(text)
	if err != nil {
		r.syntaxError(err, text, from)
		return
	}
	for _, doc := range file.Docs {
		switch body := doc.Body.(type) {
		case *ast.MappingNode:
			for _, v := range body.Values {
				r.key(v, from, seen)
			}
		case *ast.MappingValueNode:
			r.key(body, from, seen)
		case nil:
		default:
			r.frontError(d.wordAt(d.places.starts[from]), "this line has no key.", "Write the key, a colon and the value, as in: sizes: S, M, L")
		}
	}
}

// parseYAML parses one key's text; the library's panics on hostile text
// become errors.
func parseYAML(text string) (file *ast.File, err error) {
	defer func() {
		if p := recover(); p != nil {
			file, err = nil, errors.New("not readable")
		}
	}()
	return parser.ParseBytes([]byte(text), 0)
}

// plainSlip finds the slips that can be told in better words than the YAML
// library has: a tab at the start of a line, a key without a colon, brackets
// without end. It returns the offset in text, -1 for none.
func plainSlip(text string) (at int, why, how string) {
	depth, deepestSeen := 0, 0
	var quote byte
	for i := 0; i < len(text); i++ {
		c := text[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case (c == '"' || c == '\'') && i > 0 && strings.IndexByte(" [{,:", text[i-1]) >= 0 && (text[i-1] != ':'):
			quote = c
		case c == '[' || c == '{':
			depth++
			deepestSeen = max(deepestSeen, depth)
		case c == ']' || c == '}':
			depth--
		case c == '\t' && strings.Trim(text[strings.LastIndexByte(text[:i], '\n')+1:i], " ") == "":
			return i, "a tab stands where spaces belong.", "Put two spaces there instead of the tab."
		}
	}
	if deepestSeen > 20 {
		return 0, "there are too many brackets inside each other.", ""
	}
	first, _, _ := strings.Cut(text, "\n")
	if !strings.Contains(first, ":") {
		return 0, "this line has no colon, so it is no key with a value.", "Write the key, a colon and the value, as in: sizes: S, M, L"
	}
	if i := strings.IndexByte(first, ':'); i+1 < len(first) && first[i+1] != ' ' && first[i+1] != '\t' && strings.Count(first, ": ") == 0 && !strings.HasSuffix(first, ":") {
		return i + 1, "a space is missing after the colon.", ""
	}
	return -1, "", ""
}

// frontError reports a slip in the front matter with its line in words.
func (r *reader) frontError(span diag.Span, why, how string) {
	line, _ := r.d.Position(span.Start)
	r.d.report(diag.Error, CodeFrontMatter, span, fmt.Sprintf("Line %d: %s", line, why), "", how)
}

// syntaxError puts the YAML library's complaint into plain words.
func (r *reader) syntaxError(err error, text string, from int) {
	d := r.d
	span := d.wordAt(d.places.starts[from])
	message := ""
	var syntax *yaml.SyntaxError
	if errors.As(err, &syntax) && syntax.Token != nil && syntax.Token.Position != nil {
		p := syntax.Token.Position
		span = d.wordAt(d.offset(from+p.Line, p.Column))
		message = syntax.Message
	}
	why, how := plainWords(message, d.Source[span.Start:span.End])
	if strings.Contains(message, "mapping value is not allowed") {
		line, _ := d.Position(span.Start)
		if next := d.LineText(line + 1); line < from+strings.Count(text, "\n") && strings.HasPrefix(next, " ") && strings.Contains(next, ":") && !strings.Contains(d.Source[span.Start:d.places.ends[line-1]], ": ") {
			why, how = "this key has a value on its own line and more lines indented below it.", "Leave the value away, or move the lines below to the left edge."
		}
	}
	r.frontError(span, why, how)
}

func plainWords(message, at string) (why, how string) {
	has := func(s string) bool { return strings.Contains(message, s) }
	switch {
	case has("tab") || has(`'\t'`):
		return "a tab stands where spaces belong.", "Put two spaces there instead of the tab."
	case has("double-quoted"):
		return `the quotation mark opened here is not closed.`, `Close it with " on the same line.`
	case has("single-quoted"):
		return "the quotation mark opened here is not closed.", "Close it with ' on the same line, or write the text between \" marks."
	case has("',' or ']'"), has("sequence end"):
		return "a list in square brackets is not closed before here.", "Close the list with ]."
	case has("',' or '}'"), has("flow mapping end"):
		return "a curly bracket is not closed before here.", "Close it with }."
	case has("could not find '['"), has("could not find '{'"):
		return "there is a closing bracket here that nothing opens.", ""
	case has("already defined"):
		return fmt.Sprintf("the name %s stands twice.", strings.TrimSuffix(at, ":")), "Keep one of the two."
	case has("mapping value is not allowed"):
		return "there is a second colon in this value.", "Put the value between quotation marks."
	case has("reserved character"):
		return fmt.Sprintf("a value cannot start with %q.", at[:min(1, len(at))]), "Put the value between quotation marks."
	case has("directive"), has("anchor"), has("alias"):
		return fmt.Sprintf("a value cannot start with %q.", at[:min(1, len(at))]), "Put the value between quotation marks."
	case has("escape character"):
		return "a backslash between quotation marks has a meaning of its own here.", "Use single quotation marks, or leave the backslash away."
	case has("key name"):
		return "this line has no colon, so it is no key with a value.", "Write the key, a colon and the value."
	case has("value is not allowed"):
		return "this does not fit what stands before it; the lines may be indented unevenly.", "Give all lines of one list the same number of spaces."
	}
	return "this cannot be read as a key with its value.", "Write the key, a colon and the value; put values with signs between quotation marks."
}

// key takes one key with its value.
func (r *reader) key(v *ast.MappingValueNode, from int, seen map[string]diag.Span) {
	d := r.d
	name, ok := r.scalar(v.Key, from)
	if !ok {
		return
	}
	key := cleanName(name.text)
	if before, twice := seen[key]; twice {
		r.frontError(name.span, fmt.Sprintf("the key %s stands twice.", key), "Keep one of the two.")
		d.Findings[len(d.Findings)-1].Also = []diag.Span{before}
		return
	}
	seen[key] = name.span
	d.Front.Keys = append(d.Front.Keys, Key{Name: key, Text: strings.Join(r.texts(v.Value, from), "; "), Span: name.span})
	switch key {
	case "title":
		d.Title = r.textOf(v, from, key)
	case "hook":
		d.Front.Hook = strings.Join(r.texts(v.Value, from), "; ")
	case "yarn":
		d.Front.Yarn = strings.Join(r.texts(v.Value, from), "; ")
	case "terms":
		r.termsKey(v, from)
	case "units":
		r.unitsKey(v, from)
	case "sizes", "size":
		r.sizesKey(v, from)
	case "gauge", "tension":
		r.gaugeKey(v.Value, from, "")
	case "numbers":
		r.numbersKey(v.Value, from, name.span)
	case "seams":
		for _, p := range r.list(v.Value, from) {
			r.front.seams = append(r.front.seams, p)
		}
	case "stitches":
		r.stitchesKey(v.Value, from)
	default:
		r.unknownKey(key, name.span)
	}
}

func (r *reader) unknownKey(key string, span diag.Span) {
	if laterKeys[key] {
		r.d.report(diag.Note, CodeUnknownKey, span, fmt.Sprintf("The key %s is kept, and nothing is checked by it yet.", key), "", "")
		return
	}
	repair := ""
	message := fmt.Sprintf("The key %s is not known here, so its value is not used.", key)
	if near := nearest(key, frontKeys); near != "" {
		message = fmt.Sprintf("The key %s is not known here, so its value is not used. Did you mean %s?", key, near)
		repair = near + ":"
	}
	r.d.report(diag.Warning, CodeUnknownKey, span, message, "The keys are "+strings.Join(frontKeys, ", ")+".", repair)
}

func (r *reader) badValue(span diag.Span, message, repair string) {
	line, _ := r.d.Position(span.Start)
	r.d.report(diag.Error, CodeFrontValue, span, fmt.Sprintf("Line %d: %s", line, message), "", repair)
}

func (r *reader) termsKey(v *ast.MappingValueNode, from int) {
	p, ok := r.scalar(v.Value, from)
	switch strings.ToLower(strings.TrimSuffix(cleanName(p.text), " terms")) {
	case "us", "usa", "american":
		r.d.Terms, r.d.TermsBy = stitch.US, "said so"
	case "uk", "british":
		r.d.Terms, r.d.TermsBy = stitch.UK, "said so"
	default:
		if ok {
			r.badValue(p.span, fmt.Sprintf("the terms are US or UK, not %q.", p.text), "terms: US")
		}
	}
}

func (r *reader) unitsKey(v *ast.MappingValueNode, from int) {
	p, ok := r.scalar(v.Value, from)
	switch cleanName(p.text) {
	case "in", "inch", "inches", "\"":
		r.d.Front.Units = "in"
	case "cm", "centimetres", "centimeters", "metric":
		r.d.Front.Units = "cm"
	default:
		if ok {
			r.badValue(p.span, fmt.Sprintf("the units are in or cm, not %q.", p.text), "units: in")
		}
	}
}

func (r *reader) sizesKey(v *ast.MappingValueNode, from int) {
	var names []string
	key, _ := r.scalar(v.Key, from)
	span := key.span
	if seq, ok := v.Value.(*ast.SequenceNode); ok {
		for _, n := range seq.Values {
			if p, ok := r.scalar(n, from); ok {
				names = append(names, p.text)
				span.End = max(span.End, p.span.End)
			}
		}
	} else if p, ok := r.scalar(v.Value, from); ok {
		names, span = sizeNames(p.text), p.span
		if len(names) == 0 && p.text != "" {
			names = []string{p.text}
		}
	}
	if len(names) == 0 {
		r.badValue(span, "no sizes are named here.", "sizes: S, M, L")
		return
	}
	if len(names) == 1 {
		return
	}
	r.setSizes(names, span)
}

// gaugeKey reads a gauge, or one for each stitch pattern.
func (r *reader) gaugeKey(n ast.Node, from int, pattern string) {
	switch v := n.(type) {
	case *ast.MappingNode:
		for _, m := range v.Values {
			r.gaugeKey(m, from, "")
		}
	case *ast.MappingValueNode:
		if name, ok := r.scalar(v.Key, from); ok {
			r.gaugeKey(v.Value, from, cleanName(name.text))
		}
	case *ast.SequenceNode:
		for _, m := range v.Values {
			r.gaugeKey(m, from, pattern)
		}
	default:
		p, ok := r.scalar(n, from)
		if !ok {
			return
		}
		g, ok := readGauge(p.text, p.span.Start)
		if !ok {
			r.d.report(diag.Warning, CodeGauge, p.span,
				fmt.Sprintf("%q is not read as a gauge.", p.text), "", "Write it as in: 17 sts and 15 rows = 4 in")
			return
		}
		g.Span = p.span
		if pattern != "" {
			g.Pattern = pattern
		}
		r.d.Gauges = append(r.d.Gauges, g)
	}
}

// stitchesKey reads stitches of the pattern's own from the front matter.
func (r *reader) stitchesKey(n ast.Node, from int) {
	m, ok := n.(*ast.MappingNode)
	if !ok {
		if v, single := n.(*ast.MappingValueNode); single {
			m = &ast.MappingNode{Values: []*ast.MappingValueNode{v}}
		} else {
			return
		}
	}
	for _, v := range m.Values {
		name, ok := r.scalar(v.Key, from)
		value, ok2 := r.scalar(v.Value, from)
		if !ok || !ok2 || value.span.End <= name.span.Start {
			continue
		}
		r.ownStitch(r.d.Source[name.span.Start:value.span.End], name.span.Start, name.text)
	}
}

func (r *reader) ownStitch(text string, at int, name string) {
	s, found := r.d.Stitches.ReadDefinition(text, at, r.d.Terms)
	for _, f := range found {
		if f.Row == "" {
			f.Row = name
		}
		r.d.Findings = append(r.d.Findings, f)
	}
	if s != nil {
		r.d.Stitches.Add(s)
	}
}
