package chart

import (
	"fmt"
	"maps"
	"math"
	"strings"
)

// over makes a curve of n points from f over [from, to]. All curves of these
// tests are invented.
func over(label string, from, to float64, n int, f func(x float64) float64) Curve {
	v := Curve{Label: label}
	for i := range n {
		x := from + (to-from)*float64(i)/float64(max(n-1, 1))
		v.X, v.Y = append(v.X, x), append(v.Y, f(x))
	}
	return v
}

// hump rises from base to base+size at peak and falls again.
func hump(base, size, peak float64) func(float64) float64 {
	return func(x float64) float64 { return base + size*x/peak*math.Exp(1-x/peak) }
}

func flat(y float64) func(float64) float64 { return func(float64) float64 { return y } }

// jagged is an uneven curve that is the same in every run.
func jagged(x float64) float64 {
	return math.Sin(x) + 0.4*math.Sin(37*x) + 0.3*math.Cos(911*x)
}

var (
	minutes = Axis{Label: "Time", Unit: "min"}
	celsius = Axis{Label: "Temperature", Unit: "°C"}
)

// hard are charts that ask something of the layout.
func hard() map[string]Chart {
	out := maps.Clone(hardCharts)
	out["crowd"] = crowd()
	out["many marks"] = manyMarks()
	for name, c := range out {
		c.ID = name
		out[name] = c
	}
	return out
}

var longLabel = strings.Repeat("a label far longer than the place for it ", 4)

var hardCharts = map[string]Chart{
	"plain": {Title: "Temperature after the addition stops", Alt: "A curve that turns", X: minutes, Y: celsius,
		Curves: []Curve{over("Vessel", 0, 60, 200, hump(22, 47, 14))},
		Lines:  []Line{{60, "limit of the hose"}}, Marks: []Mark{{5, "cooling fails"}, {20, "bath is lowered"}}},
	"unnamed": {Title: "One curve without a name", X: minutes, Y: celsius,
		Curves: []Curve{over("", 0, 60, 200, hump(22, 47, 14))}},
	"point":  {Title: "One point", X: minutes, Y: celsius, Curves: []Curve{{"Sample", []float64{12}, []float64{31.5}}}},
	"nought": {Title: "One point at nought", X: minutes, Y: celsius, Curves: []Curve{{"", []float64{0}, []float64{0}}}},
	"constant": {Title: "Constant", X: minutes, Y: celsius, Curves: []Curve{over("Held", 0, 90, 50, flat(25))},
		Lines: []Line{{25, "the same height"}}},
	"zero": {Title: "Zero all along", X: minutes, Y: Axis{Label: "Flow", Unit: "mL/min"},
		Curves: []Curve{over("Flow", 0, 90, 50, flat(0))}},
	"noise": {Title: "Constant but for the last digits", X: minutes, Y: celsius,
		Curves: []Curve{over("Held", 0, 90, 50, func(x float64) float64 { return 25 + 1e-13*x })}},
	"small": {Title: "Very small values", X: Axis{Label: "Time", Unit: "h"},
		Y:      Axis{Label: "Concentration", Unit: "mol/L"},
		Curves: []Curve{over("Rest", 0, 3e-5, 80, func(x float64) float64 { return 4.2e-9 * math.Exp(-x*1e5) })}},
	"large": {Title: "Very large values", X: Axis{Label: "Time", Unit: "s"}, Y: Axis{Label: "Count"},
		Curves: []Curve{over("Up", 0, 3e6, 80, func(x float64) float64 { return 7.3e11 * x }),
			over("Down", 0, 3e6, 80, func(x float64) float64 { return -2e18 + 1e11*x })}},
	"offset": {Title: "A small change of a large value", X: minutes, Y: Axis{Label: "Pressure", Unit: "Pa"},
		Curves: []Curve{over("Inside", 1e6, 1e6+1, 80, func(x float64) float64 { return 101325 + 0.02*math.Sin(9*x) })}},
	"wide ticks": {Title: "Long labels at the ticks and none beside the plot", X: Axis{Label: "Time", Unit: "s"},
		Y:      celsius,
		Curves: []Curve{over("", 1e6, 1e6+1, 80, hump(3e6, 0.05, 1e6))}},
	"two points": {Title: "Two points", X: minutes, Y: celsius,
		Curves: []Curve{{"", []float64{1, 4}, []float64{20, 35}}}},
	"extreme": {Title: "At the ends of the numbers", X: Axis{Label: "x"}, Y: Axis{Label: "y"},
		Curves: []Curve{over("a", -1e300, 1e300, 9, func(x float64) float64 { return -x })}},
	"tiny": {Title: "At the small end", X: Axis{Label: "x"}, Y: Axis{Label: "y"},
		Curves: []Curve{{"a", []float64{0, 5e-324}, []float64{0, 5e-324}}}},
	"log": {Title: "Decay over seven decades", X: minutes, Y: Axis{Label: "Fraction left", Log: true},
		Curves: []Curve{over("fast", 0, 60, 100, func(x float64) float64 { return math.Exp(-x / 4) }),
			over("slow", 0, 60, 100, func(x float64) float64 { return math.Exp(-x / 25) })},
		Lines: []Line{{0.01, "one part in a hundred"}}},
	"log narrow": {Title: "Log axis within one decade", X: minutes, Y: Axis{Label: "Pressure", Unit: "kPa", Log: true},
		Curves: []Curve{over("Inside", 0, 60, 100, hump(101, 22, 9))}},
	"log both": {Title: "Both axes logarithmic", X: Axis{Label: "Batch", Unit: "g", Log: true},
		Y: Axis{Label: "Rise", Unit: "K", Log: true},
		Curves: []Curve{over("Volume", 1, 1000, 40, func(x float64) float64 { return 0.3 * x }),
			over("Surface", 1, 1000, 40, func(x float64) float64 { return 2 * math.Pow(x, 2./3) }),
			over("Length", 1, 1000, 40, func(x float64) float64 { return 5 * math.Cbrt(x) })}},
	"log wide": {Title: "Four hundred decades", X: minutes, Y: Axis{Label: "y", Log: true},
		Curves: []Curve{over("a", 0, 400, 90, func(x float64) float64 { return math.Pow(10, x-200) })}},
	"log constant": {Title: "Constant on a log axis", X: minutes, Y: Axis{Label: "y", Log: true},
		Curves: []Curve{over("a", 0, 400, 90, flat(3))}},
	"dense": {Title: "Ten thousand points", X: minutes, Y: Axis{Label: "Signal", Unit: "mV"},
		Curves: []Curve{over("Signal", 0, 20, 10000, func(x float64) float64 {
			if math.Abs(x-13) < 0.001 {
				return 4
			}
			return jagged(x)
		})}},
	"long": {Title: longLabel, Alt: longLabel, X: Axis{Label: longLabel, Unit: "min"},
		Y: Axis{Label: longLabel, Unit: "°C", Log: true},
		Curves: []Curve{over(longLabel, 0, 60, 100, hump(22, 47, 14)),
			over(strings.ReplaceAll(longLabel, " ", ""), 0, 60, 100, hump(21, 40, 14))},
		Lines: []Line{{60, longLabel}, {61, longLabel}}, Marks: []Mark{{0, longLabel}, {30, longLabel}, {59, longLabel},
			{60, longLabel}}},
	"escape": {Title: `<b>"T" & 'U'</b>`, Alt: "a < b & c > d", X: Axis{Label: "<x>", Unit: `"&"`},
		Y:      Axis{Label: "</svg><script>", Unit: "&amp;"},
		Curves: []Curve{over("<A&B>", 0, 1, 5, flat(1)), over(`"C"`, 0, 1, 5, flat(2))}, Lines: []Line{{1.5, "a<b"}},
		Marks: []Mark{{0.5, "a & b > c\x00\x1b\ufffe\xff"}}},
	"wide letters": {Title: "测试标题 Ωμέγα Ж", X: Axis{Label: "时间", Unit: "min"}, Y: Axis{Label: "WWWWWW mmmmmm"},
		Curves: []Curve{over("测量曲线一测量曲线一测量曲线一", 0, 9, 30, flat(2)), over("WWWWMMMMWWWWMMMM@@@@", 0, 9, 30, flat(2.01))}},
	"short curves": {Title: "Curves that end early, and late events", X: minutes, Y: celsius,
		Curves: []Curve{over("first run", 0, 20, 60, hump(22, 40, 6)), over("second run", 0, 35, 60, hump(22, 30, 9)),
			over("third run", 10, 60, 60, hump(20, 15, 30))},
		Marks: []Mark{{70, "late"}, {-5, "early"}}},
}

// crowd has curves that end together and limits close by.
func crowd() Chart {
	c := Chart{Title: "Eight curves that end together", X: minutes, Y: celsius}
	for i := range 8 {
		c.Curves = append(c.Curves, over(fmt.Sprintf("batch of %d g, stirred", i+1), 0, 60, 120,
			hump(25, 10+5*float64(i), 7)))
	}
	for i := range 5 {
		c.Lines = append(c.Lines, Line{25.5 + 0.5*float64(i), fmt.Sprintf("limit %d of this place and its neighbours", i+1)})
	}
	return c
}

// manyMarks has events at one moment, close together and at both ends.
func manyMarks() Chart {
	c := Chart{Title: "Many events", X: minutes, Y: celsius,
		Curves: []Curve{over("Vessel", 0, 60, 120, hump(25, 30, 12)), over("Jacket", 0, 60, 120, hump(10, 9, 12))}}
	for i, x := range []float64{30, 0, 0, 1, 2, 12, 12, 12.1, 29.9, 31, 44, 58, 59.5, 60, 60} {
		c.Marks = append(c.Marks, Mark{x, fmt.Sprintf("event %c of the day", 'A'+i)})
	}
	return c
}
