package treating

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
	"etchbound/hazards/waste"
)

// Container is one of waste that takes batch after batch until it is picked up.
type Container struct {
	Place   string
	Batches int // as the route states; 0 where it does not
	Moments []Moment
}

// Moment is what stands in a container once so many batches have come to it. NaN is what
// nobody knows.
type Moment struct {
	Batches       int
	Before        bool    // the liquor of the last is in, and what is put to it is not
	Litres        float64 // of liquid as it was poured
	Fluoride      float64 // g, dissolved or not
	Solids        float64 // g that have settled at equilibrium
	Share         float64 // of all that is in it, g/g
	PH            float64
	Left          [2]float64 // mg/L dissolved over fresh hydroxide of aluminium, and over aged
	Outside       bool       // beyond what equilibria are held for, or none is held
	Heat, Rise    float64    // kJ and K, of the acid that comes in and base left of batches before
	CarbonDioxide [2]float64 // L that comes off as the last comes in: at equilibrium, and at most
	Ammonia       float64    // L that what is in it can give while it is alkaline, at most
}

// Containers are those of waste of a walk: after the first batch, as the last one comes to
// those before it, and once it is treated. Where nobody says how many there are, the second
// on the first.
func Containers(c route.Case, k *process.Walk) []Container {
	model, err := aqueous.At(25)
	if err != nil || k.Open != nil {
		return nil
	}
	b := bench{c: c, model: model}
	var out []Container
	for i := range k.Ends {
		p := c.Route.Place(k.Ends[i].Place)
		if p == nil || !c.Route.TakesWaste(p) && p.Batches == 0 || len(k.Ends[i].Liquid) == 0 {
			continue
		}
		out = append(out, b.container(p, &k.Ends[i], k.Treated))
	}
	return out
}

// container is one, with the liquor that the first step there that treats it meets.
func (b *bench) container(p *route.Place, end *process.State, treated []process.Liquor) Container {
	out := Container{Place: p.Key, Batches: p.Batches}
	if end.Unsaid() != nil {
		out.Moments = []Moment{unsaid(p.Batches)}
		return out
	}
	whole := b.stream(end.Liquid)
	var raw *process.Liquor
	for i := range treated {
		if l := &treated[i]; raw == nil && l.Step > 0 && l.Place == p.Key {
			raw = l
		}
	}
	last := p.Batches
	if last == 0 {
		last = 2
	}
	each := min(whole.carbon, whole.acid) * b.litres()
	first := b.moment(1, &whole, nil)
	first.CarbonDioxide = [2]float64{first.gas, each}
	out.Moments = append(out.Moments, first.Moment)
	if last == 1 {
		return out
	}
	before := b.moment(last-1, &whole, nil)
	if raw != nil {
		r := b.stream([]process.Pool{raw.Pool})
		m := b.moment(last-1, &whole, &r)
		m.Batches, m.Before = last, true
		m.CarbonDioxide = [2]float64{max(m.gas-before.gas, 0),
			(min(float64(last-1)*whole.carbon, r.acid) + min(r.carbon, r.acid)) * b.litres()}
		m.Heat = b.meets(raw, float64(last-1)*-whole.base, r.base)
		m.Rise = m.Heat * 1000 / (capacity * (float64(last-1)*whole.kilo + r.kilo))
		out.Moments, before = append(out.Moments, m.Moment), m
	}
	after := b.moment(last, &whole, nil)
	after.CarbonDioxide = [2]float64{max(after.gas-before.gas, 0), each}
	out.Moments = append(out.Moments, after.Moment)
	return out
}

// unsaid is a container of which nobody can say how much comes to it.
func unsaid(batches int) Moment {
	nan := math.NaN()
	none := [2]float64{nan, nan}
	return Moment{Batches: max(batches, 1), Litres: nan, Fluoride: nan, Solids: nan, Share: nan, PH: nan, Left: none,
		Outside: true, Heat: nan, Rise: nan, CarbonDioxide: none, Ammonia: nan}
}

// meets is the heat, kJ, of so much base that is left over with so much acid, mol.
func (b *bench) meets(l *process.Liquor, over, acid float64) float64 {
	if over <= 0 || acid <= 0 {
		return 0
	}
	at := slices.IndexFunc(l.Doses, func(d process.Dose) bool { return bringsOf(d.Sub).base > 0 })
	if at < 0 {
		return math.NaN()
	}
	x := waste.Together(b.c, l)
	for _, f := range x.With(waste.Dose{Sub: l.Doses[at].Sub, Mol: 1}) {
		if f.Quantity == "neutralise.heat" { // of all its acid
			return f.Value.V * min(over/acid, 1)
		}
	}
	return math.NaN()
}

// stream is what comes to a container with one batch.
type stream struct {
	totals, added []aqueous.Amount // mol
	kilo          float64          // of water
	litres, grams float64
	base, acid    float64 // mol that takes all acid of it, below 0 where base is over; and of acid that came in
	fluoride      float64 // mol
	carbon        float64 // mol of carbon dioxide in carbonates
	ammonium      float64 // mol
	known         bool
}

// stream parts the agents that are held one by one from what they meet.
func (b *bench) stream(pools []process.Pool) stream {
	s := stream{known: true}
	fluorine, _ := chemicals.ElementIndex("F")
	var rest []*process.Pool
	for i := range pools {
		q := pools[i]
		share := q.Kept()
		s.litres, s.grams = s.litres+share*q.Volume.V/1000, s.grams+share*q.Mass.V
		var left []process.Entry
		for _, e := range q.Entries {
			s.base += share * e.N.V * e.Base
			s.acid += max(share*e.N.V*e.Base, 0)
			s.fluoride += share * e.N.V * e.Of[fluorine]
			if e.Sub == nil || e.Sub.NotHeld {
				left = append(left, e)
				continue
			}
			s.ammonium += share * e.N.V * e.Sub.Ammonium
			x := bringsOf(e.Sub)
			text, asIs := formula(e.Sub)
			if asIs && (x.base > 0 || x.binds > 0) {
				s.added = append(s.added, aqueous.Amount{Of: text, Mol: share * e.N.V})
				s.carbon += share * e.N.V * x.carbon
				continue
			}
			left = append(left, e)
		}
		q.Entries = left
		rest = append(rest, &q)
	}
	m, kilo, known := residue.Dissolved(b.c.Store, rest...)
	for _, a := range m.Totals {
		s.totals = append(s.totals, aqueous.Amount{Of: a.Of, Mol: a.Mol * kilo})
	}
	s.kilo, s.known = kilo, known
	return s
}

// found is a moment with the mol of carbon dioxide, as L, that all in it has given off.
type found struct {
	Moment
	gas float64
}

// moment is what so many batches come to, with one more stream where there is one.
func (b *bench) moment(batches int, whole, more *stream) found {
	n := float64(batches)
	all := []struct {
		s     *stream
		times float64
	}{{whole, n}}
	if more != nil {
		all = append(all, struct {
			s     *stream
			times float64
		}{more, 1})
	}
	var kilo, grams, mol float64
	out := found{Moment: Moment{Batches: batches, PH: math.NaN(), Solids: math.NaN(), Share: math.NaN(), Outside: true}}
	known, carbon, ammonium := true, false, 0.0
	for _, x := range all {
		kilo, grams, mol = kilo+x.times*x.s.kilo, grams+x.times*x.s.grams, mol+x.times*x.s.fluoride
		out.Litres += x.times * x.s.litres
		known, carbon, ammonium = known && x.s.known, carbon || x.s.carbon > 0, ammonium+x.times*x.s.ammonium
	}
	out.Fluoride = mol * residue.Milligrams / 1000
	out.Left = [2]float64{out.Fluoride * 1000 / kilo, out.Fluoride * 1000 / kilo}
	if out.Ammonia = ammonium * b.litres(); !known {
		out.gas = math.NaN()
		return out
	}
	var m aqueous.Mixture
	for _, x := range all {
		for _, a := range x.s.totals {
			m.Totals = append(m.Totals, aqueous.Amount{Of: a.Of, Mol: a.Mol * x.times / kilo})
		}
		for _, a := range x.s.added {
			m.Added = append(m.Added, aqueous.Amount{Of: a.Of, Mol: a.Mol * x.times / kilo})
		}
	}
	if carbon {
		m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
	}
	if b.settle(&out, m, kilo, grams); out.PH < alkaline {
		out.Ammonia = 0
	}
	return out
}

// alkaline is the pH from which ammonium counts as ammonia: half of it is at 9.25.
const alkaline = 8

// settle works out the equilibrium of a moment.
func (b *bench) settle(out *found, m aqueous.Mixture, kilo, grams float64) {
	m.Solids = solids(false)
	s, err := b.model.Solve(m)
	if err != nil {
		out.gas = math.NaN()
		return
	}
	out.PH, out.Outside = s.PH(), len(s.Outside()) > 0
	out.Left = [2]float64{s.Fluoride() * residue.Milligrams, math.NaN()}
	out.Solids = 0
	for _, x := range append(residue.Solids(), silica) {
		out.Solids += s.Solid(x.Of) * kilo * molar(b.c.Store, x.Formula)
	}
	out.Share = out.Solids / grams
	mol, _ := s.Gas()
	out.gas = mol * kilo * b.litres()
	m.Solids = solids(true)
	if s, err = b.model.Solve(m); err == nil {
		out.Left[1] = s.Fluoride() * residue.Milligrams
	}
}

// molar is the mass of a mol, g.
func molar(st *chemicals.Store, formula string) float64 {
	f, err := chemicals.ParseFormula(formula)
	if err != nil {
		return math.NaN()
	}
	return f.MolarMass(st, nil).V
}
