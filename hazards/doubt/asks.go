package doubt

import (
	"cmp"
	"strings"
)

// asks gives, by the beginning of an id, what is missing and how to get it. An id
// that says it itself has no text here.
var asks = []struct{ prefix, text, measure string }{
	{"time the powder stays",
		"how long the etch lasts, and so how fast it is",
		"write the hold with its time, or measure the conversion over time and state it under " +
			"measured: curve"},
	{"a layered phase that is etched",
		"how fast what reacts here does so",
		"gas volume over time of a weighed sample"},
	{"heat and mass balance", "a run of the vessel in time", "see the values it stands on"},
	{"td24:",
		"whether and from where on the liquor decomposes",
		"calorimetry of the liquor as it stands after the etch; state it under measured: td24"},
	{"etch_heat.",
		"heat of etching this phase",
		"reaction calorimetry of this powder in this acid at small scale; state it under " +
			"measured: etch_heat"},
	{"electrons.",
		"what the layer element of this phase gives in acid",
		"gas analysis at milligram scale by a specialist; state etch_hydrogen once it is known"},
	{"density.", "density of the powder", "pycnometer; state it under measured: density"},
	{"hydrogen.impurity.", "gas this impurity gives in acid", "gas volume of a weighed sample in dilute acid"},
	{"heat.impurity.", "heat this impurity gives", "reaction calorimetry of a weighed sample"},
	{"composition of the unstated impurity",
		"what impurities the powder holds",
		"the supplier's certificate or an analysis; state it under precursor: impurities"},
	{"enthalpies of", "enthalpies of the dissolved metal", "reaction calorimetry, or thermodynamic data"},
	{"boiling point of", "boiling point of this liquor", "measure it in a vented apparatus, or find vapour data"},
	{"heat capacity of", "", "solution calorimetry, or a handbook table"},
	{"heat of mixing", "", "solution calorimetry at small scale, or a handbook table"},
	{"heat of acid meeting base", "heat of acid meeting base", "write the step as neutralise, or measure it at small scale"},
	{"heat of acid meeting", "", "solution calorimetry at small scale, or the enthalpies of formation of what it leaves"},
	{"an agent that brings base",
		"what takes the acid of this step",
		"write an agent that brings base under what, or leave the step out and hand the liquor over " +
			"as acid waste"},
	{"base equivalents of", "", "a titration, or its data sheet"},
	{"carbon dioxide per mol of", "", "its data sheet, or the gas of a weighed sample in acid"},
	{"enthalpy.", "heat of formation of this", "a handbook table, or solution calorimetry of the step"},
	{"heat of", "heat of this way of etching", "reaction calorimetry at small scale"},
	{"gas of the wet product",
		"gas the stored product gives: it degrades in water, and how much gas that gives is not " +
			"assessed here",
		"open it in the hood at set intervals, or measure the gas"},
	{"gas of", "gas of this step", "gas volume and analysis at small scale"},
	{"fluoride complexes",
		"how much fluoride the dissolved metal binds",
		"fluoride electrode with and without decomplexing buffer"},
	{"complex.",
		"how much fluoride the dissolved metal binds",
		"fluoride electrode with and without decomplexing buffer"},
	{"heat_of_solution", "heat of making this solution", "solution calorimetry, or a handbook table"},
	{"where the",
		"what becomes of the light element when everything dissolves",
		"gas volume and analysis at small scale"},
	{"dissolution", "heat of dissolving this solid", "solution calorimetry, or a handbook table"},
	{"cp.", "heat capacity of this solid", "a handbook table"},
	{"cycles to pH",
		"cycles to the target: dilution alone cannot be shown to reach it",
		"carbon dioxide-free water, a lower target, or the measured pH of a decant"},
	{"liquid that stays",
		"liquid that stays behind",
		"weigh the vessel before and after it is emptied; state it as retained"},
	{"metal dissolved", "metal that a reaction which is not followed dissolves", "analysis of the liquor"},
	{"room for the liquor in",
		"how a vessel that does not hold its liquor takes heat from it",
		"a larger vessel, or less liquor"},
	{"site: stock of",
		"the largest bottle of what the route takes, which can break on its way",
		"state it in the site file as it stands there: stock, with its strength and its bottle"},
	{"site: hood flow", "air that the hood moves", "measure it, and state it in the site file: hood: flow"},
	{"site: room flow", "air that the room changes", "state it in the site file: room: flow"},
	{"site: room volume", "volume of the room", "state it in the site file: room: volume"},
	{"an etch of the changed route", "what the route does with this done wrong", "see what its own figures lack"},
	{"vapour pressure over",
		"what this liquor gives off once it is warm",
		"vapour data of this liquor, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of hf outside",
		"what acid fluoride this liquor gives off once it is warm",
		"vapour data of it, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of hcl outside",
		"what hydrogen chloride this liquor gives off once it is warm",
		"vapour data of it, or keep its highest temperature below the one that data is held for"},
	{"vapour pressure of",
		"vapour pressure of the liquor at this temperature",
		"a pressure vessel specialist, or vapour data of this liquor"},
	{"expansion of", "how far the liquor swells when it is hot", "density of the liquor at this temperature"},
	{"acid that this way",
		"acid that this way of etching takes",
		"analysis of the liquor before and after, at small scale"},
	{"weight.", "atomic weight", "the current table of standard atomic weights"},
}

func ask(id string) (text, measure string) {
	for _, a := range asks {
		if strings.HasPrefix(id, a.prefix) {
			return cmp.Or(a.text, id), a.measure
		}
	}
	switch {
	case strings.HasSuffix(id, ".temperature"):
		return "temperature set in this step", "write it in the route"
	case strings.HasSuffix(id, ".target_ph"):
		return "pH that this wash is to reach", "write it in the route as target_ph"
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
