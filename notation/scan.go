package notation

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"rowproof/stitch"
)

// A token is a word, a number or a mark of the text.
type token struct {
	kind  tokenKind
	text  string // lower case; marks as written in plain typography
	start int    // byte offset in the text given to Parse
	end   int
	space bool // white space stands before it
	n     int  // of a number
	frac  float64
	pair  int  // index of the partner of a bracket, -1 for none
	cap   bool // begins with a capital letter

	looked int8        // tokens of the stitch name that begins here, and one; 0 when not looked up
	kindOf stitch.Kind // the stitch it names
}

type tokenKind uint8

const (
	word tokenKind = iota
	number
	ordinal
	mark
	live // {body + 1}
)

// scan cuts text into tokens. It is linear in the text and never fails.
func (p *parser) scan(text string) {
	for i := 0; i < len(text); {
		r, w := utf8.DecodeRuneInString(text[i:])
		switch {
		case unicode.IsSpace(r) || r == '\u00a0' || r == '\u200b' || r == '\ufeff' || r == '\\':
			i += w
		case r >= '0' && r <= '9':
			i = p.scanNumber(text, i)
		case fraction(r) > 0:
			p.add(token{kind: number, text: text[i : i+w], start: i, end: i + w, frac: fraction(r)})
			i += w
		case w == 1 && oneLike(text, i):
			i = p.scanNumber(text, i)
		case unicode.IsLetter(r):
			i = p.scanWord(text, i)
		case r == '{' && p.liveAt(text[i:]) > 0:
			n := p.liveAt(text[i:])
			p.add(token{kind: live, text: strings.TrimSpace(text[i+1 : i+n-1]), start: i, end: i + n})
			i += n
		default:
			i = p.scanMark(text, i, r, w)
		}
	}
	p.pairs()
}

func (p *parser) add(t token) {
	t.pair = -1
	t.space = len(p.toks) == 0 || p.tokAt(len(p.toks)-1).end < t.start
	t.cap = t.kind == word && p.text[t.start] >= 'A' && p.text[t.start] <= 'Z'
	p.toks = append(p.toks, t)
}

// scanNumber takes digits, and what is glued to them: "3tr", "2nd", "1ch".
func (p *parser) scanNumber(text string, i int) int {
	j, n := i, 0
	for j < len(text) && (text[j] >= '0' && text[j] <= '9' || oneLike(text, j)) {
		d := 1 // an "l" or "I" printed for a 1
		if text[j] <= '9' {
			d = int(text[j] - '0')
		}
		if n < 1_000_000_000 {
			n = n*10 + d
		}
		j++
	}
	rest := text[j:]
	if len(rest) >= 2 {
		if s := strings.ToLower(rest[:2]); (s == "st" || s == "nd" || s == "rd" || s == "th") && (len(rest) == 2 || !letterAt(rest, 2)) && (s != "st" || n%10 == 1 || rowFollows(rest[2:])) {
			p.add(token{kind: ordinal, text: strings.ToLower(text[i : j+2]), start: i, end: j + 2, n: n})
			return j + 2
		}
	}
	t := token{kind: number, text: text[i:j], start: i, end: j, n: n}
	if len(rest) > 1 && rest[0] == '.' && rest[1] >= '0' && rest[1] <= '9' {
		k, scale := j+1, 0.1
		for k < len(text) && text[k] >= '0' && text[k] <= '9' {
			t.frac += float64(text[k]-'0') * scale
			scale /= 10
			k++
		}
		j = k
		t.end, t.text = j, text[i:j]
	} else if r, w := utf8.DecodeRuneInString(rest); fraction(r) > 0 {
		t.frac = fraction(r)
		j += w
		t.end, t.text = j, text[i:j]
	} else if len(rest) > 1 && rest[0] == '/' && n > 0 && n < 10 && rest[1] > '1' && rest[1] <= '9' && (len(rest) == 2 || (rest[2] < '0' || rest[2] > '9') && rest[2] != '/') {
		// "1/2", and "5 1/2" with the number before; "7/9 dc" is a size list
		if d := int(rest[1] - '0'); (d == 2 || d == 4 || d == 8 || d == 3) && n < d {
			t.n, t.frac = 0, float64(n)/float64(d)
			j += 2
			t.end, t.text = j, text[i:j]
			if k := len(p.toks) - 1; k >= 0 && p.tokAt(k).kind == number && p.toks[k].frac == 0 && t.start-p.tokAt(k).end == 1 {
				p.toks[k].frac, p.tokAt(k).end = t.frac, j
				p.tokAt(k).text = text[p.tokAt(k).start:j]
				return j
			}
		}
	}
	p.add(t)
	return j
}

// rowFollows tells whether "row" or "round" comes next: "2st row" is a slip for
// "2nd row", and "12st" is 12 sts.
func rowFollows(s string) bool {
	s = strings.ToLower(strings.TrimLeft(s[:min(len(s), 12)], " \t"))
	return strings.HasPrefix(s, "row") || strings.HasPrefix(s, "rnd") || strings.HasPrefix(s, "round")
}

// oneLike tells whether the letter at i is an "l" or "I" printed for a 1: it
// stands alone among digits.
func oneLike(text string, i int) bool {
	if text[i] != 'l' && text[i] != 'I' {
		return false
	}
	digit := func(k int) bool { return k >= 0 && k < len(text) && text[k] >= '0' && text[k] <= '9' }
	letter := func(k int) bool { return k >= 0 && k < len(text) && letterAt(text, k) }
	return digit(i+1) && !letter(i-1) || digit(i-1) && !letter(i+1)
}

func letterAt(s string, i int) bool {
	r, _ := utf8.DecodeRuneInString(s[i:])
	return unicode.IsLetter(r)
}

func fraction(r rune) float64 {
	switch r {
	case '½':
		return 0.5
	case '¼':
		return 0.25
	case '¾':
		return 0.75
	case '⅓':
		return 1.0 / 3
	case '⅔':
		return 2.0 / 3
	case '⅛':
		return 0.125
	case '⅜':
		return 0.375
	case '⅝':
		return 0.625
	case '⅞':
		return 0.875
	}
	return 0
}

// pluralMark finds the end of the "'s" of "ch's", which some write for chs; 0
// when there is none at j.
func pluralMark(text string, j int) int {
	for _, tail := range []string{"'s", "’s"} {
		if end := j + len(tail); strings.HasPrefix(text[j:], tail) && (end == len(text) || !letterAt(text, end)) {
			return end
		}
	}
	return 0
}

// scanWord takes letters and the digits and hyphens that belong to them:
// "sc2tog", "v-st", "ch-3" is cut into "ch", "-", "3".
func (p *parser) scanWord(text string, i int) int {
	j := i
	for j < len(text) {
		r, w := utf8.DecodeRuneInString(text[j:])
		if !unicode.IsLetter(r) && !(r >= '0' && r <= '9') {
			break
		}
		j += w
	}
	run := strings.ToLower(text[i:j])
	if end := pluralMark(text, j); end > 0 && anyOf(run, "ch|st|sc|hdc|dc|htr|tr") {
		p.add(token{kind: word, text: run + "s", start: i, end: end})
		return end
	}
	// "V-st", "T-ch", "X-st", "row-end", "chain-space", "set-up", "t-ch".
	if j < len(text) && text[j] == '-' {
		for _, tail := range hyphened {
			if k := j + 1 + len(tail); k <= len(text) && strings.EqualFold(text[j+1:k], tail) && (k == len(text) || !letterAt(text, k)) && !strings.HasPrefix(run, "ch") {
				p.add(token{kind: word, text: run + "-" + tail, start: i, end: k})
				return k
			}
		}
	}
	// Letters with digits at the end: "ch3", "sk2", "row5"; stitches keep theirs.
	k := len(run)
	for k > 0 && run[k-1] >= '0' && run[k-1] <= '9' {
		k--
	}
	if k < len(run) && k > 0 && !strings.ContainsAny(run[:k], "0123456789") && len(run)-k < 10 && k > 1 || k == 1 && k < len(run) && (run[0] == 'r' || run[0] == 'x') {
		p.add(token{kind: word, text: run[:k], start: i, end: i + k})
		n := 0
		for _, d := range run[k:] {
			n = n*10 + int(d-'0')
		}
		p.add(token{kind: number, text: run[k:], start: i + k, end: j, n: n})
		return j
	}
	p.add(token{kind: word, text: run, start: i, end: j})
	return j
}

var hyphened = []string{"sts", "st", "ch", "ends", "end", "up", "sps", "sp", "stitches", "stitch", "chain", "lps", "lp"}

// scanMark takes a mark; dashes and quotes of every shape come out plain.
func (p *parser) scanMark(text string, i int, r rune, w int) int {
	t := token{kind: mark, start: i, end: i + w}
	switch r {
	case '*', '∗', '＊':
		for t.end < len(text) && text[t.end] == '*' && t.end-i < 3 {
			t.end++
		}
		t.text = strings.Repeat("*", max(1, t.end-i))
		if r != '*' {
			t.text = "*"
		}
	case '†', '‡':
		for t.end < len(text) && strings.HasPrefix(text[t.end:], string(r)) && t.end-i < 3*w {
			t.end += w
		}
		t.text = text[i:t.end]
	case '§', '#', '^', '~', '+', '=', '&', '/', '(', ')', '[', ']', '{', '}', ',', ';', ':', '.', '!', '?', '"', '\'', '|':
		t.text = string(r)
	case '–', '—', '−', '‐', '‑', '‒', '―', '-':
		t.text = "-"
		if r == '—' || r == '–' || r == '―' {
			t.text = "--"
		}
	case '×', '✕':
		t.kind, t.text = word, "x"
	case '“', '”', '″', '„':
		t.text = "\""
	case '‘', '’', '′', '`':
		t.text = "'"
	case '…':
		t.text = "."
	default:
		t.text = string(r)
	}
	p.add(t)
	return t.end
}

// liveAt returns the length of a live number "{body + 1}" at the start of s, 0
// if it is none: braces hold a repeat inside brackets, or a count, too.
func (p *parser) liveAt(s string) int {
	n := liveEnd(s)
	if n == 0 {
		return 0
	}
	fields := strings.Fields(strings.ToLower(s[1 : n-1]))
	k := 0
	if k < len(fields) && fields[k][0] >= '0' && fields[k][0] <= '9' {
		k++
	}
	if k < len(fields) && (k > 0 || len(fields) > 1) && !strings.ContainsAny(s[1:n-1], "+*/") {
		if notLive[fields[k]] {
			return 0
		}
		if _, ok := p.opt.Stitches.Lookup(fields[k], p.opt.Terms); ok {
			return 0
		}
	}
	return n
}

// notLive are words that begin an order, or a unit, rather than the name of a
// number.
var notLive = map[string]bool{"st": true, "sts": true, "stitch": true, "stitches": true, "pull": true, "yo": true, "yoh": true,
	"insert": true, "draw": true, "sk": true, "skip": true, "miss": true, "times": true, "time": true, "rows": true, "row": true, "total": true,
	"rnds": true, "rounds": true, "inc": true, "dec": true, "turn": true, "rs": true, "ws": true, "ch": true}

// liveEnd is where braces that hold an expression end, 0 if they hold other
// things.
func liveEnd(s string) int {
	letters := false
	for i := 1; i < len(s) && i < 120; i++ {
		switch c := s[i]; {
		case c == '}':
			if letters {
				return i + 1
			}
			return 0
		case c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_':
			letters = true
		case c >= '0' && c <= '9' || strings.IndexByte(" +-*/()", c) >= 0:
		default:
			return 0
		}
	}
	return 0
}

// pairs finds the partner of each bracket. Marks match by kind.
func (p *parser) pairs() {
	var open []int
	for i := range p.toks {
		switch p.tokAt(i).text {
		case "(", "[", "{":
			if p.tokAt(i).kind == mark {
				open = append(open, i)
			}
		case ")", "]", "}":
			if p.tokAt(i).kind != mark {
				continue
			}
			want := map[string]string{")": "(", "]": "[", "}": "{"}[p.tokAt(i).text]
			for k := len(open) - 1; k >= 0 && k >= len(open)-8; k-- {
				if p.toks[open[k]].text == want {
					p.toks[open[k]].pair, p.toks[i].pair = i, open[k]
					open = open[:k]
					break
				}
			}
		}
	}
}
