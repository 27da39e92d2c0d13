package levers

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
	"etchbound/schemas/quantity"
)

// choice is a lever at one place of a file, with the values it can take, the smallest
// change first.
type choice struct {
	*row
	levels []level
	first  figure.Place // that it is taken in before anything is searched; zero: none
}

// level is one value of it.
type level []proposal.Change

// bench collects the choices of a route.
type bench struct {
	route *route.Route
	out   []choice
}

// choices are all that a route offers, in the order of the levers.
func choices(r *route.Route) []choice {
	b := &bench{route: r}
	for i := range rows() {
		if by := offers[rows()[i].name]; by != nil {
			by(b, &rows()[i])
		}
	}
	return b.out
}

// offers are the ways in which levers stand in a file.
var offers = map[string]func(*bench, *row){
	"over": (*bench).over, "portions": (*bench).portions, "vent": (*bench).vent, "neutraliser": (*bench).neutraliser,
	"slurry_water": (*bench).slurryWater, "waste_water": (*bench).wasteWater, "cycles": (*bench).cycles,
	"closure": (*bench).closure, "coolant": (*bench).coolant, "ice": (*bench).ice, "set": (*bench).set,
	"capacity": (*bench).capacity, "dilution": (*bench).dilution, "keep_at": (*bench).keepAt,
	"retained": (*bench).retained, "order": (*bench).order,
}

// add is one more choice, if it can take any value.
func (b *bench) add(r *row, levels ...level) {
	if len(levels) > 0 {
		b.out = append(b.out, choice{row: r, levels: levels})
	}
}

// change is one value of a lever at a path, told with where it is and what it was.
func change(r *row, path, to, where, was string) proposal.Change {
	says := phrase.Of("lever."+r.name, where, was, to)
	if was == "" {
		says = phrase.Of("lever.new."+r.name, where, to)
	}
	note := "proposed, not tried"
	if was != "" {
		note += "; " + path[strings.LastIndex(path, ".")+1:] + " was " + was // a line can hold several keys
	}
	return proposal.Change{Edit: edit.Edit{Path: path, To: to, Note: note}, Says: says}
}

// upTo are the values above one, in a unit.
func (b *bench) upTo(r *row, q quantity.Value, unit, path, where string) {
	var levels []level
	for _, v := range r.values {
		if v > q.In(unit)*(1+1e-9) {
			levels = append(levels, level{change(r, path, inUnit(v, unit), where, q.Text)})
		}
	}
	b.add(r, levels...)
}

// inUnit is a value as a person writes it: whole hours from two on.
func inUnit(v float64, unit string) string {
	if hours := v / 60; unit == "min" && hours >= 2 && hours == math.Trunc(hours) {
		return text(hours) + " h"
	}
	return text(v) + " " + unit
}

// times are round values that are some factors above one.
func (b *bench) times(r *row, q quantity.Value, path, where string) {
	unit := q.Unit()
	var levels []level
	last := q.In(unit)
	for _, k := range r.values {
		if v := ordinary(k * q.In(unit)); v > last*(1+1e-9) {
			levels = append(levels, level{change(r, path, text(v)+" "+unit, where, q.Text)})
			last = v
		}
	}
	b.add(r, levels...)
}

// below are the values below one, in degC, not below a floor.
func (b *bench) below(r *row, q quantity.Value, floor float64, path, where string) {
	var levels []level
	for _, v := range r.values {
		if v < q.In("degC")-1e-9 && v >= floor-1e-9 {
			levels = append(levels, level{change(r, path, text(v)+" degC", where, q.Text)})
		}
	}
	b.add(r, levels...)
}

// stepPath is where a key of a step stands, or the whole step where the key is empty.
func stepPath(s *route.Step, key string) string {
	return strings.TrimSuffix(fmt.Sprintf("steps[%d].%s", s.Number-1, key), ".")
}

func stepName(s *route.Step) string { return fmt.Sprintf("step %d", s.Number) }

// brings reports whether a step puts the powder of the route in.
func brings(s *route.Step) bool {
	return slices.ContainsFunc(s.What, func(m route.Material) bool { return m.Precursor })
}

// etch is the step in which the powder meets the liquor: the first that adds in the place
// that the powder is brought to; nil where there is none.
func (b *bench) etch() *route.Step {
	at := slices.IndexFunc(b.route.Steps, func(s route.Step) bool { return brings(&s) })
	if at < 0 {
		return nil
	}
	for i := range b.route.Steps {
		if s := &b.route.Steps[i]; s.Do == "add" && s.Works() == b.route.Steps[at].Works() {
			return s
		}
	}
	return &b.route.Steps[at]
}
