package record

import (
	"cmp"

	"etchbound/chemicals/aqueous"
	"etchbound/hazards"
	"etchbound/hazards/speciation"
)

type speciatedJSON struct {
	Place        string  `json:"place"`
	Celsius      Nine    `json:"temperature_c"`
	PH           Nine    `json:"ph"`
	Dissolved    Nine    `json:"dissolved_hf_wt"`
	Free         Nine    `json:"free_hf_wt"`
	PerAluminium Nine    `json:"fluoride_per_aluminium"`
	Over         [2]Nine `json:"hf_over_it_ppm"`
	Why          string  `json:"told"`
}

func speciatedToJSON(l *speciation.Liquor) speciatedJSON {
	return speciatedJSON{l.Place.String(), Nine(l.Celsius), Nine(l.PH), Nine(l.Dissolved), Nine(l.Free),
		Nine(l.PerAluminium), [2]Nine{Nine(l.Over), Nine(l.Molecules)},
		cmp.Or(string(l.Why), "told")}
}

// spreadJSON is a solution with what sets of constants make of it; null where it is not told.
type spreadJSON struct {
	Totals        []amountJSON `json:"totals"`
	Solid         string       `json:"solid"`
	PH            [3]Nine      `json:"ph"`
	OtherPH       [2]Nine      `json:"ph_of_others"`
	Fluoride      [3]Nine      `json:"fluoride_mg_per_kg"`
	OtherFluoride [2]Nine      `json:"fluoride_of_others"`
	Sets          int          `json:"other_sets"`
	Outside       []string     `json:"outside"`
}

type amountJSON struct {
	Of  string `json:"of"`
	Mol Nine   `json:"mol_per_kg"`
}

// spreads are told where equilibria tell anything of a route.
func spreads(r *hazards.Review) []spreadJSON {
	if len(r.Speciated)+len(r.Treated)+len(r.Rinsed) == 0 {
		return []spreadJSON{}
	}
	return each(aqueous.Spreads(), func(s *aqueous.Spread) spreadJSON {
		totals := each(s.Totals, func(a *aqueous.Amount) amountJSON { return amountJSON{a.Of, Nine(a.Mol)} })
		return spreadJSON{totals, s.Solid, bandToJSON(&s.PH), two(s.OtherPH), bandToJSON(&s.Fluoride), two(s.OtherFluoride),
			s.Sets, list(s.PH.Outside)}
	})
}

func bandToJSON(b *aqueous.Band) [3]Nine { return [3]Nine{Nine(b.Low), Nine(b.Central), Nine(b.High)} }

func two(v [2]float64) [2]Nine { return [2]Nine{Nine(v[0]), Nine(v[1])} }
