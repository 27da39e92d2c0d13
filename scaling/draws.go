package scaling

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Sample is a case assessed many times with its data drawn from their shapes.
type Sample struct {
	N      int
	Seed   uint64
	Inputs []string
	Bands  map[figure.ID]Band
	Chance map[figure.FindingID]Chance // of a finding that was judged in any draw
	Ranked []Ranking                   // of the headline figures that vary
}

// Band is where the draws of a figure lie, those that are not known ranked as the
// most dangerous. A point is not a number where it falls among them.
type Band struct {
	P05, P50, P95 float64
	Unknown       int // draws in which it was not known
}

// Chance is how often a finding exceeds, or is not known, as a share of the draws.
type Chance struct{ Exceeds, Unknown float64 }

// Ranking says which inputs a figure depends on: the squared standardised
// coefficients of a regression of ranks, and the share they do not explain.
type Ranking struct {
	Figure      figure.ID
	Shares      []Weight // the largest first
	Unexplained float64
	Entered     int // inputs that entered the regression
}

// Weight is that of one input.
type Weight struct {
	Input string
	Share float64
}

// Fewest and most draws.
const (
	FewestDraws = 20
	MostDraws   = 100000
)

// Draws assesses a case n times by a Latin hypercube over the data that have a
// range, on so many goroutines. The same seed gives the same sample on any number
// of them. progress, if there is one, is told how many are done; it is called from
// several goroutines. It fails for too few or too many draws, for a case that
// cannot be assessed, and when ctx is cancelled.
func Draws(ctx context.Context, c route.Case, n int, seed uint64, workers int, progress func(done int)) (Sample,
	error) {
	if n < FewestDraws || n > MostDraws {
		return Sample{}, fmt.Errorf("%d draws: %d to %d say something of the ends", n, FewestDraws, MostDraws)
	}
	d, err := hazards.NewDrawing(c)
	if err != nil {
		return Sample{}, err
	}
	s := Sample{N: n, Seed: seed, Inputs: d.Inputs()}
	shares := hypercube(n, len(s.Inputs), seed)
	t, err := drawAll(ctx, d, shares, max(workers, 1), progress)
	if err != nil {
		return Sample{}, err
	}
	s.Bands, s.Chance = t.bands(workers), t.chances()
	s.Ranked = t.ranked(shares, s.Inputs, workers)
	return s, nil
}

// hypercube has a row for every draw and a column for every input.
func hypercube(n, inputs int, seed uint64) *mat.Dense {
	if inputs == 0 {
		return nil
	}
	out := mat.NewDense(n, inputs, nil)
	src := rand.NewPCG(seed, 0)
	samplemv.LatinHypercube{Q: distmv.NewUnitUniform(inputs, nil), Src: src}.Sample(out)
	return out
}

// table is what every draw gave, by figure and by finding.
type table struct {
	n        int
	order    []figure.ID                 // as first seen
	values   map[figure.ID][]float64     // not a number where a draw has no such figure or does not know it
	findings map[figure.FindingID]*count // of those judged in any draw
	first    []figure.Figure             // of the first draw: the others mostly have the same in the same order
	columns  [][]float64                 // of them
	judged   []hazards.Told              // of the first draw, likewise
	tallies  []*count                    // of them
}

// batch is how many draws are run before what is new in them goes into the table.
const batch = 256

// drawAll runs the draws, the first one alone, since it says what the others give.
// What they give that the first did not goes into the table in their order, a
// batch at a time.
func drawAll(ctx context.Context, d *hazards.Drawing, shares *mat.Dense, workers int, progress func(int)) (*table,
	error) {
	n := 1
	if shares != nil {
		n, _ = shares.Dims()
	}
	t := &table{n: n, values: map[figure.ID][]float64{}, findings: map[figure.FindingID]*count{}}
	var done atomic.Int64
	draw := func(i int, of *fresh, fault *error) {
		if *fault = ctx.Err(); *fault != nil {
			return
		}
		x, err := d.At(row(shares, i))
		if *fault = err; err == nil {
			*of = t.keep(i, &x)
		}
		if progress != nil {
			progress(int(done.Add(1)))
		}
	}
	for from, to := 0, 1; from < n; from, to = to, min(to+batch, n) {
		found, faults := make([]fresh, to-from), make([]error, to-from)
		hazards.EachOn(to-from, workers, func(i int) { draw(from+i, &found[i], &faults[i]) })
		for i := range found {
			if faults[i] != nil {
				return nil, faults[i]
			}
			t.add(from+i, &found[i])
		}
	}
	return t, nil
}

// fresh is what a draw gives that the first did not give at the same place.
type fresh struct {
	figures  []figure.Figure
	findings []hazards.Told
}

// keep writes down what a draw gives, and returns what the table has no place for
// yet. It is safe for draws that go on at the same time.
func (t *table) keep(i int, d *hazards.Drawn) fresh {
	var out fresh
	for k := range d.Figures {
		f := &d.Figures[k]
		if k < len(t.first) && t.first[k].ID == f.ID {
			t.columns[k][i] = f.Value.V
			continue
		}
		out.figures = append(out.figures, *f)
	}
	for k := range d.Findings {
		f := &d.Findings[k]
		if k < len(t.judged) && t.judged[k].ID == f.ID {
			t.tallies[k].take(f.Verdict)
			continue
		}
		out.findings = append(out.findings, *f)
	}
	return out
}

func row(m *mat.Dense, i int) []float64 {
	if m == nil {
		return nil
	}
	return m.RawRowView(i)
}

func (t *table) add(i int, d *fresh) {
	for k := range d.figures {
		f := &d.figures[k]
		id := f.ID
		v, there := t.values[id]
		if !there {
			v = slices.Repeat([]float64{math.NaN()}, t.n)
			t.values[id] = v
			t.order = append(t.order, id)
		}
		v[i] = f.Value.V
	}
	for k := range d.findings {
		t.count(&d.findings[k]).take(d.findings[k].Verdict)
	}
	if i > 0 {
		return
	}
	for k := range d.figures {
		t.columns = append(t.columns, t.values[d.figures[k].ID])
	}
	for k := range d.findings {
		t.tallies = append(t.tallies, t.count(&d.findings[k]))
	}
	t.first, t.judged = d.figures, d.findings
}

func (t *table) count(f *hazards.Told) *count {
	id := f.ID
	x, there := t.findings[id]
	if !there {
		x = &count{}
		t.findings[id] = x
	}
	return x
}

// count is how many draws of a finding exceed and how many are not known.
type count struct{ exceeds, unknown atomic.Int64 }

func (x *count) take(v figure.Verdict) {
	switch v {
	case figure.Exceeds:
		x.exceeds.Add(1)
	case figure.UnknownVerdict:
		x.unknown.Add(1)
	}
}

func (t *table) bands(workers int) map[figure.ID]Band {
	bands := make([]Band, len(t.order))
	hazards.EachOn(len(bands), workers, func(i int) { bands[i] = bandOf(t.order[i], t.values[t.order[i]]) })
	out := map[figure.ID]Band{}
	for i, id := range t.order {
		out[id] = bands[i]
	}
	return out
}

// bandOf counts a draw that is not known as one that lies worst of all: what nobody
// knows never makes an end better.
func bandOf(id figure.ID, v []float64) Band {
	known := make([]float64, 0, len(v))
	for _, x := range v {
		if !math.IsNaN(x) {
			known = append(known, x)
		}
	}
	b := Band{P05: math.NaN(), P50: math.NaN(), P95: math.NaN(), Unknown: len(v) - len(known)}
	if len(known) == 0 {
		return b
	}
	slices.Sort(known)
	before := 0
	if q, _ := figure.Lookup(id.Quantity); q.Danger == figure.Low {
		before = b.Unknown
	}
	b.P05, b.P50, b.P95 = at(known, before, len(v), 0.05), at(known, before, len(v), 0.5), at(known, before, len(v), 0.95)
	return b
}

// at is the quantile of n draws of which those known stand in order, behind as many
// unknown ones as before says; not a number where it falls among the unknown.
func at(known []float64, before, n int, share float64) float64 {
	x := min(max(share*float64(n)-1, 0), float64(n-1))
	i := int(x)
	part := x - float64(i)
	get := func(i int) float64 {
		if i -= before; i < 0 || i >= len(known) {
			return math.NaN()
		}
		return known[i]
	}
	if part == 0 {
		return get(i)
	}
	return get(i) + part*(get(i+1)-get(i))
}

func (t *table) chances() map[figure.FindingID]Chance {
	out := make(map[figure.FindingID]Chance, len(t.findings))
	for id, x := range t.findings {
		out[id] = Chance{float64(x.exceeds.Load()) / float64(t.n), float64(x.unknown.Load()) / float64(t.n)}
	}
	return out
}
