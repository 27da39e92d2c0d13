package route

import (
	"fmt"
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/limit"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// Case is everything an assessment depends on.
type Case struct {
	Route  *Route
	Site   *Site // nil where none was given
	Limits *limit.Set
	Store  *chemicals.Store
	Brief  bool  // leave out failure searches, curves and texts
	Rough  bool  // one of very many: runs in time at a relative tolerance of 1e-4
	Gone   []int // steps that can run away: their peaks are bounds that no run exceeds

	Applied []chemicals.Applied // overrides of the data, with old and new value
}

// NewCase makes the case of a route and, if there is one, a site: the site's
// data replace ours and the route's data replace the site's.
func NewCase(r *Route, s *Site, limits *limit.Set) (Case, error) {
	c := Case{Route: r, Site: s, Limits: limits, Store: chemicals.Base()}
	if c.Limits == nil {
		c.Limits = limit.Base()
	}
	var layers [][]chemicals.Override
	if s != nil {
		layers = append(layers, s.Data)
	}
	for _, o := range append(layers, r.Overrides()) {
		st, applied, err := c.Store.Override(o)
		if err != nil {
			return c, err
		}
		c.Store = st
		c.Applied = append(c.Applied, applied...)
	}
	st, _, err := c.Store.Override(c.Ranges())
	if err != nil {
		return c, err
	}
	c.Store = st
	return c, nil
}

// WithoutOverrides is the case with our own data in the place of all that the route and
// the site replace. What was measured beside the data stays.
func (c Case) WithoutOverrides() (Case, error) {
	r := *c.Route
	m := r.Measured
	r.Data, r.Measured = nil, Measured{Curve: m.Curve, Kinetics: m.Kinetics, TD24: m.TD24, Source: m.Source}
	s := c.Site
	if s != nil {
		plain := *s
		plain.Data = nil
		s = &plain
	}
	out, err := NewCase(&r, s, c.Limits)
	out.Brief, out.Rough = c.Brief, c.Rough
	return out, err
}

// Given is a stated quantity as a number on the sheet, in unit. A quantity that
// was left out is unknown, and one stated with a range is read from the store.
func (c Case) Given(symbol, unit string, q quantity.Value) working.Num {
	if !q.Set {
		return working.Absent(symbol, unit, working.Lacks(working.NotGiven, q.At))
	}
	if ranged(q) {
		n := c.Store.Num(datum.Stated(q.At))
		if n.Unknown() {
			return n.As(symbol)
		}
		q.SI = n.V
		return working.Datum(symbol, unit, in(q, unit), n.Status, datum.Stated(q.At))
	}
	return working.Given(symbol, unit, in(q, unit), q.At)
}

// Jurisdiction is the one whose limits hold; empty where no site states it, and then
// those of every one do.
func (c Case) Jurisdiction() string {
	if c.Site == nil {
		return ""
	}
	return c.Site.Jurisdiction
}

// GoesIn is the time in which what a step adds really goes in, s: that of the addition,
// or in portions that of them all, the pauses between them left out.
//
//	t = min(N t_p, t_a)
func (c Case) GoesIn(w *working.Sheet, s *Step) working.Num {
	all := c.Given("t_a", "s", s.Over)
	if s.Portions < 2 || !s.Over.Set {
		return all.As("t")
	}
	each := c.Given("t_p", "s", s.PortionTime)
	if !s.PortionTime.Set {
		each = c.Store.Num("kinetics.wetting").As("t_p")
	}
	n := working.Given("N", "1", float64(s.Portions), At(s.Number, "portions"))
	return w.Line("t", "s", "min(N*t_p,t_a)", min(n.V*each.V, all.V), n, each, all)
}

// Lasts is how long a step goes on, min, its addition and the time after it; unknown
// where it does not say.
func (c Case) Lasts(w *working.Sheet, s *Step) working.Num {
	switch {
	case s.Over.Set && s.Time.Set:
		return w.Sum("t", "min", c.Given("t", "min", s.Over), c.Given("t", "min", s.Time))
	case s.Over.Set:
		return c.Given("t", "min", s.Over)
	case s.Time.Set:
		return c.Given("t", "min", s.Time)
	}
	return working.Absent("t", "min", working.Lacks(working.NotGiven, s.At+".time"))
}

// RoomVolume is the air of the room at the site, m3, and HoodFlow what the hood
// moves, m3/h; unknown where no site says.
func (c Case) RoomVolume(symbol string) working.Num {
	if c.Site == nil || !c.Site.RoomVolume.Set {
		return working.Absent(symbol, "m3", working.Lacks("site_room_volume", ""))
	}
	return c.Given(symbol, "m3", c.Site.RoomVolume)
}

// CabinetVolume is the air of the shut fridge or cabinet that containers stand in, m3;
// unknown where no site says.
func (c Case) CabinetVolume(symbol string) working.Num {
	if c.Site == nil || !c.Site.Cabinet.Set {
		return working.Absent(symbol, "m3", working.Lacks("site_cabinet", ""))
	}
	return c.Given(symbol, "m3", c.Site.Cabinet)
}

// NoCabinet reports whether the site says that containers stand in no shut fridge or cabinet,
// by a volume of zero. Where nobody says so there may be one.
func (c Case) NoCabinet() bool { return c.Site != nil && c.Site.Cabinet.Set && c.Site.Cabinet.SI == 0 }

// AtWorst is what a fact of a site or a step is at worst: as it is stated, or the datum that
// stands for what a bench has.
func (c Case) AtWorst(stated working.Num, id datum.ID) working.Num {
	if !stated.Unknown() {
		return stated
	}
	return c.Store.Num(id).As(stated.Symbol)
}

// HoodFlow is described with RoomVolume.
func (c Case) HoodFlow(symbol string) working.Num {
	if c.Site == nil || c.Site.Hood == nil || !c.Site.Hood.Flow.Set {
		return working.Absent(symbol, "m3/h", working.Lacks("site_hood_flow", ""))
	}
	return c.Given(symbol, "m3/h", c.Site.Hood.Flow)
}

// Ranged returns q with the value the store holds for it, where it was stated
// with a range.
func (c Case) Ranged(q quantity.Value) quantity.Value {
	if ranged(q) {
		q.SI = c.Store.Num(datum.Stated(q.At)).V
	}
	return q
}

// in gives q in unit; the unit 1 is the plain ratio that SI keeps fractions in.
func in(q quantity.Value, unit string) float64 {
	if unit == "1" {
		return q.SI
	}
	return q.In(unit)
}

func ranged(q quantity.Value) bool {
	return q.Set && q.Low < q.High && !math.IsNaN(q.Low) && !math.IsNaN(q.High)
}

// At is the path of a key of a step in its file.
func At(step int, key string) string { return fmt.Sprintf("steps[%d].%s", step-1, key) }

// FromAt is the step, counted from 1, and the key of a path that At made; false of any other.
func FromAt(path string) (step int, key string, ok bool) {
	n, err := fmt.Sscanf(path, "steps[%d].%s", &step, &key)
	return step + 1, key, err == nil && n == 2
}

// Ranges lists, as overrides in SI, every quantity of the route and site that
// was stated with a range.
func (c Case) Ranges() []chemicals.Override {
	var out []chemicals.Override
	from := func(where string) func(field.Seen) {
		return func(s field.Seen) {
			x, ok := s.Value.(field.Amount)
			if !ok || s.Range != field.OfGiven || !ranged(*x.Of) {
				return
			}
			q := x.Of
			out = append(out, chemicals.Override{ID: datum.Stated(q.At), Value: q.SI, Low: q.Low, High: q.High,
				Source: "stated in the " + where, At: Told(q.At), From: where})
		}
	}
	c.Route.Visit(from("route"))
	if c.Site != nil {
		c.Site.Visit(from("site"))
	}
	return out
}
