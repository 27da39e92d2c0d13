package keeping

import (
	"math"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// vial is 20 mL of 5 mg/mL, under argon in a vial of 25 mL for 60 d at 25 degC.
const vial = `route: etchbound/1
title: vial
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 0.0972 g, impurities: none (certificate)}
places:
  pot: {kind: beaker, material: PTFE, closure: open, capacity: 250 mL, cooling: {kind: none}}
  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}
  vial: {kind: vial, material: glass, closure: closed, capacity: 25 mL}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: hold, in: pot, time: 24 h, temperature: 20 degC}
  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 8, retained: 1 mL/g}
  - {do: redisperse, in: pot, what: [{substance: water, volume: 19.9 mL}]}
  - {do: transfer, in: pot, into: vial}
  - {do: store, in: vial, time: 60 d, temperature: 25 degC, gas: argon}
`

func caseOf(t *testing.T, text string) route.Case {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(text))
	if err != nil || r == nil {
		t.Fatal(problems, err)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// vialWays are the ways of the vial, worked out once.
var vialWays = sync.OnceValues(func() ([]Way, error) {
	r, _, err := route.Load("check.yaml", strings.NewReader(vial))
	if err != nil || r == nil {
		return nil, err
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		return nil, err
	}
	return Of(c)
})

func find(t *testing.T, ways []Way, name string) *Way {
	t.Helper()
	for i := range ways {
		if ways[i].Condition == name {
			return &ways[i]
		}
	}
	t.Fatal(name)
	return nil
}

// Worked by hand: 0.024 a day of first order, a hundredth of it with 1 mg/mL of ascorbate,
// a fiftieth in brine, 6.6 to 7.3 times slower in the cold, and argon, which is there already, changes nothing.
func TestWaysOfAVial(t *testing.T) {
	long.NotShort(t)
	ways, err := vialWays()
	if err != nil {
		t.Fatal(err)
	}
	for name, days := range map[string]float64{AsWritten: 4.39, "argon": 4.39, "sodium_ascorbate": 439,
		"cold": 4.39 * 7.29, "tartaric_acid": 4.39 * 150, "polyphosphate": 4.39 * 30, "brine": 4.39 * 50} {
		w := find(t, ways, name)
		for i, share := range Losses {
			want := days * math.Log1p(-share) / math.Log1p(-0.1)
			if got := w.Days[i].V; !nearly.Share(got, min(want, 3650), 0.01) {
				t.Errorf("%s: %g d to %g, want %g", name, got, share, want)
			}
		}
	}
	// a day at 40 degC, 0.0842, and then 0.024 a day
	if w := find(t, ways, "warm_day"); !nearly.Share(w.Days[1].V, 1+(-math.Log1p(-0.2)-0.0842)/0.024, 0.02) {
		t.Errorf("after a day at 40 degC %g d to a fifth", w.Days[1].V)
	}
	for _, w := range ways {
		if !w.Why.IsZero() || w.Life == nil || w.Pressure == nil || !(w.Pressure.High().V > 0) {
			t.Errorf("%s: not told: %v", w.Condition, w.Why)
		}
	}
	if w := find(t, ways, "film"); !(w.Life.Value.V > find(t, ways, "dry").Life.Value.V) {
		t.Errorf("a film lasts %g d, powder %g", w.Life.Value.V, find(t, ways, "dry").Life.Value.V)
	}
	if a := find(t, ways, "sodium_ascorbate").Additives[0]; !nearly.To(a.Mass.V, 0.02, 1e-9) ||
		!nearly.Share(a.Own.V, 0.02/198.11*24465, 0.01) {
		t.Errorf("%g g of ascorbate with %g mL of its own, want 0.02 g and 2.5 mL", a.Mass.V, a.Own.V)
	}
	if w := find(t, ways, "vented"); !w.Supposed || w.Judged {
		t.Error("a vented vial has a pressure as it stands")
	}
	if got := find(t, ways, AsWritten); got.Verdict != figure.Exceeds {
		t.Errorf("as written: %v", got.Verdict)
	}
}

// A way is judged as a review of the changed route judges it: the same dangerous ends, the
// same verdict. Amounts are those of the batch, however the route was scaled.
func TestAWayIsWhatAReviewOfItSays(t *testing.T) {
	long.Only(t)
	c := caseOf(t, vial)
	ways, err := vialWays()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"ascorbate_cold", "isopropanol"} {
		w := find(t, ways, name)
		is, err := changed(c, w.Edits)
		if err != nil {
			t.Fatal(err)
		}
		is.Brief = true
		r, err := hazards.Make(is)
		if err != nil {
			t.Fatal(err)
		}
		figs := figure.NewSet(r.Figures)
		for _, f := range []*figure.Figure{w.Life, w.Pressure, w.Soon} {
			g := figs.Get(f.ID)
			if g == nil || !nearly.To(g.Value.V, f.Value.V, 0) || !nearly.To(g.Danger().V, f.Danger().V, 0) {
				t.Errorf("%s: %s is %v, in a review %v", name, f.ID, f, g)
			}
		}
	}
	twice := c
	twice.Route = c.Route.Scaled(c.Route.Precursor.Mass.Times(2))
	more, err := Of(twice)
	if err != nil {
		t.Fatal(err)
	}
	if got := find(t, more, "citric_acid"); got.Edits[0].To != find(t, ways, "citric_acid").Edits[0].To ||
		!nearly.Share(got.Additives[0].Mass.V, 2*find(t, ways, "citric_acid").Additives[0].Mass.V, 0.05) {
		t.Errorf("at twice the batch: %v, %v", got.Edits, got.Additives)
	}
}

// A curve goes through what is told of the end, rises with time, and of first order, by hand:
// 1-exp(-0.024 t).
func TestCurvesOverTheStore(t *testing.T) {
	long.NotShort(t)
	all, err := vialWays()
	if err != nil {
		t.Fatal(err)
	}
	ways := []Way{*find(t, all, AsWritten), *find(t, all, "warm_day"), *find(t, all, "vented")}
	Trace(ways)
	for _, w := range ways {
		n := len(w.Over)
		if n < len(moments) {
			t.Fatalf("%s: %d points", w.Condition, n)
		}
		for i := 1; i < n; i++ {
			if !(w.Over[i].Days > w.Over[i-1].Days && w.Over[i].Lost[0] > w.Over[i-1].Lost[0] &&
				w.Over[i].Pressure[0] > w.Over[i-1].Pressure[0]) {
				t.Errorf("%s falls at %g d", w.Condition, w.Over[i].Days)
			}
		}
		if !nearly.Share(w.Over[n-1].Pressure[0], w.Pressure.Value.V, 1e-9) {
			t.Errorf("%s ends at %g kPa, want %g", w.Condition, w.Over[n-1].Pressure[0], w.Pressure.Value.V)
		}
	}
	for _, p := range ways[0].Over {
		if !nearly.Share(p.Lost[0], -math.Expm1(-0.024*p.Days), 0.005) {
			t.Errorf("%g lost after %g d", p.Lost[0], p.Days)
		}
	}
	if TraceDrawn(all); find(t, all, "cold").Over == nil || find(t, all, "film").Over != nil {
		t.Error("a review draws other conditions than its table says")
	}
	if last := ways[1].Over[len(ways[1].Over)-1]; !nearly.To(last.Days, 61, 1e-9) {
		t.Errorf("a day and 60 d are %g d", last.Days)
	}
}

// A route that stores nothing has no way, and one that cannot be changed says why.
func TestWhatCannotBeKept(t *testing.T) {
	long.NotShort(t)
	open := vial[:strings.Index(vial, "  - {do: store")]
	if ways, err := Of(caseOf(t, open)); err != nil || len(ways) > 0 {
		t.Errorf("%d ways of nothing: %v", len(ways), err)
	}
	none := strings.Replace(vial, "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], "+
		"cycles: 8, "+
		"retained: 1 mL/g}\n", "", 1)
	ways, err := Of(caseOf(t, none))
	if err != nil || find(t, ways, "isopropanol").Why.Key != "keep.no_waste" {
		t.Errorf("no waste: %v", err)
	}
}

// A film that is sent stays a film on its way, and dried to powder it goes off sooner.
func TestAFilmStaysOne(t *testing.T) {
	film := strings.Replace(vial, "  - {do: store, in: vial,", "  - {do: dry, in: vial, temperature: 40 degC, "+
		"time: 24 h}\n  - {do: store, in: vial, form: film,", 1)
	ways, err := Of(caseOf(t, film))
	if err != nil {
		t.Fatal(err)
	}
	sent, powder := find(t, ways, "warm_day"), find(t, ways, "dry")
	if !strings.Contains(sent.Edits[0].To, "form: film") {
		t.Errorf("sent as %v", sent.Edits)
	}
	if !(powder.Life.Low().V < sent.Life.Low().V) {
		t.Errorf("as powder at the earliest %g d, as a film %g", powder.Life.Low().V, sent.Life.Low().V)
	}
}
