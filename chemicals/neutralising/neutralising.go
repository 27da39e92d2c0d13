// Package neutralising knows what a substance brings to an acid fluoride liquor:
// base, what binds fluoride, carbonate, ammonium, and by which balanced reaction
// it takes up an acid. It must not know any route, nor how much of anything is
// there.
package neutralising

import "etchbound/chemicals"

// Brings is what one mol of a substance brings, in mol.
type Brings struct {
	Base               float64 // base equivalents; 0 neutralises no acid, below 0 is an acid itself
	Carbon             float64 // carbon dioxide that acid frees
	Calcium, Magnesium float64 // each binds two fluorides
	Ammonium           float64 // ammonium it holds, or makes of ammonia
}

// Of is what one mol of a substance brings, read off its row and its formula.
func Of(s *chemicals.Substance) Brings {
	return Brings{Base: -s.Acid, Carbon: s.Carbonate(), Calcium: s.Count("Ca"), Magnesium: s.Count("Mg"),
		Ammonium: s.Ammonium}
}

// Binds is the fluoride that what it brings can bind, in mol.
func (b Brings) Binds() float64 { return 2 * (b.Calcium + b.Magnesium) }

// Agent reports whether it does anything to an acid fluoride liquor.
func (b Brings) Agent() bool { return !(b.Base <= 0) || !(b.Binds() <= 0) }

// Acid is what of a liquor takes base.
type Acid uint8

// The acids: HF, a strong acid, and aluminium fluoride in solution, which base
// turns into aluminium hydroxide.
const (
	HF Acid = iota
	Strong
	AluminiumFluoride
)

// equivalents is the base that one mol takes, in mol.
func (a Acid) equivalents() float64 {
	if a == AluminiumFluoride {
		return 3
	}
	return 1
}

// Term is X mol of a species of the rows of enthalpy; a product counts positive,
// a reactant negative.
type Term struct {
	X   float64
	Row string
}

// ion is a cation of one charge or two, and its fluoride where that is a solid.
type ion struct {
	element, row, fluoride string
	charge                 float64
}

var ions = [...]ion{{"Ca", "Ca(2+)(aq)", "CaF2(s)", 2}, {"Mg", "Mg(2+)(aq)", "MgF2(s)", 2},
	{"Li", "Li(+)(aq)", "", 1}, {"Na", "Na(+)(aq)", "", 1}, {"K", "K(+)(aq)", "", 1}}

const (
	ammonium   = "NH4(+)(aq)"
	fluoride   = "F(-)(aq)"
	acidHF     = "HF(aq)"
	aluminium  = "AlF3(aq)"
	hydroxide  = "Al(OH)3(s)"
	carbonGas  = "CO2(g)"
	waterOf    = "H2O(l)"
	tolerance  = 1e-9
	inAmmonium = 4 // hydrogen of one ammonium
)

// Row is the enthalpy row of a reagent as it comes: a gas in water, anything
// else as it is.
func Row(s *chemicals.Substance) string {
	state := s.State
	if state == "g" {
		state = "aq"
	}
	return s.Formula.Text + "(" + state + ")"
}

// Reaction is how the reagent takes up one mol of an acid. Calcium and
// magnesium bind the fluoride, the other cations leave it in solution, ammonium
// stays ammonium, carbonate leaves as carbon dioxide. It is false for a
// substance without base, and for one that holds more than this balances, such
// as an organic cation.
func Reaction(s *chemicals.Substance, a Acid) ([]Term, bool) {
	b := Of(s)
	if !(b.Base > 0) {
		return nil, false
	}
	e := a.equivalents()
	x := e / b.Base // mol of reagent
	r := reaction{fluorideIn: a != Strong, x: x, free: e}
	charge, known := r.cations(s, b)
	water, even := hydrogenAndOxygen(s, b, a, x, e)
	if !even || known != elements(s) || off(charge, b.Base) || off(s.Formula.Count("C"), b.Carbon) ||
		off(s.Formula.Count("N"), b.Ammonium) {
		return nil, false
	}
	if r.fluorideIn {
		r.add(r.free, fluoride)
	}
	if a == AluminiumFluoride {
		r.add(1, hydroxide)
	}
	r.add(x*b.Carbon, carbonGas)
	r.add(water, waterOf)
	r.add(-1, map[Acid]string{HF: acidHF, AluminiumFluoride: aluminium}[a])
	r.add(-x, Row(s))
	return r.terms, true
}

// reaction gathers the terms of x mol of a reagent; free is the fluoride that
// nothing has bound yet.
type reaction struct {
	terms      []Term
	fluorideIn bool
	x, free    float64
}

func (r *reaction) add(x float64, row string) {
	if row != "" && off(x, 0) {
		r.terms = append(r.terms, Term{x, row})
	}
}

// cations adds what the cations become, and returns their charge per mol with
// the number of elements they are.
func (r *reaction) cations(s *chemicals.Substance, b Brings) (charge float64, known int) {
	for _, c := range ions {
		n := s.Formula.Count(c.element)
		if n == 0 {
			continue
		}
		known++
		charge += c.charge * n
		if r.fluorideIn && c.fluoride != "" {
			r.add(r.x*n, c.fluoride)
			r.free -= c.charge * r.x * n
			continue
		}
		r.add(r.x*n, c.row)
	}
	r.add(r.x*b.Ammonium, ammonium)
	return charge + b.Ammonium, known
}

// elements counts those of a substance that are neither of water nor of
// carbonate nor of ammonium.
func elements(s *chemicals.Substance) int {
	n := 0
	for _, symbol := range s.Formula.Order {
		switch symbol {
		case "H", "O", "C", "N":
		default:
			n++
		}
	}
	return n
}

// hydrogenAndOxygen is the water that the reaction leaves, mol, by its hydrogen,
// and whether the oxygen agrees.
func hydrogenAndOxygen(s *chemicals.Substance, b Brings, a Acid, x, e float64) (float64, bool) {
	h, o := x*(s.Formula.Count("H")-inAmmonium*b.Ammonium), x*(s.Formula.Count("O")-2*b.Carbon)
	if a == AluminiumFluoride {
		h, o = h-e, o-e
	} else {
		h += e
	}
	return h / 2, !off(h/2, o)
}

func off(a, b float64) bool { return a-b > tolerance || b-a > tolerance }

// Binding is how the calcium and magnesium of one mol bind fluoride in solution: as ions,
// where base takes up its acid as well, or out of HF, whose acid then stays as that of the
// salt (H+ has no enthalpy of its own).
func Binding(s *chemicals.Substance, acid bool) []Term {
	of := fluoride
	if acid {
		of = acidHF
	}
	var out []Term
	for _, c := range ions {
		if n := s.Formula.Count(c.element); n > 0 && c.fluoride != "" {
			out = append(out, Term{n, c.fluoride}, Term{-n, c.row}, Term{-c.charge * n, of})
		}
	}
	return out
}
