package course

import (
	"math"
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
	"etchbound/hazards/vessel"
	"etchbound/schemas/quantity"
)

// Run is a course run by one law. Where something is missing there is no run,
// and Missing says what. A liquor that is poured into what stands at no stated temperature ends
// the run, and nobody knows what it does there.
type Run struct {
	Law     vessel.Law
	Vessel  vessel.Run
	Missing []working.Missing
	Poured  int               // number of the step that ends it so; 0: none
	Unsaid  []working.Missing // why nobody knows from there on
	Inputs  []working.Num     // what a line made of it stands on
	balance string            // in words; only where a sheet keeps the working
}

// Laws are those a course is run by: the one the route knows, or the two that
// bracket the etch where nobody does.
func (f *finder) laws() []vessel.Law {
	r := f.c.Route
	switch {
	case r.Curve != nil:
		return []vessel.Law{vessel.Measured}
	case r.Kinetics != "":
		return []vessel.Law{vessel.Law(r.Kinetics)}
	}
	return []vessel.Law{vessel.SelfAccelerating, vessel.Contracting}
}

// tolerance of the runs; their models are known to a few parts in ten.
const tolerance = 1e-5

// rough is that of a run that is one of very many.
const rough = 1e-4

func (f *finder) runs(n *Course) {
	for _, law := range f.laws() {
		n.Runs = append(n.Runs, f.run(n, law))
	}
}

func (f *finder) run(all *Course, law vessel.Law) Run {
	n, end, unsaid := all.known()
	ea, seed := f.c.Store.Num("kinetics.activation").As("E_a"), f.c.Store.Num("kinetics.seed").As("s")
	out := Run{Law: law, Inputs: []working.Num{n.Heat, n.Gas, n.Capacity.As("C"), ea}}
	if end != nil {
		out.Poured, out.Unsaid = end.Step.Number, unsaid
	}
	if law == vessel.SelfAccelerating {
		out.Inputs = append(out.Inputs, seed)
	}
	p := vessel.Plan{Law: law, Tolerance: tolerance, Liquor: vessel.Liquor{}}
	if f.c.Rough {
		p.Tolerance = rough
	}
	p.Slow.Kinetics = vessel.Kinetics{Activation: 1000 * ea.V, Seed: seed.V}
	p.Slow, p.Fast = f.solids(n, p.Slow.Kinetics, &out)
	liquors := liquors(n)
	p.Slow.Capacity = n.Stages[lastEtch(n)].Done.Contents().SolidCapacity(nil).V
	p.Liquor.Capacity = liquors[0].before
	p.Start = n.Stages[0].Set.V + kelvin
	f.boils(n, &p, &out)
	if b := n.Stages[0].Ice; b != nil && b.Stated {
		p.Ice = b.plan()
		out.Inputs = append(out.Inputs, b.inputs()...)
	}
	f.jackets(n, &p, &out)
	f.pieces(n, liquors, &p, &out)
	f.calibrate(n, &p, &out)
	out.Missing = append(out.Missing, n.Incomplete...)
	for _, x := range out.Inputs {
		out.Missing = append(out.Missing, x.Missing()...)
	}
	if p.Slow.Amount == 0 {
		out.Missing = append(out.Missing, working.Lacks("layered_phase", ""))
	}
	if out.Missing != nil {
		return out
	}
	r, err := f.known.Run(p)
	if err != nil {
		out.Missing = append(out.Missing, working.Lacks("run", ""))
		return out
	}
	if f.c.Gone != nil {
		r = r.Bounded(func(of int) bool { return slices.Contains(f.c.Gone, of/2) })
	}
	out.Vessel = r
	if f.w != nil {
		out.balance = balanceOf(&out)
		if f.c.Gone != nil {
			out.balance = "lossless bound: " + out.balance
		}
	}
	return out
}

// known is a course as far as it can be run: to where it has been poured into something of
// which nobody says how warm that is or what it does. end is the step from which on that is
// so, nil where there is none.
func (n *Course) known() (to *Course, end *Stage, unsaid []working.Missing) {
	poured := false
	for i := lastEtch(n) + 1; i < len(n.Stages); i++ {
		s := &n.Stages[i]
		asks := []working.Num{s.Set, s.Coolant, s.UA, s.Filled}
		if q := s.Done.Quenched; q != nil {
			asks, poured = append(asks, q.Comes), true
		}
		for _, x := range asks {
			unsaid = append(unsaid, x.Missing()...)
		}
		if poured && unsaid != nil {
			x := *n
			x.Stages = n.Stages[:i]
			return &x, s, working.Joined(unsaid)
		}
	}
	return n, nil, nil
}

// Lacks is what is missing of a run in a step; nil where nothing is.
func (x *Run) Lacks(step int) []working.Missing {
	if x.Missing == nil && x.Poured != 0 && step >= x.Poured {
		return x.Unsaid
	}
	return x.Missing
}

const kelvin = 273.15

// solids are what reacts of the powder, with the rates of both.
func (f *finder) solids(n *Course, k vessel.Kinetics, out *Run) (slow, fast vessel.Solid) {
	var etches []int
	for i := range n.Stages {
		etches = append(etches, n.Stages[i].Etches...)
	}
	slow, fast = Solids(f.k, etches)
	slow.Kinetics = k
	st := f.c.Store
	t, a, ref := st.Num("kinetics.metal_time").As("t_m"), st.Num("kinetics.metal_activation").As("E_m"),
		st.Num("kinetics.reference").As("T_ref")
	out.Inputs = append(out.Inputs, t, a, ref)
	fast.Kinetics = vessel.Kinetics{Rate: -math.Log(1-vessel.Complete) / (60 * t.V), Activation: 1000 * a.V,
		Reference: ref.V}
	return slow, fast
}

// Solids are the powder of some etches: the layered phase as the slow solid,
// what else reacts as the fast one.
func Solids(k *process.Walk, etches []int) (slow, fast vessel.Solid) {
	for _, i := range etches {
		e := &k.Etches[i]
		if !e.N.None() {
			slow = mixed(slow, e.N.V, e.Heat.V, e.Hydrogen.V)
		}
		for j := range e.Dissolved {
			x := &e.Dissolved[j]
			fast = mixed(fast, x.N.V, x.Heat.V, x.Hydrogen.V)
		}
	}
	if slow.Amount == 0 { // metal alone is held between the same two laws
		return fast, vessel.Solid{}
	}
	return slow, fast
}

// mixed adds n mol with heat kJ and gas mol to a solid.
func mixed(s vessel.Solid, n, heat, gas float64) vessel.Solid {
	if n == 0 {
		return s
	}
	total := s.Amount + n
	s.Heat = (s.Amount*s.Heat + 1000*heat) / total
	s.Gas = (s.Amount*s.Gas + gas) / total
	s.Amount = total
	return s
}

// liquor is the heat capacity of the liquor of a stage, J/K, before and after what
// the stage puts in.
type liquor struct{ before, after float64 }

// liquors are those of the stages. What comes with its powder, or is there, is in
// before the stage begins; where liquor is poured on to powder that lies dry the
// first of it is. Some of a liquor may be taken out on the way: then no more counts
// before than is left.
func liquors(n *Course) []liquor {
	out := make([]liquor, len(n.Stages))
	for i := range n.Stages {
		s := &n.Stages[i]
		all := s.Filled.V - s.Done.Contents().SolidCapacity(nil).V
		out[i] = liquor{all, all}
		if s.Onto != nil {
			out[i].before = max(s.Onto.There.V-s.Done.Before.SolidCapacity(nil).V, firstDrops*all)
		}
	}
	for i := len(out) - 1; i > 0; i-- {
		out[i-1].after = min(out[i-1].after, out[i].before)
		out[i-1].before = min(out[i-1].before, out[i-1].after)
	}
	return out
}

// more is how much more b is than a, nothing where they differ by rounding alone.
func more(a, b float64) float64 {
	if math.Abs(b-a) <= 1e-9*math.Abs(a) {
		return 0
	}
	return b - a
}

// firstDrops is the share of a liquor that is in when the first of it wets dry
// powder, and the least with which all of it can react: a vessel with nothing in it
// has no temperature, and nothing goes in within no time. It is far below what any
// etchant needs, so that it hides no heat.
const firstDrops = 1e-4

// pieces lays the stages out in time; those of a number twice that of the step
// are its addition, and the next number what follows in the step.
func (f *finder) pieces(n *Course, in []liquor, p *vessel.Plan, out *Run) {
	t, there := 0.0, in[0].before
	for i := range n.Stages {
		s := &n.Stages[i]
		out.Inputs = append(out.Inputs, s.Set, s.Coolant, s.UA)
		if more(n.Capacity.V, s.Filled.V) != 0 {
			out.Inputs = append(out.Inputs, s.Filled.As("C"))
		}
		x := vessel.Piece{Feed: p.Start, UA: s.UA.V, Coolant: s.Coolant.V + kelvin, Iced: s.Iced,
			Jacketed: s.Jacket != nil, PourAt: s.Set.V + kelvin}
		if !s.Stirring.None() {
			x.Stirring = s.Stirring.V
			out.Inputs = append(out.Inputs, s.Stirring)
		}
		if s.Etches != nil {
			out.Inputs = append(out.Inputs, s.Over)
			x.Step, x.Added = 2*s.Step.Number, more(there, in[i].before)
			p.Pieces = append(p.Pieces, f.addition(s, in[i], x, t, out)...)
			t += s.Over.V
			there = in[i].after
		}
		if s.Done.Quenched != nil && s.Etches == nil && i > 0 {
			t = f.pouring(&n.Stages[i-1], s, liquor{there, in[i].after}, t, &x, p, out)
		}
		if !(s.Hold.V == 0) {
			out.Inputs = append(out.Inputs, s.Hold)
			x.Step, x.Added = 2*s.Step.Number+1, more(there, in[i].after)
			t += s.Hold.V
			x.Until, there = t, in[i].after
			p.Pieces = append(p.Pieces, x)
		}
	}
}

// pouring is the part of a plan in which a liquor is poured into another place: what is not
// poured yet goes on as it did, and when it is over all of it comes to the temperature of the
// two, where what receives it counts as liquor of
//
//	T_l = ((C + c) T_q - C T)/c
func (f *finder) pouring(from, s *Stage, in liquor, t float64, x *vessel.Piece, p *vessel.Plan, out *Run) float64 {
	out.Inputs = append(out.Inputs, s.Done.Quenched.Comes)
	c, more := in.before+p.Slow.Capacity, more(in.before, in.after)
	if more > 0 {
		x.PourAt = ((c+more)*s.Set.V-c*from.Set.V)/more + kelvin
	}
	if !s.Step.Over.Set {
		return t
	}
	over := f.c.Given("t_p", "s", s.Step.Over)
	out.Inputs = append(out.Inputs, over)
	y := vessel.Piece{Step: 2 * s.Step.Number, Until: t + over.V, UA: from.UA.V, Coolant: from.Coolant.V + kelvin,
		Iced: from.Iced, Jacketed: from.Jacket != nil, Feed: p.Start}
	if !from.Stirring.None() {
		y.Stirring = from.Stirring.V
	}
	if over.V > 0 {
		p.Pieces = append(p.Pieces, y)
	}
	return t + over.V
}

// addition is the part of a plan in which powder goes in, or in which liquor goes on
// to it: then as much of the powder as there is liquor for counts as going in.
func (f *finder) addition(s *Stage, in liquor, x vessel.Piece, t float64, out *Run) []vessel.Piece {
	if s.Portions() > 1 {
		out.Inputs = append(out.Inputs, s.GoesIn)
	}
	if s.Onto == nil {
		x.Dose = f.amount(s.Etches) / s.GoesIn.V
		return portions(s, x, t)
	}
	out.Inputs = append(out.Inputs, s.Onto.Share, s.Onto.There.As("C_0"))
	x.Pour = (in.after - in.before) / s.GoesIn.V
	x.Dose, x.Until = f.amount(s.Etches)/s.Onto.Feeding.V, t+s.Onto.Feeding.V
	pieces := []vessel.Piece{x}
	for _, until := range [...]float64{t + s.GoesIn.V, t + s.Over.V} { // more liquor, then nothing more
		if x.Dose, x.Added = 0, 0; until > x.Until {
			x.Until = until
			pieces = append(pieces, x)
		}
		x.Pour = 0
	}
	return pieces
}

// portions are the parts of an addition that begins at t: each portion goes in at once
// after the other, and nothing in the pause behind it.
func portions(s *Stage, x vessel.Piece, t float64) []vessel.Piece {
	n := float64(s.Portions())
	each, pause := s.GoesIn.V/n, (s.Over.V-s.GoesIn.V)/n
	if !(pause > 1e-9*s.Over.V) {
		x.Until = t + s.Over.V
		return []vessel.Piece{x}
	}
	var out []vessel.Piece
	for i := range s.Portions() {
		begins := t + float64(i)*(each+pause)
		x.Until = begins + each
		y := x
		y.Dose, y.Added, y.Until = 0, 0, begins+each+pause
		out, x.Added = append(out, x, y), 0
	}
	return out
}

// boils sets the temperature above which no rate grows: an open liquor gets no
// hotter than the point at which it boils. Where that is not known, rates go on
// growing to where no liquor is left, and what follows is a bound.
func (f *finder) boils(n *Course, p *vessel.Plan, out *Run) {
	b := n.Stages[0].Boils
	if b.Unknown() {
		b = working.Exact("T_b", "degC", noLiquor, "no boiling point is known: rates grow up to here").Worse(working.Bound)
	}
	p.Liquor.Boils = b.V + kelvin
	out.Inputs = append(out.Inputs, b)
}

// noLiquor is a temperature at which no aqueous acid of these routes is liquid at
// ambient pressure, degC: common practice.
const noLiquor = 200

func (f *finder) amount(etches []int) float64 {
	slow, _ := Solids(f.k, etches)
	return slow.Amount
}

// ranged takes a stated quantity among what a run stands on, if it moves.
func (f *finder) ranged(out *Run, symbol, unit string, q quantity.Value) {
	if q.HasRange() {
		out.Inputs = append(out.Inputs, f.c.Given(symbol, unit, q))
	}
}

// calibrate finds the rate with which the law is done at the end of the stated
// hold. Its parts at other temperatures count by Arrhenius, as time at that of
// the longest:
//
//	t = f sum t_i exp(-E_a/R (1/T_i - 1/T))
func (f *finder) calibrate(n *Course, p *vessel.Plan, out *Run) {
	k := &p.Slow.Kinetics
	if c := f.c.Route.Curve; c != nil {
		k.Rate, k.Reference = 1, f.c.Ranged(c.Temperature).In("degC")+kelvin
		f.ranged(out, "T_x", "degC", c.Temperature)
		for _, x := range c.Points {
			f.ranged(out, "t_x", "min", x.Time)
			f.ranged(out, "x", "1", x.Conversion)
			k.Curve.Time = append(k.Curve.Time, f.c.Ranged(x.Time).In("s"))
			k.Curve.Conversion = append(k.Curve.Conversion, f.c.Ranged(x.Conversion).SI)
		}
		return
	}
	longest := -1
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Hold.V > 0 && (longest < 0 || s.Hold.V > n.Stages[longest].Hold.V) {
			longest = i
		}
	}
	if longest < 0 {
		out.Missing = append(out.Missing, working.Lacks(working.NoHold, "").In(n.Stages[0].Step.Number))
		return
	}
	k.Reference = n.Stages[longest].Set.V + kelvin
	share, done := f.c.Store.Num("kinetics.hold_share").As("f_t"), f.done()
	out.Inputs = append(out.Inputs, share, done)
	hold := 0.0
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Hold.V > 0 {
			hold += s.Hold.V * math.Exp(-k.Activation/vessel.R*(1/(s.Set.V+kelvin)-1/k.Reference))
		}
	}
	k.Rate = vessel.CalibrateTo(p.Law, share.V*hold, k.Seed, done.V)
}

// done is the conversion at the end of the hold: what the route states, at most
// what counts as complete.
func (f *finder) done() working.Num {
	st := f.c.Store
	full := st.Num("kinetics.complete").As("X_c")
	if f.k.Layered == nil {
		return full.As("X")
	}
	x := st.Num(datum.Of("etch_conversion", f.k.Layered.Formula.Text)).As("X_s")
	if x.Unknown() {
		return full.As("X")
	}
	return f.w.Line("X", "1", "min(X_s,X_c)", min(x.V, full.V), x, full)
}
