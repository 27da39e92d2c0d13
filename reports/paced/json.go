package paced

import (
	"io"
	"math"

	"etchbound/hazards"
	"etchbound/reports/draft"
	"etchbound/reports/record"
	"etchbound/scaling/pacing"
)

// Format names the shape of the JSON of how an addition is paced.
const Format = "etchbound.pace/1"

// Shape is how what reacts can be added, as it is written for programs: temperatures in
// degC, times in min, gas in L/min at 25 degC and 101.325 kPa.
type Shape struct {
	record.Head
	Additions []additionJSON `json:"additions"`
}

type additionJSON struct {
	Step    int                  `json:"step"`
	Onto    bool                 `json:"onto_powder"`
	Of      *string              `json:"limit_of"`
	Limit   record.Nine          `json:"limit"`
	Open    bool                 `json:"boiling_unknown"`
	Over    record.Nine          `json:"written_time"`
	None    []doseJSON           `json:"none_reacted"`
	Laws    []lawJSON            `json:"laws"`
	Ways    []wayJSON            `json:"ways"`
	Stop    *stopJSON            `json:"stop"`
	Missing []record.MissingJSON `json:"missing"`
}

type doseJSON struct {
	Share record.Nine `json:"share"`
	Could record.Nine `json:"could_reach"`
}

type lawJSON struct {
	Law    string      `json:"law"`
	Points []pointJSON `json:"points"`
}

type pointJSON struct {
	Share       record.Nine `json:"share"`
	Time        record.Nine `json:"time"`
	Temperature record.Nine `json:"temperature"`
	Waiting     record.Nine `json:"waiting"`
	Could       record.Nine `json:"could_reach"`
}

type wayJSON struct {
	Kind  string      `json:"way"`
	Of    record.Nine `json:"of"`
	Takes record.Nine `json:"takes"`
	In    record.Nine `json:"share"`
	Stays hotJSON     `json:"stays"`
	Could hotJSON     `json:"could_reach"`
}

type hotJSON struct {
	Best  record.Nine `json:"best"`
	Most  record.Nine `json:"most"`
	Below *bool       `json:"below_limit"`
}

type stopJSON struct {
	Above  record.Nine `json:"above"`
	Share  record.Nine `json:"share"`
	NoTime bool        `json:"no_time"`
	Within record.Nine `json:"within"`
	Reads  record.Nine `json:"reads"`
	Bare   record.Nine `json:"reads_if_nothing_reacts"`
	Gas    record.Nine `json:"gas"`
	Pile   record.Nine `json:"could_reach"`
	By     []afterJSON `json:"laws"`
}

type afterJSON struct {
	Law     string      `json:"law"`
	Sees    bool        `json:"warms_to_it"`
	At      record.Nine `json:"time"`
	Reads   record.Nine `json:"reads"`
	Stays   record.Nine `json:"stays"`
	Reaches record.Nine `json:"could_reach"`
}

// JSON writes how what reacts can be added for programs.
func JSON(w io.Writer, r *hazards.Review, all []pacing.Addition, o draft.Options) error {
	c := &r.Case
	out := Shape{Head: record.HeadOf(Format, c, o), Additions: []additionJSON{}}
	for i := range all {
		out.Additions = append(out.Additions, additionOf(&all[i]))
	}
	return record.Write(w, out)
}

// additionOf is an addition; of one about which something is missing nothing else is told.
func additionOf(a *pacing.Addition) additionJSON {
	out := additionJSON{Step: a.Step, Onto: a.Onto, Open: a.Open, Limit: record.Nine(math.NaN()), Over: minutesOf(a.Over),
		None: []doseJSON{}, Laws: []lawJSON{}, Ways: []wayJSON{}, Missing: record.MissingJSONs(a.Missing)}
	if a.Missing != nil {
		return out
	}
	of := string(a.Of)
	out.Of, out.Limit = &of, record.Nine(a.Limit)
	for _, d := range a.Whole {
		out.None = append(out.None, doseJSON{record.Nine(d.Share), record.Nine(d.Hottest)})
	}
	for i := range a.Laws {
		l := lawJSON{string(a.Laws[i].Law), []pointJSON{}}
		for _, p := range a.Laws[i].Points {
			l.Points = append(l.Points, pointJSON{record.Nine(p.Share), minutesOf(p.Time), record.Nine(p.Temperature),
				record.Nine(p.Waiting), record.Nine(p.Could)})
		}
		out.Laws = append(out.Laws, l)
	}
	for i := range a.Ways {
		y := &a.Ways[i]
		of := y.Of
		if of == 0 {
			of = math.NaN()
		}
		out.Ways = append(out.Ways, wayJSON{string(y.Kind), record.Nine(of), minutesOf(y.Takes), record.Nine(y.In),
			hotOf(y.Stays, a), hotOf(y.Could, a)})
	}
	if !a.Onto {
		out.Stop = stopOf(&a.Stop)
	}
	return out
}

func minutesOf(s float64) record.Nine { return record.Nine(s / 60) }

// hotOf says of what is not known nothing, and never that it is below.
func hotOf(h pacing.Hot, a *pacing.Addition) hotJSON {
	out := hotJSON{Best: record.Nine(h.Best), Most: record.Nine(h.Most)}
	below := h.Below(a.Limit)
	if !math.IsNaN(h.Best) && !math.IsNaN(h.Most) && !(a.Open && below) { // whether it boils there is not known
		out.Below = &below
	}
	return out
}

func stopOf(s *pacing.Stop) *stopJSON {
	out := stopJSON{Above: record.Nine(s.Above), Share: record.Nine(s.Share), NoTime: s.NoTime,
		Within: minutesOf(s.Within),
		Reads:  record.Nine(s.Reads), Bare: record.Nine(s.Bare), Gas: record.Nine(60 * litres * s.Gas),
		Pile: record.Nine(s.Pile), By: []afterJSON{}}
	if s.NoTime { // nothing can be seen in time
		none := record.Nine(math.NaN())
		out.Within, out.Reads, out.Bare, out.Gas, out.Pile = none, none, none, none, none
	}
	for _, y := range s.By {
		out.By = append(out.By, afterJSON{string(y.Law), y.Sees, minutesOf(y.At), record.Nine(y.Reads), record.Nine(y.Stays),
			record.Nine(y.Reaches)})
	}
	return &out
}
