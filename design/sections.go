package design

import (
	"strings"

	"rowproof/diag"
	"rowproof/notation"
)

// sectionKind tells by its words what a heading (in lower case) is over:
// OtherSection when the words do not say.
func sectionKind(title string) SectionKind {
	ws := words(title)
	if len(ws) == 0 || len(ws) > 8 {
		return OtherSection
	}
	for i, w := range ws {
		next := ""
		if i+1 < len(ws) {
			next = ws[i+1].text
		}
		switch w.text {
		case "note", "notes", "n.b", "nb", "terms", "tips", "introduction", "construction":
			return NotesSection
		case "abbreviations", "abbreviation", "abbr", "glossary", "key":
			return StitchSection
		case "special":
			if next == "stitch" || next == "stitches" || next == "sts" || next == "st" || next == "abbreviations" || next == "techniques" || next == "technique" {
				return StitchSection
			}
			if next == "notes" {
				return NotesSection
			}
		case "stitch", "st":
			if next == "pattern" || next == "patterns" || next == "guide" || next == "key" || next == "glossary" || next == "pat" || next == "explanations" {
				return StitchSection
			}
		case "stitches":
			if i == 0 && (next == "" || next == "used") || next == "used" {
				return StitchSection
			}
		case "pattern", "pat", "patt":
			switch {
			case next == "stitch" || next == "stitches" || next == "st":
				return StitchSection
			case next == "notes" || next == "note" || next == "terms":
				return NotesSection
			case i > 0 && next == "" && i+1 == len(ws) && (specialNames[ws[i-1].text] || len(ws) == 2 && w.text != "pattern"):
				return StitchSection
			}
		case "gauge", "tension":
			return GaugeSection
		case "size", "sizes", "sizing":
			if i == 0 || ws[i-1].text == "finished" || ws[i-1].text == "available" || len(ws) <= 3 && i+1 == len(ws) {
				return SizesSection
			}
		case "measurements", "measurement", "dimensions":
			return SizesSection
		case "materials", "material", "supplies", "yarn", "yarns", "hook", "hooks", "notions", "equipment", "tools", "needles":
			if i < 2 && len(ws) <= 5 {
				return MaterialsSection
			}
		case "need":
			if i > 0 && contains(ws, "you", "what") {
				return MaterialsSection
			}
		case "assembly", "assembling", "finishing", "seaming", "joining", "blocking":
			if len(ws) <= 5 && (w.text != "joining" && w.text != "blocking" || len(ws) == 1) {
				return AssemblySection
			}
		case "making", "make", "to":
			if (next == "up" || next == "make") && len(ws) <= 3 {
				return AssemblySection
			}
		}
	}
	return OtherSection
}

// openSection starts a section at a heading.
func (r *reader) openSection(title string, line int, span diag.Span, level int) *Section {
	s := &Section{Title: title, Line: line, Span: span, Level: level, Kind: sectionKind(lower(title))}
	s.Times = r.makeTimes(title, span.Start)
	if s.Times != nil {
		if i := strings.LastIndexByte(strings.ToLower(title), '('); i > 0 {
			s.Title = strings.TrimRight(title[:i], blanks)
		}
	}
	r.d.Sections = append(r.d.Sections, s)
	r.section, r.only, r.others = s, nil, nil
	return s
}

// makeTimes reads the 2 of "Sleeve (make 2)" and "Make 12 motifs".
func (r *reader) makeTimes(title string, at int) *notation.Number {
	low := strings.ToLower(title)
	if len(low) != len(title) {
		return nil
	}
	for _, mark := range []string{"make ", "(x", "× "} {
		i := strings.Index(low, mark)
		if i < 0 {
			continue
		}
		from := i + len(mark)
		to := from
		for to < len(low) && wordByte(low[to]) {
			to++
		}
		w := word{text: low[from:to]}
		if n := max(digitsOf(w.text), numberWords[w.text]); w.number() && n > 0 {
			return &notation.Number{Span: diag.Span{Start: at + from, End: at + to}, Values: []notation.Value{{N: n}}}
		}
	}
	return nil
}

// settleSections says which sections are pieces: those whose words say
// nothing else and that hold instructions.
func (d *Design) settleSections() {
	for _, s := range d.Sections {
		if s.Kind != OtherSection {
			continue
		}
		for _, l := range s.Lines {
			if l.Kind == Instruction || l.Kind == Foundation {
				s.Kind = PieceSection
				break
			}
		}
	}
}
