package labelling

import (
	"etchbound/chemicals/classifying"
	"etchbound/hazards/process"
)

// extreme reports whether a liquor is at pH 2 or below, or at 11.5 or above, by what was put
// in: strong acid over all base and over the fluoride that takes it up, or strong base over all
// acid. What was neutralised is looked at without what neutralised it too.
func extreme(s *process.State) bool {
	var strong, acid, alkali, base, litres float64
	for i := range s.Liquid {
		q := &s.Liquid[i]
		litres += q.Volume.V * q.Kept() / 1000
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil || e.Sub.Kind == "water" {
				continue
			}
			if e.N.Unknown() && (e.Sub.Is("strong_acid") || e.Sub.Is("alkaline")) {
				return true
			}
			n := e.N.V * q.Kept() * e.Sub.Acid
			switch {
			case n > 0:
				acid += n
			case n < 0:
				base -= n
			case e.Sub.Kind == "fluoride_salt":
				strong -= e.N.V * q.Kept() * e.Sub.Formula.Count("F")
			}
			switch {
			case e.Sub.Is("strong_acid"):
				strong += max(n, 0)
			case e.Sub.Is("alkaline"):
				alkali -= min(n, 0)
			}
		}
	}
	if s.Neutralised && strong > 0 && !(strong < classifying.ExtremeAcid*litres) {
		return true
	}
	return strong > 0 && !(strong-base < classifying.ExtremeAcid*litres) ||
		alkali > 0 && !(base-acid < classifying.ExtremeBase*litres)
}
