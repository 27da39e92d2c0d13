package review

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/reports/aid"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

var measureNames = [...]string{"hf_strength", "hf_volume", "tmaoh_strength", "powder_mass"}

// Every row has a source, a known status, words for its agent and part, and
// bounds on measures that are measured; the rows of one part rise.
func TestProtectionRows(t *testing.T) {
	known := []string{"read", "memory", "read / memory"}
	last := map[string]float64{}
	for _, r := range protectionRules() {
		if r.source == "" || !slices.Contains(known, r.status) || !words.Has("worn."+r.agent) || !words.Has("part."+r.part) ||
			r.item == "" {
			t.Errorf("%+v", r)
		}
		for _, c := range r.when {
			if measureUnit[c.measure] == "" || !words.Has("measure."+c.measure) || !strings.HasPrefix(c.measure, r.agent) {
				t.Errorf("%s: no measure of %s", r.condition, r.agent)
			}
			key := r.agent + r.part + c.measure
			if old, ok := last[key]; ok && c.value <= old {
				t.Errorf("%s does not rise above %g", r.condition, old)
			}
			last[key] = c.value
		}
		if r.part == "hands" && r.material == "" {
			t.Errorf("gloves without a material: %+v", r)
		}
	}
	for _, r := range aid.SpillRows() {
		if r.Use != "never" && r.Use != "trained" || r.What == "" || r.Why == "" || r.Source == "" || r.Status == "" {
			t.Errorf("%+v", r)
		}
	}
}

// The bands at and beside their edges: necessary items of the design's table,
// from 1, 10 and above 50 wt% of HF, from 100 mL, 1 L and above 5 L, TMAOH from
// 1 wt%, powder above 0.1 g.
func TestProtectionBands(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		strength, volume float64
		want             int
	}{
		{0.99, 99, 1}, {1, 99, 2}, {0.99, 100, 2}, {9.9, 999, 2}, {10, 10, 3}, {0.1, 1000, 3}, {50, 5000, 3}, {50.1, 10, 4},
		{0.1, 5001, 4}, {nan, 10, 4}, {0.1, nan, 4}, {0, 0, 1},
	} {
		m := measures{"hf_strength": c.strength, "hf_volume": c.volume}
		if got := m.band("hf"); got != c.want {
			t.Errorf("%v: band %d, want %d", m, got, c.want)
		}
	}
	for _, c := range []struct {
		agent, name string
		v           float64
		want        int
	}{{"tmaoh", "tmaoh_strength", 0.9, 1}, {"tmaoh", "tmaoh_strength", 1, 2}, {"tmaoh", "tmaoh_strength", nan, 2},
		{"powder", "powder_mass", 0.1, 0}, {"powder", "powder_mass", 0.11, 1}, {"powder", "powder_mass", nan, 1}} {
		if got := (measures{c.name: c.v}).band(c.agent); got != c.want {
			t.Errorf("%s %g: band %d, want %d", c.name, c.v, got, c.want)
		}
	}
	if got := (measures{}).worn(); got != nil {
		t.Errorf("a route with nothing needs %v", got)
	}
}

// Each row is worn at some measures, and no other hides it for ever.
func TestEveryProtectionRowIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, s := range []float64{0.05, 0.5, 1, 5, 20, 50, 60} {
		for _, r := range (measures{"hf_strength": s, "hf_volume": 1, "tmaoh_strength": s, "powder_mass": s}).worn() {
			used[r.agent+r.part+r.condition] = true
		}
	}
	for _, r := range protectionRules() {
		if !used[r.agent+r.part+r.condition] {
			t.Errorf("never worn: %+v", r)
		}
	}
}

// Taking a number away never lowers a band and never takes a part off.
func TestUnknownNeverLowersProtection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := measures{}
		for _, n := range measureNames {
			if rapid.Bool().Draw(t, n+" there") {
				m[n] = rapid.Float64Range(0, 6000).Draw(t, n)
			}
		}
		for n := range m {
			less := measures{}
			for k, v := range m {
				less[k] = v
			}
			less[n] = math.NaN()
			for _, a := range agents {
				if less.band(a.name) < m.band(a.name) {
					t.Fatalf("%v without %s: band %d of %s, with it %d", m, n, less.band(a.name), a.name, m.band(a.name))
				}
			}
			for _, r := range m.worn() {
				if !slices.ContainsFunc(less.worn(), func(q protection) bool {
					return q.agent == r.agent && q.part == r.part &&
						q.band >= r.band
				}) {
					t.Fatalf("%v without %s loses %+v", m, n, r)
				}
			}
		}
	})
}

// The same from a route: the bands of every bundled route never fall when a
// capacity, a strength, a mass or the figure is taken out of the review.
func TestLessOfARouteNeverLowersProtection(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Bundled(t) {
		whole := from(draft.New(&r, draft.Options{})).measures()
		for i := range r.Case.Route.Places {
			checkLess(t, name, whole, r, func(x *route.Route) { x.Places[i].Capacity = quantity.Value{} })
		}
		for i := range r.Case.Route.Steps {
			for j := range r.Case.Route.Steps[i].What {
				checkLess(t, name, whole, r, func(x *route.Route) { x.Steps[i].What[j].Strength = quantity.Value{} })
			}
		}
		checkLess(t, name, whole, r, func(x *route.Route) {
			if x.Precursor != nil {
				x.Precursor.Mass = quantity.Value{}
			}
		})
		bare := r
		bare.Figures = slices.DeleteFunc(slices.Clone(r.Figures),
			func(f figure.Figure) bool { return f.Quantity == "fluoride.hf_strength" })
		notLower(t, name, whole, from(draft.New(&bare, draft.Options{})).measures())
	}
}

// checkLess takes something out of a copy of the route.
func checkLess(t *testing.T, name string, whole measures, r hazards.Review, take func(*route.Route)) {
	t.Helper()
	x := *r.Case.Route
	x.Places, x.Steps = slices.Clone(x.Places), slices.Clone(x.Steps)
	for i := range x.Steps {
		x.Steps[i].What = slices.Clone(x.Steps[i].What)
	}
	if x.Precursor != nil {
		p := *x.Precursor
		x.Precursor = &p
	}
	take(&x)
	r.Case.Route = &x
	notLower(t, name, whole, from(draft.New(&r, draft.Options{})).measures())
}

func notLower(t *testing.T, name string, whole, less measures) {
	t.Helper()
	for _, a := range agents {
		if less.band(a.name) < whole.band(a.name) {
			t.Errorf("%s: band of %s fell from %v to %v", name, a.name, whole, less)
		}
	}
}

// What is poured counts beside what it becomes. 1 mol/L of HF is below
// 20.006/997 by mass, since no solution of HF is lighter than water (density
// table, 25 degC); 49 wt% into water is still 49 wt% in the hand.
func TestPouredAcidCounts(t *testing.T) {
	of := quantity.Of
	acid, _ := chemicals.Library().Find("hydrofluoric acid")
	for _, c := range []struct {
		v    quantity.Value
		want float64
	}{{of(49, "wt%"), 49}, {of(1, "mol/L"), 2.00662}, {of(2, "wt%"), 4.91}, {quantity.Value{}, math.NaN()}} {
		r := fixture.Review()
		r.Case.Route.Steps[0].What = append(slices.Clone(r.Case.Route.Steps[0].What),
			route.Material{Substance: acid, Volume: of(5, "mL"), Strength: c.v})
		b := from(draft.New(&r, draft.Options{}))
		got := b.StrongestHF()
		if c.v.Can("mol/L") {
			got = b.PouredHF()
		}
		if !nearly.Alike(got, c.want, 1e-6) {
			t.Errorf("%s: %g, want %g", c.v.Text, got, c.want)
		}
	}
}

// A gas that a step gives as the route is written asks for an exhaust that copes with it and a
// detector; one that only a mistaken acid would give does not.
func TestAPoisonousGasIsVentilated(t *testing.T) {
	r := fixture.Review()
	r.Figures = append(r.Figures, figure.Figure{ID: figure.ID{Quantity: "gas.evolved.bound", Place: figure.Step(1),
		Agent: "chlorine", Case: figure.If("nitric_for_hydrochloric")}})
	if draft.New(&r, draft.Options{}).Tags.Has("poison_gas") {
		t.Error("the gas of a mistaken acid calls for an exhaust")
	}
	r.Walk.Evolved = []process.Evolved{{Step: 1, Place: "etch"}}
	if !draft.New(&r, draft.Options{}).Tags.Has("poison_gas") {
		t.Error("a gas that nobody names calls for nothing")
	}
}

// Equipment stands after every other order of safeguards.
func TestProtectionComesLast(t *testing.T) {
	r := fixture.Review()
	s := from(draft.New(&r, draft.Options{})).safeguards()
	seen, order := false, 0
	for _, bl := range s.Blocks {
		table, ok := bl.(document.Table)
		switch {
		case ok && slices.ContainsFunc(table.Rows, func(r []document.Cell) bool {
			return strings.HasPrefix(r[0].Text,
				"6. ")
		}):
			order = 6
		case ok && slices.ContainsFunc(table.Columns,
			func(c document.Column) bool { return c.Text == words.Of("protection.maker") }):
			seen = true
			if order != 6 {
				t.Errorf("%s stands before the last order", table.Caption)
			}
			for _, row := range table.Rows {
				if hands := row[0].Text == words.Of("part.hands"); row[3].Blank != hands {
					t.Errorf("the maker's time of %s: blank %v", row[0].Text, row[3].Blank)
				}
			}
		}
	}
	if !seen {
		t.Error("no equipment in the fixture")
	}
}
