package publish

import (
	"strconv"
	"strings"

	"rowproof/design"
	"rowproof/diag"
	"rowproof/notation"
)

// rowsOf writes each row in the words of another line. The count that l states
// is that of its last row, where it is wanted.
func (w *rowWriter) rowsOf(l *design.Line, rows []int, words []*design.Line, stated bool) []*outLine {
	bodies := map[*design.Line]string{}
	var out []*outLine
	for i, n := range rows {
		body, known := bodies[words[i]]
		if !known {
			body = w.body(words[i])
			bodies[words[i]] = body
		}
		if body == "" {
			return nil
		}
		if stated && i == len(rows)-1 {
			body = strings.TrimSpace(body + " " + w.statedCount(l))
		}
		label := w.rowLabel(l, words[i], n)
		out = append(out, &outLine{kind: design.Instruction, label: label, text: body, marked: label + " " + body})
	}
	for i, n := range rows {
		w.rowOf[n] = words[i]
		w.recent = append(w.recent, words[i])
		w.last = n
	}
	return out
}

// body returns the words of a line without its label and stated counts.
func (w *rowWriter) body(l *design.Line) string {
	c, _ := w.changes(l)
	var cut edits
	for _, count := range l.Tree.Counts {
		cut.add(countSpan(l, count.Span), "")
	}
	cut = append(cut, c...)
	text := tidy(cut.splice(w.unmarked(l), l.Start, spanAt(labelEnd(l), l.End)))
	text = strings.TrimRight(text, " .,;:—–-=")
	text = strings.TrimLeft(text, " .:–—")
	if text == "" {
		return ""
	}
	return text + "."
}

// countSpan takes in the marks around a stated count.
func countSpan(l *design.Line, s diag.Span) diag.Span {
	text := l.Text
	from, to := s.Start-l.Start, s.End-l.Start
	if from < 0 || to > len(text) || from > to {
		return s
	}
	if from > 0 && to < len(text) && strings.IndexByte("([{", text[from-1]) >= 0 && strings.IndexByte(")]}", text[to]) >= 0 {
		return spanAt(s.Start-1, s.End+1)
	}
	return s
}

// statedCount returns the counts that l states, as written.
func (w *rowWriter) statedCount(l *design.Line) string {
	c, _ := w.changes(l)
	var words []string
	for _, count := range l.Tree.Counts {
		if !within(count.Span, l.Span) {
			continue
		}
		text := tidy(c.splice(w.unmarked(l), l.Start, countSpan(l, count.Span)))
		words = append(words, strings.Trim(text, " .,;—–-="))
	}
	if len(words) == 0 {
		return ""
	}
	all := strings.Join(words, ", ")
	if strings.IndexByte("([{", all[0]) >= 0 {
		return all
	}
	return "(" + all + ")"
}

// rowLabel writes the label of one row in the manner of l, or of the line
// whose words it has.
func (w *rowWriter) rowLabel(l, words *design.Line, n int) string {
	label := l.Tree.Label
	if label == nil {
		label = words.Tree.Label
	}
	if label == nil {
		return "Row " + strconv.Itoa(n) + ":"
	}
	written := w.words(label.Span)
	word := "Row"
	if label.Is == notation.Round {
		word = "Rnd"
	}
	for _, known := range []string{"ROUND", "Round", "RND", "Rnd", "ROW", "Row", "R"} {
		if strings.HasPrefix(written, known) {
			word = known
			break
		}
	}
	return word + " " + strconv.Itoa(n) + ":"
}
