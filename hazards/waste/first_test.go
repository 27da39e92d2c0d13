package waste_test

import (
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/waste"
	"etchbound/schemas/nearly"
)

const (
	bench1 = `route: etchbound/1
title: check
basis: {status: invented}
places:
  pot: {kind: vessel, material: PTFE, closure: vented, capacity: 1 L}
  jar: {kind: vessel, material: PTFE, closure: vented, capacity: 1 L}
steps:
`
	strong  = "{substance: hydrofluoric acid, strength: 40 wt%, volume: 2 mL}"
	thin    = "{substance: water, volume: 50 mL}"
	chalk   = "{substance: calcium carbonate, mass: 7.5 g}"
	lime    = "{substance: calcium hydroxide, mass: 5 g}"
	inWater = 5.8  // K: see below
	alone   = 75.0 // K, boiling
)

func does(verb string, what ...string) string {
	out := "  - {do: " + verb + ", in: pot, what: ["
	for i, m := range what {
		if i > 0 {
			out += ", "
		}
		out += m
	}
	return out + "]}\n"
}

func figuresOf(t *testing.T, yaml string) []figure.Figure {
	t.Helper()
	c, ok := caseOf(t, yaml)
	if !ok {
		t.Fatalf("%s is refused", yaml)
	}
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	return waste.Read(c, nil, k, nil, nil)
}

func valueOf(figs []figure.Figure, quantity string, place figure.Place) (float64, *figure.Figure) {
	for i := range figs {
		if f := &figs[i]; f.Quantity == quantity && f.Place == place {
			return f.Value.V, f
		}
	}
	return 0, nil
}

// 2 mL of 40 wt% HF of 1.128 g/mL are 45.1 mmol in 1.35 g of water. With chalk they
// give 27.5 kJ/mol, 1.241 kJ: on 51.2 g of water at 4.184 J/g/K 5.8 K, and on their own
// water far beyond boiling. Water cools what meets in it, not what has met.
func TestWaterCountsWhereItIsThereFirst(t *testing.T) {
	for _, row := range []struct {
		name, steps string
		step        int
		want        float64
	}{
		{"water, then the agent", does("charge", strong) + does("neutralise", thin, chalk), 2, inWater},
		{"the agent, then water", does("charge", strong) + does("neutralise", chalk, thin), 2, alone},
		{"the agent alone", does("charge", strong) + does("neutralise", chalk), 2, alone},
		{"diluted before", does("charge", strong) + does("dilute", thin) + does("neutralise", chalk), 3, inWater},
		{"poured into the slurry", does("charge", thin, chalk) + does("neutralise", strong), 2, inWater},
		{"slurry, then the liquor", does("neutralise", thin, chalk, strong), 1, inWater},
		{"liquor on the dry agent, then water", does("neutralise", chalk, strong, thin), 1, alone},
	} {
		v, f := valueOf(figuresOf(t, bench1+row.steps), "neutralise.temperature_rise", figure.Step(row.step))
		if f == nil || !nearly.To(v, row.want, 0.05) {
			t.Errorf("%s: %g K, want %g", row.name, v, row.want)
		}
	}
}

// With lime the same liquor gives 84.9 kJ/mol, 3.829 kJ, which 61.0 g of water hold
// below 40 degC. What has 51.4 g already wants 9.6 mL more; undiluted it wants it all.
func TestWhatIsDiluteIsToldHowMuchMore(t *testing.T) {
	for steps, want := range map[string]float64{
		does("charge", strong) + does("neutralise", thin, lime): 0.0098,
		does("charge", strong) + does("neutralise", lime):       0.0612,
	} {
		if v, f := valueOf(figuresOf(t, bench1+steps), "neutralise.dilution_water", figure.Step(2)); f == nil ||
			!nearly.To(v, want, 0.0003) {
			t.Errorf("%s: %g L, want %g", steps, v, want)
		}
	}
}

const boron = "{substance: tetrafluoroboric acid, strength: 50 wt%, mass: 20.02 g}"

// 0.114 mol of HBF4 frees four HF each: 0.456 mol of base, 16.9 g of calcium hydroxide
// at 74.092 g/mol, and a quarter more where it is made alkaline enough for borate. Its
// 8.66 g of fluoride stay dissolved in cold base, at whatever pH, and so do those of
// PF6-; SiF6 2- comes apart at once.
func TestComplexFluorideStaysDissolved(t *testing.T) {
	long := "  - {do: heat, in: pot, time: 4 h, temperature: 90 degC}\n"
	for _, row := range []struct {
		name, steps string
		step        int
		held        float64 // g as F
		fact        string
	}{
		{"cold lime", does("charge", boron) + does("neutralise", lime), 2, 8.66, "slow_fluoride"},
		{"heat and time", does("charge", boron) + does("neutralise", lime) + long, 2, 0, "slow_fluoride_heated"},
		{"heat before there is base", does("charge", boron) + long + does("neutralise", lime), 3, 8.66, "slow_fluoride"},
		{"hexafluorophosphate", does("charge", "{substance: lithium hexafluorophosphate, mass: 15.19 g}",
			"{substance: water, volume: 100 mL}") + does("neutralise", lime), 2, 11.4, "slow_fluoride"}, // 0.1 mol of six
		{"boric acid in HF", does("charge", strong, "{substance: boric acid, mass: 5 g}") + does("neutralise", lime), 2,
			0.857, "slow_fluoride"}, // all of 45.1 mmol
		{"fluorosilicic acid", does("charge", "{substance: hexafluorosilicic acid, strength: 30 wt%, mass: 10 g}") +
			does("neutralise", lime), 2, 0, ""},
	} {
		c, _ := caseOf(t, bench1+row.steps)
		k, err := process.Go(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		if v, _ := valueOf(waste.Read(c, nil, k, nil, nil), "neutralise.held_fluoride",
			figure.Step(row.step)); !nearly.To(v, row.held, 0.005*max(row.held, 0.001)) {
			t.Errorf("%s: %g g of fluoride stay, want %g", row.name, v, row.held)
		}
		said := ""
		for _, f := range k.Facts {
			if f.ID == "slow_fluoride" || f.ID == "slow_fluoride_heated" {
				said = f.ID
			}
		}
		if said != row.fact {
			t.Errorf("%s: says %q, want %q", row.name, said, row.fact)
		}
	}
}

func TestBorateTakesAQuarterMore(t *testing.T) {
	c, _ := caseOf(t, bench1+does("charge", boron)+does("neutralise", lime))
	for share, want := range map[float64]float64{0: 0.01689, 1: 0.01689 * 1.25} {
		d, _ := c.Store.Row("neutralise.borate")
		x := c
		x.Store = c.Store.With(map[int]float64{d.Index: share})
		k, err := process.Go(x, nil)
		if err != nil {
			t.Fatal(err)
		}
		if v, _ := valueOf(waste.Read(x, nil, k, nil, nil), "neutralise.mass", figure.Step(2)); !nearly.Share(v, want,
			0.002) {
			t.Errorf("share %g: %g kg of calcium hydroxide, want %g", share, v, want)
		}
	}
}
