// Package gas knows what gas comes off and what it does in a closed container:
// it turns the walk into figures of hydrogen, toxic hydride and pressure. It
// must not move material, and it must not know heat or fluoride.
//
// Gas is in L at 25 degC and 101.325 kPa, 24.4654 L/mol, unless a line says otherwise.
//
// # Hydrogen
//
// Electrons make it: those of the layer that leaves, z per formula unit (three per Al
// and Ga, four per Si), half of the groups that end the product, and its oxygen,
//
//	n_H2 = n (z/2 + (F + OH + Cl)/2 + O)
//
// See package etching for the groups. gas.hydrogen.total counts the etch and every
// metal of the powder that dissolves with it, once; gas.hydrogen.impurities is the
// part that free metals give, first and fast. Powder left over that meets acid later
// stands beside the sum as the case residual. gas.hydrogen.dissolution_bound takes
// every metal to its highest valence that fluoride keeps stable, gives at most half
// the acid equivalents as gas, and never less than the etch with all O:
//
//	n = max(min(n_all, A/2), n_etch)
//
// gas.hydride.bound is all of the element that leaves as XH3 (P, As, Sb) or H2X (S,
// Se, Te). An element without an entry has hydrogen and bound unknown.
//
// # Poisonous gases
//
// gas.evolved.bound is all that can form of a gas in the step, by what the medium makes of
// what is in it (package evolving),
//
//	n = min a_i/x_i
//
// a_i being what the place holds of what x_i mol go into one mol of gas; gas.evolved.mass
// is the same by mass. A chloride that is liquid or solid at 25 degC counts as gas. Of an
// element without a row it is unknown. It counts in the closed pressure, with hydrogen.
//
// # Flows
//
// gas.hydrogen.peak_rate.during_addition is V/t by the instantaneous law, all
// hydrogen over the time of the addition, and what the run in time gives by the
// others; after_addition is the greatest flow of the run from then on.
// gas.hydrogen.dilution_air is the air that holds a flow F at y, 25 % of the lower
// flammable limit:
//
//	Q = F (1 - y)/y
//
// gas.addition_time.hood is the shortest addition for which that is the air of the
// hood, gas.addition_time.vent the one whose hydrogen, twice over, the stated vent
// lets out at 1 kPa. Both are for powder that reacts as it goes in.
//
// # Ways out
//
// gas.vent.bore_required is the bore through which twice the largest flow takes 1 kPa
// less the bubbler, by an orifice of Cd 0.62 and a line with the greater of laminar and
// turbulent friction (vessel.Outlet), gas as heavy as air, at least 6 mm.
// gas.superficial_velocity is the largest flow over the surface of the liquor as a
// cylinder as high as it is wide. gas.free_volume.required is the room that bubbles and
// foam take over the liquor V, a being their share by the drift flux (vessel.Void),
// foam 0.3 (0.3 to 0.5) of the liquor, whole from 10 mm/s on and in proportion below:
//
//	V_f = V (a/(1 - a) + f min(1, j/j_f))
//
// gas.headspace.flammable_time is how long a vented headspace is above 1 vol%, with
// y = 1 - exp(-V/V_head), to the end of the course.
//
// # Closed containers
//
// Gas space is capacity less liquid less solid, shut at 101.325 kPa and 25 degC:
//
//	p = n R T/V_g   (kPa gauge)
//
// of all the gas that can come off inside, carbon dioxide and methane too. Without a
// rating and a relief nothing is allowed. A capacity that is missing leaves the figure
// unknown and the verdict at exceeds, and so does what has been in a place and gives gas
// that nobody works out (meeting.Pairs). A tube counts its gas space as it spins, filled
// with the liquid of a cycle. A vented place carries the figure with the case closed,
// without a finding, and one that stands open has none. One heated closed, by its step or by more than 60 degC, has
// the case heated: the gas hot, the air it was filled with and the vapour of the liquor,
//
//	p = n R T/V_g + P T/T_f + p_v - P
//
// in the room that its swollen liquid leaves, and cold once it is cold again.
// vessel.filling is that liquid and solid at 25 degC over the capacity. vessel.piled is
// liquid and solid of one batch by the batches of a container of waste. vessel.content is
// the most liquid and solid that any place holds at any time over its capacity; more than
// all of it overflows. Solid is powder and what was charged as a solid, in grains without
// pores: dissolved it takes no more. gas.closed.time_to_10_kpa
// takes the largest flow of any moment; it sets how often to look and permits nothing.
//
// gas.to_come is what a place can still give at its worst moment, of waste of all its batches,
// with all that the flakes give which stand in it at the end, once they have degraded;
// gas.cabinet_share is what of it can burn over a quarter of the lower flammable limit in the
// cabinet of the site, and gas.cabinet_time how soon so much of waste has come.
package gas
