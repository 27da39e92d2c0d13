package etching_test

import (
	"math"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/schemas/nearly"
)

// standIn is the heat of a phase without a row of its own, with the rows of the stand-ins at
// their centre, all at the end of least heat (-1), or all at that of most (1).
func standIn(t *testing.T, phase string, base bool, end int) (float64, bool) {
	t.Helper()
	l, in := split(t, phase), etching.Fluoride
	if base {
		in = etching.Base
	}
	q, is := l.Heat(standInData(phase, "", end), nil, in)
	return q.V, is
}

// standInData are the data with that end of what a phase and a salt are put together from.
func standInData(phase, salt string, end int) *chemicals.Store {
	values := map[int]float64{}
	for _, d := range chemicals.Base().Rows() {
		less := datum.Pattern("layer_heat.*").Fits(d.ID)
		switch {
		case d.ID == datum.Of("enthalpy", salt+"(s)") && end != 0: // less negative is more heat
			values[d.Index] = map[int]float64{-1: d.Low, 1: d.High}[end]
		case d.ID == datum.Of("etch_heat", phase):
			values[d.Index] = math.NaN() // taken away
		case end == 0 || !less && !datum.Pattern("leaving_heat.*").Fits(d.ID) && !datum.Pattern("surface_heat.*").Fits(d.ID):
		case less == (end < 0):
			values[d.Index] = d.High
		default:
			values[d.Index] = d.Low
		}
	}
	return chemicals.Base().With(values)
}

// Where a phase has a heat of its own, added up with its own enthalpy, stand-ins have to
// cover it, and their centre may not be milder: only then may they speak of phases that
// have none.
func TestStandInsCoverWhatIsAddedUp(t *testing.T) {
	for _, phase := range []string{"Ti3AlC2", "Ti2AlC", "Ti2AlN", "Nb2AlC", "V2AlC"} {
		own, ok := chemicals.Base().Row(datum.Of("etch_heat", phase))
		low, _ := standIn(t, phase, false, -1)
		centre, is := standIn(t, phase, false, 0)
		high, _ := standIn(t, phase, false, 1)
		if !ok || !is || !(low < own.Low) || !(high > own.High) || !(centre >= own.Value) {
			t.Errorf("%s: %.0f (%.0f to %.0f) by stand-ins, %.0f (%.0f to %.0f) added up", phase, centre, low, high, own.Value,
				own.Low, own.High)
		}
		l := split(t, phase)
		if q, by := l.Heat(chemicals.Base(), nil, etching.Fluoride); q.V != own.Value || by {
			t.Errorf("%s: %v by stand-ins (%t) where it has a heat of its own", phase, q, by)
		}
	}
}

// Worked by hand from the rows: a q_A + q_M - b - d, kJ/mol. The eleven phases of the list
// that have no heat of their own, and what else people etch.
func TestHeatByStandIns(t *testing.T) {
	for _, tt := range []struct {
		phase             string
		low, centre, high float64
	}{
		{"Ti3AlCN", 616, 847, 998}, {"Ti4AlN3", 616, 847, 998}, {"Zr2AlC", 752, 1004, 1163}, {"Ta4AlC3", 452, 722, 893},
		{"Nb4AlC3", 437, 698, 868}, {"V4AlC3", 372, 617, 864}, {"Cr2TiAlC2", 272, 847, 998}, {"Mo2TiAlC2", 252, 847, 998},
		{"Mo2Ga2C", 70, 373, 620}, {"Ti3SiC2", 374, 734, 850}, {"Nb2InC", 0, 240, 405}, {"Ti2SnC", 54, 299, 465},
		{"Ti3Al0.8Sn0.2C2", 503.6, 737.4, 891.4}, {"(Ti0.5V0.5)2AlC", 372, 847, 998},
	} {
		for end, want := range map[int]float64{-1: tt.low, 0: tt.centre, 1: tt.high} {
			if q, is := standIn(t, tt.phase, false, end); !is || !nearly.To(q, want, 0.5) {
				t.Errorf("%s, end %d: %g, want %g", tt.phase, end, q, want)
			}
		}
	}
	if q, is := standIn(t, "Ti3AlC2", true, 0); !is || !nearly.To(q, 413+372-43-50, 0.5) {
		t.Errorf("Ti3AlC2 in base: %g", q)
	}
}

// What stand-ins do not fit stays unknown, and says what settles it.
func TestWhatStandInsDoNotFit(t *testing.T) {
	for phase, base := range map[string]bool{"MoAlB": false, "Mn2AlB2": false, "Zr3Al3C5": false, "V2AsC": false,
		"Ti3GeC2": false, "Ti3SiC2": true, "Mo2GaC": true, "Ti2AlC3": false, "Ti4AlC": false} {
		l := split(t, phase)
		in := etching.Fluoride
		if base {
			in = etching.Base
		}
		q, is := l.Heat(chemicals.Base(), nil, in)
		if !q.Unknown() || is || len(q.Missing()) != 1 || q.Missing()[0].Subject.String() != "etch_heat."+phase {
			t.Errorf("%s: %v, %v", phase, q, q.Missing())
		}
	}
}

// Worked by hand: a q_A + q_M - b - d - (z+2)/2 q_S, kJ/mol, of which the heats of formation
// are those of handbooks (memory, but CdCl2 -391.5: an open college text). 2.5 CuCl2 and
// Ti3AlC2: 645 + 514 - 43 - 50 - 2.5*213 = 533.5; at most 735 + 520 - 2.5*205 = 742.5.
func TestHeatOfMelt(t *testing.T) {
	for _, tt := range []struct {
		phase, salt       string
		low, centre, high float64
	}{
		{"Ti3AlC2", "CuCl2", 195.5, 533.5, 742.5}, {"Ti3AlC2", "ZnCl2", 0, 28.25, 222.5},
		{"Ti3AlC2", "CdCl2", 0, 87.25, 278.75}, {"Ti3SiC2", "CuCl2", 157, 439, 595},
		{"Nb2AlC", "FeCl2", 0, 44.5, 305}, {"Ti2SnC", "CuCl2", 0, 320, 460},
		{"Mo2Ga2C", "CuCl2", 0, 297, 590}, {"MoAlB", "CuCl2", -1, -1, -1}, {"V2AsC", "CuCl2", -1, -1, -1},
		{"Ti3AlC2", "MgCl2", -1, -1, -1},
	} {
		l := split(t, tt.phase)
		for end, want := range map[int]float64{-1: tt.low, 0: tt.centre, 1: tt.high} {
			q, is := l.HeatOfMelt(standInData(tt.phase, tt.salt, end), nil, tt.salt)
			if want >= 0 && (!is || !nearly.To(q.V, want, 0.01)) || want < 0 && (is || !q.Unknown()) {
				t.Errorf("%s in %s, end %d: %v, want %g", tt.phase, tt.salt, end, q, want)
			}
		}
	}
	x, _, err := chemicals.Base().Override([]chemicals.Override{{ID: "etch_heat.melt.Ti3AlC2", Value: 410, Low: math.NaN(),
		High: math.NaN(), Unit: "kJ/mol", Source: "own calorimetry"}})
	l := split(t, "Ti3AlC2")
	if q, is := l.HeatOfMelt(x, nil, "CuCl2"); err != nil || is || q.V != 410 {
		t.Errorf("measured: %v, %v", q, err)
	}
}

// What a route states as the heat of its etch counts whatever etches; what a site states, and what
// the data have, is of fluoride.
func TestHeatThatARouteStates(t *testing.T) {
	for from, want := range map[string]float64{"route": 410, "site": 413 + 372 - 43 - 50} {
		x, _, err := chemicals.Base().Override([]chemicals.Override{{ID: "etch_heat.Ti3AlC2", Value: 410, Low: math.NaN(),
			High: math.NaN(), Unit: "kJ/mol", Source: "own calorimetry", From: from, At: "measured"}})
		l := split(t, "Ti3AlC2")
		q, is := l.Heat(x, nil, etching.Base)
		if err != nil || is != (from == "site") || !nearly.To(q.V, want, 0.5) {
			t.Errorf("%s: %v, want %g", from, q, want)
		}
		if q, is := l.HeatOfMelt(x, nil, "CuCl2"); is != (from == "site") || (q.V == 410) != (from == "route") {
			t.Errorf("%s: %v of a melt", from, q)
		}
	}
}
