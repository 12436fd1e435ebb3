package design

import (
	"fmt"
	"strings"
	"unicode"

	"rowproof/diag"
	"rowproof/notation"
)

// onlyLine handles the lines that pick sizes. "Size L only" and "All sizes"
// alone on a line hold for the lines that follow; "Size L only: work 2 more
// rows" holds for its own line. It returns the sizes of the line, nil for
// all, and whether it is such a line.
func (r *reader) onlyLine(l *Line, lk *look) (only []bool, is bool) {
	text := l.Text[:min(len(l.Text), 200)]
	lead := len(text) - len(strings.TrimLeft(text, blanks)) // where marks of bold stood
	head, from, all, ok := onlyHead(text[lead:])
	if !ok {
		return nil, false
	}
	from += lead
	names := head
	alone := strings.Trim(l.Text[from:], blanks+".:;,-–—") == ""
	switch {
	case all == allSizesWord:
		only, r.others = nil, nil
	case all == otherSizesWord:
		only = r.others
	default:
		if only, ok = r.d.pickSizes(names, l.Start); !ok {
			return nil, false
		}
		if only != nil {
			r.others = invert(only, r.others)
		}
	}
	if alone {
		r.only = only
		l.Kind = Note
		lk.from = 0
		return only, true
	}
	inner := lookAt(l.Text[from:], &block{}, false)
	l.Kind = inner.kind
	if l.Kind == Heading || l.Kind == Prose || l.Kind == Definition {
		l.Kind = Instruction
		if firstOrder(l.Text[from:], words(l.Text[from:])) == noOrder {
			l.Kind = Note
		}
	}
	lk.from = from + inner.from
	lk.label = inner.label
	if all == allSizesWord {
		r.only = nil
	}
	return only, true
}

type sizesWord uint8

const (
	namedSizes sizesWord = iota
	allSizesWord
	otherSizesWord
)

// onlyHead takes the words that pick sizes off a line: "Sizes 3X and 4X
// only:", "For sizes M, L:", "All sizes". from is where the rest starts.
func onlyHead(text string) (head string, from int, all sizesWord, ok bool) {
	first := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	if first <= 0 || !strings.Contains(text, "only") && !strings.Contains(text, "ONLY") && !sizeStarts[lower(text[:first])] {
		return "", 0, 0, false
	}
	ws := words(text)
	if len(ws) < 2 {
		return "", 0, 0, false
	}
	i := 0
	if ws[0].text == "for" || ws[0].text == "next" && ws[1].text == "sizes" {
		i = 1
	}
	switch ws[i].text {
	case "all", "other", "remaining", "rem":
		if i+1 < len(ws) && ws[i].text == "all" && (ws[i+1].text == "other" || ws[i+1].text == "remaining") && i+2 < len(ws) && sizeWord(ws[i+2].text) {
			return "", endOfHead(text, ws[i+2].end), otherSizesWord, true
		}
		if i+1 < len(ws) && sizeWord(ws[i+1].text) {
			all = allSizesWord
			if ws[i].text != "all" {
				all = otherSizesWord
			}
			from = endOfHead(text, ws[i+1].end)
			return "", from, all, from > ws[i+1].end || from == len(text)
		}
	case "size", "sizes":
		for k := i + 1; k < len(ws) && k < 24; k++ {
			if ws[k].text == "only" {
				return text[ws[i].end:ws[k].start], endOfHead(text, ws[k].end), namedSizes, true
			}
			if ws[k].sentence {
				break
			}
		}
		if c := strings.IndexByte(text[ws[i].end:], ':'); i == 1 && c > 0 && c < 60 {
			return text[ws[i].end : ws[i].end+c], ws[i].end + c + 1, namedSizes, true
		}
		if c := strings.IndexByte(text[ws[i].end:], ':'); c > 0 && c < 30 && strings.Trim(text[ws[i].end+c+1:], blanks) != "" {
			return text[ws[i].end : ws[i].end+c], ws[i].end + c + 1, namedSizes, true
		}
	}
	// "L only:" and "L and XL only: …"
	for k := 1; k < len(ws) && k < 8; k++ {
		if ws[k].text == "only" && i == 0 && sizeRank(ws[0].text) >= 0 && text[ws[0].start] != ws[0].text[0] {
			return text[:ws[k].start], endOfHead(text, ws[k].end), namedSizes, true
		}
	}
	return "", 0, 0, false
}

// sizeStarts are the first words of lines that pick sizes.
var sizeStarts = set("for next all other remaining rem size sizes")

func sizeWord(s string) bool { return s == "size" || s == "sizes" }

// endOfHead moves past the mark that ends "Size L only:".
func endOfHead(text string, at int) int {
	for at < len(text) && strings.IndexByte(" :,.;)-", text[at]) >= 0 {
		at++
	}
	if strings.HasPrefix(text[at:], "–") || strings.HasPrefix(text[at:], "—") {
		at += len("–")
	}
	return at
}

// pickSizes turns "3X and 4X", "L (XL, 2X)", "XS-L" into the sizes meant. It
// returns false when no word of the list is a size of the pattern.
func (d *Design) pickSizes(text string, at int) ([]bool, bool) {
	only := make([]bool, d.SizeCount())
	found, missing := 0, ""
	clean := strings.NewReplacer(" and ", ",", " & ", ",", " or ", ",", "+", ",", "–", "-", " to ", "-").Replace(text)
	for _, part := range strings.FieldsFunc(clean, func(r rune) bool { return strings.ContainsRune(",()[]{}/;:", r) }) {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		if i := d.sizeIndex(part); i >= 0 {
			only[i], found = true, found+1
			continue
		}
		if a, z, ok := strings.Cut(part, "-"); ok {
			from, to := d.sizeIndex(strings.TrimSpace(a)), d.sizeIndex(strings.TrimSpace(z))
			if from >= 0 && to >= from {
				for i := from; i <= to; i++ {
					only[i] = true
				}
				found++
				continue
			}
		}
		for _, f := range strings.Fields(part) {
			if i := d.sizeIndex(f); i >= 0 {
				only[i], found = true, found+1
			} else if missing == "" || !d.looksLikeSize(missing) {
				missing = f
			}
		}
	}
	if found == 0 && d.SizesBy == "the number lists" {
		return nil, missing != "" && sizeRank(missing) >= 0
	}
	if found == 0 && (len(d.Sizes) == 0 || missing == "" || sizeRank(missing) < 0) {
		return nil, len(d.Sizes) == 0 && missing != "" && sizeRank(missing) >= 0
	}
	if d.looksLikeSize(missing) {
		i := strings.Index(d.Source[at:min(len(d.Source), at+200)], missing)
		d.report(diag.Error, CodeUnknownSize, diag.Span{Start: at + max(i, 0), End: at + max(i, 0) + len(missing)},
			fmt.Sprintf("The pattern has no size %s; its sizes are %s.", missing, strings.Join(d.Sizes, ", ")), "", "")
	}
	return only, true
}

// spreadLists gives the lists of a line for some sizes a place for each size of
// the pattern, where they have a number for the sizes of the line alone: "Sizes
// S and M only: Ch 10 (11)" of three sizes.
func (d *Design) spreadLists(l *Line) {
	k := 0
	for _, meant := range l.Only {
		if meant {
			k++
		}
	}
	if l.Tree == nil || k < 2 || k == d.SizeCount() {
		return
	}
	for _, n := range notation.Numbers(l.Tree) {
		if len(n.Values) != k {
			continue
		}
		given := n.Values
		n.Values = make([]notation.Value, len(l.Only))
		for i, meant := range l.Only {
			if n.Values[i].None = !meant; meant {
				n.Values[i], given = given[0], given[1:]
			}
		}
	}
}

// looksLikeSize reports whether a word is the name of a size: L, or a number
// where the pattern's sizes are numbers.
func (d *Design) looksLikeSize(word string) bool {
	return sizeRank(word) >= 0 || isNumber(word) && len(d.Sizes) > 0 && isNumber(d.Sizes[0])
}

func isNumber(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// sizeIndex returns the place of a size among the pattern's, -1 for none.
func (d *Design) sizeIndex(name string) int {
	for i, s := range d.Sizes {
		if strings.EqualFold(s, name) {
			return i
		}
	}
	rank := sizeRank(name)
	for i, s := range d.Sizes {
		if rank >= 0 && sizeRank(s) == rank {
			return i
		}
	}
	return -1
}

// invert returns the sizes that are in none of the lines so far.
func invert(only, left []bool) []bool {
	out := make([]bool, len(only))
	for i := range only {
		out[i] = !only[i] && (left == nil || len(left) != len(only) || left[i])
	}
	return out
}
