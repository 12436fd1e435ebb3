package main

import (
	"fmt"
	"strings"
)

const helpMain = `Rowproof works a written crochet pattern stitch by stitch, in every size, and
says what does not come out before anyone picks up a hook.

  rowproof check PATTERN      work every row and list what does not come out
  rowproof read PATTERN       show how each line was understood
  rowproof write PATTERN      write the pattern out: one size, US or UK terms,
                              inches or centimetres, as text or a web page
  rowproof explain NAME       tell more of one check; without NAME, list them
  rowproof help COMMAND       tell more of one command
  rowproof version            print the version

PATTERN is a text file: the pattern as you would print it, Markdown or plain.
A - in its place reads what is piped in.

Start with:  rowproof check my-pattern.txt
`

var helpPages = map[string]string{
	"check": `rowproof check PATTERN [--json]

Works every stitch of every row in every size of the pattern, and lists what
does not come out: the line with the place marked, the counting size by size,
and what could be changed. At the end it says how many instructions were worked
stitch by stitch, how many to a length, and names each line that was not worked.

  --json   the same for other programs

The exit status is 0 when no error was found, 1 when there are errors, and 2
when the file could not be read.
`,
	"read": `rowproof read PATTERN [--json]

Shows each line of the pattern and how it was understood, in plain words. Words
that were not understood are named, so that you can see what was left out.

  --json   the same for other programs
`,
	"write": `rowproof write PATTERN [options]

Writes the pattern out again in your own words; only numbers, stitch names and
lengths are replaced.

  --size NAME         the numbers of one size, as in --size M
  --terms US|UK       in US or UK stitch names
  --units in|cm       lengths in inches or centimetres alone
  --every-row         each row written out, instead of "Rows 4-9: Rep Row 3."
  --format text|html  plain text, or a web page; text if nothing is said
  -o FILE             into FILE, whole or not at all; else it is shown here

The pattern file itself is never changed.
`,
	"explain": `rowproof explain [NAME]

Tells what one check looks for and why, and shows a pattern that fails it and
the same pattern put right. NAME stands at the right of a finding, as in
repeat-remainder. Without NAME it lists all checks.
`,
	"help":    "rowproof help [COMMAND]\n\nTells how a command is used.\n",
	"version": "rowproof version\n\nPrints the version.\n",
}

func helpCommand(sh *shell, args []string) int {
	if len(args) == 0 {
		fmt.Fprint(sh.out, helpMain)
		return exitGood
	}
	if page, ok := helpPages[args[0]]; ok {
		fmt.Fprint(sh.out, page)
		return exitGood
	}
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	hint := "The commands are: " + strings.Join(names, ", ")
	if near := nearest(args[0], names); near != "" {
		hint = fmt.Sprintf("Did you mean \"rowproof help %s\"?", near)
	}
	return sh.misuse("", fmt.Sprintf("there is no command %q.", args[0]), hint)
}
