package aqueous

import "math"

// newton holds the unknowns, ln a of base, ln of the ionic strength, ln of the activity
// of water, ln of the kg of water, and what is left of their equations.
type newton struct {
	u, was, step []float64
	left         []float64 // ln of one side of each equation over the other
	sides        []float64 // of each balance: what counts as more and what counts as less
	perSide      []float64 // 1 over them, below 0 for the second
	lnG, slope   []float64 // of each kind of species: ln of its activity coefficient, and by that of the ionic strength
	matrix       []float64
	lu
	slopeOfWater float64
	slopeOfMass  float64
	perWater     float64 // 1 over the kg of water
	count        int
	worst        float64
}

const (
	waterShare = 0.017 // fall of the activity of water with each mol/kg, as the source takes it
	driest     = 0.4   // activity of water below which the straight line is left
	converged  = 1e-11 // of ln of one side of an equation over the other
	most       = 30    // steps before the search is given up
)

func (n *newton) room(balances, kinds int) {
	n.count = balances + 3
	c := n.count
	room := grow(n.matrix, c*c+4*c+4*balances+2*kinds)
	n.matrix = room[:c*c]
	rest := room[c*c:]
	n.u, n.was, n.step, n.left = rest[:c], rest[c:2*c], rest[2*c:3*c], rest[3*c:4*c]
	rest = rest[4*c:]
	n.sides, n.perSide = rest[:2*balances], rest[2*balances:4*balances]
	rest = rest[4*balances:]
	n.lnG, n.slope = rest[:kinds], rest[kinds:2*kinds]
}

// carbonAt is where dissolved carbon dioxide stands among the species.
func (w *work) carbonAt() int {
	for i, r := range w.spec {
		if w.m.known.rows[r].name == "CO2" {
			return i
		}
	}
	return 0
}

// evaluate works out everything at the unknowns and returns the worst of what is left.
func (w *work) evaluate() float64 {
	nb, ns := w.rows.n, len(w.spec)
	w.lnI, w.lnWater, w.lnKg = w.u[nb], w.u[nb+1], w.u[nb+2]
	i := math.Exp(math.Min(w.lnI, math.Log(strongest)))
	root, kg := math.Sqrt(i), math.Exp(w.lnKg)
	for b, t := range w.tau {
		w.sides[2*b], w.sides[2*b+1] = math.Max(-t, 0), math.Max(t, 0)
	}
	for k := range w.kinds {
		w.lnG[k], w.slope[k] = w.kinds[k].activity(i, root)
	}
	w.charges, w.sum, w.drawn = 0, 0, 0
	w.each(kg)
	if w.space > 0 {
		w.gas(ns)
	}
	worst := 0.0
	for b := range nb {
		w.left[b] = math.Log((w.sides[2*b] + 1e-300) / (w.sides[2*b+1] + 1e-300))
		worst = larger(math.Abs(w.left[b]), worst)
	}
	return math.Max(worst, w.others(nb))
}

// each works out each species, and what all of them add up to.
func (w *work) each(kg float64) {
	s, rows, sides := &w.side, w.rows, w.sides
	from, lnWater := s.at[0], w.lnWater
	var charges, sum, drawn float64
	for k, kind := range w.kind {
		ln := w.constant[k] + w.ofWater[k]*lnWater
		to := s.at[k+1]
		which := s.which[from:to]
		count := s.count[from:to][:len(which)]
		from = to
		for i, b := range which {
			ln += count[i] * w.u[b]
		}
		if ln -= w.lnG[kind]; ln > 60 {
			ln = 60
		}
		v := math.Exp(ln)
		mol := v * kg
		w.ln[k], w.mol[k] = ln, mol
		charges += v * w.kinds[kind].square
		sum += v
		drawn += v * w.draws[k]
		first, last := rows.at[k], rows.at[k+1]
		to2 := rows.toSide[first:last]
		size := rows.size[first:last][:len(to2)]
		for i, side := range to2 {
			sides[side] += size[i] * mol
		}
	}
	w.charges, w.sum, w.drawn = charges, sum, drawn
}

// gather adds the mol of a species to the side of each balance where it counts.
func (w *work) gather(k int, mol float64) {
	from, to := w.rows.at[k], w.rows.at[k+1]
	size := w.rows.size[from:to]
	for i, side := range w.rows.toSide[from:to] {
		w.sides[side] += size[i] * mol
	}
}

// gas is the carbon dioxide in a rigid space.
func (w *work) gas(ns int) {
	k := w.carbonAt()
	ln := w.constant[k] + w.ofWater[k]*w.lnWater
	for at := w.side.at[k]; at < w.side.at[k+1]; at++ {
		ln += w.side.count[at] * w.u[w.side.which[at]]
	}
	ln += w.m.ln[w.m.carbon] - w.m.ln[w.spec[k]] // of the fugacity
	p, z := carbonDioxide.of(w.m.kelvin, math.Exp(math.Min(ln, math.Log(densest))))
	w.gasZ = math.Log(z*math.Exp(math.Min(ln, math.Log(densest)))) - math.Log(p)
	w.mol[ns] = math.Exp(math.Min(ln-w.gasZ+math.Log(w.space/(litreAtm*w.m.kelvin)), 60))
	w.gather(k, w.mol[ns])
}

// densest is the fugacity, atm, up to which carbon dioxide is followed as a gas.
const densest = 60

// others are the equations of ionic strength, activity of water and mass of water.
func (w *work) others(nb int) float64 {
	w.left[nb] = math.Log(0.5*w.charges+1e-300) - w.lnI
	ln, slope := lnWaterOf(w.sum)
	w.left[nb+1], w.slopeOfWater = w.lnWater-ln, slope
	w.left[nb+2] = 0
	if !w.fixed {
		content, slope := contentOf(w.drawn)
		w.left[nb+2] = w.lnKg + math.Log(content/math.Max(w.tauWater, perKg*1e-3))
		w.slopeOfMass = slope / content
	}
	return math.Max(math.Abs(w.left[nb]), math.Max(math.Abs(w.left[nb+1]), math.Abs(w.left[nb+2])))
}

// lnWaterOf is ln of the activity of water over so many mol/kg, and its slope.
func lnWaterOf(sum float64) (ln, slope float64) {
	if a := 1 - waterShare*sum; a > driest {
		return math.Log(a), -waterShare / a
	}
	edge := (1 - driest) / waterShare
	return math.Log(driest) - waterShare/driest*(sum-edge)/(1+(sum-edge)/edge),
		-waterShare / driest / ((1 + (sum-edge)/edge) * (1 + (sum-edge)/edge))
}

// bound is the mol of water, per kg, that species may hold or give before the search
// leaves the straight line: nothing near it is answered.
const bound = 0.3 * perKg

// contentOf is the mol of water in 1 kg with what species hold of it, and its slope.
func contentOf(drawn float64) (mol, slope float64) {
	if a := math.Abs(drawn); a > bound {
		return perKg + math.Copysign(bound*(2-bound/a), drawn), bound * bound / (a * a)
	}
	return perKg + drawn, 1
}

// Shares of a balance, or of what stands beside it, that are left out of slopes, and of slopes
// alone: what has to hold is always whole. Few mixtures need more than the first.
const (
	negligible = 1e-6
	invisible  = 1e-16 // in the numbers themselves
)

// linear fills the matrix: what the equations leave, by the unknowns.
func (w *work) linear() {
	nb, c := w.rows.n, w.count
	a := w.matrix
	clear(a)
	w.perWater = math.Exp(-w.lnKg)
	for b := range nb {
		w.perSide[2*b], w.perSide[2*b+1] = 1/(w.sides[2*b]+1e-300), -1/(w.sides[2*b+1]+1e-300)
	}
	w.linearOf(a)
	if w.space > 0 {
		w.linearOfGas(a)
	}
	strength, dry, mass := a[nb*c:(nb+1)*c], a[(nb+1)*c:(nb+2)*c], a[(nb+2)*c:(nb+3)*c]
	strength[nb]--
	for j := range c {
		dry[j] *= -w.slopeOfWater
	}
	dry[nb+1]++
	if w.fixed {
		clear(mass)
		mass[nb+2] = 1
		return
	}
	for j := range c - 1 {
		mass[j] *= w.slopeOfMass
	}
	mass[nb+2]++
}

// linearOf adds what each species moves.
func (w *work) linearOf(a []float64) {
	nb, c, s, rows := w.rows.n, w.count, &w.side, w.rows
	strength, dry, mass := a[nb*c:(nb+1)*c], a[(nb+1)*c:(nb+2)*c], a[(nb+2)*c:(nb+3)*c]
	perCharges, perSum := w.perWater/w.charges, w.perWater/w.sum
	for k, mol := range w.mol[:len(w.spec)] {
		kind := w.kind[k]
		x := moves{s.which[s.at[k]:s.at[k+1]], s.count[s.at[k]:s.at[k+1]], w.slope[kind], w.ofWater[k]}
		from, to := rows.at[k], rows.at[k+1]
		size := rows.size[from:to]
		for i, side := range rows.toSide[from:to] {
			if v := size[i] * mol * w.perSide[side]; math.Abs(v) > w.least {
				b := int(side >> 1)
				line := a[b*c : (b+1)*c]
				x.add(line, nb, v)
				line[nb+2] += v
			}
		}
		if v := mol * w.kinds[kind].square * perCharges; v > w.least {
			x.add(strength, nb, v)
		}
		if mol*perSum <= w.least {
			continue
		}
		m := mol * w.perWater
		x.add(dry, nb, m)
		if d := m * w.draws[k]; d != 0 {
			x.add(mass, nb, d)
		}
	}
}

// linearOfGas adds what the gas of a rigid space moves: it depends on no strength of the
// solution and on no mass of water.
func (w *work) linearOfGas(a []float64) {
	nb, c, s, rows, k := w.rows.n, w.count, &w.side, w.rows, w.carbonAt()
	x := moves{s.which[s.at[k]:s.at[k+1]], s.count[s.at[k]:s.at[k+1]], 0, w.ofWater[k]}
	for at := rows.at[k]; at < rows.at[k+1]; at++ {
		b := int(rows.which[at])
		x.add(a[b*c:(b+1)*c], nb, rows.size[at]*w.mol[len(w.spec)]*w.perSide[rows.toSide[at]])
	}
}

// moves is what the activity of a species follows: base, ionic strength and water.
type moves struct {
	which          []int32
	count          []float64
	slope, ofWater float64
}

// add adds to an equation what a species moves by its activity.
func (x *moves) add(line []float64, nb int, by float64) {
	count := x.count[:len(x.which)]
	for i, b := range x.which {
		line[b] += by * count[i]
	}
	line[nb] -= by * x.slope
	line[nb+1] += by * x.ofWater
}

// search takes steps of Newton, none longer than helps, until no more than near is left.
// It reports whether it got there. A step that left a hundredth or less shows that the slopes
// still hold: the next is taken with the same ones. The last step of a search that converged
// is taken whatever it brings: it is at the end of what the numbers can hold.
func (w *work) search(near float64) bool {
	w.worst = w.evaluate()
	return w.onward(near)
}

// onward is search from where the last evaluation was.
func (w *work) onward(near float64) bool {
	old := false
	for range most {
		if w.worst <= near {
			break
		}
		before := w.worst
		if !w.direct(old) || !w.advance(w.length()) {
			return false
		}
		old = w.worst < before*0.01
		w.steps++
	}
	if w.worst > near {
		return false
	}
	if near == converged && w.worst > finest && w.direct(old) {
		w.advance(1)
	}
	return true
}

// finest is what is left where another step changes nothing that is told.
const finest = 1e-13

// direct solves for the next step, by the slopes where it is or by those of the last one.
func (w *work) direct(old bool) bool {
	copy(w.step, w.left)
	if !old {
		w.linear()
		if !w.factor(w.matrix, w.count) {
			return false
		}
	}
	w.solve(w.step)
	return true
}

// length is the share of a step that keeps every unknown within reach.
func (w *work) length() float64 {
	nb := w.rows.n
	share := 1.0
	for j, d := range w.step {
		limit := 25.0
		switch {
		case j == nb:
			limit = 3
		case j > nb:
			limit = 0.7
		}
		if d = math.Abs(d); d > limit {
			share = math.Min(share, limit/d)
		}
		if math.IsNaN(d) {
			return math.NaN()
		}
	}
	return share
}

// advance goes the share of the step, or the half, quarter ... of it, that leaves less.
func (w *work) advance(share float64) bool {
	if math.IsNaN(share) {
		return false
	}
	copy(w.was, w.u)
	before := w.worst
	for range 12 {
		for j := range w.u {
			w.u[j] = w.was[j] - share*w.step[j]
		}
		if w.worst = w.evaluate(); w.worst < before*(1-0.1*share) || w.worst <= converged/100 {
			return true
		}
		share /= 2
	}
	return w.worst < before
}
