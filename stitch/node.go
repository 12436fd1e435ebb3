package stitch

// A node is one thing a definition tells the maker, as read. Repeats are not
// yet written out.
type node struct {
	op         op
	n          int  // how many; allLoops for "all"
	kind       Kind // of opStitch, opFinish, opCounts, opForm
	where      place
	unfinished bool   // of opStitch: its last loop stays on the hook
	body       []node // of opGroup
	start, end int    // bytes of the text
	id         int    // of opClaim: its place among the claims
}

// op is what a node is.
type op uint8

const (
	opYO      op = iota + 1 // yarn over, n times
	opInsert                // insert hook
	opPull                  // pull up n loops
	opThrough               // pull through n loops
	opVia                   // pull through the work and n loops
	opLead                  // pull the loop through: what it is depends on what went before
	opDrop                  // drop the loop from the hook
	opPickUp                // pick up the dropped loop
	opStitch                // n whole stitches
	opChain                 // n chains
	opCounts                // the chain before counts as a stitch and n chains
	opFinish                // finish as a plain stitch
	opUntil                 // go on pulling through until n loops are left
	opClaim                 // n loops are on the hook
	opGroup                 // body, n times
	opSkip                  // pass over places
	opHere                  // the place for what follows
	opTurning               // the turning chain is n
	opHeight                // the height is n turning chains
	opForm                  // it is a form of a plain stitch
	opUnread                // not understood
)

// allLoops stands for "all loops on hook".
const allLoops = -1

// A place is where the hook goes, as far as a stitch's definition needs to know.
type place struct {
	told  bool // a place is named at all
	fresh int  // places of the row below that were not used before: "next st" 1, "next 2 sts" 2
	same  bool // "same st", "indicated st": one place, whichever time it is named
	own   bool // in the stitch being made: "top of first dc", "3rd ch from hook"
	first bool // "first dc": in the stitch being made, if it has made some
	base  bool // the chain at the base of the last foundation stitch
	only  bool // one loop of the top: "front loop of next st"
	each  bool // "in each of next 2 sts"
	loose bool // the dropped loop is in it: "in first dc and dropped loop"
	post  Side
	below int
}

// merge adds what another place phrase of the same clause told.
func (p *place) merge(q place) {
	p.told = p.told || q.told
	p.fresh += q.fresh
	p.same = p.same || q.same
	p.own = p.own || q.own
	p.first = p.first || q.first
	p.base = p.base || q.base
	p.only = p.only || q.only
	p.each = p.each || q.each
	p.loose = p.loose || q.loose
	p.post |= q.post & aroundPost
	p.turnTo(q.post &^ aroundPost)
	p.below = max(p.below, q.below)
}
