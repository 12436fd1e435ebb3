package stitch

import "strings"

// A head is what stands before the definition: "Cluster (cl):".
type head struct {
	name, abbr string   // as written; abbr is "" when only one name is given
	also       []string // further names
	asWritten  string   // the first name, for findings
	remark     string   // what else stands in brackets
	firm       bool     // it can only be a definition: two names, or the name of a known stitch
	body       int      // where the definition begins
}

// mostHead is how long a head may be.
const mostHead = 90

// readHead finds the names at the start of text. ok is false when there are
// none: a row label, a sentence, a line of a list.
func readHead(text string) (h head, ok bool) {
	sep, width, dash := separator(text, 0)
	if sep < 0 {
		return h, false
	}
	first := text[:sep]
	h.body = sep + width
	// "Special stitch: Cluster (cl): ..." and "cl - cluster: ..." have two.
	if next, w, _ := separator(text, h.body); next > 0 {
		between := text[h.body:next]
		switch {
		case labelWord(first):
			first, h.body, dash = between, next+w, false
		case dash && plainName(between) && strings.TrimSpace(between) != "":
			first, h.body = first+" ("+between+")", next+w
		}
	}
	if !h.take(first) {
		return h, false
	}
	return h, true
}

// separator finds the ":" or "=" or dash that ends a name, outside brackets,
// from byte from on. dash tells that it is a dash.
func separator(text string, from int) (at, width int, dash bool) {
	depth := 0
	for i := from; i < len(text) && i < from+mostHead; i++ {
		switch c := text[i]; {
		case c == '(' || c == '[':
			depth++
		case c == ')' || c == ']':
			depth--
		case depth > 0:
		case c == ':' || c == '=':
			return i, 1, false
		case c == '.' || c == '\n' || c == ';' || c == ',':
			return -1, 0, false
		case c == '-' && i > from && i+1 < len(text) && text[i-1] == ' ' && (text[i+1] == ' ' || text[i+1] == '-'):
			return i, 1 + strings.IndexFunc(text[i+1:]+" ", func(r rune) bool { return r != '-' }), true
		case strings.HasPrefix(text[i:], "–") || strings.HasPrefix(text[i:], "—"):
			return i, len("–"), true
		}
	}
	return -1, 0, false
}

// labelWord tells whether a head only announces definitions.
func labelWord(s string) bool {
	low := strings.ToLower(strings.Trim(strings.TrimSpace(s), "*_#- "))
	return strings.HasPrefix(low, "special stitch") || strings.HasPrefix(low, "stitch guide") || strings.HasPrefix(low, "pattern stitch") || low == "special"
}

// plainName tells whether s is a few words of letters.
func plainName(s string) bool {
	if len(strings.Fields(s)) > 6 {
		return false
	}
	tog := strings.Contains(strings.ToLower(s), "tog")
	for _, r := range s {
		if !isLetter(r) && !strings.ContainsRune(" -'()", r) && !(tog && '0' <= r && r <= '9') {
			return false
		}
	}
	return true
}

// take reads the names in first.
func (h *head) take(first string) bool {
	if i := strings.LastIndexByte(first, '\n'); i >= 0 {
		first = first[i+1:]
	}
	outer, inner := brackets(first)
	outer = strings.Trim(strings.TrimSpace(outer), "*_#•·-– \t\\")
	for _, lead := range []string{"To make a ", "To make ", "To work a ", "To work ", "The "} {
		if len(outer) > len(lead) && strings.EqualFold(outer[:len(lead)], lead) {
			outer = outer[len(lead):]
		}
	}
	names := nameList(outer)
	for _, in := range inner {
		if isRemark(in) {
			h.remark += " " + in
			continue
		}
		names = append(names, nameList(in)...)
	}
	if len(names) == 0 || notAStitch(names[0]) {
		return false
	}
	for _, n := range names {
		if len(n) > 60 || len(strings.Fields(n)) > 7 || !hasLetter(n) {
			return false
		}
	}
	h.asWritten = names[0]
	h.firm = len(names) > 1
	h.name, h.abbr = names[0], ""
	if len(names) > 1 {
		h.abbr, h.also = names[1], names[2:]
		if len(h.abbr) > len(h.name) {
			h.name, h.abbr = h.abbr, h.name
		}
	}
	return true
}

// brackets parts "Cluster (cl)" into "Cluster " and "cl". "ch(s)" is one word.
func brackets(s string) (outer string, inner []string) {
	var out strings.Builder
	for {
		open := strings.IndexAny(s, "([")
		if open < 0 {
			out.WriteString(s)
			return out.String(), inner
		}
		closer := strings.IndexAny(s[open:], ")]")
		if closer < 0 {
			out.WriteString(s[:open])
			return out.String(), append(inner, s[open+1:])
		}
		out.WriteString(s[:open] + " ")
		in := s[open+1 : open+closer]
		if in != "s" && in != "es" {
			inner = append(inner, in)
		}
		s = s[open+closer+1:]
	}
}

// nameList parts "cl or CL" and "cl/CL".
func nameList(s string) []string {
	var out []string
	for _, part := range strings.FieldsFunc(strings.ReplaceAll(s, " or ", "/"), func(r rune) bool { return r == '/' || r == ',' || r == ';' || r == '=' }) {
		part = strings.Join(strings.Fields(strings.Trim(part, "*_\"“”'‘’ :\\")), " ")
		if part != "" {
			out = append(out, part)
		}
	}
	return out
}

func hasLetter(s string) bool { return strings.IndexFunc(s, isLetter) >= 0 }

// isRemark tells whether words in brackets are no name: "made over 3 sts".
func isRemark(s string) bool {
	fields := strings.Fields(strings.ToLower(s))
	if len(fields) > 6 || !hasLetter(s) {
		return true
	}
	for _, f := range fields {
		switch f {
		case "over", "made", "worked", "make", "uses", "in", "see", "multiple", "used", "optional", "counts", "on", "for", "rs", "ws", "each":
			return true
		case "first", "second", "beginning", "last", "inc", "dec", "increase", "decrease":
			if len(fields) == 1 {
				return true
			}
		}
	}
	return len(fields) == 2 && isDigit(fields[0][0]) && !strings.Contains(fields[0], "-")
}

// other is the words that begin lines of a pattern which define no stitch.
var other = wordSet("row rows rnd rnds round rounds next note notes gauge tension hook hooks yarn yarns materials material size sizes " +
	"finished measurements foundation setup set-up dec inc pattern instructions instruction abbreviations abbreviation " +
	"chart edging border notions needle needles weight skill level difficulty terms multiple chain ch repeat rep body back front " +
	"sleeve sleeves neck yoke hem cuff cuffs collar left right weeks designer design copyright title by to bust chest length width " +
	"height ease fibre fiber step part piece make rib ribbing joining assembly finishing neckline armhole armholes shoulder shoulders " +
	"for with using color colour colors colours page tip tips how begin fasten turn last first all both r rd units sizing materials " +
	"http https www important stitches sts schematic blocking seams shape shaping from on at")

// notAStitch tells whether a head is the label of something else.
func notAStitch(name string) bool {
	fields := strings.Fields(strings.ToLower(name))
	if len(fields) == 0 {
		return true
	}
	first := fields[0]
	if isDigit(first[0]) && !strings.Contains(first, "-") && len(fields) > 1 {
		return fields[1] == "row" || fields[1] == "rnd" || fields[1] == "round" || fields[1] == "rows" || fields[1] == "rnds"
	}
	for _, f := range fields {
		switch f {
		case "row", "rnd", "round", "rows", "rnds", "rounds":
			return true
		}
	}
	if first == "foundation" || first == "front" || first == "back" || first == "first" || first == "inc" || first == "dec" {
		return len(fields) == 1 || first != "foundation" && fields[1] != "post" && fields[1] != "loop" || fields[1] == "ch" || fields[1] == "chain"
	}
	return other[first]
}
