package keeping

import (
	_ "embed"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
	"etchbound/schemas/edit"
)

//go:embed conditions.csv
var table string

// row is an edit of a condition.
type row struct {
	condition, where, key, to string
	drawn                     bool // in a review too
}

var rows = sync.OnceValue(func() []row {
	return columns.Must("scaling/keeping/conditions.csv", table, func(r columns.Row) row {
		return row{r.Named("condition"), r.Choice("where", "store", "place", "before"), r.Text("key"), r.Named("to"),
			r.Choice("drawn", "yes", "") == "yes"}
	})
})

// names are the conditions in the order of their first rows.
func names() []string {
	var out []string
	for _, r := range rows() {
		if len(out) == 0 || out[len(out)-1] != r.condition {
			out = append(out, r.condition)
		}
	}
	return out
}

// Additive is what a condition puts to the liquid.
type Additive struct {
	Of   *chemicals.Substance
	Mass working.Num // g, at the batch of the case
	Own  working.Num // gas that it can give itself, mL at the pressure and temperature of the data
}

// written is the batch that the file states over that of the case: amounts of the text
// are those at the first.
func written(c *route.Case) (float64, error) {
	p := c.Route.Precursor
	if p == nil || !p.Mass.Set {
		return 1, nil
	}
	r, _, err := route.Load(c.Route.Name, strings.NewReader(c.Route.Text))
	if err != nil || r == nil || r.Precursor == nil || !(p.Mass.SI > 0) {
		return 1, err
	}
	return r.Precursor.Mass.SI / p.Mass.SI, nil
}

// maker makes the edits of a condition for a place.
type maker struct {
	c         *route.Case
	walk      *process.Walk
	place     string
	ratio     float64
	additives []Additive
	why       phrase.Phrase
}

// stores are the steps that store in the place, from 0.
func (m *maker) stores() []int {
	var out []int
	for i := range m.c.Route.Steps {
		if s := &m.c.Route.Steps[i]; s.In == m.place && s.Verb().Does == route.Stores {
			out = append(out, i)
		}
	}
	return out
}

// edits are those of a condition, or why there are none.
func (m *maker) edits(name string) ([]edit.Edit, []Additive, phrase.Phrase) {
	m.additives, m.why = nil, phrase.Phrase{}
	var out []edit.Edit
	at := m.stores()
	for _, r := range rows() {
		if r.condition != name {
			continue
		}
		to := m.filled(r.to)
		switch r.where {
		case "place":
			out = append(out, edit.Edit{Path: "places." + m.place + "." + r.key, To: to})
		case "store":
			for _, i := range at {
				out = append(out, edit.Edit{Path: fmt.Sprintf("steps[%d].%s", i, r.key), To: to})
			}
		case "before":
			out = append(out, edit.Edit{Path: fmt.Sprintf("steps[%d]", at[0]), To: to, Before: true})
		}
	}
	return out, m.additives, m.why
}

var blank = regexp.MustCompile(`\$([a-z]+)(?::([a-z_]+))?`)

// filled is what a row says with amounts and names of the route in it.
func (m *maker) filled(to string) string {
	return blank.ReplaceAllStringFunc(to, func(s string) string {
		name := blank.FindStringSubmatch(s)
		switch name[1] {
		case "place":
			return m.place
		case "waste":
			return m.waste()
		case "volume":
			return m.amount(m.volume(), "mL")
		case "twice":
			return m.twice()
		case "gas":
			return stated("gas", m.c.Route.Steps[m.stores()[0]].Gas)
		case "form":
			return stated("form", m.c.Route.Steps[m.stores()[0]].Form)
		case "dose":
			return m.dose(name[2])
		case "brine":
			return m.brine()
		}
		m.why = phrase.Of("keep.cannot", s)
		return s
	})
}

// volume is the liquid of the place when it is first stored in, mL.
func (m *maker) volume() working.Num { return m.walk.Steps[m.stores()[0]].After.Volume(nil) }

// amount is a number of the case as the text says it, at the batch that it states.
func (m *maker) amount(v working.Num, unit string) string {
	if v.Unknown() || !(v.V > 0) {
		m.why = phrase.Of("keep.no_liquid", m.place)
		return ""
	}
	return strconv.FormatFloat(upward(v.V*m.ratio), 'f', -1, 64) + " " + unit
}

// upward rounds up to two digits.
func upward(v float64) float64 {
	step := math.Pow(10, math.Floor(math.Log10(v))-1)
	up, _ := strconv.ParseFloat(strconv.FormatFloat(math.Ceil(v/step*(1-1e-12))*step, 'g', 2, 64), 64)
	return up
}

// waste is where what is washed out before goes.
func (m *maker) waste() string {
	for i := m.stores()[0] - 1; i >= 0; i-- {
		s := &m.c.Route.Steps[i]
		if d := s.Verb().Does; s.Into != "" && (d == route.Washes || d == route.Parts || d == route.Prewashes) &&
			s.Into != m.place {
			return s.Into
		}
	}
	m.why = phrase.Of("keep.no_waste")
	return ""
}

// stated is a key as the first step that stores has it; nothing where it does not say.
func stated(key, value string) string {
	if value == "" {
		return ""
	}
	return ", " + key + ": " + value
}

// twice is twice the capacity of the place.
func (m *maker) twice() string {
	p := m.c.Route.Place(m.place)
	if p == nil || !p.Capacity.Set {
		m.why = phrase.Of("keep.no_capacity", m.place)
		return ""
	}
	of := working.Exact("V", "mL", 2*p.Capacity.SI*1e6, "twice the capacity")
	if p.KeepStated {
		return strconv.FormatFloat(of.V, 'f', -1, 64) + " mL"
	}
	return m.amount(of, "mL")
}

// reserve is what is weighed beyond the dose from which an additive counts.
const reserve = 1.05

// dose is the mass of an additive for the liquid of the place.
func (m *maker) dose(slug string) string {
	sub, ok := chemicals.Library().Find(slug)
	v, st := m.volume(), m.c.Store
	if !ok || v.Unknown() {
		m.why = phrase.Of("keep.no_liquid", m.place)
		return ""
	}
	c, molar := st.Num(datum.Of("storage.dose", sub.Slug)), sub.Formula.MolarMass(st, nil)
	mass := reserve * c.V * v.V * molar.V / 1e6
	if !(mass > 0) {
		m.why = phrase.Of("keep.no_dose", sub.Name)
		return ""
	}
	up := upward(mass)
	own := working.Absent("V", "mL", working.LacksDatum(datum.Of("storage.additive_gas", sub.Slug)))
	if _, held := st.Row(datum.Of("storage.additive_gas", sub.Slug)); held {
		y, R, P := st.Num(datum.Of("storage.additive_gas", sub.Slug)), st.Num("constant.R"), st.Num("gas.pressure")
		own = working.Exact("V", "mL", up/molar.V*y.V*R.V*298.15/P.V*1000, "all of it")
	}
	m.additives = append(m.additives, Additive{sub, working.Exact("m", "g", up, "the dose"), own})
	return m.amount(working.Exact("m", "g", up, "the dose"), "g")
}

// brine is the mass of common salt that makes brine of the liquid of the place, counted as
// water: a fiftieth more than that from which it counts, which still dissolves.
func (m *maker) brine() string {
	v, w := m.volume(), m.c.Store.Num("storage.brine.sodium_chloride")
	if v.Unknown() {
		m.why = phrase.Of("keep.no_liquid", m.place)
		return ""
	}
	return m.amount(working.Exact("m", "g", 1.02*w.V/100*v.V, "of the water"), "g")
}

// Says is an edit as the file would read, in the words of the file.
func Says(e edit.Edit) string {
	switch {
	case e.Before:
		return strings.Trim(e.To, "{}")
	case e.To == "":
		return e.Path
	}
	return e.Path[strings.LastIndexByte(e.Path, '.')+1:] + ": " + e.To
}
