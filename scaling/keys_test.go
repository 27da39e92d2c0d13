package scaling

import (
	"testing"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/field"
)

// Every key that a change lists has a row that says by which rule it is judged, or why
// by none, and every row is of such a key.
func TestEveryKeyIsJudged(t *testing.T) {
	left := map[keyOf]judged{}
	for k, j := range judgedKeys() {
		left[k] = j
	}
	rules := map[string]bool{"": true}
	for _, r := range triggers() {
		rules[r.ID] = true
	}
	files := map[string][]field.Field{"route": route.Fields(), "site": route.SiteFields(), "limits": limit.Fields()}
	for file, fields := range files {
		for _, f := range fields {
			j, there := left[keyOf{file, f.Path}]
			delete(left, keyOf{file, f.Path})
			switch {
			case f.Kind == field.Map || f.Alone != "":
				if there {
					t.Errorf("%s: %s is never listed and has a row", file, f.Path)
				}
			case !there:
				t.Errorf("%s: %s has no row", file, f.Path)
			case !rules[j.rule] || !rules[j.mark]:
				t.Errorf("%s: %s: there is no rule %q or %q", file, f.Path, j.rule, j.mark)
			case j.how == judgedNot && j.why == "":
				t.Errorf("%s: %s is judged by no rule, and why is not said", file, f.Path)
			case (j.mark != "" || j.how == judgedStated) && f.Kind != field.Quantity:
				t.Errorf("%s: %s has no amount to be %s", file, f.Path, j.how)
			}
		}
	}
	delete(left, keyOf{"site", "*"}) // a site that only one of the two has
	for k := range left {
		t.Errorf("%s: %s is no key", k.file, k.path)
	}
}
