package scrubbing

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/absorbing"
	"etchbound/hazards/air"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// Scrubber is what takes the acid of a gas up.
type Scrubber struct {
	Named  string   // key of the one that the route has; "" where it has none
	Taken  ends.Two // mol of base by one batch
	Boiled ends.Two // mol more if cooling fails and it boils
	Needed ends.Two // mol of base, of which half is spent by then
	Litres ends.Two // of liquor of 1 mol/L
	Rate   ends.Two // mol/h at most
	Has    float64  // mol of base in the one that the route has, low end; not a number where that is not known
	Half   ends.Two // h until half of the base is spent
	Warms  ends.Two // K if it loses no heat
	Past   ends.Two // L of gas that goes past it
	Column absorbing.Column
	Holds  string // agent that needs most of the column

	Slow       string   // agent that the film of liquor holds up too; "" where none is set free
	To         float64  // share that it is brought to
	SlowHeight ends.Two // m of packing that it alone takes
}

// What a scrubber is sized by: liquor is changed before a share of its base is spent, and it
// is no stronger than sodium fluoride stays dissolved in. Its heat capacity is a low one.
const (
	usable   = 0.5
	strength = 1.0  // mol/L
	capacity = 3.8  // kJ/(kg K), memory
	trial    = 1e-6 // mol of base in the scrubber by which the gas is told: little, so that it is soon spent
)

// key is a scrubber put behind a place that has none.
func key(place string) string { return "scrubber_behind_" + place }

// scrubbed are the figures of the route with a scrubber behind each place that has none, and
// a way out where it is shut: what is shut gives nothing off until then.
func scrubbed(r *hazards.Review) ([]figure.Figure, error) {
	c := r.Case
	c.Brief, c.Route = true, r.Case.Route.Copy()
	base, held := chemicals.Library().Find("sodium hydroxide")
	if !held {
		return nil, nil
	}
	for i := range len(c.Route.Places) {
		p := &c.Route.Places[i]
		if p.Kind == "scrubber" || p.Scrubber != "" {
			continue
		}
		behind := key(p.Key)
		p.Scrubber = behind
		if p.Closure == route.Closed {
			p.Closure, p.ClosureStated = route.Vented, true
		}
		c.Route.Places = append(c.Route.Places, route.Place{Key: behind, Kind: "scrubber", Material: "polypropylene",
			Count: 1, Closure: route.Vented, ClosureStated: true, At: "places." + behind})
		c.Route.Steps = append(c.Route.Steps, route.Step{Number: len(c.Route.Steps) + 1, Do: "charge", In: behind,
			What: []route.Material{
				{Substance: base, Amount: quantity.Of(trial, "mol", quantity.Amount)},
				{Substance: water(), Volume: quantity.Of(1, "L", quantity.Volume)}},
			Temperature: quantity.Of(20, "degC", quantity.Temperature)})
	}
	all, err := hazards.Make(c)
	return all.Figures, err
}

func water() *chemicals.Substance {
	s, _ := chemicals.Library().Find("water")
	return s
}

// scrubber is what takes up the acid of the gas.
func (b *builder) scrubber(behind *figure.Set, p *route.Place) {
	x := &b.Scrubber
	x.Named, x.Has = p.Scrubber, math.NaN()
	at, figs := key(p.Key), behind
	if x.Named != "" {
		at, figs = x.Named, b.figs
	}
	get := func(quantity string) ends.Two {
		f := figs.One("air.scrubber."+quantity, figure.At(at))
		if f == nil {
			b.lacks("scrubber_gas", at)
			return ends.Unknown()
		}
		return b.of(f)
	}
	x.Taken, x.Past = get("taken"), get("past")
	base := ends.Same(trial)
	if x.Named != "" {
		base = get("base")
		x.Has = base.Most
	}
	lasts := get("lasts")
	x.Rate = base.Over(lasts)
	if x.Named == "" { // one of the route may take the gas of other places too
		all := b.there()
		x.Taken = x.Taken.Least(ends.Same(all))
	}
	x.Boiled = b.boiled()
	x.Needed = x.Taken.By(1 / usable)
	x.Litres = x.Needed.By(1 / strength)
	if x.Named == "" {
		base = ends.Same(x.Needed.Most) // what is to be put in
	}
	x.Half = base.By(usable).Over(x.Rate).Least(ends.Same(air.Longest))
	heat := b.heat()
	x.Warms = ends.Pair(absorbing.Warms(heat*x.Taken.Best, x.Litres.Best, capacity),
		absorbing.Warms(heat*x.Taken.Most, x.Litres.Most, capacity))
	if litres := b.liquor(); x.Named != "" {
		x.Warms = x.Taken.Each(func(n float64) float64 { return absorbing.Warms(heat*n, litres, capacity) })
	}
	b.column()
}

// liquor is the volume of liquor in the scrubber of the route, L.
func (b *builder) liquor() float64 {
	for i := range b.r.Walk.Ends {
		if s := &b.r.Walk.Ends[i]; s.Place == b.Scrubber.Named {
			if v := s.Volume(nil); !v.Unknown() {
				return v.V / 1000
			}
		}
	}
	return math.NaN()
}

// there is the base that all acid takes which was ever in the place: no vapour of it takes
// more. It has no end where a gas forms beside it, where a wash fills the place again and
// again, and where nobody says how much acid that is, or says it as a range.
func (b *builder) there() float64 {
	if b.others() {
		return math.Inf(1)
	}
	sum, was := 0.0, 0.0
	for i := range b.r.Walk.Steps {
		d := &b.r.Walk.Steps[i]
		if d.Place != b.Place.Key {
			continue
		}
		s := &b.r.Case.Route.Steps[d.Number-1]
		now := acidIn(d.Contents())
		if d.Full != nil && len(s.What) > 0 || math.IsNaN(now) || slices.ContainsFunc(s.What, ranged) {
			return math.Inf(1)
		}
		sum, was = sum+math.Max(0, now-was), acidIn(&d.After)
	}
	return sum
}

// ranged reports whether how much of a material goes in is a range.
func ranged(m route.Material) bool {
	for _, v := range [...]quantity.Value{m.Strength, m.Volume, m.Mass, m.Amount, m.Ratio} {
		if v.HasRange() {
			return true
		}
	}
	return false
}

// acidIn is the acid of the liquids of a place, mol; not a number where that is not known.
func acidIn(s *process.State) float64 {
	if s.Unsaid() != nil {
		return math.NaN()
	}
	sum := 0.0
	for i := range s.Liquid {
		n := process.Total(nil, &s.Liquid[i], "n", func(e *process.Entry) float64 {
			if e.N.V < 0 { // what a reaction took could have left before it
				return 0
			}
			return math.Max(0, e.Acid)
		})
		if n.Unknown() {
			return math.NaN()
		}
		sum += n.V
	}
	return sum
}

// heat is the most that any of the gases gives for a mol of base, kJ.
func (b *builder) heat() float64 {
	most := 0.0
	take := func(slug string) {
		x, held := air.Scrubbing()[slug]
		switch {
		case held && x.Base == 0:
		case !held || math.IsNaN(x.Heat):
			b.lacks("scrubbing_heat", slug)
			most = math.NaN()
		default:
			most = math.Max(most, x.Heat/x.Base)
		}
	}
	for i := range b.Acids {
		take(b.Acids[i].Slug)
	}
	for i := range b.r.Walk.Evolved {
		if x := &b.r.Walk.Evolved[i]; x.Place == b.Place.Key {
			if x.Gas == nil {
				take("")
				continue
			}
			take(x.Gas.Slug)
		}
	}
	for i := range b.r.Walk.Releases {
		if x := &b.r.Walk.Releases[i]; x.Place == b.Place.Key && x.Gas == "CO2" {
			take("carbon_dioxide")
		}
	}
	return most
}

// boiled is the base that the acid takes which goes off with a liquor that boils, mol.
func (b *builder) boiled() ends.Two {
	out, seen := ends.Same(0), map[string]ends.Two{}
	for _, n := range b.Steps {
		for f := range b.figs.At("air.boiled_off", figure.Step(n)) {
			if f.Agent != "" && f.Case.IsZero() {
				seen[f.Agent] = seen[f.Agent].Worse(b.of(f))
			}
		}
	}
	for _, slug := range sorted(seen) {
		x, held := air.Scrubbing()[slug]
		if !held {
			b.lacks("scrubbed", slug)
			x.Base = math.NaN()
		}
		out = out.Plus(seen[slug].By(x.Base / b.molar(slug)))
	}
	return out
}

// The gas of a column counts as air, the first that leaves, and its liquor as water at 20
// degC: that takes the higher column. A gas moves in air as the slower of hydrogen fluoride
// and hydrogen chloride does, memory.
var (
	first = absorbing.Fluid{Density: 1.2, Viscosity: 1.8e-5, Diffuses: 1.7e-5, Molar: 0.029}
	washy = absorbing.Fluid{Density: 1000, Viscosity: 1e-3, Diffuses: 1.7e-9, Molar: 0.018, Tension: 0.072}
)

const pressure = 101325.0

// column is the column that takes the gas down to the limits of what people breathe, for the
// gas as it is meant to come, at the dangerous end. What nobody evolved is nothing to take up.
func (b *builder) column() {
	x, units := &b.Scrubber, 0.0
	for i := range b.Acids {
		a := &b.Acids[i]
		if n := a.Units.Most; math.IsNaN(n) || n > units {
			units, x.Holds = n, a.Slug
		}
		if math.IsNaN(units) {
			break
		}
	}
	for i := range b.r.Walk.Evolved {
		if e := &b.r.Walk.Evolved[i]; e.Place == b.Place.Key && (e.Gas == nil || !b.known(e)) {
			b.lacks("scrubbed", "")
			units = math.NaN()
		}
	}
	flow := b.Gas.Most / litres / 60 * first.Molar // kg/s, all of it as heavy as air
	x.Column = absorbing.Size(first, washy, flow, 20, pressure, units)
	b.slow(flow)
}

// slow makes the column high enough for carbon dioxide too, where any is set free: from undiluted
// to the strictest limit there is of what people breathe.
func (b *builder) slow(flow float64) {
	x := &b.Scrubber
	if !slices.ContainsFunc(b.r.Walk.Releases, func(e process.Release) bool {
		return e.Place == b.Place.Key && e.Gas == carbonDioxide.formula
	}) {
		return
	}
	x.To = math.NaN()
	for _, e := range limit.ExposureAt(carbonDioxide.slug, b.r.Case.Jurisdiction()) {
		if !(e.Value*1e-6 >= x.To) {
			x.To = e.Value * 1e-6
		}
	}
	x.Slow = carbonDioxide.slug
	h, most := x.Column.Holds(first, washy, flow, 20, pressure, absorbing.Units(1, x.To), carbonic)
	x.SlowHeight = ends.Pair(h, most)
}

// carbonDioxide is the gas that the film of liquor holds up, and of which a route sets free what
// is known.
var carbonDioxide = struct{ formula, slug string }{"CO2", "carbon_dioxide"}

// carbonic is carbon dioxide undiluted in hydroxide of which half is spent, 20 degC, all memory:
// lg k = 11.916 - 2382/T, L/(mol s), and a quarter of what water dissolves salted out.
var carbonic = absorbing.Reacting{Dissolves: 2.9e-4, Rate: 6.2, Base: 1000 * strength * usable, Takes: 2, Faster: 1.7,
	Share: 1}

// known reports whether a gas that forms is among the acids, or goes past.
func (b *builder) known(e *process.Evolved) bool {
	x, held := air.Scrubbing()[e.Gas.Slug]
	if held && x.Base == 0 {
		return true
	}
	for i := range b.Acids {
		if b.Acids[i].Slug == e.Gas.Slug {
			return true
		}
	}
	return false
}
