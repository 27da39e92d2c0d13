package scaling

import (
	"context"
	"errors"
	"math"

	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Comparison is some routes side by side.
type Comparison struct {
	Reviews []hazards.Review
	Product []float64 // g of layered product if all of it etches; NaN where not known
	figs    []*figure.Set
	ends    [][2]float64 // of that mass: the lightest and the heaviest groups it can carry
	Rows    []Row
	Samples []*Sample // of each, where draws were made
}

// Row is one quantity of every route. Low is the routes that have less of it than
// all others, where that can be told.
type Row struct {
	Quantity, Agent string
	PerGram         bool // of product
	Cells           []RowCell
	Told            Told
	Least           []int // where told apart: the routes in the order of rising danger
}

// RowCell is one value with its range; not there where a route has no such
// quantity, which is none of it.
type RowCell struct {
	There            bool
	Value, Low, High float64 // NaN where not known
	Figure           figure.ID
	P05, P95         float64 // of the draws, where there are any; else not a number
}

// Told says whether a row tells routes apart.
type Told uint8

// The answers: every pair of neighbours has ranges that do not meet; some ranges
// overlap; something is not known.
const (
	Overlap Told = iota
	Apart
	Unknown
)

// shown are the quantities of a comparison; those that grow with the batch stand
// per gram of product too.
var shown = []struct {
	quantity, agent string
	grows           bool
}{
	{"fluoride.hf_equivalent", "", true}, {"fluoride.free_hf", "", true}, {"fluoride.hf_strength", "", false},
	{"heat.etch.total", "", true}, {"heat.adiabatic_rise", "", false}, {"heat.mtsr", "", false},
	{"gas.hydrogen.total", "", true}, {"gas.hydrogen.peak_rate.during_addition", "", false},
	{"gas.hydrogen.peak_rate.after_addition", "", false},
	{"air.breathing_zone", "hf", false}, {"air.breathing_zone", "hcl", false}, {"air.breathing_zone", "ammonia", false},
	{"air.emission", "hf", false}, {"air.emission", "hcl", false},
	{"wash.water", "", true}, {"wash.liquor", "", true}, {"neutralise.mass", "", true},
	{"neutralise.sludge_dry", "", true},
}

// mostRoutes is how many routes stand side by side on a page.
const mostRoutes = 8

// Compare reviews routes at the batches they have. It fails for fewer than two or
// more than eight, and where one cannot be assessed.
func Compare(cases []route.Case) (Comparison, error) {
	out := Comparison{Reviews: make([]hazards.Review, len(cases))}
	if len(cases) < 2 || len(cases) > mostRoutes {
		return out, errors.New("two to eight routes can be compared")
	}
	errs := make([]error, len(cases))
	hazards.Each(len(cases), func(i int) {
		c := cases[i]
		c.Brief = true
		out.Reviews[i], errs[i] = hazards.Make(c)
	})
	for _, err := range errs {
		if err != nil {
			return out, err
		}
	}
	for i := range out.Reviews {
		mass, ends := product(&out.Reviews[i])
		out.Product, out.ends = append(out.Product, mass), append(out.ends, ends)
		out.figs = append(out.figs, figure.NewSet(out.Reviews[i].Figures))
	}
	for _, s := range shown {
		out.row(s.quantity, s.agent, false)
		if s.grows {
			out.row(s.quantity, s.agent, true)
		}
	}
	return out, nil
}

// product is the mass of the layered product of a route if all of its powder
// etches, g:
//
//	n (M(phase) - M(A) + o 15.999 + f 18.998 + h 17.007 + c 35.45)
//
// Its ends are those with oxygen alone and with fluorine alone, or chlorine where
// there is any: nobody knows the groups of a product before it is made.
func product(r *hazards.Review) (mass float64, ends [2]float64) {
	unknown := [2]float64{math.NaN(), math.NaN()}
	l := r.Walk.Layered
	if l == nil {
		return math.NaN(), unknown
	}
	molar := func(element string) float64 { return r.Case.Store.Num(datum.Of("weight", element)).V }
	core := l.MolarMass.V
	for _, a := range l.A {
		core -= a.Count * molar(a.Symbol)
	}
	sum, any := 0.0, false
	for i := range r.Walk.Etches {
		e := &r.Walk.Etches[i]
		if e.N.None() || e.Product.Oxygen.None() {
			continue
		}
		p := &e.Product
		groups := p.Oxygen.V*molar("O") + p.Fluorine.V*molar("F") + p.Hydroxyl.V*(molar("O")+molar("H")) + p.Chlorine.V*
			molar("Cl")
		sum, any = sum+e.N.V*(core+groups), true
		heavy := molar("F")
		if p.Chlorine.V > 0 {
			heavy = molar("Cl")
		}
		all := p.Oxygen.V + p.Fluorine.V + p.Hydroxyl.V + p.Chlorine.V
		ends[0] += e.N.V * (core + all*molar("O"))
		ends[1] += e.N.V * (core + all*heavy)
	}
	if !any {
		return math.NaN(), unknown
	}
	return sum, [2]float64{math.Min(ends[0], sum), math.Max(ends[1], sum)}
}

func (c *Comparison) row(quantity, agent string, perGram bool) {
	row := Row{Quantity: quantity, Agent: agent, PerGram: perGram}
	any := false
	for i := range c.Reviews {
		cell := cellOf(&c.Reviews[i], c.figs[i], quantity, agent)
		if perGram && cell.There {
			cell.Value, cell.Low, cell.High = cell.Value/c.Product[i], leastOver(cell.Low, c.ends[i]),
				-leastOver(-cell.High, c.ends[i])
		}
		any = any || cell.There
		row.Cells = append(row.Cells, cell)
	}
	if any {
		row.tell()
		c.Rows = append(c.Rows, row)
	}
}

// leastOver is the least that a value over a mass between two ends can be, also where it
// is below zero.
func leastOver(v float64, ends [2]float64) float64 {
	return math.Min(v/ends[0], v/ends[1])
}

// cellOf is the worst member of a quantity in a review, or its sum.
func cellOf(r *hazards.Review, figs *figure.Set, quantity, agent string) RowCell {
	var worst *figure.Figure
	q, _ := figure.Lookup(quantity)
	written := writesAgent(figs, quantity)
	for f := range figs.Of(quantity) {
		switch {
		case f.Case.Supposed() || agent != "" && f.Agent != agent:
			continue
		case agent == "" && q.Bare == "sum" && f.Place.IsZero():
			return cell(f)
		case !f.Of().IsZero() || written && f.Place == figure.Waste:
			continue
		case quantity == "neutralise.mass" && !written && f.Agent != "calcium_hydroxide",
			quantity == "neutralise.sludge_dry" && !written && f.Agent != "calcium_hydroxide":
			continue
		}
		if worst == nil || f.Danger().Unknown() && !worst.Danger().Unknown() || !worst.Danger().Unknown() &&
			beyondOther(q, f, worst) {
			worst = f
		}
	}
	if worst == nil {
		return RowCell{}
	}
	return cell(worst)
}

func beyondOther(q figure.Quantity, f, than *figure.Figure) bool {
	if q.Danger == figure.Low {
		return f.Danger().V < than.Danger().V
	}
	return f.Danger().V > than.Danger().V
}

func cell(f *figure.Figure) RowCell {
	return RowCell{true, f.Value.V, f.Low().V, f.High().V, f.ID, math.NaN(), math.NaN()}
}

// tell says whether the ranges of a row stand apart: none overlaps another, and
// nothing in the row is unknown.
func (r *Row) tell() {
	r.Told = Apart
	order := make([]int, len(r.Cells))
	for i := range r.Cells {
		order[i] = i
		if x := &r.Cells[i]; x.There && (math.IsNaN(x.Value) || math.IsNaN(x.Low) || math.IsNaN(x.High)) {
			r.Told = Unknown
			return
		}
	}
	for i := 1; i < len(order); i++ { // few
		for j := i; j > 0 && r.Cells[order[j]].Low < r.Cells[order[j-1]].Low; j-- {
			order[j], order[j-1] = order[j-1], order[j]
		}
	}
	for i := 1; i < len(order); i++ {
		if !(r.Cells[order[i-1]].High < r.Cells[order[i]].Low) {
			r.Told = Overlap
			return
		}
	}
	r.Least = order
}

// Draw draws the data of every route of a comparison, with the same seed.
func (c *Comparison) Draw(ctx context.Context, n int, seed uint64, workers int, progress func(int)) error {
	for i := range c.Reviews {
		s, err := Draws(ctx, c.Reviews[i].Case, n, seed, workers, progress)
		if err != nil {
			return err
		}
		c.Samples = append(c.Samples, &s)
	}
	for i := range c.Rows {
		r := &c.Rows[i]
		for k := range r.Cells {
			r.Cells[k].draw(c.Samples[k], c.figure(k, r.Cells[k].Figure), r.PerGram, c.Product[k])
		}
	}
	return nil
}

// figure is the member that a figure repeats, or itself.
func (c *Comparison) figure(route int, id figure.ID) figure.ID {
	if f := c.figs[route].Get(id); f != nil && !f.Of().IsZero() {
		return f.Of()
	}
	return id
}

func (x *RowCell) draw(s *Sample, id figure.ID, perGram bool, product float64) {
	b, there := s.Bands[id]
	if !x.There || !there {
		return
	}
	x.P05, x.P95 = b.P05, b.P95
	if perGram {
		x.P05, x.P95 = x.P05/product, x.P95/product
	}
}

// Hours of a route: those that somebody attends, and those that nobody is said to.
func Hours(r *route.Route) (attended, alone float64) {
	for i := range r.Steps {
		s := &r.Steps[i]
		h := 0.0
		if s.Over.Set {
			h += s.Over.In("h")
		}
		if s.Time.Set {
			h += s.Time.In("h")
		}
		if s.Attended != nil && *s.Attended {
			attended += h
		} else {
			alone += h
		}
	}
	return attended, alone
}

// Verdicts counts the findings of a review by what they say.
func Verdicts(r *hazards.Review) map[figure.Verdict]int {
	out := map[figure.Verdict]int{}
	for i := range r.Findings {
		out[r.Findings[i].Verdict]++
	}
	return out
}
