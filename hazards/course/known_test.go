package course_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
)

// A plan that is known gives the run it gave, and one that differs in anything is run.
func TestKnown(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: hold, in: pot, time: 2 h, temperature: 20 degC}\n")
	known := course.Know(b.Courses)
	for i := range b.Courses[0].Runs {
		want := &b.Courses[0].Runs[i].Vessel
		if got, err := known.Run(want.Plan); err != nil || got.Path != want.Path {
			t.Errorf("%s: run again: %v", want.Plan.Law, err)
		}
		other := want.Plan
		other.Start++
		if got, err := known.Run(other); err != nil || got.Path == want.Path || got.Plan.Start != other.Start {
			t.Errorf("%s: a warmer start gives the same run: %v", want.Plan.Law, err)
		}
	}
}

// However many plans come, only the newest are remembered.
func TestKnownForgets(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: hold, in: pot, time: 2 h, temperature: 20 degC}\n")
	known, p := course.Know(nil), b.Courses[0].Runs[0].Vessel.Plan
	run := func(p vessel.Plan) *vessel.Path {
		r, err := known.Run(p)
		if err != nil {
			t.Fatal(err)
		}
		return r.Path
	}
	first := run(p)
	for i := range 200 {
		q := p
		q.Start += float64(i+1) / 100
		run(q)
	}
	if run(p) == first {
		t.Error("the oldest of 201 runs is still remembered")
	}
}
