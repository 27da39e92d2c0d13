package vessel

import (
	"math"
	"slices"

	"etchbound/hazards/ode"
)

// The states of the balance. Those of the fast solid, of the heat that vapour
// carries, of the heat lost to the room and of the liquor that goes in are there
// only where needed.
const (
	suspended   = iota // mol of slow solid stirred up
	heap               // mol of slow solid lying still
	reacted            // mol of slow solid
	temperature        // K
	removed            // J to the coolant
	evaporated         // mol
	states
)

// balance is the heat and mass balance of a plan:
//
//	C dT/dt = q - UA (T - Tc) - L (T - Tr) - dose cs (T - Tf) - pour (T - Tl) + P - Hv nv'
//	nv'     = E p/P + (B/Hv) max(0, T - Tb) + g p/(P - p),  p/P = exp(-Hv/R (1/T - 1/Tb))
//
// with q the heat and g the gas of both solids (g counts only where the gas
// leaves saturated), cs their heat capacity per mol of the slow one, and C all
// that is in the vessel, which pour, in J/K/s of liquor at Tl, adds to. Over a bath
// of ice Tc = Tm + max(0, Q - Qi)/Cb, Q being the heat it has taken from the vessel and
// from the air, G (Ta - Tc) of that. In a jacket of J W/K flowing through, whose coolant
// comes in at Ti and whose chiller takes P at most,
//
//	Cj dTc/dt = UA (T - Tc) - min(J (Tc - Ti), P)
type balance struct {
	p         Plan
	n         int // states
	fast      int // index of the fast solid's states, 0 if there is none
	carried   int // index of the heat vapour carries, 0 if there is none
	lost      int // index of the heat lost to the room, 0 if there is none
	poured    int // index of the liquor that has gone in, 0 if none does
	warmed    int // index of the heat a bath of ice takes from the air, 0 if it takes none
	jacket    int // index of the temperature of the jacket, 0 if there is none
	solids    float64
	ratio     float64
	cubeRoot  float64
	end       float64
	slopes    []float64    // of the measured curve, per s
	constants [2]arrhenius // of the slow and the fast solid
	first     State
}

func newBalance(p Plan) (*balance, error) {
	b := &balance{p: p, n: states, ratio: p.Fast.Amount / p.Slow.Amount, cubeRoot: math.Cbrt(p.Slow.Amount),
		solids: (p.Slow.Capacity + p.Fast.Capacity) / p.Slow.Amount, slopes: p.Slow.Curve.slopes(),
		constants: [2]arrhenius{p.Slow.Kinetics.arrhenius(), p.Fast.Kinetics.arrhenius()}}
	b.first = State{Suspended: p.Ready, Fast: p.Ready * b.ratio, Temperature: p.Start, Jacket: p.Jacket.Begins}
	if p.Begin != nil {
		b.first = *p.Begin
	}
	if err := b.check(); err != nil {
		return nil, err
	}
	if p.Fast.Amount > 0 {
		b.fast, b.n = b.n, b.n+2
	}
	if p.Liquor.Vapour != nil {
		b.carried, b.n = b.n, b.n+1
	}
	for _, x := range p.Pieces {
		if !(x.Until > b.end) {
			return nil, &ErrPlan{"the pieces have to follow one another in time"}
		}
		b.end = x.Until
		if x.Loss != 0 && b.lost == 0 {
			b.lost, b.n = b.n, b.n+1
		}
		if b.poured == 0 && (x.Added != 0 || x.Pour != 0 || b.first.Poured != 0) {
			b.poured, b.n = b.n, b.n+1
		}
		if b.warmed == 0 && (x.Iced && p.Ice.Room > 0 || b.first.Warmed != 0) {
			b.warmed, b.n = b.n, b.n+1
		}
		if b.jacket == 0 && x.Jacketed && p.Jacket.Capacity > 0 {
			b.jacket, b.n = b.n, b.n+1
		}
	}
	if b.jacket > 0 && !(b.first.Jacket > 0) {
		return nil, &ErrPlan{"the temperature of the jacket has to be known where it has liquid in it"}
	}
	return b, nil
}

func (b *balance) check() error {
	p := &b.p
	switch {
	case len(p.Pieces) == 0:
		return &ErrPlan{"no time to run: the plan has no pieces"}
	case !(p.Slow.Amount > 0) || !(p.Liquor.Capacity > 0) || !(b.first.Temperature > 0):
		return &ErrPlan{"the amount of powder, the heat capacity of the liquor and the starting temperature have to " +
			"be known and above zero"}
	case p.Liquor.Volume > 0 && math.IsNaN(p.Liquor.Acid):
		return &ErrPlan{"the acid of the liquor is not known"}
	case p.Ice.Melting != 0 && !(p.Ice.Bath > 0):
		return &ErrPlan{"ice that can melt away leaves a bath with a heat capacity above zero"}
	case !(p.Jacket.Capacity >= 0) || p.Jacket.Capacity > 0 && (!(p.Jacket.Flow >= 0) || !(p.Jacket.Power >= 0)):
		return &ErrPlan{"a jacket with liquid in it needs its flow and the power of its chiller"}
	case slices.ContainsFunc(p.Pieces, func(x Piece) bool { return !(x.Added >= 0) || !(x.Pour >= 0) }):
		return &ErrPlan{"the liquor that goes in has to be known, and none can be taken out"}
	case p.Law == Measured && b.slopes == nil:
		return &ErrPlan{"the measured curve needs times and conversions that rise"}
	}
	return nil
}

// start is the state vector at the beginning of the plan.
func (b *balance) start() []float64 {
	y := make([]float64, b.n)
	s := &b.first
	y[suspended], y[heap], y[reacted] = s.Suspended, s.Heap, s.Reacted
	y[temperature], y[removed], y[evaporated] = s.Temperature, s.Removed, s.Evaporated
	if b.fast > 0 {
		y[b.fast], y[b.fast+1] = s.Fast, s.FastHeap
	}
	if b.poured > 0 {
		y[b.poured] = s.Poured
	}
	if b.warmed > 0 {
		y[b.warmed] = s.Warmed
	}
	if b.jacket > 0 {
		y[b.jacket] = s.Jacket
	}
	return y
}

// problem is the integration of the pieces i to j-1, from y at time t.
func (b *balance) problem(i, j int, t float64, y []float64) ode.Problem {
	rate := func(piece int, t float64, y, dy []float64) { b.rate(i+piece, t, y, dy) }
	p := ode.Problem{From: t, To: b.p.Pieces[j-1].Until, Start: y, Rate: rate, Autonomous: true}
	for k := i; k < j-1; k++ {
		s := ode.Switch{At: b.p.Pieces[k].Until}
		if x := &b.p.Pieces[k+1]; x.Lift || x.Added > 0 {
			s.Jump = func(_ int, _ float64, y []float64) { b.enter(x, y) }
		}
		p.Switches = append(p.Switches, s)
	}
	return p
}

// enter is what happens all at once at the beginning of a piece: the heap is
// stirred up, and liquor goes in.
//
//	T = (C T + c Tl)/(C + c)
func (b *balance) enter(x *Piece, y []float64) {
	if x.Lift {
		b.lift(y)
	}
	if x.Added > 0 {
		c := b.capacity(y)
		y[temperature] = (float64(c*y[temperature]) + float64(x.Added*x.PourAt)) / (c + x.Added)
		y[b.poured] += x.Added
	}
}

// lift stirs the heap up.
func (b *balance) lift(y []float64) {
	y[suspended] += y[heap]
	y[heap] = 0
	if b.fast > 0 {
		y[b.fast] += y[b.fast+1]
		y[b.fast+1] = 0
	}
}

// plain is the tolerance from which peaks are taken as they are found.
const plain = 1e-5

func (b *balance) options() ode.Options {
	tol := b.p.Tolerance
	if tol == 0 {
		tol = 1e-6
	}
	n := 1e-2 * tol * b.p.Slow.Amount
	abs := make([]float64, b.n)
	for i := range abs {
		abs[i] = n
	}
	heat := 1e-2 * tol * b.p.Slow.Amount * math.Max(math.Abs(b.p.Slow.Heat), 1)
	abs[temperature], abs[removed], abs[evaporated] = 0.1*tol, heat, 1e-2*tol
	for _, i := range [...]int{b.carried, b.lost, b.warmed} {
		if i > 0 {
			abs[i] = heat
		}
	}
	if b.jacket > 0 {
		abs[b.jacket] = 0.1 * tol
	}
	if b.poured > 0 {
		abs[b.poured] = 1e-2 * tol * b.p.Liquor.Capacity
	}
	o := ode.Options{RelTol: tol, AbsTol: abs, Plain: tol >= plain}
	if b.jacket > 0 { // its liquid is renewed in seconds, for days
		o.Method = ode.Implicit
	}
	return o
}

func (b *balance) rate(piece int, _ float64, y, dy []float64) {
	x := &b.p.Pieces[piece]
	t := y[temperature]
	r, f := b.rates(y)
	nv := b.vapour(t, float64(b.p.Slow.Gas*r)+float64(b.p.Fast.Gas*f))
	coolant := b.coolant(x, y)
	cooled, lost := float64(x.UA*(t-coolant)), float64(x.Loss*(t-x.Room))
	dy[suspended], dy[heap] = x.Dose-r, 0
	if x.Settled {
		dy[suspended], dy[heap] = -r, x.Dose
	}
	dy[reacted], dy[removed], dy[evaporated] = r, cooled, nv
	if b.fast > 0 {
		in := float64(x.Dose * b.ratio)
		dy[b.fast], dy[b.fast+1] = in-f, 0
		if x.Settled {
			dy[b.fast], dy[b.fast+1] = -f, in
		}
	}
	if b.lost > 0 {
		dy[b.lost] = lost
	}
	if b.warmed > 0 {
		dy[b.warmed] = 0
		if x.Iced {
			dy[b.warmed] = b.p.Ice.Room * (b.p.Ice.Air - coolant)
		}
	}
	if b.jacket > 0 {
		j := &b.p.Jacket
		dy[b.jacket] = (cooled - math.Min(float64(j.Flow*(coolant-x.Coolant)), j.Power)) / j.Capacity
		if !x.Jacketed {
			dy[b.jacket] = 0
		}
	}
	q := float64(b.p.Slow.Heat*r) + float64(b.p.Fast.Heat*f)
	if v := b.p.Liquor.Vapour; v != nil {
		q -= float64(v.Latent * nv)
		dy[b.carried] = nv * (v.Latent + float64(v.Molar*v.Specific*t))
	}
	if b.poured > 0 {
		dy[b.poured] = x.Pour
		q -= float64(x.Pour * (t - x.PourAt))
	}
	dy[temperature] = (q - cooled - lost - float64(x.Dose*b.solids*(t-x.Feed)) + x.Stirring) / b.capacity(y)
}
