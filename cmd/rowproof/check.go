package main

import (
	"fmt"

	"rowproof/check"
	"rowproof/design"
	"rowproof/publish"
)

func checkCommand(sh *shell, args []string) int {
	var asJSON bool
	file, code, ok := sh.oneFile("check", []option{{name: "json", on: &asJSON}}, args)
	if !ok {
		return code
	}
	data, err := sh.readPattern(file)
	if err != nil {
		return sh.fail("check", err)
	}
	report := check.Run(design.Read(file, data))
	report.FindRepairs()
	if asJSON {
		err = publish.FindingsJSON(sh.out, report)
	} else {
		err = publish.Findings(sh.out, report, sh.screen)
	}
	if err != nil {
		return sh.fail("check", fmt.Errorf("could not write the findings: %w", err))
	}
	if report.Errors() > 0 {
		return exitErrors
	}
	return exitGood
}

// oneFile reads the options of a command that works on one file. When ok is
// false the command is over, with the exit status given.
func (sh *shell) oneFile(command string, options []option, args []string) (file string, code int, ok bool) {
	words, bad := parseOptions(options, args)
	switch {
	case bad == errHelp:
		return "", helpCommand(sh, []string{command}), false
	case bad != nil:
		return "", sh.misuse(command, bad.what, bad.hint), false
	case len(words) == 0:
		return "", sh.misuse(command, "no pattern file was named.", fmt.Sprintf("Name one, as in: rowproof %s pattern.md", command)), false
	case len(words) > 1:
		return "", sh.misuse(command, fmt.Sprintf("one pattern at a time; %d files were named.", len(words)), ""), false
	}
	return words[0], 0, true
}
