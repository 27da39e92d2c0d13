// Package thermal knows heat: what the etch and the mixing release, how warm
// the liquor gets if all of it stays there, and where it boils. It must not
// move material, and it must not know gas or fluoride limits.
//
// Heat is positive when released, in kJ. A mixture has the mass-weighted heat capacity
// of its solutions as charged plus its solids, at the low end of each row, which is
// never swung: too small a capacity is on the dangerous side of a rise. A solid whose
// capacity is not held adds nothing and makes the line a bound.
//
// # The etch
//
// heat.etch.total is by Hess's law from one family of data, counted from HF(aq), with
// what the impurities give: Q = n q, Ti3AlC2 760 (685 to 835) kJ/mol. It belongs to the
// step in which powder first meets etchant. heat.etch.per_gram is that over the powder.
// heat.etch.dissolution_bound is the greatest over the listed product states with carbon
// kept, no more than the acid offered allows.
//
// # If all of it stays in the liquor
//
//	heat.adiabatic_rise = Q/C
//	heat.mtsr           = T + Q/C
//
// T is the highest temperature set in the step. Nothing has reacted when cooling fails;
// both stand at the step of the etch and at every later step with that liquor. By a law,
// heat.mtsr@n:law is the greatest of T + (heat that waits)/C over the step.
//
// # Mixing
//
// heat.mix.total is dissolving the salt, diluting and mixing of the step that mixes; it
// is never subtracted from the etch. heat.mix.rise is that over C from where the step
// begins, no colder than freezing.
//
// # Following an addition
//
// heat.peak_power.during_addition is Q/t by the instantaneous law, else the greatest
// output of the run while powder goes in; after_addition is from then on.
// heat.cooling.required is the power that follows the stated addition. With UA of the
// cooling, T_c of the coolant and T_stop at which the addition is stopped,
//
//	heat.addition_time.required = Q/(UA (T_stop - T_c))
//	T_end = T_c + P/UA + (T - T_c - P/UA) exp(-UA t/C)
//
// In a jacket UA is UA J/(UA + J), J W/K of it flowing through, Q over the power of its
// chiller is the least time, and T_end is of the balance of package vessel with that heat.
// heat.jacket.load is the greatest UA (T - T_j) of a run, heat.jacket.warmest its greatest T_j.
// heat.jacket.time is how long the batch takes from the temperature of the step before to within a
// kelvin of its own, batch and liquid of the jacket together and the chiller at its power at most.
//
// heat.temperature_peak is the greatest of that or of the run; heat.accumulation the
// share of the phase that has not reacted when the addition ends. heat.ice is Q over the
// heat of fusion, with bath and liquor cold before.
//
// # Limits of the liquor
//
// heat.boiling_point is that of package course. heat.boiled_off is the liquor that the
// heat left over at it turns to vapour, all reacting at once, with its volume, its flow and
// its share of the liquor (boiledOff). heat.technical_limit is the lower of it
// and the service temperatures of wall and lid; a material that is not stated or not
// held counts as 60 degC. heat.criticality_class is the order of process temperature,
// highest temperature, technical limit and the stated td24 (Class), equality being the
// worse class; without td24 it is unknown. heat.class_margin is the kelvin to the next
// worse class. heat.quench_water brings the liquor from its highest temperature to
// 40 degC with water at 20 degC:
//
//	m = C (T - 40)/(c_w (40 - 20))
package thermal
