package review

import (
	"io"
	"math"

	"etchbound/hazards"
	"etchbound/reports/draft"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling/keeping"
)

// KeepFormat names the shape of the JSON of how product can be kept.
const KeepFormat = "etchbound.keep/1"

// KeepShape is how product can be kept, as it is written for programs: days, pressures in
// kPa gauge, masses in g, gas in mL at 25 degC and 101.325 kPa.
type KeepShape struct {
	record.Head
	Ways  []keptJSON  `json:"ways"`
	Watch []watchJSON `json:"watch"`
}

type keptJSON struct {
	Place     string         `json:"place"`
	Condition string         `json:"condition"`
	Kept      string         `json:"kept"`
	Brings    string         `json:"brings"`
	Edits     []string       `json:"edits"`
	Not       *string        `json:"not"`
	Losses    []lossJSON     `json:"losses"`
	Earliest  record.Nine    `json:"earliest_to_a_fifth"`
	Shut      *bool          `json:"shut"`
	Pressure  record.Nine    `json:"pressure"`
	Most      record.Nine    `json:"highest_pressure"`
	Soon      record.Nine    `json:"time_to_10_kpa"`
	Soonest   record.Nine    `json:"earliest_to_10_kpa"`
	Verdict   *string        `json:"verdict"`
	Additives []additiveJSON `json:"additives"`
	Over      []momentJSON   `json:"over"`
}

type lossJSON struct {
	Lost record.Nine `json:"lost"`
	Days record.Nine `json:"days"`
}

type additiveJSON struct {
	Substance string      `json:"substance"`
	Mass      record.Nine `json:"mass"`
	Gas       record.Nine `json:"own_gas"`
	Waste     string      `json:"in_the_waste"`
}

type momentJSON struct {
	Days    record.Nine `json:"days"`
	Lost    record.Nine `json:"lost"`
	Other   record.Nine `json:"lost_by_the_other_mode"`
	Kept    record.Nine `json:"pressure_carbon_kept"`
	Methane record.Nine `json:"pressure_methane"`
}

type watchJSON struct {
	Sign    string `json:"sign"`
	Tells   string `json:"tells"`
	Discard string `json:"discard"`
}

// KeepJSON writes how the product of a route can be kept for programs.
func KeepJSON(w io.Writer, r *hazards.Review, ways []keeping.Way, o draft.Options) error {
	c := &r.Case
	out := KeepShape{Head: record.HeadOf(KeepFormat, c, o), Ways: []keptJSON{}, Watch: []watchJSON{}}
	for i := range ways {
		out.Ways = append(out.Ways, keptOf(&ways[i]))
	}
	for _, s := range signs() {
		out.Watch = append(out.Watch, watchJSON{s[0], s[1], s[2]})
	}
	return record.Write(w, out)
}

// keptOf is a way; of one that cannot be there is why, and nothing else is told.
func keptOf(w *keeping.Way) keptJSON {
	none := record.Nine(math.NaN())
	out := keptJSON{Place: w.Place, Condition: w.Condition, Kept: keptBy(w), Brings: keptHazard(w), Edits: saidOf(w),
		Losses: []lossJSON{}, Earliest: none, Pressure: none, Most: none, Soon: none, Soonest: none,
		Additives: []additiveJSON{}, Over: []momentJSON{}}
	if !w.Why.IsZero() {
		why := words.Say(w.Why)
		out.Not = &why
		return out
	}
	for i, d := range w.Days {
		out.Losses = append(out.Losses, lossJSON{record.Nine(keeping.Losses[i]), record.Nine(d.V)})
	}
	out.Earliest = record.Nine(w.Life.Danger().V)
	if w.Pressure != nil {
		shut := !w.Supposed
		out.Shut = &shut
		out.Pressure, out.Most = record.Nine(w.Pressure.Value.V), record.Nine(w.Pressure.Danger().V)
	}
	if w.Soon != nil {
		out.Soon, out.Soonest = record.Nine(w.Soon.Value.V), record.Nine(w.Soon.Danger().V)
	}
	if w.Judged {
		s := w.Verdict.String()
		out.Verdict = &s
	}
	for _, a := range w.Additives {
		out.Additives = append(out.Additives, additiveJSON{a.Of.Name, record.Nine(a.Mass.V), record.Nine(a.Own.V),
			keptWaste(a.Of.Slug)})
	}
	for _, p := range w.Over {
		out.Over = append(out.Over, momentJSON{record.Nine(p.Days), record.Nine(p.Lost[0]), record.Nine(p.Lost[1]),
			record.Nine(p.Pressure[0]), record.Nine(p.Pressure[1])})
	}
	return out
}
