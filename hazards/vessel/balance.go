package vessel

import (
	"math"
	"sort"

	"etchbound/hazards/ode"
)

// The states of the balance. The two of the fast solid and the one of the heat
// that vapour carries are there only where they are needed.
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
//	C dT/dt = q - UA (T - Tc) - dose cs (T - Tf) + P - Hv nv'
//	nv'     = E p/P + (B/Hv) max(0, T - Tb),  p/P = exp(-Hv/R (1/T - 1/Tb))
//
// with q the heat of both solids, cs their heat capacity per mol of the slow
// one, and C all that is in the vessel.
type balance struct {
	p          Plan
	n          int // states
	fast       int // index of the fast solid's states, 0 if there is none
	carried    int // index of the heat vapour carries, 0 if there is none
	solids     float64
	ratio      float64
	cubeRoot   float64
	end        float64
	pieceStart []float64
}

func newBalance(p Plan) (*balance, error) {
	switch {
	case len(p.Pieces) == 0:
		return nil, &ErrPlan{"no time to run: the plan has no pieces"}
	case !(p.Slow.Amount > 0) || !(p.Liquor.Capacity > 0) || !(p.Start > 0):
		return nil, &ErrPlan{"the amount of powder, the heat capacity of the liquor and the starting temperature have to be known and above zero"}
	case p.Liquor.Volume > 0 && math.IsNaN(p.Liquor.Acid):
		return nil, &ErrPlan{"the acid of the liquor is not known"}
	}
	b := &balance{p: p, n: states, ratio: p.Fast.Amount / p.Slow.Amount, cubeRoot: math.Cbrt(p.Slow.Amount),
		solids: (p.Slow.Capacity + p.Fast.Capacity) / p.Slow.Amount}
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
		b.pieceStart = append(b.pieceStart, b.end)
		b.end = x.Until
	}
	return b, nil
}

func (b *balance) problem() ode.Problem {
	y := make([]float64, b.n)
	y[suspended], y[temperature] = b.p.Ready, b.p.Start
	if b.fast > 0 {
		y[b.fast] = b.p.Ready * b.ratio
	}
	p := ode.Problem{From: 0, To: b.end, Start: y, Rate: b.rate, Autonomous: true}
	for i := range b.p.Pieces[:len(b.p.Pieces)-1] {
		s := ode.Switch{At: b.p.Pieces[i].Until}
		if b.p.Pieces[i+1].Lift {
			s.Jump = b.lift
		}
		p.Switches = append(p.Switches, s)
	}
	return p
}

// lift stirs the heap up.
func (b *balance) lift(_ int, _ float64, y []float64) {
	y[suspended] += y[heap]
	y[heap] = 0
	if b.fast > 0 {
		y[b.fast] += y[b.fast+1]
		y[b.fast+1] = 0
	}
}

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
	if b.carried > 0 {
		abs[b.carried] = heat
	}
	return ode.Options{RelTol: tol, AbsTol: abs}
}

// reaction is the rate of a solid with `left` mol stirred up, mol/s.
func (b *balance) slow(y []float64) float64 {
	p := &b.p
	left := math.Max(0, y[suspended])
	k := p.Slow.constant(y[temperature]) * b.acid(y)
	switch p.Law {
	case Contracting:
		c := math.Cbrt(left)
		return k * c * c * b.cubeRoot
	case SelfAccelerating:
		return k * left * (p.Slow.Seed + y[reacted]/p.Slow.Amount)
	}
	return k * left
}

func (b *balance) quick(y []float64) float64 {
	if b.fast == 0 {
		return 0
	}
	return b.p.Fast.constant(y[temperature]) * b.acid(y) * math.Max(0, y[b.fast])
}

// acid is its concentration in mol/L, or 1 where the rate does not depend on it.
func (b *balance) acid(y []float64) float64 {
	l := &b.p.Liquor
	if l.Volume == 0 {
		return 1
	}
	return math.Max(0, (l.Acid-l.Taken*y[reacted])/l.Volume)
}

func (k *Kinetics) constant(t float64) float64 {
	return k.Rate * math.Exp(-k.Activation/R*(1/t-1/k.Reference))
}

// capacity is that of everything in the vessel, J/K.
func (b *balance) capacity(y []float64) float64 {
	c := b.p.Liquor.Capacity + b.solids*(y[suspended]+y[heap]+y[reacted])
	if v := b.p.Liquor.Vapour; v != nil {
		c -= v.Molar * v.Specific * y[evaporated]
	}
	return c
}

// vapour is what leaves, mol/s.
func (b *balance) vapour(t float64) float64 {
	v := b.p.Liquor.Vapour
	if v == nil {
		return 0
	}
	return v.Evaporation*math.Exp(-v.Latent/R*(1/t-1/v.Boiling)) + v.Boil/v.Latent*math.Max(0, t-v.Boiling)
}

func (b *balance) rate(piece int, _ float64, y, dy []float64) {
	x := &b.p.Pieces[piece]
	t := y[temperature]
	r, f, nv := b.slow(y), b.quick(y), b.vapour(t)
	loss := x.UA * (t - x.Coolant)
	dy[suspended], dy[heap] = x.Dose-r, 0
	if x.Settled {
		dy[suspended], dy[heap] = -r, x.Dose
	}
	dy[reacted], dy[removed], dy[evaporated] = r, loss, nv
	if b.fast > 0 {
		in := x.Dose * b.ratio
		dy[b.fast], dy[b.fast+1] = in-f, 0
		if x.Settled {
			dy[b.fast], dy[b.fast+1] = -f, in
		}
	}
	q := b.p.Slow.Heat*r + b.p.Fast.Heat*f
	if v := b.p.Liquor.Vapour; v != nil {
		q -= v.Latent * nv
		dy[b.carried] = nv * (v.Latent + v.Molar*v.Specific*t)
	}
	dy[temperature] = (q - loss - x.Dose*b.solids*(t-x.Feed) + x.Stirring) / b.capacity(y)
}

// The scalars whose greatest values are looked for.

func (b *balance) temperature(_ int, _ float64, y []float64) float64 { return y[temperature] }

func (b *balance) power(_ int, _ float64, y []float64) float64 {
	return b.p.Slow.Heat*b.slow(y) + b.p.Fast.Heat*b.quick(y)
}

func (b *balance) flow(_ int, _ float64, y []float64) float64 {
	return b.p.Slow.Gas*b.slow(y) + b.p.Fast.Gas*b.quick(y)
}

// mtsr is the temperature if cooling failed now and everything that waits
// reacted with nothing more lost.
func (b *balance) mtsr(_ int, _ float64, y []float64) float64 {
	waiting := b.p.Slow.Heat * (y[suspended] + y[heap])
	if b.fast > 0 {
		waiting += b.p.Fast.Heat * (y[b.fast] + y[b.fast+1])
	}
	return y[temperature] + waiting/b.capacity(y)
}

// pieceAt is the piece that ends at or after t.
func (b *balance) pieceAt(t float64) int {
	return min(sort.Search(len(b.p.Pieces), func(i int) bool { return b.p.Pieces[i].Until >= t }), len(b.p.Pieces)-1)
}

// dosed is the slow solid that has gone in by t, mol.
func (b *balance) dosed(t float64) float64 {
	n := b.p.Ready
	for i, x := range b.p.Pieces {
		n += x.Dose * math.Max(0, math.Min(t, x.Until)-b.pieceStart[i])
	}
	return n
}
