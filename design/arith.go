package design

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// An expression is the arithmetic of a live number: "body + 1", "(body +
// neck) / 2", "2 body - 3". Numbers are whole; names may have spaces.
type expression struct {
	op         byte // 'n' a number, 'v' a name, '-' with left nil a negation, or + - * /
	value      int
	name       string
	start, end int // in the text
	left       *expression
	right      *expression
}

// largest is the largest number counted with. A blanket of a thousand million
// stitches is no pattern.
const largest = 1_000_000_000

// deepest is how deep brackets may stand in each other.
const deepest = 50

// An arithError says what is wrong with an expression, and where in its text.
type arithError struct {
	start, end int
	message    string
	repair     string
}

// parseExpression reads text as arithmetic. isName tells whether words make a
// name that is bound, so that hyphens and number words inside names are kept.
func parseExpression(text string, isName func(string) bool) (*expression, *arithError) {
	p := &arithParser{text: text, isName: isName}
	e := p.sum(0)
	p.space()
	if p.err == nil && p.at < len(text) {
		p.fail(p.at, p.at+p.runeSize(), p.unexpected())
	}
	if p.err != nil {
		return nil, p.err
	}
	return e, nil
}

type arithParser struct {
	text   string
	at     int
	err    *arithError
	isName func(string) bool
}

func (p *arithParser) fail(start, end int, message string) {
	if p.err == nil {
		p.err = &arithError{start: start, end: max(end, start), message: message}
	}
}

func (p *arithParser) runeSize() int {
	_, size := utf8.DecodeRuneInString(p.text[p.at:])
	return size
}

func (p *arithParser) unexpected() string {
	r, _ := utf8.DecodeRuneInString(p.text[p.at:])
	switch r {
	case ')':
		return "There is a closing bracket here that nothing opens."
	case '.':
		return "Counts are whole numbers; there is a point here."
	case '=':
		return "There is an equals sign here; write only the right side, as in body + 1."
	}
	return fmt.Sprintf("%q has no meaning here; + - * / and brackets can be used.", string(r))
}

func (p *arithParser) space() {
	for p.at < len(p.text) && (p.text[p.at] == ' ' || p.text[p.at] == '\t' || strings.HasPrefix(p.text[p.at:], "\u00a0")) {
		p.at += p.runeSize()
	}
}

// operator returns the operator at the place and its size in bytes.
func (p *arithParser) operator() (byte, int) {
	p.space()
	if p.at >= len(p.text) {
		return 0, 0
	}
	r, size := utf8.DecodeRuneInString(p.text[p.at:])
	switch r {
	case '+', '-', '*', '/':
		return byte(r), size
	case '−', '–':
		return '-', size
	case '×', '·':
		return '*', size
	case '÷':
		return '/', size
	}
	return 0, 0
}

func (p *arithParser) sum(depth int) *expression {
	left := p.product(depth)
	for p.err == nil {
		op, size := p.operator()
		if op != '+' && op != '-' {
			break
		}
		p.at += size
		right := p.product(depth)
		left = p.join(op, left, right)
	}
	return left
}

func (p *arithParser) product(depth int) *expression {
	left := p.factor(depth)
	for p.err == nil {
		op, size := p.operator()
		switch {
		case op == '*' || op == '/':
			p.at += size
		case op == 0 && left != nil && left.op == 'n' && p.startsName(): // "2 body"
			op = '*'
		default:
			return left
		}
		right := p.factor(depth)
		left = p.join(op, left, right)
	}
	return left
}

func (p *arithParser) join(op byte, left, right *expression) *expression {
	if left == nil || right == nil {
		return left
	}
	return &expression{op: op, left: left, right: right, start: left.start, end: right.end}
}

func (p *arithParser) startsName() bool {
	p.space()
	if p.at >= len(p.text) {
		return false
	}
	r, _ := utf8.DecodeRuneInString(p.text[p.at:])
	return unicode.IsLetter(r) || r == '('
}

func (p *arithParser) factor(depth int) *expression {
	p.space()
	start := p.at
	if depth > deepest {
		p.fail(start, start+1, "There are too many brackets inside each other.")
	}
	if p.err != nil {
		return nil
	}
	if p.at >= len(p.text) {
		last := len(strings.TrimRight(p.text, blanks))
		p.fail(max(last-1, 0), last, "The arithmetic ends too early: a number or a name is missing.")
		return nil
	}
	if op, size := p.operator(); op == '-' {
		p.at += size
		inner := p.factor(depth + 1)
		if inner == nil {
			return nil
		}
		return &expression{op: '-', right: inner, start: start, end: inner.end}
	}
	r, size := utf8.DecodeRuneInString(p.text[p.at:])
	switch {
	case r == '(':
		p.at++
		inner := p.sum(depth + 1)
		p.space()
		if p.err != nil {
			return nil
		}
		if p.at >= len(p.text) || p.text[p.at] != ')' {
			p.fail(start, start+1, "The bracket opened here is not closed.")
			return nil
		}
		p.at++
		if inner != nil && inner.op != 'v' && inner.op != 'n' {
			inner.start, inner.end = start, p.at
		}
		return inner
	case r >= '0' && r <= '9':
		return p.number()
	case unicode.IsLetter(r):
		return p.name()
	}
	if strings.ContainsRune("+*/×÷·", r) {
		p.fail(p.at, p.at+size, "A number or a name is missing before this sign.")
		return nil
	}
	p.fail(p.at, p.at+size, p.unexpected())
	return nil
}

func (p *arithParser) number() *expression {
	start, n := p.at, 0
	for p.at < len(p.text) && asciiDigit(p.text[p.at]) {
		n = min(n*10+int(p.text[p.at]-'0'), largest+1)
		p.at++
	}
	if n > largest {
		p.fail(start, p.at, "This number is too large to count with.")
		return nil
	}
	if p.at+1 < len(p.text) && p.text[p.at] == '.' && asciiDigit(p.text[p.at+1]) {
		p.fail(p.at, p.at+1, "Counts are whole numbers; there is a point here.")
		return nil
	}
	return &expression{op: 'n', value: n, start: start, end: p.at}
}

// name reads words up to an operator. Hyphens between letters belong to the
// name; "body-3" is a difference, and so is "body-neck" when both are names
// and their union is none.
func (p *arithParser) name() *expression {
	start, end := p.at, p.at
	for p.at < len(p.text) {
		r, size := utf8.DecodeRuneInString(p.text[p.at:])
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '\'' || r == '’' || r == '_' || unicode.Is(unicode.Mn, r):
			p.at += size
			end = p.at
			continue
		case r == ' ' || r == '\t' || r == '\u00a0':
			p.at += size
			continue
		case r == '-' && p.at == end && p.hyphen(start):
			p.at += size
			continue
		}
		break
	}
	p.at = end
	return &expression{op: 'v', name: cleanName(p.text[start:end]), start: start, end: end}
}

func (p *arithParser) hyphen(start int) bool {
	if p.at+1 >= len(p.text) || !asciiLetter(p.text[p.at+1]) {
		return false
	}
	end := p.at + 1
	for end < len(p.text) && strings.IndexByte("+*/()", p.text[end]) < 0 {
		end++
	}
	return !p.isName(cleanName(p.text[start:p.at])) || p.isName(cleanName(p.text[start:end]))
}

// cleanName brings a name into the form names are compared in: lower case,
// single spaces.
func cleanName(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// names lists the names an expression uses, in order, each once.
func (e *expression) names(list []*expression) []*expression {
	if e == nil {
		return list
	}
	if e.op == 'v' {
		return append(list, e)
	}
	return e.right.names(e.left.names(list))
}

// A workError says where an expression does not come out, in one size.
type workError struct {
	at      *expression
	code    byte // '/' does not divide, '0' division by nothing, 'L' too large
	a, b    int  // what was divided by what
	unbound bool
}

// work works the expression out in one size.
func (e *expression) work(value func(name string) (int, bool)) (int, *workError) {
	switch e.op {
	case 'n':
		return e.value, nil
	case 'v':
		n, ok := value(e.name)
		if !ok {
			return 0, &workError{at: e, unbound: true}
		}
		return n, nil
	}
	a := 0
	if e.left != nil {
		n, err := e.left.work(value)
		if err != nil {
			return 0, err
		}
		a = n
	}
	b, err := e.right.work(value)
	if err != nil {
		return 0, err
	}
	n := 0
	switch e.op {
	case '+':
		n = a + b
	case '-':
		n = a - b
	case '*':
		n = a * b
	case '/':
		if b == 0 {
			return 0, &workError{at: e, code: '0', a: a}
		}
		if a%b != 0 {
			return 0, &workError{at: e, code: '/', a: a, b: b}
		}
		n = a / b
	}
	if n > largest || n < -largest {
		return 0, &workError{at: e, code: 'L'}
	}
	return n, nil
}
