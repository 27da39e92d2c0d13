package ode_test

import (
	"fmt"

	"etchbound/hazards/ode"
)

// Water at 80 degC cools towards a bath at 20 degC, 2 W/K on 800 J/K, until
// stirring fails at 300 s and the coefficient falls to a fifth. When is 40 degC
// reached?
func ExampleSolve() {
	coefficient := []float64{2, 0.4} // W/K, by piece
	p := ode.Problem{
		To:       3600,
		Start:    []float64{80},
		Switches: []ode.Switch{{At: 300}},
		Rate: func(piece int, _ float64, y, dy []float64) {
			dy[0] = -coefficient[piece] * (y[0] - 20) / 800
		},
		Events: []ode.Event{{
			Of:        func(_ int, _ float64, y []float64) float64 { return y[0] - 40 },
			Direction: ode.Falling,
			Terminal:  true,
		}},
	}
	res, err := ode.Solve(p, ode.Options{RelTol: 1e-8, AbsTol: []float64{1e-6}})
	if err != nil {
		fmt.Println(err)
		return
	}
	// By hand: 300 s + 2000 s * (ln 3 - 0.75).
	fmt.Printf("%s, %.2f s, %.4f degC\n", res.Status, res.T, res.Y[0])
	// Output: stopped by an event, 997.22 s, 40.0000 degC
}
