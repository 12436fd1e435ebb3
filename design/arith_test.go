package design

import "testing"

func TestExpressions(t *testing.T) {
	bound := map[string]int{"body": 81, "neck": 31, "back rows": 64, "v-neck": 5, "v": 100, "step 2": 7, "maker's ease": 3}
	isName := func(s string) bool { _, ok := bound[s]; return ok }
	value := func(s string) (int, bool) { n, ok := bound[s]; return n, ok }
	for _, tt := range []struct {
		text string
		want int
	}{
		{"body", 81}, {"Body", 81}, {"body + 1", 82}, {"body+1", 82}, {"body-1", 80}, {"body - neck", 50}, {"body-neck", 50},
		{"2 * body - 3", 159}, {"2 body - 3", 159}, {"(body + neck) / 2", 56}, {"(body − neck) ÷ 2 × 3", 75}, {"10 - 3 - 2", 5},
		{"24 / 4 / 2", 3}, {"2 + 3 * 4", 14}, {"-3 + body", 78}, {"back  rows / 2", 32}, {"v-neck + 1", 6}, {"v - neck", 69},
		{"step 2 + 1", 8}, {"maker's ease", 3}, {"2 (body + 1)", 164}, {"017", 17}, {"((1))", 1}, {"body – 1", 80},
	} {
		e, err := parseExpression(tt.text, isName)
		if err != nil {
			t.Errorf("%q: %s", tt.text, err.message)
			continue
		}
		if got, bad := e.work(value); bad != nil || got != tt.want {
			t.Errorf("%q = %d, %v; want %d", tt.text, got, bad, tt.want)
		}
	}
}

func TestExpressionErrors(t *testing.T) {
	none := func(string) bool { return false }
	for _, tt := range []struct {
		text  string
		place string // the text the error points at
	}{
		{"", ""}, {"body +", "+"}, {"* body", "*"}, {"(body", "("}, {"body)", ")"}, {"1.5", "."}, {"body $ 2", "$"}, {"99999999999999", "99999999999999"},
		{"body = 3", "="}, {"()", ")"}, {"2 3", "3"},
	} {
		e, err := parseExpression(tt.text, none)
		if err == nil {
			t.Errorf("%q was read as %+v; want an error", tt.text, e)
			continue
		}
		if got := tt.text[err.start:err.end]; got != tt.place || err.message == "" {
			t.Errorf("%q: the error points at %q, %q; want %q", tt.text, got, err.message, tt.place)
		}
	}
}

func TestDeepExpressionsEnd(t *testing.T) {
	deep := ""
	for range 100_000 {
		deep += "("
	}
	if _, err := parseExpression(deep, func(string) bool { return false }); err == nil {
		t.Error("a hundred thousand open brackets gave no error")
	}
}

func TestNearest(t *testing.T) {
	for _, tt := range []struct{ name, want string }{
		{"boddy", "body"}, {"bdoy", "body"}, {"nek", "neck"}, {"back row", "back rows"}, {"zzz", ""},
	} {
		if got := nearest(tt.name, []string{"body", "neck", "back rows"}); got != tt.want {
			t.Errorf("nearest(%q) = %q; want %q", tt.name, got, tt.want)
		}
	}
}
