package check_test

import (
	"strings"
	"testing"

	"rowproof/diag"
)

// TestRepairsPutThePatternRight looks for repairs of the wrong cases; each that
// is offered for a number stands in the right case of the same name.
func TestRepairsPutThePatternRight(t *testing.T) {
	for _, tt := range []struct{ file, want string }{
		{"chain-m.txt", "Ch 82 (90, 98, 106)."},
		{"too-many.txt", "in next 2 sts"},
		{"left-of-split.txt", "next 28 (32) sts"},
		{"repeat-times.txt", "8 more times"},
		{"stated-count-xl.txt", "81 (89, 97, 105) sts"},
	} {
		r := run(t, "testdata/cases/wrong/"+tt.file)
		r.FindRepairs()
		found := errorsOf(r)
		if len(found) != 1 || !strings.Contains(found[0].Repair, tt.want) {
			t.Errorf("%s: repairs %q, want one with %q", tt.file, repairsOf(found), tt.want)
		}
	}
}

func repairsOf(list []diag.Finding) (repairs []string) {
	for _, f := range list {
		repairs = append(repairs, f.Repair)
	}
	return repairs
}

// TestNoRepairIsGuessed: a chain too many, or the first stitch a chain too near:
// both changes put the row right, so neither is offered.
func TestNoRepairIsGuessed(t *testing.T) {
	r := run(t, "testdata/cases/wrong/does-not-divide.txt")
	r.FindRepairs()
	found := errorsOf(r)
	if len(found) != 1 || found[0].Repair != "" {
		t.Errorf("repairs %q, want none", repairsOf(found))
	}
}
