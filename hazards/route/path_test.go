package route_test

import (
	"testing"

	"etchbound/hazards/route"
)

// A path that At makes says its step and key again; what it did not make says neither.
func TestAPathSaysItsStep(t *testing.T) {
	for path, want := range map[string]struct {
		step int
		key  string
		ok   bool
	}{
		route.At(4, "over"):           {4, "over", true},
		"steps[2].what[1].strength":   {3, "what[1].strength", true},
		"places.pot.cooling.ice":      {0, "", false},
		"steps[2]":                    {0, "", false},
		"measured.impurities[0].mass": {0, "", false},
	} {
		step, key, ok := route.FromAt(path)
		if ok != want.ok || ok && (step != want.step || key != want.key) {
			t.Errorf("%s: %d, %q, %v", path, step, key, ok)
		}
	}
}
