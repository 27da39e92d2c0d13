// Package wash knows washing by dilution: how many cycles a target needs, how
// much water that takes and which decants hold fluoride. It must not move
// material.
//
// Retained liquid R stays with the solid, W is added in each cycle, and nothing but
// dilution takes acid away:
//
//	f = R/(R + W),   c_N = c_0 f^N
//
// The etch decant is cycle 0. R is 5 mL/g (2 to 10) by default, 10 above pH 4. c_0 is
// the acid of the liquor that the etch left. The pH is that of the strong acid as
// charged, of HF by pKa 3.18 and of water; metals are ignored, and said to be.
//
//	wash.cycles    the N that brings the retained liquid to the target: a minimum
//	wash.ph        pH after the cycles that are written
//	wash.water     N W
//	wash.liquor    V_0 + N W, all decants
//	wash.fluoride  fluorine in all of them
//
// Package process walks the cycles; this one makes figures of them.
package wash
