// Package treating knows what each agent that the data hold does to the acid liquors of a
// route, side by side: alone, and in the pairs that complete one another. It must not know
// which a step ought to use, nor whether anything may be treated or go down a drain.
//
// A liquor is that of a step that neutralises, one that is left over, or all acid liquors of
// the route together. For each agent there is the mass that takes all acid (or binds all
// fluoride, where it brings no base), heat, rise and water by package waste, and what stays
// dissolved by the equilibria of chemicals/aqueous:
//
//	a base of hydroxide    brought to pH 8; the range from pH 6 to pH 9 with aged hydroxide of aluminium
//	a carbonate            a tenth over what the acid takes, under carbon dioxide of 1 atm
//	a calcium salt         a tenth over half the fluoride: it binds fluoride and leaves the acid
//	boric acid             a quarter of the fluoride: it leaves acid fluoroborate, and all fluoride dissolved
//
// A base that binds no fluoride stands again with calcium chloride, chalk with lime. Where
// the equilibria are not held for a liquor it is diluted tenfold or a hundredfold first, as
// package residue does. They are worked out at the temperature that the step sets, from 5 to 60
// degC, and at 25 where it sets none or for all liquors together. An organic cation counts as
// sodium and an organic anion as chloride; what has no constants at all leaves all fluoride
// dissolved.
//
// What practice leaves is more than equilibrium does: both stand side by side. NaN is what
// nobody knows.
//
// The usual ways go in by a plan of the vessel model that keeps temperature and froth in
// hand, and lime and what a step writes (or chalk) are followed dose by dose.
//
// A container of waste that takes several batches is told once the first is in, as the liquor
// of the last comes to all before it, and once that is treated as well: what base or chalk was
// left over, or acid, is what the next batch meets. The carbon dioxide then is that at
// equilibrium, and at most all that the acid frees.
//
// It is worked out once of the centre, and of the usual ways where the data stand at the
// dangerous end, for documents alone, and never in the runs that swing data. Two figures are of every review:
//
//	neutralise.ph       pH once all that a step writes is in and at equilibrium
//	neutralise.ph_most  the same, held against what is too alkaline
//
// with a range for a twentieth less and more of the dose.
package treating
