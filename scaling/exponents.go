package scaling

import (
	_ "embed"
	"math"
	"sync"

	"gonum.org/v1/gonum/stat"

	"etchbound/hazards/figure"
	"etchbound/schemas/columns"
)

// Exponent is the power of the batch with which a quantity grows: fitted over the
// rungs, and by the geometry of similar vessels.
type Exponent struct {
	Quantity string
	Case     string // law, where the quantity has one of each
	Fitted   float64
	Fit      float64 // share of the scatter that the power explains; 1 for a flat line
	Similar  float64 // by geometry
	Note     string
	Status   string
}

//go:embed exponents.csv
var exponentTable string

type power struct {
	quantity, kase   string
	fixed, stretched float64
	status, note     string
}

var powers = sync.OnceValue(func() []power {
	return columns.Must("scaling/exponents.csv", exponentTable, func(r columns.Row) power {
		return power{r.Named("quantity"), r.Text("case"), r.Number("fixed"), r.Number("stretched"), r.Named("status"),
			r.Text("note")}
	})
})

// Removal is the name of the heat a vessel loses per kelvin and kilogram of
// powder, which is no figure of a review but says why large vessels stay hot.
const Removal = "removal"

// Exponents are those of the main quantities that are known and above zero on
// every rung, central values of the worst member.
func (g *Growth) Exponents() []Exponent {
	var out []Exponent
	for _, p := range powers() {
		similar := p.fixed
		if g.Follow.Addition {
			similar = p.stretched
		}
		if fitted, fit, ok := g.fitted(func(r *Rung) float64 { return r.central(p.quantity, p.kase) }); ok {
			out = append(out, Exponent{p.quantity, p.kase, fitted, fit, similar, p.note, p.status})
		}
	}
	if fitted, fit, ok := g.fitted((*Rung).Removal); ok {
		out = append(out, Exponent{Removal, "", fitted, fit, -1.0 / 3, "wetted area over the batch", "computed"})
	}
	return out
}

// fitted is the slope of a straight line through the logarithms.
func (g *Growth) fitted(of func(*Rung) float64) (slope, fit float64, ok bool) {
	var x, y []float64
	for i := range g.Rungs {
		v := of(&g.Rungs[i])
		if !(v > 0) {
			return 0, 0, false
		}
		x, y = append(x, math.Log(g.Rungs[i].Batch.SI)), append(y, math.Log(v))
	}
	a, b := stat.LinearRegression(x, y, nil, false)
	fit = stat.RSquared(x, y, nil, a, b)
	if math.IsNaN(fit) || stat.Variance(y, nil) < 1e-12 {
		fit = 1
	}
	if math.Abs(b) < 1e-9 { // what is left of rounding
		b = 0
	}
	return b, fit, true
}

// central is the central value of the worst member of a quantity, or its sum.
func (r *Rung) central(quantity, kase string) float64 {
	f, ok := r.worst(quantity, kase, func(f *figure.Figure) float64 { return f.Value.V })
	if !ok {
		return math.NaN()
	}
	return f.Value.V
}

// Worst is the member of a quantity whose dangerous end is worst on this rung, or
// its sum where the catalogue forms one.
func (r *Rung) Worst(quantity, kase string) (figure.Figure, bool) {
	return r.worst(quantity, kase, func(f *figure.Figure) float64 { return f.Danger().V })
}

func (r *Rung) worst(quantity, kase string, value func(*figure.Figure) float64) (figure.Figure, bool) {
	q, _ := figure.Lookup(quantity)
	var out figure.Figure
	found := false
	written := writesAgent(r.figs, quantity)
	for f := range r.figs.Of(quantity) {
		if f.Case.Supposed() || kase != "" && f.Case != figure.By(kase) || written &&
			f.Place == figure.Waste {
			continue
		}
		if q.Bare == "sum" && f.Place.IsZero() {
			return *f, true
		}
		x, y := value(f), value(&out)
		if !found || math.IsNaN(x) || (q.Danger == figure.High && x > y) || (q.Danger == figure.Low && x < y) {
			out, found = *f, true
		}
		if math.IsNaN(x) {
			break
		}
	}
	return out, found
}

// writesAgent reports whether a step of the route neutralises with an agent of its
// own, so that the four usual ones need not be shown.
func writesAgent(figs *figure.Set, quantity string) bool {
	for f := range figs.Of(quantity) {
		if f.Agent != "" && f.Place != figure.Waste && !f.Place.IsZero() {
			return true
		}
	}
	return false
}

// Removal is the heat that the first vessel loses to what is around it while the
// powder goes in, W per kelvin and kg of powder.
func (r *Rung) Removal() float64 {
	if len(r.sized.Courses) == 0 {
		return math.NaN()
	}
	return r.sized.Courses[0].Stages[0].UA.V / r.Batch.SI
}
