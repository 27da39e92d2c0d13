// Package upset knows what can fail while a vessel reacts, and looks for the
// moment in which it is worst. A failure is the same vessel with other inputs
// from a moment on, or the same route with one thing done wrong: both are run
// by the same models as the review itself. It must not know how anything is
// printed.
//
// What can happen at any moment is run from the moments that the course itself marks and
// from equal parts of its time, and then closer around the worst, for the highest
// temperature, the largest flow and the shortest time to boiling each: some twenty runs by
// each law, at most 60. A bath and a heater go wrong at any moment, too; no time to the
// greatest output means that it is greatest when they do. Failures of which the same follows
// share them, and give the same figure where they can happen at the same moments. What is done
// wrong is the route written that way, assessed again. A wrong order is a closed form, as soon
// as the powder is wetted: acid onto dry powder gives
//
//	T_max = T + Q/(min(1, n/A) (C - C_s) + C_s)
//
// What fails around a vessel (lid, hood, bubbler, fire) has the temperature and the flow
// of the run as it is meant, and no second verdict on them. A heater, bath or addition
// that a course does not have cannot fail. A stirrer that goes on while nothing is lost is
// counted for C/UA of still air, the rise P/UA at which still air takes its heat. What is
// followed is followed until nothing waits, for thirty days; 43200 min says that something is
// not reached within them.
//
//	heat.temperature_peak@n:failure  highest temperature from the failure on
//	gas.hydrogen.peak_rate           largest flow from it on
//	heat.time_to_boil                from it to the boiling point
//	heat.time_to_maximum_rate        from it to the greatest output
//	heat.boiled_off.share            of the liquor that boils off; from 1 on it is dry
//	air.boiled_off, air.breathing_zone, air.room_peak, air.exhaust_required
//	                                 of the acid that goes with it, as it is meant (:boiling)
//	                                 and by failure
//	heat.time_left@n                 the shortest of the times to boiling once cooling,
//	                                 power, stirring or a heater fails in step n
//	gas.closed.pressure              of what is moved or shut before it has reacted
//	gas.closed.time_to_10_kpa        at the largest flow
//	gas.hydrogen.room_time           in which that flow alone brings the room to y,
//	                                 y V/((1 - y) F)
//	gas.headspace.flammable_from     from the start of the addition
//	gas.headspace.energy             hydrogen with the oxygen of the air in the gas space
//	gas.suck_back                    liquid of a bubbler that comes back
//
// Ranges of what a search found are those of about eight corners, not of swings. There is
// one verdict a failure, by the worst of its laws, on the id quantity@step:failure. Bare
// ids and quantity@step rank failures behind what happens as the route means it. A brief
// case leaves them out and says so.
package upset
