package design

// String returns the kind as printed: "instruction", "foundation",
// "definition", "assembly", "note", "heading" or "prose".
func (k Kind) String() string {
	switch k {
	case Heading:
		return "heading"
	case Note:
		return "note"
	case Definition:
		return "definition"
	case Foundation:
		return "foundation"
	case Instruction:
		return "instruction"
	case Assembly:
		return "assembly"
	}
	return "prose"
}

// String returns how much was understood: "whole", "part" or "none".
func (r ReadState) String() string {
	switch r {
	case ReadWhole:
		return "whole"
	case ReadPart:
		return "part"
	}
	return "none"
}

// String returns what a section holds, in a word: "piece", "notes",
// "stitches", "gauge", "sizes", "materials", "assembly" or "other".
func (k SectionKind) String() string {
	switch k {
	case PieceSection:
		return "piece"
	case NotesSection:
		return "notes"
	case StitchSection:
		return "stitches"
	case GaugeSection:
		return "gauge"
	case SizesSection:
		return "sizes"
	case MaterialsSection:
		return "materials"
	case AssemblySection:
		return "assembly"
	}
	return "other"
}
