package quantity_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"etchbound/schemas/quantity"
	"pgregory.net/rapid"
)

// parses are texts and what they are in SI.
var parses = []struct {
	text string
	dim  quantity.Dimension
	want float64
}{
	{"40 mL", quantity.Volume, 40e-6},
	{"40mL", quantity.Volume, 40e-6},
	{"40 ml", quantity.Volume, 40e-6},
	{"0.5 dm3", quantity.Volume, 0.5e-3},
	{"5 cm3", quantity.Volume, 5e-6},
	{"7 \u00b5L", quantity.Volume, 7e-9}, // micro sign
	{"7 \u03bcL", quantity.Volume, 7e-9}, // Greek mu
	{"1.6 g", quantity.Mass, 1.6e-3},
	{"250 mg", quantity.Mass, 250e-6},
	{"48 wt%", quantity.MassFraction, 0.48},
	{"48 wt %", quantity.MassFraction, 0.48},
	{"48 %w/w", quantity.MassFraction, 0.48},
	{"48 % (w/w)", quantity.MassFraction, 0.48},
	{"48 mass%", quantity.MassFraction, 0.48},
	{"9 mol/L", quantity.Molarity, 9000},
	{"9 M", quantity.Molarity, 9000},
	{"9 mol L\u207b\u00b9", quantity.Molarity, 9000},
	{"20 mmol/L", quantity.Molarity, 20},
	{"2 mol/kg", quantity.Molality, 2},
	{"5 g/L", quantity.MassConc, 5},
	{"5 mg/mL", quantity.MassConc, 5},
	{"35 degC", quantity.Temperature, 308.15},
	{"35 \u00b0C", quantity.Temperature, 308.15},
	{"\u221278 degC", quantity.Temperature, 195.15}, // Unicode minus
	{"308.15 K", quantity.Temperature, 308.15},
	{"10 K", quantity.TemperatureDiff, 10},
	{"10 min", quantity.Time, 600},
	{"24 h", quantity.Time, 86400},
	{"2 d", quantity.Time, 172800},
	{"0.5 bar", quantity.Pressure, 5e4},
	{"500 kPa", quantity.Pressure, 5e5},
	{"0.5 MPa", quantity.Pressure, 5e5},
	{"38 um", quantity.Length, 38e-6},
	{"6 mm", quantity.Length, 6e-3},
	{"100 cm2", quantity.Area, 1e-2},
	{"3600 m3/h", quantity.Flow, 1},
	{"60 L/min", quantity.Flow, 1e-3},
	{"0.5 m/s", quantity.Velocity, 0.5},
	{"50 mm/s", quantity.Velocity, 0.05},
	{"100 fpm", quantity.Velocity, 0.508},          // NIST SP 811, table B.8: 1 ft/min = 5.08e-3 m/s
	{"60 cfm", quantity.Flow, 0.028316846592},      // the same: 1 ft3/min = 4.719474e-4 m3/s
	{"1000 ft3", quantity.AirVolume, 28.316846592}, // the same: 1 ft3 = 2.831685e-2 m3
	{"240 m3", quantity.AirVolume, 240},
	{"1000 t", quantity.StockMass, 1e6},
	{"15 g/h", quantity.MassFlow, 15e-3 / 3600},
	{"60 mg/min", quantity.MassFlow, 1e-6},
	{"2 W/K", quantity.Conductance, 2},
	{"200 mA", quantity.CellCurrent, 0.2},
	{"720 kJ/mol", quantity.MolarEnergy, 720e3},
	{"5 mL/g", quantity.VolumePerMass, 5e-3},
	{"5 L/kg", quantity.VolumePerMass, 5e-3},
	{"10 ppm", quantity.AirFraction, 1e-5},
	{"4 vol%", quantity.AirFraction, 0.04},
	{"10 %", quantity.Fraction, 0.1},
	{"12 mol/mol", quantity.Ratio, 12},
	{"4", quantity.Count, 4},
	{"1.5e3 Pa", quantity.Pressure, 1500},
	{"+5 g", quantity.Mass, 5e-3},
}

// The SI values are definitions: SI Brochure, BIPM, 9th edition, 2019, tables 2,
// 4, 7 and 8; 0 degC is 273.15 K exactly.
func TestParse(t *testing.T) {
	for _, tt := range parses {
		v, err := quantity.Parse(tt.text, tt.dim)
		if err != nil {
			t.Errorf("%q: %v", tt.text, err)
			continue
		}
		// The sum with 273.15 costs the last bit; everything else is exact.
		exact := v.SI == tt.want || tt.dim == quantity.Temperature && math.Abs(v.SI-tt.want) < 1e-12*tt.want
		if !exact || v.Dim != tt.dim || !v.Set || v.HasRange() {
			t.Errorf("%q = %v of %v, want exactly %v of %v", tt.text, v.SI, v.Dim, tt.want, tt.dim)
		}
	}
}

func TestParseRange(t *testing.T) {
	for _, text := range []string{"10 (9 to 11) g", "10(9 to 11)g", " 10 ( 9 to 11 ) g ", "10 (9\u201311) g"} {
		v, err := quantity.Parse(text, quantity.Mass)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		low, high := v.Range("g")
		if v.In("g") != 10 || low != 9 || high != 11 || !v.HasRange() {
			t.Errorf("%q = %v (%v to %v) g", text, v.In("g"), low, high)
		}
	}
}

// refuses are texts that are no amount, with the reason and the hint.
var refuses = []struct {
	text   string
	dim    quantity.Dimension
	reason error
	hint   string
}{
	{"", quantity.Mass, quantity.ErrNumber, ""},
	{"g", quantity.Mass, quantity.ErrNumber, "write your own number before it"},
	{"mL", quantity.Volume, quantity.ErrNumber, "write your own number before it"},
	{"nan g", quantity.Mass, quantity.ErrFinite, ""},
	{"inf g", quantity.Mass, quantity.ErrFinite, ""},
	{"-Infinity g", quantity.Mass, quantity.ErrFinite, ""},
	{"0x1F g", quantity.Mass, quantity.ErrNumber, "plain decimal"},
	{"0b11 g", quantity.Mass, quantity.ErrNumber, "plain decimal"},
	{"0o17 g", quantity.Mass, quantity.ErrNumber, "plain decimal"},
	{"1_000 g", quantity.Mass, quantity.ErrNumber, "without it"},
	{"010 g", quantity.Mass, quantity.ErrNumber, "write 10"},
	{"00.5 g", quantity.Mass, quantity.ErrNumber, ""},
	{"1e400 g", quantity.Mass, quantity.ErrNumber, ""},
	{"1e-400 g", quantity.Mass, quantity.ErrNumber, ""},
	{"1e-322 mg", quantity.Mass, quantity.ErrNumber, ""}, // underflows in kg
	{"1,5 g", quantity.Mass, quantity.ErrNumber, "1.5 g"},
	{"0.95", quantity.Fraction, quantity.ErrNoUnit, "a share of one is written in percent"},
	{"0.07", quantity.MassFraction, quantity.ErrNoUnit, "a share of one is written in percent"},
	{"2 weeks", quantity.Time, quantity.ErrUnit, "write days: 14 d"},
	{"overnight", quantity.Time, quantity.ErrNumber, "how long it was, in h"},
	{"2 months", quantity.Time, quantity.ErrUnit, "how many days"},
	{"6", quantity.Time, quantity.ErrNoUnit, "write the unit that is meant: min, s, h, d"},
	{"RT", quantity.Temperature, quantity.ErrNumber, "in degC"},
	{"5-10 min", quantity.Time, quantity.ErrNumber, "value (low to high) min"},
	{"40 mL per cycle", quantity.Volume, quantity.ErrUnit, "write 40 mL, and"},
	{"24 h (20 to 30)", quantity.Time, quantity.ErrUnit, "24 (20 to 30) h"},
	// A thousand milligrams must not become one: both readings are offered.
	{"1,000 mg", quantity.Mass, quantity.ErrNumber, "write 1000 mg, or 1.000 mg if the comma is a decimal one"},
	{"1,000,000 mg", quantity.Mass, quantity.ErrNumber, "without it: 1000000 mg"},
	{"1,000.5 mg", quantity.Mass, quantity.ErrNumber, "without it: 1000.5 mg"},
	{"1.000,5 mg", quantity.Mass, quantity.ErrNumber, "one decimal point: 1000.5 mg"},
	{"0,125 g", quantity.Mass, quantity.ErrNumber, "point: 0.125 g"},
	{"-1,25 g", quantity.Mass, quantity.ErrNumber, "point: -1.25 g"},
	{"3,2 (3,1 to 3,3) g", quantity.Mass, quantity.ErrNumber, "point: 3.2 (3.1 to 3.3) g"},
	{"2 (1,500 to 2500) g", quantity.Mass, quantity.ErrNumber, "write 1500, or 1.500 if"},
	{"1.5.2 g", quantity.Mass, quantity.ErrNumber, ""},
	{".5 g", quantity.Mass, quantity.ErrNumber, "0.5 g"},
	{"5. g", quantity.Mass, quantity.ErrNumber, "write 5"},
	{"1 000 g", quantity.Mass, quantity.ErrNumber, "without a space"},
	{"1:30 h", quantity.Time, quantity.ErrNumber, "one unit: min, s, h, d"},
	{"2 x 10^3 g", quantity.Mass, quantity.ErrNumber, "with e before it"},
	{"10 \u00b1 1 g", quantity.Mass, quantity.ErrNumber, "value (low to high) g"},
	{"9-11 g", quantity.Mass, quantity.ErrNumber, "value (low to high) g"},
	{"9 to 11 g", quantity.Mass, quantity.ErrNumber, "value (low to high) g"},
	{"about 10 g", quantity.Mass, quantity.ErrNumber, "range"},
	{"<10 g", quantity.Mass, quantity.ErrNumber, "range"},
	{"\u0664\u0660 g", quantity.Mass, quantity.ErrNumber, ""}, // Arabic digits
	{"40", quantity.Mass, quantity.ErrNoUnit, "write the unit that is meant: g, mg"},
	{"40 mL", quantity.Mass, quantity.ErrDimension, ""},
	{"40 gg", quantity.Mass, quantity.ErrUnit, "did you mean g"},
	{"40 KG", quantity.Mass, quantity.ErrUnit, "did you mean kg"},
	{"40 psi", quantity.Pressure, quantity.ErrUnit, "6.895 kPa"},
	{"2 atm", quantity.Pressure, quantity.ErrUnit, "gauge"},
	{"98 %", quantity.MassFraction, quantity.ErrDimension, "in wt%"},
	{"35 C", quantity.Temperature, quantity.ErrUnit, "degC"},
	{"5 degC", quantity.TemperatureDiff, quantity.ErrDimension, "5 K"},
	{"10 (11 to 12) g", quantity.Mass, quantity.ErrRange, ""},
	{"10 (9 to 9.5) g", quantity.Mass, quantity.ErrRange, ""},
	{"10 (9, 11) g", quantity.Mass, quantity.ErrRange, "(low to high)"},
	{"10 (9 g to 11 g)", quantity.Mass, quantity.ErrNumber, ""},
	{"10 (9 to 11 g", quantity.Mass, quantity.ErrRange, ""},
	{"-1 g", quantity.Mass, quantity.ErrSize, ""},
	{"\u22121 g", quantity.Mass, quantity.ErrSize, ""},
	{"1 (-1 to 2) g", quantity.Mass, quantity.ErrSize, ""},
	{"1001 kg", quantity.Mass, quantity.ErrSize, "1000 kg"},
	{"1001 t", quantity.StockMass, quantity.ErrSize, "1000 t"},
	{"101 m3", quantity.Volume, quantity.ErrSize, "100 m3"},
	{"-274 degC", quantity.Temperature, quantity.ErrSize, ""},
	{"2001 degC", quantity.Temperature, quantity.ErrSize, "2000 degC"},
	{"-1 K", quantity.Temperature, quantity.ErrSize, ""},
	{"101 wt%", quantity.MassFraction, quantity.ErrSize, "100 wt%"},
	{"101 %", quantity.Fraction, quantity.ErrSize, "100 %"},
	{"1900 d", quantity.Time, quantity.ErrSize, ""},
	{"2.5", quantity.Count, quantity.ErrSize, ""},
}

func TestParseRefuses(t *testing.T) {
	for _, tt := range refuses {
		_, err := quantity.Parse(tt.text, tt.dim)
		var e *quantity.Error
		if !errors.As(err, &e) || !errors.Is(err, tt.reason) {
			t.Errorf("%q: %v, want %v", tt.text, err, tt.reason)
			continue
		}
		if !strings.Contains(e.Hint, tt.hint) || e.Accepted == "" || e.What == "" {
			t.Errorf("%q: %v, want the hint %q", tt.text, err, tt.hint)
		}
	}
}

// The place of the trouble is counted in characters.
func TestErrorOffset(t *testing.T) {
	tests := map[string]int{"40 gg": 3, "  40 gg": 5, "10 (9 to 11) gg": 13, "\u22121 \u00b5\u00b5g": 3, " x": 1,
		"10 (9, 11) g": 3}
	for text, want := range tests {
		_, err := quantity.Parse(text, quantity.Temperature)
		var e *quantity.Error
		if !errors.As(err, &e) || e.Offset != want {
			t.Errorf("%q: offset %+v, want %d", text, e, want)
		}
	}
}

func allUnits() (list []string, dims []quantity.Dimension) {
	for d := quantity.Mass; d <= quantity.MassFlow; d++ {
		for _, u := range quantity.Units(d) {
			list, dims = append(list, u), append(dims, d)
		}
	}
	return list, dims
}

// What was written is given back to the last bit, in every unit.
func TestParseInRoundTrip(t *testing.T) {
	units, dims := allUnits()
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(units)-1).Draw(t, "unit")
		digits := rapid.IntRange(0, 99999).Draw(t, "digits")
		power := rapid.IntRange(-6, 0).Draw(t, "power")
		text := quantity.Number(float64(digits)*math.Pow10(power), 6)
		v, err := quantity.Parse(text+" "+units[i], dims[i])
		if errors.Is(err, quantity.ErrSize) {
			t.Skip()
		}
		if err != nil {
			t.Fatal(err)
		}
		if again := quantity.Number(v.In(units[i]), 6); again != text {
			t.Fatalf("%s %s is given back as %s", text, units[i], again)
		}
	})
}

// parse(format(x)) = x, with its range, in the unit it was written in.
func TestFormatParseRoundTrip(t *testing.T) {
	units, dims := allUnits()
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(units)-1).Draw(t, "unit")
		x := rapid.Float64Range(1e-9, 0.9).Draw(t, "x")
		k := rapid.Float64Range(1, 1.1).Draw(t, "k")
		if dims[i] == quantity.Count {
			t.Skip()
		}
		first, err := quantity.Parse(quantity.Number(x, 0)+" ("+quantity.Number(x/k, 0)+" to "+quantity.Number(x*k, 0)+") "+
			units[i], dims[i])
		if errors.Is(err, quantity.ErrSize) {
			t.Skip()
		}
		if err != nil {
			t.Fatal(err)
		}
		again, err := quantity.Parse(first.Format(units[i], 0), dims[i])
		if err != nil {
			t.Fatal(err)
		}
		if again.SI != first.SI || again.Low != first.Low || again.High != first.High {
			t.Fatalf("%v %v became %v after %q", x, units[i], again, first.Format(units[i], 0))
		}
	})
}

func TestTimes(t *testing.T) {
	v, err := quantity.Parse("10 (9 to 11) mL", quantity.Volume)
	if err != nil {
		t.Fatal(err)
	}
	v.At = "here"
	w := v.Times(2.5)
	if w.Text != "25 (22.5 to 27.5) mL" || w.At != "here" || w.In("mL") != 25 {
		t.Errorf("10 (9 to 11) mL times 2.5 is %+v", w)
	}
	if z := (quantity.Value{}).Times(3); z.Set || !math.IsNaN(z.In("mL")) {
		t.Errorf("a value that was left out became %+v", z)
	}
}

func TestInPanicsOnAnotherDimension(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a mass was read in mL")
		}
	}()
	quantity.Of(1, "g").In("mL")
}

func TestNumber(t *testing.T) {
	tests := []struct {
		x      float64
		digits int
		want   string
	}{
		{40, 3, "40.0"}, {1234.5, 3, "1230"}, {0.0012345, 3, "0.00123"}, {999.9, 3, "1000"}, {0.99996, 4, "1.000"},
		{1e-7, 2, "1.0e-07"}, {0, 3, "0"}, {0.1, 0, "0.1"}, {-2.5, 2, "-2.5"}, {math.NaN(), 3, ""}, {math.Inf(1), 3, ""},
	}
	for _, tt := range tests {
		if got := quantity.Number(tt.x, tt.digits); got != tt.want {
			t.Errorf("Number(%v, %d) = %q, want %q", tt.x, tt.digits, got, tt.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"40 mL", "10 (9 to 11) g", "1,5 g", "-78 degC", "48 % (w/w)", "1e400 g", "10 (", "()",
		"9-11 g", "\u00b5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := quantity.Parse(text)
		if err != nil {
			var e *quantity.Error
			if !errors.As(err, &e) || e.What == "" || e.Offset < 0 || e.Offset > len(text) {
				t.Fatalf("%q: %#v", text, err)
			}
			return
		}
		if math.IsNaN(v.SI) || math.IsInf(v.SI, 0) || v.Low > v.SI || v.High < v.SI {
			t.Fatalf("%q became %+v", text, v)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		quantity.Parse("10 (9 to 11) mL/g", quantity.Volume, quantity.VolumePerMass, quantity.Fraction)
	}
}
