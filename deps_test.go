// Package rowproof_test holds the tests of the project as a whole: the order of
// its packages, its front page, and what may not stand in its files.
package rowproof_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// module is the path all imports of ours begin with.
const module = "rowproof"

// road holds the packages from the bottom up. A package may import those of
// the lines before its own, and no others.
var road = [][]string{
	{"diag", "measure"},
	{"stitch"},
	{"notation"},
	{"design"},
	{"fabric"},
	{"check"},
	{"publish"},
	{"cmd/rowproof"},
}

// place returns how far up the road a package stands, -1 for an unknown one.
func place(pkg string) int {
	return slices.IndexFunc(road, func(stage []string) bool { return slices.Contains(stage, pkg) })
}

// A goFile is a Go file of the project.
type goFile struct {
	name    string // with slashes, from the root
	pkg     string // folder, from the root; "." for the root
	outside bool   // a test in a package of its own, that sees only what is exported
	imports []string
}

func goFiles(t *testing.T) []goFile {
	t.Helper()
	var files []goFile
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || name != "." && strings.HasPrefix(d.Name(), ".")) {
			return filepath.SkipDir
		}
		if d.IsDir() || filepath.Ext(name) != ".go" {
			return nil
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		f := goFile{name: filepath.ToSlash(name), outside: strings.HasSuffix(parsed.Name.Name, "_test")}
		f.pkg = path.Dir(f.name)
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			f.imports = append(f.imports, imported)
		}
		files = append(files, f)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// broken says what is wrong with a file's imports, "" for nothing.
func broken(f goFile) string {
	here := place(f.pkg)
	if f.pkg == "." && f.outside {
		return "" // tests of the whole may look at all of it
	}
	if here < 0 {
		return "stands in the folder " + f.pkg + ", which has no place on the road; add it to deps_test.go and ARCHITECTURE.md"
	}
	if f.outside {
		return "" // a test from outside may look down on its package from further up
	}
	for _, imported := range f.imports {
		ours, found := strings.CutPrefix(imported, module+"/")
		if !found || ours == f.pkg {
			continue
		}
		switch there := place(ours); {
		case there < 0:
			return "imports " + imported + ", which has no place on the road"
		case there >= here:
			return "imports " + imported + ", against the road"
		}
	}
	return ""
}

func TestImportsGoOneWay(t *testing.T) {
	files := goFiles(t)
	seen := map[string]bool{}
	for _, f := range files {
		seen[f.pkg] = true
		if problem := broken(f); problem != "" {
			t.Errorf("%s %s", f.name, problem)
		}
	}
	for _, stage := range road {
		for _, pkg := range stage {
			if !seen[pkg] {
				t.Errorf("%s is on the road and has no Go file", pkg)
			}
		}
	}
}

// TestBroken shows that the order is really held: each of these is refused.
func TestBroken(t *testing.T) {
	for _, tt := range []struct {
		name string
		file goFile
		ok   bool
	}{
		{"down the road", goFile{pkg: "check", imports: []string{"fmt", module + "/fabric"}}, true},
		{"up the road", goFile{pkg: "fabric", imports: []string{module + "/check"}}, false},
		{"beside it", goFile{pkg: "measure", imports: []string{module + "/diag"}}, false},
		{"an unknown folder", goFile{pkg: "util"}, false},
		{"an import of an unknown folder", goFile{pkg: "check", imports: []string{module + "/util"}}, false},
		{"a test from outside", goFile{pkg: "fabric", outside: true, imports: []string{module + "/check"}}, true},
		{"a program in the root", goFile{pkg: "."}, false},
	} {
		if got := broken(tt.file) == ""; got != tt.ok {
			t.Errorf("%s: allowed %v, want %v", tt.name, got, tt.ok)
		}
	}
}

// TestArchitectureNamesEveryFolder keeps the map and the land together.
func TestArchitectureNamesEveryFolder(t *testing.T) {
	text := readFile(t, "ARCHITECTURE.md")
	for _, stage := range road {
		for _, pkg := range stage {
			if !strings.Contains(text, "| `"+pkg+"/` |") {
				t.Errorf("ARCHITECTURE.md has no row for %s/", pkg)
			}
		}
	}
}

func readFile(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
