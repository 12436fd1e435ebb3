package main

import (
	"bytes"
	"errors"
	"fmt"

	"rowproof/check"
	"rowproof/design"
	"rowproof/notation"
	"rowproof/publish"
	"rowproof/stitch"
)

// writeOptions are the words given on the command line.
type writeOptions struct {
	size, terms, units, format, out string
	everyRow                        bool
}

func (o *writeOptions) list() []option {
	return []option{
		{name: "size", value: &o.size},
		{name: "terms", value: &o.terms, choices: []string{"US", "UK"}},
		{name: "units", value: &o.units, choices: []string{"in", "cm"}},
		{name: "format", value: &o.format, choices: []string{"text", "html"}},
		{name: "every-row", on: &o.everyRow},
		{name: "o", value: &o.out},
	}
}

func writeCommand(sh *shell, args []string) int {
	var o writeOptions
	file, code, ok := sh.oneFile("write", o.list(), args)
	if !ok {
		return code
	}
	if o.out != "" && file != "-" && sameFile(file, o.out) {
		return sh.misuse("write", fmt.Sprintf("%s is the pattern itself; it is never written over.", o.out), "Name another file after -o.")
	}
	data, err := sh.readPattern(file)
	if err != nil {
		return sh.fail("write", err)
	}
	d := design.Read(file, data)
	var page bytes.Buffer
	if o.format == "html" {
		err = publish.HTML(&page, d, o.publish())
	} else {
		err = publish.Text(&page, d, o.publish())
	}
	var unknown *publish.SizeError
	switch {
	case errors.As(err, &unknown):
		return sh.misuse("write", unknown.Error(), "")
	case err != nil:
		return sh.fail("write", err)
	}
	if err := sh.deliver(o.out, page.Bytes()); err != nil {
		return sh.fail("write", err)
	}
	sh.warn(d, file)
	return exitGood
}

func (o *writeOptions) publish() publish.Options {
	p := publish.Options{Size: o.size, EveryRow: o.everyRow}
	switch o.terms {
	case "US":
		p.Terms = stitch.US
	case "UK":
		p.Terms = stitch.UK
	}
	switch o.units {
	case "in":
		p.Units = notation.Inch
	case "cm":
		p.Units = notation.Centimetre
	}
	return p
}

// deliver writes the page to the file named, or to standard output.
func (sh *shell) deliver(name string, page []byte) error {
	if name != "" && name != "-" {
		return writeWhole(name, page)
	}
	if _, err := sh.out.Write(page); err != nil {
		return fmt.Errorf("could not write the pattern: %w", err)
	}
	return nil
}

// warn says on the side when the pattern that was written does not come out:
// nothing is printed unproved in silence.
func (sh *shell) warn(d *design.Design, file string) {
	r := check.Run(d)
	if n := r.Errors(); n > 0 {
		fmt.Fprintf(sh.err, "rowproof write: the pattern was written, but it does not come out: %d found. To see where, type: rowproof check %s\n", n, file)
		return
	}
	if n := r.Instructions.NotWorked; n > 0 {
		fmt.Fprintf(sh.err, "rowproof write: the pattern was written, but %d of its instructions could not be worked and proved. To see which, type: rowproof check %s\n", n, file)
	}
}
