package stitch

import (
	"cmp"
	"slices"
)

// mostNear is how many near names are offered.
const mostNear = 3

// Near returns up to three stitch names that are spelled nearly like name, the
// nearest first, as abbreviations or full names in terms t.
func (d *Dictionary) Near(name string, t Terms) []string {
	var buf, other [mostKey]byte
	want, ok := key(&buf, name)
	if !ok || len(want) < 2 {
		return nil
	}
	limit := 2
	if len(want) < 5 {
		limit = 1
	}
	type near struct {
		name string
		far  int
	}
	var found []near
	for _, s := range d.stitches[1:] {
		for _, n := range s.namesIn(t) {
			if b, ok := key(&other, n); ok && len(b) > 0 {
				if far := distance(want, b, limit); far <= limit {
					found = append(found, near{n, far})
				}
			}
		}
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.far, b.far) })
	var out []string
	for _, f := range found {
		if len(out) < mostNear && !slices.Contains(out, f.name) {
			out = append(out, f.name)
		}
	}
	return out
}

// namesIn returns the names that Near may offer.
func (s *Stitch) namesIn(t Terms) [2]string {
	if t == UK {
		return [2]string{s.UK, s.UKName}
	}
	return [2]string{s.US, s.USName}
}

// distance is how many letters must be put in, left out, changed or swapped
// with their neighbour to make b from a, or limit+1 if more than limit.
func distance(a, b []byte, limit int) int {
	if len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	var rows [3][mostKey + 1]int
	for j := range len(b) + 1 {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		row, up, upper := &rows[i%3], &rows[(i+2)%3], &rows[(i+1)%3]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(up[j]+1, row[j-1]+1, up[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], upper[j-2]+1)
			}
		}
	}
	return rows[len(a)%3][len(b)]
}
