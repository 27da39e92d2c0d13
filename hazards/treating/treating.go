package treating

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
	"etchbound/hazards/waste"
)

// Liquor is one liquor, or all of them together, with all that could be put to it.
type Liquor struct {
	Step            int     // that neutralises it; 0 where none does
	Place           string  // that holds it; empty for all acid liquors of the route together
	Base            float64 // mol that bring it to neutral, with metals as hydroxides
	Fluoride        float64 // mol, all of it
	Held            float64 // mol of it that cold base leaves in complexes
	Water           float64 // L of it
	Celsius         float64 // at which equilibria are worked out
	Thinned         float64 // times the water in which equilibria are worked out; 0 where none are
	Ways            []Way
	Written         *Written // what the step writes; nil where it writes nothing that does anything
	Curves          []Curve  // dose by dose, of lime and of what is written or chalk
	Worst           *Liquor  // the usual ways and the curves at the dangerous end of the data; nil where that is here
	thin            aqueous.Mixture
	liquors         waste.Liquors
	aluminium, kilo float64 // mol; kg of water in the pools alone
}

// Way is one agent, or two that complete one another.
type Way struct {
	Parts         []Part
	Heat          float64    // kJ
	Rise          float64    // K, on the water that is there
	WaterFirst    float64    // L
	CarbonDioxide float64    // L
	Ammonia       float64    // L
	SludgeDry     float64    // g
	SludgeWet     [2]float64 // L
	AcidLeft      float64    // mol of acid, or what still takes base
	Binds         bool       // calcium or magnesium of it settles fluoride
	Borate        bool       // it makes fluoroborate
	PH            float64    // at which Left is; NaN where it is not known
	Left          float64    // mg/L of fluoride dissolved, with its ends
	Ends          [2]float64
	Practical     [2]float64 // mg/L that practice leaves
	As            bool       // an organic ion counts as one that is held
	Outside       bool       // beyond what the equilibria are held for, or none is held
	False         *FalseEnd
	MinutesHeat   float64 // that the dose takes in a bare container without water first
	MinutesGas    float64 // that it takes for its carbon dioxide
	Dosing        *Dosing // of the usual ways; nil where it cannot be worked out
}

// Part is so much of one agent, g: what is needed, and with the excess of practice.
type Part struct {
	Sub           *chemicals.Substance
	Grams, Excess float64
}

// FalseEnd is a pH that seems the end and is not.
type FalseEnd struct {
	PH    float64
	Share float64 // of the dose that Left is at
	Left  float64 // mg/L of fluoride dissolved over fresh hydroxide of aluminium ...
	Aged  float64 // ... and over aged; NaN where it is not known
}

// Written is what a step writes held against its liquor.
type Written struct {
	Subs     []*chemicals.Substance
	AcidLeft float64 // mol; below 0 base is over
	Strong   float64 // mol of it that is the acid of a binder's anion
	Short    float64 // share of the fluoride that no calcium or magnesium is there for; 1 where there is none
	PH, Left float64 // at equilibrium with all of it; NaN where none is known
	Outside  bool
	Thinned  float64 // times its own water that is in; 0 in all the water that is there
}

// Read sets the agents side by side for every liquor of a walk that holds acid or fluoride.
func Read(c route.Case, k *process.Walk) []Liquor { return read(c, k, false) }

// Usual is Read for the usual ways alone, as for another end of the data.
func Usual(c route.Case, k *process.Walk) []Liquor { return read(c, k, true) }

func read(c route.Case, k *process.Walk, usual bool) []Liquor {
	if k.Open != nil {
		return nil
	}
	b := bench{c: c, practice: practiceOf(c.Store), usual: usual}
	var of []*process.Liquor
	for i := range k.Treated {
		if l := &k.Treated[i]; b.matters(l) {
			of = append(of, l)
		}
	}
	if len(of) == 0 {
		return nil
	}
	step := 0 // together they stand as they are
	if len(of) == 1 {
		step = of[0].Step
	}
	out := []Liquor{b.read(step, of...)}
	b.curves(&out[0], of)
	if len(of) == 1 {
		out[0].Step, out[0].Place = of[0].Step, of[0].Place
		b.written(&out[0], of[0])
		return out
	}
	for _, l := range of {
		if l.Step > 0 {
			x := b.read(l.Step, l)
			x.Step, x.Place = l.Step, l.Place
			b.written(&x, l)
			out = append(out, x)
		}
	}
	return out
}

// bench is what all liquors share.
type bench struct {
	c        route.Case
	model    *aqueous.Model
	practice practice
	usual    bool // no other ways
	kept     map[string]Way
}

// matters reports whether a liquor holds acid or fluoride that is told of.
func (b *bench) matters(l *process.Liquor) bool {
	x := waste.Together(b.c, l)
	base, fluoride := x.Base().V, x.Fluoride().V
	return !(base <= 1e-6) || !(fluoride <= 1e-6)
}

func (b *bench) read(step int, of ...*process.Liquor) Liquor {
	b.model = residue.At(b.c, step).Set
	l := Liquor{liquors: waste.Together(b.c, of...), Celsius: b.model.Celsius()}
	known := true
	for _, x := range []struct {
		to   *float64
		from float64
	}{{&l.Base, l.liquors.Base().V}, {&l.Fluoride, l.liquors.Fluoride().V},
		{&l.aluminium, l.liquors.Aluminium().V}, {&l.Water, l.liquors.Water().V / 1000}} {
		*x.to = x.from
		known = known && x.from == x.from
	}
	if h := l.liquors.Held(); !h.None() {
		l.Held = h.V
	}
	pools := make([]*process.Pool, len(of))
	for i := range of {
		pools[i] = &of[i].Pool
	}
	m, water, held := residue.Whole(b.c.Store, pools...)
	if l.kilo = water; held && known {
		l.thin, l.Thinned = b.thinned(m)
	}
	b.kept = map[string]Way{}
	for _, doses := range b.ways(&l) {
		if first := doses[0].Sub; !b.usual || usual(first) {
			l.Ways = append(l.Ways, b.way(&l, doses))
		}
	}
	return l
}

// thinned is a liquor in so much water that the equilibria are held for it as it is and
// once it is limed.
func (b *bench) thinned(m aqueous.Mixture) (aqueous.Mixture, float64) {
	for _, times := range [...]float64{1, 10, 100} {
		x := residue.Thin(m, times)
		limed := x
		limed.Reagent, limed.FixedPH, limed.Solids = "Ca(OH)2", aimed, solids(false)
		if b.inside(x) && b.inside(limed) {
			return x, times
		}
	}
	return residue.Thin(m, 100), 100
}

func (b *bench) inside(m aqueous.Mixture) bool {
	s, err := b.model.Solve(m)
	return err == nil && len(s.Outside()) == 0
}

// written holds what a step writes against its liquor.
func (b *bench) written(l *Liquor, of *process.Liquor) {
	w := Written{Short: 1, AcidLeft: l.Base, PH: math.NaN(), Left: math.NaN()}
	var m aqueous.Mixture
	for i := range of.Doses {
		d := &of.Doses[i]
		x := bringsOf(d.Sub)
		if !x.any() {
			continue
		}
		w.Subs = append(w.Subs, d.Sub)
		w.AcidLeft -= x.base * d.N.V
		w.Short -= x.binds * d.N.V / l.Fluoride
		f, _ := formula(d.Sub)
		m.Added = append(m.Added, aqueous.Amount{Of: f, Mol: d.N.V})
		if x.carbon > 0 {
			m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
		}
	}
	if w.Subs == nil {
		return
	}
	if w.Outside = true; !(l.Fluoride > 0) {
		w.Short = 0
	}
	if bound := l.Fluoride * (1 - max(w.Short, 0)); w.AcidLeft > 0 {
		w.Strong = min(bound, w.AcidLeft)
	}
	if l.Written = &w; !(l.Thinned > 0) || b.all(&w, l, m, l.Water/l.kilo) {
		return
	}
	for _, times := range [...]float64{l.Thinned, 10 * l.Thinned, 100 * l.Thinned} {
		if w.Thinned = times; times > 100 || b.all(&w, l, m, times) {
			break
		}
	}
}

// all is the equilibrium of a liquor in so many times its own water with all that is written,
// mol; it is false where that is beyond what equilibria are held for.
func (b *bench) all(w *Written, l *Liquor, m aqueous.Mixture, times float64) bool {
	doses, carbonated := m.Added, m.Gas
	if m = residue.Thin(l.thin, times/l.Thinned); carbonated.Kind != aqueous.None {
		m.Gas = carbonated
	}
	for _, a := range doses {
		m.Added = append(m.Added, aqueous.Amount{Of: a.Of, Mol: a.Mol / l.kilo / times})
	}
	m.Solids = solids(false)
	s, err := b.model.Solve(m)
	if err != nil {
		return false
	}
	w.PH, w.Left, w.Outside = s.PH(), s.Fluoride()*residue.Milligrams, len(s.Outside()) > 0
	return !w.Outside
}
