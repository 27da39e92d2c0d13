package limit

import (
	"cmp"
	_ "embed"
	"math"
	"slices"
	"strings"
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
	Average      float64 // min over which it is averaged; 0: never to be passed
	Kind         Kind
	Jurisdiction string // empty: everywhere
	Document     string
	Section      string
	Edition      string
	Status       string

	verify string // label that asks to verify it, where nobody has seen the printed value
}

//go:embed exposure.csv
var exposureTable string

var exposures = sync.OnceValue(func() []Exposure {
	return columns.Must("hazards/limit/exposure.csv", exposureTable, func(r columns.Row) Exposure {
		label := r.Named("label")
		return Exposure{ID: r.Named("id"), Agent: r.Named("agent"), Label: label, Value: r.Stated("value"),
			Average:      r.Stated("average"),
			Kind:         Kind(r.Choice("kind", string(Work), string(Advisory), string(Escape), string(Emergency))),
			Jurisdiction: r.Text("jurisdiction"), Document: r.Named("document"), Section: r.Text("section"),
			Edition: r.Text("edition"), Status: r.Named("status"), verify: label + " (from memory: verify it locally)"}
	})
})

// Exposures are the limits of exposure the program carries, by id.
func Exposures() []Exposure { return slices.Clone(exposures()) }

// ExposureAt lists those that hold for an agent at a site: what holds
// everywhere, and the work limits of its jurisdiction. Without one, those of
// every jurisdiction count. The list is shared and not to be changed.
func ExposureAt(agent, jurisdiction string) []Exposure { return held()[where{agent, jurisdiction}] }

type where struct{ agent, jurisdiction string }

// sites are the jurisdictions a site may state, and none.
var sites = [...]string{"", "us", "us_california", "eu", "uk", "de"}

// held are the lists of every agent at every site: they are asked for many times.
var held = sync.OnceValue(func() map[where][]Exposure {
	out := map[where][]Exposure{}
	for _, e := range exposures() {
		for _, at := range sites {
			if e.Jurisdiction == "" || at == "" || e.Jurisdiction == at ||
				at == "us_california" && e.Jurisdiction == "us" || at == "de" && e.Jurisdiction == "eu" {
				out[where{e.Agent, at}] = append(out[where{e.Agent, at}], e)
			}
		}
	}
	return out
})

// Strictest lists, of every averaging time, the strictest that holds for an agent
// at a site for as long as work lasts, and what is immediately dangerous. Without a
// jurisdiction it lists what any of them would have, the strictest of all first: so
// stating one never adds a limit. The list is shared and not to be changed.
func Strictest(agent, jurisdiction string) []Exposure { return strictest()[where{agent, jurisdiction}] }

var strictest = sync.OnceValue(func() map[where][]Exposure {
	out := map[where][]Exposure{}
	for at, all := range held() {
		out[at] = strictestOf(all)
	}
	for at := range out {
		if at.jurisdiction != "" {
			continue
		}
		for _, site := range sites[1:] {
			for _, e := range out[where{at.agent, site}] {
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

// Named is the label, which asks to verify a limit that is remembered.
func (e *Exposure) Named() string {
	if e.Remembered() {
		return e.verify
	}
	return e.Label
}

// Allowed is the concentration in ppm that may last for some minutes and then
// stop, so that the average meets the limit. A time that is not known counts as
// long.
func (e *Exposure) Allowed(minutes float64) float64 {
	if e.Average == 0 || !(minutes < e.Average) {
		return e.Value
	}
	return e.Value * e.Average / minutes
}

type tierOf struct {
	agent string
	tier  int
}

// levels are the emergency levels of every agent and tier, by rising time.
var levels = sync.OnceValue(func() map[tierOf][]Exposure {
	out := map[tierOf][]Exposure{}
	for _, e := range exposures() {
		if tier, there := strings.CutPrefix(e.ID, "aegl"); there {
			at := tierOf{e.Agent, int(tier[0] - '0')}
			out[at] = append(out[at], e)
		}
	}
	for _, l := range out {
		slices.SortFunc(l, func(a, b Exposure) int { return cmp.Compare(a.Average, b.Average) })
	}
	return out
})

// AEGL is the acute exposure guideline level of an agent for a tier, 1 to 3, and
// a time in min of up to 8 h; false where there is none. The toxic load of HF,
// C^2 t, holds from 30 min to 4 h and lets its levels be taken between those
// tabled there; otherwise the level of the next longer time tabled counts.
func AEGL(agent string, tier int, minutes float64) (float64, bool) {
	tabled := levels()[tierOf{agent, tier}]
	for i := range tabled {
		e := &tabled[i]
		if minutes > e.Average {
			continue
		}
		if i > 0 && agent == "hf" && tabled[i-1].Average >= 30 && e.Average <= 240 {
			before := &tabled[i-1]
			s := math.Log(minutes/before.Average) / math.Log(e.Average/before.Average)
			return math.Exp((1-s)*math.Log(before.Value) + s*math.Log(e.Value)), true
		}
		return e.Value, true
	}
	return 0, false
}
