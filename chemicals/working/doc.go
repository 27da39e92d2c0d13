// Package working knows how a number was made: its value, its unit, how far it
// can be trusted and the line of arithmetic that produced it. It must not know
// any chemistry, any file, or which hazard it serves.
//
// Values on a Sheet are in the units of the bench (g, mol, L, kJ, K, degC) and
// not in SI, because every line has to be followable with a pocket calculator.
// Conversion happens once, where a given enters the Sheet.
//
// A status is known, estimated, bound or unknown, from best to worst. A line stands no
// better than its worst input; a datum that is memory or assumed makes it at least
// estimated; unknown carries what is missing, and is NaN inside. The arithmetic stands
// beside the formula as a pocket calculator takes it:
//
//	n := s.Line("n", "mol", "m*w/M", m.V*w.V/M.V, m, w, M)
//
// and a test evaluates every formula on its printed inputs to 1e-12. A nil Sheet keeps
// nothing and costs next to nothing.
package working
