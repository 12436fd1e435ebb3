package stitch

import "strconv"

// A Move is one thing the hook does.
type Move struct {
	Do Do
	N  int // loops pulled through, dropped or picked up; 0 for the others
}

// Do is a kind of Move.
type Do uint8

// The moves.
const (
	Wrap    Do = iota + 1 // yarn over before the hook goes in: one loop more
	Insert                // hook through the work
	Pull                  // yarn over and pull up a loop: one loop more
	Through               // yarn over and pull through N loops: N fewer, one more
	Slip                  // yarn over and pull through the work and the loop on the hook
	Drop                  // take N loops off the hook
	PickUp                // take N dropped loops back on the hook
	Draw                  // pull the loop that was picked up through the work; no new yarn
)

// Loops is how many loops the hook holds after the move when it held loops
// before. ok is false if the move needs more than there are.
func (m Move) Loops(loops int) (after int, ok bool) {
	switch m.Do {
	case Wrap, Pull:
		return loops + 1, true
	case Through:
		return loops - m.N + 1, m.N <= loops
	case Slip, Draw:
		return loops, loops >= 1
	case Drop:
		return loops - m.N, m.N <= loops
	case PickUp:
		return loops + m.N, true
	}
	return loops, true
}

// YarnOvers is how many new loops of yarn the move lays: 1 or 0.
func (m Move) YarnOvers() int {
	switch m.Do {
	case Wrap, Pull, Through, Slip:
		return 1
	}
	return 0
}

// String returns the move as a crocheter would say it.
func (m Move) String() string {
	switch m.Do {
	case Wrap:
		return "yo"
	case Insert:
		return "insert hook"
	case Pull:
		return "yo and pull up a loop"
	case Through:
		return "yo and pull through " + count(m.N, "loop")
	case Slip:
		return "yo and pull through the work and the loop on the hook"
	case Drop:
		return "drop " + count(m.N, "loop") + " from the hook"
	case PickUp:
		return "pick up " + count(m.N, "dropped loop")
	case Draw:
		return "pull the loop through"
	}
	return ""
}

// Run works moves from a hook with one loop on it and returns the loops left
// and the yarn overs laid. ok is false if a move needs more loops than there
// are, or the loops left are not one.
func Run(moves []Move) (loops, yarnOvers int, ok bool) {
	loops = 1
	for _, m := range moves {
		if loops, ok = m.Loops(loops); !ok {
			return loops, yarnOvers, false
		}
		yarnOvers += m.YarnOvers()
	}
	return loops, yarnOvers, loops == 1
}

// count returns "1 loop" or "3 loops".
func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
