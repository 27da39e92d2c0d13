package record

import (
	"math"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/treating"
	"etchbound/reports/words"
)

type treatedJSON struct {
	Step     int           `json:"step"`
	Place    string        `json:"place"`
	Base     Nine          `json:"base_mol"`
	Fluoride Nine          `json:"fluoride_mol"`
	Held     Nine          `json:"held_mol"`
	Water    Nine          `json:"water_l"`
	Celsius  Nine          `json:"temperature_c"`
	Thinned  Nine          `json:"thinned"`
	Ways     []wayJSON     `json:"ways"`
	Written  []writtenJSON `json:"written"`
	CurveOf  string        `json:"curve_of"`
	Curve    [][3]Nine     `json:"curve"`
	Worst    []wayJSON     `json:"ways_at_dangerous_end"`
}

type wayJSON struct {
	Agents        []agentJSON    `json:"agents"`
	Heat          Nine           `json:"heat_kj"`
	Rise          Nine           `json:"rise_k"`
	WaterFirst    Nine           `json:"water_first_l"`
	CarbonDioxide Nine           `json:"carbon_dioxide_l"`
	Ammonia       Nine           `json:"ammonia_l"`
	SludgeDry     Nine           `json:"sludge_dry_g"`
	SludgeWet     [2]Nine        `json:"sludge_wet_l"`
	AcidLeft      Nine           `json:"acid_left_mol"`
	Binds         bool           `json:"binds_fluoride"`
	Borate        bool           `json:"leaves_fluoroborate"`
	PH            Nine           `json:"ph"`
	Left          Nine           `json:"fluoride_left_mg_per_l"`
	Ends          [2]Nine        `json:"fluoride_left_range"`
	Practical     [2]Nine        `json:"fluoride_left_in_practice"`
	StandIn       bool           `json:"organic_ion_stands_in"`
	Outside       bool           `json:"outside_of_equilibria"`
	False         []falseEndJSON `json:"false_end"`
	MinutesHeat   Nine           `json:"minutes_for_heat"`
	MinutesGas    Nine           `json:"minutes_for_gas"`
	Dosing        []dosingJSON   `json:"dosing"`
}

type dosingJSON struct {
	Minutes  Nine `json:"minutes"`
	Portions int  `json:"portions"`
	Peak     Nine `json:"peak_degc"`
	Gas      Nine `json:"carbon_dioxide_l_per_min"`
}

type agentJSON struct {
	Substance string `json:"substance"`
	Grams     Nine   `json:"needed_g"`
	Excess    Nine   `json:"in_practice_g"`
}

type falseEndJSON struct {
	PH    Nine `json:"ph"`
	Share Nine `json:"share_of_dose"`
	Left  Nine `json:"fluoride_left_mg_per_l"`
	Aged  Nine `json:"over_aged_hydroxide"`
}

type writtenJSON struct {
	Substances []string `json:"substances"`
	AcidLeft   Nine     `json:"acid_left_mol"`
	Strong     Nine     `json:"strong_acid_left_mol"`
	Short      Nine     `json:"fluoride_without_calcium"`
	PH         Nine     `json:"ph"`
	Left       Nine     `json:"fluoride_left_mg_per_l"`
	Outside    bool     `json:"outside_of_equilibria"`
	Thinned    Nine     `json:"thinned"`
}

func treatedToJSON(l *treating.Liquor) treatedJSON {
	out := treatedJSON{Step: l.Step, Place: l.Place, Base: Nine(l.Base), Fluoride: Nine(l.Fluoride), Held: Nine(l.Held),
		Water: Nine(l.Water), Celsius: Nine(l.Celsius), Thinned: Nine(l.Thinned), Ways: each(l.Ways, wayToJSON),
		Written: []writtenJSON{},
		Curve:   [][3]Nine{}, Worst: []wayJSON{}}
	if len(l.Curves) > 0 {
		out.CurveOf = l.Curves[0].Of.Name
		out.Curve = each(l.Curves[0].Points, func(p *treating.Point) [3]Nine {
			return [3]Nine{Nine(p.Share), Nine(p.PH), Nine(p.Left)}
		})
	}
	if l.Worst != nil {
		out.Worst = each(l.Worst.Ways, wayToJSON)
	}
	if w := l.Written; w != nil {
		out.Written = append(out.Written, writtenJSON{each(w.Subs, func(s **chemicals.Substance) string { return (*s).Name }),
			Nine(w.AcidLeft), Nine(w.Strong), Nine(w.Short), Nine(w.PH), Nine(w.Left), w.Outside, Nine(w.Thinned)})
	}
	return out
}

func wayToJSON(w *treating.Way) wayJSON {
	two := func(x [2]float64) [2]Nine { return [2]Nine{Nine(x[0]), Nine(x[1])} }
	out := wayJSON{Agents: each(w.Parts, func(p *treating.Part) agentJSON {
		return agentJSON{p.Sub.Name, Nine(p.Grams), Nine(p.Excess)}
	}), Heat: Nine(w.Heat), Rise: Nine(w.Rise), WaterFirst: Nine(w.WaterFirst), CarbonDioxide: Nine(w.CarbonDioxide),
		Ammonia: Nine(w.Ammonia), SludgeDry: Nine(w.SludgeDry), SludgeWet: two(w.SludgeWet), AcidLeft: Nine(w.AcidLeft),
		Binds: w.Binds, Borate: w.Borate, PH: Nine(w.PH), Left: Nine(w.Left), Ends: two(w.Ends),
		Practical: two(w.Practical), StandIn: w.As, Outside: w.Outside, False: []falseEndJSON{},
		MinutesHeat: Nine(w.MinutesHeat), MinutesGas: Nine(w.MinutesGas), Dosing: []dosingJSON{}}
	if d := w.Dosing; d != nil {
		out.Dosing = append(out.Dosing, dosingJSON{Nine(d.Minutes), d.Portions, Nine(d.Peak), Nine(d.Gas)})
	}
	if f := w.False; f != nil {
		out.False = append(out.False, falseEndJSON{Nine(f.PH), Nine(f.Share), Nine(f.Left), Nine(f.Aged)})
	}
	return out
}

// curvesJSON is what a liquor comes to dose by dose, at the centre and at the dangerous end.
func curvesJSON(l *treating.Liquor) []seriesJSON {
	out := curvesAt(l, figure.Case{})
	if l.Worst != nil {
		out = append(out, curvesAt(l.Worst, figure.Case{Failure: "dangerous_end"})...)
	}
	return out
}

func curvesAt(l *treating.Liquor, end figure.Case) []seriesJSON {
	place := figure.Waste
	switch {
	case l.Step > 0:
		place = figure.Step(l.Step)
	case l.Place != "":
		place = figure.At(l.Place)
	}
	var out []seriesJSON
	for i := range l.Curves {
		c := &l.Curves[i]
		events := []eventJSON{}
		if c.Seems == c.Seems {
			events = append(events, eventJSON{Nine(c.Seems), words.Of("treated.seems_done")})
		}
		for _, of := range []struct {
			quantity, unit string
			y              func(*treating.Point) float64
		}{{"neutralise.ph", "1", func(p *treating.Point) float64 { return p.PH }},
			{"neutralise.residual_fluoride", "mg/L", func(p *treating.Point) float64 { return p.Left }},
			{"heat.temperature_peak", "degC", func(p *treating.Point) float64 { return p.Temperature }},
			{"neutralise.carbon_dioxide", "L", func(p *treating.Point) float64 { return p.Gas }}} {
			id := figure.ID{Quantity: of.quantity, Place: place, Agent: c.Of.Slug, Case: end}
			s := seriesJSON{ID: id.String() + "~dose", X: axisJSON{"dose", "1"}, Unit: of.unit, Points: [][2]Nine{},
				Events: events}
			for j := range c.Points {
				if y := of.y(&c.Points[j]); !math.IsNaN(y) {
					s.Points = append(s.Points, [2]Nine{Nine(c.Points[j].Share), Nine(y)})
				}
			}
			out = append(out, s)
		}
	}
	return out
}
