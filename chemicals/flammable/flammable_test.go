package flammable

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/schemas/nearly"
)

// Vapour pressures by Antoine equations of handbooks (constants from memory, mmHg and
// degC): 2-propanol 8.11778, 1580.92, 219.61; ethanol 8.20417, 1642.89, 230.3; acetone
// 7.11714, 1210.595, 229.664; toluene 6.95464, 1344.8, 219.482, recomputed by hand.
func TestVapourPressures(t *testing.T) {
	for _, v := range []struct {
		name          string
		celsius, want float64
	}{
		{"isopropanol", 20, 4.41}, {"isopropanol", 40, 14.1}, {"ethanol", 20, 5.83}, {"ethanol", 60, 46.9},
		{"acetone", 20, 24.7}, {"toluene", 25, 3.79}, {"toluene", 60, 18.5},
	} {
		s, _ := chemicals.Library().Find(v.name)
		if got := Of(s).Pressure(v.celsius); !nearly.Share(got, v.want, 0.05) {
			t.Errorf("%s at %g degC: %.3g kPa, want %g", v.name, v.celsius, got, v.want)
		}
	}
}

// At its flash point the vapour over a pure liquid is about its lower flammable limit (a
// fact of the trade, common practice): within a factor of two and a half, flash points
// being the lowest found.
func TestFlashPointAndLimitAgree(t *testing.T) {
	for slug, l := range held() {
		if l.Flash > 60 {
			continue // the law of vapour pressure is not meant for so far from room temperature
		}
		share := l.Pressure(l.Flash) / 101.325 * 100 / l.Lower
		if !nearly.Between(share, 0.4, 2.5) {
			t.Errorf("%s at its flash point: %.2f of its limit", slug, share)
		}
	}
}

// What is classified as a flammable liquid is held here, and what only might be is not
// taken for one that cannot burn.
func TestWhatIsClassifiedIsHeld(t *testing.T) {
	for _, s := range chemicals.Library().All() {
		c := classifying.Mixture([]classifying.Part{{Sub: s, Share: 100}})
		if (c.Has("flam_liq_1") || c.Has("flam_liq_2") || c.Has("flam_liq_3")) && !Can(s) {
			t.Errorf("%s burns and is not held", s.Name)
		}
		if s.Kind == "solvent" && s.State == "l" && !Can(s) {
			t.Errorf("%s is a solvent of which nothing is known", s.Name)
		}
	}
	if w, _ := chemicals.Library().Find("water"); Can(w) {
		t.Error("water burns")
	}
}
