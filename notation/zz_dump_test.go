package notation

import (
	"fmt"
	"os"
	"rowproof/stitch"
	"strconv"
	"strings"
	"testing"
)

func TestZZDump(t *testing.T) {
	f := os.Getenv("NTFILE")
	if f == "" {
		t.Skip()
	}
	b, _ := os.ReadFile(f)
	opt := Options{}
	if os.Getenv("UK") != "" {
		opt.Terms = stitch.UK
	}
	opt.Sizes, _ = strconv.Atoi(os.Getenv("SIZES"))
	un, tot := 0, 0
	only := os.Getenv("ONLYUNREAD") != ""
	for _, l := range strings.Split(string(b), "\n") {
		if strings.TrimSpace(l) == "" {
			continue
		}
		if strings.HasPrefix(l, "## ") {
			if !only {
				fmt.Println(l)
			}
			continue
		}
		if strings.HasPrefix(l, "!") {
			for _, w := range strings.Fields(l[1:]) {
				switch {
				case w == "UK":
					opt.Terms = stitch.UK
				case w == "US":
					opt.Terms = stitch.US
				default:
					opt.Sizes, _ = strconv.Atoi(w)
				}
			}
			continue
		}
		tree := Parse(l, 0, opt)
		tot++
		u := ""
		for _, s := range tree.Unread {
			u += "  ??<" + l[s.Start:s.End] + ">"
		}
		if u != "" {
			un++
		}
		if !only || u != "" {
			fmt.Printf("%s\n      %s%s\n", l, tree, u)
		}
	}
	fmt.Println("lines", tot, "with unread", un)
}
