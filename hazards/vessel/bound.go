package vessel

import (
	"math"
	"slices"
)

// Bounds are values that no run of a plan exceeds.
type Bounds struct {
	Peak   float64 // K
	Heat   float64 // W
	Gas    float64 // mol/s
	Jacket float64 // K of the liquid in a jacket; 0 where there is none
	Load   float64 // W into it
}

// Bounded is a run with what it does not exceed in place of its peaks in the windows of some
// steps: in place of its highest temperature that which it comes to if cooling fails.
func (r Run) Bounded(of func(step int) bool) Run {
	r.Windows = slices.Clone(r.Windows)
	r.Peak, r.Heat, r.Gas = Moment{}, Moment{}, Moment{}
	for i := range r.Windows {
		w := &r.Windows[i]
		if of(w.Step) {
			b := r.Plan.Bound(w.To)
			at := func(v float64) Moment { return Moment{Value: v, At: w.From, Edge: true} }
			w.Bounds, w.Peak, w.Heat, w.Gas = &b, w.MTSR, at(b.Heat), at(b.Gas)
		}
		r.Peak, r.Heat, r.Gas = r.Peak.or(w.Peak), r.Heat.or(w.Heat), r.Gas.or(w.Gas)
	}
	return r
}

// shares are in how many parts a conversion is gone through.
const shares = 1000

// Bound is what no run of a plan exceeds until a time, s, however badly it is cooled and however
// long its powder waits. What has reacted keeps all of its heat, and all that has not is there:
//
//	T <= T_0 + (X Q + Q_f)/C,   r <= k(T) times what the law of the solid gives for n = n_in - X N
//
// of which the greatest over X is taken. T_0 is the warmest of what it starts from, what goes in
// and what is around it, with what a stirrer keeps it above that; C is what is in the vessel when
// X can first have reacted; Q_f is the heat of the fast solid. Of that one, which goes in at D
// mol/s, no more than D/k waits (dn/dt = D - k n), so that it reacts at most at
//
//	k(T_max) min(n_f, D/k(T_min))
//
// or n_f where some of it lies still or is there from the start. It is the argument by which a
// highest temperature is bounded if cooling fails (common practice), taken on to the rate there.
// NaN for a plan that goes on from a state or that loses vapour.
func (p *Plan) Bound(until float64) Bounds {
	b, err := newBalance(*p)
	if err != nil || p.Begin != nil || p.Liquor.Vapour != nil {
		x := math.NaN()
		return Bounds{x, x, x, x, x}
	}
	x := p.extremes(until)
	most, slow, fast := x.warmest, 0.0, 0.0
	step := x.in / shares
	for k := range shares {
		n := x.in - float64(float64(k)*step)
		done := x.in - n + step
		t := x.warmest
		for _, in := range [...]float64{max(done, p.Ready), x.in} { // as soon as it is in, and once all is
			q := float64(p.Slow.Heat*done) + float64(p.Fast.Heat*b.ratio*in)
			t = max(t, x.warmest+q/(p.Liquor.Capacity+float64(b.solids*in)+x.poured(in)))
		}
		most = max(most, t)
		slow = max(slow, b.most(n, done, b.constants[0].at(1/b.counts(t))))
	}
	if p.Fast.Amount > 0 {
		waits, high := p.Fast.Amount/p.Slow.Amount*x.in, b.constants[1].at(1/b.counts(most))
		if !x.lies {
			waits = min(waits, x.dose*b.ratio/b.constants[1].at(1/b.counts(x.coldest)))
		}
		fast = high * waits
	}
	if l := &p.Liquor; l.Volume > 0 {
		slow, fast = slow*l.Acid/l.Volume, fast*l.Acid/l.Volume
	}
	out := Bounds{Peak: most, Gas: b.flow(slow, fast),
		Heat: float64(max(0, p.Slow.Heat)*slow) + float64(max(0, p.Fast.Heat)*fast)}
	p.jackets(&out, until)
	return out
}

// jackets bounds what a jacket comes to around a vessel at its peak: its liquid no warmer than
//
//	(UA T + J T_i)/(UA + J)
//
// where its chiller takes all that brings, or T; what goes into it UA (T - T_i).
func (p *Plan) jackets(b *Bounds, until float64) {
	from := 0.0
	for i := range p.Pieces {
		x := &p.Pieces[i]
		if from >= until {
			return
		}
		from = x.Until
		if !x.Jacketed || !(p.Jacket.Capacity > 0) {
			continue
		}
		j, warm := p.Jacket.Flow, b.Peak
		if t := (float64(x.UA*b.Peak) + float64(j*x.Coolant)) / (x.UA + j); j*(t-x.Coolant) <= p.Jacket.Power {
			warm = t
		}
		b.Jacket, b.Load = max(b.Jacket, warm, p.Jacket.Begins), max(b.Load, x.UA*(b.Peak-x.Coolant))
	}
}

// counts is the temperature that counts for the rates where the vessel is at t, K.
func (b *balance) counts(t float64) float64 {
	var y [states]float64
	y[temperature] = t
	return b.warm(y[:])
}

// most is the greatest rate of the slow solid by its law, mol/s, with n mol left, done mol
// reacted and the constant k.
func (b *balance) most(n, done, k float64) float64 {
	if b.p.Law != Measured {
		var y [states]float64
		y[suspended], y[reacted] = n, done
		return b.slow(y[:], k)
	}
	out := 0.0
	for _, x := range append([]float64{0}, b.p.Slow.Curve.Conversion...) {
		out = max(out, b.share(x))
	}
	return k * n * out
}

// extremes are how warm and how cold a vessel can be until a time before anything reacts, K, and
// what is in it by then.
type extremes struct {
	warmest, coldest float64
	in, dose         float64 // mol, and mol/s at most, of the slow solid
	lies             bool    // some of the powder lies still, or is there from the start
	poured           func(done float64) float64
}

func (p *Plan) extremes(until float64) extremes {
	out := extremes{warmest: p.Start, coldest: p.Start, in: p.Ready, lies: p.Ready > 0}
	from, stirred := 0.0, 0.0
	var parts []gone
	poured := 0.0
	for i := range p.Pieces {
		x := &p.Pieces[i]
		if from >= until {
			break
		}
		around := []float64{p.Start, x.Coolant}
		if x.Dose > 0 {
			around = append(around, x.Feed)
		}
		if x.Added > 0 || x.Pour > 0 {
			around = append(around, x.PourAt)
		}
		if x.Loss > 0 {
			around = append(around, x.Room)
		}
		if x.Iced && p.Ice.Bath > 0 {
			around = append(around, p.melted(x))
		}
		above, keeps := p.keeps(x)
		if !keeps {
			stirred += x.Stirring * (x.Until - from) / p.Liquor.Capacity
			above = 0
		}
		out.warmest = max(out.warmest, slices.Max(around)+above)
		out.coldest = min(out.coldest, slices.Min(around))
		out.in += float64(x.Dose * (x.Until - from))
		out.dose, out.lies = max(out.dose, x.Dose), out.lies || x.Settled || x.Lift
		poured += x.Added
		parts = append(parts, gone{out.in, poured, poured + float64(x.Pour*(x.Until-from)), x.Dose * (x.Until - from)})
		poured = parts[len(parts)-1].after
		from = x.Until
	}
	out.warmest += stirred
	out.poured = func(in float64) float64 { return pouredBy(parts, in) }
	return out
}

// melted is how warm the air alone can make a bath of ice by the end of a piece, K:
//
//	T_c + max(0, G (T_a - T_c) t - Q_i)/C_b, T_a at most
//
// What a vessel gives a bath that holds more than it heats it less than it would the vessel.
func (p *Plan) melted(x *Piece) float64 {
	i := &p.Ice
	if i.Bath < p.Liquor.Capacity {
		return max(x.Coolant, i.Air)
	}
	t := x.Coolant + max(0, float64(i.Room*(i.Air-x.Coolant)*x.Until)-i.Melting)/i.Bath
	return min(t, max(x.Coolant, i.Air))
}

// gone is what is in at the end of a piece, mol, the liquor poured before and after it, J/K, and
// the powder that goes in during it, mol.
type gone struct{ in, before, after, dosed float64 }

// pouredBy is the liquor poured when as much powder is in, J/K.
func pouredBy(parts []gone, in float64) float64 {
	for _, x := range parts {
		if in <= x.in*(1+1e-12) {
			if !(x.dosed > 0) {
				return x.before
			}
			return x.before + float64((x.after-x.before)*max(0, 1-(x.in-in)/x.dosed))
		}
	}
	return 0
}

// keeps is how far above its coolant a stirrer keeps a vessel in a piece, K; false where nothing
// carries its heat off for good.
func (p *Plan) keeps(x *Piece) (float64, bool) {
	switch {
	case x.Stirring == 0:
		return 0, true
	case !(x.UA > 0) || x.Iced && p.Ice.Bath > 0:
		return 0, false
	case x.Jacketed && p.Jacket.Capacity > 0:
		if !(p.Jacket.Flow > 0) || p.Jacket.Power < x.Stirring {
			return 0, false
		}
		return x.Stirring/x.UA + x.Stirring/p.Jacket.Flow, true
	}
	return x.Stirring / x.UA, true
}
