package speciation

import (
	"math"

	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
)

// Liquor is the liquor of one place at one time. NaN is not known.
type Liquor struct {
	Place        figure.Place
	Celsius      float64
	PH           float64
	Dissolved    float64 // wt% as HF of the water with it
	Free         float64 // wt% as HF of it, not bound to metal
	Over         float64 // ppm of HF over it, all fluoride as HF: what verdicts rest on
	Molecules    float64 // ppm over it by the HF that is there as molecules
	PerAluminium float64 // fluoride held by each aluminium in solution
	Why          Why     // equilibria do not tell; blank where they do
}

// Why is the reason why equilibria do not tell of a liquor.
type Why string

// The reasons.
const (
	Received Why = "received" // nobody knows what came into it
	Beside   Why = "beside"   // no equilibrium is held of something in it
	Strong   Why = "strong"   // it is stronger than they are held for
	Hot      Why = "hot"      // its temperature is not from 0 to 60 degC
	NoAnswer Why = "none"     // none was found
)

// Read tells of every liquor of a walk that holds fluoride, and sets fluoride.free_hf of
// those that equilibria are held for.
func Read(c route.Case, w *working.Sheet, k *process.Walk, figures []figure.Figure) []Liquor {
	b := bench{c: c, w: w, models: map[float64][]*aqueous.Model{}}
	at := map[figure.ID]*figure.Figure{}
	for i := range figures {
		if f := &figures[i]; f.Quantity == "fluoride.free_hf" || f.Quantity == "fluoride.hf_equivalent" {
			at[f.ID] = f
		}
	}
	var out []Liquor
	tell := func(place figure.Place, s *process.State, whole bool) {
		all := at[figure.ID{Quantity: "fluoride.hf_equivalent", Place: place}]
		if all == nil || !wet(s) {
			return
		}
		l, x := b.liquor(s, whole, k.Open != nil)
		l.Place = place
		if f := at[figure.ID{Quantity: "fluoride.free_hf", Place: place}]; f != nil {
			b.set(f, all, &l, &x)
		}
		out = append(out, l)
	}
	for i := range k.Steps {
		d := &k.Steps[i]
		tell(figure.Step(d.Number), &d.After, len(d.Etches) > 0)
	}
	for i := range k.Ends {
		tell(figure.At(k.Ends[i].Place), &k.Ends[i], false)
	}
	return out
}

// bench is what all liquors share: the models at each temperature, our own first.
type bench struct {
	c      route.Case
	w      *working.Sheet
	models map[float64][]*aqueous.Model
}

// wet reports whether a place holds any liquid.
func wet(s *process.State) bool {
	for i := range s.Liquid {
		if s.Liquid[i].Volume.V != 0 {
			return true
		}
	}
	return false
}

// found is the free fluoride of a liquor, mol, with its ends.
type found struct{ mol, low, high float64 }

// liquor looks for the equilibrium of a place, and for its ends.
func (b *bench) liquor(s *process.State, whole, open bool) (Liquor, found) {
	nan := math.NaN()
	l := Liquor{Celsius: usual, PH: nan, Dissolved: nan, Free: nan, Over: nan, Molecules: nan, PerAluminium: nan}
	pools := make([]*process.Pool, len(s.Liquid))
	for i := range s.Liquid {
		pools[i] = &s.Liquid[i]
	}
	if !s.Set.None() && !s.Set.Unknown() {
		l.Celsius = s.Set.V
	}
	mix, water, known := residue.Whole(b.c.Store, pools...) // open enough that what it cannot hold has left
	switch {
	case open || s.Unsaid() != nil:
		l.Why = Received
	case !known || slowly(mix):
		l.Why = Beside
	case !(l.Celsius >= coldest && l.Celsius <= warmest):
		l.Why = Hot
	}
	if l.Why != "" {
		return l, found{}
	}
	if whole {
		mix = with(mix, process.TakenUp(nil, s), water)
	}
	mix.Solids = residue.Settles(false)
	all := b.at(l.Celsius)
	state, err := all[0].Solve(mix)
	if err != nil {
		l.Why = NoAnswer
		return l, found{}
	}
	held, err := b.at(math.Max(l.Celsius, coolest))[0].Solve(mix) // the colder is a step further, and a range
	if err != nil || len(held.Outside()) > 0 {
		l.Why = Strong
		return l, found{}
	}
	kg := water * state.Water()
	l.PH = state.PH()
	l.Dissolved, l.Free = strength(state.Fluoride()), strength(state.Free())
	b.vapour(&l, s, state)
	if al, _ := state.Total("Al"); al > trace {
		l.PerAluminium = state.Bound("Al") / al
	}
	x := found{mol: state.Free() * kg, low: state.Free() * kg, high: state.Free() * kg}
	if widen(&x, all[1:], mix, water); l.Celsius < coolest {
		widen(&x, b.at(coolest), mix, water)
	}
	return l, x
}

// vapour is HF over a liquor, by the laws that the air is worked out with.
func (b *bench) vapour(l *Liquor, s *process.State, state *aqueous.State) {
	acids := process.AcidsIn(nil, s)
	kg := acids.Water.V * process.MolarMass(b.c.Store, nil, "H2O").V / 1000
	t := working.Exact("T", "degC", l.Celsius, "of the liquor")
	over := func(mol float64) float64 {
		if !acids.Chloride {
			w := working.Exact("w", "1", strength(mol)/100, "of HF in its water")
			return solution.Vapour(b.c.Store, nil, "hf", w, t).V / atmosphere * 1e6
		}
		m := working.Exact("m", "mol/kg", mol, "of HF")
		n := acids.HCl.V * molarHCl / 1000
		w := working.Exact("w", "1", n/(n+kg), "of HCl in its water")
		return solution.OverStrongAcid(b.c.Store, nil, m, w, t).V / atmosphere * 1e6
	}
	molecules, _ := state.Molality("HF")
	l.Over, l.Molecules = over(acids.Fluoride.V/kg), over(molecules)
}

// Molar masses, g/mol, and the pressure of the air, kPa.
const (
	molarHF, molarHCl = 20.0064, 36.461
	atmosphere        = 101.325
)

// Temperatures that constants are carried to and held from and to, degC, that of a liquor of
// which none is stated, and a molality that is none.
const (
	coldest, coolest, warmest, usual = 0, 5, 60, 25
	trace                            = 1e-9
)

// slowly reports whether a liquor holds fluoride in complexes of which it is not known how
// much they have given up: of titanium, boron and phosphorus.
func slowly(mix aqueous.Mixture) bool {
	for _, a := range mix.Totals {
		if (a.Of == "TiF6" || a.Of == "BF4" || a.Of == "PF6") && !(a.Mol <= trace) {
			return true
		}
	}
	return false
}

// widen takes in what constants of other sources give. One that finds no equilibrium leaves
// both ends not known.
func widen(x *found, all []*aqueous.Model, mix aqueous.Mixture, water float64) {
	for _, m := range all {
		v := math.NaN()
		if s, err := m.Solve(mix); err == nil {
			v = s.Free() * water * s.Water()
		}
		x.low, x.high = math.Min(x.low, v), math.Max(x.high, v)
	}
}

// with is a mixture with fluoride that solids have taken up, as HF.
func with(mix aqueous.Mixture, taken []working.Num, water float64) aqueous.Mixture {
	more := 0.0
	for _, n := range taken {
		more += n.V / water
	}
	if more == 0 {
		return mix
	}
	out := mix
	out.Totals = nil
	for _, a := range mix.Totals {
		if a.Of != "F" {
			out.Totals = append(out.Totals, a)
			continue
		}
		more += a.Mol
	}
	out.Totals = append(out.Totals, aqueous.Amount{Of: "F", Mol: more})
	return out
}

// strength of so many mol in a kg of water, wt% as HF.
func strength(mol float64) float64 { return 100 * mol * molarHF / (1000 + mol*molarHF) }

// at are the models at a temperature: our own, then one for each thing that sources do not
// agree on.
func (b *bench) at(celsius float64) []*aqueous.Model {
	if all := b.models[celsius]; all != nil {
		return all
	}
	own, err := aqueous.At(celsius)
	if err != nil {
		return nil
	}
	all := []*aqueous.Model{own}
	for _, name := range aqueous.Variants() {
		if m, err := own.Variant(name); err == nil {
			all = append(all, m)
		}
	}
	b.models[celsius] = all
	return all
}

// said are keys of what a figure says where equilibria do not tell.
var said = map[Why]string{Beside: "speciation.beside", Strong: "speciation.strong", Hot: "speciation.hot",
	NoAnswer: "speciation.none"}

// set puts a figure where the equilibria have it, and what the data move beside it; where
// they do not tell it stays and says why.
func (b *bench) set(f, all *figure.Figure, l *Liquor, x *found) {
	if l.Why != "" {
		if l.Why != Received { // what it says already
			f.Conditions = f.Conditions.And(phrase.Of(said[l.Why]))
		}
		return
	}
	up, down := f.High().V-f.Value.V, f.Value.V-f.Low().V
	if f.Value.Unknown() { // no table of ratios is held of what is in it
		up, down = all.High().V, all.High().V
	}
	n := working.Exact("n_f", "mol", x.mol, "fluoride not bound to metal, by chemicals/aqueous")
	M := process.MolarMass(b.c.Store, b.w, "HF").As("M_HF")
	most := all.High().V
	v := b.w.Line("m_HF", "g as HF", "n_f*M_HF", n.V*M.V, n, M).Worse(working.Estimated)
	f.Value = b.w.Keep(v)
	f.SetRange(math.Max(x.low*M.V-down, 0), math.Min(x.high*M.V+up, most))
	f.Conditions = phrase.Of("speciation.free", l.Celsius)
}
