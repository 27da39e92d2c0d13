package solution

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// strongestHF is the mass fraction of hydrofluoric acid where what this
// package is made for ends.
const strongestHF = 0.70

// BoilingPoint returns the boiling point in degC at 101.325 kPa of a single
// acid of the given mass fraction (g/g): where the partial pressures of acid
// and water add up to that. Models hf (to 0.70), hcl (to 0.42) and water; for
// others, and for stronger acid, it is unknown. It is estimated at best.
func BoilingPoint(st *chemicals.Store, w *working.Sheet, model string, fraction working.Num) working.Num {
	offset := st.Num("boiling.offset")
	t := boiling(st, w, model, fraction)
	n := w.Line("T_b", "degC", "T+d_b", t.V+offset.V, t.As("T"), offset)
	if n.Unknown() {
		return n
	}
	return worse(w, n, working.Estimated)
}

func boiling(st *chemicals.Store, w *working.Sheet, model string, fraction working.Num) working.Num {
	water := st.Num("boiling.water")
	if model == "water" {
		return water
	}
	id := "pressure." + model
	acid, okA := st.Table(id + ".acid")
	vapour, okW := st.Table(id + ".water")
	_, high := tableRange(acid, okA && okW)
	if model == "hf" {
		high = strongestHF * percent
	}
	x := fraction.V * percent
	if !fraction.Unknown() && !(x <= high*(1+1e-12) && x >= 0) {
		return working.Absent("T", "degC", working.LacksDatum(datum.ID(id+".acid")))
	}
	if fraction.Unknown() || water.Unknown() {
		return w.Model("T", "degC", boilingName, math.NaN(), fraction, water)
	}
	x = min(x, high)
	low := max(acid.X[0], vapour.X[0])
	if x >= low {
		return w.Model("T", "degC", boilingName, boilsAt(acid, vapour, x), fraction)
	}
	// Below the tables the acid hardly adds to the pressure of the water.
	v := water.V + (boilsAt(acid, vapour, low)-water.V)*x/low
	return w.Model("T", "degC", boilingName+", straight to water below the tables", v, fraction, water)
}

const boilingName = "root of p_acid + p_water = 101.325 kPa"

func tableRange(t *chemicals.Table, ok bool) (low, high float64) {
	if !ok {
		return math.NaN(), math.NaN()
	}
	return t.Range()
}

// boilsAt finds the temperature at which two pressures log10 p = A - B/T add
// up to 760 mmHg. The logarithm of their sum falls with 1/T and is convex, so
// that Newton's steps in 1/T cannot miss.
func boilsAt(acid, water *chemicals.Table, x float64) float64 {
	aA, bA := coefficients(acid, x)
	aW, bW := coefficients(water, x)
	u := 1 / 373.15
	for range 50 {
		pA, pW := math.Exp(aA-bA*u), math.Exp(aW-bW*u)
		step := math.Log((pA+pW)/760) * (pA + pW) / (pA*bA + pW*bW)
		u += step
		if math.Abs(step) < 1e-15 {
			break
		}
	}
	return 1/u - 273.15
}

// coefficients returns A and B for natural logarithms at x wt%, on straight
// lines: log p at one temperature is then straight in wt% as well. Beyond the
// last row the last line is carried on; only the water over 50 to 70 wt%
// hydrofluoric acid needs it, where it is under 2 % of the pressure.
func coefficients(t *chemicals.Table, x float64) (a, b float64) {
	if a, ok := t.Linear(0, x); ok {
		b, _ = t.Linear(1, x)
		return a * math.Ln10, b * math.Ln10
	}
	n := len(t.X)
	s := (x - t.X[n-2]) / (t.X[n-1] - t.X[n-2])
	a = t.Y[0][n-2] + s*(t.Y[0][n-1]-t.Y[0][n-2])
	b = t.Y[1][n-2] + s*(t.Y[1][n-1]-t.Y[1][n-2])
	return a * math.Ln10, b * math.Ln10
}
