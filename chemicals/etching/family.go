package etching

import (
	"fmt"
	"math"
	"slices"

	"etchbound/chemicals"
)

// How far a formula may be from the ratio of its family: powders are written with some
// of A or X too little or too much, such as Ti3Al1.1C1.8.
const (
	mostLayers = 9
	loose      = 0.25
	near       = 0.05 // of two parts that are as they should be
)

// Unexpected is the ratio of M to A to X of a formula that no family of layered phases
// has, with the nearest of M(n+1)AX(n), such as "2:2:1" and "2:1:1"; empty
// where a family has it.
func (l *Layered) Unexpected() (found, expected string) {
	m, a, x := count(l.M), count(l.A), count(l.X)
	fits := false
	for k := 1.0; k <= mostLayers; k++ {
		fits = fits || away(m, a, x, k+1, 1, k) <= loose
	}
	if fits || slices.ContainsFunc(chemicals.Families(), l.of) {
		return "", ""
	}
	n := nearest([3]float64{m, a, x})
	return fmt.Sprintf("%.4g:%.4g:%.4g", m, a, x), fmt.Sprintf("%g:1:%g", n+1, n)
}

// away is how far, as a share, A or X are from what a ratio gives for so much M.
func away(m, a, x, ratioM, ratioA, ratioX float64) float64 {
	return max(math.Abs(a*ratioM/(m*ratioA)-1), math.Abs(x*ratioM/(m*ratioX)-1))
}

// nearest is the n of M(n+1)AX(n) of which two of M, A and X are there: first those
// that stay, then M with A, then A with X. It is 2, the commonest, where no two are.
func nearest(have [3]float64) float64 {
	for _, pair := range [...][2]int{{0, 2}, {0, 1}, {1, 2}} {
		for k := 1.0; k <= mostLayers; k++ {
			ratio := [3]float64{k + 1, 1, k}
			i, j := pair[0], pair[1]
			if math.Abs(have[j]*ratio[i]/(have[i]*ratio[j])-1) <= near {
				return k
			}
		}
	}
	return 2
}

// of reports whether a phase is of a family.
func (l *Layered) of(f chemicals.Family) bool {
	has := func(parts []Part, list []string) bool {
		return !slices.ContainsFunc(parts, func(p Part) bool { return !slices.Contains(list, p.Symbol) })
	}
	return away(count(l.M), count(l.A), count(l.X), f.M, f.A, f.X) <= loose && has(l.A, f.Leaving) && has(l.X, f.Other)
}
