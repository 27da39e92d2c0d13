package draft

import (
	"etchbound/chemicals/working"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// HydrolysedText says what acid water makes of what of a gas stayed behind, and the lime for it.
func HydrolysedText(h *scaling.Hydrolysed) string {
	most := func(n working.Num) string {
		if n.Unknown() {
			return words.Of("value.unknown")
		}
		return words.Of("hydrolysed.most", number.Thing{Unit: "g", Digits: 2}.Bound(n.V, 1))
	}
	return words.Of("hydrolysed.says", words.List(h.Gases), most(h.Mass), AgentName("air.saturated", h.Acid),
		most(h.Lime))
}
