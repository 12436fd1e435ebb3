package design

import (
	"fmt"
	"strings"

	"rowproof/diag"
)

// seams reads the seams of the front matter: "Back top to Front top", "Sleeve
// top = Back side".
func (r *reader) seams() []Seam {
	if r.front == nil {
		return nil
	}
	var list []Seam
	for _, p := range r.front.seams {
		a, b, ok := cutSeam(p.text)
		if !ok {
			r.d.report(diag.Error, CodeSeam, p.span, fmt.Sprintf("%q does not name two edges.", p.text), "",
				"Name the edges with \"to\" between them, as in: Back top to Front top")
			continue
		}
		s := Seam{Span: p.span}
		var okA, okB bool
		s.A, okA = r.edge(a, p.span)
		s.B, okB = r.edge(b, p.span)
		if okA && okB {
			list = append(list, s)
		}
	}
	return list
}

func cutSeam(text string) (a, b string, ok bool) {
	if a, b, ok = strings.Cut(text, "="); !ok {
		if i := strings.Index(lower(text), " to "); i > 0 {
			a, b, ok = text[:i], text[min(len(text), i+4):], true
		}
	}
	a, b = strings.TrimSpace(a), strings.TrimSpace(b)
	return a, b, ok && a != "" && b != ""
}

// edge reads "Front, Left Side of Neck top": piece, part and edge.
func (r *reader) edge(text string, at diag.Span) (SeamEdge, bool) {
	i := strings.LastIndexByte(text, ' ')
	edge := lower(text[i+1:])
	switch edge {
	case "sides", "side":
		edge = "side"
	case "tops", "top":
		edge = "top"
	case "start", "bottom", "beginning":
		edge = "start"
	default:
		i = -1
	}
	if i <= 0 {
		r.d.report(diag.Error, CodeSeam, at, fmt.Sprintf("%q does not say which edge is meant: its top, side or start.", text), "",
			text+" top")
		return SeamEdge{}, false
	}
	piece, part, _ := strings.Cut(text[:i], ",")
	e := SeamEdge{Piece: strings.TrimSpace(piece), Part: strings.TrimSpace(part), Edge: edge}
	var names []string
	for _, s := range r.d.Sections {
		if strings.EqualFold(s.Title, e.Piece) {
			return e, r.part(e, at)
		}
		if s.Kind == PieceSection || s.Kind == OtherSection {
			names = append(names, s.Title)
		}
	}
	message := fmt.Sprintf("The seam names %q, and no heading has that name.", e.Piece)
	repair := ""
	if near := nearest(e.Piece, names); near != "" {
		message += fmt.Sprintf(" Did you mean %q?", near)
		repair = near
	}
	r.d.report(diag.Error, CodeSeam, at, message, "", repair)
	return e, false
}

// part reports a part of a piece that no heading names.
func (r *reader) part(e SeamEdge, at diag.Span) bool {
	if e.Part == "" {
		return true
	}
	for _, s := range r.d.Sections {
		if strings.EqualFold(s.Title, e.Part) {
			return true
		}
	}
	r.d.report(diag.Error, CodeSeam, at, fmt.Sprintf("The seam names %q, and no heading has that name.", e.Part), "", "")
	return false
}
