package aqueous_test

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/aqueous"
	"etchbound/schemas/columns"
	"etchbound/schemas/long"
)

//go:embed constants.csv
var constantsText string

// constant is a row of the constants as this test reads it: by its reaction, with nothing of
// what the package makes of it.
type constant struct {
	kind, name, activity  string
	charge, k, h, size, b float64
	analytic              []float64
	of                    map[string]float64 // in the reaction, products above 0
	doubted               bool
}

func readConstants(t testing.TB) []constant {
	rows, err := columns.Read("constants.csv", constantsText, func(r columns.Row) constant {
		c := constant{kind: r.Text("kind"), name: r.Text("name"), activity: r.Text("activity"),
			charge: float(r.Text("charge")), k: float(r.Text("log_k")), h: float(r.Text("delta_h")),
			size: float(r.Text("ion_size")), b: float(r.Text("b")), of: map[string]float64{},
			doubted: strings.HasPrefix(r.Text("note"), "doubted")}
		_ = r.Text("component") + r.Text("fluoride") + r.Text("source") + r.Text("status")
		for _, a := range strings.Split(r.Text("analytic"), "|") {
			c.analytic = append(c.analytic, float(a))
		}
		left, right, _ := strings.Cut(r.Text("reaction"), " = ")
		if c.kind == "phase" { // the first is the solid itself, which may be named as a species is
			_, left, _ = strings.Cut(left, " + ")
		}
		c.side(left, -1)
		c.side(right, 1)
		return c
	})
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func float(text string) float64 {
	v, _ := strconv.ParseFloat(text, 64)
	return v
}

// side reads one side of a reaction.
func (c *constant) side(text string, sign float64) {
	for _, term := range strings.Split(text, " + ") {
		n, name, counted := strings.Cut(term, " ")
		if !counted {
			n, name = "1", term
		}
		if name != "" {
			c.of[name] += sign * float(n)
		}
	}
}

// logK at a temperature, kelvin.
func (c *constant) logK(t float64) float64 {
	if len(c.analytic) < 2 {
		return c.k - c.h/(math.Ln10*8.3147e-3)*(1/t-1/298.15)
	}
	sum := 0.0
	for i, by := range []float64{1, t, 1 / t, math.Log10(t), 1 / (t * t), t * t}[:len(c.analytic)] {
		sum += c.analytic[i] * by
	}
	return sum
}

// debye are A and B of the activity model at the temperatures of a published table.
var debye = map[float64][2]float64{5: {0.49424, 0.32538}, 15: {0.50170, 0.32692}, 25: {0.51002, 0.32849},
	40: {0.52412, 0.33095}, 60: {0.54590, 0.33446}}

// logA is log10 of the activity of a species.
func (c *constant) logA(s *aqueous.State, celsius float64) float64 {
	m, _ := s.Molality(c.name)
	i, z, root := s.IonicStrength(), c.charge*c.charge, math.Sqrt(s.IonicStrength())
	a, b := debye[celsius][0], debye[celsius][1]
	switch c.activity {
	case "wateq":
		return math.Log10(m) - a*z*root/(1+b*c.size*root) + c.b*i
	case "davies":
		return math.Log10(m) - a*z*(root/(1+root)-0.3*i)
	}
	return math.Log10(m) + c.b*i
}

// obeys checks each law of mass action by the reactions as written, and that no solid that
// may settle is oversaturated or, where it is there, away from its saturation.
func obeys(t *rapid.T, all []constant, celsius float64, mix aqueous.Mixture, s *aqueous.State) {
	at := map[string]float64{"H2O": math.Log10(s.WaterActivity())}
	sum := 0.0
	for _, c := range all {
		if m, _ := s.Molality(c.name); (c.kind == "master" || c.kind == "species") && m > 0 {
			at[c.name], sum = c.logA(s, celsius), sum+m
		}
	}
	if water := 1 - 0.017*sum; !(math.Abs(water-s.WaterActivity()) <= 1e-9) {
		t.Fatalf("the activity of water is %g, want %g", s.WaterActivity(), water)
	}
	if !(math.Abs(s.PH()+at["H+"]) <= 1e-3) {
		t.Fatalf("pH %g, log10 of the activity of H+ %g", s.PH(), at["H+"])
	}
	for _, c := range all {
		if c.doubted || c.kind == "master" {
			continue
		}
		off, whole := -c.logK(celsius+273.15), true
		for name, n := range c.of {
			a, there := at[name]
			switch {
			case there:
				off += n * a
			case c.kind == "species" || n > 0:
				whole = false
			}
		}
		// A and B are rounded to five digits, which shifts what is highly charged
		near := 1e-5 + 4e-4*s.IonicStrength()
		switch start, may := startOf(mix, c.name); {
		case !whole:
		case c.kind == "species" && !(math.Abs(off) <= near):
			t.Fatalf("%s is off its constant by %g", c.name, off)
		case c.kind == "phase" && may && (off > near || s.Transfer(c.name)+start > 1e-9 && off < -near):
			t.Fatalf("%s: saturation %g with %g mol of it", c.name, off, s.Transfer(c.name)+start)
		}
	}
}

func startOf(mix aqueous.Mixture, solid string) (start float64, there bool) {
	for _, a := range mix.Solids {
		if a.Of == solid {
			return a.Mol, true
		}
	}
	return 0, false
}

// What is answered obeys every constant, away from 25 degC as well.
func TestWhatIsAnsweredObeysEveryConstant(t *testing.T) {
	long.Draws(t, 40)
	all := readConstants(t)
	answered, refused := 0, map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		celsius := rapid.SampledFrom([]float64{5, 15, 25, 40, 60}).Draw(t, "celsius")
		m, err := aqueous.At(celsius)
		if err != nil {
			t.Fatal(err)
		}
		mix := drawn(t)
		s, err := m.Solve(mix)
		if err != nil {
			refused[err.Error()[:24]]++
			return
		}
		answered++
		balance(t, mix, s)
		obeys(t, all, celsius, mix, s)
		if mix.Reagent != "" && !(math.Abs(s.PH()-mix.FixedPH) <= 1e-9) {
			t.Fatalf("pH %g, asked for %g", s.PH(), mix.FixedPH)
		}
	})
	t.Logf("%d answered, refused %v", answered, refused)
}
