package scaling_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

func compared(t *testing.T, routes ...string) scaling.Comparison {
	t.Helper()
	var cases []route.Case
	for _, y := range routes {
		cases = append(cases, newCase(t, y))
	}
	c, err := scaling.Compare(cases)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func rowOf(t *testing.T, c scaling.Comparison, quantity string, perGram bool) scaling.Row {
	t.Helper()
	for _, r := range c.Rows {
		if r.Quantity == quantity && r.PerGram == perGram {
			return r
		}
	}
	t.Fatalf("no row of %s", quantity)
	return scaling.Row{}
}

// The product of Ti3AlC2 with O 1.0, F 0.9 and OH 0.1: 194.605 - 26.982 + 15.999 +
// 17.098 + 1.701 = 202.421 g/mol (abridged standard atomic weights 2021), so 1 g
// of powder gives 1.0402 g.
func TestMassOfTheProduct(t *testing.T) {
	long.NotShort(t)
	c := compared(t, gram, gram)
	for _, p := range c.Product {
		if !nearly.To(p, 202.421/194.605, 1e-4) {
			t.Errorf("%g g of product, want %g", p, 202.421/194.605)
		}
	}
	heat, each := rowOf(t, c, "heat.etch.total", false), rowOf(t, c, "heat.etch.total", true)
	if !nearly.To(each.Cells[0].Value*c.Product[0], heat.Cells[0].Value, 1e-9) {
		t.Errorf("%g kJ, and %g per g of product", heat.Cells[0].Value, each.Cells[0].Value)
	}
}

// The same route twice is never told apart; twice the acid is, and in the order of
// what there is; what is not known tells nothing.
func TestToldApart(t *testing.T) {
	long.Only(t)
	for _, r := range compared(t, gram, gram).Rows {
		if r.Told == scaling.Apart {
			t.Errorf("%s tells a route from itself", r.Quantity)
		}
	}
	more := strings.Replace(gram, "volume: 20 mL", "volume: 40 mL", 1)
	r := rowOf(t, compared(t, more, gram), "fluoride.hf_equivalent", false)
	if r.Told != scaling.Apart || r.Least[0] != 1 {
		t.Errorf("%+v, want the second below the first", r)
	}
	if r := rowOf(t, compared(t, more, gram), "heat.etch.total", false); r.Told != scaling.Overlap {
		t.Errorf("the same heat: %+v", r)
	}
	unlike := strings.Replace(gram, "phase: Ti3AlC2", "phase: Ti3GeC2", 1)
	c := compared(t, unlike, gram)
	if r := rowOf(t, c, "heat.etch.total", false); !math.IsNaN(r.Cells[0].Value) || r.Told != scaling.Unknown {
		t.Errorf("a heat nobody knows: %+v", r)
	}
}

func TestHowManyRoutes(t *testing.T) {
	c := newCase(t, gram)
	for _, n := range []int{0, 1, 9} {
		if _, err := scaling.Compare(make([]route.Case, n)); err == nil {
			t.Errorf("%d routes are compared", n)
		}
	}
	if a, b := scaling.Hours(c.Route); a != 0 || !nearly.To(b-24, 1.0/6, 1e-9) {
		t.Errorf("%g and %g h", a, b)
	}
}
