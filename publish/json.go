package publish

import (
	"encoding/json"
	"io"
	"slices"

	"rowproof/check"
	"rowproof/design"
	"rowproof/diag"
)

// checkJSON is the stable form of a report, read by other programs.
type checkJSON struct {
	File         string           `json:"file"`
	Sizes        []string         `json:"sizes"`
	Instructions instructionsJSON `json:"instructions"`
	Rows         int              `json:"rows"`
	Stitches     int              `json:"stitches"`
	Findings     []findingJSON    `json:"findings"`
}

type instructionsJSON struct {
	Total     int `json:"total"`
	Worked    int `json:"worked"`
	Measured  int `json:"measured"`
	NotWorked int `json:"not worked"`
}

// findingJSON is one finding. Line, column and end count from 1, in
// characters; end is just past the last marked character on that line.
type findingJSON struct {
	Severity string   `json:"severity"`
	Code     string   `json:"code"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	End      int      `json:"end"`
	Piece    string   `json:"piece"`
	Row      string   `json:"row"`
	Sizes    []string `json:"sizes"`
	Message  string   `json:"message"`
	Detail   string   `json:"detail"`
	Repair   string   `json:"repair"`
}

// FindingsJSON writes what a check found as JSON.
func FindingsJSON(w io.Writer, r *check.Report) error {
	out := checkJSON{
		File: r.Design.File, Sizes: orEmpty(r.Sizes),
		Instructions: instructionsJSON(r.Instructions),
		Rows:         r.Rows, Stitches: r.Stitches, Findings: []findingJSON{},
	}
	x := newLineIndex(r.Design.Source)
	findings := slices.Clone(r.Findings)
	slices.SortStableFunc(findings, diag.Compare)
	for _, f := range findings {
		at := x.place(x.trimmed(f.Span))
		out.Findings = append(out.Findings, findingJSON{
			Severity: f.Severity.String(), Code: string(f.Code),
			Line: at.Line, Column: at.Column, End: at.End,
			Piece: f.Piece, Row: f.Row, Sizes: orEmpty(f.Sizes),
			Message: f.Message, Detail: f.Detail, Repair: f.Repair,
		})
	}
	return writeJSON(w, out)
}

func orEmpty(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

type readJSON struct {
	Lines []lineJSON `json:"lines"`
}

type lineJSON struct {
	Line   int    `json:"line"`
	Kind   string `json:"kind"`
	Read   string `json:"read"`
	Unread string `json:"unread"`
}

// ReadingJSON writes how each line that is not blank was understood, as JSON.
// A line of the page that goes on an instruction is told like its first.
func ReadingJSON(w io.Writer, d *design.Design) error {
	out := readJSON{Lines: []lineJSON{}}
	for _, l := range readLines(d) {
		out.Lines = append(out.Lines, lineJSON{
			Line: l.number, Kind: kindNames[l.line.Kind],
			Read: readNames[l.line.Read], Unread: l.line.Unread,
		})
	}
	return writeJSON(w, out)
}

var kindNames = [...]string{
	design.Prose: "prose", design.Heading: "heading", design.Note: "note", design.Definition: "definition",
	design.Foundation: "foundation", design.Instruction: "instruction", design.Assembly: "assembly",
}

var readNames = [...]string{design.ReadNone: "none", design.ReadPart: "part", design.ReadWhole: "whole"}

// pageLine is a physical line and the line of the pattern it belongs to.
type pageLine struct {
	number int
	line   *design.Line
}

// readLines returns every physical line that is not blank and belongs to a
// line of the pattern, in order and once.
func readLines(d *design.Design) []pageLine {
	x := newLineIndex(d.Source)
	var out []pageLine
	done := 0
	for _, l := range d.Lines {
		for n := max(l.Number, done+1); n <= max(l.Last, l.Number); n++ {
			if !blank(x.line(n)) {
				out = append(out, pageLine{n, l})
			}
			done = n
		}
	}
	return out
}

func blank(s string) bool {
	for _, r := range s {
		if r != ' ' && r != '\t' && r != '\u00a0' && r != '\r' && r != '\ufeff' {
			return false
		}
	}
	return true
}
