package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/material"
	"etchbound/hazards"
	"etchbound/schemas/long"
)

const (
	hfIn   = "{substance: HF, strength: 10 wt%, volume: 50 mL}"
	baseIn = "{substance: TMAOH, strength: 25 wt%, volume: 50 mL}"
	dmsoIn = "{substance: dmso, volume: 50 mL}"
	nmpIn  = "{substance: nmp, volume: 50 mL}"
	hclIn  = "{substance: HCl, strength: 20 wt%, volume: 50 mL}"
	hno3In = "{substance: nitric acid, strength: 65 wt%, volume: 50 mL}"
)

// wetting is a route in which things meet a liquor: at a place all the time, or in a step.
func wetting(in, place, step string) string {
	if place != "" {
		place = ", wetted: [" + place + "]"
	}
	if step != "" {
		step = ", wetted: [" + step + "]"
	}
	return head + "places: {pot: {kind: beaker, material: PFA, capacity: 250 mL, closure: open" + place + "}}\nsteps:\n" +
		charges(in) + "  - {do: sonicate, in: pot, time: 10 min, temperature: 20 degC" + step + "}\n"
}

// What meets a liquor beside the wall is held against it as the wall is: glass and titanium
// with acid fluoride, steel with it, PVDF and FKM with strong organic base, tubes and
// membranes with solvents (resistance charts and rows of the tables of materials).
func TestWhatMeetsTheLiquorIsHeldAgainstIt(t *testing.T) {
	long.Only(t)
	for _, c := range []struct {
		in, what, of string
		want         material.Verdict
	}{
		{hfIn, "thermometer", "glass", material.No}, {hfIn, "pH electrode", "glass", material.No},
		{hfIn, "sonicator tip", "titanium", material.No}, {hfIn, "stir bar", "PTFE-coated", material.Yes},
		{hfIn, "stir bar", "glass-coated", material.No}, {hfIn, "impeller", "316 stainless steel", material.No},
		{hfIn, "filter membrane", "cellulose nitrate", material.No}, {hfIn, "filter membrane", "nylon", material.No},
		{hfIn, "filter membrane", "PES", material.No}, {hfIn, "filter membrane", "PVDF", material.Yes},
		{hfIn, "centrifuge tube", "polycarbonate", material.No}, {hfIn, "centrifuge tube", "PP", material.Yes},
		{hfIn, "milling balls", "zirconia", material.No}, {hfIn, "rotor adapter", "POM", material.No},
		{hfIn, "balance pan", "aluminium", material.No}, {hfIn, "tubing", "silicone", material.No},
		{hfIn, "gasket", "FFKM", material.Limited}, {hfIn, "gasket", "EPDM", material.Limited},
		{hfIn, "pump head", "PEEK", material.No}, {hfIn, "electrode", "platinum", material.Yes},
		{hfIn, "fridge shelf", "brass", material.No},
		{baseIn, "filter membrane", "PVDF", material.No}, {baseIn, "O-ring", "FKM", material.No},
		{baseIn, "foil", "aluminium", material.No}, {baseIn, "stir bar", "PTFE", material.Yes},
		{dmsoIn, "filter membrane", "PVDF", material.No}, {dmsoIn, "centrifuge tube", "PC", material.No},
		{nmpIn, "vacuum tubing", "PVC", material.No}, {nmpIn, "filter membrane", "nylon", material.No},
		{hclIn, "impeller", "316L", material.No}, {hclIn, "hood fitting", "brass", material.No},
		{hno3In, "bottle rack", "polycarbonate", material.No}, {hno3In, "funnel", "PP", material.Limited},
		{hfIn, "stir bar", "", material.Unknown}, {hfIn, "stir bar", "unobtainium", material.Unknown},
	} {
		of := ""
		if c.of != "" {
			of = ", material: " + c.of
		}
		item := "{what: " + c.what + of + "}"
		for _, text := range []string{wetting(c.in, item, ""), wetting(c.in, "", item)} {
			rv := review(t, text)
			worst := material.Yes
			for i := range rv.Walk.Contacts {
				if x := &rv.Walk.Contacts[i]; x.Part == c.what {
					worst = max(worst, x.Verdict)
				}
			}
			stopped := stops(&rv, "attacked") && worst == material.No || stops(&rv, "material_unknown") &&
				worst == material.Unknown
			if worst != c.want || stopped != (c.want >= material.Unknown) {
				t.Errorf("%s of %q in %s: %s, stopped %v, want %s", c.what, c.of, c.in, worst, stopped, c.want)
			}
		}
	}
}

func stops(rv *hazards.Review, id string) bool {
	return slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == id })
}

// What a step needs and nobody names is one item of what is not known, and none where
// place or step names it (definition).
func TestWhatAStepNeedsAndNobodyNames(t *testing.T) {
	for _, c := range []struct {
		place, step string
		want        bool
	}{
		{"", "", true}, {"", "{what: sonicator tip, material: titanium}", false},
		{"{what: probe, material: PTFE}", "", false},
		{"{what: thermometer, material: PFA}", "", true},
	} {
		rv := review(t, wetting(hfIn, c.place, c.step))
		n := 0
		for i := range rv.Unknown {
			if u := &rv.Unknown[i]; u.Kind == "wetted_open" {
				if n++; !strings.Contains(u.Subject.String(), "sonicator tip") {
					t.Errorf("it does not say what: %s", u.Subject)
				}
			}
		}
		if n > 1 || (n == 1) != c.want {
			t.Errorf("with %q and %q %d items", c.place, c.step, n)
		}
	}
}
