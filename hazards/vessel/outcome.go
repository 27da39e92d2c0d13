package vessel

import (
	"math"

	"etchbound/hazards/ode"
)

// point is a state as people see it.
func (b *balance) point(piece int, t float64, y []float64) Point {
	return Point{Time: t, Temperature: y[temperature], Heat: b.power(piece, t, y), Gas: b.flow(piece, t, y),
		Released: b.released(t, y), Conversion: y[reacted] / b.p.Slow.Amount, Waiting: y[suspended] + y[heap]}
}

// released is the gas given off by t, mol.
func (b *balance) released(t float64, y []float64) float64 {
	g := b.p.Slow.Gas * y[reacted]
	if b.fast > 0 {
		g += b.p.Fast.Gas * (b.dosed(t)*b.ratio - y[b.fast] - y[b.fast+1])
	}
	return g
}

func (b *balance) run(res ode.Result) Run {
	moment := func(i int) Moment {
		m := res.Peaks[i]
		return Moment{Value: m.Value, At: m.T, Edge: m.Edge}
	}
	in := b.dosed(b.end)
	return Run{Plan: b.p, Peak: moment(0), Heat: moment(1), Gas: moment(2), MTSR: moment(3),
		Rise:       b.whole() / (b.p.Liquor.Capacity + b.p.Slow.Capacity + b.p.Fast.Capacity),
		Conversion: res.Y[reacted] / in, Released: b.released(b.end, res.Y), Closure: b.closure(res.Y),
		Path: &Path{b: b, result: res}}
}

// whole is the heat of everything that goes in, J.
func (b *balance) whole() float64 {
	return b.p.Slow.Amount*b.p.Slow.Heat + b.p.Fast.Amount*b.p.Fast.Heat
}

// closure is the error of the energy balance over the whole run, as a share of
// the heat released:
//
//	C T - C0 T0 = heat + stirring + what the powder brought - to the coolant - with the vapour
func (b *balance) closure(y []float64) float64 {
	heat := b.p.Slow.Heat * y[reacted]
	if b.fast > 0 {
		heat += b.p.Fast.Heat * (b.dosed(b.end)*b.ratio - y[b.fast] - y[b.fast+1])
	}
	in := heat
	for i, x := range b.p.Pieces {
		in += (x.Stirring + x.Dose*b.solids*x.Feed) * (x.Until - b.pieceStart[i])
	}
	out := y[removed]
	if b.carried > 0 {
		out += y[b.carried]
	}
	first := (b.p.Liquor.Capacity + b.solids*b.p.Ready) * b.p.Start
	stored := b.capacity(y)*y[temperature] - first
	return math.Abs(stored-in+out) / math.Max(math.Abs(heat), 1)
}
