package check

import (
	_ "embed"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"rowproof/diag"
)

// Codes of the opening text.
const (
	GaugeDiffers diag.Code = "gauge-differs" // the gauge is given twice, and not the same
	YardPair     diag.Code = "yard-pair"     // yards and metres side by side are not the same length
	FibreSum     diag.Code = "fibre-sum"     // the parts of a yarn do not make up the whole
	HookSize     diag.Code = "hook-size"     // a hook's millimetres and its US name are not the same hook
)

// materials holds the opening text against itself.
func materials(c *checker) {
	c.gauges()
	c.eachLine(c.yards)
	c.eachLine(c.fibres)
	c.eachLine(c.hooks)
}

// eachLine visits the lines of the file.
func (c *checker) eachLine(visit func(textLine)) {
	for at := 0; at < len(c.d.Source); {
		end := len(c.d.Source)
		if i := strings.IndexByte(c.d.Source[at:], '\n'); i >= 0 {
			end = at + i
		}
		visit(textLine{at, c.d.Source[at:end]})
		at = end + 1
	}
}

// at makes a finding for a part of a text line.
func (c *checker) at(line textLine, from, to int, code diag.Code, message, detail, repair string) {
	f := diag.Finding{Severity: diag.Error, Code: code, Span: diag.Span{Start: line.start + from, End: line.start + to},
		Message: message, Detail: detail, Repair: repair}
	if l := c.lineAt(f.Span.Start); l != nil {
		f.Piece = title(l)
	}
	c.add(f)
}

// gauges compares gauges given for the same stitch pattern.
func (c *checker) gauges() {
	for i, g := range c.d.Gauges {
		for _, h := range c.d.Gauges[:min(i, 50)] {
			if g.Pattern != h.Pattern && g.Pattern != "" && h.Pattern != "" {
				continue
			}
			if same(g.Stitches, float64(g.Width), h.Stitches, float64(h.Width)) && same(g.Rows, float64(g.Height), h.Rows, float64(h.Height)) {
				continue
			}
			c.add(diag.Finding{Severity: diag.Error, Code: GaugeDiffers, Span: g.Span, Also: []diag.Span{h.Span},
				Message: "The gauge is given twice, and not the same both times.",
				Detail:  fmt.Sprintf("%s\n%s", strings.TrimSpace(c.d.Source[h.Span.Start:h.Span.End]), strings.TrimSpace(c.d.Source[g.Span.Start:g.Span.End]))})
			return
		}
	}
}

// same tells whether two rates are the same, as far as both are given.
func same(a, over, b, under float64) bool {
	if a == 0 || b == 0 || over == 0 || under == 0 {
		return true
	}
	return math.Abs(a/over-b/under) < 0.02*a/over // 4 in and 10 cm are taken as one
}

// yardPair matches "145 m (159 yd)" and "159 yd [145 m]".
var yardPair = regexp.MustCompile(`(\d+)\s?(m|metres|meters|yd|yds|yards)\s?[(\[/]\s?(\d+)\s?(m|metres|meters|yd|yds|yards)\b`)

// yards holds yards against metres. Source: docs/sources.md, "Checks of the opening text": yards
// against metres": to 1 %, or half the rounding step if that is larger; numbers
// that are not rounded to fives are held to the whole yard or metre.
func (c *checker) yards(line textLine) {
	if !strings.Contains(line.text, "yd") && !strings.Contains(line.text, "yard") || !strings.ContainsAny(line.text, "([/") {
		return
	}
	for _, m := range yardPair.FindAllStringSubmatchIndex(line.text, -1) {
		a, _ := strconv.Atoi(line.text[m[2]:m[3]])
		b, _ := strconv.Atoi(line.text[m[6]:m[7]])
		first, second := line.text[m[4]:m[5]][0], line.text[m[8]:m[9]][0]
		if first == second {
			continue
		}
		want := float64(a) / 0.9144
		if first == 'y' {
			want = float64(a) * 0.9144
		}
		tolerance := 0.6 / 0.9144
		if b%5 == 0 || a%5 == 0 && first == 'y' {
			tolerance = max(2.5, 0.01*want)
		}
		if math.Abs(want-float64(b)) <= tolerance {
			continue
		}
		right := strconv.Itoa(int(math.Round(want)))
		c.at(line, m[6], m[7], YardPair, "Yards and metres stand side by side and are not the same length.",
			fmt.Sprintf("%s %s is %s %s", line.text[m[2]:m[3]], line.text[m[4]:m[5]], right, line.text[m[8]:m[9]]), right)
	}
}

// percent matches a part of a yarn: "60% cotton".
var percent = regexp.MustCompile(`(\d+)\s?% [a-z]`)

// fibres adds up the parts of a yarn.
func (c *checker) fibres(line textLine) {
	if !strings.Contains(line.text, "%") {
		return
	}
	list := percent.FindAllStringSubmatchIndex(line.text, -1)
	if len(list) == 0 || !fibreWord.MatchString(line.text) {
		return
	}
	sum, parts := 0, ""
	for i, m := range list {
		n, _ := strconv.Atoi(line.text[m[2]:m[3]])
		sum += n
		if i > 0 {
			parts += " + "
		}
		parts += strconv.Itoa(n)
	}
	if sum == 100 || sum%100 == 0 && sum > 0 {
		return
	}
	c.at(line, list[0][2], list[len(list)-1][3], FibreSum, fmt.Sprintf("The fibres of the yarn add up to %d%%, not 100%%.", sum), fmt.Sprintf("%s = %d", parts, sum), "")
}

var fibreWord = regexp.MustCompile(`(?i)cotton|wool|linen|acrylic|nylon|polyamide|viscose|silk|bamboo|alpaca|hemp|polyester|merino|mohair`)

// hookTable is the US letter and number of each hook.
//
//go:embed hooks.csv
var hookTable string

// hookName matches "4.5 mm (US 7)", "5 mm (H-8)", "H-8 (5 mm)".
var hookName = regexp.MustCompile(`(\d+(?:\.\d+)?)\s?mm\s?[(\[/]\s?(?:US\s?)?(?:size\s?)?([A-S](?:[-/]\d+(?:\.\d)?)?|\d+(?:\.\d)?)\s?[)\]]`)

// hooks holds a hook's millimetres against its US name.
func (c *checker) hooks(line textLine) {
	if !strings.Contains(line.text, "mm") {
		return
	}
	for _, m := range hookName.FindAllStringSubmatchIndex(line.text, -1) {
		mm, name := line.text[m[2]:m[3]], line.text[m[4]:m[5]]
		known, fits := hookFits(mm, name)
		if known && fits {
			continue
		}
		detail := "hooks of " + mm + " mm are called " + hookNames(mm)
		if !known {
			detail = "no US hook has " + mm + " mm"
		}
		c.at(line, m[2], m[5], HookSize, fmt.Sprintf("A %s mm hook is not a US %s.", mm, name), detail, "")
	}
}

// hookFits tells whether the table has hooks of so many millimetres, and one
// of that name among them.
func hookFits(mm, name string) (known, fits bool) {
	letter, num, both := strings.Cut(name, "-")
	for _, row := range strings.Split(hookTable, "\n")[1:] {
		f := strings.Split(row, ",")
		if len(f) < 4 || f[0] != strings.TrimSuffix(mm, ".0") || f[1]+f[2] == "" {
			continue
		}
		known = true
		switch {
		case both:
			fits = fits || strings.Contains(f[1], letter) && f[2] == num
		case name[0] >= 'A':
			fits = fits || strings.Contains(f[1], letter)
		default:
			fits = fits || f[2] == name
		}
	}
	return known, fits
}

// hookNames lists the US names of a hook.
func hookNames(mm string) string {
	var names []string
	for _, row := range strings.Split(hookTable, "\n")[1:] {
		if f := strings.Split(row, ","); len(f) > 3 && f[0] == strings.TrimSuffix(mm, ".0") && f[3] != "" {
			names = append(names, "US "+f[3])
		}
	}
	return strings.Join(names, " or ")
}
