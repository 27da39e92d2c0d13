package scaling

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Run is what one run of a reviewed route takes, held against what its site keeps. It is
// told from the review as it stands: nothing is assessed again.
type Run struct {
	Substances []Holding // by CAS, then the powder
	Portions   []Portion // each material of each step, in the order of the route
	Tray       Tray
}

// Portion is one material of one step. Mol is all of it over all cycles; PerPhase is mol
// per mol of layered phase. WT in wt% and Molar in mol/L are the strength of a solution as
// it is poured; without a symbol where what goes in is no solution.
type Portion struct {
	Step          int
	Of            *route.Material
	Mol, PerPhase working.Num
	WT, Molar     working.Num
}

// Tray is what has to stand below the containers: the larger of the largest of them and a
// tenth of all, L. It is unknown while the capacity of one is.
type Tray struct {
	Volume  working.Num
	Largest string // key of the place
}

// RunOf is the run of a review.
func RunOf(r *hazards.Review) Run {
	c := &r.Case
	if c.Route == nil || c.Store == nil {
		return Run{}
	}
	figs := figure.NewSet(r.Figures)
	a := hazards.Assessment{Walk: r.Walk}
	all := taken(0, c, &a, figs)
	st := c.Store
	if c.Site != nil {
		st = ofTheSite(c.Site, st)
		all = append(kept(st, c.Site), all...)
	}
	out := Run{Tray: trayOf(c.Route)}
	if c.Limits != nil {
		out.Substances = gather(all, c.Site, c.Limits, st)
	}
	for i := range c.Route.Steps {
		out.Portions = append(out.Portions, portionsOf(c, &a, figs, &c.Route.Steps[i])...)
	}
	return out
}

// OnSite is what the site keeps of a substance, told by its CAS number.
func (r *Run) OnSite(cas string) (Mass, bool) {
	for i := range r.Substances {
		if h := &r.Substances[i]; cas != "" && h.CAS == cas {
			return h.Stock, true
		}
	}
	return Mass{}, false
}

// portionsOf is every material of a step, water among them.
func portionsOf(c *route.Case, a *hazards.Assessment, figs *figure.Set, s *route.Step) []Portion {
	var out []Portion
	var w *working.Sheet
	n := cycles(s, figs)
	t := taker{c, a, figs, s, nil, map[*chemicals.Substance]int{}}
	for j := range s.What {
		m := &s.What[j]
		p := Portion{Step: s.Number, Of: m}
		switch {
		case m.Precursor && a.Walk.Powder != nil:
			p.Mol = a.Walk.Powder.N
		case m.Substance == nil || m.Substance.NotHeld:
			p.Mol = working.Absent("n", "mol", working.Lacks("formula", nameOf(m)))
		default:
			t.m = m
			mid, _ := t.weigh()
			one := molOf(c, m, mid)
			p.Mol = w.Line("n", "mol", "n*N", one.V*n.V, one.As("n"), n.As("N"))
			p.WT, p.Molar = bothOf(c, m)
		}
		if q := a.Walk.Powder; q != nil {
			p.PerPhase = w.Line("x", "mol/mol", "n/p", p.Mol.V/q.N.V, p.Mol.As("n"), q.N.As("p"))
		}
		out = append(out, p)
	}
	return out
}

func nameOf(m *route.Material) string {
	if m.Substance == nil {
		return "precursor"
	}
	return m.Substance.Name
}

func molOf(c *route.Case, m *route.Material, x weighed) working.Num {
	var w *working.Sheet
	kg, molar := x.pure, m.Substance.Formula.MolarMass(c.Store, nil)
	if m.Substance.Solution == "water" {
		kg = x.whole
	}
	return w.Line("n", "mol", "1000*m/M", 1000*kg.V/molar.V, kg.As("m"), molar.As("M"))
}

// bothOf is the strength of a solution in both units, of one litre of it.
func bothOf(c *route.Case, m *route.Material) (wt, molar working.Num) {
	dissolved := m.Substance.State == "s" && !m.Volume.Set && !m.Mass.Set
	if !m.Strength.Set || dissolved || m.Substance.Solution == "water" {
		return
	}
	var w *working.Sheet
	litre := working.Exact("V", "mL", 1000, "one litre")
	ch := solution.Charged(c.Store, nil, m.Substance, m.Strength, litre, working.Num{})
	wt = w.Line("w", "wt%", "100*w", 100*ch.Fraction.V, ch.Fraction.As("w"))
	return wt, w.Line("c", "mol/L", "n", ch.Solute.V, ch.Solute.As("n"))
}

// trayOf goes over every container. Equal ones that share the contents count together in
// the tenth.
func trayOf(r *route.Route) Tray {
	var out Tray
	largest, all := 0.0, 0.0
	for i := range r.Places {
		p := &r.Places[i]
		if !p.Capacity.Set || p.Several() {
			out.Volume = working.Absent("V", "L", working.Lacks(working.NotGiven, "places."+p.Key+".capacity"))
			return Tray{Volume: out.Volume}
		}
		l := upper(p.Capacity).In("L")
		if l > largest {
			largest, out.Largest = l, p.Key
		}
		all += l * float64(max(p.Count, 1))
	}
	if len(r.Places) == 0 {
		return Tray{Volume: working.Absent("V", "L", working.Lacks(working.NotGiven, "places"))}
	}
	out.Volume = working.Exact("V", "L", math.Max(largest, all/10), "the largest, or a tenth of all")
	return out
}
