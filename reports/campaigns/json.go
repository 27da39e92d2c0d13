package campaigns

import (
	"io"
	"math"

	"etchbound/chemicals/working"
	"etchbound/reports/draft"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling/campaign"
	"etchbound/scaling/ends"
)

// Format names this shape of the JSON.
const Format = "etchbound.campaign/1"

// Shape is a campaign as it is written for programs.
type Shape struct {
	record.Head
	State      string          `json:"state"`
	Planned    plannedJSON     `json:"planned"`
	AtMost     record.Nine     `json:"batches_a_week_at_most"`
	CountedBy  record.Nine     `json:"batches_a_week"`
	Fits       bool            `json:"fits"`
	NoTime     []int           `json:"steps_without_time"`
	Places     []placeJSON     `json:"occupied"`
	People     twoJSON         `json:"people_hours"`
	Flows      []flowJSON      `json:"flows"`
	Containers []containerJSON `json:"containers"`
	Stock      []stockJSON     `json:"stock"`
	Sizes      []sizeJSON      `json:"sizes"`
}

type plannedJSON struct {
	Batches int         `json:"batches"`
	PerWeek int         `json:"batches_a_week"`
	Hours   record.Nine `json:"people_hours_a_week"`
	Weeks   record.Nine `json:"weeks_a_year"`
	Kept    record.Nine `json:"weeks_kept"`
}

type twoJSON struct {
	Value record.Nine `json:"value"`
	Most  record.Nine `json:"dangerous"`
}

type placeJSON struct {
	Place string      `json:"place"`
	Hours record.Nine `json:"hours"`
	Least bool        `json:"at_least"`
}

type flowJSON struct {
	What    string               `json:"what"`
	Name    string               `json:"name"`
	Unit    string               `json:"unit"`
	Batch   twoJSON              `json:"batch"`
	Week    twoJSON              `json:"week"`
	Year    twoJSON              `json:"year"`
	All     twoJSON              `json:"in_all"`
	Missing []record.MissingJSON `json:"missing"`
}

type containerJSON struct {
	Place   string               `json:"place"`
	Litres  twoJSON              `json:"litres_a_batch"`
	Holds   record.Nine          `json:"litres_filled_to"`
	Week    twoJSON              `json:"filled_a_week"`
	Year    twoJSON              `json:"filled_a_year"`
	Missing []record.MissingJSON `json:"missing"`
}

type stockJSON struct {
	Name      string      `json:"name"`
	CAS       string      `json:"cas"`
	Batch     twoJSON     `json:"kg_a_batch"`
	Kept      twoJSON     `json:"kg_kept"`
	Share     twoJSON     `json:"share"`
	Threshold string      `json:"threshold"`
	Limit     record.Nine `json:"threshold_kg"`
}

type sizeJSON struct {
	Batch     record.Nine `json:"batch_g"`
	Batches   record.Nine `json:"batches"`
	Hours     twoJSON     `json:"people_hours"`
	Handlings record.Nine `json:"handlings"`
	HF        twoJSON     `json:"hf_g"`
	Hydrogen  twoJSON     `json:"hydrogen_l_min"`
	Breathed  twoJSON     `json:"breathed_over_limit"`
	Exceed    int         `json:"exceeds"`
	Unknown   int         `json:"unknown"`
}

func two(x ends.Two) twoJSON { return twoJSON{record.Nine(x.Best), record.Nine(x.Most)} }

// JSON writes a campaign for programs.
func JSON(w io.Writer, c *campaign.Campaign, o draft.Options) error {
	r := c.Review
	year := c.Week * c.Weeks
	out := Shape{Head: record.HeadOf(Format, &r.Case, o), State: words.Of("campaign.state"),
		Planned: plannedJSON{c.Batches, c.PerWeek, record.Nine(c.Hours), record.Nine(c.Weeks), record.Nine(c.Kept)},
		AtMost:  record.Nine(c.AtMost), CountedBy: record.Nine(c.Week), Fits: c.Fits, NoTime: append([]int{}, c.Unknown...),
		Places: []placeJSON{}, People: two(c.People), Flows: []flowJSON{}, Containers: []containerJSON{},
		Stock: []stockJSON{}, Sizes: []sizeJSON{}}
	for _, p := range c.Occupied {
		out.Places = append(out.Places, placeJSON{p.Place, record.Nine(p.Hours), p.Unknown})
	}
	for _, f := range c.Flows {
		out.Flows = append(out.Flows, flowJSON{f.Key, f.Name, f.Unit, two(f.Batch), two(by(f.Batch, c.Week)),
			two(by(f.Batch, year)), two(by(f.Batch, float64(c.Batches))), missing(f.Missing)})
	}
	for i := range c.Filled {
		f := &c.Filled[i]
		out.Containers = append(out.Containers, containerJSON{f.Place, two(f.Litres), record.Nine(f.Holds),
			two(f.Containers(c.Week)), two(f.Containers(year)), missing(f.Missing)})
	}
	for i := range c.Needed {
		out.Stock = append(out.Stock, stockOf(&c.Needed[i]))
	}
	for i := range c.Sizes {
		x := &c.Sizes[i]
		out.Sizes = append(out.Sizes, sizeJSON{record.Nine(x.Batch.In("g")), record.Nine(x.Batches), two(x.Hours),
			record.Nine(x.Handlings), two(x.HF), two(x.Hydrogen), two(x.Breathed), x.Exceed, x.Unknown})
	}
	return record.Write(w, out)
}

func stockOf(x *campaign.Needed) stockJSON {
	out := stockJSON{Name: x.Name, CAS: x.CAS, Batch: two(x.Batch), Kept: two(x.Kept),
		Share: two(x.Share), Limit: record.Nine(math.NaN())}
	if t := x.Threshold; t != nil {
		out.Threshold, out.Limit = t.ID, record.Nine(t.Limit)
	}
	return out
}

func missing(all []working.Missing) []record.MissingJSON {
	return append([]record.MissingJSON{}, record.MissingJSONs(all)...)
}
