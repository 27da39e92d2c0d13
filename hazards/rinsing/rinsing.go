package rinsing

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/datum"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
)

// Wash is a washing step by several ways to begin.
type Wash struct {
	Step    int
	Target  float64 // pH that counts: the written one, or what water in air reaches
	Written float64 // NaN where none is
	Ceiling bool    // the written target is above what water in air reaches
	Reach   Reach   // how it is reached then; of any other no cycles, and NaN
	Celsius float64 // that the step sets, or 25; the nearest that constants are held for
	Ways    []Way
	Tubes   Tubes
}

// Tubes are what a wash is spun in. NaN is what nobody says.
type Tubes struct {
	Count          int        // equal ones that share a cycle; 0 where nobody says
	Filled, Holds  float64    // mL, each
	Minutes        [2]float64 // of one spin, as published washes have it
	Spins, Longest int        // as written, the etch liquor first, and at most; 0: not known
}

// Reach is how a target is reached that water in air does not.
type Reach struct {
	Free        [2]int  // cycles without carbon dioxide, with nothing and with most between layers; 0: not within Most
	Bicarbonate float64 // mmol/L in one rinse in air after the others; NaN where none reaches it
	Salt        float64 // g of it
}

// Way is one way to wash.
type Way struct {
	Begins        Begins
	Decants       []Decant
	Needed        int     // cycles of the liquid to the target, with nothing held between layers; 0: not within Most
	Slowly        int     // with the most held between layers
	Left          float64 // mg/L of fluoride in the decant of Slowly; NaN where that is 0
	Clean         int     // cycles to the target and to Limit with the most between layers; 0: not within Most
	Limit         float64 // mg/L of fluoride above which a decant is fluoride waste
	Litres        float64 // of liquid for Slowly, or for Most
	CarbonDioxide float64 // L, of a rinse with bicarbonate
	Settled       float64 // g of cryolite that stay with the solid
	Undissolved   float64 // mmol of lithium fluoride after the cycles that are written

	after *[2]bath // the cycles that are walked: without acid between the layers, and with the most
}

// Begins is what the first cycle is made with.
type Begins string

// The ways to begin: as the step writes it, with acid, with bicarbonate.
const (
	AsWritten   Begins = "as_written"
	Acid        Begins = "acid"
	Bicarbonate Begins = "bicarbonate"
)

// Decant is what leaves with one decant; number 0 is the liquor of the etch. NaN is not known.
type Decant struct {
	Number       int
	Litres       float64
	PH, SlowPH   float64 // SlowPH with the most held between layers
	Fluoride     float64 // mg/L, dissolved
	SlowFluoride float64
	Free         float64 // mg/L of SlowFluoride that no metal holds, F- and HF2- with HF
	Acid         float64 // mmol/L of base that it takes, metals to hydroxides
	Aluminium    float64 // mmol/L
	Undissolved  float64 // mmol of lithium fluoride that stay behind
	Strength     float64 // wt% of HF, all fluoride counted as acid, with the most held between layers
	Collected    bool    // fluoride waste
}

// Most is how many cycles are looked at.
const Most = 60

// Read follows every wash of a walk whose liquid and liquor are held.
func Read(c route.Case, k *process.Walk) []Wash {
	if k.Open != nil {
		return nil
	}
	var out []Wash
	var was before
	for i := range k.Washes {
		if b, known := benchOf(c, &k.Washes[i]); known {
			was.leads(b)
			out = append(out, b.read())
			was = before{b.x, out[len(out)-1].Ways[0].after}
		}
	}
	return out
}

// before is a wash and what it leaves over the solid; its zero value is none.
type before struct {
	x     *process.Wash
	after *[2]bath
}

// leads lets a wash begin with what the one just before it in the same place has left.
func (w *before) leads(b *bench) {
	if w.after != nil && w.x.Place == b.x.Place && w.x.Step == b.x.Step-1 {
		b.first, b.slow = b.goesOn(&w.after[0]), b.goesOn(&w.after[1])
	}
}

// salted reports whether a liquor holds lithium fluoride that no acid of it turns to HF, by
// what is held of it.
func salted(c route.Case, x *process.Wash) bool {
	m, kg, _ := residue.Dissolved(c.Store, &x.Liquor)
	mol := map[string]float64{}
	for _, t := range m.Totals {
		mol[t.Of] = t.Mol
	}
	return salt(mol)*kg > trace
}

const trace = 1e-6 // mol

// bench is one wash.
type bench struct {
	model            *aqueous.Model
	x                *process.Wash
	first, slow      bath             // what the first cycle meets, with what leaves before it; with acid between layers
	liquid           []aqueous.Amount // of a cycle, mol per kg
	carbonate        []aqueous.Amount // in it, mol per kg
	water            float64          // kg of a cycle
	salt             float64          // g of sodium bicarbonate in a mol
	retained         float64          // kg that stay while acid
	swells           float64          // times that above pH 4
	target           float64
	ceiling, collect float64
	air              float64 // atm of carbon dioxide; 0: water without
	walked           int
	litres           float64 // of gas in a mol
	tubes            Tubes
}

// saltOf is the mass of a mol of sodium bicarbonate, g; NaN where the data do not hold it.
func saltOf(st *chemicals.Store) float64 {
	if s, held := chemicals.Library().Find("sodium_hydrogencarbonate"); held {
		return s.Formula.MolarMass(st, nil).V
	}
	return math.NaN()
}

// benchOf reads a wash; it is false where something of it is not held.
func benchOf(c route.Case, x *process.Wash) (*bench, bool) {
	st := c.Store
	liquor, kg, known := residue.Dissolved(st, &x.Liquor)
	rest, carbonate := residue.Apart(&x.Liquid)
	liquid, water, held := residue.Dissolved(st, rest...)
	volume, retained := x.Liquor.Volume.V*x.Liquor.Kept(), x.Retained.V
	if !known || !held || x.Unheld || !(volume > 0) || !(retained > 0) || !(water > 0) {
		return nil, false
	}
	for i := range carbonate {
		carbonate[i].Mol /= water
	}
	row := func(id datum.ID) float64 { d, _ := st.Row(id); return d.Value }
	b := &bench{salt: saltOf(st), model: residue.At(c, x.Step).Set, x: x,
		liquid: liquid.Totals, carbonate: carbonate, water: water,
		retained: kg * math.Min(retained/volume, 1), litres: process.MolarVolume(st, nil).V, swells: 1,
		ceiling: row("wash.criterion"), collect: row("wash.collect"), target: x.Target}
	b.tubes = tubesOf(c, x)
	if x.Swells {
		b.swells = row("wash.retained.swollen") / row("wash.retained.acid")
	}
	if x.OpenAir {
		b.air = row("wash.air")
	}
	if !(b.target <= b.ceiling) && (x.OpenAir || b.target != b.target) {
		b.target = b.ceiling
	}
	if n := x.Done.V; n == n {
		b.walked = int(n)
	}
	b.first = b.begin(c, liquor, kg)
	b.slow = b.first
	b.slow.hidden = between(c)
	return b, true
}

// between is the most acid that the powder of a route can hold between its layers, mol.
func between(c route.Case) float64 {
	most, _ := c.Store.Row("wash.between")
	if p := c.Route.Precursor; p != nil && p.Mass.Set {
		return most.High * p.Mass.In("g") / 1000
	}
	return 0
}

func (b *bench) read() Wash {
	w := Wash{Step: b.x.Step, Target: b.target, Written: b.x.Target, Ceiling: b.x.OpenAir && b.x.Target > b.ceiling,
		Celsius: b.model.Celsius(), Reach: Reach{Bicarbonate: math.NaN(), Salt: math.NaN()}}
	w.Ways = append(w.Ways, b.follow(AsWritten))
	if b.x.WaterOnly {
		w.Ways = append(w.Ways, b.follow(Acid), b.follow(Bicarbonate))
	}
	if w.Ceiling {
		w.Reach = b.reach(&w)
	}
	w.Tubes = b.tubes
	if b.walked > 0 {
		w.Tubes.Spins = b.walked + 1
	}
	if n := w.Ways[0].Slowly; n > 0 {
		w.Tubes.Longest = max(n, b.walked) + 1
	}
	return w
}

// tubesOf are the tubes of a wash and how full a cycle makes them.
func tubesOf(c route.Case, x *process.Wash) Tubes {
	spin, _ := c.Store.Row("wash.spin")
	out := Tubes{Filled: math.NaN(), Holds: math.NaN(), Minutes: [2]float64{spin.Low, spin.High}}
	p := c.Route.Place(x.Place)
	if p == nil || p.Several() {
		return out
	}
	out.Count = max(p.Count, 1)
	out.Filled = (x.Added.V + x.Retained.V) / float64(out.Count)
	if p.Capacity.Set {
		out.Holds = p.Capacity.In("mL")
	}
	return out
}
