package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// want is one figure as worked out apart from the program. low and high are
// the ends; where both are 0 they are not checked.
type want struct {
	id               string
	value, low, high float64
	tolerance        float64 // share; 0 is half a percent
	from             string  // arithmetic and source
}

type check struct {
	name, yaml string
	figures    []want
	absent     []string // ids that must not be there
	verdicts   map[string]figure.Verdict
	none       []string // parts of finding ids that must not be there
	holds      []string // ids of hold points
	warns      string   // part of a warning, hold or fact
	measures   []string // ids listed as unknown with what to measure
}

// Atomic weights: "Standard atomic weights of the elements 2021", Pure Appl.
// Chem. 94 (2022) 573, abridged; Zr 91.222 (2024). One mole of gas is 24.4654 L
// at 25 degC and 101.325 kPa (8.314462618 J/mol/K, SI brochure).
const half = 0.005

func TestPublishedChecks(t *testing.T) {
	long.NotShort(t)
	for _, set := range [][]check{gasChecks, heatChecks, fluorideChecks, wasteChecks, washChecks, closedChecks,
		laterGasChecks, familyChecks, evolvedChecks, metalChecks} {
		for _, c := range set {
			t.Run(c.name, func(t *testing.T) { c.run(t) })
		}
	}
}

// failures tells whether a check asks for the figure of a failure.
func (c *check) failures() bool {
	return slices.ContainsFunc(c.figures, func(w want) bool {
		id, err := figure.Parse(w.id)
		return err != nil || id.Case.Failure != ""
	})
}

// central is the review of a case without ranges, which is enough where a check asks for
// values alone that an assessment gives; the long form makes every review whole.
func (c *check) central(t *testing.T, k route.Case) (hazards.Review, bool) {
	ranged := slices.ContainsFunc(c.figures, func(w want) bool { return w.low != 0 || w.high != 0 })
	if long.Form() || ranged || c.absent != nil || c.verdicts != nil || c.none != nil || c.holds != nil || c.warns != "" ||
		c.measures != nil {
		return hazards.Review{}, false
	}
	a := hazards.Assess(k, nil)
	if a.Err != nil {
		t.Fatal(a.Err)
	}
	out := hazards.Review{Figures: a.Figures}
	return out, !slices.ContainsFunc(c.figures, func(w want) bool { return figureOf(&out, w.id) == nil })
}

// run holds a review against the check; its failures, the most of its time, are left
// out of it but in the long form, unless a figure of one is asked for.
func (c *check) run(t *testing.T) {
	k := newCase(t, load(t, c.yaml))
	k.Brief = !long.Form() && !c.failures()
	rv, enough := c.central(t, k)
	if !enough {
		rv = must(t, k)
	}
	for _, w := range c.figures {
		f := figureOf(&rv, w.id)
		if f == nil {
			t.Errorf("%s: no such figure; %s", w.id, w.from)
			continue
		}
		tol := w.tolerance
		if tol == 0 {
			tol = half
		}
		if !within(f.Value.V, w.value, tol) {
			t.Errorf("%s = %.6g, want %.6g (%s)", w.id, f.Value.V, w.value, w.from)
		}
		if w.low == 0 && w.high == 0 {
			continue
		}
		if !within(f.Low().V, w.low, tol) || !within(f.High().V, w.high, tol) {
			t.Errorf("%s from %.6g to %.6g, want %.6g to %.6g (%s)", w.id, f.Low().V, f.High().V, w.low, w.high, w.from)
		}
	}
	for _, id := range c.absent {
		if f := figureOf(&rv, id); f != nil {
			t.Errorf("%s is there: %v", id, f.Value)
		}
	}
	got := verdicts(&rv)
	for id, v := range c.verdicts {
		if g, ok := got[id]; !ok || g != v {
			t.Errorf("%s: verdict %v (there %v), want %v", id, g, ok, v)
		}
	}
	for id := range got {
		for _, part := range c.none {
			if strings.Contains(id, part) {
				t.Errorf("there is a finding %s", id)
			}
		}
	}
	for _, id := range c.holds {
		if !slices.ContainsFunc(rv.Holds, func(h holdPoint) bool { return h.ID == id }) {
			t.Errorf("no hold point %s in %v", id, rv.Holds)
		}
	}
	if c.warns != "" && !slices.ContainsFunc(said(&rv), func(s string) bool { return strings.Contains(s, c.warns) }) {
		t.Errorf("nothing says %q: %q", c.warns, said(&rv))
	}
	for _, id := range c.measures {
		if !slices.ContainsFunc(rv.Unknown, func(u unknownItem) bool { return words.Name(u.Missing) == id }) {
			t.Errorf("%s is not listed with what to measure", id)
		}
	}
}
