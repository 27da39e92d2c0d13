package course_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/bench"
	"etchbound/hazards/course"
	"etchbound/hazards/process"
	"etchbound/hazards/ranges"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// A gram of Ti3AlC2 is 1/194.605 mol, which gives 760 kJ and 3.0 mol of hydrogen a
// mol: 3.90535 kJ and 0.0154158 mol. It goes into 20 mL of a beaker of 250 mL.
func TestOneCourseOfAnEtch(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: hold, in: pot, time: 2 h, temperature: 20 degC}\n")
	if len(b.Courses) != 1 || len(b.Courses[0].Stages) != 2 {
		t.Fatalf("%d courses: %+v", len(b.Courses), b.Courses)
	}
	c := &b.Courses[0]
	for _, row := range []struct {
		name            string
		got, want, near float64
	}{
		{"heat, kJ", c.Heat.V, 3.90535, 1e-5}, {"hydrogen, mol", c.Gas.V, 0.0154158, 1e-5},
		{"heat of the etch, kJ", course.HeatOf(nil, &b.Walk.Etches[0]).V, 3.90535, 1e-5},
		{"liquid, mL", c.Liquid.V, 20, 1e-9}, {"space, mL", c.Space.V, 230, 0.01},
	} {
		if !nearly.Share(row.got, row.want, row.near) {
			t.Errorf("%s: %g, want %g", row.name, row.got, row.want)
		}
	}
	for i := range c.Stages {
		if n := c.Stages[i].Step.Number; n != i+2 {
			t.Errorf("stage %d is step %d", i, n)
		}
	}
}

// A step that brings something and then stands for a time is as warm as it is set: its bath is
// brought there (definition). While something goes in over a time the bath is as stated.
func TestWhatIsHeatedWithWhatItBringsIsAsWarmAsItIsSet(t *testing.T) {
	warm := strings.Replace(bench.Head, "{kind: none}", "{kind: water_bath, temperature: 20 degC, ua: 0.6 W/K}", 1)
	for _, row := range []struct {
		step string
		want float64
	}{
		{"intercalate, time: 2 h, temperature: 65 degC", 65},
		{"add, over: 2 h, temperature: 65 degC", 20},
		{"hold, time: 2 h, temperature: 65 degC", 65},
	} {
		what := ", what: [{substance: lithium chloride, mass: 1 g}]"
		if strings.HasPrefix(row.step, "hold") {
			what = ""
		}
		c := bench.CaseOf(t, warm+bench.Etch+"  - {do: hold, in: pot, time: 2 h, temperature: 20 degC}\n"+
			"  - {do: "+row.step+", in: pot"+what+"}\n")
		k, err := process.Go(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		all := course.Find(c, nil, &k, nil)
		if s := &all[0].Stages[len(all[0].Stages)-1]; s.Step.Number != 4 || !nearly.To(s.Coolant.V, row.want, 1e-9) {
			t.Errorf("%s: step %d stands in %v", row.step, s.Step.Number, s.Coolant)
		}
	}
}

// The azeotrope of hydrochloric acid, 20.2 wt%, boils at 108.6 degC (handbook), a
// little hydrofluoric acid where water does, 100 degC, both to the 2 K of the data;
// what has no acid with a vapour table is unknown.
func TestBoiling(t *testing.T) {
	for _, row := range []struct {
		what string
		want float64
	}{
		{"{substance: hydrochloric acid, strength: 20.2 wt%, volume: 20 mL}", 108.6},
		{"{substance: hydrofluoric acid, strength: 1 wt%, volume: 20 mL}", 100},
		{"{substance: sulfuric acid, strength: 20 wt%, volume: 20 mL}", math.NaN()},
	} {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: ["+row.what+"], temperature: 20 degC}\n")
		got, _ := course.Boiling(b.Case, nil, &b.Walk.Steps[0])
		if math.IsNaN(row.want) && !got.Unknown() || !math.IsNaN(row.want) && !nearly.To(got.V, row.want, 2) {
			t.Errorf("%s boils at %g degC, want %g", row.what, got.V, row.want)
		}
	}
}

// Whether a bath counts does not hang on how much still air takes, 5 to 12 W/m2/K: 20 mL wet
// 5 V/D = 0.003399 m2, and 0.025 W/K of a bath at 0 degC are 7.4 of each by hand. Nor do air and
// room tell anything where the wall always passes more; where it may pass less than 5 they do:
// 1/(1/300+0.025/0.1+1/300) = 3.9 W/m2/K of 25 mm of polypropylene, 17.6 of 10 mm of PTFE.
func TestABathCountsWhateverTheAirTakes(t *testing.T) {
	bath := func(ua string) route.Case {
		in := "{kind: water_bath, temperature: 0 degC" + ua + "}"
		return bench.CaseOf(t, strings.Replace(bench.Head, "{kind: none}", in, 1)+bench.Etch)
	}
	stage := func(c route.Case, w *working.Sheet) course.Stage {
		k, err := process.Go(c, w)
		if err != nil {
			t.Fatal(err)
		}
		return course.Find(c, w, &k, nil)[0].Stages[0]
	}
	c := bath(", ua: 0.025 W/K")
	air, _ := c.Store.Row("loss.still_air")
	for _, at := range []float64{air.Low, air.Value, air.High} {
		moved := c
		moved.Store = c.Store.With(map[int]float64{air.Index: at})
		if s := stage(moved, nil); !s.Bath || !nearly.To(s.UA.V, 0.025, 1e-12) || !nearly.To(s.Coolant.V, 0, 1e-12) {
			t.Errorf("air of %g: %v to %v", at, s.UA, s.Coolant)
		}
	}
	for _, row := range []struct {
		material string
		litres   float64
		reads    bool
	}{{"PTFE", 1, false}, {"polypropylene", 12, true}} {
		c, w := bath(""), working.NewSheet()
		p := &c.Route.Places[0]
		p.Material, p.Capacity = row.material, quantity.Of(row.litres, "L")
		stage(c, w)
		for _, id := range []datum.ID{"loss.still_air", "room.temperature"} {
			is := func(d chemicals.Datum) bool { return d.ID == id }
			if reads := slices.ContainsFunc(ranges.Used(c.Store, w), is); reads != row.reads {
				t.Errorf("%s of %g L: %s is read: %v", row.material, row.litres, id, reads)
			}
		}
	}
}
