package datum_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/material"
)

// Every row of the data is of what its kind says: a formula, an element, a substance or a
// material that there is (definition: kind.subject.field).
func TestEveryRowIsOfWhatItsKindSays(t *testing.T) {
	seen := map[datum.Sort]int{}
	for _, d := range chemicals.Base().Rows() {
		k := d.ID.Key()
		if k.Kind == nil {
			continue
		}
		seen[k.Kind.Of]++
		if k.Kind.Of != "" && !is(k) {
			t.Errorf("%s: %q is no %s", d.ID, k.Subject, k.Kind.Of)
		}
		if k.Kind.Of == "" && (k.Subject != "" || k.Field != "") {
			t.Errorf("%s is an id of its own, and of %q", d.ID, k.Subject)
		}
		made := datum.Of(k.Kind.Name, k.Subject)
		if k.Field != "" {
			made = made.Field(k.Field)
		}
		if k.Kind.Of != "" && made != d.ID {
			t.Errorf("%s is put together again as %s", d.ID, made)
		}
	}
	for _, sort := range []datum.Sort{datum.Formula, datum.Element, datum.Substance, datum.Material, ""} {
		if seen[sort] < 10 {
			t.Errorf("%d rows are of a %s", seen[sort], sort)
		}
	}
}

// is reports whether there is such a thing: a solution in water is as its substance is.
func is(k datum.Key) bool {
	lib := chemicals.Library()
	bySlug := func(slug string) bool {
		return slices.ContainsFunc(lib.All(), func(s *chemicals.Substance) bool { return s.Slug == slug })
	}
	switch k.Kind.Of {
	case datum.Formula:
		_, err := chemicals.ParseFormula(k.Bare())
		return err == nil || slices.ContainsFunc(lib.All(), func(s *chemicals.Substance) bool {
			return s.Solution != "" && s.Solution+"_aq" == k.Subject
		})
	case datum.Element:
		f, err := chemicals.ParseFormula(k.Subject)
		return err == nil && len(f.Order) == 1 && f.Text == k.Subject
	case datum.Substance:
		return bySlug(k.Subject)
	case datum.Solution:
		model, _, _ := strings.Cut(k.Subject, "_")
		return slices.ContainsFunc(lib.All(), func(s *chemicals.Substance) bool { return s.Solution == model })
	}
	return slices.ContainsFunc(chemicals.Base().Materials().Rows(), func(m material.Material) bool {
		return m.Slug == k.Subject
	})
}

// An id is taken apart by its longest kind (definition).
func TestKey(t *testing.T) {
	for _, x := range []struct {
		id                         datum.ID
		kind, subject, bare, field string
	}{
		{"etch_heat.Ti3AlC2", "etch_heat", "Ti3AlC2", "Ti3AlC2", ""},
		{"etch_heat.melt.Ti3AlC2", "etch_heat.melt", "Ti3AlC2", "Ti3AlC2", ""},
		{"etch_heat_bound.Ti3AlC2", "etch_heat_bound", "Ti3AlC2", "Ti3AlC2", ""},
		{"dissolution_water.LiCl.H2O(s)", "dissolution_water", "LiCl.H2O(s)", "LiCl.H2O", ""},
		{"cp.hf_aq.slope", "cp", "hf_aq", "hf_aq", "slope"},
		{"cp.Ca(+2)(aq)", "cp", "Ca(+2)(aq)", "Ca(+2)", ""},
		{"pka.citric_acid.3", "pka", "citric_acid", "citric_acid", "3"},
		{"heat.impurity.hf.TiC", "heat.impurity.hf", "TiC", "TiC", ""},
	} {
		k := x.id.Key()
		if !k.Is(x.kind) || k.Subject != x.subject || k.Bare() != x.bare || k.Field != x.field {
			t.Errorf("%s is %+v", x.id, k)
		}
	}
	for _, own := range []datum.ID{"gas.temperature", "density.solid", "given:steps[0].time", "pkw", "", "etch_heat"} {
		if k := own.Key(); k.Subject != "" || k.Kind.Opens() && own != "etch_heat" {
			t.Errorf("%s is %+v", own, k)
		}
	}
	if at, ok := datum.Stated("steps[0].time").Stated(); !ok || at != "steps[0].time" {
		t.Error("a stated quantity is not one", at)
	}
}

// A rule counts by its id, else by the longest that fits; the order of rows does not (definition).
func TestTheLongestPatternCounts(t *testing.T) {
	rules := []datum.Pattern{"*", "density.*(s*", "density.*", "density.TiC(s)", "dissolution*"}
	for id, want := range map[datum.ID]datum.Pattern{"density.TiC(s)": "density.TiC(s)", "density.VC(s)": "density.*(s*",
		"density.V2AlC": "density.*", "dissolution_water.KF(s)": "dissolution*", "pkw": "*"} {
		for range 2 {
			slices.Reverse(rules)
			got := datum.Best(rules, func(p *datum.Pattern) datum.Pattern { return *p }, id)
			if got == nil || *got != want {
				t.Errorf("%s: by %v, want %s", id, got, want)
			}
		}
	}
	if datum.Pattern("a[").Valid() == nil || datum.Best(rules[:0], nil, "x") != nil {
		t.Error("a bracket that is never shut, or no rule at all")
	}
}
