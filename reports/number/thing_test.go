package number

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

var nan = math.NaN()

// What is written of a value and its range, by hand.
func TestWhole(t *testing.T) {
	low := func(unit string, never float64) Thing { return Thing{Unit: unit, Low: true, Never: never} }
	for _, c := range []struct {
		of   Thing
		ends Ends
		want string
	}{
		// Two digits where the range is wider than a tenth, else three.
		{Thing{Unit: "L"}, Ends{0.7513, 0.6306, 0.8721}, "0.75 L (0.63 to 0.88)"},
		{Thing{Unit: "L", Digits: 4}, Ends{0.7513, 0.7413, 0.7613}, "0.751 L (0.741 to 0.762)"},
		{Thing{Unit: "kPa gauge"}, Ends{365.21, 330.3, 401.2}, "370 kPa gauge (330 to 410)"},
		{Thing{Unit: "mol/L"}, Single(3.0842), "3.08 mol/L"},
		// Temperatures are whole degrees at most.
		{Thing{Unit: "degC"}, Ends{99.06, 93.03, 105.1}, "99 °C (93 to 106)"},
		{Thing{Unit: "degC"}, Ends{104.4, 88.2, 118.6}, "104 °C (88 to 119)"},
		{Thing{Unit: "K"}, Ends{64.06, 58.04, 70.08}, "64 K (58 to 71)"},
		// Decades are two bounds, the end of danger first.
		{Thing{Unit: "ppm"}, Ends{2.59, 0.00172, 207}, "up to 210 ppm, at least 0.0017"},
		{Thing{Unit: "ppm"}, Ends{4.57e-5, 6.82e-7, 2.39}, "up to 2.4 ppm, at least next to nothing"},
		{Thing{Unit: "kPa gauge"}, Ends{0, 0, 92.81}, "up to 93 kPa gauge"},
		{low("vol%", 0), Ends{15, 0.5, 20.9}, "as low as 0.5 vol%, at most 21"},
		{Thing{Unit: "L"}, Ends{0.2, 0.005, 1.2}, "up to 1.2 L, at least 5 mL"},
		// Masses below a kilogram, volumes below a tenth of a litre, and their like.
		{Thing{Unit: "kg"}, Single(0.013012), "13.0 g"},
		{Thing{Unit: "kg"}, Ends{0.02371, 0.0201, 0.0302}, "24 g (20 to 31)"},
		{Thing{Unit: "kg"}, Single(1.2504), "1.25 kg"},
		{Thing{Unit: "g as HF"}, Single(2.46831), "2.47 g as HF"},
		{Thing{Unit: "g as HF"}, Single(2468.31), "2.47 kg as HF"},
		{Thing{Unit: "g"}, Single(0.00213), "2.13 mg"},
		{Thing{Unit: "L/min"}, Ends{0.00137, 0.00114, 0.00272}, "1.4 mL/min (1.1 to 2.8)"},
		{Thing{Unit: "mL"}, Single(2500), "2.5 L"},
		{Thing{Unit: "m3/h"}, Single(0.0082), "8.2 L/h"},
		{Thing{Unit: "W"}, Single(12500), "12.5 kW"},
		{Thing{Unit: "kJ"}, Single(7.9196), "7.92 kJ"},
		// Minutes, hours, days; a time that is not reached.
		{Thing{Unit: "min"}, Single(20), "20 min"},
		{Thing{Unit: "min"}, Single(238.7), "3.98 h"},
		{Thing{Unit: "min"}, Single(735000), "510 d"},
		{Thing{Unit: "min"}, Single(0.5), "30 s"},
		{Thing{Unit: "min"}, Ends{280, 40, 300}, "4.7 h (40 min to 5 h)"},
		{Thing{Unit: "min"}, Ends{280, 240, 300}, "4.7 h (4 to 5)"},
		{low("min", 1440), Single(1440), "not within a day"},
		{low("min", 43200), Ends{43200, 13.27, 43200}, "13 min at the soonest, else not within 30 days"},
		{low("min", 43200), Ends{300, 13.27, 43200}, "5 h (13 min at the soonest, else not within 30 days)"},
		// Too small to be read.
		{Thing{Unit: "ppm"}, Single(3e-7), "less than 0.0001 ppm"},
		// One end, or nothing, known.
		{Thing{Unit: "K"}, Ends{nan, nan, nan}, "not known"},
		{Thing{Unit: "K"}, Ends{64, 58, nan}, "64 K (58 to not known)"},
		{Thing{}, Single(3), "3"},
	} {
		if got := c.of.Whole(c.ends); got != c.want {
			t.Errorf("%+v of %v: %q, want %q", c.ends, c.of.Unit, got, c.want)
		}
	}
}

// What is very small or very many is written in words and no power of ten.
func TestWholeOfExtremes(t *testing.T) {
	for _, c := range []struct {
		of   Thing
		ends Ends
		want string
	}{
		{Thing{Unit: "1"}, Single(0.00002), "1 part in 50000"},
		{Thing{Unit: "1"}, Single(1.92e-8), "1 part in 52 million"},
		{Thing{Unit: "1"}, Single(1e-9), "1 part in 1000 million"}, // a limit is not said to be less
		{Thing{Unit: "1"}, Single(1e-11), "less than 1 part in 1000 million"},
		{Thing{Unit: ""}, Single(1.56e7), "15.6 million"},
		{Thing{Unit: "m3/h"}, Ends{1.15e6, 9e5, 1.4e6}, "1.2 million m³/h (900000 to 1.4 million)"},
		{Thing{Unit: "min", Low: true}, Ends{12, 0, 30}, "perhaps at once, at most 30 min"},
		{Thing{Unit: "d", Low: true}, Ends{4.2, 0, 280}, "perhaps at once, at most 280 d"},
		{Thing{Unit: "ppm"}, Single(999999), "100 vol%"},
		{Thing{Unit: "ppm"}, Ends{20000, 0.2, 1e6}, "up to 100 vol%, at least 0.2 ppm"},
		{Thing{Unit: "ppm"}, Single(24000), "24000 ppm"},
	} {
		if got := c.of.Whole(c.ends); got != c.want {
			t.Errorf("%+v of %v: %q, want %q", c.ends, c.of.Unit, got, c.want)
		}
	}
}

// A share of a whole is in percent, and above ten wholes in times.
func TestPercent(t *testing.T) {
	for share, want := range map[float64]string{0.0512: "5.12 %", 1: "100 %", 9.99: "999 %", 650: "650 times",
		12.341: "12.4 times", 1e-9: "less than 0.0001 %", 0: "0 %"} {
		if got := Percent(share, 3, 1); got != want {
			t.Errorf("%g is written %q, want %q", share, got, want)
		}
	}
}

func TestRange(t *testing.T) {
	for _, c := range []struct {
		of   Thing
		ends Ends
		want string
	}{
		{Thing{Unit: "K"}, Ends{64.06, 58.04, 70.08}, "58 to 71"},
		{Thing{Unit: "K"}, Single(64), "no range stated"},
		{Thing{Unit: "K"}, Ends{nan, nan, nan}, "not known"},
		{Thing{Unit: "ppm"}, Ends{2.59, 0.00172, 207}, "up to 210, at least 0.0017"},
		{Thing{Unit: "g as HF"}, Ends{0.00103, 0, 0.335}, "up to 0.34 g as HF"}, // 1.0 mg beside it
	} {
		if got := c.of.Range(c.ends); got != c.want {
			t.Errorf("%+v of %v: %q, want %q", c.ends, c.of.Unit, got, c.want)
		}
	}
}

// The units a reader chose change what is written, and what has none stays.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		list string
		of   Thing
		ends Ends
		want string
	}{
		{"", Thing{Unit: "kPa gauge"}, Single(152), "152 kPa gauge"},
		{"bar", Thing{Unit: "kPa gauge"}, Single(152), "1.52 bar gauge"},
		{"bar,kPa", Thing{Unit: "kPa gauge"}, Single(152), "152 kPa gauge"},
		// 2 ppm of hydrogen chloride are 2*36.458/24.4654 mg in a cubic metre.
		{"mg/m3", Thing{Unit: "ppm", Molar: 36.458}, Single(2), "2.98 mg/m³"},
		{"bar, MG/M3", Thing{Unit: "ppm"}, Single(2), "2 ppm"},
	} {
		u, err := Choose(c.list)
		if err != nil {
			t.Fatal(err)
		}
		c.of.Units = u
		if got := c.of.Whole(c.ends); got != c.want {
			t.Errorf("%s: %q, want %q", c.list, got, c.want)
		}
	}
	if _, err := Choose("psi"); err == nil || !strings.Contains(err.Error(), "kPa, bar, ppm, mg/m3") {
		t.Errorf("psi: %v", err)
	}
}

func TestMargin(t *testing.T) {
	for _, c := range []struct {
		of            Thing
		margin, limit float64
		want          string
	}{
		{Thing{Unit: "degC"}, 5.42, 103.6, "5.42 K left"}, {Thing{Unit: "degC"}, -2.371, 103.6, "2.38 K over"},
		{Thing{Unit: "degC", Low: true}, -2.371, 103.6, "2.38 K too low"},
		{Thing{Unit: "wt%"}, 0.896, 50, "89 % left"}, {Thing{Unit: "K"}, -0.386, 50, "39 % over"},
		{Thing{Unit: "wt%"}, 0.9998, 50, "over 99 % left"}, {Thing{Unit: "kg"}, 0.999998945, 1, "over 99 % left"},
		{Thing{Unit: "kg"}, 1, 1, "100 % left"}, {Thing{Unit: "wt%"}, 0.99, 50, "99 % left"},
		{Thing{Unit: "ppm"}, -139, 3, "140 times the limit"}, {Thing{Unit: "ppm"}, -1.5, 3, "2.5 times the limit"},
		{Thing{Unit: "K"}, 1.2, 75, "far below the limit"}, {Thing{Unit: "min", Low: true}, 1.6, 5, "2.6 times the " +
			"least needed"},
		{Thing{Unit: "vol%", Low: true}, -0.3, 19.5, "30 % too low"},
		{Thing{Unit: "kPa gauge"}, -1, 0, "the limit is zero"}, {Thing{Unit: "kJ"}, nan, 1, "not known"},
	} {
		if got := c.of.Margin(c.margin, c.limit); got != c.want {
			t.Errorf("%s %g of %g: %q, want %q", c.of.Unit, c.margin, c.limit, got, c.want)
		}
	}
}

// Numbers beside each other are in one unit, as a person would put them in a column: by hand.
func TestNumbersBesideEachOtherShareAUnit(t *testing.T) {
	at := func(quantity string, value, low, high float64) *figure.Figure {
		f := &figure.Figure{ID: figure.ID{Quantity: quantity}, Value: working.Exact("x", "", value, "tried")}
		f.SetRange(low, high)
		return f
	}
	for _, c := range []struct {
		of   []*figure.Figure
		want string
	}{
		{[]*figure.Figure{at("gas.hydrogen.total", 1.8, 1.4, 2.5), at("gas.hydrogen.total", 0.05, 0.04, 0.06)}, "L"},
		{[]*figure.Figure{at("air.emission", 0.003, 0.002, 0.004), at("air.emission", 2400, 2000, 3000)}, "mg/min"},
		{[]*figure.Figure{at("air.exhaust_required", 0.00023, 0.0002, 0.0003),
			at("air.exhaust_required", 46000, 40000, 47000)}, "m3/h"},
		{[]*figure.Figure{at("gas.hydrogen.total", 1.8, 1.4, 2.5), at("gas.hydrogen.total", 2.1, 2, 2.2)}, ""},
	} {
		if got := (Units{}).Common(c.of).In; got != c.want {
			t.Errorf("%s: %q, want %q", c.of[0].Quantity, got, c.want)
		}
	}
}

func TestChange(t *testing.T) {
	for share, want := range map[float64]string{0.25: "+25 %", -0.25: "-25 %", 139: "140 times what it was", 0: "0 %",
		1: "+100 %"} {
		if got := Change(share); got != want {
			t.Errorf("%g: %q, want %q", share, got, want)
		}
	}
}

// A printed range holds the computed one, whatever the numbers.
func TestRangeRoundsOutward(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-9e5, 1e5).Draw(t, "low")
		high := low + rapid.Float64Range(1e-3, 8e5).Draw(t, "width")
		s := Thing{Unit: "mol/L"}.Range(Ends{(low + high) / 2, low, high})
		up := strings.TrimPrefix(s, "up to ")
		b, a, ok := strings.Cut(up, ", at least ")
		if !ok && up == s {
			a, b, ok = strings.Cut(s, " to ")
		}
		if a == "next to nothing" || !ok || low == 0 {
			t.Skip("an end without a number")
		}
		pl, errLow := strconv.ParseFloat(a, 64)
		ph, errHigh := strconv.ParseFloat(b, 64)
		// Noise beyond the ninth digit does not count.
		if errLow != nil || errHigh != nil || !(pl <= Round9(low)) || !(ph >= Round9(high)) {
			t.Fatalf("%v to %v prints as %s", low, high, s)
		}
	})
}

// A limit stands as its document has it; one over seven hours of a limit over eight, 0.075
// and 0.375 ppm times 8/7, is rounded down (by hand).
func TestLimits(t *testing.T) {
	at := func(v float64, while limit.While) limit.Limit {
		return limit.Limit{Quantity: "air.breathing_zone", Unit: "ppm", Value: v, While: while}
	}
	for want, l := range map[string]limit.Limit{"0.0875 ppm": at(0.0875, limit.While{Minutes: 60}),
		"1125 ppm":   at(1125, limit.While{}),
		"0.0857 ppm": at(0.075*8/7, limit.While{Minutes: 420, Full: 0.075}),
		"0.428 ppm":  at(0.375*8/7, limit.While{Minutes: 420, Full: 0.375})} {
		if got := (Units{}).Limit(&l, "hcl"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
