package main

import (
	"fmt"
	"strings"
)

// An option is a flag of a command, with or without a value.
type option struct {
	name    string
	value   *string  // where its value goes; nil for a plain switch
	on      *bool    // set for a plain switch
	choices []string // the only values it takes, any case; nil is anything
}

// A misused error says what is wrong with a command line.
type misused struct{ what, hint string }

func (e *misused) Error() string { return e.what }

// errHelp is returned when help was asked for.
var errHelp = &misused{what: "help"}

// parseOptions reads args, options before, between or after the other words,
// and returns those words. After "--" all is taken as it stands.
func parseOptions(options []option, args []string) (words []string, err *misused) {
	for len(args) > 0 {
		arg := args[0]
		args = args[1:]
		switch {
		case arg == "--":
			return append(words, args...), nil
		case arg == "-h" || arg == "-help" || arg == "--help":
			return nil, errHelp
		case arg == "-" || !strings.HasPrefix(arg, "-"):
			words = append(words, arg)
		default:
			if args, err = takeOption(options, arg, args); err != nil {
				return nil, err
			}
		}
	}
	return words, nil
}

// takeOption sets the option named by arg and returns the args after it.
func takeOption(options []option, arg string, args []string) ([]string, *misused) {
	name, value, given := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	o := findOption(options, name)
	if o == nil {
		var names []string
		for _, o := range options {
			names = append(names, o.name)
		}
		e := &misused{what: fmt.Sprintf("there is no option %q.", dashed(name))}
		if near := nearest(name, names); near != "" {
			e.hint = fmt.Sprintf("Did you mean %q?", dashed(near))
		}
		return nil, e
	}
	if o.value == nil {
		if given {
			return nil, &misused{what: fmt.Sprintf("the option %q takes no value.", dashed(name))}
		}
		*o.on = true
		return args, nil
	}
	if !given {
		if len(args) == 0 {
			return nil, &misused{what: fmt.Sprintf("the option %q needs a value%s.", dashed(name), choose(o.choices))}
		}
		value, args = args[0], args[1:]
	}
	return args, o.set(value)
}

func (o *option) set(value string) *misused {
	if o.choices == nil {
		*o.value = value
		return nil
	}
	for _, c := range o.choices {
		if strings.EqualFold(c, value) {
			*o.value = c
			return nil
		}
	}
	return &misused{what: fmt.Sprintf("%q is not a value for %q%s.", value, dashed(o.name), choose(o.choices))}
}

func choose(choices []string) string {
	if len(choices) == 0 {
		return ""
	}
	return ": it is " + strings.Join(choices, " or ")
}

func findOption(options []option, name string) *option {
	for i := range options {
		if options[i].name == name {
			return &options[i]
		}
	}
	return nil
}

func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// nearest returns the name that differs from word in the fewest letters, if
// those are few, or "".
func nearest(word string, names []string) string {
	best, least := "", max(2, len(word)/3)+1
	if len(word) > 40 {
		return ""
	}
	for _, n := range names {
		if d := letters(strings.ToLower(word), n); d < least && d < len(n) {
			best, least = n, d
		}
	}
	return best
}

// letters returns how many letters to put in, leave out, replace or swap to
// turn a into b.
func letters(a, b string) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
