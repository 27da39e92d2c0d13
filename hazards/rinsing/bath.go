package rinsing

import (
	"maps"
	"math"

	"etchbound/chemicals/aqueous"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
)

// bath is what stands over the solid after a decant, or before the first: mol.
type bath struct {
	kg     float64            // of water that stays
	mol    map[string]float64 // components in it
	solid  map[string]float64
	hidden float64 // between layers
	pH     float64
	gas    float64 // mol of carbon dioxide that left
	out    Decant
}

// solids that may settle or stay.
var solids = [...]string{"LiF_s", "Cryolite", "NaF_s", "Al(OH)3(a)"}

// begin is the liquor that the first cycle meets, of which what does not stay with the solid is
// decanted: at equilibrium where one is held, under the carbon dioxide that carbonate in it can
// hold. Where it is too strong for that, what of its lithium fluoride no acid has turned to HF
// is solid.
func (b *bench) begin(c route.Case, liquor aqueous.Mixture, kg float64) bath {
	a := bath{kg: kg, mol: map[string]float64{}, solid: map[string]float64{}, pH: math.NaN()}
	free := math.NaN()
	if s := b.rests(c); s != nil {
		a.pH, free = s.PH(), s.Free()*residue.Milligrams
		a.holds(s, kg)
	} else {
		for _, t := range liquor.Totals {
			a.mol[t.Of] = t.Mol * kg
		}
		if salt := salt(a.mol); salt > trace {
			a.mol["F"], a.mol["Li"], a.solid["LiF_s"] = a.mol["F"]-salt, a.mol["Li"]-salt, salt
		}
	}
	a.out.PH, a.out.Free = a.pH, free
	return b.goesOn(&a)
}

// rests is a liquor at equilibrium with what settles of it; nil where none is held of it.
func (b *bench) rests(c route.Case) *aqueous.State {
	m, _, known := residue.Whole(c.Store, &b.x.Liquor)
	if !known {
		return nil
	}
	for _, s := range solids {
		m.Solids = append(m.Solids, aqueous.Amount{Of: s})
	}
	s, err := b.model.Solve(m)
	if err != nil || len(s.Outside()) > 0 {
		return nil
	}
	return s
}

// goesOn is what a wash begins with where what a bath holds stands over the solid: what does
// not stay with it is decanted.
func (b *bench) goesOn(was *bath) bath {
	a := bath{kg: math.Min(b.stays(was.pH), was.kg), mol: map[string]float64{}, solid: was.solid, hidden: was.hidden,
		pH: was.pH}
	perKg := map[string]float64{}
	for name, x := range was.mol {
		perKg[name] = x / was.kg
		a.mol[name] = perKg[name] * a.kg
	}
	a.out = b.decant(0, perKg, was.out.PH, was.kg-a.kg, a.solid["LiF_s"])
	a.out.Free = was.out.Free
	return a
}

// stays is the water that stays with the solid, kg, at a pH.
func (b *bench) stays(pH float64) float64 {
	if pH >= 4 {
		return b.retained * b.swells
	}
	return b.retained
}

// holds puts a state into a bath: what of it is dissolved in the water that stays, and all that
// is solid in the water of the cycle, kg. It returns what is dissolved per kg.
func (a *bath) holds(s *aqueous.State, kg float64) map[string]float64 {
	perKg := map[string]float64{}
	for _, name := range aqueous.Components() {
		if x, there := s.Total(name); there && name != "C(4)" {
			perKg[name], a.mol[name] = x, x*a.kg
		} else if there {
			a.mol[name] = x * a.kg
		}
	}
	for _, name := range solids {
		if x := s.Solid(name) * kg; x > 0 {
			a.solid[name] = x
		}
	}
	return perKg
}

// salt is the lithium fluoride of which no acid turns the fluoride to HF.
func salt(mol map[string]float64) float64 { return math.Min(mol["F"]-takes(mol), mol["Li"]) }

// takes is the base that brings what is dissolved to neutral, metals as hydroxides.
func takes(mol map[string]float64) float64 {
	return mol["F"] + mol["Cl"] + 2*mol["S(6)"] + mol["N(5)"] + 6*mol["TiF6"] + 4*mol["BF4"] + 6*mol["PF6"] +
		3*mol["Cit"] + mol["Asc"] - mol["Li"] - mol["Na"] - mol["K"] - 2*mol["Ca"] - 2*mol["Mg"]
}

func (b *bench) decant(n int, perKg map[string]float64, pH, litres, solid float64) Decant {
	fluoride := perKg["F"] + 6*perKg["TiF6"] + 4*perKg["BF4"] + 6*perKg["PF6"]
	return Decant{Number: n, Litres: math.Max(litres, 0), PH: pH, SlowPH: pH, Fluoride: fluoride * residue.Milligrams,
		SlowFluoride: fluoride * residue.Milligrams, Free: math.NaN(), Acid: takes(perKg) * 1000,
		Aluminium:   perKg["Al"] * 1000,
		Undissolved: solid * 1000}
}

// rinse is one cycle; ok is false where no equilibrium is found.
func (b *bench) rinse(was *bath, n int, begins Begins) (bath, bool) {
	m, kg := b.cycle(was)
	if n == 1 && begins == Acid {
		m.Totals = append(m.Totals, aqueous.Amount{Of: "Cl", Mol: strongRinse * b.water / kg})
	}
	switch {
	case len(b.carbonate) > 0: // no time for air to take up what it holds
		m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
	case n == 1 && begins == Bicarbonate:
		m.Added = []aqueous.Amount{{Of: "NaHCO3", Mol: bicarbonate * b.water / kg}}
		m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
	case b.air > 0:
		m.Gas = aqueous.Gas{Kind: aqueous.Open, Value: b.air}
	}
	s, err := b.model.Solve(m)
	if err != nil {
		return bath{}, false
	}
	return b.after(was, s, n, kg, was.hidden/2), true
}

// cycle is what is over the solid once the liquid of a cycle has come to it, per kg of its water,
// and that water. Half of what acid is left between the layers comes out, as HF.
func (b *bench) cycle(was *bath) (m aqueous.Mixture, kg float64) {
	kg = was.kg + b.water
	now := maps.Clone(was.mol)
	now["F"] += was.hidden / 2 // the charge is closed by hydrogen
	for _, a := range b.liquid {
		now[a.Of] += a.Mol * b.water
	}
	for _, name := range aqueous.Components() {
		if x := now[name] / kg; x > 1e-12 {
			m.Totals = append(m.Totals, aqueous.Amount{Of: name, Mol: x})
		}
	}
	for _, s := range solids {
		m.Solids = append(m.Solids, aqueous.Amount{Of: s, Mol: was.solid[s] / kg})
	}
	for _, a := range b.carbonate {
		m.Added = append(m.Added, aqueous.Amount{Of: a.Of, Mol: a.Mol * b.water / kg})
	}
	return m, kg
}

// The rinses that stand beside water, mol/L.
const (
	strongRinse = 1.5
	bicarbonate = 0.05
)

// after is what stays when a cycle is decanted.
func (b *bench) after(was *bath, s *aqueous.State, n int, kg, freed float64) bath {
	a := bath{mol: map[string]float64{}, solid: map[string]float64{}, hidden: was.hidden - freed, pH: s.PH()}
	a.kg = math.Min(b.stays(s.PH()), kg)
	perKg := a.holds(s, kg)
	mol, _ := s.Gas()
	a.gas = mol * kg
	pH, free := s.PH(), s.Free()*residue.Milligrams
	if len(s.Outside()) > 0 || holdsOn(perKg) {
		free = math.NaN()
	}
	if len(s.Outside()) > 0 {
		pH = math.NaN()
	}
	a.out = b.decant(n, perKg, pH, kg-a.kg, a.solid["LiF_s"])
	a.out.Free = free
	return a
}

// holdsOn reports whether complexes are there that keep their fluoride nobody knows how long.
func holdsOn(mol map[string]float64) bool { return mol["TiF6"]+mol["BF4"]+mol["PF6"] > 0 }

// follow washes until the target is there with the most held between layers, and at least
// as often as the route says, and looks on for the fluoride.
func (b *bench) follow(begins Begins) Way {
	w := Way{Begins: begins, Limit: b.collect, Left: math.NaN()}
	plain, slow := b.first, b.slow
	w.tell(&plain, &slow)
	last := 0
	for n := 1; n <= Most && (w.Slowly == 0 || w.Clean == 0 || n <= b.walked); n++ {
		listed := w.Slowly == 0 || n <= b.walked
		var ok, also bool
		if slow, also = b.rinse(&slow, n, begins); !also {
			break
		}
		if w.Clean == 0 && b.washed(&slow) && slow.out.Fluoride <= b.collect {
			w.Clean = n
		}
		if !listed {
			continue
		}
		if plain, ok = b.rinse(&plain, n, begins); !ok {
			break
		}
		w.tell(&plain, &slow)
		w.CarbonDioxide += plain.gas * b.litres
		if w.Needed == 0 && b.washed(&plain) {
			w.Needed = n
		}
		if w.Slowly == 0 && b.washed(&slow) {
			w.Slowly, w.Left = n, slow.out.Fluoride
		}
		if n == b.walked {
			w.Undissolved = w.Decants[n].Undissolved
			w.after = &[2]bath{plain, slow}
		}
		last = n
	}
	w.Settled = plain.solid["Cryolite"] * cryolite
	if w.Slowly > 0 {
		last = w.Slowly
	}
	w.Litres = float64(last) * b.water
	for i := range w.Decants {
		d := &w.Decants[i]
		d.Collected = i == 0 || d.SlowFluoride > b.collect
	}
	return w
}

// tell adds the decant of a cycle without acid between the layers and with the most.
func (w *Way) tell(plain, slow *bath) {
	d := plain.out
	d.Free = slow.out.Free
	d.SlowPH, d.SlowFluoride, d.Undissolved = slow.out.PH, slow.out.Fluoride, max(d.Undissolved, slow.out.Undissolved)
	d.Strength = d.SlowFluoride / 1e4 * hfPerF
	w.Decants = append(w.Decants, d)
}

const (
	cryolite = 209.94 // g/mol
	hfPerF   = 20.006 / 18.998
)

// washed reports whether the target is there and nothing that gives fluoride is undissolved.
func (b *bench) washed(a *bath) bool {
	return a.pH >= b.target-1e-9 && a.solid["LiF_s"] <= trace
}
