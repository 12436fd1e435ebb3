package design

import "strings"

// nearest returns the word of list that name may be a slip for, "" when none
// is near.
func nearest(name string, list []string) string {
	name = cleanName(name)
	best, word := len(name)/3+1, ""
	if len(name) > 60 {
		return ""
	}
	for _, w := range list {
		c := cleanName(w)
		if len(c) > 60 {
			continue
		}
		d := slips(name, c)
		if d == 0 || len(name) > 3 && (strings.HasPrefix(c, name) || strings.HasPrefix(name, c)) {
			d = min(d, 1)
		}
		if d <= best && (word == "" || d < best) {
			best, word = d, w
		}
	}
	return word
}

// slips counts the letters to add, drop, change or swap to get from a to b.
func slips(a, b string) int {
	before := make([]int, len(b)+1)
	prev := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, prev, row = prev, row, before
	}
	return prev[len(b)]
}
