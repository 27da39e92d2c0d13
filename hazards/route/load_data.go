package route

import (
	"errors"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/schemas"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// measured reads what was measured and leaves out the values the store does not take.
func (l *loader) measured(root *schemas.Node, r *Route) {
	n := root.Get("measured")
	if !n.Usable(schemas.Map) {
		return
	}
	if !root.Wrote("precursor") {
		l.refuseKey(root, "measured", "measured values in a route without a precursor", "a precursor block with phase "+
			"and mass", "")
		return
	}
	r.Measured = Measured{EtchHeat: n.Value("etch_heat"), Hydrogen: n.Value("hydrogen"), Conversion: n.Value("conversion"),
		Density: n.Value("density"), Curve: l.curve(n.Get("curve")), Kinetics: n.Str("kinetics"), TD24: n.Value("td24"),
		Source: n.Str("source")}
	r.replaced(func(s field.Seen, o chemicals.Override) { l.accepted(n.Get(s.Key), n, o) })
}

// replaced shows the measured values that replace data, with what they replace.
func (r *Route) replaced(visit func(field.Seen, chemicals.Override)) {
	if r.Precursor == nil || r.Precursor.Phase.Text == "" {
		return
	}
	measuredKeys.File("route").Visit(&r.Measured, func(s field.Seen) {
		x, ok := s.Value.(field.Amount)
		if !ok || s.Datum == "" || !x.Of.Set {
			return
		}
		o := chemicals.Override{ID: datum.Of(s.Datum, r.Precursor.Phase.Text), Source: r.Source, At: x.Of.At, From: "route"}
		o.Unit = unitOf(o)
		o.Value, o.Low, o.High = inUnit(*x.Of, o.Unit)
		visit(s, o)
	})
}

// Overrides are the data the route replaces: the plain values of measured:, then
// data:.
func (r *Route) Overrides() []chemicals.Override {
	var list []chemicals.Override
	r.replaced(func(_ field.Seen, o chemicals.Override) { list = append(list, o) })
	return append(list, r.Data...)
}

// data reads a data list. Overrides that are there before it, from measured:, are
// not to be given again.
func (l *loader) data(n *schemas.Node, from string, before []chemicals.Override) []chemicals.Override {
	if !n.Usable(schemas.List) {
		return nil
	}
	var list []chemicals.Override
	for _, x := range n.Items {
		o, ok := l.datum(x, from)
		if ok && l.accepted(x.Get("id"), x, o) && l.once(x.Get("id"), o, append(before, list...)) {
			list = append(list, o)
		}
	}
	return list
}

func (l *loader) once(n *schemas.Node, o chemicals.Override, list []chemicals.Override) bool {
	for _, other := range list {
		if other.ID == o.ID {
			l.refuse(n, string(o.ID)+" is given twice: first at "+other.At, "each datum once", "")
			return false
		}
	}
	return true
}

func (l *loader) datum(n *schemas.Node, from string) (chemicals.Override, bool) {
	o := chemicals.Override{ID: datum.ID(n.Str("id")), Source: n.Str("source"), At: n.Path, From: from, Low: math.NaN(),
		High: math.NaN()}
	if !n.Usable(schemas.Map) || !n.Get("id").Usable(schemas.Text) || n.Get("value") == nil {
		return o, false
	}
	if !l.there(n.Get("id"), o) || !l.of(n.Get("id"), from) {
		return o, false
	}
	o.Unit = unitOf(o)
	var ok bool
	if o.Value, o.Low, o.High, ok = l.figure(n.Get("value"), o.Unit); !ok {
		return o, false
	}
	return o, l.ends(n, &o)
}

// ends reads low and high where they are keys of their own.
func (l *loader) ends(n *schemas.Node, o *chemicals.Override) bool {
	low, high := n.Get("low"), n.Get("high")
	if low == nil && high == nil || n.Wrote("low") && n.Wrote("high") && (low == nil || high == nil) {
		return true
	}
	if !math.IsNaN(o.Low) {
		l.refuseKey(n, "low", "a range that is given twice", "a range in value, or the keys low and high", "")
		return false
	}
	if low == nil || high == nil {
		l.refuse(n, "one end of a range without the other", "both low and high, or neither", "")
		return false
	}
	var a, b bool
	o.Low, _, _, a = l.figure(low, o.Unit)
	o.High, _, _, b = l.figure(high, o.Unit)
	return a && b
}

// figure reads a number in a unit: plain, in that unit, or in another unit of
// the same dimension.
func (l *loader) figure(n *schemas.Node, unit string) (x, low, high float64, ok bool) {
	nan := math.NaN()
	if n.Usable(schemas.Number) {
		return n.Number, nan, nan, true
	}
	if !n.Usable(schemas.Text) {
		return nan, nan, nan, false
	}
	p, err := quantity.Split(n.Text)
	if err == nil && (p.Unit == "" || strings.ReplaceAll(p.Unit, " ", "") == strings.ReplaceAll(unit, " ", "")) {
		return p.X, p.Low, p.High, true
	}
	d, known := quantity.DimensionOf(unit)
	if err == nil && known && unit != "" {
		var v quantity.Value
		if v, err = quantity.Parse(n.Text, d); err == nil {
			x, low, high = inUnit(v, unit)
			return x, low, high, true
		}
	}
	what, hint := "\""+n.Text+"\" is not in "+named(unit), ""
	if e, is := err.(*quantity.Error); is {
		what, hint = e.Words(), e.Hint
	}
	l.refuse(n, what, "a number in "+named(unit)+", as the datum is", hint)
	return nan, nan, nan, false
}

func named(unit string) string {
	if unit == "" {
		return "no unit"
	}
	return unit
}

// inUnit gives a stated quantity in the unit of a row; a row without a unit
// holds shares of one.
func inUnit(v quantity.Value, unit string) (x, low, high float64) {
	if unit == "" || unit == "1" || !v.Can(unit) {
		return v.SI, v.Low, v.High
	}
	low, high = v.Range(unit)
	return v.In(unit), low, high
}

// unitOf is the unit of the row that an override replaces or opens.
func unitOf(o chemicals.Override) string {
	unit, _ := chemicals.Base().UnitOf(o)
	return unit
}

// accepted asks the store whether it would take the override; n is its id or the key
// that stands for one, and in the map that holds its value and ends.
func (l *loader) accepted(n, in *schemas.Node, o chemicals.Override) bool {
	_, err := chemicals.Base().Takes(o)
	if err == nil || n == nil {
		return err == nil
	}
	var outside *chemicals.OutsideBand
	if errors.As(err, &outside) {
		if end := in.Get(outside.End); end != nil {
			n = end
		} else if value := in.Get("value"); value != nil {
			n = value
		}
		l.refuse(n, outside.What(), outside.Accepted(), outside.Band.Says)
		return false
	}
	l.refuse(n, strings.TrimPrefix(err.Error(), o.At+": "), "the id of a datum, with a value in its unit", "")
	return false
}

// there refuses an id of which there is no datum, and none can be opened.
func (l *loader) there(n *schemas.Node, o chemicals.Override) bool {
	_, err := chemicals.Base().UnitOf(o)
	if err != nil {
		l.refuse(n, strings.TrimPrefix(err.Error(), o.At+": "), "the id of a datum, with a value in its unit",
			nearestDatum(string(o.ID), l.holds.ids()))
	}
	return err == nil
}

// of holds a datum against what the file is about: one that nothing looks up
// would be kept and change nothing, and its writer would not learn of it.
func (l *loader) of(n *schemas.Node, from string) bool {
	if from == "site" {
		return l.ofSite(n)
	}
	id := datum.ID(n.Text)
	_, tabled := chemicals.Base().Row(id)
	if tabled && !id.Key().Etched() || l.holds.unsure || slices.Contains(l.holds.ids(), id) {
		return true
	}
	l.refuse(n, n.Text+" would change nothing: the route looks up no such datum",
		"a datum of what the route holds: "+l.holds.all(),
		nearestDatum(n.Text, l.holds.ids()))
	return false
}

// ofSite takes data for the powders of many routes, so it can refuse only what
// no route looks up, and tells of each datum that is not tabled.
func (l *loader) ofSite(n *schemas.Node) bool {
	if _, tabled := chemicals.Base().Row(datum.ID(n.Text)); tabled {
		return true
	}
	if formula, ok := anyFormula(datum.ID(n.Text)); ok {
		l.problems = append(l.problems, newDatum(n, formula))
		return true
	}
	l.refuse(n, n.Text+" would change nothing: no route looks up such a datum",
		"the id of a tabled datum, or one of the same family that ends in a formula",
		nearestDatum(n.Text, nil))
	return false
}

// newDatum notices a datum beside the tabled ones.
func newDatum(n *schemas.Node, formula string) schemas.Problem {
	p := n.Problem(n.Text+" is not among the tabled data: it counts only in routes that hold "+formula, "",
		nearestDatum(n.Text, nil))
	p.Severity = schemas.Notice
	return p
}

// nearestDatum offers one of the ids first thought of, else a tabled one.
func nearestDatum(id string, first []datum.ID) string {
	near := schemas.Nearest(id, first)
	if near == "" {
		var ids []datum.ID
		for _, d := range chemicals.Base().Rows() {
			ids = append(ids, d.ID)
		}
		near = schemas.Nearest(id, ids)
	}
	if near == "" {
		return ""
	}
	return "did you mean " + string(near) + "?"
}
