package design

import (
	"rowproof/diag"
	"rowproof/stitch"
)

// termClue tells what a word says about the terms, and how loudly. A stitch
// name that one system lacks outweighs a word that careless writers mix.
var termClue = map[string]struct {
	terms  stitch.Terms
	weight int
}{
	"sc": {stitch.US, 3}, "hdc": {stitch.US, 3}, "fsc": {stitch.US, 3}, "fhdc": {stitch.US, 3}, "esc": {stitch.US, 2}, "sc2tog": {stitch.US, 3}, "hdc2tog": {stitch.US, 3},
	"fpsc": {stitch.US, 3}, "fphdc": {stitch.US, 3}, "bphdc": {stitch.US, 3}, "bpsc": {stitch.US, 3}, "sc3tog": {stitch.US, 3},
	"skip": {stitch.US, 1}, "sk": {stitch.US, 1}, "gauge": {stitch.US, 1},
	"htr": {stitch.UK, 3}, "htr2tog": {stitch.UK, 3}, "fphtr": {stitch.UK, 3}, "miss": {stitch.UK, 2}, "missed": {stitch.UK, 2}, "tension": {stitch.UK, 1},
	"ss": {stitch.UK, 1}, "yrh": {stitch.UK, 1}, "trtr": {stitch.UK, 1},
}

// settleTerms counts the words that tell US from UK terms and, unless the
// pattern says which it uses, decides by them.
func (d *Design) settleTerms(blocks []block) {
	counts := map[string]int{}
	weight := [3]int{}
	for i := range blocks {
		b := &blocks[i]
		ws := words(b.text)
		if termsLook(ws) && d.Terms == stitch.UnknownTerms {
			d.Terms, d.TermsBy = saidTerms(ws), "said so"
		}
		for k, w := range ws {
			name := w.text
			clue, ok := termClue[name]
			if !ok {
				if name = w.glued(); name != w.text {
					clue, ok = termClue[name]
				}
			}
			if !ok {
				name, clue, ok = spelledTerm(ws, k)
			}
			if !ok && (name == "tr" || w.glued() == "tr") && k >= 2 && ws[k-1].text == "as" && (ws[0].glued() == "ch" || afterThreeChains(ws, k)) {
				name, clue.terms, clue.weight, ok = "3ch (counts as 1tr)", stitch.UK, 3, true
			}
			if !ok && (name == "dc" || w.glued() == "dc") && countsAs(ws, k) && afterThreeChains(ws, k) {
				name, clue.terms, clue.weight, ok = "ch 3 (counts as dc)", stitch.US, 3, true
			}
			if !ok {
				continue
			}
			weight[clue.terms] += clue.weight
			at, known := counts[name]
			if !known {
				at = len(d.TermWords)
				counts[name] = at
				d.TermWords = append(d.TermWords, TermWord{Word: name, Terms: clue.terms, First: diag.Span{Start: b.start + w.start, End: b.start + w.end}})
			}
			d.TermWords[at].Count++
		}
	}
	switch {
	case d.Terms != stitch.UnknownTerms:
	case weight[stitch.UK] > weight[stitch.US]:
		d.Terms, d.TermsBy = stitch.UK, "the words used"
	case weight[stitch.US] > 0:
		d.Terms, d.TermsBy = stitch.US, "the words used"
	default:
		d.Terms, d.TermsBy = stitch.US, "custom"
	}
}

// countsAs reports whether ws[k] is what a chain is said to count as: "counts
// as dc", "counts as first dc".
func countsAs(ws []word, k int) bool {
	for i := max(0, k-2); i < k; i++ {
		if ws[i].text == "as" {
			return true
		}
	}
	return false
}

// afterThreeChains reports whether a chain of 3 stands shortly before ws[k],
// so that "3ch counts as 1tr" is a UK treble.
func afterThreeChains(ws []word, k int) bool {
	for i := max(0, k-6); i < k; i++ {
		if ws[i].text == "3ch" || ws[i].text == "3" && i+1 < k && ws[i+1].glued() == "ch" || ws[i].glued() == "ch" && digitsOf(ws[i].text) == 3 ||
			(ws[i].text == "ch" || ws[i].text == "chain") && i+1 < k && ws[i+1].text == "3" {
			return true
		}
	}
	return false
}

// spelledTerm takes "single crochet" and "half treble" for words that tell.
func spelledTerm(ws []word, k int) (name string, clue struct {
	terms  stitch.Terms
	weight int
}, ok bool) {
	if k+1 >= len(ws) {
		return "", clue, false
	}
	switch ws[k].text + " " + ws[k+1].text {
	case "single crochet":
		name, clue.terms, clue.weight = "single crochet", stitch.US, 3
	case "half double":
		name, clue.terms, clue.weight = "half double crochet", stitch.US, 3
	case "half treble":
		name, clue.terms, clue.weight = "half treble", stitch.UK, 3
	default:
		return "", clue, false
	}
	return name, clue, true
}

// saidTerms returns the terms a sentence names.
func saidTerms(ws []word) stitch.Terms {
	for _, w := range ws {
		switch w.text {
		case "us", "american", "u.s", "usa", "north":
			return stitch.US
		case "uk", "british", "english", "u.k", "australian":
			return stitch.UK
		}
	}
	return stitch.UnknownTerms
}
