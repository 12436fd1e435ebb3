package design

// foundationLook reports whether an unlabelled line makes what a piece starts
// from and no more: a chain, foundation stitches, a ring.
func foundationLook(ws []word) bool {
	first, made, turned, ring := -1, 0, false, false
	for i := 0; i < len(ws); i++ {
		w := ws[i]
		switch s := stitchOf(w); {
		case s == "ch" || s == "chs" || w.glued() == "chain" || w.glued() == "chains":
			if n := chainsMade(ws, i); n > 0 {
				if first < 0 {
					first = n
				}
				made++
			}
		case s == "fsc" || s == "fhdc" || s == "fdc" || s == "fhtr" || s == "ftr" || s == "fdtr" || s == "fch":
			first, made = max(first, 99), made+1
		case w.text == "foundation" && i+1 < len(ws) && longStitch(ws, i+1) > 0:
			first, made = max(first, 99), made+1
			i += longStitch(ws, i+1)
		case s == "mr" || (w.text == "magic" || w.text == "adjustable" || w.text == "sliding") && i+1 < len(ws) && (ws[i+1].text == "ring" || ws[i+1].text == "circle" || ws[i+1].text == "loop"):
			ring = true
			if contains(ws[:i], "in", "into") {
				return false
			}
		case w.text == "slip" && i+1 < len(ws) && (ws[i+1].text == "knot" || ws[i+1].text == "loop"), w.text == "slipknot":
			ring = true
		case w.text == "sl" || s == "ss" || s == "slst" || s == "sl-st" || w.text == "slip":
			if made == 0 {
				return false
			}
		case s != "":
			return false
		case longStitch(ws, i) > 1:
			return false
		case startsElse[w.text]:
			return false
		case w.text == "turn":
			turned = true
		case i == 0 && (w.text == "wind" || w.text == "wrap") && contains(ws, "ring", "loop") && contains(ws, "yarn"):
			return true
		case w.text == "ring" && made > 0:
			ring = true
		}
	}
	switch {
	case ring:
		return true
	case made == 0:
		return false
	case made > 1 && !contains(ws, "or"):
		return first >= 10
	}
	return first >= 5 || first >= 2 && !turned && first != 2
}

// startsElse are words of lines that go on with a piece that is there.
var startsElse = set(`fasten finish skip sk miss rep repeat rpt rejoin attach leave leaving work: counts count loop-sp multiple
	same turning t-ch dec inc decrease increase cont continue picot knit sew across seam space spaces sp sps pattern loops button`)

// chainsMade returns how many chains ws[i], a "ch", makes: the number before
// or after it, 99 for a live number; 0 when it makes none ("first ch").
func chainsMade(ws []word, i int) int {
	if ws[i].after == '{' {
		return 99
	}
	if n := digitsOf(ws[i].text); n > 0 {
		return n
	}
	if i+1 < len(ws) {
		if n := digitsOf(ws[i+1].text); n > 0 && !ordinal(ws[i+1].text) && ws[i].text[len(ws[i].text)-1] != '-' {
			return n
		}
		if numberWords[ws[i+1].text] > 0 {
			return numberWords[ws[i+1].text]
		}
	}
	if i+4 < len(ws) && ws[i+2].text == "total" && ws[i+4].startsDigit() {
		return digitsOf(ws[i+4].text)
	}
	for k := i - 1; k >= 0 && k > i-3; k-- {
		if n := digitsOf(ws[k].text); n > 0 && !ordinal(ws[k].text) {
			return n
		}
	}
	return 0
}

func digitsOf(s string) int {
	n, seen := 0, false
	for i := 0; i < len(s); i++ {
		if asciiDigit(s[i]) {
			n, seen = min(n*10+int(s[i]-'0'), 100000), true
		} else if seen {
			break
		}
	}
	return n
}
