package design

import (
	"fmt"
	"strconv"
	"strings"

	"rowproof/diag"
)

// mostSizes is how many sizes a pattern can have. No garment comes near it.
const mostSizes = 60

// wordSizes are the size names in order, for "XS-5X". Each place has its
// written forms; the first is printed.
var wordSizes = [][]string{
	{"XXS", "2XS"}, {"XS", "X-Small"}, {"S", "Small"}, {"M", "Medium"}, {"L", "Large"}, {"XL", "1X", "X-Large"},
	{"2X", "2XL", "XXL"}, {"3X", "3XL", "XXXL"}, {"4X", "4XL"}, {"5X", "5XL"}, {"6X", "6XL"}, {"7X", "7XL"},
}

// sizeRank returns the place of a size name in wordSizes, -1 for none.
func sizeRank(name string) int {
	for i, forms := range wordSizes {
		for _, f := range forms {
			if strings.EqualFold(f, name) {
				return i
			}
		}
	}
	return -1
}

// sizeRange turns "XS-5X", "S to XL", "women XS-5X" into its sizes.
func sizeRange(text string) []string {
	fields := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' || r == '–' || r == '—' })
	if n := len(fields); n >= 3 && strings.EqualFold(fields[n-2], "to") {
		fields = append(fields[:n-2], fields[n-1])
	}
	n := len(fields)
	if !strings.ContainsAny(text, "-–—") && !strings.Contains(strings.ToLower(text), " to ") {
		return nil
	}
	if n > 2 && allSizes(fields) && !strings.ContainsAny(text, " ,(/") { // "S-M-L-XL"
		return fields
	}
	if n < 2 || n > 4 || strings.ContainsAny(text, ",(/") {
		return nil
	}
	from, to := sizeRank(fields[n-2]), sizeRank(fields[n-1])
	if from < 0 || to <= from {
		return nil
	}
	var list []string
	for i := from; i <= to; i++ {
		name := wordSizes[i][0]
		switch i {
		case from:
			name = fields[n-2]
		case to:
			name = fields[n-1]
		}
		list = append(list, name)
	}
	return list
}

// sizeNames reads the names of a size list: "S (M, L, XL)", "S, M, L",
// "S/M/L", "Small (Medium) Large", "6 (8, 10)". Brackets with other words,
// "(to fit bust 32 in)", end the list.
func sizeNames(text string) []string {
	text = strings.Trim(text, blanks+".:;")
	if list := sizeRange(text); list != nil {
		return list
	}
	var list []string
	slash := strings.ContainsAny(text, "(,") // then a slash is part of a name: "S/M (L/XL)"
	for _, part := range strings.FieldsFunc(text, func(r rune) bool {
		return strings.ContainsRune("()[]{},;|", r) || r == '/' && !slash || r == ':'
	}) {
		part = strings.TrimSpace(part)
		low := strings.ToLower(part)
		for _, lead := range []string{"and ", "sizes ", "size "} {
			if strings.HasPrefix(low, lead) {
				part = strings.TrimSpace(part[len(lead):])
				low = strings.ToLower(part)
			}
		}
		if part == "" || part == "-" {
			continue
		}
		if strings.HasSuffix(low, " in") || strings.HasSuffix(low, " cm") {
			part = strings.TrimSpace(part[:len(part)-3])
		}
		if len(part) > 24 || strings.Count(part, " ") > 2 && sizeRank(part) < 0 {
			break
		}
		if names := strings.Split(part, "-"); len(names) > 2 && allSizes(names) { // "XS (S-M-L)"
			list = append(list, names...)
			continue
		}
		list = append(list, part)
		if len(list) > 10000 {
			break
		}
	}
	if len(list) == 1 {
		if f := strings.Fields(list[0]); len(f) > 1 && allSizes(f) {
			return f
		}
	}
	return withoutAge(list)
}

// withoutAge drops the unit that stands after a list of ages: the months of
// "3 (6, 12) months".
func withoutAge(list []string) []string {
	n := len(list)
	if n < 3 || !strings.ContainsAny(list[n-2], "0123456789") {
		return list
	}
	switch strings.ToLower(strings.TrimRight(list[n-1], ".")) {
	case "months", "month", "mos", "mo", "years", "year", "yrs", "yr", "years old", "inches", "in", "cm":
		return list[:n-1]
	}
	return list
}

func allSizes(names []string) bool {
	for _, n := range names {
		if sizeRank(n) < 0 {
			return false
		}
	}
	return true
}

// findSizes settles the sizes: the front matter says them, or a size line, or
// the number lists show how many there are.
func (r *reader) findSizes() {
	d := r.d
	if d.Sizes != nil {
		d.SizesBy = "front matter"
	}
	fallback := -1
	for i := range r.blocks {
		b := &r.blocks[i]
		list, fit := r.sizeLine(i)
		if len(list) < 2 {
			continue
		}
		if fit {
			if fallback < 0 {
				fallback = i
			}
			continue
		}
		r.looks[i].kind = Note
		r.looks[i].sure = true
		r.setSizes(list, diag.Span{Start: b.start, End: b.end})
	}
	if d.Sizes == nil && fallback >= 0 {
		list, _ := r.sizeLine(fallback)
		r.setSizes(list, diag.Span{Start: r.blocks[fallback].start, End: r.blocks[fallback].end})
	}
	if d.Sizes == nil {
		r.guessSizes()
	}
}

// sizeLine reads a block as a size line. fit is true for "To fit bust 32
// (34, 36) in", which names sizes only when nothing else does.
func (r *reader) sizeLine(i int) (list []string, fit bool) {
	text := r.blocks[i].text
	if len(text) > 20000 {
		return nil, false
	}
	ws := words(text[:min(len(text), 80)])
	if len(ws) < 2 || r.looks[i].label.words > 0 {
		return nil, false
	}
	switch {
	case ws[0].text == "size" || ws[0].text == "sizes":
		if contains(ws, "only") {
			return nil, false
		}
		rest := text[ws[0].end:]
		if ws[1].text == "available" || ws[1].text == "included" {
			rest = text[ws[1].end:]
		}
		rest = strings.TrimLeft(rest, " :-–—")
		list = sizeNames(rest)
		if !plausible(list, rest) {
			return nil, false
		}
		return list, false
	case ws[0].text == "to" && ws[1].text == "fit":
		k := 2
		for k < len(ws) && !ws[k].startsDigit() && sizeRank(ws[k].text) < 0 {
			k++
		}
		if k < len(ws) && k < 7 {
			return sizeNames(text[ws[k].start:]), true
		}
	case i > 0 && r.looks[i-1].kind == Heading && sectionKind(lower(r.blocks[i-1].text)) == SizesSection && r.looks[i].kind != Instruction:
		list = sizeNames(text)
		for _, n := range list {
			if sizeRank(n) < 0 {
				return nil, false
			}
		}
		return list, false
	}
	return nil, false
}

// plausible tells a list of sizes from a sentence about them.
func plausible(list []string, text string) bool {
	if len(list) < 2 {
		return false
	}
	for _, n := range list[:min(len(list), mostSizes)] {
		if sizeRank(n) < 0 && !strings.ContainsAny(n, "0123456789") && strings.Contains(strings.TrimSpace(n), " ") && !strings.Contains(n, "-") &&
			!strings.EqualFold(n, "one size") && sizeRank(strings.ReplaceAll(n, " ", "-")) < 0 && len(words(n)) > 2 {
			return false
		}
	}
	return sizeRank(list[0]) >= 0 || strings.ContainsAny(list[0], "0123456789") || strings.ContainsAny(text, "(,/")
}

// setSizes takes a list of size names, or says why not.
func (r *reader) setSizes(list []string, span diag.Span) {
	d := r.d
	if len(list) > mostSizes {
		d.report(diag.Error, CodeTooManySizes, span,
			fmt.Sprintf("The pattern names %d sizes; at most %d are read.", len(list), mostSizes), "",
			fmt.Sprintf("Keep to the first %d sizes, and put the rest into a second pattern.", mostSizes))
		list = list[:mostSizes]
	}
	if d.Sizes != nil {
		if len(d.Sizes) != len(list) {
			d.report(diag.Error, CodeSizesDisagree, span,
				fmt.Sprintf("This line names %s (%s), but the pattern has %s (%s).", count(len(list), "size"), strings.Join(list, ", "),
					count(len(d.Sizes), "size"), strings.Join(d.Sizes, ", ")), "", "Let both name the same sizes in the same order.")
			if len(d.Findings) > 0 && !d.SizesAt.IsZero() {
				d.Findings[len(d.Findings)-1].Also = []diag.Span{d.SizesAt}
			}
		}
		return
	}
	seen := map[string]bool{}
	for _, n := range list {
		key := strings.ToLower(n)
		if seen[key] {
			d.report(diag.Warning, CodeSizeTwice, span, fmt.Sprintf("The size %s is named twice.", n), "", "")
			break
		}
		seen[key] = true
	}
	d.Sizes, d.SizesAt = list, span
	if d.SizesBy == "" {
		d.SizesBy = "size line"
	}
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// guessSizes takes the most common length of the number lists in the
// instructions for the number of sizes.
func (r *reader) guessSizes() {
	d := r.d
	var tally [mostSizes + 1]int
	var where [mostSizes + 1]diag.Span
	for i := range r.blocks {
		if k := r.looks[i].kind; k != Instruction && k != Foundation {
			continue
		}
		b := &r.blocks[i]
		for at := 0; ; {
			n, start, end := numberList(b.text, at)
			if n == 0 {
				break
			}
			at = end
			if n == 2 && (r.looks[i].kind != Foundation) && tally[2] == 0 || n > mostSizes {
				continue
			}
			if tally[n] == 0 {
				where[n] = diag.Span{Start: b.start + start, End: b.start + end}
			}
			tally[n]++
		}
	}
	best := 0
	for n, c := range tally {
		if n > 1 && c > 0 && (best == 0 || c > tally[best]) {
			best = n
		}
	}
	if best == 0 {
		return
	}
	for i := 1; i <= best; i++ {
		d.Sizes = append(d.Sizes, fmt.Sprintf("size %d", i))
	}
	d.SizesBy, d.SizesAt = "the number lists", where[best]
	d.report(diag.Note, CodeSizesGuessed, where[best],
		fmt.Sprintf("No line names the sizes; lists like this one have %d numbers, so the pattern is read in %d sizes.", best, best), "",
		"Name them in one line before the pattern begins, as in: Sizes: S (M, L)")
}

// numberList finds the next list of numbers for sizes in text from at on: "81
// (89, 97, 105)", "20(24-28)", "18 (20) 24 (28) 30". It returns how many
// numbers it has, 0 when there is no more.
func numberList(text string, at int) (n, start, end int) {
	for i := at; i < len(text); i++ {
		if !asciiDigit(text[i]) {
			continue
		}
		n, end = listFrom(text, i)
		if n > 1 {
			return n, i, end
		}
		for i < len(text) && asciiDigit(text[i]) {
			i++
		}
	}
	return 0, len(text), len(text)
}

// listFrom counts the numbers of a list that starts with a number at i.
func listFrom(text string, i int) (n, end int) {
	for i < len(text) && asciiDigit(text[i]) {
		i++
	}
	n, end = 1, i
	for {
		k := end
		for k < len(text) && (text[k] == ' ' || text[k] == ',') {
			k++
		}
		if k >= len(text) || strings.IndexByte("([{", text[k]) < 0 {
			return n, end
		}
		inside, to := bracketNumbers(text, k+1)
		if inside == 0 {
			return n, end
		}
		n, end = n+inside, to
		if inside == 1 {
			m := end
			for m < len(text) && text[m] == ' ' {
				m++
			}
			if m < len(text) && asciiDigit(text[m]) {
				e := m
				for e < len(text) && asciiDigit(text[e]) {
					e++
				}
				if n >= 4 || e+1 < len(text) && text[e] == ' ' && text[e+1] == '(' {
					n, end = n+1, e
				}
			}
		}
	}
}

// bracketNumbers counts the numbers in a bracket that holds nothing else.
func bracketNumbers(text string, i int) (n, end int) {
	for i < len(text) {
		c := text[i]
		switch {
		case asciiDigit(c):
			for i < len(text) && asciiDigit(text[i]) {
				i++
			}
			n++
			continue
		case strings.IndexByte(")]}", c) >= 0:
			return n, i + 1
		case c == ' ' || c == ',' || c == ';' || c == ':' || c == '-' || c == '/':
		case strings.HasPrefix(text[i:], "–") || strings.HasPrefix(text[i:], "—"):
			i += 2
		default:
			return 0, i
		}
		i++
	}
	return 0, i
}
