package rowproof_test

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The two commands that the front page gives.
const (
	mainCommand = "go run ./cmd/rowproof check examples/saltmarsh-pullover.md"
	testCommand = "bash .ci/test"
)

// codeBlocks returns the fenced blocks of a Markdown text, in order.
func codeBlocks(text string) []string {
	var blocks []string
	for i, part := range strings.Split("\n"+text, "\n```") {
		if i%2 == 1 {
			_, block, _ := strings.Cut(part, "\n")
			blocks = append(blocks, block)
		}
	}
	return blocks
}

func TestReadmeBeginsWithTheJobAndTwoCommands(t *testing.T) {
	readme := readFile(t, "README.md")
	title, rest, _ := strings.Cut(readme, "\n\n")
	if title != "# Rowproof" {
		t.Errorf("README.md begins with %q", title)
	}
	paragraph, _, _ := strings.Cut(rest, "\n\n")
	for _, word := range []string{"crochet pattern", "every row", "every size"} {
		if !strings.Contains(paragraph, word) {
			t.Errorf("the first paragraph of README.md does not say %q", word)
		}
	}
	blocks := codeBlocks(readme)
	if len(blocks) != 4 {
		t.Fatalf("README.md has %d code blocks, want 4: two commands, a pattern and what comes out", len(blocks))
	}
	if blocks[0] != mainCommand || blocks[1] != testCommand {
		t.Errorf("README.md gives the commands %q and %q, want %q and %q", blocks[0], blocks[1], mainCommand, testCommand)
	}
	if n := strings.Count(blocks[2], "\n") + 1; n != 6 {
		t.Errorf("the pattern in README.md has %d lines, want 6", n)
	}
}

// TestCIRunsTheTestCommandAlone holds .ci/run to the command of the README.
func TestCIRunsTheTestCommandAlone(t *testing.T) {
	var got []string
	for _, line := range strings.Split(readFile(t, ".ci/run"), "\n") {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			got = append(got, line)
		}
	}
	want := []string{"set -euo pipefail", `cd "$(dirname "$0")/.."`, testCommand}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf(".ci/run runs\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestContributingTakesThreeCommands(t *testing.T) {
	blocks := codeBlocks(readFile(t, "CONTRIBUTING.md"))
	if len(blocks) == 0 {
		t.Fatal("CONTRIBUTING.md has no commands")
	}
	lines := strings.Split(blocks[0], "\n")
	if len(lines) != 3 || !strings.HasPrefix(lines[0], "git clone ") || lines[2] != testCommand {
		t.Errorf("CONTRIBUTING.md gives %q; want a clone, a cd and %q", lines, testCommand)
	}
}

var markdownLink = regexp.MustCompile(`\]\(([^)#:]+)(?:#[^)]*)?\)`)

// TestLinksLead follows the links between the documents of the project.
func TestLinksLead(t *testing.T) {
	for name, text := range projectFiles(t) {
		if filepath.Ext(name) != ".md" || strings.Contains(name, "testdata"+string(filepath.Separator)+"script") {
			continue
		}
		for _, link := range markdownLink.FindAllSubmatch(text, -1) {
			if _, err := os.Stat(filepath.Join(filepath.Dir(name), string(link[1]))); err != nil {
				t.Errorf("%s links to %s: %v", name, link[1], err)
			}
		}
	}
}

// ownMachine finds absolute paths of somebody's machine.
var ownMachine = regexp.MustCompile("(?:^|[\\s\"'`(=:,])/(?:home|root|tmp|work|Users|mnt)/[A-Za-z0-9_.]")

// TestNoPathOfAMachine keeps the project standing on its own: it names no
// place that exists on one machine alone.
func TestNoPathOfAMachine(t *testing.T) {
	for name, text := range projectFiles(t) {
		for i, line := range bytes.Split(text, []byte("\n")) {
			if found := ownMachine.Find(line); found != nil {
				t.Errorf("%s:%d names the path %q of one machine", name, i+1, bytes.TrimSpace(found))
			}
		}
	}
}

// TestOwnMachine shows that the search finds what it should and no more.
func TestOwnMachine(t *testing.T) {
	for text, want := range map[string]bool{
		"see /" + "home/ann/pattern.md":  true,
		"`/" + "tmp/x`":                  true,
		"example.com/home/pattern":       false,
		"docs/sources.md":                false,
		"https://example.com/work/a.pdf": false,
	} {
		if got := ownMachine.MatchString(text); got != want {
			t.Errorf("%q: found %v, want %v", text, got, want)
		}
	}
}

// projectFiles returns every file of the project that holds text.
func projectFiles(t *testing.T) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if d.Name() == ".git" || d.Name() == "rapid" || d.Name() == "fuzz" {
				return filepath.SkipDir
			}
			return nil
		}
		if !d.Type().IsRegular() {
			return nil
		}
		data, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		if !bytes.ContainsRune(data[:min(len(data), 8000)], 0) {
			files[name] = data
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}
