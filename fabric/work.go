package fabric

import (
	"strings"
	"sync"

	"rowproof/design"
	"rowproof/notation"
)

// Work works every line of a design in every size, one Fabric a size in the
// order of the sizes.
//
// Where the pattern leaves a convention unsaid, whether a turning chain counts
// or a chain space does, custom is tried first; if rows then do not come out,
// each other reading is tried, and the one under which most comes out is kept
// for all sizes and named in Customs.
func Work(d *design.Design) []*Fabric {
	best, left := workAll(d, reading{})
	if left.faults == 0 || !(left.undecided || left.spaces) {
		return best
	}
	for _, r := range left.readings() {
		if fabs, now := workAll(d, r); now.faults < left.faults {
			best, left.faults = fabs, now.faults
		}
	}
	return best
}

// A reading is one way to take what the pattern leaves unsaid.
type reading struct {
	custom custom
	spaces bool
}

// A verdict is how a reading came out.
type verdict struct {
	faults    int
	undecided bool // a turning chain was taken by custom
	spaces    bool // whether spaces count was taken by custom
}

// readings lists the other readings to try.
func (v verdict) readings() []reading {
	var list []reading
	for _, spaces := range []bool{false, true} {
		if spaces && !v.spaces {
			continue
		}
		for _, c := range []custom{asHeight, halfDoubleToo, never, extra} {
			if c != asHeight && !v.undecided {
				continue
			}
			if r := (reading{c, spaces}); r != (reading{}) {
				list = append(list, r)
			}
		}
	}
	return list
}

func workAll(d *design.Design, r reading) ([]*Fabric, verdict) {
	workers := make([]*worker, d.SizeCount())
	var wait sync.WaitGroup
	for size := range workers {
		workers[size] = newWorker(d, size, r)
		wait.Go(workers[size].all)
	}
	wait.Wait()
	var fabs []*Fabric
	var v verdict
	for _, w := range workers {
		fabs = append(fabs, w.fab)
		if r.spaces && w.firstSpace != nil {
			w.fab.Customs = append(w.fab.Customs, Custom{Line: w.firstSpace, Span: w.firstSpace.Span, Counts: true, Tried: true})
		}
		for _, f := range w.fab.Faults {
			if !f.Soft {
				v.faults++
			}
		}
		v.undecided = v.undecided || w.undecided
		v.spaces = v.spaces || (w.spacesMade && !w.conv.spacesSaid)
	}
	return fabs, v
}

// all works every line of the design in the worker's size.
func (w *worker) all() {
	for _, line := range w.d.Lines {
		w.lineOf(line)
	}
	w.flush()
	w.dropEmpty()
	w.compareSides()
	w.comparePickUps()
}

func newWorker(d *design.Design, size int, r reading) *worker {
	w := &worker{d: d, size: size, memo: map[memoKey]*result{}, chainsSeen: map[notation.Span]bool{}, slips: map[*design.Line]bool{}, bodies: map[uint64][]*Body{}}
	w.fab = &Fabric{Size: size, Outcomes: map[*design.Line]Outcome{}}
	w.conv = readConventions(d, size)
	w.conv.custom = r.custom
	if r.spaces {
		w.conv.spaces = true
	}
	return w
}

// compareSides holds the two sides of each split against each other: they end
// with the same count.
func (w *worker) compareSides() {
	for _, p := range w.fab.Pieces {
		for _, s := range p.Splits {
			if len(s.Sides) < 2 || len(s.Sides[0]) == 0 || len(s.Sides[1]) == 0 {
				continue
			}
			a, b := s.Sides[0][len(s.Sides[0])-1], s.Sides[1][len(s.Sides[1])-1]
			if w.faulty(s) {
				continue
			}
			f := Fault{Kind: SidesDiffer, Line: b.Line, Span: b.Line.Span, Row: b.Label, Piece: s.Names[1],
				A: a.Counting, B: b.Counting, C: len(s.Sides[0]), D: len(s.Sides[1]), Text: s.Names[0]}
			switch {
			case a.Counting != b.Counting:
				f.Soft = !sided(s.Names)
				w.fab.Faults = append(w.fab.Faults, f)
			case f.C-f.D > 1 || f.D-f.C > 1:
				f.Soft = true
				w.fab.Faults = append(w.fab.Faults, f)
			case sided(s.Names):
				if r := sameEnd(s.Sides[0], s.Sides[1]); r != nil {
					f.Line, f.Span, f.Row = r.Line, r.Line.Span, r.Label
					w.fab.Faults = append(w.fab.Faults, f)
				}
			}
		}
	}
}

// sided tells whether the headings name the two sides of one thing.
func sided(names []string) bool {
	for _, n := range names {
		n = strings.ToLower(n)
		for _, word := range []string{"left", "right", "first", "second", "side", "shoulder"} {
			if strings.Contains(n, word) {
				return true
			}
		}
	}
	return false
}

// faulty tells whether a fault in a side explains why the sides differ.
func (w *worker) faulty(s *Split) bool {
	for _, f := range w.fab.Faults {
		if f.Soft {
			continue
		}
		for _, side := range s.Sides {
			for _, r := range side {
				if r.Line == f.Line {
					return true
				}
			}
		}
	}
	return false
}

// comparePickUps notes how stitches along row-ends stand to the rows; check
// compares the sizes.
func (w *worker) comparePickUps() {
	for _, p := range w.pickUps {
		w.fab.PickUps = append(w.fab.PickUps, PickUpCount{Line: p.line, Span: spanOf(p.n, p.line.Span), Made: p.made, RowEnds: p.along})
	}
}
