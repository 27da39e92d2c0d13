package verdict

// byLimit is what a finding means, by the limit.
var byLimit = map[string]meaning{
	"no_rated_container": {"Gas from the first moment and nowhere for it to go: this container may not be shut " +
		"while it can still give gas.",
		needed{"gas.closed.pressure", zero, "kPa gauge",
			"leave it open to a vent until no more gas can come, or use a vessel with a stated " +
				"rating and relief."}},
	"fill_limit": {"Hot, the liquid grows into the room that is left; a container full of liquid bursts " +
		"whatever it is rated for.",
		needed{"vessel.filling", whereNearBegins, "%",
			"less liquid, or a larger container."}},
	"container_rating": {"The pressure comes to what the container or its relief is rated for, or close to it.",
		needed{"gas.closed.pressure", halfTheLimit, "kPa gauge",
			"less powder, more gas space or a container rated for more, with its relief led " +
				"where it harms nobody."}},
	"additive": {"Each may be within its own limit and the two are not, since both burn the same " +
		"airways.",
		needed{"air.additive", one, "1",
			"more extract at the source, a colder liquor or less of it open."}},
	"scrubber_hf": {"So much leaves that it is not to be let out unscrubbed.",
		needed{"air.emission", atLimit, "mg/min",
			"a scrubber, or less open surface."}},
	"scrubber_hcl": {"So much leaves that it is not to be let out unscrubbed.",
		needed{"air.emission", atLimit, "mg/min",
			"a scrubber, or less open surface."}},
	"scrubber_ammonia": {"So much leaves that it is not to be let out unscrubbed.",
		needed{"air.emission", atLimit, "mg/min",
			"a scrubber, or less open surface."}},
	"oxygen": {"The gas of the route takes the place of air in the room.",
		needed{"air.oxygen", atLimit, "vol%",
			"extract that is checked, and an oxygen alarm where gas can gather."}},
	"written_over": {"If everything reacts as it goes in, the stated cooling follows only a slower " +
		"addition. If the etch is slow, this time controls free metal and wetting alone, and " +
		"what waits afterwards is in the share that has not reacted.",
		needed{"heat.addition_time.required", highEnd, "min",
			"give the addition at least this long, or cool better."}},
	"site_hood": {"The hydrogen takes more air than the hood moves, even if all of it took part; at " +
		"the mouth of the vessel the gas is not diluted, whatever the hood moves.",
		needed{"gas.hydrogen.dilution_air", highEnd, "m3/h",
			"a slower addition or a smaller batch, or the gas led off from the vessel itself."}},
	"written_vent": {"Through the stated bore twice the largest flow takes more than 1 kPa, or the vessel " +
		"has none that is known.",
		needed{"gas.vent.bore_required", highEnd, "mm",
			"a vent nowhere narrower than this, that nothing can close."}},
	"room_left": {"Bubbles and foam take more room than there is over the liquor: it comes out with " +
		"the gas.",
		needed{"gas.free_volume.required", highEnd, "mL",
			"a larger vessel, a smaller batch or a slower addition."}},
	"two_phase": {"Gas leaves the liquor so fast that it takes liquid with it: plan the vent and the " +
		"room over the liquor for both together, which is not done here.",
		needed{"gas.superficial_velocity", whereNearBegins, "mm/s",
			"a slower addition or a wider vessel."}},
	"site_cooling": {"If everything reacts as it goes in, that is more heat than the shared cooling " +
		"takes, or close to it, whatever gets through the wall.",
		needed{"heat.cooling.required", highEnd, "W",
			"a slower addition, a smaller batch or more cooling, and nothing else on the same " +
				"cooling at the time."}},
	"written_ice": {"The ice melts away before it has taken up the heat of the etch.",
		needed{"heat.ice", highEnd, "kg",
			"have at least this much ice, and the bath cold before."}},
	"boiling_as_run": {"As it is cooled here, the liquor comes to its boiling point or close to it; boiling " +
		"drives acid vapour out and is no barrier.",
		needed{"heat.temperature_peak", belowLimit, "degC",
			"a slower addition, better cooling or less powder per volume of liquor."}},
	"boiling_if_it_fails": {"If this goes wrong the liquor comes to its boiling point or close to it; boiling " +
		"drives acid vapour out and is no barrier.",
		needed{"heat.temperature_peak", belowLimit, "degC",
			"less powder per volume of liquor, and a way to keep this from happening."}},
	"boiling_point": {"If cooling fails with nothing yet reacted, the liquor comes to its boiling point or " +
		"close to it; boiling drives acid vapour out and is no barrier.",
		needed{"heat.mtsr", belowLimit, "degC",
			"less powder per volume of liquor, or an addition slow enough that little " +
				"accumulates."}},
	"technical_limit": {"If cooling fails with nothing yet reacted, the liquor comes to what its vessel " +
		"stands, or close to it, before it boils.",
		needed{"heat.mtsr", belowLimit, "degC",
			"a vessel that stands more, stated in the route, or less powder per volume of liquor."}},
	"hood_limit": {"If cooling fails with nothing yet reacted, the liquor gets so warm that its vapour " +
		"takes more than the hood moves, or has to be scrubbed, before it boils.",
		needed{"heat.mtsr", belowLimit, "degC",
			"less powder per volume of liquor, less open surface, or a closed vessel whose gas " +
				"is led through a scrubber."}},
	"vessel_room": {"The vessel does not hold its quench water: plan a second vessel under it.",
		needed{"heat.quench_water", highEnd, "kg",
			"have this much cold water at hand, in a vessel with room for it and for the liquor."}},
	"mixing_to_boiling": {"The heat of mixing alone warms the liquor by this much.",
		needed{"heat.mix.rise", fifthOfLimit, "K",
			"the denser acid into the water, in portions, cooled."}},
	"severity_medium": {"The heat of the whole charge is of more than low severity.",
		needed{"heat.adiabatic_rise", atLimit, "K",
			"less powder per volume of liquor."}},
	"bulk_40_degc": {"Neutralised as it stands, the liquor gets too warm to hold its acid.",
		needed{"neutralise.dilution_water", dilution, "L",
			"dilute first with this much water, cold, and add the acid to the slurry in portions."}},
	"written_cycles": {"Dilution alone needs more cycles than the route writes.",
		needed{"wash.cycles", highEnd, "1",
			"plan for this many cycles, and measure the pH and the fluoride."}},
	"written_mass": {"The route writes less neutraliser than all acid and all fluoride take.",
		needed{"neutralise.mass", highEnd, "kg",
			"have at least this much, with the usual excess on top."}},
	"no_release": {"A toxic hydride can come off. No limit value for it is held here; a specialist has " +
		"to set one.",
		needed{"gas.hydride.bound", notKnown, "L",
			"a review by a specialist before any acid meets this powder."}},
	"specialist_50_wt": {"This strength needs a specialist review.",
		needed{"fluoride.hf_strength", atLimit, "wt%",
			"a weaker acid."}},
}

// byQuantity is what a finding means where its limit has no words of its own.
var byQuantity = map[string]meaning{
	"air.breathing_zone": {"A person near the source can breathe more than this limit allows for as long as it " +
		"lasts.",
		needed{"air.exhaust_required", exhaust, "m3/h",
			"extract of this much at the source, in a hood whose containment has been tested."}},
	"air.time_average": {"Each step may be short enough for itself, and all of them together are not.",
		needed{"air.time_average", atLimit, "ppm",
			"extract at the source, a colder liquor, less of it open, or steps apart from each " +
				"other and shared by several people."}},
	"air.plume": {"Out of doors people downwind can breathe more than the emergency level for as long " +
		"as it lasts.",
		needed{"air.plume", atLimit, "ppm",
			"smaller bottles, a scrubber, or a stack that is high enough by a calculation of the " +
				"site."}},
	"air.floor": {"Carbon dioxide on the floor can come to this level: nobody kneels or sits there, " +
		"and nobody goes into a pit.",
		needed{"air.floor", atLimit, "ppm",
			"extract near the floor, and a slower neutralisation."}},
	"air.hydrogen_share": {"The hydrogen of the route can make this air flammable.",
		needed{"air.hydrogen_share", atLimit, "vol%",
			"extract that is checked, and no closed cabinet for anything that can still give gas."}},
	"air.room_peak": {"Spilt on the floor outside a hood it can bring the room to this level: leave, " +
		"close, call. Reagent is for trained responders.",
		needed{"air.room_peak", atLimit, "ppm",
			"smaller containers, carried in a tray under a hood, and a room that can be left at " +
				"once."}},
}
