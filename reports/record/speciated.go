package record

import (
	"cmp"

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
