// Package etching knows layered precursors: which element leaves, what stays,
// how many electrons that gives to hydrogen, and what else the powder could
// turn into. It must not know any route, vessel or limit.
//
// M is of groups 3 to 6 and Mn, X is C, N or B, and the rest is A, the layer that leaves; a
// list of layers in the route overrides. More of X than of M is a slab phase, bound only.
// There are two groups per formula unit, whatever n. The centre of the product is O1.0 F0.9
// OH0.1, with chloride in the bath O1.0 F0.6 Cl0.3 OH0.1 (memory); low is all F or OH, high
// all O. Hydrogen per formula unit, with z electrons of the layer:
//
//	h = z/2 + (F + OH + Cl)/2 + O
//
// so 2.5 to 3.5 mol/mol for one Al. A = P, As, Sb makes XH3 and A = S, Se, Te H2X; A
// without a count of electrons leaves hydrogen unknown, and its bound too. As, Sb, Se, Tl,
// Cd and Pb are toxic-metal waste.
package etching
