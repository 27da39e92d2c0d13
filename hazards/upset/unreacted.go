package upset

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards/route"
)

// unreacted is the data with an etch that has given nothing yet.
func unreacted(c route.Case, phase string) (*chemicals.Store, error) {
	st, _, err := c.Store.Override([]chemicals.Override{{ID: datum.Of("etch_conversion", phase), Value: 0, Low: math.NaN(),
		High:   math.NaN(),
		Source: "the failure looked at", From: "route"}})
	return st, err
}
