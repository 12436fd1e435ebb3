package main

import (
	"fmt"

	"rowproof/check"
	"rowproof/publish"
)

func explainCommand(sh *shell, args []string) int {
	words, bad := parseOptions(nil, args)
	switch {
	case bad == errHelp:
		return helpCommand(sh, []string{"explain"})
	case bad != nil:
		return sh.misuse("explain", bad.what, bad.hint)
	case len(words) > 1:
		return sh.misuse("explain", "one check at a time.", "")
	case len(words) == 0:
		if err := publish.ExplainAll(sh.out, sh.screen); err != nil {
			return sh.fail("explain", err)
		}
		return exitGood
	}
	var names []string
	for _, c := range check.Codes() {
		if c.Code == words[0] {
			if err := publish.Explain(sh.out, c, sh.screen); err != nil {
				return sh.fail("explain", err)
			}
			return exitGood
		}
		names = append(names, c.Code)
	}
	hint := "To see them all, type: rowproof explain"
	if near := nearest(words[0], names); near != "" {
		hint = fmt.Sprintf("Did you mean %q? %s", near, hint)
	}
	return sh.misuse("explain", fmt.Sprintf("no check is called %q.", words[0]), hint)
}
