// Package handling knows what the steps before and after the etch bring by themselves:
// cake that warms itself, dry powder, a sonicator, a centrifuge, what is put between the
// layers, salt that was molten. It must not move material, and it must not know what a
// limit says of any of it.
//
// Wet flakes lose heat as they degrade, at the rate of package storage, in air as far as
// it comes in (s):
//
//	k = (k_W + k_O s) a f_x f_q
//	cake.warming = m q k/C                            K in an hour, no heat lost
//
// A lump as high as it is wide warms itself away above a size (Frank-Kamenetskii, delta
// 2.76, order zero, its surface at the temperature of the step):
//
//	r = (delta lambda R T^2/(E c q k))^(1/2)
//	cake.boiling = T_w-T                              K, to where its water boils
//	cake.critical = rho 2 pi r^3                      kg
//	cake.share = cake/cake.critical                   1
//
// Cake is what holds at least so much of flakes by mass (datum cake.least); wetter, it is
// a dispersion, whose water takes the heat. What degrades by order one warms less than by
// order zero: the size is on the cautious side. Of dry flakes no rate in air is held.
//
// Dry powder has no ignition data: it counts as combustible, by those of fine titanium
// and aluminium.
//
//	dust.mass     powder that goes in dry, or lies there dried
//	dust.heat     that of burning all of it
//	dust.explosible_air  air in which it comes to the least explosible concentration
//	dust.floats   of it afloat, evenly, in the air of the room that comes to the limit of
//	              ultrafine titanium dioxide; of other metals unknown
//	dry.margin    least temperature at which flakes are known to take fire in air, less
//	              that of the step
//
//	sinter.heat   n H(phase) less that of what the charge brings of it, as much as it has the
//	              elements for; sinter.rise by the heat capacity at 25 degC, which only grows
//	sonicate.heating   P/C without cooling; sonicate.minutes to 10 K
//	spin.density       what stands in the tube before the step; spin.speed by the root of 1.2 over it
//	skin.lethal        of what is put between layers, over the dose through the skin that
//	                   killed half the animals, scaled by mass alone to a person: a rank, no dose
//	step.quickened     rate of the etch at the temperature of the step over that at the
//	                   hottest before it, where powder may be left
//	melt.hydrogen_chloride  of all the chloride vapour of a melt, once moisture meets it
//	release.oxygen     half a mol of each peroxide or peroxydisulfate of a place
package handling
