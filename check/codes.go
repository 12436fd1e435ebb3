package check

import (
	"embed"
	"slices"
	"strings"
)

//go:embed pages/*.txt
var pages embed.FS

// A CodeDoc explains a code: what the check looks for, and a pattern that shows
// it. The pages under docs/checks are made from these.
type CodeDoc struct {
	Code    string
	Title   string // what is wrong, in a line
	Why     string
	Example string // a pattern that has the slip
	Repair  string // the same pattern put right, "" when the right one depends on what was meant
}

// Codes lists every code with its page, in the order of the alphabet.
func Codes() []CodeDoc {
	entries, err := pages.ReadDir("pages")
	if err != nil {
		panic("internal error: the pages of the checks are missing: " + err.Error())
	}
	var list []CodeDoc
	for _, e := range entries {
		text, err := pages.ReadFile("pages/" + e.Name())
		if err != nil {
			panic("internal error: read page " + e.Name() + ": " + err.Error())
		}
		list = append(list, readPage(strings.TrimSuffix(e.Name(), ".txt"), string(text)))
	}
	slices.SortFunc(list, func(a, b CodeDoc) int { return strings.Compare(a.Code, b.Code) })
	return list
}

// readPage takes a page apart.
func readPage(code, text string) CodeDoc {
	doc := CodeDoc{Code: code}
	head, rest, _ := strings.Cut(text, "-- pattern --\n") // some slips fit no page
	doc.Title, doc.Why, _ = strings.Cut(head, "\n")
	doc.Why = strings.TrimSpace(doc.Why)
	doc.Example, doc.Repair, _ = strings.Cut(rest, "-- repaired --\n")
	return doc
}
