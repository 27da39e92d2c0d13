package residue

import (
	"cmp"
	"math"
	"slices"

	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// reagents are the bases whose equilibria are held, by the slug of what a step writes, as
// the equilibria name them. Lime is what is tried where a route writes none.
var reagents = map[string]string{"calcium_hydroxide": "Ca(OH)2", "calcium_oxide": "Ca(OH)2", "sodium_hydroxide": "NaOH",
	"potassium_hydroxide": "KOH", "lithium_hydroxide": "LiOH", "magnesium_hydroxide": "Mg(OH)2",
	"magnesium_oxide": "Mg(OH)2"}

const lime = "calcium_hydroxide"

// Where the central figure stands, and the ends of its range.
const (
	aimed = 8
	first = 6
	last  = 9
)

// Milligrams of fluoride in a mol.
const Milligrams = 18998.4

// Read gives the figures of every liquor of a walk that holds fluorine and is neutralised
// or left over.
func Read(c route.Case, w *working.Sheet, k *process.Walk) []figure.Figure {
	return read(c, w, k, between)
}

// Central are the figures of Read without their ranges, where very many routes are looked at.
func Central(c route.Case, k *process.Walk) []figure.Figure { return read(c, nil, k, nil) }

// span is the least and the most that is dissolved at some ends; nil: nobody asks for them.
type span func(models Models, at dissolving, ends ...float64) (low, high float64)

// dissolving is what is dissolved at an end with some solids, and whether that is within what
// the equilibria are held for.
type dissolving func(model *aqueous.Model, end float64, settled []aqueous.Amount) (float64, bool)

// of is a span of what is dissolved; without one both ends are the centre.
func (s span) of(centre float64, models Models, at dissolving, ends ...float64) (low, high float64) {
	if s == nil {
		return centre, centre
	}
	return s(models, at, ends...)
}

func read(c route.Case, w *working.Sheet, k *process.Walk, s span) []figure.Figure {
	var out []figure.Figure
	for i := range k.Treated {
		l := &k.Treated[i]
		n := process.Element(w, &l.Pool, "F").As("n_F")
		if n.V <= trace*entered(k) {
			continue
		}
		place := figure.At(l.Place)
		if l.Step > 0 {
			place = figure.Step(l.Step)
		}
		id := figure.ID{Quantity: "neutralise.residual_fluoride", Place: place, Agent: agent(l)}
		f := figure.Figure{ID: id}
		m, water, known := Whole(c.Store, &l.Pool)
		strange := l.Pool.Stranger()
		if water == 0 && strange == nil {
			continue // dried: there is no water for it to be left in
		}
		if more := l.First.V * process.MolarMass(c.Store, nil, "H2O").V / 1000; more > 0 { // what the step brings first
			m, water = Thin(m, (water+more)/water), water+more
		}
		switch {
		case k.Open != nil:
			f.Value = working.Absent("rho_F", "mg/L", k.Open...)
		case l.Pool.More != nil:
			f.Value = working.Absent("rho_F", "mg/L", l.Pool.More...)
		case water == 0: // what is not held may be what it is left in
			f.Value = working.Absent("rho_F", "mg/L", strange.Lacks())
		case water != water:
			f.Value = working.Absent("rho_F", "mg/L", lacks(&l.Pool)...)
		case !known || !end(At(c, l.Step), s, w, l, m, water, n, &f):
			all := working.Given("m_w", "kg", water, l.Place)
			f.Value = w.Line("rho_F", "mg/L", "n_F*18998.4/m_w", n.V*Milligrams/water, n, all).Worse(working.Bound)
			f.SetRange(0, f.Value.V)
			f.Conditions = phrase.Of("residue.all")
		}
		if f.Value.Unknown() {
			f.SetRange(math.NaN(), math.NaN())
		}
		f.Value = w.Keep(f.Value)
		out = append(out, f)
	}
	return out
}

// lacks is what has to be known to say how much stands in a liquor.
func lacks(q *process.Pool) []working.Missing {
	var out []working.Missing
	for i := range q.Entries {
		if n := &q.Entries[i].N; n.Unknown() {
			out = append(out, n.Missing()...)
		}
	}
	return working.Joined(out)
}

// Models are what a liquor is worked out with: at the temperature that a step sets, and at
// 25 degC, to which it comes as it stands.
type Models struct{ Set, Room *aqueous.Model }

// Room is the temperature of a liquor of which no step sets one, degC.
const Room = 25

// Temperatures that constants are held from and to, degC.
const coldest, warmest = 5, 60

// At are the models of a step; what it sets beyond what constants are held for counts as the
// nearest of that, and step 0 sets nothing.
func At(c route.Case, step int) Models {
	room, _ := aqueous.At(Room)
	out := Models{room, room}
	if step == 0 {
		return out
	}
	t := c.Route.Steps[step-1].Temperature
	if !t.Set {
		return out
	}
	if m, err := aqueous.At(min(max(t.In("degC"), coldest), warmest)); err == nil {
		out.Set = m
	}
	return out
}

// All are the models, the one at the temperature that is set first.
func (m Models) All() []*aqueous.Model {
	if m.Set == m.Room {
		return []*aqueous.Model{m.Set}
	}
	return []*aqueous.Model{m.Set, m.Room}
}

// trace is the share of the fluorine of a route below which a liquor is not told of.
const trace = 1e-6

// entered is the fluorine that went into a route, mol.
func entered(k *process.Walk) float64 {
	for _, b := range k.Account {
		if b.Element == "F" {
			return b.In
		}
	}
	return 0
}

// agent is what a step writes that brings base, or else binds fluoride; lime where it writes
// none, or several.
func agent(l *process.Liquor) string {
	base, binder := "", ""
	for _, d := range l.Doses {
		x := neutralising.Of(d.Sub)
		of := &base
		if !(x.Base > 0) {
			of = &binder
		}
		if !x.Agent() || *of == d.Sub.Slug {
			continue
		}
		if *of != "" {
			return lime
		}
		*of = d.Sub.Slug
	}
	return cmp.Or(base, binder, lime)
}

// end works a figure out as the step ends: at a pH where what it writes is one hydroxide, or
// nothing, with what binds fluoride beside it, else by what it writes. It is false where no
// equilibrium is found.
func end(models Models, s span, w *working.Sheet, l *process.Liquor, m aqueous.Mixture, water float64, n working.Num,
	f *figure.Figure) bool {
	reagent, byPH, written := "", true, 0.0
	var doses []aqueous.Amount
	for _, d := range l.Doses {
		x := neutralising.Of(d.Sub)
		base, binds := x.Base > 0, x.Binds() > 0
		switch of := reagents[d.Sub.Slug]; {
		case !base && !binds: // it changes nothing that is told of here
			continue
		case base && of != "" && (reagent == "" || reagent == of):
			reagent, written = of, written+d.N.V*x.Base/water
		case base && x.Carbon == 0 || d.Sub.Count("C") != x.Carbon || d.N.Unknown():
			return false
		default:
			byPH = byPH && !base
		}
		doses = append(doses, aqueous.Amount{Of: d.Sub.Formula.Text, Mol: d.N.V / water})
		if x.Carbon > 0 {
			m.Gas = aqueous.Gas{Kind: aqueous.Pressure, Value: 1}
		}
	}
	switch {
	case len(doses) == 0:
		reagent = reagents[lime]
	case reagent == "" || !byPH:
		return dosed(models, s, w, m, doses, n, f)
	}
	for _, d := range doses {
		if d.Of != reagent && !(d.Of == "CaO" && reagent == reagents[lime]) && !(d.Of == "MgO" && reagent == "Mg(OH)2") {
			m.Added = append(m.Added, d)
		}
	}
	whole := needed(&l.Pool) / water
	if written > 0 {
		whole = min(whole, written)
	}
	return found(models, s, w, m, reagent, whole/bases[reagent], n, f)
}

// bases are the mol of base in one of a reagent.
var bases = map[string]float64{"Ca(OH)2": 2, "NaOH": 1, "KOH": 1, "LiOH": 1, "Mg(OH)2": 2}

// needed is the base, mol, that takes all acid of a liquor, ammonium with it, and makes
// hydroxides of its metals.
func needed(q *process.Pool) float64 {
	sum := 0.0
	for i := range q.Entries {
		sum += q.Kept() * q.Entries[i].N.V * q.Entries[i].Base
	}
	return sum
}

// dosed works a figure out with all that a step writes in, a twentieth less and more of it for
// its range.
func dosed(models Models, span span, w *working.Sheet, m aqueous.Mixture, doses []aqueous.Amount, n working.Num,
	f *figure.Figure) bool {
	for _, thinned := range [...]float64{1, 10, 100} {
		at := func(model *aqueous.Model, times float64, solids []aqueous.Amount) (float64, bool) {
			x := Thin(m, thinned)
			for _, d := range doses {
				x.Added = append(x.Added, aqueous.Amount{Of: d.Of, Mol: d.Mol * times / thinned})
			}
			x.Solids = solids
			s, err := model.Solve(x)
			if err != nil {
				return math.NaN(), false
			}
			return s.Fluoride() * Milligrams, len(s.Outside()) == 0
		}
		centre, inside := at(models.Set, 1, Settles(false))
		if !inside {
			continue
		}
		low, high := span.of(centre, models, at, 1-asWeighed, 1, 1+asWeighed)
		slow := heldBack(&m, thinned)
		f.Value = w.Table("rho_F", "mg/L", "dissolved fluoride with what is written by chemicals/aqueous", centre+slow, n)
		if f.Conditions = phrase.Of("residue.dosed", models.Set.Celsius(), thinned); thinned == 1 {
			f.Conditions = phrase.Of("residue.dosed_as_is", models.Set.Celsius())
		}
		return put(f, low+slow, high+slow)
	}
	return false
}

// asWeighed is how far a dose and the acid it meets are from what is written, at most.
const asWeighed = 0.05

// found works a figure out at a pH that a reagent keeps, or with the whole dose of it in, mol/kg,
// where that pH is a false end.
func found(models Models, span span, w *working.Sheet, m aqueous.Mixture, reagent string, whole float64, n working.Num,
	f *figure.Figure) bool {
	m.Reagent = reagent
	for _, thinned := range [...]float64{1, 10, 100} {
		x := Thin(m, thinned)
		at := func(model *aqueous.Model, pH float64, solids []aqueous.Amount) (float64, bool) {
			s, inside := kept(model, x, pH, solids)
			if s == nil {
				return math.NaN(), false
			}
			return s.Fluoride() * Milligrams, inside
		}
		s, inside := kept(models.Set, x, aimed, Settles(false))
		if s == nil || !inside && thinned < 100 {
			continue
		}
		low, high := span.of(s.Fluoride()*Milligrams, models, at, wholePH()...)
		slow, centre, celsius := heldBack(&m, thinned), s.Fluoride()*Milligrams, models.Set.Celsius()
		f.Conditions = phrase.Of("residue.at", celsius, thinned)
		if thinned == 1 {
			f.Conditions = phrase.Of("residue.as_is", celsius)
		}
		x.Solids = Settles(false)
		if after := GoesOn(models.Set, x, aqueous.Amount{Of: reagent, Mol: whole / thinned}, s); after != nil {
			early := rounded(centre)
			f.Conditions = phrase.Of("residue.goes_on", celsius, thinned, rounded(after.PH()), early)
			if thinned == 1 {
				f.Conditions = phrase.Of("residue.goes_on_as_is", celsius, rounded(after.PH()), early)
			}
			centre = after.Fluoride() * Milligrams
			low = min(low, centre)
		}
		f.Value = w.Table("rho_F", "mg/L", "dissolved fluoride at its end by chemicals/aqueous", centre+slow, n)
		return put(f, low+slow, high+slow)
	}
	return false
}

// rounded is a number to two digits, as it is told.
func rounded(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Round(v/p) * p
}

// GoesOn is the end of a base whose dose is not all in at the pH that is aimed at, as where
// ammonium takes base beyond it: that pH is a false end where all of the dose leaves far less.
// It is nil where the pH is the end. The mixture is without that base, with the solids that
// may settle.
func GoesOn(model *aqueous.Model, m aqueous.Mixture, dose aqueous.Amount, early *aqueous.State) *aqueous.State {
	if !(early.Reagent() < NotTheEnd*dose.Mol) || !early.Kept() {
		return nil
	}
	m.Reagent, m.FixedPH, m.Added = "", 0, append(slices.Clone(m.Added), dose)
	s, err := model.Solve(m)
	if err != nil || len(s.Outside()) > 0 || !(early.Fluoride() > TooMuch*s.Fluoride()) {
		return nil
	}
	return s
}

// A pH is a false end where it is there well before the dose is, with many times the
// fluoride that is dissolved in the end.
const (
	NotTheEnd = 0.98
	TooMuch   = 5
)

// between is the least and the most that is dissolved at some ends, with fresh and with aged
// solids, with cryolite and without it, which may take its time to settle, at the temperature
// that is set and at that of a room; not a number where one of them is not known.
func between(models Models, at dissolving, ends ...float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, model := range models.All() {
		for _, end := range ends {
			for _, solids := range [...][]aqueous.Amount{Settles(false), Settles(true), Settles(false, "Cryolite")} {
				y, _ := at(model, end, solids)
				low, high = min(low, y), max(high, y)
			}
		}
	}
	return low, high
}

// wholePH are the whole pH at which a figure is looked at, the one aimed at among them.
func wholePH() []float64 {
	var out []float64
	for pH := first; pH <= last; pH++ {
		out = append(out, float64(pH))
	}
	return out
}

// heldBack is what complexes hold, mg/L, of the water that is there: what only the equilibria
// need thins none of it.
func heldBack(m *aqueous.Mixture, thinned float64) float64 {
	return held(m) * (1 - 1/thinned) * Milligrams
}

// put ends a figure; it is false where it is not known.
func put(f *figure.Figure, low, high float64) bool {
	f.Value = f.Value.Worse(working.Bound)
	f.SetRange(low, high)
	return !f.Value.Unknown() && low == low && high == high
}

// held is the fluoride of a mixture in complexes that give it up slowly, mol/kg.
func held(m *aqueous.Mixture) float64 {
	n := 0.0
	for _, a := range m.Totals {
		switch a.Of {
		case "BF4":
			n += 4 * a.Mol
		case "PF6":
			n += 6 * a.Mol
		}
	}
	return n
}

// kept is a liquor at a pH, and whether the equilibria are held for that; nil where none is
// found.
func kept(model *aqueous.Model, m aqueous.Mixture, pH float64, solids []aqueous.Amount) (*aqueous.State, bool) {
	m.FixedPH, m.Solids = pH, solids
	s, err := model.Solve(m)
	if err != nil { // it may stand above that pH by itself
		m.Reagent, m.FixedPH = "", 0
		if s, err = model.Solve(m); err != nil || s.PH() < pH {
			return nil, false
		}
	}
	return s, len(s.Outside()) == 0
}
