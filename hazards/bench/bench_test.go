package bench_test

import (
	"testing"

	"etchbound/hazards/bench"
)

// The steps walked are those asked for: a gram of powder goes into the pot in step 2.
func TestSteps(t *testing.T) {
	b := bench.Steps(t, bench.Etch)
	if n := len(b.Walk.Steps); n != 2 || b.Walk.Steps[0].Place != "pot" || len(b.Walk.Etches) != 1 {
		t.Errorf("%d steps, %d etches", n, len(b.Walk.Etches))
	}
	if len(b.Courses) != 1 || b.Courses[0].Stages[0].Done.Number != 2 {
		t.Errorf("courses %+v", b.Courses)
	}
}
