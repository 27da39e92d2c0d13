// Package labelling says what stands on the label of each bottle as it is delivered and
// of each liquor of a route: classes of hazard with their statements, the entry it is
// carried under, and where it stands in a store. Fluoride that meets acid, that is acid by
// itself, or that was dry and hot in the air, counts as hydrofluoric acid, all of it, at the
// dangerous end of its strength; what else was poured together counts as it was put in,
// whatever it has reacted with, and what was neutralised as what it was before, until its pH
// and its fluoride are measured.
// It must not know how a class is found (chemicals/classifying does) nor how one is
// printed. Start at Of.
package labelling

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Label is what stands on one label.
type Label struct {
	Substance *chemicals.Substance // as delivered; nil for a liquor of the route
	Strength  string               // of it as it is written; "" undiluted
	Place     string               // key of the place of a liquor
	Steps     []int                // after which it holds; none: at the end of the route

	Hydrofluoric bool // it is headed as hydrofluoric acid
	Dried        bool // of solids that were dried: their mass counts
	Dry          bool // of salts that no liquid has come to: they count as they are
	FormsIn      int  // first step that makes hydrofluoric acid of this dry salt; 0: none
	Would        bool // of a dry salt that would, and in no step of the route does
	Neutralised  bool // it is classified as it was before
	Extreme      bool // corrosive by its pH alone, 2 or below or 11.5 or above by what was put in
	Product      bool // it holds nanosheets, which nobody has classified

	classifying.Classified
	Carried *classifying.Entry // nil: no entry held here fits
	Stands  []classifying.Store
}

// Of gives the labels of a route: what is delivered first, then the liquors in the order
// in which they come to be, and what each place holds at the end.
func Of(c route.Case, k *process.Walk, figures []figure.Figure) []Label {
	l := labeller{c: c, k: k, strength: map[figure.Place]float64{}}
	l.hf, _ = chemicals.Library().Find("hf")
	l.water, _ = chemicals.Library().Find("water")
	for i := range figures {
		f := &figures[i]
		if f.Quantity == "fluoride.hf_strength" && f.Agent == "" && f.Case == (figure.Case{}) {
			l.strength[f.Place] = most(f)
		}
	}
	l.delivered()
	last := map[string]figure.Place{}
	for i := range k.Steps {
		d := &k.Steps[i]
		at := figure.Step(d.Number)
		l.liquor(&d.After, d.Number, at)
		last[d.Place] = at
		if d.Filled != nil {
			l.liquor(d.Filled, d.Number, figure.Place{})
			delete(last, d.Filled.Place) // what came into it is what its end tells of
		}
	}
	for i := range k.Ends {
		s := &k.Ends[i]
		at, there := last[s.Place]
		if !there {
			at = figure.At(s.Place)
		}
		l.liquor(s, 0, at)
	}
	return l.out
}

// most is the high end of a figure, NaN where it is not known.
func most(f *figure.Figure) float64 {
	if f.Value.Unknown() {
		return math.NaN()
	}
	return max(f.Value.V, f.High().V)
}

type labeller struct {
	c         route.Case
	k         *process.Walk
	strength  map[figure.Place]float64 // of hydrofluoric acid, wt% at most
	hf, water *chemicals.Substance
	out       []Label
}

// delivered are the bottles of the materials, each strength once.
func (l *labeller) delivered() {
	for i := range l.c.Route.Steps {
		for j := range l.c.Route.Steps[i].What {
			m := &l.c.Route.Steps[i].What[j]
			if m.Substance == nil || m.Substance.Kind == "water" || l.labelled(m) {
				continue
			}
			share := 100.0
			if m.Strength.Set {
				g := working.Given("m", "g", 100, "")
				share = 100 * solution.Charged(l.c.Store, nil, m.Substance, l.c.Ranged(m.Strength), working.Num{}, g).Fraction.V
			}
			x := Label{Substance: m.Substance, Strength: m.Strength.Text}
			parts := []classifying.Part{{Sub: m.Substance, Share: share}}
			dry := m.Substance.State == "s" && !m.Strength.Set
			if dry && m.Substance.Formula.Count("F") > 0 {
				x.FormsIn = l.formed(m.Substance)
				x.Would = x.FormsIn == 0
			}
			l.put(&x, parts, dry)
			l.out = append(l.out, x)
		}
	}
}

func (l *labeller) labelled(m *route.Material) bool {
	return slices.ContainsFunc(l.out, func(x Label) bool {
		return x.Substance == m.Substance && x.Strength == m.Strength.Text
	})
}

// formed is the first step after which the fluoride of a substance stands as hydrofluoric
// acid somewhere: with acid, or by itself, once it is wet or hot in the air. 0 where none does.
func (l *labeller) formed(sub *chemicals.Substance) int {
	for i := range l.k.Steps {
		d := &l.k.Steps[i]
		for _, s := range []*process.State{&d.After, d.Filled} {
			if s != nil && !s.Powdery() && l.acidFluoride(s) && has(s, sub) {
				return d.Number
			}
		}
	}
	return 0
}

// has reports whether a substance was put into what a place holds.
func has(s *process.State, sub *chemicals.Substance) bool {
	return slices.ContainsFunc(s.Liquid, func(q process.Pool) bool {
		return slices.ContainsFunc(q.Entries, func(e process.Entry) bool { return e.Sub == sub })
	})
}

// acidFluoride reports whether fluorine stands in a place together with acid, or with what
// makes acid of it: ammonium, water on a complex, the air on a hot salt. What the data do not
// hold may.
func (l *labeller) acidFluoride(s *process.State) bool {
	acid, fluorine := s.Fumes, false
	for i := range s.Liquid {
		for _, e := range s.Liquid[i].Entries {
			if e.Sub == nil || e.Sub.Kind == "water" {
				continue
			}
			f := e.Sub.Formula.Count("F") > 0
			fluorine = fluorine || f
			acid = acid || e.Sub.Acid > 0 || e.Sub.NotHeld || f && (e.Sub.Ammonium > 0 || e.Sub.HydrolysisHF > 0)
		}
	}
	return acid && fluorine
}

// liquor labels what a place holds, after a step or at the end; what is labelled as it
// was before is told with that.
func (l *labeller) liquor(s *process.State, step int, at figure.Place) {
	wet := slices.ContainsFunc(s.Liquid, func(q process.Pool) bool { return q.Mass.Unknown() || q.Mass.V*q.Kept() > 0 })
	if !wet {
		return
	}
	x := Label{Place: s.Place, Neutralised: s.Neutralised, Product: slices.ContainsFunc(s.Solids,
		func(p process.Solid) bool { return p.Kind == process.Product })}
	if step > 0 {
		x.Steps = []int{step}
	}
	x.Dried, x.Dry = s.Dried(), s.Powdery()
	l.put(&x, l.parts(s, at), x.Dried || x.Dry)
	if x.Carried != nil && x.Carried.Free && len(s.Solids) > 0 {
		x.Carried = nil // nobody has classified them
	}
	x.Extreme = !x.Dried && !x.Dry && extreme(s) && x.Classified.Extreme()
	x.Hydrofluoric = x.Hydrofluoric || x.Dry && l.acidFluoride(s)
	for i := len(l.out) - 1; i >= 0; i-- {
		if o := &l.out[i]; o.Substance == nil && o.Place == s.Place {
			if same(o, &x) {
				o.Steps, o.Product = append(o.Steps, x.Steps...), o.Product || x.Product
				return
			}
			break
		}
	}
	l.out = append(l.out, x)
}

// trace is what no balance of a laboratory shows, in g: what was dried and weighs less has no
// share that means anything.
const trace = 1e-6

// parts are what a liquor is mixed of, or dried solids with what was dissolved, in wt%,
// fluoride that is acid as hydrofluoric acid.
func (l *labeller) parts(s *process.State, at figure.Place) []classifying.Part {
	mass, fluoride, unsaid := 0.0, 0.0, s.Unsaid() != nil
	grams := map[*chemicals.Substance]float64{}
	var order []*chemicals.Substance
	dried, hydrofluoric := s.Dried(), !s.Powdery() && l.acidFluoride(s)
	for i := range s.Liquid {
		q := &s.Liquid[i]
		mass, fluoride = mass+q.Mass.V*q.Kept(), fluoride+process.Element(nil, q, "F").V
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil || e.Sub.Kind == "water" {
				continue
			}
			m := e.N.V * q.Kept() * e.Sub.Formula.MolarMass(l.c.Store, nil).V
			if dried && process.DriesOff(e.Sub) {
				mass -= m
				continue
			}
			if _, there := grams[e.Sub]; !there {
				order = append(order, e.Sub)
			}
			grams[e.Sub] += m
		}
	}
	mass = max(mass, 0) // of rounding
	for i := range s.Solids {
		if x := &s.Solids[i]; dried && !x.Mass.None() {
			mass += x.Mass.V
		}
	}
	var out []classifying.Part
	if dried && mass < trace {
		if hydrofluoric {
			return []classifying.Part{{Sub: l.hf}} // none of it, yet it is headed so
		}
		return nil
	}
	if hydrofluoric {
		w := 100 * fluoride * l.hf.Formula.MolarMass(l.c.Store, nil).V / mass
		if most, there := l.strength[at]; there && !at.IsZero() && !dried { // a trace has no figure
			w = max(w, most)
		}
		if unsaid {
			w = math.NaN()
		}
		out = append(out, classifying.Part{Sub: l.hf, Share: w})
	}
	for _, sub := range order {
		if hydrofluoric && (sub == l.hf || sub.Formula.Count("F") > 0 && sub.Acid == 0) {
			continue // counted as the acid it makes
		}
		w := 100 * grams[sub] / mass
		if unsaid {
			w = math.NaN()
		}
		out = append(out, classifying.Part{Sub: sub, Share: w})
	}
	return out
}

// put classifies a label.
func (l *labeller) put(x *Label, parts []classifying.Part, dry bool) {
	x.Classified = classifying.Mixture(parts)
	if e, ok := classifying.Carried(&x.Classified, parts, dry); ok && (e.Free || len(x.Classes)+len(x.NotHeld) > 0) {
		x.Carried = &e
	}
	x.Hydrofluoric = slices.ContainsFunc(parts, func(p classifying.Part) bool { return p.Sub == l.hf })
	x.Stands = classifying.Stands(&x.Classified, parts)
}

// same reports whether two labels of a place say the same.
func same(a, b *Label) bool {
	key := func(x *Label) []string {
		var out []string
		for _, f := range x.Classes {
			out = append(out, f.Class.Key)
		}
		if x.Carried != nil {
			out = append(out, x.Carried.Number+x.Carried.Group)
		}
		return append(out, x.NotHeld...)
	}
	return slices.Equal(key(a), key(b)) && a.Neutralised == b.Neutralised &&
		a.Hydrofluoric == b.Hydrofluoric && a.Extreme == b.Extreme && a.Dried == b.Dried && a.Dry == b.Dry
}

// Worst is the label that a container bears from the start: what any liquor of the place has, of
// each family of classes the severest. It is nil where the place has none.
func Worst(labels []Label, place string) *Label {
	var out *Label
	for i := range labels {
		switch l := &labels[i]; {
		case l.Substance != nil || l.Place != place:
		case out == nil:
			first := *l
			out = &first
		default:
			out.Classified = out.Together(l.Classified)
			out.Hydrofluoric = out.Hydrofluoric || l.Hydrofluoric
		}
	}
	return out
}
