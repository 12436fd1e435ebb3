package stitch

import "rowproof/diag"

// The codes of what reading a definition can find.
const (
	// LoopsOnHook: a definition says how many loops are on the hook, and there
	// are not so many.
	//
	// Example:
	//	Cluster (cl): [Yo, insert hook in next st and pull up a loop, yo and
	//	pull through 2 loops] 3 times (5 loops on hook), yo and pull through
	//	all loops on hook.
	LoopsOnHook diag.Code = "loops-on-hook"

	// LoopsLeft: a definition pulls through more loops than the hook holds, or
	// leaves the stitch with other than one loop on it.
	//
	// Example:
	//	Puff: [Yo, insert hook in next st and pull up a loop] 3 times in same
	//	st, yo and pull through 6 loops.
	LoopsLeft diag.Code = "loops-left"

	// TooManyTimes: a definition repeats something more often than any stitch
	// can need.
	//
	// Example:
	//	Bullion: Yo 5000 times, insert hook in next st and pull up a loop, yo
	//	and pull through all loops on hook.
	TooManyTimes diag.Code = "too-many-times"
)
