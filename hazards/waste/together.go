package waste

import (
	"etchbound/chemicals"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Dose is so much of an agent, mol. Where only one brings base, any amount of it will do:
// what is found is how much of it is needed.
type Dose struct {
	Sub *chemicals.Substance
	Mol float64
}

// Liquors are liquors of a route, taken together, as agents meet them.
type Liquors struct {
	r reader
	a acids
}

// Together takes liquors together. They are not known where something of one is not.
func Together(c route.Case, of ...*process.Liquor) Liquors {
	l := Liquors{r: reader{c: c, vm: process.MolarVolume(c.Store, nil)}}
	var all []acids
	for _, x := range of {
		if len(x.Pool.More) > 0 {
			l.a = lost(x.Pool.More)
			return l
		}
		all = append(all, l.r.acids(x))
	}
	l.a = l.r.sum(all)
	return l
}

// Base is what they take to neutral with every metal as its hydroxide, mol; NaN where it is
// not known.
func (l *Liquors) Base() working.Num { return l.a.base }

// Fluoride is all they hold, mol.
func (l *Liquors) Fluoride() working.Num { return l.a.fluorine }

// Held is the fluoride that cold base leaves in complexes, mol; there is none where it is None.
func (l *Liquors) Held() working.Num { return l.a.held }

// Ammonium in them, mol: base sets it free as ammonia.
func (l *Liquors) Ammonium() working.Num { return l.a.ammonium }

// Aluminium that is dissolved in them, mol.
func (l *Liquors) Aluminium() working.Num { return l.a.aluminium }

// Water is their own, with that of the step that is there first, g.
func (l *Liquors) Water() working.Num { return l.a.water }

// With are the figures of what is put to them, as Read gives those of a step. What brings
// no base is there in the amount stated.
func (l *Liquors) With(doses ...Dose) []figure.Figure {
	r := l.r
	r.out = nil
	var g agent
	for _, d := range doses {
		n := working.Given("n", "mol", d.Mol, "dose")
		p := part{sub: d.Sub, brings: neutralising.Of(d.Sub), n: n}
		if p.brings.Base <= 0 {
			g.beside = append(g.beside, p)
			continue
		}
		g.parts, g.slug = append(g.parts, p), joined(g.slug, d.Sub)
	}
	if len(g.parts) > 0 {
		r.agent(figure.Waste, l.a, &g)
		return r.out
	}
	var heat []working.Num
	for i := range g.beside {
		heat = append(heat, r.binding(&g.beside[i], l.a.base.V > 0))
	}
	q := r.w.Sum("Q", "kJ", heat...)
	r.put("neutralise.heat", figure.Waste, "", q, phrase.Phrase{})
	r.rise(figure.Waste, l.a, &g, q)
	return r.out
}
