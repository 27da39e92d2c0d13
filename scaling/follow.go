package scaling

import (
	_ "embed"
	"math"
	"sync"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
	"etchbound/schemas/quantity"
)

// Follow says what grows along with the batch. Amounts always do; strengths,
// temperatures, holds, the hood and the room never do.
type Follow struct {
	// Vessel takes for every container that is not kept the next size of a list,
	// with the material and the wall it is had in; else capacities grow in
	// proportion and walls stay as written.
	Vessel bool
	// Addition is stretched to what the cooling follows if everything reacts as
	// it goes in, at the dangerous end; never below the time written.
	Addition bool
	// Cooling lets a stated UA grow as the wetted area of a similar vessel does, with the
	// power 2/3 of the batch, and flow, liquid and chiller of a jacket with that area: the
	// coolant warms by as much for what it takes through each of it. Else all stay as
	// written.
	Cooling bool
}

// Vessel is a container as it is usually had.
type Vessel struct {
	Litres   float64
	Material string
	Wall     float64 // mm
	Status   string
	Note     string
}

//go:embed vessels.csv
var vesselTable string

var vessels = sync.OnceValue(func() []Vessel {
	return columns.Must("scaling/vessels.csv", vesselTable, func(r columns.Row) Vessel {
		return Vessel{r.Stated("litres"), r.Named("material"), r.Stated("wall_mm"), r.Named("status"), r.Text("note")}
	})
})

// Vessels lists the containers that may be taken, the smallest first.
func Vessels() []Vessel { return append([]Vessel(nil), vessels()...) }

// fits is the smallest container of the list that holds a volume in L; false
// where none does.
func fits(litres float64) (Vessel, bool) {
	for _, v := range vessels() {
		if v.Litres >= litres*(1-1e-9) {
			return v, true
		}
	}
	return Vessel{}, false
}

// sized is a case at a batch, with what follows it.
func (f Follow) sized(c route.Case, batch quantity.Value) (route.Case, error) {
	ratio := batch.SI / c.Route.Precursor.Mass.SI
	r := c.Route.Scaled(batch)
	for i := range r.Places {
		p := &r.Places[i]
		if f.Cooling && p.Cooling != nil {
			bigger(p.Cooling, math.Pow(ratio, 2.0/3))
		}
		if f.Vessel && !p.Keep && p.Capacity.Set {
			take(p)
		}
	}
	out, err := route.NewCase(r, c.Site, c.Limits)
	if err != nil || !f.Addition {
		return out, err
	}
	return stretched(out)
}

// bigger lets what cools a place grow as an area does. A site that states its chiller is held
// against what the batch puts into it as before.
func bigger(k *route.Cooling, area float64) {
	for _, q := range [...]*quantity.Value{&k.UA, &k.Flow, &k.Liquid, &k.Power} {
		if q.Set {
			*q = q.Times(area)
		}
	}
}

// take puts the next container of the list in the place of one.
func take(p *route.Place) {
	v, ok := fits(p.Capacity.In("L"))
	if !ok {
		return
	}
	at := p.Capacity.At
	p.Capacity = quantity.Of(v.Litres, "L", quantity.Volume)
	p.Capacity.At = at
	if p.Kind != "vessel" && p.Kind != "bottle" && p.Kind != "beaker" {
		return // a drum stays of what it is written
	}
	p.Material = v.Material
	p.Wall = quantity.Of(v.Wall, "mm", quantity.Length)
	p.Wall.At = p.At + ".wall"
}

// stretched gives every addition that heats the time that its cooling follows.
func stretched(c route.Case) (route.Case, error) {
	c.Brief = true
	s, err := hazards.Size(c, func(f *figure.Figure) bool { return f.Quantity == required })
	if err != nil {
		return c, err
	}
	r := c.Route.Copy()
	for f := range figure.NewSet(s.Figures).Of(required) {
		step, ok := f.Place.Step()
		if !ok || f.Danger().Unknown() {
			continue
		}
		s := &r.Steps[step-1]
		if s.Over.Set && c.GoesIn(nil, s).V/60 < f.Danger().V {
			at := s.Over.At
			s.Over = quantity.Of(f.Danger().V, "min", quantity.Time)
			s.Over.At, s.Portions, s.PortionTime = at, 0, quantity.Value{} // evenly, as slowly as it takes
		}
	}
	return route.NewCase(r, c.Site, c.Limits)
}

const required = "heat.addition_time.required"
