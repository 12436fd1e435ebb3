package publish

import (
	"rowproof/check"
	"rowproof/design"
	"rowproof/fabric"
)

// notWorked returns the line numbers of the instructions that were not worked.
func notWorked(r *check.Report) []int {
	var lines []int
	for _, l := range r.Design.Lines {
		if l.Kind != design.Instruction && l.Kind != design.Foundation {
			continue
		}
		worst := fabric.NotReached
		for _, f := range r.Fabrics {
			worst = max(worst, f.Outcomes[l])
		}
		if worst != fabric.Done && worst != fabric.ByMeasure {
			lines = append(lines, l.Number)
		}
	}
	return lines
}
