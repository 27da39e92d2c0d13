package vessel

import (
	"math"
	"sort"
)

// rates are those of the slow and of the fast solid, mol/s.
func (b *balance) rates(y []float64) (slow, fast float64) {
	inverse, acid := 1/b.warm(y), b.acid(y)
	slow = b.slow(y, b.constants[0].at(inverse)*acid)
	if b.fast > 0 {
		fast = b.constants[1].at(inverse) * acid * max(0, y[b.fast])
	}
	return slow, fast
}

// slow is the rate of the slow solid, mol/s, with its constant k.
func (b *balance) slow(y []float64, k float64) float64 {
	p := &b.p
	left := max(0, y[suspended])
	switch p.Law {
	case Contracting:
		c := math.Cbrt(left)
		return k * c * c * b.cubeRoot
	case SelfAccelerating:
		return k * left * (p.Slow.Seed + y[reacted]/p.Slow.Amount)
	case Measured:
		return k * left * b.share(y[reacted]/(left+math.Max(0, y[heap])+math.Max(0, y[reacted])))
	}
	return k * left
}

// share is what a measured curve takes of the rest per second at conversion x.
func (b *balance) share(x float64) float64 {
	c := b.p.Slow.Curve.Conversion
	last := len(c) - 1
	i := sort.SearchFloat64s(c, x)
	if i > last || x >= c[last] { // the rest goes on as it did
		return b.slopes[last] / math.Max(1-float64(0.5*(c[last]+before(c, last))), 1e-9)
	}
	return b.slopes[i] / (1 - x)
}

func before(c []float64, i int) float64 {
	if i == 0 {
		return 0
	}
	return c[i-1]
}

// slopes are those of the pieces of a curve from the origin; nil if it does not
// rise.
func (c *Curve) slopes() []float64 {
	if len(c.Time) == 0 || len(c.Time) != len(c.Conversion) {
		return nil
	}
	out := make([]float64, len(c.Time))
	for i := range out {
		dt, dx := c.Time[i]-before(c.Time, i), c.Conversion[i]-before(c.Conversion, i)
		if !(dt > 0) || !(dx > 0) || c.Conversion[i] > 1 {
			return nil
		}
		out[i] = dx / dt
	}
	return out
}

// acid is its concentration in mol/L, or 1 where the rate does not depend on it.
func (b *balance) acid(y []float64) float64 {
	l := &b.p.Liquor
	if l.Volume == 0 {
		return 1
	}
	return math.Max(0, (l.Acid-float64(l.Taken*y[reacted]))/l.Volume)
}

// superheat is how far above the boiling point rates stop to grow, K. A rate that
// stopped on a point would be a kink, at which an integration stumbles.
const superheat = 1

// warm is the temperature that counts for the rates, K: that of the vessel up to
// the boiling point, from there
//
//	T - (T - Tb)^2/(4 s), Tb + s at most
func (b *balance) warm(y []float64) float64 {
	t, boils := y[temperature], b.p.Liquor.Boils
	if boils == 0 || t <= boils {
		return t
	}
	over := math.Min(t-boils, 2*superheat)
	return boils + over - float64(over*over/(4*superheat))
}

// arrhenius is a rate constant, k exp(-Ea/R (1/T - 1/Tr)), with Ea/R and Ea/(R Tr)
// worked out: it is asked for a thousand times a run.
type arrhenius struct{ rate, steep, offset float64 }

func (k *Kinetics) arrhenius() arrhenius {
	steep := k.Activation / R
	return arrhenius{k.Rate, steep, steep / k.Reference}
}

// at is the constant at a temperature of which the inverse is given, 1/K.
func (a *arrhenius) at(inverse float64) float64 {
	return a.rate * math.Exp(a.offset-float64(a.steep*inverse))
}

// coolant is its temperature, K: that of the piece, of a bath whose ice has melted
// away, or of the liquid in the jacket.
func (b *balance) coolant(x *Piece, y []float64) float64 {
	if x.Jacketed && b.jacket > 0 {
		return y[b.jacket]
	}
	if !x.Iced || b.p.Ice.Bath == 0 {
		return x.Coolant
	}
	taken := y[removed]
	if b.warmed > 0 {
		taken += y[b.warmed]
	}
	return x.Coolant + math.Max(0, taken-b.p.Ice.Melting)/b.p.Ice.Bath
}

// capacity is that of everything in the vessel, J/K.
func (b *balance) capacity(y []float64) float64 {
	c := b.p.Liquor.Capacity + float64(b.solids*(y[suspended]+y[heap]+y[reacted]))
	if b.poured > 0 {
		c += y[b.poured]
	}
	if v := b.p.Liquor.Vapour; v != nil {
		c -= float64(v.Molar * v.Specific * y[evaporated])
	}
	return c
}

// mostVapour is the share of vapour in a gas up to which it is followed: at the
// boiling point it has no end, and boiling itself takes over.
const mostVapour = 0.9

// vapour is what leaves, mol/s, with gas mol/s of dry gas.
func (b *balance) vapour(t, gas float64) float64 {
	v := b.p.Liquor.Vapour
	if v == nil {
		return 0
	}
	share := math.Exp(-v.Latent / R * (1/t - 1/v.Boiling))
	out := float64(v.Evaporation*share) + float64(v.Boil/v.Latent*math.Max(0, t-v.Boiling))
	if v.Stripped {
		x := math.Min(share, mostVapour)
		out += gas * x / (1 - x)
	}
	return out
}

// The scalars whose greatest values are looked for.

func (b *balance) temperature(_ int, _ float64, y []float64) float64 { return y[temperature] }

// power and flow are of the rates of both solids, W and mol/s.
func (b *balance) power(slow, quick float64) float64 {
	return float64(b.p.Slow.Heat*slow) + float64(b.p.Fast.Heat*quick)
}

func (b *balance) flow(slow, quick float64) float64 {
	return float64(b.p.Slow.Gas*slow) + float64(b.p.Fast.Gas*quick)
}

// mtsr is the temperature if cooling failed now and everything that waits
// reacted with nothing more lost.
func (b *balance) mtsr(_ int, _ float64, y []float64) float64 {
	waiting := float64(b.p.Slow.Heat * (y[suspended] + y[heap]))
	if b.fast > 0 {
		waiting += float64(b.p.Fast.Heat * (y[b.fast] + y[b.fast+1]))
	}
	return y[temperature] + waiting/b.capacity(y)
}
