// Package waste knows what neutralising takes and gives off: reagent, heat,
// carbon dioxide, ammonia, sludge and the water that keeps it cool. It must
// not move material, and it must not judge what may be discharged.
//
// A liquor takes base by all its acid and all its fluoride, never by its pH alone. B is
// in mol, from the account after the etch, with metals brought to hydroxide:
//
//	B = F + Cl + 2 SO4 + NH4 + ... - alkali ions
//
// where F counts all that BF4-, SiF6 2- and PF6- can free. Cold base binds none of what
// BF4- and PF6- hold: neutralise.held_fluoride, whatever the pH. Boric acid takes up to
// one base more as borate. What one mol of an agent
// takes, binds and gives off follows from what it is: see package neutralising.
//
//	neutralise.mass             stoichiometric, without excess
//	neutralise.heat             HF q_h + S q_s + AlF3 q_y, by reactions from species
//	neutralise.temperature_rise Q over the liquor's own water, capped at boiling
//	                            with that of the step if it is there before acid meets base
//	neutralise.carbon_dioxide   all carbonate of the agent
//	neutralise.ammonia          all ammonium of liquor and agent
//	neutralise.sludge_dry       CaF2 (or MgF2) and aluminium hydroxide
//
// neutralise.dilution_water is the larger of the water that brings the liquor to 10 wt%
// HF and of that which holds 40 degC from 25 degC on the heat capacity of water alone;
// where the liquor's own water does not hold the heat, all of the water that does is
// asked for, and of a liquor below 10 wt% what is wanting of it. Of two agents written together each takes its share.
//
// spill.neutraliser is the reagent for the liquor of the route that takes most base, in
// one place at one time, with the excess that a floor takes, and spill.slurry what that
// is of calcium hydroxide in water: for trained responders alone. Bottles in store do
// not count.
package waste
