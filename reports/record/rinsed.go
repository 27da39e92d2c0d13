package record

import "etchbound/hazards/rinsing"

type rinsedJSON struct {
	Step    int             `json:"step"`
	Target  Nine            `json:"target_ph"`
	Written Nine            `json:"written_ph"`
	Ceiling bool            `json:"above_what_air_allows"`
	Reach   reachJSON       `json:"reached"`
	Celsius Nine            `json:"temperature_degc"`
	Ways    []rinsedWayJSON `json:"ways"`
	Tubes   tubesJSON       `json:"tubes"`
}

type reachJSON struct {
	Free        [2]int `json:"cycles_without_carbon_dioxide"`
	Bicarbonate Nine   `json:"bicarbonate_mmol_per_l"`
	Salt        Nine   `json:"bicarbonate_g"`
}

type tubesJSON struct {
	Count   int     `json:"count"`
	Filled  Nine    `json:"filled_ml"`
	Holds   Nine    `json:"holds_ml"`
	Minutes [2]Nine `json:"spin_min"`
	Spins   int     `json:"spins"`
	Longest int     `json:"spins_at_most"`
}

type rinsedWayJSON struct {
	Begins        string       `json:"begins"`
	Needed        int          `json:"cycles"`
	Slowly        int          `json:"cycles_with_most_between_layers"`
	Left          Nine         `json:"fluoride_then_mg_per_l"`
	Clean         int          `json:"cycles_to_fluoride"`
	Limit         Nine         `json:"fluoride_limit_mg_per_l"`
	Litres        Nine         `json:"liquid_l"`
	CarbonDioxide Nine         `json:"carbon_dioxide_l"`
	Settled       Nine         `json:"cryolite_g"`
	Undissolved   Nine         `json:"lithium_fluoride_left_mmol"`
	Decants       []decantJSON `json:"decants"`
}

type decantJSON struct {
	Number       int     `json:"number"`
	Litres       Nine    `json:"volume_l"`
	PH           [2]Nine `json:"ph"`
	Fluoride     [2]Nine `json:"fluoride_mg_per_l"`
	Acid         Nine    `json:"acid_mmol_per_l"`
	Aluminium    Nine    `json:"aluminium_mmol_per_l"`
	Undissolved  Nine    `json:"lithium_fluoride_left_mmol"`
	HFEquivalent Nine    `json:"hf_equivalent_wt"`
	Free         Nine    `json:"free_fluoride_mg_per_l"`
	Collected    bool    `json:"fluoride_waste"`
}

func rinsedToJSON(w *rinsing.Wash) rinsedJSON {
	t := &w.Tubes
	tubes := tubesJSON{t.Count, Nine(t.Filled), Nine(t.Holds), [2]Nine{Nine(t.Minutes[0]), Nine(t.Minutes[1])}, t.Spins,
		t.Longest}
	reach := reachJSON{w.Reach.Free, Nine(w.Reach.Bicarbonate), Nine(w.Reach.Salt)}
	ways := each(w.Ways, func(x *rinsing.Way) rinsedWayJSON {
		return rinsedWayJSON{string(x.Begins), x.Needed, x.Slowly, Nine(x.Left), x.Clean, Nine(x.Limit),
			Nine(x.Litres), Nine(x.CarbonDioxide), Nine(x.Settled), Nine(x.Undissolved), each(x.Decants, decantToJSON)}
	})
	return rinsedJSON{w.Step, Nine(w.Target), Nine(w.Written), w.Ceiling, reach, Nine(w.Celsius), ways, tubes}
}

func decantToJSON(d *rinsing.Decant) decantJSON {
	return decantJSON{d.Number, Nine(d.Litres), [2]Nine{Nine(d.PH), Nine(d.SlowPH)},
		[2]Nine{Nine(d.Fluoride), Nine(d.SlowFluoride)}, Nine(d.Acid), Nine(d.Aluminium), Nine(d.Undissolved),
		Nine(d.Strength), Nine(d.Free), d.Collected}
}
