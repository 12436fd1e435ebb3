package notation

import (
	"strings"

	"rowproof/stitch"
)

// Options tell how text is to be read.
type Options struct {
	Terms    stitch.Terms
	Stitches *stitch.Dictionary // nil is the standard one
	Sizes    int                // how many sizes the pattern has; 0 when not known
}

// maxDepth bounds how deep brackets may nest.
const maxDepth = 40

type parser struct {
	text   string
	at     int
	opt    Options
	toks   []token
	i      int
	end    int     // tokens from here on are not ours
	depth  int     // of brackets
	nest   int     // of steps within a step, and of places within a place
	ofRow  *Number // the row a place was last said to be of
	side   Side    // the face said to be toward the maker, for a joining later in the line
	unread []Span
	counts []*Count
	marks  map[string][]Step // what stood between marks, for "rep from * to **"
	bare   bool              // a number is read that a stated count may follow
	row    bool              // the line has a label: what it says of a chain is said of its own
	note   bool              // "Note:" has been read
	made   bool              // a step that makes stitches has been read
	chain  *Chains           // the last step, if it made chains
	skip   *Skip             // the last step, if it skipped
}

// Parse reads one instruction, note or definition. It never fails: what is not
// understood is left as Unknown steps and listed in Unread. at is the offset of
// text in the document; all spans are in the document.
func Parse(text string, at int, opt Options) *Line {
	if opt.Stitches == nil {
		opt.Stitches = stitch.Standard()
	}
	p := &parser{text: text, at: at, opt: opt, marks: map[string][]Step{}}
	p.toks = make([]token, 0, len(text)/4+4)
	p.scan(text)
	p.end = len(p.toks)
	line := &Line{Span: Span{Start: at, End: at + len(text)}}
	p.skipBullet()
	line.Label = p.label()
	p.row = line.Label != nil
	line.Steps = p.sequence(true)
	line.Counts, line.Unread = p.counts, p.unread
	return line
}

func (p *parser) peek(k int) *token {
	if p.i+k < 0 || p.i+k >= p.end {
		return &noToken
	}
	return &p.toks[p.i+k]
}

// tokAt is token i, one that is none outside the text.
func (p *parser) tokAt(i int) *token {
	if i < 0 || i >= len(p.toks) {
		return &noToken
	}
	return &p.toks[i]
}

// prev is the token k before the one at hand.
func (p *parser) prev(k int) *token {
	if p.i < k {
		return &noToken
	}
	return &p.toks[p.i-k]
}

var noToken = token{kind: mark, pair: -1}

func (p *parser) done() bool { return p.i >= p.end }

// has tells whether the words come next, without taking them.
func (p *parser) has(words ...string) bool { return p.hasAt(0, words...) }

func (p *parser) hasAt(k int, words ...string) bool {
	for n, w := range words {
		t := p.peek(k + n)
		if t.text != w && (t.text == "|" || !anyOf(t.text, w)) {
			return false
		}
	}
	return true
}

// anyOf tells whether text is one of the words of a list "a|b|c".
func anyOf(text, list string) bool {
	n := len(text)
	if n == 0 {
		return false
	}
	for i := 0; i+n <= len(list); {
		if list[i] == text[0] && list[i:i+n] == text && (i+n == len(list) || list[i+n] == '|') {
			return true
		}
		next := strings.IndexByte(list[i:], '|')
		if next < 0 {
			return false
		}
		i += next + 1
	}
	return false
}

// take takes the words if they come next.
func (p *parser) take(words ...string) bool {
	if !p.has(words...) {
		return false
	}
	p.i += len(words)
	return true
}

// takeAny takes one of several words.
func (p *parser) takeAny(list string) bool {
	if anyOf(p.peek(0).text, list) {
		p.i++
		return true
	}
	return false
}

// filler passes over words that carry no order.
func (p *parser) filler(list string) {
	for !p.done() && p.takeAny(list) {
	}
}

func (p *parser) span(from int) Span {
	if from >= len(p.toks) {
		return Span{Start: p.at + len(p.text), End: p.at + len(p.text)}
	}
	last := max(from, p.i-1)
	return Span{Start: p.at + p.tokAt(from).start, End: p.at + p.tokAt(last).end}
}

func (p *parser) skipBullet() {
	for p.peek(0).kind == mark && (p.peek(0).text == "-" || p.peek(0).text == "•" || p.peek(0).text == "·" || p.peek(0).text == "|") {
		p.i++
	}
}
