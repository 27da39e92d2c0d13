package hazards_test

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// A colloid is the liquid that a centrifuge sends on: where the route says so its bottle
// holds the flakes, where it says nothing it may hold them all, or none, and never is a
// stored liquid silent.
func TestWhatCarriesTheFlakes(t *testing.T) {
	long.Only(t)
	route := func(key string) string {
		return bench.Head[:len(bench.Head)-len("steps:\n")] +
			"  flask: {kind: bottle, material: HDPE, capacity: 250 mL, closure: closed}\nsteps:\n" + bench.Etch + orderHold +
			orderWash + "  - {do: redisperse, in: pot, what: [{substance: water, volume: 50 mL}]}\n" +
			"  - {do: centrifuge, in: pot, into: flask" + key + "}\n" +
			"  - {do: store, in: flask, time: 30 d, temperature: 4 degC}\n"
	}
	const id = "store.pressure@flask:carbon_kept"
	var said working.Num // the pressure where the route says that the liquid carries them
	for _, c := range []struct {
		key          string
		stored, gas  bool // a hold point on the bottle, a pressure in it
		known        bool // which is known
		says         string
		flask, stays float64 // mol of flakes, of 1 g over 194.605 g/mol
	}{
		{", product: liquid", true, true, true, "Do not store it shut", 1 / 194.605, 0},
		{"", true, true, true, "product: liquid or solids", 0, 1 / 194.605},
		{", product: solids", false, false, false, "", 0, 1 / 194.605},
	} {
		rv := review(t, route(c.key))
		if got := c.says != "" && stopsWork(&rv, c.says); got != c.stored {
			t.Errorf("%q: hold point %q: %v, want %v", c.key, c.says, got, c.stored)
		}
		f := figureOf(&rv, id)
		if got := f != nil; got != c.gas || got && f.Value.Unknown() == c.known {
			t.Errorf("%q: pressure %v, want one: %v, known: %v", c.key, f, c.gas, c.known)
		}
		switch {
		case c.key == ", product: liquid":
			said = f.High()
		case c.gas && (!nearly.Share(f.High().V, said.V, 0.01) || f.Low().V != 0 || f.Value.Status != working.Bound):
			t.Errorf("%q: pressure %v to %v, want a bound from nothing to about %v", c.key, f.Low(), f.High(), said)
		}
		if v, there := verdicts(&rv)[id+"+no_rated_store"]; c.gas && (!there || v != figure.Exceeds) {
			t.Errorf("%q: %v (there %v), want exceeds", c.key, v, there)
		}
		for place, want := range map[string]float64{"flask": c.flask, "pot": c.stays} {
			if n := flakesIn(&rv.Walk, place); !nearly.To(n, want, 1e-5) {
				t.Errorf("%q: %g mol of flakes in %s, want %g", c.key, n, place, want)
			}
		}
		if e := figureOf(&rv, "account.error"); e == nil || e.Value.Status == working.Unknown || !(e.Value.V < 1e-9) {
			t.Errorf("%q: the account does not close: %v", c.key, e)
		}
	}
}

// flakesIn is the product of a place at the end, mol.
func flakesIn(k *process.Walk, place string) float64 {
	n := 0.0
	for i := range k.Ends {
		for _, x := range k.Ends[i].Solids {
			if k.Ends[i].Place == place && x.Kind == process.Product {
				n += x.N.V
			}
		}
	}
	return n
}
