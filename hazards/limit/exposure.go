package limit

import (
	"cmp"
	_ "embed"
	"errors"
	"math"
	"slices"
	"sync"

	"etchbound/schemas/columns"
)

// Kind is what a limit of exposure is for.
type Kind string

// The kinds. Only work limits are law, each where its jurisdiction holds.
const (
	Work      Kind = "work"
	Advisory  Kind = "advisory"  // published for practice, law nowhere
	Escape    Kind = "escape"    // immediately dangerous to life or health
	Emergency Kind = "emergency" // for one exposure of the public, by time
)

// Exposure is a limit of what people breathe.
type Exposure struct {
	ID           string
	Agent        string // slug of the substance
	Label        string
	Value        float64 // ppm
	Mass         float64 // mg/m3 where it is printed so, else 0; Value is then worked out of it
	Average      float64 // min over which it is averaged; 0: never to be passed
	Kind         Kind
	Tier         int    // 1 to 3 of an emergency level; else 0
	Series       string // of an emergency level, the limit that its levels for every time are of
	Jurisdiction string // empty: everywhere
	Document     string
	Section      string
	Edition      string
	Status       string
}

//go:embed exposure.csv
var exposureTable string

var exposures = sync.OnceValue(func() []Exposure {
	all := columns.Must("hazards/limit/exposure.csv", exposureTable, func(r columns.Row) Exposure {
		e := Exposure{ID: r.Named("id"), Agent: r.Named("agent"), Label: r.Named("label"), Value: r.Number("value"),
			Average:      r.Stated("average"),
			Kind:         Kind(r.Choice("kind", string(Work), string(Advisory), string(Escape), string(Emergency))),
			Jurisdiction: r.Text("jurisdiction"), Document: r.Named("document"), Section: r.Text("section"),
			Edition: r.Text("edition"), Status: r.Named("status")}
		if e.Kind == Emergency {
			e.Tier, e.Series = r.Count("tier"), r.Named("series")
		}
		if mass := r.Number("mass"); !math.IsNaN(mass) {
			e.Mass, e.Value = mass, ofMass(e.Agent, mass)
		}
		if math.IsNaN(e.Value) {
			r.Fault("value", errors.New("neither it nor mass is stated"))
		}
		return e
	})
	return append(all, equivalents(all)...)
})

// Exposures are the limits of exposure the program carries, by id.
func Exposures() []Exposure { return slices.Clone(exposures()) }

// ExposureAt lists those that hold for an agent at a site: what holds
// everywhere, and the work limits of its jurisdiction. Without one, those of
// every jurisdiction count. The list is shared and not to be changed.
func ExposureAt(agent, jurisdiction string) []Exposure {
	return exposuresAt()[agentAt{agent, jurisdiction}]
}

// agentAt is an agent at a site of a jurisdiction.
type agentAt struct{ agent, jurisdiction string }

// jurisdictions are those a site may state, and none.
var jurisdictions = [...]string{"", "us", "us_california", "eu", "uk", "de"}

// exposuresAt are the lists of every agent at every site: they are asked for many times.
var exposuresAt = sync.OnceValue(func() map[agentAt][]Exposure {
	out := map[agentAt][]Exposure{}
	for _, e := range exposures() {
		for _, at := range jurisdictions {
			if e.Jurisdiction == "" || at == "" || e.Jurisdiction == at ||
				at == "us_california" && e.Jurisdiction == "us" || at == "de" && e.Jurisdiction == "eu" {
				out[agentAt{e.Agent, at}] = append(out[agentAt{e.Agent, at}], e)
			}
		}
	}
	return out
})

// Strictest lists, of every averaging time, the strictest that holds for an agent
// at a site for as long as work lasts, and what is immediately dangerous. Without a
// jurisdiction it lists what any of them would have, the strictest of all first: so
// stating one never adds a limit. The list is shared and not to be changed.
func Strictest(agent, jurisdiction string) []Exposure {
	return strictest()[agentAt{agent, jurisdiction}]
}

var strictest = sync.OnceValue(func() map[agentAt][]Exposure {
	out := map[agentAt][]Exposure{}
	for at, all := range exposuresAt() {
		out[at] = strictestOf(all)
	}
	for at := range out {
		if at.jurisdiction != "" {
			continue
		}
		for _, site := range jurisdictions[1:] {
			for _, e := range out[agentAt{at.agent, site}] {
				if !slices.ContainsFunc(out[at], func(x Exposure) bool { return x.ID == e.ID }) {
					out[at] = append(out[at], e)
				}
			}
		}
	}
	return out
})

// strictestOf keeps one limit of every averaging time, and what is immediately
// dangerous.
func strictestOf(all []Exposure) []Exposure {
	var list []Exposure
	for _, e := range all {
		if e.Kind == Emergency {
			continue
		}
		i := slices.IndexFunc(list, func(x Exposure) bool {
			return (x.Kind == Escape) == (e.Kind == Escape) && (e.Kind == Escape || x.Average == e.Average)
		})
		switch {
		case i < 0:
			list = append(list, e)
		case e.Value < list[i].Value:
			list[i] = e
		}
	}
	return list
}

// Remembered reports whether nobody has seen the printed value: it has to be
// verified locally.
func (e *Exposure) Remembered() bool { return e.Status == "memory" }

// Leave reports whether a room is left at it: what is immediately dangerous, and the
// emergency level of tier 2 for ten minutes.
func (e *Exposure) Leave() bool { return e.Kind == Escape || e.Tier == 2 && e.Average == 10 }

// Allowed is the concentration in ppm that may last for some minutes and then
// stop, so that the average meets the limit. A time that is not known counts as
// long.
func (e *Exposure) Allowed(minutes float64) float64 {
	if e.Average == 0 || !(minutes < e.Average) {
		return e.Value
	}
	return e.Value * e.Average / minutes
}

// tierOf is a tier of emergency levels of an agent.
type tierOf struct {
	agent string
	tier  int
}

// emergencyLevels are the emergency levels of every agent and tier, by rising time.
var emergencyLevels = sync.OnceValue(func() map[tierOf][]Exposure {
	out := map[tierOf][]Exposure{}
	for _, e := range exposures() {
		if e.Tier > 0 {
			at := tierOf{e.Agent, e.Tier}
			out[at] = append(out[at], e)
		}
	}
	for _, l := range out {
		slices.SortFunc(l, func(a, b Exposure) int { return cmp.Compare(a.Average, b.Average) })
	}
	return out
})

// AEGLTimes are the times in min for which an emergency level of an agent is tabled,
// shortest first.
func AEGLTimes(agent string, tier int) []float64 {
	var out []float64
	for _, e := range emergencyLevels()[tierOf{agent, tier}] {
		out = append(out, e.Average)
	}
	return out
}

// AEGL is the acute exposure guideline level of an agent for a tier, 1 to 3, and
// a time in min of up to 8 h, ppm; false where there is none. The toxic load of HF,
// C^2 t, holds from 30 min to 4 h and lets its levels be taken between those
// tabled there; otherwise the level of the next longer time tabled counts.
func AEGL(agent string, tier int, minutes float64) (Exposure, bool) {
	tabled := emergencyLevels()[tierOf{agent, tier}]
	for i := range tabled {
		e := &tabled[i]
		if minutes > e.Average {
			continue
		}
		if i > 0 && agent == "hf" && tabled[i-1].Average >= 30 && e.Average <= 240 {
			before := &tabled[i-1]
			s := math.Log(minutes/before.Average) / math.Log(e.Average/before.Average)
			out := *e
			out.Value = math.Exp((1-s)*math.Log(before.Value) + s*math.Log(e.Value))
			return out, true
		}
		return *e, true
	}
	return Exposure{}, false
}
