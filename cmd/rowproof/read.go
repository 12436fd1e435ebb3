package main

import (
	"fmt"

	"rowproof/design"
	"rowproof/publish"
)

func readCommand(sh *shell, args []string) int {
	var asJSON bool
	file, code, ok := sh.oneFile("read", []option{{name: "json", on: &asJSON}}, args)
	if !ok {
		return code
	}
	data, err := sh.readPattern(file)
	if err != nil {
		return sh.fail("read", err)
	}
	d := design.Read(file, data)
	if asJSON {
		err = publish.ReadingJSON(sh.out, d)
	} else {
		err = publish.Reading(sh.out, d, sh.screen)
	}
	if err != nil {
		return sh.fail("read", fmt.Errorf("could not write the reading: %w", err))
	}
	return exitGood
}
