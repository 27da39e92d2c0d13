package scrubbed

import (
	"io"
	"math"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/record"
	"etchbound/scaling/ends"
	"etchbound/scaling/scrubbing"
)

// Format names the shape of the JSON of what the gas of a route needs on its way out.
const Format = "etchbound.offgas/1"

// Shape is what the gas of a route needs on its way out, as it is written for programs.
type Shape struct {
	record.Head
	Places []placeJSON `json:"places"`
	Duct   ductJSON    `json:"duct"`
}

type twoJSON struct {
	Value record.Nine `json:"value"`
	Most  record.Nine `json:"dangerous"`
}

type placeJSON struct {
	Place     string               `json:"place"`
	Closure   string               `json:"closure"`
	Steps     []int                `json:"steps"`
	Hydrogen  twoJSON              `json:"hydrogen"`
	Failing   twoJSON              `json:"hydrogen_if_it_fails"`
	Tenfold   twoJSON              `json:"hydrogen_of_ten_times_the_powder"`
	Purge     twoJSON              `json:"led_through"`
	Gas       twoJSON              `json:"gas"`
	Acids     []acidJSON           `json:"acids"`
	Dissolves twoJSON              `json:"dissolves"`
	Mist      bool                 `json:"mist"`
	Scrubber  scrubberJSON         `json:"scrubber"`
	Line      lineJSON             `json:"line"`
	Back      backJSON             `json:"drawn_back"`
	Condenser condenserJSON        `json:"condenser"`
	Missing   []record.MissingJSON `json:"missing"`
}

type acidJSON struct {
	Agent string      `json:"agent"`
	Flow  twoJSON     `json:"flow"`
	Share twoJSON     `json:"share"`
	To    record.Nine `json:"brought_to"`
	Units twoJSON     `json:"units_of_transfer"`
}

type scrubberJSON struct {
	Named  string      `json:"place"`
	Taken  twoJSON     `json:"base_taken"`
	Boiled twoJSON     `json:"base_if_it_boils"`
	Needed twoJSON     `json:"base_needed"`
	Has    record.Nine `json:"base_there"`
	Litres twoJSON     `json:"liquor"`
	Rate   twoJSON     `json:"base_an_hour"`
	Half   twoJSON     `json:"half_spent_after"`
	Warms  twoJSON     `json:"warms"`
	Past   twoJSON     `json:"gas_past_it"`
	Column columnJSON  `json:"column"`
}

type columnJSON struct {
	Agent    string      `json:"agent"`
	Packing  record.Nine `json:"packing"`
	Diameter record.Nine `json:"diameter"`
	Liquor   record.Nine `json:"liquor_round_it"`
	Unit     record.Nine `json:"unit_of_transfer"`
	Units    record.Nine `json:"units_of_transfer"`
	Height   twoJSON     `json:"height"`
	Slow     string      `json:"slow_agent"`
	SlowTo   record.Nine `json:"slow_brought_to"`
	SlowHigh twoJSON     `json:"slow_height"`
}

type lineJSON struct {
	Bore     twoJSON     `json:"bore_for_gas"`
	Stated   record.Nine `json:"bore_stated"`
	Velocity twoJSON     `json:"velocity"`
	Room     twoJSON     `json:"swell_and_foam"`
	Space    record.Nine `json:"space"`
	TwoPhase string      `json:"liquor_leaves"`
	Liquor   twoJSON     `json:"bore_for_liquor"`
	Failing  twoJSON     `json:"bore_for_liquor_if_it_fails"`
	Tenfold  twoJSON     `json:"bore_for_liquor_of_ten_times_the_powder"`
}

type backJSON struct {
	Cools    twoJSON `json:"cools"`
	Dissolve twoJSON `json:"dissolves"`
	Whole    twoJSON `json:"at_most"`
	Trap     twoJSON `json:"trap"`
	Sweep    twoJSON `json:"inert_gas"`
}

type condenserJSON struct {
	Steam twoJSON     `json:"steam"`
	Duty  twoJSON     `json:"duty"`
	Area  twoJSON     `json:"area"`
	Cold  record.Nine `json:"coolant"`
}

type ductJSON struct {
	Air      record.Nine          `json:"air"`
	Bore     record.Nine          `json:"bore"`
	Mouth    record.Nine          `json:"mouth"`
	Hydrogen twoJSON              `json:"hydrogen_share"`
	Plumes   []plumeJSON          `json:"plumes"`
	Missing  []record.MissingJSON `json:"missing"`
}

type plumeJSON struct {
	Agent string      `json:"agent"`
	Now   twoJSON     `json:"now"`
	Limit record.Nine `json:"limit"`
	Stack record.Nine `json:"stack"`
}

func two(x ends.Two) twoJSON { return twoJSON{record.Nine(x.Best), record.Nine(x.Most)} }

// closures are the words of the key closure of a route.
var closures = map[route.Closure]string{route.Closed: "closed", route.Vented: "vented", route.Open: "open"}

// JSON writes what the gas of a route needs on its way out for programs.
func JSON(w io.Writer, r *hazards.Review, all []scrubbing.Train, at *scrubbing.Outdoors, o draft.Options) error {
	c := &r.Case
	out := Shape{Head: record.HeadOf(Format, c, o), Places: []placeJSON{},
		Duct: ductJSON{Air: record.Nine(at.Air), Bore: record.Nine(at.Bore), Mouth: record.Nine(at.Mouth),
			Hydrogen: two(at.Hydrogen), Plumes: []plumeJSON{}, Missing: record.MissingJSONs(at.Missing)}}
	for i := range all {
		out.Places = append(out.Places, placeOf(&all[i]))
	}
	for i := range at.Plumes {
		p := &at.Plumes[i]
		out.Duct.Plumes = append(out.Duct.Plumes, plumeJSON{p.Agent, two(p.Now), record.Nine(p.Limit),
			record.Nine(p.Stack)})
	}
	return record.Write(w, out)
}

func placeOf(t *scrubbing.Train) placeJSON {
	l, b := &t.Line, &t.Back
	out := placeJSON{Place: t.Place.Key, Closure: closures[t.Place.Closure], Steps: append([]int{}, t.Steps...),
		Hydrogen: two(t.Hydrogen), Failing: two(t.Failing), Tenfold: two(t.Tenfold), Purge: two(t.Purge), Gas: two(t.Gas),
		Acids: []acidJSON{}, Dissolves: two(t.Dissolves), Mist: t.Mist, Scrubber: scrubberOf(&t.Scrubber),
		Line: lineJSON{Bore: two(l.Bore), Stated: record.Nine(l.Stated), Velocity: two(l.Velocity), Room: two(l.Room),
			Space: record.Nine(l.Space), TwoPhase: string(l.TwoPhase()), Liquor: two(l.Liquor), Failing: two(l.Failing),
			Tenfold: two(l.Tenfold)},
		Back: backJSON{two(b.Cools), two(b.Dissolve), two(b.Whole), two(b.Trap), two(b.Sweep)},
		Condenser: condenserJSON{two(t.Condenser.Steam), two(t.Condenser.Duty), two(t.Condenser.Area),
			record.Nine(t.Condenser.Cold)},
		Missing: record.MissingJSONs(t.Missing)}
	for i := range t.Acids {
		a := &t.Acids[i]
		out.Acids = append(out.Acids, acidJSON{a.Slug, two(a.Flow), two(a.Share), record.Nine(a.To), two(a.Units)})
	}
	return out
}

func scrubberOf(x *scrubbing.Scrubber) scrubberJSON {
	c, to, high := &x.Column, x.To, x.SlowHeight
	if x.Slow == "" { // none is set free, and nothing is told of it
		to, high = math.NaN(), ends.Unknown()
	}
	return scrubberJSON{Named: x.Named, Taken: two(x.Taken), Boiled: two(x.Boiled), Needed: two(x.Needed),
		Has: record.Nine(x.Has), Litres: two(x.Litres), Rate: two(x.Rate), Half: two(x.Half), Warms: two(x.Warms),
		Past: two(x.Past), Column: columnJSON{Agent: x.Holds, Packing: record.Nine(1000 * c.Packing.Size),
			Diameter: record.Nine(1000 * c.Diameter), Liquor: record.Nine(60 * c.Liquor), Unit: record.Nine(c.Unit),
			Units: record.Nine(c.Units), Height: two(ends.Pair(c.Height, c.Most)), Slow: x.Slow,
			SlowTo: record.Nine(to), SlowHigh: two(high)}}
}
