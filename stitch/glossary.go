package stitch

import "strings"

// IsGlossary tells whether text is a line of an abbreviation list, which names
// what is known and defines nothing: "ch(s) = chain(s); sc = single crochet",
// "BLO - back loop only".
func (d *Dictionary) IsGlossary(text string, t Terms) bool {
	if len(text) > mostText {
		return false
	}
	any := false
	for _, item := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' || r == '|' }) {
		item = strings.Trim(item, "*_•· \t.-")
		if item == "" {
			continue
		}
		if !d.isEntry(item, t) && !d.areEntries(item, t) {
			return false
		}
		any = true
	}
	return any
}

// areEntries tells whether commas part an item into entries.
func (d *Dictionary) areEntries(item string, t Terms) bool {
	parts := strings.Split(item, ",")
	if len(parts) < 2 {
		return false
	}
	for _, part := range parts {
		if !d.isEntry(strings.TrimSpace(part), t) {
			return false
		}
	}
	return true
}

// isEntry tells whether item is one abbreviation with its meaning.
func (d *Dictionary) isEntry(item string, t Terms) bool {
	sep, width, _ := separator(item, 0)
	if sep <= 0 {
		return false
	}
	abbr := strings.TrimSpace(withoutPlural(strings.Trim(item[:sep], "*_ ")))
	meaning := strings.TrimSpace(withoutPlural(strings.Trim(item[sep+width:], "*_ .")))
	if abbr == "" || meaning == "" || strings.ContainsAny(meaning, ",:=[]{}*") || len(strings.Fields(meaning)) > 7 {
		return false
	}
	for _, name := range nameList(meaning) {
		if _, ok := d.find(name, US); ok {
			return true
		}
		if _, ok := d.find(name, UK); ok {
			return true
		}
	}
	if words[strings.ToLower(abbr)] {
		return plainName(meaning)
	}
	return len(abbr) <= 12 && len(abbr) < len(meaning) && plainName(meaning) && shortens(abbr, meaning)
}

// withoutPlural drops the "(s)" of "ch(s)".
func withoutPlural(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, "(es)", ""), "(s)", "")
}

// words is the abbreviations that name no stitch.
//
// Source: docs/sources.md T1, T2, T3, T5, T9, T18.
var words = wordSet("alt approx beg bet bl blo fl flo 3lo bp fp ca cb a b c cc mc ch- ch-sp cont ea foll g in cm m mm oz yd lp " +
	"pat patt pm sm prev rem rep rnd row rs ws sk miss sp st tch t-ch tog tbl yo yoh yrh mr beg-ch blp flp rb rf dc2 fo fasten")

// shortens tells whether abbr is made of letters of meaning, in order, the
// first its first: "pat" of "pattern".
func shortens(abbr, meaning string) bool {
	a, m := strings.ToLower(abbr), strings.ToLower(meaning)
	if a[0] != m[0] {
		return false
	}
	at := 0
	for i := 0; i < len(m) && at < len(a); i++ {
		for at < len(a) && (a[at] == '-' || a[at] == ' ' || a[at] == '.') {
			at++
		}
		if at < len(a) && a[at] == m[i] {
			at++
		}
	}
	return at == len(a)
}
