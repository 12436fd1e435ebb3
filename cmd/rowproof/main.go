// Command rowproof proves written crochet patterns: it works every stitch of
// every row in every size and says what does not come out.
//
// It holds flags, files and exit statuses; the craft lives in the packages.
package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"

	"golang.org/x/term"

	"rowproof/publish"
)

// version is what "rowproof version" prints.
const version = "0.1.0"

// Exit statuses.
const (
	exitGood   = 0 // no error found
	exitErrors = 1 // errors found in the pattern
	exitMisuse = 2 // the file could not be read, or the command was misused
)

func main() {
	debug.SetGCPercent(400) // a command is over before tidying pays
	debug.SetMemoryLimit(512 << 20)
	os.Exit(newShell().run(os.Args[1:]))
}

// A shell is where a command runs: what it reads, and where it writes.
type shell struct {
	in       io.Reader
	out, err io.Writer
	screen   publish.Screen
}

func newShell() *shell {
	return &shell{in: os.Stdin, out: os.Stdout, err: os.Stderr, screen: screenOf(os.Stdout)}
}

// screenOf finds out the width of f and whether it shows colour. Colour is for
// terminals alone, and never when NO_COLOR is set or the terminal is dumb.
func screenOf(f *os.File) publish.Screen {
	fd := int(f.Fd())
	if !term.IsTerminal(fd) {
		return publish.Screen{}
	}
	width, _, err := term.GetSize(fd)
	if err != nil || width < 0 {
		width = 0
	}
	colour := os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	return publish.Screen{Width: width, Colour: colour}
}

// A command is one thing rowproof does.
type command struct {
	name string
	run  func(sh *shell, args []string) int
}

func commands() []command {
	return []command{
		{"check", checkCommand},
		{"read", readCommand},
		{"write", writeCommand},
		{"explain", explainCommand},
		{"help", helpCommand},
		{"version", versionCommand},
	}
}

// run carries out the command line and returns the exit status.
func (sh *shell) run(args []string) int {
	if len(args) == 0 {
		fmt.Fprint(sh.err, helpMain)
		return exitMisuse
	}
	name := args[0]
	switch name {
	case "-h", "-help", "--help":
		return helpCommand(sh, args[1:])
	case "-v", "-version", "--version":
		return versionCommand(sh, args[1:])
	}
	var names []string
	for _, c := range commands() {
		if c.name == name {
			return c.run(sh, args[1:])
		}
		names = append(names, c.name)
	}
	if looksLikeFile(name) {
		return sh.misuse("", fmt.Sprintf("%q is not a command.", name), "To check a pattern, type: rowproof check "+name)
	}
	hint := ""
	if near := nearest(name, names); near != "" {
		hint = fmt.Sprintf("Did you mean \"rowproof %s\"?", near)
	}
	return sh.misuse("", fmt.Sprintf("%q is not a command.", name), hint)
}

func looksLikeFile(name string) bool {
	if strings.ContainsAny(name, "./\\") {
		return true
	}
	_, err := os.Stat(name)
	return err == nil
}

// misuse says what is wrong with the command line and where help is.
func (sh *shell) misuse(command, what, hint string) int {
	fmt.Fprintf(sh.err, "rowproof%s: %s\n", spaced(command), what)
	if hint != "" {
		fmt.Fprintln(sh.err, hint)
	}
	help := "rowproof --help"
	if command != "" {
		help = "rowproof help " + command
	}
	fmt.Fprintf(sh.err, "For help, type: %s\n", help)
	return exitMisuse
}

func spaced(command string) string {
	if command == "" {
		return ""
	}
	return " " + command
}

// fail says why the work could not be done.
func (sh *shell) fail(command string, err error) int {
	fmt.Fprintf(sh.err, "rowproof %s: %v\n", command, err)
	return exitMisuse
}

func versionCommand(sh *shell, args []string) int {
	if len(args) > 0 {
		return sh.misuse("version", "version takes no options.", "")
	}
	fmt.Fprintln(sh.out, "rowproof", version)
	return exitGood
}
