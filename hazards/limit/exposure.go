package limit

import (
	_ "embed"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
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
}

//go:embed exposure.csv
var exposureTable string

var exposures = sync.OnceValue(func() []Exposure {
	rows, err := csv.NewReader(strings.NewReader(exposureTable)).ReadAll()
	if err != nil {
		panic("limit: exposure.csv: " + err.Error())
	}
	var out []Exposure
	for _, r := range rows[1:] {
		v, err := strconv.ParseFloat(r[3], 64)
		t, err2 := strconv.ParseFloat(r[4], 64)
		if err != nil || err2 != nil {
			panic("limit: exposure.csv: " + r[0] + ": no number")
		}
		out = append(out, Exposure{r[0], r[1], r[2], v, t, Kind(r[5]), r[6], r[7], r[8], r[9], r[10]})
	}
	return out
})

// Exposures are the limits of exposure the program carries, by id.
func Exposures() []Exposure { return slices.Clone(exposures()) }

// ExposureAt lists those that hold for an agent at a site: what holds
// everywhere, and the work limits of its jurisdiction. Without one, those of
// every jurisdiction count. The list is shared and not to be changed.
func ExposureAt(agent, jurisdiction string) []Exposure { return held()[where{agent, jurisdiction}] }

type where struct{ agent, jurisdiction string }

// held are the lists of every agent at every site: they are asked for many times.
var held = sync.OnceValue(func() map[where][]Exposure {
	out := map[where][]Exposure{}
	for _, e := range exposures() {
		for _, at := range [...]string{"", "us", "us_california", "eu", "uk", "de"} {
			if e.Jurisdiction == "" || at == "" || e.Jurisdiction == at || at == "us_california" && e.Jurisdiction == "us" {
				out[where{e.Agent, at}] = append(out[where{e.Agent, at}], e)
			}
		}
	}
	return out
})

// byID are the limits by their ids.
var byID = sync.OnceValue(func() map[string]*Exposure {
	all := exposures()
	out := make(map[string]*Exposure, len(all))
	for i := range all {
		out[all[i].ID] = &all[i]
	}
	return out
})

// Remembered reports whether nobody has seen the printed value: it has to be
// verified locally.
func (e *Exposure) Remembered() bool { return e.Status == "memory" }

// Allowed is the concentration in ppm that may last for some minutes and then
// stop, so that the average meets the limit. A time that is not known counts as
// long.
func (e *Exposure) Allowed(minutes float64) float64 {
	if e.Average == 0 || !(minutes < e.Average) {
		return e.Value
	}
	return e.Value * e.Average / minutes
}

// AEGL is the acute exposure guideline level of an agent for a tier, 1 to 3, and
// a time in min of up to 8 h; false where there is none. The toxic load of HF,
// C^2 t, holds from 30 min to 4 h and lets its levels be taken between those
// tabled there; otherwise the level of the next longer time tabled counts.
func AEGL(agent string, tier int, minutes float64) (float64, bool) {
	var times, levels []float64
	prefix := "aegl" + strconv.Itoa(tier) + "_" + agent + "_"
	for _, t := range []float64{10, 30, 60, 240, 480} {
		if e, there := byID()[prefix+strconv.Itoa(int(t))+"min"]; there {
			times, levels = append(times, t), append(levels, e.Value)
		}
	}
	for i, t := range times {
		if minutes > t {
			continue
		}
		if agent == "hf" && i > 0 && times[i-1] >= 30 && t <= 240 {
			s := math.Log(minutes/times[i-1]) / math.Log(t/times[i-1])
			return math.Exp((1-s)*math.Log(levels[i-1]) + s*math.Log(levels[i])), true
		}
		return levels[i], true
	}
	return 0, false
}
