package design

import (
	"runtime"
	"sync"
	"sync/atomic"

	"rowproof/notation"
)

// parseAll reads the words of every block that is no definition, as many at a
// time as there are cores. Reading a line needs nothing of the lines before it.
func (r *reader) parseAll() {
	r.trees = make([]*notation.Line, len(r.blocks))
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), 1+len(r.blocks)/16) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(r.blocks); i = int(next.Add(1)) - 1 {
				if b := &r.blocks[i]; r.looks[i].kind != Definition && len(b.text) <= longestLine {
					r.trees[i] = r.parse(b.text, b.start, r.looks[i].from)
				}
			}
		})
	}
	wait.Wait()
}

func (r *reader) parse(text string, start, from int) *notation.Line {
	return notation.Parse(text[from:], start+from, r.options())
}

// tree is what line i says, read from byte from of its text on.
func (r *reader) tree(l *Line, i, from int) *notation.Line {
	if t := r.trees[i]; t != nil && t.Start == l.Start+from {
		return t
	}
	return r.parse(l.Text, l.Start, from)
}
