package stitch

import (
	"fmt"
	"strings"

	"rowproof/diag"
)

// A report is what a finding needs to know of where it stands.
type report struct {
	name  string // of the stitch, as written
	at    int    // byte of the document where the text begins
	terms Terms
}

// mostSteps is how many moves a finding's counting shows.
const mostSteps = 40

// findings tells what is wrong, one finding for one slip. When the moves hold
// together, each wrong claim is a slip of its own; when they do not, all that
// comes after the first fault may follow from it and is held back.
func (m *machine) findings(r *reader, rep report) []diag.Finding {
	if r.times > 0 || m.over {
		return []diag.Finding{m.tooMany(r, rep)}
	}
	if m.loops != 1 && !m.blind {
		m.faults = append(m.faults, fault{node: m.last, loops: m.loops, steps: len(m.steps)})
	}
	var out []diag.Finding
	off := 0
	for _, c := range m.claims {
		if !c.met || c.node.n == c.first || c.node.n == c.last {
			if c.met {
				off = 0
			}
			continue
		}
		if len(m.faults) > 0 && m.faults[0].steps < c.steps {
			break
		}
		if by := c.node.n - c.first; by != off {
			out, off = append(out, m.wrongClaim(c, rep)), by
		}
		if len(m.faults) > 0 {
			return out
		}
	}
	if len(m.faults) > 0 {
		out = append(out, m.wrongLoops(m.faults[0], rep))
	}
	return out
}

func (m *machine) wrongClaim(c claimed, rep report) diag.Finding {
	is := "are"
	if c.first == 1 {
		is = "is"
	}
	return diag.Finding{
		Severity: diag.Error,
		Code:     LoopsOnHook,
		Span:     rep.span(c.node.start, c.node.end),
		Row:      rep.name,
		Message:  fmt.Sprintf("There %s %s on the hook here, not %d", is, count(c.first, "loop"), c.node.n),
		Detail:   m.counting(c.steps, rep.terms),
		Repair:   count(c.first, "loop") + " on hook",
	}
}

func (m *machine) wrongLoops(f fault, rep report) diag.Finding {
	out := diag.Finding{
		Severity: diag.Error,
		Code:     LoopsLeft,
		Span:     rep.span(f.node.start, f.node.end),
		Row:      rep.name,
		Detail:   m.counting(f.steps, rep.terms),
	}
	switch {
	case f.need > 0 && f.loops < 1:
		out.Message = fmt.Sprintf("There is no loop on the hook here, and this needs %d", f.need)
	case f.need > 0 && f.loops == 1:
		out.Message = fmt.Sprintf("There is only 1 loop on the hook here, and this needs %d", f.need)
	case f.need > 0:
		out.Message = fmt.Sprintf("There are only %d loops on the hook here, and this needs %d", f.loops, f.need)
	case f.loops == 0:
		out.Message = rep.name + " leaves no loop on the hook; a stitch ends with 1"
	default:
		out.Message = fmt.Sprintf("%s leaves %s on the hook; a stitch ends with 1", rep.name, count(f.loops, "loop"))
	}
	if f.node.op != opThrough {
		return out
	}
	all := f.loops
	if f.need == 0 {
		all += f.node.n - 1
	}
	if f.node.n > 0 && all > 1 {
		out.Repair = fmt.Sprintf("pull through all %d loops", all)
	}
	return out
}

func (m *machine) tooMany(r *reader, rep report) diag.Finding {
	f := diag.Finding{
		Severity: diag.Error,
		Code:     TooManyTimes,
		Span:     rep.span(r.cut.Start, r.cut.End),
		Row:      rep.name,
		Message:  fmt.Sprintf("%s would take more than %d moves of the hook, more than any stitch", rep.name, mostSpent),
	}
	switch {
	case r.times >= mostNumber:
		f.Message = fmt.Sprintf("%s repeats something more often than can be counted; no stitch needs more than %d times", rep.name, mostTimes)
	case r.times > 0:
		f.Message = fmt.Sprintf("%s repeats something %d times; no stitch needs more than %d", rep.name, r.times, mostTimes)
	default:
		f.Span = rep.span(0, len(r.text))
	}
	return f
}

func (rep report) span(start, end int) diag.Span {
	return diag.Span{Start: rep.at + start, End: rep.at + end}
}

// counting lists the first n steps, one a line, with the loops on the hook
// after each.
func (m *machine) counting(n int, t Terms) string {
	var out strings.Builder
	steps := m.steps[:min(n, len(m.steps))]
	out.WriteString("start: 1 loop")
	if len(steps) > mostSteps {
		fmt.Fprintf(&out, "\n… %d moves more", len(steps)-mostSteps)
		steps = steps[len(steps)-mostSteps:]
	}
	for _, s := range steps {
		what := s.move.String()
		if s.kind != None {
			what = m.d.Name(s.kind, t)
		}
		out.WriteString("\n" + what + ": " + count(s.loops, "loop"))
	}
	return out.String()
}
