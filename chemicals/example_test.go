package chemicals_test

import (
	"fmt"

	"etchbound/chemicals"
)

// A store is never changed: an override gives another one, and says what it
// replaced.
func ExampleStore_Override() {
	own, applied, err := chemicals.Base().Override([]chemicals.Override{{ID: "density.Ti3AlC2", Value: 4.2, Low: 4.1,
		High: 4.3, Source: "own measurement", From: "route"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(chemicals.Base().Num("density.Ti3AlC2").V, "becomes", own.Num("density.Ti3AlC2").V, len(applied))
	fmt.Println(own.Num("density.Unobtainium").Status)
	// Output:
	// 4.25 becomes 4.2 1
	// unknown
}
