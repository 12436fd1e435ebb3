package design

import (
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"rowproof/diag"
)

// scalar returns the text of a single value. Numbers stay as written: "017"
// is no fifteen. Anything that is no single value is reported.
func (r *reader) scalar(n ast.Node, from int) (piece, bool) {
	d := r.d
	if n == nil || n.GetToken() == nil || n.GetToken().Position == nil {
		return piece{span: d.wordAt(d.places.starts[min(from, len(d.places.starts)-1)])}, false
	}
	t := n.GetToken()
	start := d.offset(from+t.Position.Line, t.Position.Column)
	line, _ := d.Position(start)
	written := strings.TrimSpace(t.Origin)
	end := min(start+max(len(written), 1), d.places.ends[line-1])
	p := piece{text: strings.TrimSpace(t.Value), span: diag.Span{Start: start, End: max(end, start)}}
	if p.span.End-p.span.Start > 1 && (written[0] == '"' || written[0] == '\'') {
		p.span.Start, p.span.End = p.span.Start+1, p.span.End-1
	}
	switch v := n.(type) {
	case *ast.LiteralNode:
		if v.Value != nil {
			p.text = strings.TrimSpace(v.Value.Value)
		}
		return p, true
	case *ast.NullNode:
		p.text = ""
		return p, true
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return p, true
	case *ast.MappingNode, *ast.MappingValueNode, *ast.SequenceNode:
		r.badValue(p.span, "one value belongs here, not a list.", "")
		return p, false
	}
	r.badValue(p.span, fmt.Sprintf("a value cannot start with %q.", written[:min(1, len(written))]), "Put the value between quotation marks.")
	return p, false
}

// textOf returns the text of a key that takes one value.
func (r *reader) textOf(v *ast.MappingValueNode, from int, key string) string {
	p, _ := r.scalar(v.Value, from)
	return p.text
}

// list returns the values of a list, or of one value.
func (r *reader) list(n ast.Node, from int) []piece {
	var out []piece
	if seq, ok := n.(*ast.SequenceNode); ok {
		for _, v := range seq.Values {
			if p, ok := r.scalar(v, from); ok {
				out = append(out, p)
			}
		}
		return out
	}
	if p, ok := r.scalar(n, from); ok && p.text != "" {
		out = append(out, p)
	}
	return out
}

// texts returns every value under n as text, "name value" for named ones.
func (r *reader) texts(n ast.Node, from int) []string {
	switch v := n.(type) {
	case nil:
		return nil
	case *ast.MappingNode:
		var out []string
		for _, m := range v.Values {
			out = append(out, r.texts(m, from)...)
		}
		return out
	case *ast.MappingValueNode:
		name := ""
		if t := v.Key.GetToken(); t != nil {
			name = t.Value
		}
		return []string{strings.TrimSpace(name + " " + strings.Join(r.texts(v.Value, from), ", "))}
	case *ast.SequenceNode:
		var out []string
		for _, m := range v.Values {
			out = append(out, r.texts(m, from)...)
		}
		return out
	case *ast.LiteralNode:
		if v.Value != nil {
			return []string{strings.TrimSpace(v.Value.Value)}
		}
		return nil
	}
	if t := n.GetToken(); t != nil {
		return []string{strings.TrimSpace(t.Value)}
	}
	return nil
}

// numbersKey takes the named numbers: a list, one value, or arithmetic.
func (r *reader) numbersKey(n ast.Node, from int, key diag.Span) {
	var values []*ast.MappingValueNode
	switch v := n.(type) {
	case *ast.MappingNode:
		values = v.Values
	case *ast.MappingValueNode:
		values = append(values, v)
	case *ast.NullNode:
		return
	default:
		r.badValue(key, "the numbers need a name each.", "numbers:\n  body: [81, 89, 97]")
		return
	}
	for _, v := range values {
		name, ok := r.scalar(v.Key, from)
		if !ok {
			continue
		}
		raw := rawNumber{name: name}
		if seq, ok := v.Value.(*ast.SequenceNode); ok {
			raw.list = true
			for _, item := range seq.Values {
				if p, ok := r.scalar(item, from); ok {
					raw.items = append(raw.items, p)
				}
			}
		} else if p, ok := r.scalar(v.Value, from); ok {
			raw.items, raw.list = splitNumbers(p)
		} else {
			continue
		}
		r.front.numbers = append(r.front.numbers, raw)
	}
}

// splitNumbers cuts "81 (89, 97, 105)" and "81, 89, 97" into their numbers;
// anything else stays whole, to be read as arithmetic.
func splitNumbers(p piece) ([]piece, bool) {
	for i := 0; i < len(p.text); i++ {
		if c := p.text[i]; !asciiDigit(c) && strings.IndexByte(" ,;()[]", c) < 0 {
			return []piece{p}, false
		}
	}
	fields := strings.FieldsFunc(p.text, func(r rune) bool { return r < '0' || r > '9' })
	if len(fields) < 2 {
		return []piece{p}, false
	}
	var out []piece
	at := 0
	for _, f := range fields {
		at += strings.Index(p.text[at:], f)
		out = append(out, piece{text: f, span: diag.Span{Start: p.span.Start + at, End: p.span.Start + at + len(f)}})
		at += len(f)
	}
	return out, true
}
