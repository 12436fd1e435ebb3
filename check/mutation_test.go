package check_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"rowproof/check"
	"rowproof/design"
)

var update = flag.Bool("update", false, "write the golden files again")

// A change is one number of a pattern made one larger or one smaller.
type change struct {
	file       string
	line       int
	start, end int
	to         string
}

// changes lists every change of every number written in digits.
func changes(file, text string) []change {
	var list []change
	line := 1
	for i := 0; i < len(text); {
		switch c := text[i]; {
		case c == '\n':
			line++
			i++
		case c >= '0' && c <= '9':
			j, n := i, 0
			for j < len(text) && text[j] >= '0' && text[j] <= '9' && j-i < 9 {
				n = n*10 + int(text[j]-'0')
				j++
			}
			for _, to := range []int{n - 1, n + 1} {
				if to >= 0 {
					list = append(list, change{file, line, i, j, fmt.Sprint(to)})
				}
			}
			if j+1 < len(text) && text[j] == '.' && text[j+1] >= '0' && text[j+1] <= '9' {
				for j++; j < len(text) && text[j] >= '0' && text[j] <= '9'; j++ { // 88.5 is one number
				}
			}
			i = j
		default:
			i++
		}
	}
	return list
}

// TestEveryChangedNumberIsCaught changes every single number of the right cases
// and the examples by one, up and down, and expects an error; only the 2 of a
// size named 2X is let be. At least 98 of a hundred are caught; the rest stand
// in a golden file, each with the reason why it harms nothing.
func TestEveryChangedNumberIsCaught(t *testing.T) {
	files, _ := filepath.Glob("testdata/cases/right/*.txt")
	examples, _ := filepath.Glob("../examples/*.md")
	total, caught, survivors := changeEach(t, append(files, examples...))
	rate := float64(caught) / float64(total)
	t.Logf("%d of %d changed numbers caught (%.2f %%)", caught, total, 100*rate)
	if rate < 0.98 {
		t.Errorf("only %.2f %% of the changed numbers are caught, want 98", 100*rate)
	}
	if strings.Contains(survivors, unexplained) {
		t.Errorf("some survivors have no reason:\n%s", survivors)
	}
	golden := "testdata/mutation/survivors.golden"
	if *update {
		os.MkdirAll(filepath.Dir(golden), 0o755)
		if err := os.WriteFile(golden, []byte(survivors), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != survivors {
		t.Errorf("the survivors have changed (run with -update and read the diff):\n%s", survivors)
	}
}

// TestChangedNumbersOfManyStyles does the same to the patterns in strangers'
// styles, which state fewer counts. They fall short of the 98 in a hundred asked
// for; what they reach is held, and -v shows it.
func TestChangedNumbersOfManyStyles(t *testing.T) {
	files, _ := filepath.Glob("testdata/styles/*.txt")
	total, caught, _ := changeEach(t, files)
	rate := float64(caught) / float64(total)
	t.Logf("%d of %d changed numbers caught (%.2f %%)", caught, total, 100*rate)
	const reached = 0.89
	if rate < reached {
		t.Errorf("only %.2f %% of the changed numbers are caught, and %.2f were", 100*rate, 100*reached)
	}
}

// changeEach makes every change of the files, one at a time, and tells how many
// an error catches. The others are listed, each with its reason.
func changeEach(t *testing.T, files []string) (total, caught int, survivors string) {
	var left strings.Builder
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text := string(source)
		why := harmless(text)
		list := slices.DeleteFunc(changes(file, text), func(c change) bool { return why.outside(c, text) })
		found := make([]bool, len(list))
		inParallel(len(list), func(i int) {
			changed := text[:list[i].start] + list[i].to + text[list[i].end:]
			found[i] = check.Run(design.Read(file, []byte(changed))).Errors() > 0
		})
		for i, c := range list {
			if total++; found[i] {
				caught++
				continue
			}
			fmt.Fprintf(&left, "%s:%d: %s -> %s in %q: %s\n", filepath.Base(file), c.line, text[c.start:c.end], c.to,
				strings.TrimSpace(around(text, c)), why.why(text, c))
		}
	}
	return total, caught, left.String()
}

// inParallel calls work for each of n, as many at a time as there are cores.
func inParallel(n int, work func(int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wait.Wait()
}

// around is the text near a change.
func around(text string, c change) string {
	start := strings.LastIndexByte(text[:c.start], '\n') + 1
	end := len(text)
	if i := strings.IndexByte(text[c.end:], '\n'); i >= 0 {
		end = c.end + i
	}
	return text[max(start, c.start-30):min(end, c.end+20)]
}

// unexplained marks a survivor that nobody has looked at.
const unexplained = "NOT EXPLAINED"

// reasons tells why a change that no check catches harms no maker.
type reasons struct {
	front int // where the front matter ends
}

func harmless(text string) reasons {
	r := reasons{}
	if strings.HasPrefix(text, "---\n") {
		if i := strings.Index(text[4:], "\n---\n"); i >= 0 {
			r.front = i + 8
		}
	}
	return r
}

// outside tells whether a change is in words that are no number of the pattern:
// the name of a size, such as 2X.
func (r reasons) outside(c change, text string) bool {
	return c.end < len(text) && text[c.end] == 'X'
}

// why gives the reason for a survivor, unexplained if there is none.
func (r reasons) why(text string, c change) string {
	line := around2(text, c)
	low := strings.ToLower(line)
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(low, w) {
				return true
			}
		}
		return false
	}
	switch {
	case c.start < r.front:
		return "the head of the file says the gauge a second time; rows do not depend on it"
	case strings.HasPrefix(low, "| to fit"):
		return "a size to fit, in a range; no row depends on it"
	case has("(make "):
		return "how often a whole piece is made; the piece is the same"
	case has("invented for this pattern", "balls", "g ball", "mm (us", "mm hook"):
		return "yarn and hook; no row depends on them"
	case has("sts and", "rnds = 4"):
		return "gauge; no row is worked to a length"
	case has("ease"):
		return "how the garment is worn; no row depends on it"
	case has("an estimate from", "good to", "the pieces need"):
		return "an estimate of the yarn"
	case has("(does not count as a st)") && c.start-strings.LastIndexByte(text[:c.start], '\n') < 12:
		return "a chain that is said not to count changes nothing but the height of the edge"
	case has("counts as dc"):
		return "a chain of one fewer may stand for a dc, when it is said"
	case strings.HasPrefix(low, "|"):
		return "inches to the quarter and centimetres to the half may part by so much"
	case strings.HasPrefix(strings.TrimLeft(low, "*"), "r") && has("rows ", "rnds ", "rounds ") && lastRows(text, c):
		return "the last rows of a piece: nothing in the pattern says how long it is"
	case has("form ring"):
		return "a ring of a chain more or less holds the same stitches"
	case has("the turning ch 2 does not count"):
		return "the note then speaks of the trim's ch 1; ch 2 at hdc does not count by custom either"
	case has("v-st: ("):
		return "a V-st of three: the rounds after it work into its chain and its outer stitches alone"
	case has("rows below", "give 3 sc", "in rnds 2 to 4", "at least", "falls on a ch-1", "falls on the marked"):
		return "advice in words; the rows say it in numbers of their own"
	}
	return unexplained
}

// around2 is the whole line of a change.
func around2(text string, c change) string {
	start := strings.LastIndexByte(text[:c.start], '\n') + 1
	end := len(text)
	if i := strings.IndexByte(text[c.end:], '\n'); i >= 0 {
		end = c.end + i
	}
	return text[start:end]
}

// lastRows tells whether the line of a change is the last of its piece.
func lastRows(text string, c change) bool {
	_, rest, _ := strings.Cut(text[c.end:], "\n")
	return strings.HasPrefix(strings.TrimSpace(rest), "Fasten off")
}
