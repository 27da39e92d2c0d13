package levers

import (
	"fmt"
	"slices"

	"etchbound/hazards/phrase"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
)

// dilution is water in the liquor before the powder meets it: the same acid, weaker.
func (b *bench) dilution(r *row) {
	s := b.etch()
	if s == nil {
		return
	}
	for i := range b.route.Steps {
		x := &b.route.Steps[i]
		if x.Works() != s.Works() || x.Number > s.Number || litres(x) == 0 {
			continue
		}
		b.water(r, x, litres(x))
		return
	}
}

// wasteWater is cold water in the waste before base comes to it: more of that of the
// last wash that goes into the place, or, where the file ends without treating it, water
// that is put in at the end.
func (b *bench) wasteWater(r *row) {
	last := len(b.route.Steps) - 1
	if last < 0 || slices.ContainsFunc(b.route.Steps,
		func(s route.Step) bool { return s.Verb().Does == route.Neutralises }) {
		return
	}
	for i := last; i >= 0; i-- {
		s := &b.route.Steps[i]
		p := b.route.Place(s.Into)
		if s.Verb().Waste != "yes" || p == nil || !p.Capacity.Set {
			continue
		}
		var levels []level
		for _, k := range r.values {
			to := text(ordinary(k*p.Capacity.In("L")/10)) + " L"
			levels = append(levels, level{{
				Edit: edit.Edit{Path: fmt.Sprintf("steps[%d]", last+1), Note: "proposed, not tried",
					To: "{do: dilute, in: " + p.Key + ", what: [{substance: water, volume: " + to + "}]}"},
				Says: phrase.Of("lever.new.waste_water", p.Key, to)}})
		}
		b.add(r, levels...)
		return
	}
}

// slurryWater is cold water that base of a treatment comes to: more of it where water is listed
// first, else some before what is. Water listed behind the base is not counted: it comes when
// they have met.
func (b *bench) slurryWater(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		if s.Verb().Does != route.Neutralises || len(s.What) == 0 {
			continue
		}
		if m := &s.What[0]; m.Substance != nil && m.Substance.Solution == "water" && m.Volume.Set {
			if !m.Volume.HasRange() {
				b.times(r, m.Volume, stepPath(s, "what[0].volume"), stepName(s))
			}
			continue
		}
		if p := b.route.Place(s.Works()); p != nil && p.Capacity.Set {
			b.waterFirst(r, s, p.Capacity.In("mL")/4)
		}
	}
}

// waterFirst is water before what a step puts in, some times a volume in mL.
func (b *bench) waterFirst(r *row, s *route.Step, volume float64) {
	var levels []level
	for _, k := range r.values {
		to := text(ordinary(k*volume)) + " mL"
		levels = append(levels, level{proposal.Change{
			Edit: edit.Edit{Path: stepPath(s, "what[0]"), Before: true, Note: "proposed, not tried",
				To: "{substance: water, volume: " + to + "}"},
			Says: phrase.Of("lever.new."+r.name, stepName(s), to)}})
	}
	b.add(r, levels...)
}

// neutraliser is more of what neutralises.
func (b *bench) neutraliser(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		if s.Verb().Does != route.Neutralises {
			continue
		}
		for j := range s.What {
			if m := &s.What[j]; m.Mass.Set && !m.Mass.HasRange() && m.Substance != nil && m.Substance.Solution != "water" {
				b.times(r, m.Mass, stepPath(s, fmt.Sprintf("what[%d].mass", j)), stepName(s))
			}
		}
	}
}

// cycles are more of them.
func (b *bench) cycles(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		var levels []level
		for _, k := range r.values {
			if s.Cycles > 0 {
				levels = append(levels, level{change(r, stepPath(s, "cycles"), text(float64(s.Cycles)+k), stepName(s),
					text(float64(s.Cycles)))})
			}
		}
		b.add(r, levels...)
	}
}

// water is more water in a step: some shares of a volume in L, beside what it brings.
func (b *bench) water(r *row, s *route.Step, volume float64) {
	for j := range s.What {
		if m := &s.What[j]; m.Substance != nil && m.Substance.Solution == "water" && m.Volume.Set && !m.Volume.HasRange() {
			path := stepPath(s, fmt.Sprintf("what[%d].volume", j))
			var levels []level
			for _, k := range r.values {
				v := ordinary(m.Volume.In("mL") + 1000*k*volume)
				levels = append(levels, level{change(r, path, text(v)+" mL", stepName(s), m.Volume.Text)})
			}
			b.add(r, levels...)
			return
		}
	}
	var levels []level
	for _, k := range r.values {
		to := text(ordinary(1000*k*volume)) + " mL"
		levels = append(levels, level{proposal.Change{
			Edit: edit.Edit{Path: stepPath(s, fmt.Sprintf("what[%d]", len(s.What))), Note: "proposed, not tried",
				To: "{substance: water, volume: " + to + "}"},
			Says: phrase.Of("lever.new."+r.name, stepName(s), to)}})
	}
	if volume > 0 {
		b.add(r, levels...)
	}
}

// litres is the liquid that a step brings, L, as far as it is stated as a volume.
func litres(s *route.Step) float64 {
	v := 0.0
	for i := range s.What {
		if m := &s.What[i]; m.Volume.Set {
			v += m.Volume.In("L")
		}
	}
	return v
}
