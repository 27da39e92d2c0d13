package record

import (
	"etchbound/chemicals"
	"etchbound/hazards/treating"
)

type treatedJSON struct {
	Step     int           `json:"step"`
	Place    string        `json:"place"`
	Base     Nine          `json:"base_mol"`
	Fluoride Nine          `json:"fluoride_mol"`
	Held     Nine          `json:"held_mol"`
	Water    Nine          `json:"water_l"`
	Thinned  Nine          `json:"thinned"`
	Ways     []wayJSON     `json:"ways"`
	Written  []writtenJSON `json:"written"`
	CurveOf  string        `json:"curve_of"`
	Curve    [][3]Nine     `json:"curve"`
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
}

func treatedToJSON(l *treating.Liquor) treatedJSON {
	out := treatedJSON{Step: l.Step, Place: l.Place, Base: Nine(l.Base), Fluoride: Nine(l.Fluoride), Held: Nine(l.Held),
		Water: Nine(l.Water), Thinned: Nine(l.Thinned), Ways: each(l.Ways, wayToJSON), Written: []writtenJSON{},
		Curve: each(l.Curve, func(p *treating.Point) [3]Nine { return [3]Nine{Nine(p.Share), Nine(p.PH), Nine(p.Left)} })}
	if l.CurveOf != nil {
		out.CurveOf = l.CurveOf.Name
	}
	if w := l.Written; w != nil {
		out.Written = append(out.Written, writtenJSON{each(w.Subs, func(s **chemicals.Substance) string { return (*s).Name }),
			Nine(w.AcidLeft), Nine(w.Strong), Nine(w.Short), Nine(w.PH), Nine(w.Left), w.Outside})
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
		MinutesHeat: Nine(w.MinutesHeat), MinutesGas: Nine(w.MinutesGas)}
	if f := w.False; f != nil {
		out.False = append(out.False, falseEndJSON{Nine(f.PH), Nine(f.Share), Nine(f.Left), Nine(f.Aged)})
	}
	return out
}
