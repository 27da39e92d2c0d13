package vessel

import (
	"math"

	"etchbound/hazards/ode"
)

// point is a state as people see it.
func (b *balance) point(t float64, y []float64) Point {
	r, f := b.rates(y)
	return Point{Time: t, Temperature: y[temperature], Heat: b.power(r, f), Gas: b.flow(r, f),
		Released: b.released(y), Conversion: y[reacted] / b.p.Slow.Amount, Waiting: y[suspended] + y[heap],
		MTSR: b.mtsr(0, t, y), Jacket: b.around(y)}
}

// around is the temperature of the liquid in the jacket, K; 0 where there is none.
func (b *balance) around(y []float64) float64 {
	if b.jacket == 0 {
		return 0
	}
	return y[b.jacket]
}

// state is a state vector by name.
func (b *balance) state(y []float64) State {
	s := State{Suspended: y[suspended], Heap: y[heap], Reacted: y[reacted],
		Temperature: y[temperature], Removed: y[removed], Evaporated: y[evaporated]}
	if b.fast > 0 {
		s.Fast, s.FastHeap = y[b.fast], y[b.fast+1]
	}
	if b.poured > 0 {
		s.Poured = y[b.poured]
	}
	if b.warmed > 0 {
		s.Warmed = y[b.warmed]
	}
	if b.jacket > 0 {
		s.Jacket = y[b.jacket]
	}
	return s
}

// fastGone is the fast solid that has reacted, mol: it goes in with the slow
// one, always in proportion.
func (b *balance) fastGone(y []float64) float64 {
	if b.fast == 0 {
		return 0
	}
	return float64(b.ratio*(y[suspended]+y[heap]+y[reacted])) - y[b.fast] - y[b.fast+1]
}

// released is the gas given off by then, mol.
func (b *balance) released(y []float64) float64 {
	return float64(b.p.Slow.Gas*y[reacted]) + float64(b.p.Fast.Gas*b.fastGone(y))
}

// window is what one integration gave.
func (b *balance) window(i int, from float64, res *ode.Result) Window {
	m := b.sought(res)
	return Window{Step: b.p.Pieces[i].Step, From: from, To: res.T, Peak: m[0], Heat: m[1], Gas: m[2], MTSR: m[3],
		End: b.point(res.T, res.Y)}
}

// sought are the greatest values of the scalars: as the integration found them,
// or at its steps.
func (b *balance) sought(res *ode.Result) [4]Moment {
	var out [4]Moment
	for i, m := range res.Peaks {
		out[i] = Moment{Value: m.Value, At: m.T, Edge: m.Edge}
	}
	if b.p.Coarse {
		out = b.coarse(res)
	}
	return out
}

// scalars are what is looked for the greatest value of, in the order of a
// window.
func (b *balance) scalars() [4]ode.Scalar {
	last := pace{temperature: math.NaN()}
	power := func(_ int, _ float64, y []float64) float64 {
		b.paced(y, &last)
		return b.power(last.slow, last.quick)
	}
	flow := func(_ int, _ float64, y []float64) float64 {
		b.paced(y, &last)
		return b.flow(last.slow, last.quick)
	}
	return [...]ode.Scalar{b.temperature, power, flow, b.mtsr}
}

// pace is how fast both solids react in a state, kept since power and flow are
// asked for one after the other.
type pace struct {
	suspended, heap, reacted, fast, temperature float64
	slow, quick                                 float64
}

func (b *balance) paced(y []float64, p *pace) {
	if y[temperature] == p.temperature && y[suspended] == p.suspended && y[heap] == p.heap && y[reacted] == p.reacted &&
		(b.fast == 0 || y[b.fast] == p.fast) {
		return
	}
	*p = pace{suspended: y[suspended], heap: y[heap], reacted: y[reacted], temperature: y[temperature]}
	p.slow, p.quick = b.rates(y)
	if b.fast > 0 {
		p.fast = y[b.fast]
	}
}

// sampled is in how many parts a step is looked at beside its ends.
const sampled = 6

// coarse are the greatest values of the scalars at the steps of an integration, and within
// the two steps beside each of them: output rises and falls within one.
func (b *balance) coarse(res *ode.Result) [4]Moment {
	var out [4]Moment
	var most [len(out)]int // the steps at which they are
	for i := range out {
		out[i] = Moment{Value: math.Inf(-1), Edge: true}
	}
	scalars, y, times := b.scalars(), make([]float64, b.n), res.Times()
	for k, t := range times {
		if res.At(t, y) != nil {
			continue
		}
		for i, of := range scalars {
			if v := of(0, t, y); v > out[i].Value {
				out[i].Value, out[i].At, most[i] = v, t, k
			}
		}
	}
	for i, of := range scalars {
		for k := max(most[i], 1); k <= min(most[i]+1, len(times)-1); k++ {
			for j := 1; j < sampled; j++ {
				t := times[k-1] + (times[k]-times[k-1])*float64(j)/sampled
				if res.At(t, y) != nil {
					continue
				}
				if v := of(0, t, y); v > out[i].Value {
					out[i].Value, out[i].At = v, t
				}
			}
		}
	}
	return out
}

// run is the outcome of all windows, y being the state at the end.
func (b *balance) run(windows []Window, path *Path, y []float64) Run {
	r := Run{Plan: b.p, Windows: windows, Rise: b.whole() / b.charged(),
		Conversion: y[reacted] / (y[suspended] + y[heap] + y[reacted]), Released: b.released(y), Closure: b.closure(y),
		Path: path, End: b.state(y)}
	for i := range windows {
		w := &windows[i]
		r.Peak, r.Heat, r.Gas, r.MTSR = r.Peak.or(w.Peak), r.Heat.or(w.Heat), r.Gas.or(w.Gas), r.MTSR.or(w.MTSR)
	}
	return r
}

// or is the greater of two moments, the earlier where they are equal.
func (m Moment) or(n Moment) Moment {
	if n.Value > m.Value {
		return n
	}
	return m
}

// whole is the heat of everything that goes in, J.
func (b *balance) whole() float64 {
	return float64(b.p.Slow.Amount*b.p.Slow.Heat) + float64(b.p.Fast.Amount*b.p.Fast.Heat)
}

// charged is the heat capacity of what is in the vessel when the last powder is,
// J/K.
func (b *balance) charged() float64 {
	c, from := b.p.Liquor.Capacity+b.first.Poured, 0.0
	all := c
	for _, x := range b.p.Pieces {
		c += x.Added + float64(x.Pour*(x.Until-from))
		from = x.Until
		if x.Dose > 0 {
			all = c
		}
	}
	return all + b.p.Slow.Capacity + b.p.Fast.Capacity
}

// closure is the error of the energy balance over the whole run, as a share of
// the heat released:
//
//	C T - C0 T0 = heat + stirring + what powder and liquor brought - to the coolant - to the room - with the vapour
func (b *balance) closure(y []float64) float64 {
	y0 := b.start()
	heat := float64(b.p.Slow.Heat*(y[reacted]-y0[reacted])) + float64(b.p.Fast.Heat*(b.fastGone(y)-b.fastGone(y0)))
	in, from := heat, 0.0
	for _, x := range b.p.Pieces {
		flows := x.Stirring + float64(x.Dose*b.solids*x.Feed) + float64(x.Pour*x.PourAt)
		in += float64(flows*(x.Until-from)) + float64(x.Added*x.PourAt)
		from = x.Until
	}
	out := y[removed] - y0[removed]
	for _, i := range [...]int{b.carried, b.lost} {
		if i > 0 {
			out += y[i]
		}
	}
	stored := float64(b.capacity(y)*y[temperature]) - float64(b.capacity(y0)*y0[temperature])
	return math.Abs(stored-in+out) / math.Max(math.Abs(heat), 1)
}
