package hazards_test

import (
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// load reads a route that the test writes itself.
func load(t testing.TB, yaml string) *route.Route {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(yaml))
	if err != nil {
		t.Fatal(err)
	}
	if r == nil {
		t.Fatalf("refused: %v\n%s", problems, yaml)
	}
	return r
}

func newCase(t testing.TB, r *route.Route) route.Case {
	t.Helper()
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if f, ok := t.(fataler); ok {
		c.Brief = f.brief
	}
	return c
}

// review is the review of a route; without its failures but in the long form, since they take
// most of the time of one.
func review(t testing.TB, yaml string) hazards.Review {
	t.Helper()
	return reviewed(t, yaml, !long.Form())
}

// followed is the review of a route with its failures, in every form of the tests.
func followed(t testing.TB, yaml string) hazards.Review {
	t.Helper()
	return reviewed(t, yaml, false)
}

// seen is the text of a route, and whether its failures were left out.
type seen struct {
	yaml  string
	brief bool
}

func reviewed(t testing.TB, yaml string, brief bool) hazards.Review {
	t.Helper()
	key := seen{yaml, brief}
	_, drawn := t.(fataler)
	if rv, ok := reviews.Load(key); ok && !drawn {
		return rv.(hazards.Review)
	}
	c := newCase(t, load(t, yaml))
	c.Brief = c.Brief || brief
	rv, err := hazards.Make(c)
	if err != nil {
		t.Fatalf("%v\n%s", err, yaml)
	}
	if !drawn {
		reviews.Store(key, rv)
	}
	return rv
}

// reviews are those that tests have made: many look at the same ones. Nobody changes
// what he gets.
var reviews sync.Map

// bundledTexts are the routes of the examples, by file name.
func bundledTexts(t testing.TB) map[string]string {
	t.Helper()
	names, err := filepath.Glob("../testdata/routes/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, n := range names {
		raw, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains("\n"+string(raw), "\nroute: ") { // no site or limits file
			out[filepath.Base(n)] = string(raw)
		}
	}
	if len(out) < 9 {
		t.Fatalf("only %d routes found", len(out))
	}
	return out
}

// bundled loads every route of the examples.
func bundled(t testing.TB) map[string]*route.Route {
	t.Helper()
	out := map[string]*route.Route{}
	for name, text := range bundledTexts(t) {
		out[name] = load(t, text)
	}
	return out
}

// sorted are the keys of a map, in order.
func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

func figureOf(rv *hazards.Review, id string) *figure.Figure {
	for i := range rv.Figures {
		if rv.Figures[i].ID.String() == id {
			return &rv.Figures[i]
		}
	}
	return nil
}

func verdicts(rv *hazards.Review) map[string]figure.Verdict {
	out := map[string]figure.Verdict{}
	for i := range rv.Findings {
		out[rv.Findings[i].ID().String()] = rv.Findings[i].Verdict
	}
	return out
}

var unknown = math.NaN()

// close reports whether got is want within a share; NaN stands for unknown.
func within(got, want, share float64) bool {
	if math.IsNaN(got) || math.IsNaN(want) {
		return math.IsNaN(got) && math.IsNaN(want)
	}
	return math.Abs(got-want) <= share*max(math.Abs(want), 1e-12)
}

// The parts the routes of these tests are put together from.
const (
	head = `route: etchbound/1
title: check
basis: {status: invented}
`
	places = `places:
  pot: {kind: vessel, closure: vented, capacity: 1 L}
  drum: {kind: drum, closure: vented, capacity: 5 L}
`
	hf10   = "{substance: hydrofluoric acid, strength: 10 wt%, volume: 10 mL}"
	hcl9   = "{substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}"
	lif    = "{substance: lithium fluoride, mass: 1.6 g}"
	pure   = "impurities: none (certificate)"
	addsIt = "  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}\n"
)

func charges(what ...string) string {
	return "  - {do: charge, in: pot, what: [" + strings.Join(what, ", ") + "], temperature: 20 degC}\n"
}

// etches is powder added to a bath in a vented pot.
func etches(powder string, bath ...string) string {
	return head + "precursor: {" + powder + "}\n" + places + "steps:\n" + charges(bath...) + addsIt
}

// bottle is a bath with no powder.
func bottle(bath ...string) string { return head + places + "steps:\n" + charges(bath...) }

type (
	holdPoint   = hazards.Hold
	unknownItem = hazards.UnknownItem
)

// said is every text the review gives beside its figures.
func said(rv *hazards.Review) []string {
	out := words.SayAll(rv.Warnings)
	for _, h := range rv.Holds {
		out = append(out, words.Say(h.Says))
	}
	for _, f := range rv.Walk.Facts {
		out = append(out, words.Say(f.Says))
	}
	return out
}

func containsAny(s string, parts ...string) bool {
	for _, p := range parts {
		if strings.Contains(s, p) {
			return true
		}
	}
	return false
}

// demoSite is the site of the examples.
func demoSite(t testing.TB) *route.Site {
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
