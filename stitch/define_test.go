package stitch

import (
	"fmt"
	"strings"
	"testing"

	"rowproof/diag"
)

// Many ways to write one definition. Wordings: docs/sources.md T3, T10, T11, T14,
// T17, T25, T31, and common practice, no source.
func TestWordings(t *testing.T) {
	for _, tt := range []struct {
		text      string
		terms     Terms
		name      string // abbreviation in the text's terms
		uses      int
		yarnOvers int
		family    Family
		edge      string
	}{
		{"Cluster (cl): [Yo, insert hook in indicated st and pull up a loop, yo and pull through 2 loops] 3 times in same st (4 loops on hook), yo and pull through all 4 loops.", US, "cl", 1, 10, Closed, "[itself]"},
		{"Cl (cluster) = (yarn over, insert hook in next sp, yarn over, draw up a lp, yarn over, draw through two lps) twice in same sp, yo, draw through rem 3 lps on hook.", US, "cl", 1, 7, Closed, "[itself]"},
		{"**Cluster (cl):** Keeping last loop of each on hook, work 3 dc in same st, yo and pull through all loops on hook.", US, "cl", 1, 10, Closed, "[itself]"},
		{"Cluster: work 3 dc in next sp leaving last loop of each on hook, yo and draw through all 4 loops on hook", US, "cluster", 1, 10, Closed, "[itself]"},
		{"Cluster: 3 dc in same st until last loop of each remains on hook, yo, draw through all 4 lps.", US, "cluster", 1, 10, Closed, "[itself]"},
		{"Cluster: Dc in next st until 2 loops remain on hook, dc in same st until 3 loops remain on hook, yo and pull through all 3 loops.", US, "cluster", 1, 7, Closed, "[itself]"},
		{"cl - cluster: yo, insert hook in st, pull up a loop, yo, pull through 2 loops, repeat 2 more times in same st, yo, pull through all 4 loops on hook.", US, "cl", 1, 10, Closed, "[itself]"},
		{"2-tr cluster: *Yo twice, insert hook in st and pull up a loop, {yo, pull through 2 loops} twice; rep from * once more in same st, yo, pull through 3 loops.", US, "2-tr cluster", 1, 11, Closed, "[itself]"},
		{"Spread cluster (sp cl): [Yo, insert hook in next st, yo and pull up a loop, yo and pull through 2 loops] over next 3 sts, yo and pull through all 4 loops.", US, "sp cl", 3, 10, Together, "[itself]"},
		{"Shell: 5 dc in same st.", US, "shell", 1, 20, Open, "[dc dc dc dc dc]"},
		{"Shell (sh): In next st work (2 dc, ch 2, 2 dc).", US, "sh", 1, 18, Open, "[dc dc ch-2 dc dc]"},
		{"Large shell: (dc, ch 1) 3 times in same st, dc in same st.", US, "large shell", 1, 19, Open, "[dc ch-1 dc ch-1 dc ch-1 dc]"},
		{"Picot shell: 2 dc in next st, ch 3, sl st in top of last dc made, 2 dc in same st.", US, "picot shell", 1, 20, Open, "[dc dc dc dc]"},
		{"V-st: (dc, ch 1, dc) in st indicated.", US, "V-st", 1, 9, Open, "[dc ch-1 dc]"},
		{"V-stitch (V-st) — dc, ch 2, dc all in same sp.", US, "V-st", 1, 10, Open, "[dc ch-2 dc]"},
		{"Beginning shell (beg shell): Ch 3 (counts as dc), 4 dc in same st.", US, "beg shell", 1, 19, Open, "[dc dc dc dc dc]"},
		{"Beg V-st: Ch 4 (counts as dc, ch 1), dc in same st.", US, "beg V-st", 1, 8, Open, "[dc ch-1 dc]"},
		{"Beg V-st: Ch 5, dc in same st.", US, "beg V-st", 1, 9, Open, "[dc ch-2 dc]"},
		{"Beg pc: ch 3 (counts as first dc), 4 dc in same sp, drop loop from hook, insert hook in top of ch-3, pick up dropped loop and pull through.", US, "beg pc", 1, 19, Closed, "[itself]"},
		{"Picot: Ch 3, sl st in top of last st.", US, "picot", 0, 4, Picot, "[]"},
		{"Picot (p): chain four, slip stitch in 4th chain from hook", US, "p", 0, 5, Picot, "[]"},
		{"Popcorn (pc): 5 dc in same st, drop loop from hook, insert hook in first dc of group, pick up dropped loop and pull through, ch 1", US, "pc", 1, 21, Closed, "[itself]"},
		{"Popcorn: Work 4 dc in next st, remove hook from loop, insert hook from front to back in top of first dc, place dropped loop on hook and draw it through.", US, "popcorn", 1, 16, Closed, "[itself]"},
		{"Popcorn: 5 dc in st indicated, take hook out of loop, insert hook in first dc and pull dropped loop through.", US, "popcorn", 1, 20, Closed, "[itself]"},
		{"Puff: [Yo, insert hook, yo and draw up a long loop] 3 times in same st (7 loops on hook), yo, draw through all 7 loops, ch 1", US, "puff", 1, 8, Closed, "[itself]"},
		{"Puff st: (yo, pull up a loop) 4 times in next sp, yo, pull through 8 loops, yo, pull through rem 2 loops.", US, "puff st", 1, 10, Closed, "[itself]"},
		{"Puff Stitch (ps): Yo, draw up a loop in next st, yo, draw up a loop in same st, yo, draw up a loop in same st (7 loops on hook), yo and draw through all loops, ch 1 to close.", US, "ps", 1, 8, Closed, "[itself]"},
		{"Bobble: [Yo, insert hook in st, yo and pull up a loop, yo and draw through 2 loops] 5 times in same st, yo and draw through all 6 loops on hook. Push bobble to RS.", US, "bobble", 1, 16, Closed, "[itself]"},
		{"Sc2tog: Pull up a loop in each of next 2 sts, yo and draw through all 3 loops on hook.", US, "sc2tog", 2, 3, Together, "[itself]"},
		{"Single crochet 2 together (sc2tog) = insert hook in next st, yo, pull up a loop, insert hook in next st, yo, pull up a loop (3 loops on hook), yo, pull through all loops.", US, "sc2tog", 2, 3, Together, "[itself]"},
		{"dc2tog - double crochet 2 together: (yo, insert hook in next st, yo, pull up loop, yo, draw through 2 loops) twice, yo, draw through all 3 loops on hook.", US, "dc2tog", 2, 7, Together, "[itself]"},
		{"Invisible decrease (inv dec): Insert hook in front loop of next st, insert hook in front loop of next st (3 loops on hook), yo and pull through 2 loops (2 loops on hook), yo and pull through both loops.", US, "inv dec", 2, 2, Together, "[itself]"},
		{"Dc over both: Yo, insert hook in next st and next ch-1 sp at once, yo and pull up a loop, [yo and pull through 2 loops] twice.", US, "dc over both", 2, 4, Together, "[itself]"},
		{"FPdc: Yo, insert hook from front to back around post of next st, complete as dc.", US, "FPdc", 1, 4, PostStitch, "[itself]"},
		{"Front post dc (FPdc) – work dc around post of next dc from front.", US, "FPdc", 1, 4, PostStitch, "[itself]"},
		{"Spike st: Insert hook in st 2 rows below, pull up a loop even with row, finish as sc.", US, "spike st", 1, 2, Spike, "[itself]"},
		{"X-st: Sk next st, dc in next st, dc in skipped st.", US, "X-st", 2, 8, Open, "[dc dc]"},
		{"Star st: Pull up a loop in each of next 5 sts, yo and pull through all 6 loops, ch 1 for eye.", US, "star st", 5, 7, Together, "[itself]"},
		{"Berry st: Yo, insert hook in st, yo and pull up a loop, ch 3, yo and pull through all 3 loops.", US, "berry st", 1, 6, Plain, "[itself]"},
		{"Bullion st: Wrap yarn around hook 10 times, insert hook in st, pull up a loop, yo and pull through all 12 loops on hook, ch 1.", US, "bullion st", 1, 13, Plain, "[itself]"},
		{"Long esc: Insert hook in st 1 row below, yo and pull up a loop, yo and pull through 1 loop, yo and pull through both loops.", US, "long esc", 1, 3, Spike, "[itself]"},
		{"Wide V: 5-dc shell in next st", US, "wide V", 1, 20, Open, "[dc dc dc dc dc]"},
		{"Shell: 5tr in same st.", UK, "shell", 1, 20, Open, "[dc dc dc dc dc]"},
		{"V-st: (1tr, 1ch, 1tr) into next st", UK, "V-st", 1, 9, Open, "[dc ch-1 dc]"},
		{"Cluster (cl): [yrh, insert hook in next st, yrh and draw loop through, yrh and draw through 2 loops] three times in same place, yrh and draw through all four loops.", UK, "cl", 1, 10, Closed, "[itself]"},
		{"tr2tog: *yrh, insert hook in next st, draw loop through, yrh, draw through two loops; rep from * once more (three loops on hook), yrh, draw through all loops.", UK, "tr2tog", 2, 7, Together, "[itself]"},
		{"dc2tog: (insert hook in next st and draw loop through) twice, yoh and draw through all 3 loops.", UK, "dc2tog", 2, 3, Together, "[itself]"},
		{"Raised treble front (rtf): 1tr worked around the stem of next st from the front.", UK, "rtf", 1, 4, PostStitch, "[itself]"},
	} {
		d := Standard()
		s, f := d.ReadDefinition(tt.text, 0, tt.terms)
		if s == nil {
			t.Errorf("no definition: %s", tt.text)
			continue
		}
		name := s.US
		if tt.terms == UK {
			name = s.UK
		}
		got := fmt.Sprint(name, " ", s.Uses, " ", s.YarnOvers, " ", s.Family, " ", edgeWords(d, s))
		want := fmt.Sprint(tt.name, " ", tt.uses, " ", tt.yarnOvers, " ", tt.family, " ", tt.edge)
		if got != want || len(f) > 0 || len(s.Unread) > 0 {
			t.Errorf("%s\n got %s, unread %q, %v\nwant %s", tt.text, got, s.Unread, f, want)
		}
		if _, _, ok := Run(s.Moves); !ok {
			t.Errorf("%s: %v does not end with 1 loop", tt.text, s.Moves)
		}
	}
}

// A slip in the loops gives one finding, on the fewest words. The rules for
// loops are docs/sources.md, "Stitches and terms", moves of the hook.
func TestSlips(t *testing.T) {
	for _, tt := range []struct {
		text    string
		code    diag.Code
		marked  string
		message string
		repair  string
	}{
		{"Cluster (cl): [Yo, insert hook in indicated st and pull up a loop, yo and pull through 2 loops] 3 times in same st (5 loops on hook), yo and pull through all 4 loops.",
			LoopsOnHook, "5", "There are 4 loops on the hook here, not 5", "4 loops on hook"},
		{"Cluster (cl): [Yo, insert hook in indicated st and pull up a loop, yo and pull through 2 loops] 4 times in same st (4 loops on hook), yo and pull through all 4 loops.",
			LoopsOnHook, "4", "There are 5 loops on the hook here, not 4", "5 loops on hook"},
		{"Twist: Insert hook in next st, yo and pull up a loop (2 loops on hook), yo and pull through both loops (2 loops on hook).",
			LoopsOnHook, "2", "There is 1 loop on the hook here, not 2", "1 loop on hook"},
		{"Twist st: Yo, insert hook in next st, yo and pull up a loop, you now have four loops on your hook, yo and draw through all loops.",
			LoopsOnHook, "four", "There are 3 loops on the hook here, not 4", "3 loops on hook"},
		{"Cluster: [Yo, insert hook in st, yo and pull up a loop (4 loops on hook), yo and pull through 2 loops] 3 times in same st, yo and pull through all 4 loops.",
			LoopsOnHook, "4", "There are 3 loops on the hook here, not 4", "3 loops on hook"},
		{"Puff: [Yo, insert hook in next st and pull up a loop] 3 times in same st, yo and pull through 6 loops.",
			LoopsLeft, "pull through 6 loops", "Puff leaves 2 loops on the hook; a stitch ends with 1", "pull through all 7 loops"},
		{"Puff: [Yo, insert hook in next st and pull up a loop] 3 times in same st (7 loops on hook), yo and pull through 8 loops.",
			LoopsLeft, "pull through 8 loops", "There are only 7 loops on the hook here, and this needs 8", "pull through all 7 loops"},
		{"Twist st: Insert hook in next st, yo and pull up a loop, yo and pull through 1 loop.",
			LoopsLeft, "pull through 1 loop", "Twist st leaves 2 loops on the hook; a stitch ends with 1", "pull through all 2 loops"},
		{"Bullion: Yo 1000000 times, insert hook in next st and pull up a loop, yo and pull through all loops on hook.",
			TooManyTimes, "1000000 times", "Bullion repeats something 1000000 times; no stitch needs more than 100", ""},
		{"Puff: [yo, insert hook in st, pull up a loop] 99999999999999999999 times, yo, pull through all.",
			TooManyTimes, "99999999999999999999 times", "Puff repeats something more often than can be counted; no stitch needs more than 100 times", ""},
		{"Puff: [[[yo, insert hook in st, pull up a loop] 90 times] 90 times] 90 times, yo, pull through all.",
			TooManyTimes, "Puff: [[[yo, insert hook in st, pull up a loop] 90 times] 90 times] 90 times, yo, pull through all.", "Puff would take more than 4000 moves of the hook, more than any stitch", ""},
	} {
		const at = 100
		s, f := Standard().ReadDefinition(tt.text, at, US)
		if s == nil || len(f) != 1 {
			t.Errorf("%s\n got %d findings: %v", tt.text, len(f), f)
			continue
		}
		g := f[0]
		marked := tt.text[g.Span.Start-at : g.Span.End-at]
		if g.Severity != diag.Error || g.Code != tt.code || marked != tt.marked || g.Message != tt.message || g.Repair != tt.repair {
			t.Errorf("%s\n got %s %q: %s (%s)", tt.text, g.Code, marked, g.Message, g.Repair)
		}
		if tt.code != TooManyTimes && !strings.HasPrefix(g.Detail, "start: 1 loop\n") {
			t.Errorf("%s: the counting is %q", tt.text, g.Detail)
		}
		if g.Row == "" {
			t.Errorf("%s: the finding does not name the stitch", tt.text)
		}
	}
}

// Two wrong claims are two slips; a claim that is off by as much as the one
// before it follows from it.
func TestTwoSlips(t *testing.T) {
	two := "Twist st: Yo, insert hook in next st, yo and pull up a loop (4 loops on hook), yo and pull through 2 loops (1 loop on hook), yo and pull through both loops."
	if _, f := Standard().ReadDefinition(two, 0, US); len(f) != 2 {
		t.Errorf("got %d findings, want 2: %v", len(f), f)
	}
	one := "Twist st: Yo, insert hook in next st, yo and pull up a loop (4 loops on hook), yo and pull through 2 loops (3 loops on hook), yo and pull through all loops."
	if _, f := Standard().ReadDefinition(one, 0, US); len(f) != 1 {
		t.Errorf("got %d findings, want 1: %v", len(f), f)
	}
}

// Lines of a pattern that define no stitch.
func TestNoDefinitions(t *testing.T) {
	for _, text := range []string{
		"", ":", "=", "sc = single crochet", "sc: single crochet", "ch(s) = chain(s); sc = single crochet", "BLO - back loop only", "MC = main color",
		"Row 1: Dc in 4th ch from hook and in each ch across, turn.", "Rnd 3 (inc): (sc 2, inc) x 6", "3rd row: 3ch, 1tr in each tr to end.",
		"Note: Ch 3 counts as dc.", "Hook: 5 mm", "Gauge: 14 sts and 16 rows = 4 in", "Next row (RS): Sc in each st across, turn.",
		"Dec row: Ch 1, sc2tog, sc across.", "Foundation row: Sc in 2nd ch from hook and in each ch across.", "Work in rows", "Sizes: S (M, L)", "Yarn: 3 balls of DK",
		"Ch 25.", "Notes: Join with sl st in first sc.", "Cluster", "Shell:", strings.Repeat("x", 9000) + ": dc in next st",
	} {
		if s, f := Standard().ReadDefinition(text, 0, US); s != nil || f != nil {
			t.Errorf("%.40q was read as %+v, %v", text, s, f)
		}
	}
}

// What is not understood is named, and is no error.
func TestUnread(t *testing.T) {
	d := Standard()
	for _, tt := range []struct {
		text, unread string
		legs         int
	}{
		{"Wrap stitch (wst): twirl the thing with a needle.", "twirl the thing with a needle", 0},
		{"Cluster: see chart.", "see chart", 3},
		{"Knot st: Insert hook in next st, yo and pull up a loop, twist the loops somehow (9 loops on hook), yo and pull through 2 loops.", "twist the loops somehow", 0},
	} {
		s, f := d.ReadDefinition(tt.text, 0, US)
		if s == nil || len(f) > 0 || len(s.Unread) != 1 || s.Unread[0] != tt.unread || s.Uses != 1 || s.Legs != tt.legs || len(s.Edge) != 1 {
			t.Errorf("%s: %+v, %v", tt.text, s, f)
		}
	}
}

func TestIsGlossary(t *testing.T) {
	for text, want := range map[string]bool{
		"ch(s) = chain(s); sc = single crochet":     true,
		"BLO - back loop only":                      true,
		"sc: single crochet":                        true,
		"yo = yarn over":                            true,
		"dc2tog = double crochet 2 together":        true,
		"htr: half treble crochet":                  true,
		"sk – skip, sp – space, st(s) – stitch(es)": true,
		"Shell: 5 dc in same st.":                   false,
		"V-st = (dc, ch 1, dc) in same st":          false,
		"Ch 25.":                                    false,
		"":                                          false,
		"Bust: 34 in":                               false,
	} {
		if got := Standard().IsGlossary(text, US); got != want {
			t.Errorf("IsGlossary(%q) = %v", text, got)
		}
	}
}

// A definition in UK terms gives a stitch with both names.
func TestDefinitionNames(t *testing.T) {
	s, _ := Standard().ReadDefinition("Tr bunch (tr-bn): 3tr in same st.", 0, UK)
	if s == nil || s.UK != "tr-bn" || s.US != "dc-bn" || s.UKName != "tr bunch" || s.USName != "dc bunch" {
		t.Errorf("got %+v", s)
	}
	if s, _ := Standard().ReadDefinition("Special stitch: 3-dc bunch (bn or BN): 3 dc in same st.", 7, US); s == nil || s.US != "bn" || s.USName != "3-dc bunch" || s.UKName != "3-tr bunch" || s.Defined.Start != 7 {
		t.Errorf("got %+v", s)
	}
}

func ExampleDictionary_ReadDefinition() {
	d := Standard().Clone()
	s, findings := d.ReadDefinition("Cluster (cl): [Yo, insert hook in next st and pull up a loop, yo and pull through 2 loops] "+
		"2 times in same st (4 loops on hook), yo and pull through all 3 loops.", 0, US)
	d.Add(s)
	fmt.Println(s.USName, "lays", s.YarnOvers, "yarn overs and is a form of", d.Name(s.Base, US))
	for _, f := range findings {
		fmt.Println(f.Message)
		fmt.Println(f.Detail)
	}
	// Output:
	// cluster lays 7 yarn overs and is a form of dc
	// There are 3 loops on the hook here, not 4
	// start: 1 loop
	// yo: 2 loops
	// insert hook: 2 loops
	// yo and pull up a loop: 3 loops
	// yo and pull through 2 loops: 2 loops
	// yo: 3 loops
	// insert hook: 3 loops
	// yo and pull up a loop: 4 loops
	// yo and pull through 2 loops: 3 loops
}

func FuzzReadDefinition(f *testing.F) {
	for _, text := range []string{
		"Cluster (cl): [Yo, insert hook in st and pull up a loop, yo and pull through 2 loops] 3 times (4 loops on hook), yo and pull through all 4 loops.",
		"V-st: (dc, ch 1, dc) in st indicated.", "Picot: Ch 3, sl st in top of last st.", "tr2tog: *yrh, insert hook; rep from * once more (three loops)",
		"Popcorn (pc): 5 dc in same st, drop loop from hook, pick up dropped loop and pull through, ch 1", "X: (((((((((((((((((yo", "a=)]}*(rep from * 9 times",
		"Beg pc: ch 3 (counts as dc, ch 99999999999999999999), 4 dc", "\xff\xfe: yo \x80", "ch(s) = chain(s); sc = single crochet", "Shell — 5-dc shell twice 3x x 3",
		"Inv: insert hook in front loop of each of next 2 sts, yo, pull through both front loops until 2 loops remain", "sk next 1000000 sts: finish as dc",
		"Y: yo [[[[[[[[ ] 99 times] 99 times] 99 times] 99 times] 99 times] 99 times] 99 times] 99 times",
	} {
		f.Add(text, uint8(1))
		f.Add(text, uint8(2))
	}
	f.Fuzz(func(t *testing.T, text string, terms uint8) {
		d := Standard().Clone()
		s, findings := d.ReadDefinition(text, 10, Terms(terms%3))
		for _, g := range findings {
			if g.Span.Start < 10 || g.Span.End > 10+len(text) || g.Span.Start > g.Span.End || g.Message == "" {
				t.Errorf("%+v is no place of %q", g, text)
			}
		}
		if s == nil {
			return
		}
		if loops, n, ok := Run(s.Moves); s.Moves != nil && s.Kind == None && (!ok || n != s.YarnOvers) && len(findings) == 0 {
			t.Errorf("%q: %v ends with %d loops, no finding", text, s.Moves, loops)
		}
		if k := d.Add(s); k != None && d.Stitch(k) != s {
			t.Errorf("%q: not found after it was added", text)
		}
		d.Near(text, Terms(terms%3))
		d.IsGlossary(text, Terms(terms%3))
	})
}
