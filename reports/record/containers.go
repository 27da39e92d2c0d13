package record

import "etchbound/hazards/treating"

type containerJSON struct {
	Place   string       `json:"place"`
	Batches int          `json:"batches"`
	Moments []momentJSON `json:"moments"`
}

type momentJSON struct {
	Batches       int     `json:"batches"`
	Before        bool    `json:"before_agent"`
	Litres        Nine    `json:"liquid_l"`
	Fluoride      Nine    `json:"fluoride_g"`
	Solids        Nine    `json:"settled_g"`
	Share         Nine    `json:"settled_share"`
	PH            Nine    `json:"ph"`
	Left          [2]Nine `json:"fluoride_left_mg_per_l"`
	Outside       bool    `json:"outside_of_equilibria"`
	Heat          Nine    `json:"heat_kj"`
	Rise          Nine    `json:"rise_k"`
	CarbonDioxide [2]Nine `json:"carbon_dioxide_l"`
	Ammonia       Nine    `json:"ammonia_l"`
}

func containerToJSON(c *treating.Container) containerJSON {
	return containerJSON{c.Place, c.Batches, each(c.Moments, func(m *treating.Moment) momentJSON {
		two := func(x [2]float64) [2]Nine { return [2]Nine{Nine(x[0]), Nine(x[1])} }
		return momentJSON{m.Batches, m.Before, Nine(m.Litres), Nine(m.Fluoride), Nine(m.Solids), Nine(m.Share), Nine(m.PH),
			two(m.Left), m.Outside, Nine(m.Heat), Nine(m.Rise), two(m.CarbonDioxide), Nine(m.Ammonia)}
	})}
}
