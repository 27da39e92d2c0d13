package hazards

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// assumptions lists every datum the run used that nobody has verified, with
// the figures it moves by more than one part in a hundred, most first.
func (r *ranger) assumptions() []Assumption {
	var out []Assumption
	for v := range r.vars {
		d := r.vars[v].rows[0]
		if d.Status != "memory" && d.Status != "assumed" {
			continue
		}
		a := Assumption{ID: d.ID, Text: d.Note, Value: d.Value, Unit: d.Unit}
		if a.Text == "" {
			a.Text = "value " + d.Status
		}
		for i := range r.base {
			lo, hi := r.swings[v*len(ends)][i], r.swings[v*len(ends)+3][i]
			if x := r.base[i].Value.V; math.IsNaN(lo) || math.IsNaN(hi) || math.Abs(hi-lo) <= 0.01*max(math.Abs(x), math.Abs(hi), math.Abs(lo)) {
				continue
			}
			a.Moves = append(a.Moves, Move{Figure: r.base[i].ID(), From: lo, To: hi})
		}
		slices.SortStableFunc(a.Moves, func(x, y Move) int { return -cmp.Compare(share(x), share(y)) })
		out = append(out, a)
	}
	return out
}

func share(m Move) float64 {
	return math.Abs(m.To-m.From) / max(math.Abs(m.To), math.Abs(m.From))
}

// unknown lists what is missing: first what findings wait for, then what any
// figure lacks, then what the writer left open.
func unknown(r *Review) []UnknownItem {
	var out []UnknownItem
	at := map[string]int{}
	add := func(id, fig string) {
		i, ok := at[id]
		if !ok {
			i = len(out)
			at[id] = i
			text, measure := ask(id)
			out = append(out, UnknownItem{ID: id, Text: text, Measure: measure})
		}
		if fig != "" && !slices.Contains(out[i].Figures, fig) {
			out[i].Figures = append(out[i].Figures, fig)
		}
	}
	for i := range r.Figures {
		f := &r.Figures[i]
		if f.Of != "" {
			continue
		}
		for _, n := range []interface{ Missing() []string }{f.Value, f.Low, f.High} {
			for _, id := range n.Missing() {
				if f.Quantity == "heat.criticality_class" || f.Quantity == "heat.class_margin" {
					add(id, "") // a class is no verdict: it goes last
					continue
				}
				add(id, f.ID())
			}
		}
	}
	leftOpen(r.Case.Route, func(id, text, measure string) {
		out = append(out, UnknownItem{ID: id, Text: text, Measure: measure})
	})
	slices.SortStableFunc(out, func(a, b UnknownItem) int { return len(b.Figures) - len(a.Figures) })
	return out
}

// asks gives, by the beginning of an id, what is missing and how to get it.
var asks = []struct{ prefix, text, measure string }{
	{"time the powder stays", "how long the etch lasts, and so how fast it is", "write the hold with its time, or measure the conversion over time and state it under measured: curve"},
	{"a layered phase that is etched", "how fast what reacts here does so", "gas volume over time of a weighed sample"},
	{"heat and mass balance", "a run of the vessel in time", "see the values it stands on"},
	{"td24:", "whether and from where on the liquor decomposes", "calorimetry of the liquor as it stands after the etch; state it under measured: td24"},
	{"etch_heat.", "heat of etching this phase", "reaction calorimetry of this powder in this acid at small scale; state it under measured: etch_heat"},
	{"electrons.", "what the layer element of this phase gives in acid", "gas analysis at milligram scale by a specialist; state etch_hydrogen once it is known"},
	{"density.", "density of the powder", "pycnometer; state it under measured: density"},
	{"hydrogen.impurity.", "gas this impurity gives in acid", "gas volume of a weighed sample in dilute acid"},
	{"heat.impurity.", "heat this impurity gives", "reaction calorimetry of a weighed sample"},
	{"composition of the unstated impurity", "what impurities the powder holds", "the supplier's certificate or an analysis; state it under precursor: impurities"},
	{"enthalpies of", "enthalpies of the dissolved metal", "reaction calorimetry, or thermodynamic data"},
	{"boiling point of", "boiling point of this liquor", "measure it in a vented apparatus, or find vapour data"},
	{"heat of", "heat of this way of etching", "reaction calorimetry at small scale"},
	{"gas of the wet product", "gas the stored product gives: it degrades in water, and how much gas that gives is not assessed here", "open it in the hood at set intervals, or measure the gas"},
	{"gas of", "gas of this step", "gas volume and analysis at small scale"},
	{"fluoride complexes", "how much fluoride the dissolved metal binds", "fluoride electrode with and without decomplexing buffer"},
	{"complex.", "how much fluoride the dissolved metal binds", "fluoride electrode with and without decomplexing buffer"},
	{"heat_of_solution", "heat of making this solution", "solution calorimetry, or a handbook table"},
	{"where the", "what becomes of the light element when everything dissolves", "gas volume and analysis at small scale"},
	{"dissolution", "heat of dissolving this solid", "solution calorimetry, or a handbook table"},
	{"cp.", "heat capacity of this solid", "a handbook table"},
	{"cycles to pH", "cycles to the target: dilution alone cannot be shown to reach it", "carbon dioxide-free water, a lower target, or the measured pH of a decant"},
	{"liquid that stays", "liquid that stays behind", "weigh the vessel before and after it is emptied; state it as retained"},
	{"metal dissolved", "metal that a reaction which is not followed dissolves", "analysis of the liquor"},
	{"room for the liquor in", "how a vessel that does not hold its liquor takes heat from it", "a larger vessel, or less liquor"},
	{"site: stock of", "the largest bottle of what the route takes, which can break on its way", "state it in the site file as it stands there: stock, with its strength and its bottle"},
	{"site: hood flow", "air that the hood moves", "measure it, and state it in the site file: hood: flow"},
	{"site: room flow", "air that the room changes", "state it in the site file: room: flow"},
	{"site: room volume", "volume of the room", "state it in the site file: room: volume"},
	{"an etch of the changed route", "what the route does with this done wrong", "see what its own figures lack"},
	{"vapour pressure over", "what this liquor gives off once it is warm", "vapour data of this liquor, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of hf outside", "what acid fluoride this liquor gives off once it is warm", "vapour data of it, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of hcl outside", "what hydrogen chloride this liquor gives off once it is warm", "vapour data of it, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of", "vapour pressure of the liquor at this temperature", "a pressure vessel specialist, or vapour data of this liquor"},
	{"expansion of", "how far the liquor swells when it is hot", "density of the liquor at this temperature"},
	{"acid that this way", "acid that this way of etching takes", "analysis of the liquor before and after, at small scale"},
	{"weight.", "atomic weight", "the current table of standard atomic weights"},
}

func ask(id string) (text, measure string) {
	for _, a := range asks {
		if strings.HasPrefix(id, a.prefix) {
			return a.text, a.measure
		}
	}
	switch {
	case strings.HasSuffix(id, ".temperature"):
		return "temperature set in this step", "write it in the route"
	case strings.HasSuffix(id, ".gas_flow"):
		return "flow of the gas that is named in this step", "read it, and write it in the route as gas_flow"
	case strings.HasSuffix(id, ".vent"):
		return "narrowest bore that the gas leaves this vessel through", "measure it, and write it in the route as vent"
	case strings.HasPrefix(id, "site: "):
		return "what the room around the hood is like", "state it in a site file"
	case strings.Contains(id, ".capacity"):
		return "capacity of this container, or room in it", "write it in the route"
	case strings.HasPrefix(id, "what "):
		return "one end of a range", "see the data marked assumed"
	}
	return "a value this review needs", "measure or state it"
}

// leftOpen lists what the writer did not state and the review had to assume.
func leftOpen(r *route.Route, add func(id, text, measure string)) {
	if p := r.Precursor; p != nil && !p.Stated {
		add("precursor.impurities", "impurities of the powder are not stated: up to 5 wt% free metal on top is counted at the dangerous end", "the supplier's certificate or an analysis; none has to be written with its source")
	}
	for i := range r.Places {
		p := &r.Places[i]
		if !p.ClosureStated {
			add(p.At+".closure", fmt.Sprintf("closure of %s is not stated: it counts as closed", p.Key), "state open, vented or closed")
		}
		if p.Cooling == nil && etchesIn(r, p.Key) {
			add(p.At+".cooling", fmt.Sprintf("what cools %s is not stated: the room alone is counted", p.Key), "state it under cooling, and kind: none where nothing does")
		}
		if p.Cooling != nil && p.Cooling.Kind == "ice_bath" && !p.Cooling.Ice.Set {
			add(p.At+".cooling.ice", fmt.Sprintf("how much ice stands around %s is not stated", p.Key), "weigh it, and state it under cooling: ice")
		}
	}
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Attended == nil && s.Time.Set && s.Time.In("h") > 1 {
			add(s.At+".attended", fmt.Sprintf("step %d lasts %s and does not say whether it is attended", s.Number, s.Time.Text), "state attended: true or false")
		}
	}
}

// etchesIn reports whether powder is put into a place.
func etchesIn(r *route.Route, key string) bool {
	for i := range r.Steps {
		if s := &r.Steps[i]; s.In == key && slices.ContainsFunc(s.What, func(m route.Material) bool { return m.Precursor }) {
			return true
		}
	}
	return false
}

// holds are the points at which work stops until something is so.
func holds(r *Review) []Hold {
	var out []Hold
	add := func(id, text string) {
		for _, h := range out {
			if h.Text == text {
				return
			}
		}
		out = append(out, Hold{ID: id, Text: text})
	}
	for _, f := range r.Walk.Facts {
		if text, ok := holdText[f.ID]; ok {
			add(f.ID, text+" "+f.Text)
		}
	}
	for i := range r.Case.Route.Steps {
		if s := &r.Case.Route.Steps[i]; s.Do == "heat_closed" {
			add("heated_closed", fmt.Sprintf("Do not open %s after step %d before it is at the temperature of the room: then let its gas out slowly through a vent or scrubber, since gas does not condense.", s.In, s.Number))
		}
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict.Rank() < figure.Exceeds.Rank() {
			continue
		}
		if text, ok := holdFinding[f.Limit.ID]; ok && !supposed(f.Figure) {
			add(f.Limit.ID, text)
		}
	}
	return out
}

// supposed reports whether a figure is of an agent the route does not use.
func supposed(id string) bool { return strings.Contains(id, "@waste/") }

var holdText = map[string]string{
	"hydride":          "Do not let acid meet this powder before a specialist review; no limit value for the gas is held here.",
	"hydride_impurity": "Do not let acid meet this powder before a specialist review; no limit value for the gas is held here.",
	"unlisted":         "Do not let acid meet this powder before a specialist review.",
	"toxic_metal":      "Ask the waste office before the first liquor is made.",
	"oxidant":          "Do not start before the gas and heat of this mixture have been measured at small scale.",
	"ammonia":          "Keep that vessel open in the hood in that step.",
	"carbon_dioxide":   "Keep that vessel open in that step and for hours afterwards.",
	"second_gas":       "Keep that vessel open to a vent in that step.",
	"melt":             "Do not start before what the melt gives off is known.",
	"stored":           "Do not store it shut: leave gas a way out, or open it in the hood at set intervals.",
	"overfull":         "Do not fill it so: take a larger container or a smaller batch.",
	"attacked":         "Do not start in this material.",
	"hf_strong":        "A specialist review is needed before anything else.",
	"slab":             "Do not start before the gas has been measured at small scale.",
}

var holdFinding = map[string]string{
	"no_rated_container": "Do not shut any container that can still give gas: open to a vent until it can give no more.",
	"boiling_point":      "Do not add the powder until cooling, the addition and what is done if cooling fails have been agreed: the whole charge could bring the liquor to boiling.",
	"bulk_40_degc":       "Do not neutralise undiluted: dilution water first, cold, then acid into slurry in portions.",
	"written_mass":       "Do not start neutralising until enough agent for all acid and all fluoride is at hand.",
	"mixing_to_boiling":  "Do not mix it so: the heat of mixing alone could bring it to boiling. Dense acid into water, cold and slowly, never water into acid.",
}
