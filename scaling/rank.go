package scaling

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// ranked ranks the inputs of every headline figure that varies: of each the member that
// is worst on average. One that is not
// known in some draw stands before the others of its quantity, with nothing ranked.
func (t *table) ranked(shares *mat.Dense, inputs []string, workers int) []Ranking {
	if shares == nil {
		return nil
	}
	columns := make([][]float64, len(inputs))
	hazards.EachOn(len(inputs), workers, func(j int) { columns[j] = standard(ranks(mat.Col(nil, j, shares))) })
	headlines := figure.Headlines()
	found := make([][]Ranking, len(headlines))
	hazards.EachOn(len(headlines), workers, func(i int) {
		if id, ok := t.unknown(headlines[i]); ok {
			found[i] = append(found[i], Ranking{Figure: id, Unexplained: math.NaN()})
		}
		if id, ok := t.headline(headlines[i]); ok {
			found[i] = append(found[i], rank(id, t.values[id], columns, inputs))
		}
	})
	return slices.Concat(found...)
}

// counts reports whether a figure is one of a quantity as the route is meant to go.
func counts(id figure.ID, quantity string) bool {
	return id.Quantity == quantity && !id.Case.Supposed()
}

// unknown is the member of a quantity that is not known in most draws.
func (t *table) unknown(quantity string) (figure.ID, bool) {
	most, at := 0, figure.ID{}
	for _, id := range t.order {
		if !counts(id, quantity) {
			continue
		}
		n := 0
		for _, x := range t.values[id] {
			if math.IsNaN(x) {
				n++
			}
		}
		if n > most {
			most, at = n, id
		}
	}
	return at, !at.IsZero()
}

// headline is the member of a quantity that is worst on average and varies at all;
// one that is not known in some draw does not count, nor one of a failure.
func (t *table) headline(quantity string) (figure.ID, bool) {
	worst, at := 0.0, figure.ID{}
	q, _ := figure.Lookup(quantity)
	for _, id := range t.order {
		v := t.values[id]
		if !counts(id, quantity) || slices.ContainsFunc(v, math.IsNaN) {
			continue
		}
		mean, sd := stat.MeanStdDev(v, nil)
		if q.Danger == figure.Low {
			mean = -mean
		}
		if sd > 1e-9*math.Abs(mean) && (at.IsZero() || mean > worst) {
			worst, at = mean, id
		}
	}
	return at, !at.IsZero()
}

// rank regresses the ranks of a figure on those of its inputs, all standardised,
// which are given;
// where there are too few draws for all inputs, the most correlated enter.
func rank(id figure.ID, v []float64, of [][]float64, inputs []string) Ranking {
	n := len(v)
	y := standard(ranks(v))
	type column struct {
		at int
		x  []float64
		r  float64
	}
	var columns []column
	for j, x := range of {
		columns = append(columns, column{j, x, math.Abs(dot(x, y)) / float64(n)})
	}
	slices.SortStableFunc(columns, func(a, b column) int { return cmp.Compare(b.r, a.r) })
	columns = columns[:min(len(columns), max(n/3, 1))]
	a := mat.NewDense(n, len(columns), nil)
	for j, c := range columns {
		a.SetCol(j, c.x)
	}
	var qr mat.QR
	qr.Factorize(a)
	var b mat.VecDense
	if err := qr.SolveVecTo(&b, false, mat.NewVecDense(n, y)); err != nil {
		return Ranking{Figure: id, Unexplained: math.NaN()}
	}
	var fit mat.VecDense
	fit.MulVec(a, &b)
	left := 0.0
	for i := range y {
		left += (y[i] - fit.AtVec(i)) * (y[i] - fit.AtVec(i))
	}
	out := Ranking{Figure: id, Unexplained: unexplained(left/float64(n), n, len(columns)), Entered: len(columns)}
	for j, c := range columns {
		out.Shares = append(out.Shares, Weight{inputs[c.at], b.AtVec(j) * b.AtVec(j)})
	}
	slices.SortStableFunc(out.Shares, func(a, b Weight) int { return cmp.Compare(b.Share, a.Share) })
	return out
}

// unexplained corrects the share a regression leaves for what any inputs at all
// would explain of so few draws; 1 at most.
func unexplained(left float64, draws, entered int) float64 {
	return min(left*float64(draws-1)/float64(draws-entered-1), 1)
}

// ranks are those of some values, the mean rank for those that are the same.
func ranks(v []float64) []float64 {
	at := make([]int, len(v))
	for i := range at {
		at[i] = i
	}
	slices.SortStableFunc(at, func(a, b int) int { return cmp.Compare(v[a], v[b]) })
	out := make([]float64, len(v))
	for i := 0; i < len(at); {
		j := i
		for j < len(at) && v[at[j]] == v[at[i]] {
			j++
		}
		for _, k := range at[i:j] {
			out[k] = float64(i+j-1) / 2
		}
		i = j
	}
	return out
}

// standard has mean 0 and, unless all are the same, mean square 1.
func standard(v []float64) []float64 {
	mean := stat.Mean(v, nil)
	sum := 0.0
	for i := range v {
		v[i] -= mean
		sum += v[i] * v[i]
	}
	if sum > 0 {
		f := math.Sqrt(float64(len(v)) / sum)
		for i := range v {
			v[i] *= f
		}
	}
	return v
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
