package check_test

import (
	"flag"
	"fmt"
	"maps"
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

// TestEveryChangedNumberIsCaught changes every single number of the right cases,
// the examples and the styles by one, up and down, and expects an error; only the
// 2 of a size named 2X is let be. At least 98 of a hundred are caught in all of
// them together. The others stand in a golden file, each with a reason that
// somebody wrote for it: -update writes no reasons.
func TestEveryChangedNumberIsCaught(t *testing.T) {
	total, survivors := 0, []string(nil)
	for _, folder := range []string{"testdata/cases/right/*.txt", "../examples/*.md", "testdata/styles/*.txt"} {
		files, _ := filepath.Glob(folder)
		n, left := changeEach(t, files)
		if n == 0 {
			t.Fatalf("%s: no numbers", folder)
		}
		t.Logf("%s: %d of %d changed numbers caught (%.2f %%)", folder, n-len(left), n, percent(n, left))
		total += n
		survivors = append(survivors, left...)
	}
	t.Logf("all: %d of %d changed numbers caught (%.2f %%)", total-len(survivors), total, percent(total, survivors))
	if percent(total, survivors) < 98 {
		t.Errorf("only %.2f %% of the changed numbers are caught, want 98", percent(total, survivors))
	}
	if *update {
		readSurvivors(t).write(t, survivors)
	}
	known := readSurvivors(t)
	seen := map[string]bool{}
	for _, s := range survivors {
		seen[s] = true
		switch letter, ok := known.letters[s]; {
		case !ok:
			t.Errorf("no error, and not in %s: %s", goldenSurvivors, s)
		case known.reasons[letter] == "":
			t.Errorf("no reason in %s: %s", goldenSurvivors, s)
		}
	}
	for _, s := range slices.Sorted(maps.Keys(known.letters)) {
		if !seen[s] {
			t.Errorf("in %s, but no survivor any more: %s", goldenSurvivors, s)
		}
	}
}

// percent is how many of n changes are caught, of a hundred.
func percent(n int, survivors []string) float64 {
	return 100 * float64(n-len(survivors)) / float64(n)
}

// changeEach makes every change of the files, one at a time, and tells how many
// there are and which of them no error catches.
func changeEach(t *testing.T, files []string) (total int, survivors []string) {
	for _, file := range files {
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		text := string(source)
		list := slices.DeleteFunc(changes(file, text), func(c change) bool { return strings.HasPrefix(text[c.end:], "X") })
		found := make([]bool, len(list))
		inParallel(len(list), func(i int) {
			changed := text[:list[i].start] + list[i].to + text[list[i].end:]
			found[i] = check.Run(design.Read(file, []byte(changed))).Errors() > 0
		})
		total += len(list)
		for i, c := range list {
			if !found[i] {
				survivors = append(survivors, fmt.Sprintf("%s/%s:%d: %s -> %s in %q", filepath.Base(filepath.Dir(file)), filepath.Base(file),
					c.line, text[c.start:c.end], c.to, strings.TrimSpace(around(text, c))))
			}
		}
	}
	return total, survivors
}

const (
	goldenSurvivors = "testdata/mutation/survivors.golden"
	unexplained     = "NOT EXPLAINED" // in place of the letter of a survivor that nobody has looked at
)

// A survivorList is the golden file: first the reasons, each with a letter, then
// after an empty line the survivors, each with the letter of its reason.
type survivorList struct {
	head    string
	reasons map[string]string // by letter
	letters map[string]string // by survivor
}

// readSurvivors reads the golden file.
func readSurvivors(t *testing.T) survivorList {
	text, err := os.ReadFile(goldenSurvivors)
	if err != nil {
		t.Fatal(err)
	}
	l := survivorList{reasons: map[string]string{}, letters: map[string]string{}}
	head, list, _ := strings.Cut(string(text), "\n\n")
	l.head = head
	for line := range strings.Lines(head) {
		if letter, reason, ok := strings.Cut(line, " = "); ok {
			l.reasons[letter] = strings.TrimSpace(reason)
		}
	}
	for line := range strings.Lines(list) {
		line = strings.TrimSpace(line)
		if i := strings.LastIndex(line, ": "); i >= 0 {
			l.letters[line[:i]] = line[i+2:]
		}
	}
	return l
}

// write writes the golden file again for the survivors that are left. Those that
// were in it keep their letters.
func (l survivorList) write(t *testing.T, survivors []string) {
	var b strings.Builder
	b.WriteString(l.head + "\n\n")
	for _, s := range survivors {
		letter, ok := l.letters[s]
		if !ok {
			letter = unexplained
		}
		fmt.Fprintf(&b, "%s: %s\n", s, letter)
	}
	if err := os.WriteFile(goldenSurvivors, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
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
