package quantity_test

import (
	"fmt"

	"etchbound/schemas/quantity"
)

// An amount has a unit, and may have a range.
func ExampleParse() {
	v, err := quantity.Parse("2 (1.9 to 2.1) g", quantity.Mass)
	fmt.Printf("%g mg, from %.4g to %.4g kg, %v\n", v.In("mg"), v.Low, v.High, err)
	_, err = quantity.Parse("2", quantity.Power)
	fmt.Println(err)
	// Output:
	// 2000 mg, from 0.0019 to 0.0021 kg, <nil>
	// "2" is a number without a unit; accepted: a power with its unit (W, kW, mW); write the unit that is meant: W, kW, mW
}
