package stock_test

import (
	"strings"
	"testing"

	"etchbound/schemas/nearly"
)

// 2 L of 49 wt% acid are 2.306 kg (1.153 g/mL), on a floor that holds three quarters of 4.536 kg
// (10 lb) 0.678 of it; 200 L of acetone and 100 L of isopropanol, 156.9 and 78.1 kg, are 1.044 of
// three quarters of 300 kg together (by hand). Where nobody says how much of it holds, it is
// not known, and of another code neither; nobody asked for one where none is named.
func TestAmountsOfAFireCode(t *testing.T) {
	for _, row := range []struct {
		code     string
		hf, burn float64 // -1: not known, -2: not there
	}{
		{"fire_code: {table: us_model, times: 0.75}", 0.678, 1.044},
		{"fire_code: {table: us_model, times: 3}", 0.1695, 0.261},
		{"fire_code: {table: us_model}", -1, -1},
		{"fire_code: {table: our_town, times: 1}", -2, -2},
		{"", -2, -2},
	} {
		rv := made(t, row.code+`
stock:
  - {substance: hydrofluoric acid, strength: 49 wt%, volume: 2 L}
  - {substance: isopropanol, volume: 100 L}
  - {substance: acetone, volume: 200 L}
`)
		got := map[string]float64{}
		for i := range rv.Figures {
			if f := &rv.Figures[i]; f.Quantity == "stock.share" {
				if got[f.Agent] = f.High().V; f.Danger().Unknown() {
					got[f.Agent] = -1
				}
			}
		}
		for agent, want := range map[string]float64{"fire_highly_toxic": row.hf, "fire_sum_flammable_2": row.burn} {
			x, there := got[agent]
			if !there {
				x = -2
			}
			if !nearly.Share(x, want, 0.002) {
				t.Errorf("%s: %s is %g, want %g", row.code, agent, x, want)
			}
		}
		if _, told := got["fire_code"]; told != strings.Contains(row.code, "our_town") {
			t.Errorf("%s: a code that is not held is told: %t", row.code, told)
		}
	}
}
