// Package air knows what people could breathe: what leaves a liquor as vapour,
// and how strong it gets near them and in the room. It must not move material,
// and it judges nothing: a limit serves it only to say what extract would meet it.
//
// # Over the liquor
//
// air.saturated is p/101.325 kPa of the vapour, as charged and at the temperature set:
// tables for one acid, the dilute law below them, brackets over mixtures, nothing above
// 60 degC (package solution).
//
// # What leaves
//
// An open surface gives off by the greater of two laws, with the freeboard L as a second
// resistance (package spread):
//
//	n = A p/(R T)/(1/k + L/D)
//
// A gas that leaves saturated carries F p/(P - p_t): the purge and the largest flow of
// hydrogen. A pour drives out the air of what it fills. air.emission is the largest, over
// the liquor that a step leaves, that it found, as hot as it was, and that it pours to. A
// poisonous gas that a step forms leaves as fast as it forms: within the time of the
// current, of a melt, of what goes in, or of a pour. A place without a capacity has no
// known surface, a tray is a pan, and a purge without a flow is unknown.
//
// air.warm_emission is the open liquor at its highest temperature if cooling fails;
// air.hood_limit the temperature from which it takes all the air of the
// hood or has to be scrubbed. Both are unknown above 60 degC.
//
// # Near a person
//
//	air.breathing_zone = s G (1/Q + 1/B)
//
// G is what leaves, Q the air of the room, B the exchange at arm's reach and s what gets
// past a hood: its containment rating at best and a hundred times that at worst with a
// test date, a face velocity and a rating, all of it without. A limit that is averaged
// over longer than a step lasts allows more for the step (limit.Exposure.Allowed); a
// ceiling never does. air.time_average is the worst such time of all steps, one after the
// other; what is poured counts for the time of a pour. air.additive is the sum of C/L over
// vapours that burn the same airways. air.exhaust_required is the air that brings all of
// it, mixed at once, to the strictest short limit. air.time_to_short_limit is the exact
// solution of two zones with the smallest near field.
//
// # Spills and deliveries
//
// Spilt, the largest container of the liquor that gives off most lies as a film outside a
// hood: air.spill_area is V/h,
//
//	air.room_peak = min(G/Q, p/P)
//
// and air.time_to_idlh is when the room comes to IDLH. air.plume is the same for the
// bottle that would be worst to drop, in the yard, and for the worst step from the stack,
//
//	C = G/(pi u s_y s_z) exp(-H^2/(2 s_z^2))
//
// at the ground, where it is strongest from 100 m on in a stable night. No stock as strong
// as what the route takes leaves it unknown, since a bottle is more than what is taken. A
// bottle is empty once it has given off the N mol it holds: its mean over a time is
//
//	C_t = C min(1, N/(G t))
//
// which meets the emergency level for that time, in the room for ten minutes; the peak
// before meets the ceilings and what is immediately dangerous.
//
// air.boiled_off is the HF, of all fluoride, and the HCl that go off with the liquor that
// the heat left over at boiling drives out: at most a mole with each mole of it;
// air.boiled_average is what of it is breathed, averaged over each longer time of a limit.
//
// air.mist is the acid in the drops that gas throws up where it bubbles out of a liquor, so
// much liquor a litre of gas; it reaches people as air.breathing_zone:mist.
//
// # Gas without a smell
//
//	air.oxygen         = x_0 exp(-v/V)         room, hood, cabinet
//	air.hydrogen_share = 1 - exp(-v/V)
//	air.cryogen        m/M Vm of what is boiled off to cool
//	air.floor          carbon dioxide in a layer on the floor, by the air that is stated
//
// # Vapour that burns
//
//	air.flammable_share = min(1, 20 x) p(t)/P * 100/LFL
//
// over the liquor itself, before air thins it: x is the share of a liquid in the mol of the
// liquor, p its vapour pressure at the highest temperature set, LFL its lower flammable
// limit in vol%. It is a bound. What leaves such a liquor, what people breathe of it, and what
// a spill or a broken bottle brings to the room is that of the same bound, p min(1, 20 x), as
// of an acid; no level is held for the yard. Mixed with the air of the room,
//
//	air.room_flammable = C/1e4/LFL
//
// and over the pool it is as over the liquor.
//
// A centrifuge counts the air of its chamber, saturated after a tube has broken.
//
// A scrubber is the place whose liquor of base the gas of others goes through; no other
// figure takes credit for it:
//
//	air.scrubber.base   base of its liquor less its acid
//	air.scrubber.taken  base that the vapour, poisonous gases and CO2 of all steps take
//	air.scrubber.spent  100 taken/base
//	air.scrubber.lasts  base over the greatest that a step takes by its time; a year at most
//	air.scrubber.past   hydrogen and what else no base takes up
package air
