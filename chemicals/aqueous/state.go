package aqueous

import (
	"fmt"
	"math"
)

// State is an equilibrium that was found.
type State struct {
	w   *work
	mix *Mixture
}

// state checks what was found once more, by the constants and the balances as they are
// written, and refuses it where anything is off.
func (w *work) state(mix *Mixture) (*State, error) {
	s := &State{w, mix}
	if off := s.Closure(); !(off <= closure) {
		return nil, fmt.Errorf("no equilibrium was found: the balances are off by %.1g. Nothing is answered", off)
	}
	if s.IonicStrength() > strongest*0.9 || math.Abs(w.drawn) > bound || !w.fixed && !(w.tauWater > perKg*1e-2) ||
		!(s.WaterActivity() > driest) {
		return nil, fmt.Errorf("the solution is too strong for any model held here: ionic strength %.3g mol/kg, "+
			"activity of water %.2f. Dilute it first", s.IonicStrength(), s.WaterActivity())
	}
	if w.space > 0 {
		if f := s.Fugacity(); f >= densest {
			return nil, fmt.Errorf("carbon dioxide would reach %.3g atm, where it is no gas: no figure is held", f)
		}
	}
	return s, nil
}

// closure is the largest share by which an element or the charges may be off.
const closure = 1e-10

// Closure is the worst by which an element, the charges, the water or a constant is off,
// as a share of what there is. It is worked out from the amounts, and not by the equations
// that found them.
func (s *State) Closure() float64 {
	w := s.w
	k := w.m.known
	worst := 0.0
	total, _ := w.loose()
	sum, size := make([]float64, len(total)), make([]float64, len(total))
	charge, charges := 0.0, 1e-300
	i := math.Min(math.Exp(w.lnI), strongest)
	root := math.Sqrt(i)
	for n, r := range w.spec {
		e := &k.rows[r]
		mol := w.mol[n]
		charge, charges = charge+mol*e.charge, charges+mol*math.Abs(e.charge)
		ln := w.m.ln[r] + e.water*w.lnWater
		for at := w.made.at[n]; at < w.made.at[n+1]; at++ {
			j, of := w.made.which[at], w.made.count[at]
			sum[j] += mol * of
			size[j] += mol * math.Abs(of)
			ln += of * w.x[j]
		}
		g, _ := w.kinds[w.kind[n]].activity(i, root)
		if mol > 1e-290 {
			worst = larger(worst, 0.01*math.Abs(ln-g-w.ln[n])) // a constant to 1e-8
		}
	}
	for j, c := range w.comp {
		sum[j], size[j] = s.gasShare(c, sum[j]-total[j], size[j]+math.Abs(total[j])+1e-300)
		for _, a := range w.active {
			v := w.holds[a].moved * w.holds[a].brings[j]
			sum[j], size[j] = sum[j]+v, size[j]+math.Abs(v)
		}
		worst = larger(worst, math.Abs(sum[j])/size[j])
	}
	return larger(worst, math.Abs(charge)/charges)
}

// larger keeps what is not a number.
func larger(a, b float64) float64 {
	if a > b || math.IsNaN(a) {
		return a
	}
	return b
}

// gasShare adds the gas of a rigid space.
func (s *State) gasShare(c int, sum, size float64) (float64, float64) {
	w := s.w
	if w.space == 0 {
		return sum, size
	}
	v := w.mol[len(w.spec)] * w.m.known.rows[w.m.carbon].of[c]
	return sum + v, size + math.Abs(v)
}

// PH is -log10 of the activity of H+.
func (s *State) PH() float64 { return -s.w.x[0] / math.Ln10 }

// IonicStrength is in mol per kg of water.
func (s *State) IonicStrength() float64 { return 0.5 * s.w.charges }

// WaterActivity is that of pure water's 1.
func (s *State) WaterActivity() float64 { return math.Exp(s.w.lnWater) }

// Water is the kg of water there is at the end, of 1 kg at the start.
func (s *State) Water() float64 { return math.Exp(s.w.lnKg) }

// Molality of a species by its name, mol per kg of water at the end; 0 where what it is
// made of is nowhere, and false for a name that is not held.
func (s *State) Molality(species string) (float64, bool) {
	k := s.w.m.known
	i, there := k.byName[species]
	if !there || k.rows[i].kind != kindMaster && k.rows[i].kind != kindSpecies {
		return math.NaN(), false
	}
	for n, r := range s.w.spec {
		if r == i {
			return s.w.mol[n] / s.Water(), true
		}
	}
	return 0, true
}

// Total is what is dissolved of a component, mol per kg of water at the end; false for a
// name that is none.
func (s *State) Total(component string) (float64, bool) {
	k := s.w.m.known
	j, there := k.byPart[component]
	if !there {
		return math.NaN(), false
	}
	sum := 0.0
	for n, r := range s.w.spec {
		sum += s.w.mol[n] * k.rows[r].of[j]
	}
	return sum / s.Water(), true
}

// Fluoride is all that is dissolved, mol per kg of water at the end, that in complexes
// which keep theirs included.
func (s *State) Fluoride() float64 {
	sum := 0.0
	k := s.w.m.known
	for n, r := range s.w.spec {
		for j := range k.masters {
			sum += s.w.mol[n] * k.rows[r].of[j] * k.rows[j].fluoride
		}
	}
	return sum / s.Water()
}

// Free is the fluoride of which nothing but H+ and alkali ions take hold, HF, F- and HF2-
// with it, mol per kg of water at the end.
func (s *State) Free() float64 {
	return s.fluorideOf(func(e *entry, k *known) bool {
		for j, n := range e.of {
			if n != 0 && j > 0 && k.rows[j].component != "F" && !alkali[k.rows[j].component] {
				return false
			}
		}
		return true
	})
}

// alkali are the ions that hold fluoride so loosely that it counts as free.
var alkali = map[string]bool{"Na": true, "K": true, "Li": true, "N(-3)": true}

// Bound is the fluoride in what holds a component as well, mol per kg of water at the end.
func (s *State) Bound(component string) float64 {
	to, there := s.w.m.known.byPart[component]
	if !there {
		return math.NaN()
	}
	return s.fluorideOf(func(e *entry, _ *known) bool { return e.of[to] != 0 })
}

// fluorideOf is the fluoride in the species that are asked for, mol per kg of water.
func (s *State) fluorideOf(asked func(*entry, *known) bool) float64 {
	k := s.w.m.known
	f, sum := k.byPart["F"], 0.0
	for n, r := range s.w.spec {
		if e := &k.rows[r]; e.of[f] != 0 && asked(e, k) {
			sum += s.w.mol[n] * e.of[f]
		}
	}
	return sum / s.Water()
}

// Solid is the mol of a solid at the end, per kg of water at the start.
func (s *State) Solid(name string) float64 {
	for _, h := range s.w.holds {
		if h.name == name && h.row >= 0 && h.on {
			return h.start + h.moved
		}
	}
	return 0
}

// Transfer is what a solid gained, below 0 where it dissolved, mol per kg of water at the
// start.
func (s *State) Transfer(name string) float64 {
	for _, h := range s.w.holds {
		if h.name == name && h.row >= 0 {
			if h.on {
				return h.moved
			}
			return -h.start
		}
	}
	return 0
}

// Reagent is what was added to keep the pH, below 0 where it had to be withdrawn, mol per
// kg of water at the start; 0 where none was asked for.
func (s *State) Reagent() float64 {
	for _, h := range s.w.holds {
		if h.row < 0 && h.name == s.mix.Reagent {
			return -h.moved
		}
	}
	return 0
}

// Kept reports whether a reagent keeps the pH.
func (s *State) Kept() bool { return s.mix.Reagent != "" }

// Gas is the carbon dioxide gas, mol per kg of water at the start, that stands over the
// solution, and its volume in litres at the temperature and pressure it has.
func (s *State) Gas() (mol, litres float64) {
	w := s.w
	t := w.m.kelvin
	switch s.mix.Gas.Kind {
	case Pressure:
		mol = s.Solid(w.m.known.rows[w.m.carbon].name)
		_, z := carbonDioxide.at(t, s.mix.Gas.Value)
		return mol, mol * z * litreAtm * t / s.mix.Gas.Value
	case Space:
		return w.mol[len(w.spec)], w.space
	}
	return 0, 0
}

// Air is the carbon dioxide, mol per kg of water at the start, that air without end gained;
// below 0 where the solution took it up.
func (s *State) Air() float64 {
	if s.mix.Gas.Kind != Open {
		return 0
	}
	return s.Transfer(s.w.m.known.rows[s.w.m.carbon].name)
}

// Fugacity of carbon dioxide over the solution, atm; about its pressure below 5 atm.
func (s *State) Fugacity() float64 { return s.over(s.w.m.carbon) }

// Ammonia is the pressure of ammonia over the solution, atm.
func (s *State) Ammonia() float64 { return s.over(s.w.m.ammonia) }

// Saturation is log10 of ion product over constant of a solid: 0 is saturated, above 0
// it would settle. It is -Inf where something of it is nowhere.
func (s *State) Saturation(solid string) float64 {
	i, there := s.w.m.known.byName[solid]
	if !there {
		return math.NaN()
	}
	return math.Log10(s.over(i))
}

// over is the activity that a row would have.
func (s *State) over(row int) float64 {
	w := s.w
	e := &w.m.known.rows[row]
	some := uint32(0)
	sum := w.m.ln[row] + e.water*w.lnWater
	for j, c := range w.comp {
		sum += e.of[c] * w.x[j]
		some |= 1 << c
	}
	if e.present&^some != 0 {
		return 0
	}
	return math.Exp(sum)
}

// Pressure is that of the carbon dioxide gas, atm; without gas what it would have.
func (s *State) Pressure() float64 {
	p, _ := carbonDioxide.of(s.w.m.kelvin, s.Fugacity())
	return p
}
