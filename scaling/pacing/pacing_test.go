package pacing_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/scaling/pacing"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// reviewed is the review of a bundled route, with some of its text replaced.
func reviewed(t *testing.T, name string, with ...string) hazards.Review {
	t.Helper()
	text, err := os.ReadFile("../../testdata/routes/" + name)
	if err != nil {
		t.Fatal(err)
	}
	out, err := hazards.Make(bench.CaseOf(t, strings.NewReplacer(with...).Replace(string(text))))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Ten grams in strong acid runs away as the route adds them; an addition is found that does
// not, it is the shortest as far as the search goes (an eighth less does not do), and one that is
// stopped and resumed never lets more wait than could bring the liquor to the limit.
func TestAnAdditionIsPaced(t *testing.T) {
	long.Only(t)
	r := reviewed(t, "hf-50-10g.yaml")
	all := pacing.Of(&r, math.NaN())
	if len(all) != 1 || all[0].Missing != nil {
		t.Fatalf("%d additions, %v", len(all), all)
	}
	a := all[0]
	by := map[pacing.Kind]pacing.Way{}
	for _, w := range a.Ways {
		by[w.Kind] = w
	}
	if w := by[pacing.Written]; !(w.Stays.Best > a.Limit) {
		t.Errorf("as written it stays at %g, with a limit of %g", w.Stays.Best, a.Limit)
	}
	w := by[pacing.Constant]
	if !w.Stays.Below(a.Limit) || !(w.Takes > 3600) {
		t.Errorf("the shortest even addition is %+v, with a limit of %g", w, a.Limit)
	}
	short := reviewed(t, "hf-50-10g.yaml", "over: 20 min", fmt.Sprintf("over: %.0f s", w.Takes*7/8),
		"time: 2 h", "time: 10 h")
	if as := pacing.Of(&short, math.NaN())[0].Ways[0]; as.Kind != pacing.Written || as.Stays.Below(a.Limit) {
		t.Errorf("an eighth shorter does as well: %+v, with a limit of %g", as, a.Limit)
	}
	if w := by[pacing.Resumed]; w.In != 1 || !w.Could.Below(a.Limit+0.1) {
		t.Errorf("stopped and resumed: %+v", w)
	}
	// By hand from the review: all of it unreacted is 25 degC and the rise.
	whole := a.Nothing(1)
	for _, f := range r.Figures {
		if f.ID.String() == "heat.mtsr@2" && !nearly.To(whole, f.Value.V, 1e-9) {
			t.Errorf("all in and nothing reacted: %g, in the review %g", whole, f.Value.V)
		}
	}
	if s := a.Stop; !(s.Pile < a.Limit) || !(s.Reads > s.Bare) || !(s.Above > a.Set) || !(s.Above < a.Limit) {
		t.Errorf("it is stopped by %+v", s)
	}
	if s := a.Stop; s.Share < 1 && !nearly.To(a.Nothing(s.Share), a.Limit, 0.01) {
		t.Errorf("%g of it piles up to %g", s.Share, a.Nothing(s.Share))
	}
	r.Leads = nil // nobody knows its dangerous end
	if all := pacing.Of(&r, math.NaN()); len(all) != 1 || all[0].Missing == nil || all[0].Ways != nil {
		t.Errorf("without its dangerous end: %+v", all)
	}
}

// Of a liquor whose boiling point is not held nothing is said but what is missing, unless a
// temperature is stated: it is held to that alone, as far as that is told.
func TestWhatIsNotKnownIsNotPaced(t *testing.T) {
	long.Only(t)
	r := reviewed(t, "bifluoride-1g.yaml")
	all, stated := pacing.Of(&r, math.NaN()), pacing.Of(&r, 70)
	if len(all) != 1 || len(stated) != 1 {
		t.Fatal("the addition is gone")
	}
	if a := all[0]; a.Missing == nil || a.Ways != nil || a.Open {
		t.Errorf("step %d: %v, %v", a.Step, a.Missing, a.Ways)
	}
	if a := stated[0]; a.Missing != nil || !a.Open || a.Limit != 70 || a.Of != pacing.Stated || len(a.Ways) == 0 {
		t.Errorf("step %d, below 70 degC: %v, %g, %v", a.Step, a.Missing, a.Limit, a.Ways)
	}
}

// Liquor that goes on to powder is no addition that what is seen could govern.
func TestWhatCannotBeGovernedIsNot(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [precursor], temperature: 20 degC}\n",
		"  - {do: add, in: pot, what: [{substance: HF, strength: 20 wt%, volume: 40 mL}], over: 30 min, "+
			"temperature: 20 degC, stirred: true}\n", "  - {do: hold, in: pot, time: 12 h, temperature: 20 degC}\n")
	onto, err := hazards.Make(b.Case)
	if err != nil {
		t.Fatal(err)
	}
	all := pacing.Of(&onto, math.NaN())
	if len(all) != 1 || !all[0].Onto {
		t.Fatalf("%d additions", len(all))
	}
	for _, w := range all[0].Ways {
		if w.Kind != pacing.Written && w.Kind != pacing.Constant {
			t.Errorf("liquor on to powder is %s", w.Kind)
		}
	}
}
