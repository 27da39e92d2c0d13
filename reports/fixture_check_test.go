package reports

import (
	"testing"

	"etchbound/reports/fixture"
)

// The fixture is of use only while it is as awkward as it claims to be.
func TestFixtureIsAwkward(t *testing.T) {
	r := fixture.Review()
	for _, s := range r.Case.Route.Steps {
		for _, m := range s.What {
			if m.Substance == nil && !m.Precursor {
				t.Fatalf("step %d: the library does not know a substance of the fixture", s.Number)
			}
		}
	}
	if len(r.Findings) <= 8 || len(r.Holds) <= 6 || len(r.Unknown) <= 3 {
		t.Error("the fixture does not overfill page 1")
	}
}
