// Package alone knows which steps run with nobody there, and holds each against what the
// rules of the site let run so: how long, how warm, with how much hydrogen and with what in
// the vessel. It must not know whether that is wise, nor move material.
//
//	unattended.against    rules of the site that the step goes against
//
// A step that lasts, or can and says no time, counts as left alone unless it says that it is
// attended; what is put by to be stored is no step that runs. A site that states no rules asks for nothing; of one
// that does not state all of them nobody knows, and one rule that is gone against is enough.
// What holds fluorine counts as hydrofluoric acid, and nothing counts of which the liquor
// holds next to nothing. It is worked out once, of the figures with their ranges.
package alone

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// Quantity is the name of the figures of this package.
const Quantity = "unattended.against"

// Read gives a figure for each step that runs alone.
func Read(c route.Case, w *working.Sheet, k *process.Walk, figs *figure.Set) []figure.Figure {
	if c.Site == nil || c.Site.Unattended == nil {
		return nil
	}
	var out []figure.Figure
	for i := range k.Steps {
		s := &c.Route.Steps[i]
		if !alone(s) {
			continue
		}
		f := figure.Figure{ID: figure.ID{Quantity: Quantity, Place: figure.Step(s.Number)}}
		j := judge{step: s, done: &k.Steps[i], figs: figs, hours: lasts(s),
			least: c.Store.Num("alone.least").V / 100}
		j.rules(c.Site.Unattended)
		f.Conditions = j.says()
		f.Value = working.Exact("n", "1", float64(len(j.against)), "rules of the site it goes against")
		if len(j.against) == 0 && j.lacks != nil {
			f.Value = working.Absent("n", "1", working.Joined(j.lacks)...)
		}
		f.Value = w.Keep(f.Value)
		f.SetRange(f.Value.V, f.Value.V)
		out = append(out, f)
	}
	return out
}

// alone reports whether a step runs with nobody there, as far as it says.
func alone(s *route.Step) bool {
	if s.Attended != nil && *s.Attended || s.Verb().Does == route.Stores {
		return false
	}
	return s.Attended != nil || s.Time.Set || s.Over.Set || s.Verb().Runs
}

// lasts is how long a step runs, h, at its upper end; not known where it says neither.
func lasts(s *route.Step) working.Num {
	for _, q := range [...]quantity.Value{s.Time, s.Over} {
		if !q.Set {
			continue
		}
		most := q.In("h")
		if q.HasRange() {
			_, most = q.Range("h")
		}
		return working.Given("t", "h", most, s.At)
	}
	return working.Absent("t", "h", working.Lacks(working.NotGiven, s.At+".time"))
}

type judge struct {
	step    *route.Step
	done    *process.Done
	figs    *figure.Set
	hours   working.Num
	least   float64 // share of the mol from which on a liquor holds something
	against []phrase.Phrase
	lacks   []working.Missing
}

// rules holds the step against each rule of the site.
func (j *judge) rules(u *route.Unattended) {
	j.most("alone.time", "time", u.Time.In("h"), u.Time.Set, j.hours)
	j.most("alone.temperature", "temperature", u.Temperature.In("degC"), u.Temperature.Set, j.warmest())
	j.most("alone.gas", "gas", u.Gas.In("L/min"), u.Gas.Set, j.flow())
	if u.Never == nil {
		j.lacks = append(j.lacks, working.Lacks(working.NotGiven, "unattended.never"))
	}
	for _, sub := range u.Never {
		j.holds(sub)
	}
}

// most holds a number of the step against the most that may run alone; says is what is said
// where it is more.
func (j *judge) most(says, key string, limit float64, stated bool, x working.Num) {
	switch {
	case !stated:
		j.lacks = append(j.lacks, working.Lacks(working.NotGiven, "unattended."+key))
	case x.Unknown():
		j.lacks = append(j.lacks, x.Missing()...)
	case x.V > limit*(1+1e-9):
		j.against = append(j.against, phrase.Of(says, figure.Round(x.V, 3), figure.Round(limit, 3)))
	}
}

// warmest is the highest temperature of the step as it is meant, degC.
func (j *judge) warmest() working.Num {
	return j.greatest(j.done.Hot, "heat.temperature_peak")
}

// flow is the largest flow of hydrogen of the step as it is meant, L/min.
func (j *judge) flow() working.Num {
	return j.greatest(working.Exact("F", "L/min", 0, "nothing in the step gives hydrogen"),
		"gas.hydrogen.peak_rate.during_addition", "gas.hydrogen.peak_rate.after_addition")
}

// greatest is the high end of some figures of the step without its failures, or what stands
// where there is none.
func (j *judge) greatest(otherwise working.Num, quantities ...string) working.Num {
	var out working.Num
	for _, q := range quantities {
		for f := range j.figs.At(q, figure.Step(j.step.Number)) {
			if x := f.High(); f.Case.Failure == "" && (out.None() || !out.Unknown() && (x.Unknown() || x.V > out.V)) {
				out = x
			}
		}
	}
	if out.None() || !out.Unknown() && otherwise.V > out.V {
		return otherwise
	}
	return out
}

// holds says whether the vessel holds what may never be left alone.
func (j *judge) holds(sub *chemicals.Substance) {
	for _, state := range []*process.State{&j.done.Before, &j.done.After} {
		total, of, strange := 0.0, 0.0, false
		for i := range state.Liquid {
			for _, e := range state.Liquid[i].Entries {
				n := e.N.V * state.Liquid[i].Kept()
				switch {
				case e.Sub == nil || n == 0:
					continue
				case e.Sub.Slug == sub.Slug || sub.Slug == "hf" && e.Sub.Count("F") > 0:
					of += n
				}
				total, strange = total+n, strange || e.Sub.NotHeld
			}
		}
		switch {
		case of > j.least*total:
			j.against = append(j.against, phrase.Of("alone.never", sub.Name))
			return
		case strange || math.IsNaN(of+total):
			j.lacks = append(j.lacks, working.Lacks("pair_of_unheld", j.step.In).In(j.step.Number))
		}
	}
}

// says tells the rules the step goes against, or that it runs alone.
func (j *judge) says() phrase.Phrase {
	if len(j.against) == 0 {
		return phrase.Of("alone.runs")
	}
	out := j.against[0]
	for _, p := range j.against[1:] {
		out = out.And(phrase.As(" "), p)
	}
	return out
}
