package verdict

// byLimit is what would be necessary to meet a limit, by its id; what the finding means
// stands beside it under the same id in the table of words.
var byLimit = map[string]needed{
	"no_rated_container":  {"gas.closed.pressure", zero, "kPa gauge"},
	"scrubber_spent":      {"air.scrubber.spent", whereNearBegins, "%"},
	"no_rated_store":      {"store.pressure", zero, "kPa gauge"},
	"brim":                {"vessel.content", whereNearBegins, "%"},
	"fill_limit":          {"vessel.filling", whereNearBegins, "%"},
	"container_rating":    {"gas.closed.pressure", halfTheLimit, "kPa gauge"},
	"additive":            {"air.additive", one, "1"},
	"scrubber_hf":         {"air.emission", atLimit, "mg/min"},
	"scrubber_hcl":        {"air.emission", atLimit, "mg/min"},
	"scrubber_ammonia":    {"air.emission", atLimit, "mg/min"},
	"oxygen":              {"air.oxygen", atLimit, "vol%"},
	"written_over":        {"heat.addition_time.required", highEnd, "min"},
	"site_hood":           {"gas.hydrogen.dilution_air", highEnd, "m3/h"},
	"written_vent":        {"gas.vent.bore_required", highEnd, "mm"},
	"room_left":           {"gas.free_volume.required", highEnd, "mL"},
	"two_phase":           {"gas.superficial_velocity", whereNearBegins, "mm/s"},
	"site_cooling":        {"heat.cooling.required", highEnd, "W"},
	"written_ice":         {"heat.ice", highEnd, "kg"},
	"boiling_as_run":      {"heat.temperature_peak", belowLimit, "degC"},
	"boiling_if_it_fails": {"heat.temperature_peak", belowLimit, "degC"},
	"boiling_point":       {"heat.mtsr", belowLimit, "degC"},
	"technical_limit":     {"heat.mtsr", belowLimit, "degC"},
	"hood_limit":          {"heat.mtsr", belowLimit, "degC"},
	"vessel_room":         {"heat.quench_water", highEnd, "kg"},
	"wrong_order":         {"order.against", zero, "1"},
	"mixing_to_boiling":   {"heat.mix.rise", fifthOfLimit, "K"},
	"flammable_quarter":   {"air.flammable_share", atLimit, "1"},
	"severity_medium":     {"heat.adiabatic_rise", atLimit, "K"},
	"boils_dry":           {"heat.boiled_off.share", whereNearBegins, "1"},
	"bulk_40_degc":        {"neutralise.dilution_water", dilution, "L"},
	"us_corrosive_acid":   {"neutralise.ph", atLimit, "1"},
	"us_corrosive_base":   {"neutralise.ph_most", atLimit, "1"},
	"us_sewer_acid":       {"neutralise.ph", atLimit, "1"},
	"written_cycles":      {"wash.cycles", highEnd, "1"},
	"written_mass":        {"neutralise.mass", highEnd, "kg"},
	"no_release":          {"gas.hydride.bound", notKnown, "L"},
	"specialist_50_wt":    {"fluoride.hf_strength", atLimit, "wt%"},
}

// byQuantity is the same by the quantity, where a limit has no words of its own.
var byQuantity = map[string]needed{
	"air.breathing_zone": {"air.exhaust_required", exhaust, "m3/h"},
	"air.time_average":   {"air.time_average", atLimit, "ppm"},
	"air.plume":          {"air.plume", atLimit, "ppm"},
	"air.floor":          {"air.floor", atLimit, "ppm"},
	"air.hydrogen_share": {"air.hydrogen_share", atLimit, "vol%"},
	"air.room_peak":      {"air.room_peak", atLimit, "ppm"},
}
