package treating

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/waste"
)

// Where the fluoride that stays is told, the ends of its range, and where the acid seems
// gone.
const (
	aimed = 8
	first = 6
	last  = 9
)

// silica may settle as well: what is left of a complex of silicon weighs in the sludge.
var silica = residue.Solid{Of: "SiO2(a)", Formula: "SiO2"}

// solids are what may settle, fresh or aged.
func solids(aged bool) []aqueous.Amount {
	return append(residue.Settles(aged), aqueous.Amount{Of: silica.Of})
}

// way is one way with all figures of it.
func (b *bench) way(l *Liquor, doses []waste.Dose) Way {
	nan := math.NaN()
	w := Way{PH: nan, Left: nan, Ends: [2]float64{nan, nan}, Practical: [2]float64{nan, nan}, Outside: true,
		AcidLeft: l.Base}
	var sum brings
	for _, d := range doses {
		x := bringsOf(d.Sub)
		sum.base, sum.binds = sum.base+x.base*d.Mol, sum.binds+x.binds*d.Mol
		sum.carbon, sum.boron = sum.carbon+x.carbon*d.Mol, sum.boron+x.boron*d.Mol
		sum.calcium = sum.calcium || x.calcium
		grams := d.Mol * d.Sub.Formula.MolarMass(b.c.Store, nil).V
		w.Parts = append(w.Parts, Part{d.Sub, grams, grams * b.practice.excess(x)})
		_, asIs := formula(d.Sub)
		w.As = w.As || !asIs
	}
	w.Binds, w.Borate = sum.binds > 0, sum.boron > 0
	w.AcidLeft = max(l.Base-sum.base, 0)
	if sum.boron > 0 { // BF4- is the anion of a strong acid: of four HF one acid stays
		w.AcidLeft = max(l.Base-3*sum.boron, 0)
	}
	b.figures(&w, l, doses)
	hydroxide := func(d waste.Dose) bool { x := bringsOf(d.Sub); return x.base > 0 && x.carbon == 0 }
	if n := l.liquors.Ammonium(); slices.ContainsFunc(doses, hydroxide) && !(n.V <= 0) {
		w.Ammonia += n.V * b.litres()
	}
	b.sludge(&w, l, sum)
	b.left(&w, l, doses)
	b.inPractice(&w, l, sum)
	b.minutes(&w, l)
	if w.Usual() {
		w.Dosing = b.dosing(&w, l)
	}
	return w
}

// Usual reports whether a way begins with what is offered for waste, or binds alone what is
// usually bought for that, and ends with no other binder.
func (w *Way) Usual() bool {
	if len(w.Parts) > 1 {
		if second := w.Parts[1].Sub.Slug; second != beside && second != lime {
			return false
		}
	}
	return usual(w.Parts[0].Sub)
}

func usual(first *chemicals.Substance) bool {
	return first.WasteAgent > 0 || bringsOf(first).boron > 0 || first.Slug == beside
}

// figures takes what package waste says of the same doses.
func (b *bench) figures(w *Way, l *Liquor, doses []waste.Dose) {
	w.Heat, w.Rise, w.WaterFirst = math.NaN(), math.NaN(), math.NaN()
	if w.Borate {
		return
	}
	for _, f := range l.liquors.With(doses...) {
		switch f.Quantity {
		case "neutralise.heat":
			w.Heat = f.Value.V
		case "neutralise.temperature_rise":
			w.Rise = f.Value.V
		case "neutralise.dilution_water":
			w.WaterFirst = f.Value.V
		case "neutralise.carbon_dioxide":
			w.CarbonDioxide = f.Value.V
		}
	}
	for _, d := range doses {
		w.Ammonia += d.Sub.Ammonium * d.Mol * process.MolarVolume(b.c.Store, nil).V
	}
}

// left is what stays dissolved: the same where two ways come to the same.
func (b *bench) left(w *Way, l *Liquor, doses []waste.Dose) {
	var name strings.Builder
	for _, d := range doses {
		text, _ := formula(d.Sub)
		x := bringsOf(d.Sub)
		fmt.Fprintf(&name, "%s %.9g %.9g %v;", text, x.base*d.Mol, x.binds*d.Mol, w.Borate)
	}
	was, there := b.kept[name.String()]
	if !there {
		b.dissolved(w, l, doses)
		b.kept[name.String()] = *w
		return
	}
	w.PH, w.Left, w.Ends, w.Outside, w.False = was.PH, was.Left, was.Ends, was.Outside, was.False
}

// dissolved works out what stays dissolved.
func (b *bench) dissolved(w *Way, l *Liquor, doses []waste.Dose) {
	if w.Borate || l.Thinned == 0 {
		w.Left, w.Ends = l.all(), [2]float64{l.all(), l.all()}
		return
	}
	m, base, whole := l.thin, "", 0.0
	m.Added = nil
	per := func(mol float64) float64 { return mol / l.kilo / l.Thinned }
	for _, d := range doses {
		x := bringsOf(d.Sub)
		text, _ := formula(d.Sub)
		switch {
		case x.base > 0 && x.carbon == 0:
			base, whole = text, per(d.Mol)
			continue
		case x.carbon > 0:
			m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
		}
		m.Added = append(m.Added, aqueous.Amount{Of: text, Mol: per(d.Mol)})
	}
	if base == "" {
		b.dosed(w, m, l.thin.Added)
	} else {
		m.Added = slices.Concat(l.thin.Added, m.Added)
		b.toPH(w, m, base, whole)
	}
	if w.Left != w.Left {
		w.Left, w.Ends, w.Outside = l.all(), [2]float64{l.all(), l.all()}, true
	}
}

// all is all fluoride of a liquor in the water that it is diluted with, mg/L.
func (l *Liquor) all() float64 {
	if !(l.kilo > 0) {
		return math.NaN()
	}
	return l.Fluoride * residue.Milligrams / l.kilo / max(l.Thinned, 1)
}

// dosed is the end of what is put in by amount: a tenth over what is needed, and the range
// from just what is needed to aged hydroxide of aluminium. What is there before is no part of
// the dose.
func (b *bench) dosed(w *Way, m aqueous.Mixture, before []aqueous.Amount) {
	at := func(times float64, aged bool) (*aqueous.State, error) {
		x := m
		x.Added = slices.Clone(before)
		for _, a := range m.Added {
			x.Added = append(x.Added, aqueous.Amount{Of: a.Of, Mol: a.Mol * times})
		}
		x.Solids = solids(aged)
		return b.model.Solve(x)
	}
	s, err := at(over, false)
	if err != nil {
		return
	}
	w.PH, w.Left, w.Outside = s.PH(), s.Fluoride()*residue.Milligrams, len(s.Outside()) > 0
	w.Ends = [2]float64{w.Left, w.Left}
	for _, o := range []struct {
		times float64
		aged  bool
	}{{over, true}, {1, false}} {
		if s, err = at(o.times, o.aged); err != nil {
			w.Ends = [2]float64{math.NaN(), math.NaN()}
			return
		}
		w.widen(s.Fluoride() * residue.Milligrams)
	}
}

func (w *Way) widen(mg float64) { w.Ends = [2]float64{min(w.Ends[0], mg), max(w.Ends[1], mg)} }

// toPH is the end of a base that is put in until a pH is there, mol/kg of it the whole dose.
func (b *bench) toPH(w *Way, m aqueous.Mixture, base string, whole float64) {
	at := func(pH float64, aged bool) (*aqueous.State, error) {
		x := m
		x.Reagent, x.FixedPH, x.Solids = base, pH, solids(aged)
		return b.model.Solve(x)
	}
	s, err := at(aimed, false)
	if err != nil {
		return
	}
	w.PH, w.Left, w.Outside = aimed, s.Fluoride()*residue.Milligrams, len(s.Outside()) > 0
	w.Ends = [2]float64{w.Left, w.Left}
	early, err := at(first, false)
	if err == nil {
		w.widen(early.Fluoride() * residue.Milligrams)
		share := early.Reagent() / s.Reagent()
		if share < residue.NotTheEnd && early.Fluoride() > residue.TooMuch*s.Fluoride() {
			w.False = &FalseEnd{first, share, early.Fluoride() * residue.Milligrams, math.NaN()}
			if old, err := at(first, true); err == nil {
				w.False.Aged = old.Fluoride() * residue.Milligrams
			}
		}
	}
	if s, err := at(last, true); err == nil {
		w.widen(s.Fluoride() * residue.Milligrams)
	}
	b.goesOn(w, m, aqueous.Amount{Of: base, Mol: whole}, s)
}

// goesOn is the end of a base whose dose is not all in at the pH that is aimed at.
func (b *bench) goesOn(w *Way, m aqueous.Mixture, dose aqueous.Amount, early *aqueous.State) {
	m.Solids = solids(false)
	s := residue.GoesOn(b.model, m, dose, early)
	if s == nil {
		return
	}
	w.False = &FalseEnd{aimed, early.Reagent() / dose.Mol, w.Left, w.Left}
	w.PH, w.Left = s.PH(), s.Fluoride()*residue.Milligrams
	w.widen(w.Left)
}
