package scaling_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

const gram = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  pot: {kind: vessel, closure: vented, capacity: 100 mL, material: PTFE, vent: 6 mm, cooling: {kind: jacket, ` +
	`temperature: 0 degC, ua: 0.5 W/K, ` + flows + `}}
  kept: {kind: bottle, closure: closed, capacity: 1 L, keep: true}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 20 mL}], temperature: 10 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 10 degC}
  - {do: hold, in: pot, time: 24 h, temperature: 10 degC}
`

func mass(g float64) quantity.Value { return quantity.Of(g, "g", quantity.Mass) }

func newCase(t testing.TB, yaml string) route.Case {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(yaml))
	if err != nil || r == nil {
		t.Fatalf("%v %v", err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// ladders are those that tests have climbed: several look at the same one. Nobody
// changes what he gets.
var ladders sync.Map

func grow(t testing.TB, yaml string, from, to float64, f scaling.Follow) *scaling.Growth {
	t.Helper()
	key := fmt.Sprint(yaml, from, to, f)
	if g, ok := ladders.Load(key); ok {
		return g.(*scaling.Growth)
	}
	g, err := scaling.Grow(newCase(t, yaml), mass(from), mass(to), f)
	if err != nil {
		t.Fatal(err)
	}
	ladders.Store(key, g)
	return g
}

// 3.0 mol of hydrogen a mol of 194.605 g, 24.4654 L a mol; 760 kJ a mol.
func TestRungsGrowAsTheBatch(t *testing.T) {
	long.Only(t)
	g := grow(t, gram, 1, 1000, scaling.Follow{})
	if len(g.Rungs) != 10 {
		t.Fatalf("%d rungs over three decades", len(g.Rungs))
	}
	for i := range g.Rungs {
		r := &g.Rungs[i]
		x := r.Batch.In("g")
		if want := math.Pow(1000, float64(i)/9); !nearly.Share(x, want, 1e-9) {
			t.Errorf("rung %d is %g g, want %g", i, x, want)
		}
		for name, want := range map[string]float64{"gas.hydrogen.total": 0.377155 * x, "heat.etch.total": 3.90535 * x,
			"heat.etch.per_gram": 3.90535, "fluoride.hf_strength": 10} {
			f, ok := r.Worst(name, "")
			if !ok || !nearly.Share(f.Value.V, want, 0.001) {
				t.Errorf("%g g: %s is %v (there %v), want %g", x, name, f.Value.V, ok, want)
			}
		}
	}
}

// A rung is what the route itself gives at that batch, and no quick version; its
// dangerous ends are never better than those of a review of that batch.
func TestARungIsTheRouteAtThatBatch(t *testing.T) {
	long.Only(t)
	c := newCase(t, gram)
	g := grow(t, gram, 1, 1000, scaling.Follow{})
	for _, i := range long.Some([]int{0, 2, len(g.Rungs) - 1}, 3, 1) {
		r := &g.Rungs[i]
		again, err := route.NewCase(c.Route.Scaled(r.Batch), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		again.Brief = true
		rv, err := hazards.Make(again)
		if err != nil {
			t.Fatal(err)
		}
		want := map[string]figure.Figure{}
		for _, f := range rv.Figures {
			want[f.ID.String()] = f
		}
		for k := range r.Figures {
			f := &r.Figures[k]
			w, ok := want[f.ID.String()]
			if !ok {
				continue // a trace, which a review leaves out
			}
			if x, y := f.Value.V, w.Value.V; !nearly.Alike(x, y, 1e-9) {
				t.Errorf("%g g: %s is %v, the route says %v", r.Batch.In("g"), f.ID.String(), x, y)
			}
			q, _ := figure.Lookup(f.Quantity)
			x, y := f.Danger().V, w.Danger().V
			if q.Danger == figure.Low {
				x, y = -x, -y
			}
			if hazards.Wanted(f) && (x < y-0.01*math.Abs(y) || math.IsNaN(y) && !math.IsNaN(x)) {
				t.Errorf("%g g: the dangerous end of %s is %v, a review has %v", r.Batch.In("g"), f.ID.String(), f.Danger().V,
					w.Danger().V)
			}
		}
	}
}

// Where a finding turns, by hand. Cooling 10 K above its coolant at a UA that stays
// as it is follows n q UA dT: 835 kJ/mol (the high end) in 600 s by 0.5 W/K and
// 10 K is 600*0.5*10/835e3 mol of 194.605 g = 0.699 g, and ten times the UA ten
// times the batch. More than the films of the wetted wall can pass is no such UA.
func TestWhereTheAdditionIsOutgrown(t *testing.T) {
	long.Only(t)
	type outgrown struct {
		ua   string
		want float64
	}
	rows := []outgrown{{"0.5 W/K", 0.699}, {"5 W/K", 6.99}, {"2 W/K", 2.796}}
	for _, x := range long.Some(rows, 1, 1) {
		ua, want := x.ua, x.want
		g := grow(t, strings.Replace(gram, "0.5 W/K", ua, 1), want/10, want*10, scaling.Follow{})
		found := false
		for _, c := range g.Crossings {
			if c.ID().String() != "heat.addition_time.required@2+written_over" || c.Turns != figure.Exceeds {
				continue
			}
			found = true
			if !nearly.Share(c.Grams, want, 0.002) {
				t.Errorf("%s: outgrown at %g g, want %g", ua, c.Grams, want)
			}
		}
		if !found {
			t.Errorf("%s: the addition is never outgrown", ua)
		}
	}
}

// A crossing lies where a rung below and one above say that it does: just below it
// the verdict is what it was, just above it has turned. The demonstration with its
// site is at the edge of a runaway, where a figure stands on one corner of the data
// at one size and on another at the next.
func TestCrossingsAreWhereTheyAre(t *testing.T) {
	long.Only(t)
	whole, site := demonstration(t), demoSite(t)
	whole.Site = site
	type ladder struct {
		name     string
		c        route.Case
		from, to float64
		each     int
	}
	list := []ladder{{"a gram", newCase(t, gram), 0.1, 10000, 3}, {"the demonstration", whole, 4, 40, 5}}
	if !long.Form() {
		list[0].to, list[0].each = 300, 3
	}
	for _, x := range long.Some(list, 1, 1) {
		g, err := scaling.Grow(x.c, mass(x.from), mass(x.to), scaling.Follow{})
		if err != nil {
			t.Fatal(err)
		}
		if len(g.Crossings) < 10 {
			t.Fatalf("%s: only %d crossings", x.name, len(g.Crossings))
		}
		last, n := 0.0, 0
		for i := range g.Crossings {
			at := &g.Crossings[i]
			if at.Grams < last {
				t.Errorf("%s: %s out of order", x.name, at.ID())
			}
			last = at.Grams
			if at.Already || at.Turns == figure.UnknownVerdict || i%x.each != 0 {
				continue
			}
			turnsAt(t, x.c, at)
			n++
		}
		if n < 3 {
			t.Errorf("%s: %d crossings were looked at", x.name, n)
		}
	}
}

// turnsAt reviews a route two in a hundred below and above a crossing.
func turnsAt(t *testing.T, c route.Case, x *scaling.Crossing) {
	t.Helper()
	for grams, want := range map[float64]bool{x.Grams * 0.98: x.Back, x.Grams * 1.02: !x.Back} {
		k, err := route.NewCase(c.Route.Scaled(mass(grams)), c.Site, nil)
		if err != nil {
			t.Fatal(err)
		}
		k.Brief = true
		rv, err := hazards.Make(k)
		if err != nil {
			t.Fatal(err)
		}
		for i := range rv.Findings {
			f := &rv.Findings[i]
			if f.ID() != x.ID() {
				continue
			}
			if is := f.Verdict == figure.Exceeds || x.Turns == figure.Near && f.Verdict == figure.Near; is != want {
				t.Errorf("%s turns to %v at %g g, and a review of %g g says %v", x.ID(), x.Turns, x.Grams, grams, f.Verdict)
			}
		}
	}
}

func demonstration(t *testing.T) route.Case {
	t.Helper()
	text, err := os.ReadFile("../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return newCase(t, string(text))
}

func demoSite(t *testing.T) *route.Site {
	t.Helper()
	f, err := os.Open("../testdata/routes/site-demo.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	s, problems, err := route.LoadSite("site-demo.yaml", f)
	if err != nil || s == nil {
		t.Fatal(problems, err)
	}
	return s
}

func exponent(t *testing.T, g *scaling.Growth, quantity string) float64 {
	t.Helper()
	for _, e := range g.Exponents() {
		if e.Quantity == quantity {
			return e.Fitted
		}
	}
	t.Fatalf("no exponent of %s", quantity)
	return 0
}

// Similar vessels: at a fixed time of addition the heat a vessel loses per kg falls
// as n^(-1/3), and gas through the surface grows as n^(1/3); with the addition
// stretched to what the cooling follows, at constant U and difference, the velocity
// does not change with size, and the time grows as n^(1/3) (geometry).
func TestExponents(t *testing.T) {
	long.Only(t)
	similar := strings.Replace(gram, ", ua: 0.5 W/K", "", 1) // U of the wall, which stays
	similar = strings.Replace(similar, "material: PTFE,", "material: PTFE, wall: 3 mm,", 1)
	type ladder struct {
		name, yaml string
		from       float64
		follow     scaling.Follow
		tolerance  float64
		want       map[string]float64
	}
	list := []ladder{
		{"fixed addition", similar, 10, scaling.Follow{}, 0.005, map[string]float64{"gas.hydrogen.total": 1,
			"heat.adiabatic_rise": 0, scaling.Removal: -1.0 / 3, "gas.superficial_velocity": 1.0 / 3,
			"heat.addition_time.required": 1.0 / 3, "heat.cooling.required": 1}},
		{"a UA that follows", gram, 10, scaling.Follow{Cooling: true}, 1e-6, map[string]float64{scaling.Removal: -1.0 / 3,
			"heat.addition_time.required": 1.0 / 3}},
		{"stretched addition", similar, 100, scaling.Follow{Addition: true}, 0.005, map[string]float64{
			"gas.superficial_velocity": 0, "gas.hydrogen.peak_rate.during_addition": 2.0 / 3, "heat.cooling.required": 2.0 / 3}},
	}
	for _, x := range long.Some(list, 2, 1) {
		g := grow(t, x.yaml, x.from, 10000, x.follow)
		for q, want := range x.want {
			if got := exponent(t, g, q); !nearly.To(got, want, x.tolerance) {
				t.Errorf("%s: %s grows with the power %g, want %g", x.name, q, got, want)
			}
		}
	}
}

// With containers from the list, the vessel is the next size up, and one that is
// kept stays.
func TestVesselsFromTheList(t *testing.T) {
	long.Only(t)
	g := grow(t, gram, 1, 100, scaling.Follow{Vessel: true})
	for i, want := range map[int]string{0: "100 mL PTFE", len(g.Rungs) - 1: "10 L PTFE-lined steel"} {
		if got := g.Rungs[i].Vessel(); got != want {
			t.Errorf("rung %d in %q, want %q", i, got, want)
		}
	}
}

// One large batch beside ten: what adds up is the same, a flow is a tenth.
func TestSplit(t *testing.T) {
	long.NotShort(t)
	g := grow(t, gram, 1, 1000, scaling.Follow{})
	s, err := g.Split(10)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, r := range s.Rows {
		switch r.Quantity {
		case "gas.hydrogen.total", "heat.etch.total", "fluoride.hf_equivalent":
			seen++
			if !nearly.Share(r.All, r.Large.Danger().V, 1e-9) {
				t.Errorf("%s: %g in one, %g in ten", r.Quantity, r.Large.Danger().V, r.All)
			}
		case "gas.hydrogen.peak_rate.during_addition":
			seen++
			if !nearly.Share(10*r.One.Danger().V, r.Large.Danger().V, 1e-6) {
				t.Errorf("flow %g in one, %g in each of ten", r.Large.Danger().V, r.One.Danger().V)
			}
		}
	}
	if seen != 4 {
		t.Errorf("%d of four rows", seen)
	}
	if _, err := g.Split(1); err == nil {
		t.Error("one pot is no split")
	}
}

// While a finding is not known, nothing is said of the first limit.
func TestWithheld(t *testing.T) {
	long.Only(t)
	g := grow(t, strings.Replace(gram, ", vent: 6 mm", "", 1), 0.001, 0.01, scaling.Follow{})
	if !g.NotKnown() {
		t.Error("without a vent bore everything is known")
	}
	found := false
	for _, id := range g.Withheld {
		found = found || strings.HasPrefix(id.String(), "gas.vent.bore_required")
	}
	if !found {
		t.Errorf("the vent is not among %q", g.Withheld)
	}
}

func TestGrowRefuses(t *testing.T) {
	c := newCase(t, gram)
	for _, tt := range [][2]float64{{10, 10}, {10, 1}, {0, 10}, {math.NaN(), 10}, {1e-6, 1e4}} {
		if _, err := scaling.Grow(c, mass(tt[0]), mass(tt[1]), scaling.Follow{}); err == nil {
			t.Errorf("from %g to %g g is no ladder", tt[0], tt[1])
		}
	}
	bare := newCase(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: "+
		"vessel, closure: vented}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 10 mL}], temperature: 20 degC}\n")
	if _, err := scaling.Grow(bare, mass(1), mass(10), scaling.Follow{}); err == nil {
		t.Error("a route without powder has no batch")
	}
}
