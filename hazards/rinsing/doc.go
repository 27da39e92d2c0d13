// Package rinsing knows what each decant of a wash holds, by the equilibria of
// chemicals/aqueous: pH, fluoride, acid and aluminium, cycle by cycle, with salt that is
// still undissolved. It must not move material, nor know whether a product is good enough.
//
// Of each cycle the liquid that stays with the solid meets that of the cycle, equilibrium is
// found with lithium fluoride, cryolite and hydroxide of aluminium as solids, and what is
// dissolved leaves with the decant. A solid leaves only by dissolving. Liquid that stays
// grows as the sediment swells, above pH 4, where the route does not state it. Water in air
// takes up carbon dioxide, which keeps it below pH 5.6 for all washing.
//
// Acid held between the layers comes out slowly: half of what is left with each cycle. How
// much that is nobody has measured for a route, so each decant is told without any and with
// the most. The first decant of a strong liquor is beyond what equilibria are held for: it
// has no pH here, and salt that its acid cannot turn to HF counts as undissolved.
//
// A wash just after another in the same place goes on with what that one left: carbonate,
// cryolite, and acid between the layers. The pH alone does not make a wash: where fluoride
// above what is collected is dissolved when the pH is there, how often until it is gone too is
// told beside.
//
// Water stands beside two other ways to begin: one rinse with acid, which dissolves lithium
// fluoride, and one with bicarbonate. A target above what water in air reaches is answered
// with the cycles to the criterion there.
//
// It is worked out once, of the centre: by decants for documents alone, and for the ranges of
// wash.cycles and wash.ph, which dilution alone ends too early.
package rinsing
