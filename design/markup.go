package design

import (
	"strings"

	"rowproof/diag"
)

// blankComments returns source with HTML comments blanked to spaces of the
// same length, line breaks kept.
func (d *Design) blankComments(from int) string {
	at := strings.Index(d.Source[from:], "<!--")
	if at < 0 {
		return d.Source
	}
	work := []byte(d.Source)
	for at += from; ; {
		end := strings.Index(d.Source[at:], "-->")
		if end < 0 {
			d.report(diag.Warning, CodeOpenComment, diag.Span{Start: at, End: at + 4},
				"A comment starts here (<!--) and is never closed, so it is read as text.", "", "Close the comment with -->.")
			break
		}
		for i := at; i < at+end+3; i++ {
			if work[i] != '\n' && work[i] != '\r' {
				work[i] = ' '
			}
		}
		next := strings.Index(d.Source[at+end:], "<!--")
		if next < 0 {
			break
		}
		at += end + next
	}
	return string(work)
}

// blankMarks returns text with Markdown's marks blanked to spaces, so that
// offsets are kept: emphasis, escapes, code marks, links, tags, table bars. A
// star that marks a repeat is left alone. A block that is bold as a whole is
// noted in b.
func blankMarks(text string, b *block) string {
	if strings.IndexAny(text, "*_\\`<|\n\r\t]&") < 0 {
		return text
	}
	buf := []byte(text)
	blankEscapes(buf)
	for i, c := range buf {
		if c == '\n' || c == '\r' || c == '\t' || b.table && c == '|' || c == '`' {
			buf[i] = ' '
		}
	}
	if b.last > b.first {
		blankQuotes(buf, text)
	}
	blankTags(buf)
	blankLinks(buf)
	blankUnderscores(buf, b)
	blankStars(buf, b)
	return string(buf)
}

// blankEscapes blanks the backslash before a mark: "\*" is a star.
func blankEscapes(buf []byte) {
	for i := 0; i+1 < len(buf); i++ {
		if buf[i] == '\\' && strings.IndexByte("*_#[](){}<>|-+.!`~\\:", buf[i+1]) >= 0 {
			buf[i] = ' '
			i++
		}
	}
}

// blankQuotes blanks the ">" that starts a wrapped line of a quotation.
func blankQuotes(buf []byte, text string) {
	for i := 1; i < len(text); i++ {
		if text[i] == '>' && (text[i-1] == '\n' || text[i-1] == '\r') {
			buf[i] = ' '
		}
	}
}

// blankTags blanks HTML tags and the entity for a hard space.
func blankTags(buf []byte) {
	for i := 0; i < len(buf); i++ {
		switch buf[i] {
		case '<':
			end := i + 1
			for end < len(buf) && end < i+200 && buf[end] != '>' && buf[end] != '<' {
				end++
			}
			if end < len(buf) && buf[end] == '>' && end > i+1 && (asciiLetter(buf[i+1]) || buf[i+1] == '/') {
				blank(buf, i, end+1)
				i = end
			}
		case '&':
			if strings.HasPrefix(string(buf[i:min(len(buf), i+6)]), "&nbsp;") {
				blank(buf, i, i+6)
			}
		}
	}
}

// blankLinks blanks the marks and the address of "[text](address)".
func blankLinks(buf []byte) {
	for i := 0; i+1 < len(buf); i++ {
		if buf[i] != ']' || buf[i+1] != '(' {
			continue
		}
		end := i + 2
		for end < len(buf) && end < i+2000 && buf[end] != ')' && buf[end] != ' ' {
			end++
		}
		if end >= len(buf) || buf[end] != ')' || !address(string(buf[i+2:end])) {
			i = end - 1
			continue
		}
		for open := i - 1; open >= 0 && open > i-500; open-- {
			if buf[open] == '[' {
				buf[open] = ' '
				if open > 0 && buf[open-1] == '!' {
					buf[open-1] = ' '
				}
				blank(buf, i, end+1)
				break
			}
		}
		i = end
	}
}

func address(s string) bool {
	return strings.Contains(s, "/") || strings.HasPrefix(s, "#") || strings.Contains(s, ".") && len(s) > 4
}

// blankUnderscores blanks "_x_" and "__x__".
func blankUnderscores(buf []byte, b *block) {
	open := -1
	for i := 0; i < len(buf); i++ {
		if buf[i] != '_' {
			continue
		}
		n := run(buf, i)
		left := i == 0 || !wordByte(buf[i-1])
		right := i+n >= len(buf) || !wordByte(buf[i+n])
		switch {
		case open >= 0 && right && i > 0 && buf[i-1] != ' ':
			if m := run(buf, open); m == n {
				if n > 1 && open == 0 && i+n == len(buf) {
					b.bold = true
				}
				blank(buf, open, open+m)
				blank(buf, i, i+n)
			}
			open = -1
		case left && i+n < len(buf) && buf[i+n] != ' ':
			open = i
		}
		i += n - 1
	}
}

// run returns how many times the byte at i stands there.
func run(buf []byte, i int) int {
	n := 1
	for i+n < len(buf) && buf[i+n] == buf[i] {
		n++
	}
	return n
}

// blankStars blanks the stars that only make letters bold or slanted and
// leaves those that mark a repeat.
//
// A pair is emphasis when it holds a label or a heading ("**Row 1:**"), when
// it holds the whole line, or, in a line that repeats nothing, when its marks
// stand tight around words as Markdown wants them.
func blankStars(buf []byte, b *block) {
	type mark struct{ at, n int }
	var marks []mark
	brace := -1
	for i := 0; i < len(buf); i++ {
		switch buf[i] {
		case '{':
			brace = i
		case '}':
			brace = -1
		case '*':
			n := run(buf, i)
			if brace < 0 || i-brace > 60 {
				marks = append(marks, mark{i, n})
			}
			i += n - 1
		}
	}
	if len(marks) < 2 {
		return
	}
	again := repeats(string(buf)) || repeatWord(buf)
	for k := 0; k+1 < len(marks); k++ {
		a, z := marks[k], marks[k+1]
		if a.n != z.n || a.n > 3 || !opens(buf, a.at, a.n) || !closes(buf, z.at) {
			continue
		}
		inside := strings.TrimSpace(string(buf[a.at+a.n : z.at]))
		after := byte(0)
		if z.at+z.n < len(buf) {
			after = buf[z.at+z.n]
		}
		whole := a.at == 0 && z.at+z.n == len(buf)
		label := strings.HasSuffix(inside, ":") || after == ':' || labelLook(inside) && len(inside) < 30
		if label || whole && (a.n > 1 || !again) || !again && (a.n > 1 || len(marks) == 2) {
			if whole && a.n > 1 {
				b.bold = true
			}
			blank(buf, a.at, a.at+a.n)
			blank(buf, z.at, z.at+z.n)
			k++
		}
	}
}

// repeatWord reports whether a word that ends a repeat stands in buf:
// "*dc, ch 1* around" goes round although nothing says repeat.
func repeatWord(buf []byte) bool {
	for _, w := range words(string(buf)) {
		switch w.text {
		case "around", "across", "end", "between", "bet", "x", "from":
			return true
		}
	}
	return false
}

func opens(buf []byte, at, n int) bool {
	return at+n < len(buf) && buf[at+n] != ' ' && (at == 0 || !wordByte(buf[at-1]))
}

func closes(buf []byte, at int) bool { return at > 0 && buf[at-1] != ' ' }

func blank(buf []byte, from, to int) {
	for i := from; i < to; i++ {
		buf[i] = ' '
	}
}
