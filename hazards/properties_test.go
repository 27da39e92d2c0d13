package hazards_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

func assess(t testing.TB, yaml string) hazards.Assessment {
	t.Helper()
	a := hazards.Assess(newCase(t, load(t, yaml)), nil)
	if a.Err != nil {
		t.Fatalf("%v\n%s", a.Err, yaml)
	}
	return a
}

// fataler lets a property use the helpers that take a test.
type fataler struct {
	testing.TB
	t     *rapid.T
	brief bool // its cases leave failures out
}

func (f fataler) Helper()                   {}
func (f fataler) Fatal(args ...any)         { f.t.Fatal(args...) }
func (f fataler) Fatalf(s string, a ...any) { f.t.Fatalf(s, a...) }

// costly is a property that reviews what it draws: a tenth of the draws outside of
// the long form.
func costly(t *testing.T, check func(tb testing.TB, t *rapid.T)) {
	t.Helper()
	long.Draws(t, 10)
	property(t, check)
}

func property(t *testing.T, check func(tb testing.TB, t *rapid.T)) {
	t.Helper()
	rapid.Check(t, func(rt *rapid.T) {
		// Failures are the most of the time of a review: they are part of one in six.
		brief := rapid.IntRange(0, 5).Draw(rt, "failures") > 0
		check(fataler{t, rt, brief}, rt)
	})
}

func byID(figs []figure.Figure) map[string]*figure.Figure {
	out := map[string]*figure.Figure{}
	for i := range figs {
		out[figs[i].ID.String()] = &figs[i]
	}
	return out
}

// Every element that goes in is found again, whatever the order of the steps.
func TestAccountCloses(t *testing.T) {
	property(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		a := assess(tb, yaml)
		for _, b := range a.Walk.Account {
			if !(b.Error <= 1e-9) && !(math.IsNaN(b.Error) && a.Walk.Error.Unknown()) {
				t.Fatalf("%s: %g in, %v out, error %g\n%s", b.Element, b.In, b.Out, b.Error, yaml)
			}
		}
	})
}

func TestFiguresAreNumbers(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		rv := review(tb, yaml)
		for i := range rv.Figures {
			f := &rv.Figures[i]
			if f.Value.Unknown() {
				continue
			}
			if v := f.Value.V; math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s is %v\n%s", f.ID.String(), v, yaml)
			}
			slack := 1e-12 * math.Abs(f.Value.V)
			if f.Low().V > f.Value.V+slack || f.High().V < f.Value.V-slack {
				t.Fatalf("%s is %v, but from %v to %v\n%s", f.ID.String(), f.Value.V, f.Low().V, f.High().V, yaml)
			}
			if math.IsInf(f.Low().V, 0) || math.IsInf(f.High().V, 0) {
				t.Fatalf("%s from %v to %v\n%s", f.ID.String(), f.Low().V, f.High().V, yaml)
			}
		}
	})
}

func TestSumsAddUp(t *testing.T) {
	long.NotShort(t)
	property(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		figs := byID(assess(tb, yaml).Figures)
		for _, q := range figure.Catalogue() {
			bare, ok := figs[q.Name]
			if q.Bare != "sum" || !ok {
				continue
			}
			sum := 0.0
			for _, f := range figs {
				if f.Quantity == q.Name && !f.Place.IsZero() && f.Case.IsZero() {
					sum += f.Value.V
				}
			}
			if !within(bare.Value.V, sum, 1e-9) && !nearly.To(bare.Value.V, sum, 1e-12) {
				t.Fatalf("%s is %v, its members make %v\n%s", q.Name, bare.Value.V, sum, yaml)
			}
		}
	})
}

// A bath and a powder give the same figures whatever unit they are written in.
func TestUnitsDoNotMatter(t *testing.T) {
	long.NotShort(t)
	property(t, func(tb testing.TB, t *rapid.T) {
		r := (&drawing{t: t}).recipe()
		yaml := r.yaml(plainly)
		want, got := assess(tb, yaml), assess(tb, r.yaml(writing{other: true, powder: 1, acid: 1}))
		compare(t, want.Figures, got.Figures, 1, 1e-9, yaml)
	})
}

// compare holds figures against those of the same route k times as large.
func compare(t *rapid.T, want, got []figure.Figure, k, tolerance float64, yaml string) {
	t.Helper()
	have := byID(got)
	if len(want) != len(got) {
		t.Fatalf("%d figures become %d\n%s", len(want), len(got), yaml)
	}
	for i := range want {
		f := &want[i]
		g, ok := have[f.ID.String()]
		if !ok {
			t.Fatalf("%s is gone\n%s", f.ID.String(), yaml)
		}
		v, tolerance := f.Value.V, tolerance
		if inTime(f) {
			if k != 1 {
				continue // cooling, surfaces and bores do not grow with the batch
			}
			tolerance = 1e-4 // of the integration
		}
		if extensive(f) {
			v *= k
		}
		if f.Quantity == "account.error" || within(g.Value.V, v, tolerance) || math.Abs(g.Value.V-v) < 1e-12 {
			continue
		}
		t.Fatalf("%s: %v becomes %v, want %v\n%s", f.ID.String(), f.Value.V, g.Value.V, v, yaml)
	}
}

// inTime are the figures of an integration, and those that lean on the cooling.
func inTime(f *figure.Figure) bool {
	switch f.Quantity {
	case "heat.temperature_peak", "heat.addition_time.required", "gas.superficial_velocity", "gas.free_volume.required",
		"gas.vent.bore_required",
		"gas.addition_time.hood", "gas.addition_time.vent", "gas.closed.time_to_10_kpa", "gas.headspace.flammable_time",
		"heat.quench_water", "heat.criticality_class", "heat.class_margin":
		return true
	}
	if f.Case.Failure != "" || strings.HasPrefix(f.Quantity, "air.") && f.Quantity != "air.saturated" {
		return true
	}
	return f.Case.String() == "self_accelerating" || f.Case.String() == "early_peak" ||
		f.Case.String() == "first_order" || f.Case.String() == "measured"
}

// extensive figures grow with the batch.
func extensive(f *figure.Figure) bool {
	switch f.Quantity {
	case "cake.critical": // of a size that no batch has
		return false
	case "cake.share", "skin.lethal": // of the batch over one that stays
		return true
	}
	switch q, _ := figure.Lookup(f.Quantity); q.Unit {
	case "L", "kJ", "kg", "g as F", "g as HF", "g", "W", "L/min", "m3/h":
		return true
	}
	return false
}

func TestScalingIsExact(t *testing.T) {
	long.Only(t)
	property(t, func(tb testing.TB, t *rapid.T) {
		d := &drawing{t: t, calm: true}
		yaml := d.recipe().yaml(plainly)
		r := load(tb, yaml)
		k := rapid.Float64Range(0.01, 1000).Draw(t, "times")
		mass := r.Precursor.Mass.In("g") * k
		large := hazards.Assess(newCase(tb, r.Scaled(quantity.Of(mass, "g", quantity.Mass))), nil)
		small := hazards.Assess(newCase(tb, r), nil)
		compare(t, small.Figures, large.Figures, k, 1e-9, yaml)
	})
}

// More powder in the same bath never gives less.
func TestMorePowderNeverGivesLess(t *testing.T) {
	long.Only(t)
	grow := []string{"gas.hydrogen.total", "gas.hydrogen.impurities", "gas.hydrogen.dissolution_bound",
		"gas.hydride.bound",
		"heat.etch.total", "heat.etch.dissolution_bound", "heat.adiabatic_rise", "heat.mtsr", "gas.closed.pressure"}
	costly(t, func(tb testing.TB, t *rapid.T) {
		r := (&drawing{t: t, calm: true, bath: true}).recipe()
		yaml := r.yaml(plainly)
		less := byID(review(tb, yaml).Figures)
		more := byID(review(tb, r.yaml(writing{powder: rapid.Float64Range(1, 20).Draw(t, "times"), acid: 1})).Figures)
		for _, q := range grow {
			neverLess(t, less[q], more[q], yaml)
		}
	})
}

// A bound lies above what it bounds, at every end.
func TestBoundsBound(t *testing.T) {
	long.NotShort(t)
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t, calm: true}).recipe().yaml(plainly)
		figs := byID(review(tb, yaml).Figures)
		for id, f := range figs {
			var of string
			switch f.Quantity {
			case "gas.hydrogen.dissolution_bound":
				of = "gas.hydrogen.total"
			case "heat.etch.dissolution_bound":
				of = "heat.etch.total"
			default:
				continue
			}
			g := figs[strings.Replace(id, f.Quantity, of, 1)]
			if f.Place.IsZero() || g == nil {
				continue // the sum may have members without a bound
			}
			if f.Value.V < g.Value.V*(1-1e-9) || f.High().V < g.High().V*(1-1e-9) {
				t.Fatalf("%s is %v (to %v), %s is %v (to %v)\n%s", id, f.Value.V, f.High().V, g.ID.String(), g.Value.V, g.High().V,
					yaml)
			}
		}
	})
}

// A larger bath of the same acids never holds less fluoride or neutraliser.
func TestMoreAcidNeverHoldsLess(t *testing.T) {
	long.Only(t)
	costly(t, func(tb testing.TB, t *rapid.T) {
		d := &drawing{t: t, plain: true}
		r := &recipe{places: &table{}, measured: &table{}}
		d.r = r
		d.drawPlaces()
		d.drawPowder()
		s := d.step("charge", "pot")
		s.put("what", d.liquids("bath"))
		d.add("pot")
		yaml := r.yaml(plainly)
		less := byID(review(tb, yaml).Figures)
		more := byID(review(tb, r.yaml(writing{powder: 1, acid: rapid.Float64Range(1, 10).Draw(t, "times")})).Figures)
		for id, f := range less {
			switch f.Quantity {
			case "fluoride.total", "fluoride.hf_equivalent", "gas.hydrogen.dissolution_bound", "heat.etch.dissolution_bound",
				"neutralise.mass", "neutralise.carbon_dioxide":
				neverLess(t, f, more[id], yaml)
			}
		}
	})
}

func neverLess(t *rapid.T, less, more *figure.Figure, yaml string) {
	t.Helper()
	if less == nil {
		return
	}
	if more == nil {
		t.Fatalf("%s is gone\n%s", less.ID.String(), yaml)
	}
	ends := [][2]float64{{less.Value.V, more.Value.V}, {less.High().V, more.High().V}}
	if more.Of() != less.Of() { // another member is the worst now, at the dangerous end
		if a, b := less.High().V, more.High().V; b < a-1e-9*math.Abs(a) {
			t.Fatalf("%s falls from %v to %v\n%s", less.ID.String(), less.High().V, more.High().V, yaml)
		}
		return
	}
	if q, _ := figure.Lookup(less.Quantity); q.Kinked {
		ends = ends[:1] // its ends are found one datum at a time
	}
	for _, x := range ends {
		if x[1] < x[0]-1e-9*math.Abs(x[0]) { // a vacuum is below nothing
			t.Fatalf("%s falls from %v to %v\n%s", less.ID.String(), x[0], x[1], yaml)
		}
	}
}

// Acid equivalents are counted entry by entry; the elements of a liquor give
// them too, since its charges have to balance:
//
//	acid = H - 2 O + 8 S + 4 C - 4 N     [mol; water and carbon dioxide count nothing]
//
// for acids, alkali, ammonium and their salts, with all carbon as carbonate.
func TestAcidFollowsFromTheElements(t *testing.T) {
	weights := map[string]float64{"H": 1, "O": -2, "S": 8, "C": 4, "N": -4}
	property(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t, plain: true, calm: true, mild: true}).recipe().yaml(plainly)
		a := assess(tb, yaml)
		for i := range a.Walk.Steps {
			for j := range a.Walk.Steps[i].After.Liquid {
				q := &a.Walk.Steps[i].After.Liquid[j]
				acid, from, size := acidOf(q, weights)
				if !nearly.To(acid, from, 1e-9*size) {
					t.Fatalf("step %d: %g mol of acid, the elements say %g\n%s", i+1, acid, from, yaml)
				}
			}
		}
	})
}

func acidOf(q *process.Pool, weights map[string]float64) (acid, from, size float64) {
	for i := range q.Entries {
		e := &q.Entries[i]
		acid += e.Acid * e.N.V
		for el, n := range e.Of {
			x := weights[chemicals.ElementSymbol(el)] * n * e.N.V
			from += x
			size += math.Abs(x)
		}
	}
	return acid, from, size
}

// Taking out whatever a route can leave out never makes a verdict better. Nothing
// stated here is worse than what is assumed in its place: a stated fault is no omission.
func TestLeavingOutNeverHelps(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		r := (&drawing{t: t, mild: true}).either()
		before := r.yaml(plainly)
		options := r.leavable()
		if len(options) == 0 {
			return
		}
		o := rapid.SampledFrom(options).Draw(t, "left out")
		full := review(tb, before)
		if o.key == "retained" && len(full.Walk.Steps[slices.Index(r.steps, o.from)].Before.Solids) == 0 {
			return // nothing there to hold liquid back
		}
		if heat := byID(full.Figures)["heat.etch.total"]; o.key == "impurities" && heat != nil && heat.Value.Unknown() {
			return // an impurity without a heat in this bath is worse than the metal assumed in its place
		}
		if o.key == "capacity" && (holdsAt(&full, "overfull") || slices.ContainsFunc(full.Unknown,
			func(u hazards.UnknownItem) bool { return u.Kind == "room_for_liquor" })) {
			return // too small for its liquor: a stated fault is no omission
		}
		o.from.drop(o.key)
		left, _, err := route.Load("check.yaml", strings.NewReader(r.yaml(plainly)))
		if err != nil || left == nil {
			return // refused: no verdict at all
		}
		bare := must(tb, newCase(tb, left))
		notBetter(t, &full, &bare, "without "+o.key+" of\n"+before)
	})
}

type option struct {
	from *table
	key  string
}

// notBetter compares the verdicts of two reviews figure by figure, and the
// worst of all.
func notBetter(t reporter, full, bare *hazards.Review, what string) {
	keepsHolds(t, full, bare, what)
	before, after := ranks(full), ranks(bare)
	for id, was := range before {
		is, there := after[id]
		if !there {
			is, there = after[strings.TrimSuffix(id, ":closed")]
		}
		if what, wrong := strings.CutSuffix(id, ":bath_wrong"); !there && wrong {
			for other, rank := range after { // a bath that is not there cannot be wrong: what it does is what happens
				if strings.HasPrefix(other, what) {
					is, there = max(is, rank), true
				}
			}
		}
		if _, at, of := strings.Cut(id, "@"); of && !there && strings.HasPrefix(id, "stock.") {
			is, there = unstated(after, bare, at)
		}
		if bare.Case.Site == nil && strings.HasPrefix(id, "unattended.") {
			continue // rules that a site asks for go with it
		}
		if (strings.HasPrefix(id, "meeting.pair@site") || strings.HasPrefix(id, "stock.share@site/fire_sum") && was == 0) &&
			fewerBottles(full, bare) {
			continue // what a site no longer states it has does not stand beside anything, nor in a sum
		}
		if !there || is < was {
			t.Errorf("%s: rank %d becomes %d (there %v) %s", id, was, is, there, what)
		}
	}
}

// fewerBottles reports whether the site of one review states less stock than that of another.
func fewerBottles(full, bare *hazards.Review) bool {
	return full.Case.Site != nil && (bare.Case.Site == nil || len(bare.Case.Site.Stock) < len(full.Case.Site.Stock))
}

// unstated is the rank of a stock that nobody states any more: it is said once, of the
// substance or of the site. What the route does not take and nobody says is kept is not there.
func unstated(after map[string]int, bare *hazards.Review, at string) (rank int, there bool) {
	place, _, _ := strings.Cut(at, "/")
	for _, id := range [...]string{"stock.share@" + place, "stock.share@site"} {
		if is, said := after[id]; said {
			return is, true
		}
	}
	return 0, place != "site" && !slices.ContainsFunc(bare.Held, func(h stock.Holding) bool {
		return h.ID().Place.Key() == place
	})
}

// ranks is the worst rank of each figure, and of them all.
func ranks(rv *hazards.Review) map[string]int {
	out := map[string]int{"": 0}
	for i := range rv.Findings {
		f := &rv.Findings[i]
		if strings.HasPrefix(f.Figure.String(), "fluoride.hf_strength") {
			continue // one finding for the strongest place, which may move
		}
		out[f.Figure.String()] = max(out[f.Figure.String()], f.Verdict.Rank())
		out[""] = max(out[""], f.Verdict.Rank())
	}
	return out
}

// Taking a datum away that is no definition never makes a verdict or a figure
// better.
func TestAMissingDatumNeverHelps(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		c := newCase(tb, load(tb, yaml))
		full := must(tb, c)
		var used []chemicals.Datum
		for _, d := range full.Used {
			if !exact(d) {
				used = append(used, d)
			}
		}
		if len(used) == 0 {
			return
		}
		without(tb, t, c, &full, rapid.SampledFrom(used).Draw(t, "datum"), yaml)
	})
}

// reporter is what both a test and a property can say.
type reporter interface{ Errorf(string, ...any) }

func TestNoDatumOfTheDemonstrationHelpsByMissing(t *testing.T) {
	long.Only(t)
	text := bundledTexts(t)["demo-lif-hcl-2g.yaml"]
	full := review(t, text)
	c := full.Case
	used := slices.DeleteFunc(slices.Clone(full.Used), exact)
	if len(used) < 40 {
		t.Errorf("only %d data are used", len(used))
	}
	short := c
	short.Brief = true
	brief := must(t, short)
	for i, d := range used { // of a sixth also in the failures, which are most of the time
		if i%6 == 0 {
			without(t, t, c, &full, d, c.Route.Title)
		} else {
			without(t, t, short, &brief, d, c.Route.Title)
		}
	}
}

// without reviews a case with a datum taken away.
func without(tb testing.TB, t reporter, c route.Case, full *hazards.Review, d chemicals.Datum, what string) {
	c.Store = c.Store.With(map[int]float64{d.Index: math.NaN()})
	rv := must(tb, c)
	notBetter(t, full, &rv, "without "+string(d.ID)+" in "+what)
	was := byID(full.Figures)
	for i := range rv.Figures {
		f := &rv.Figures[i]
		g, ok := was[f.ID.String()]
		if !ok || !f.Of().IsZero() || f.Quantity == "account.error" {
			continue
		}
		if f.Value.Status > g.Value.Status {
			t.Errorf("without %s: %s is %v, and was %v in %s", d.ID, f.ID.String(), f.Value.Status, g.Value.Status, what)
		}
		q, _ := figure.Lookup(f.Quantity)
		x, y := f.Danger().V, g.Danger().V
		if q.Danger == figure.Low {
			x, y = -x, -y
		}
		if f.Value.Unit == "K" && x <= 0 && y <= 0 {
			continue // both cool: colder is no danger
		}
		tolerance := 1e-9
		if f.Searched {
			tolerance = 0.02 // as close as the search comes to the worst moment
		}
		if f.Searched && f.Quantity == "heat.time_to_maximum_rate" {
			tolerance = 0.1 // the search is for heat and gas: where those are flat the moment itself moves by more
		}
		if standsIn(d.ID) {
			continue
		}
		if x < y-tolerance*math.Abs(y) || math.IsNaN(y) && !math.IsNaN(x) {
			t.Errorf("without %s: the dangerous end of %s goes from %v to %v in %s", d.ID, f.ID.String(), g.Danger().V,
				f.Danger().V, what)
		}
	}
}

// standsIn reports whether an estimate takes the place of a datum where it is missing: its
// range holds the datum, and that no verdict gets better is all that is asked of it.
func standsIn(id datum.ID) bool {
	return datum.Pattern("etch_heat.*").Fits(id) || datum.Pattern("cp.*(s)").Fits(id)
}

func exact(d chemicals.Datum) bool {
	_, stated := d.ID.Stated()
	return stated || slices.ContainsFunc([]datum.Pattern{"weight.*", "constant.*", "gas.temperature", "gas.pressure"},
		func(p datum.Pattern) bool { return p.Fits(d.ID) })
}

func must(tb testing.TB, c route.Case) hazards.Review {
	tb.Helper()
	rv, err := hazards.Make(c)
	if err != nil {
		tb.Fatal(err)
	}
	return rv
}
