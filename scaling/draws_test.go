package scaling_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// frozen is a case in which only one datum has a range.
func frozen(t *testing.T, c route.Case, free datum.ID) route.Case {
	t.Helper()
	var over []chemicals.Override
	for _, d := range c.Store.Rows() {
		if d.Swings() && d.ID != free {
			over = append(over, chemicals.Override{ID: d.ID, Value: d.Value, Low: math.NaN(), High: math.NaN(),
				Source: "frozen for a test", From: "route"})
		}
	}
	st, _, err := c.Store.Override(over)
	if err != nil {
		t.Fatal(err)
	}
	c.Store = st
	return c
}

func drawn(t testing.TB, c route.Case, n int, seed uint64, workers int) scaling.Sample {
	t.Helper()
	s, err := scaling.Draws(context.Background(), c, n, seed, workers, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The heat of the etch is linear in its enthalpy, which is normal with 95 % of it
// between its ends: 760 (685 to 835) kJ/mol over 194.605 g has 5 and 95 % at
// 760 -+ 1.644854 75/1.959964 kJ/mol (standard normal quantiles).
func TestQuantilesOfALinearFigure(t *testing.T) {
	long.NotShort(t)
	n, tolerance := 400, 3e-3 // the more draws, the nearer
	if long.Form() {
		n, tolerance = 4000, 2e-4
	}
	s := drawn(t, frozen(t, newCase(t, gram), "etch_heat.Ti3AlC2"), n, 7, 2)
	if len(s.Inputs) != 1 {
		t.Fatalf("%d inputs are drawn: %q", len(s.Inputs), s.Inputs)
	}
	b := s.Bands[figure.ID{Quantity: "heat.etch.total", Place: figure.Step(2)}]
	sigma := 75 / 1.959964
	for _, row := range []struct{ got, z float64 }{{b.P05, -1.644854}, {b.P50, 0}, {b.P95, 1.644854}} {
		if want := (760 + row.z*sigma) / 194.605; !nearly.Share(row.got, want, tolerance) {
			t.Errorf("%g kJ, want %g", row.got, want)
		}
	}
	if b.Unknown != 0 || len(s.Ranked) == 0 || s.Ranked[0].Shares[0].Share < 0.999 || s.Ranked[0].Unexplained > 1e-3 {
		t.Errorf("a lone input: %+v, unknown %d", s.Ranked, b.Unknown)
	}
}

// A lognormal datum: vapour leaves in proportion to the factor of evaporation,
// 1 (0.5 to 2), so 95 % lie below exp(1.644854 ln 2/1.959964) of the middle.
func TestQuantilesOfALognormalFigure(t *testing.T) {
	long.Only(t)
	open := strings.Replace(gram, "closure: vented", "closure: open", 1)
	n, tolerance := 400, 2e-2
	if long.Form() {
		n, tolerance = 4000, 2e-3
	}
	s := drawn(t, frozen(t, newCase(t, open), "air.evaporation"), n, 3, 2)
	b := s.Bands[figure.ID{Quantity: "air.emission", Place: figure.Step(1), Agent: "hf"}]
	if want := math.Exp(1.644854 * math.Ln2 / 1.959964); !nearly.Share(b.P95/b.P50, want, tolerance) ||
		!nearly.Share(b.P50/b.P05, want, tolerance) {
		t.Errorf("%+v, want a factor of %g", b, want)
	}
}

// The same seed gives the same, on one goroutine and on three; another does not.
func TestTheSameSeedGivesTheSame(t *testing.T) {
	long.NotShort(t)
	c := newCase(t, gram)
	n := 60
	if long.Form() {
		n = 300
	}
	a, b, other := drawn(t, c, n, 5, 1), drawn(t, c, n, 5, 3), drawn(t, c, n, 6, 3)
	text := func(s scaling.Sample) []byte {
		var out bytes.Buffer
		for _, id := range []string{"heat.etch.total@2", "gas.hydrogen.total", "heat.mtsr@2", "air.emission@1/hf"} {
			f, err := figure.Parse(id)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&out, "%s %v\n", id, s.Bands[f])
		}
		fmt.Fprint(&out, s.Ranked, s.Inputs)
		return out.Bytes()
	}
	if !bytes.Equal(text(a), text(b)) || !reflect.DeepEqual(a.Chance, b.Chance) {
		t.Error("one and three goroutines give other samples")
	}
	if bytes.Equal(text(a), text(other)) {
		t.Error("two seeds give the same sample")
	}
}

// Draws lie within the ends for a uniform datum, a chance is a share of the draws,
// and what is never known is unknown in all of them.
func TestChancesAndUnknowns(t *testing.T) {
	long.NotShort(t)
	s := drawn(t, newCase(t, strings.Replace(gram, ", vent: 6 mm", "", 1)), 100, 1, 2)
	vent := s.Chance[figure.FindingID{
		Figure: figure.ID{Quantity: "gas.vent.bore_required", Place: figure.Step(2), Case: figure.By("instantaneous")},
		Limit:  limit.Named(limit.Route, "written_vent"),
	}]
	if vent.Unknown != 1 || vent.Exceeds != 0 {
		t.Errorf("a vent nobody stated: %+v", vent)
	}
	for id, c := range s.Chance {
		if !(c.Exceeds >= 0 && c.Unknown >= 0 && c.Exceeds+c.Unknown <= 1+1e-12) {
			t.Errorf("%s: %+v", id, c)
		}
	}
	hidden := drawn(t, newCase(t, strings.Replace(gram, "phase: Ti3AlC2", "phase: Ti3GeC2", 1)), 50, 1, 2)
	if b := hidden.Bands[figure.ID{Quantity: "heat.etch.total", Place: figure.Step(2)}]; !math.IsNaN(b.P50) ||
		b.Unknown != 50 {
		t.Errorf("a heat nobody knows: %+v", b)
	}
}

// What was stated with an amount above zero at its low end is never drawn below
// zero: 5 (0.5 to 10) mL/g has a normal tail that would get there in 1.5 % of the draws.
func TestNoDrawIsLessThanNothing(t *testing.T) {
	wide := newCase(t, strings.Replace(gram, "mass: 1 g,", "mass: 1 (0.05 to 4) g,", 1))
	d, err := hazards.NewDrawing(wide)
	if err != nil {
		t.Fatal(err)
	}
	at := slices.Index(d.Inputs(), "given:precursor.mass")
	if at < 0 {
		t.Fatalf("the mass is not drawn: %q", d.Inputs())
	}
	last := 0.0
	for _, share := range []float64{1e-6, 0.001, 0.01, 0.0249, 0.025, 0.03, 0.5} {
		shares := slices.Repeat([]float64{0.5}, len(d.Inputs()))
		shares[at] = share
		x, err := d.At(shares)
		if err != nil {
			t.Fatal(err)
		}
		for i := range x.Figures {
			if f := &x.Figures[i]; f.ID.String() == "heat.etch.total" {
				if !(f.Value.V > last) {
					t.Errorf("at %g: %g kJ, after %g", share, f.Value.V, last)
				}
				last = f.Value.V
			}
		}
	}
}

func TestDrawsRefused(t *testing.T) {
	c := newCase(t, gram)
	for _, n := range []int{-1, 0, 19, 100001} {
		if _, err := scaling.Draws(context.Background(), c, n, 1, 1, nil); err == nil {
			t.Errorf("%d draws", n)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := scaling.Draws(ctx, c, 100, 1, 2, nil); err == nil {
		t.Error("a cancelled sample has no error")
	}
}

func BenchmarkDraws(b *testing.B) {
	c := newCase(b, gram)
	for b.Loop() {
		drawn(b, c, 1000, 1, 2)
	}
}
