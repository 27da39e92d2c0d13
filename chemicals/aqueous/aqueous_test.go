package aqueous_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/aqueous"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

func solve(t testing.TB, celsius float64, mix aqueous.Mixture) *aqueous.State {
	t.Helper()
	m, err := aqueous.At(celsius)
	if err != nil {
		t.Fatal(err)
	}
	s, err := m.Solve(mix)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The liquor of 1 g Ti3AlC2 in 10 mL of 10 wt% HF, diluted ten times, and lime: the pH reads
// neutral while most of the fluoride is dissolved.
func TestTheFalseEndPoint(t *testing.T) {
	liquor := aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: 0.52}, {Of: "Al", Mol: 0.0514}},
		Solids: []aqueous.Amount{{Of: "Fluorite"}, {Of: "Al(OH)3(a)"}}, Reagent: "Ca(OH)2"}
	for _, c := range []struct{ ph, fluoride, lime, aged float64 }{ // mg/kg, mol/kg, mg/kg with aged hydroxide
		{6, 2917, 0.183, 44}, {8, 6.7, 0.260, 6.7}} {
		mix := liquor
		mix.FixedPH = c.ph
		m, _ := aqueous.At(25)
		b, err := m.Band(mix, func(s *aqueous.State) float64 { return s.Fluoride() * fluorine * 1000 })
		if err != nil {
			t.Fatal(err)
		}
		if !nearly.Share(b.Central, c.fluoride, 0.01) || len(b.Without) > 0 || len(b.Outside) > 0 {
			t.Errorf("pH %g: %+v, want %g mg/kg", c.ph, b, c.fluoride)
		}
		if !(b.Low < 1.3*c.aged && b.Low <= b.Central && b.High >= b.Central) {
			t.Errorf("pH %g: from %g to %g mg/kg does not span aged hydroxide, %g", c.ph, b.Low, b.High, c.aged)
		}
		if s := solve(t, 25, mix); !nearly.Share(s.Reagent(), c.lime, 0.005) {
			t.Errorf("pH %g: %g mol/kg of lime, want %g", c.ph, s.Reagent(), c.lime)
		}
	}
}

// 60 mmol of lithium fluoride left in 40 mL of wash water at pH 6 is not washed out.
func TestLithiumFluorideIsNotWashedAtPH6(t *testing.T) {
	s := solve(t, 25, aqueous.Mixture{Solids: []aqueous.Amount{{Of: "LiF_s", Mol: 1.5}}, Reagent: "HCl", FixedPH: 6})
	if f := s.Fluoride() * fluorine; !(f > 0.98 && f < 1.0) || !(s.Solid("LiF_s") > 1.4) {
		t.Errorf("%g g/kg of fluoride, %g mol of solid", f, s.Solid("LiF_s"))
	}
	for _, c := range []struct{ ph, fluoride float64 }{{3, 1.6}, {2, 4.0}} { // g/kg, in acid
		s := solve(t, 25, aqueous.Mixture{Solids: []aqueous.Amount{{Of: "LiF_s", Mol: 1.5}}, Reagent: "HCl", FixedPH: c.ph})
		if f := s.Fluoride() * fluorine; !nearly.Share(f, c.fluoride, 0.08) {
			t.Errorf("pH %g: %g g/kg of fluoride, want about %g", c.ph, f, c.fluoride)
		}
	}
}

// Base breaks up SiF6 2- at once, and BF4- as far as time lets it.
func TestComplexesGiveUpTheirFluoride(t *testing.T) {
	acid := solve(t, 25, aqueous.Mixture{Totals: []aqueous.Amount{{Of: "Si", Mol: 0.01}, {Of: "F", Mol: 0.06}},
		Solids: []aqueous.Amount{{Of: "SiO2(a)"}}})
	base := solve(t, 25, aqueous.Mixture{Totals: []aqueous.Amount{{Of: "Si", Mol: 0.01}, {Of: "F", Mol: 0.06}},
		Solids: []aqueous.Amount{{Of: "SiO2(a)"}}, Reagent: "NaOH", FixedPH: 8})
	a, _ := acid.Molality("SiF6-2")
	b, _ := base.Molality("SiF6-2")
	if !(a > 0.007) || !(b < 1e-6) {
		t.Errorf("%g mol/kg of SiF6 2- in acid, %g at pH 8", a, b)
	}
	for _, k := range aqueous.Slow() {
		if k.Component != "BF4" {
			continue
		}
		limed := func(share float64) float64 {
			return solve(t, 25, aqueous.Mixture{Totals: k.After(0.114, share),
				Added:  []aqueous.Amount{{Of: "Ca(OH)2", Mol: 0.228}},
				Solids: []aqueous.Amount{{Of: "Fluorite"}, {Of: "Portlandite"}}}).Fluoride()
		}
		if cold, hot := limed(k.Low), limed(1); !nearly.Share(cold, 4*0.114, 0.01) || !(hot < 0.01) {
			t.Errorf("%g mol/kg of fluoride cold, %g with all of it broken up", cold, hot)
		}
	}
}

var kinds = []string{"NaOH", "HCl", "Ca(OH)2", "KOH"}

// drawn is any mixture: totals from 1e-12 to 10 mol/kg, solids, gas, a reagent.
func drawn(t *rapid.T) aqueous.Mixture {
	var mix aqueous.Mixture
	power := rapid.Float64Range(-12, 1)
	for _, of := range aqueous.Components() {
		if rapid.IntRange(0, 2).Draw(t, of) == 0 {
			mix.Totals = append(mix.Totals, aqueous.Amount{Of: of, Mol: math.Pow(10, power.Draw(t, "power"))})
		}
	}
	for _, of := range aqueous.Solids() {
		switch rapid.IntRange(0, 8).Draw(t, of) {
		case 0:
			mix.Solids = append(mix.Solids, aqueous.Amount{Of: of, Mol: math.Pow(10, power.Draw(t, "start")-1)})
		case 1, 2:
			mix.Solids = append(mix.Solids, aqueous.Amount{Of: of})
		}
	}
	mix.Gas = aqueous.Gas{Kind: aqueous.Boundary(rapid.IntRange(0, 3).Draw(t, "gas")), Value: 0.5}
	if rapid.IntRange(0, 3).Draw(t, "kept") == 0 {
		mix.Reagent, mix.FixedPH = rapid.SampledFrom(kinds).Draw(t, "reagent"), rapid.Float64Range(1, 13).Draw(t, "pH")
	}
	return mix
}

// What is answered balances, whatever comes together; what is not says so.
func TestAnyMixtureBalancesOrIsRefused(t *testing.T) {
	long.Draws(t, 60)
	rapid.Check(t, func(t *rapid.T) {
		m, err := aqueous.At(rapid.Float64Range(0, 100).Draw(t, "celsius"))
		if err != nil {
			t.Fatal(err)
		}
		mix := drawn(t)
		s, err := m.Solve(mix)
		if err != nil {
			if s != nil || len(err.Error()) < 20 {
				t.Fatalf("refused with %v and %v", s, err)
			}
			return
		}
		balance(t, mix, s)
	})
}

// balance adds up the charges and every component from what a state tells.
func balance(t *rapid.T, mix aqueous.Mixture, s *aqueous.State) {
	charge, ions := 0.0, 1e-300
	left, size := map[string]float64{}, map[string]float64{}
	put := func(name string, mol float64) {
		_, of, _ := aqueous.Content(name)
		for component, n := range of {
			left[component] += n * mol
			size[component] += math.Abs(n * mol)
		}
	}
	for _, name := range aqueous.Species() {
		m, _ := s.Molality(name)
		z, _, _ := aqueous.Content(name)
		charge, ions = charge+m*z, ions+m*math.Abs(z)
		put(name, m*s.Water())
	}
	for _, a := range mix.Solids {
		put(a.Of, s.Transfer(a.Of))
	}
	gas, _ := s.Gas()
	put("CO2(g)", gas+s.Air())
	for _, a := range mix.Totals {
		left[a.Of] -= a.Mol
	}
	for component, n := range broughtBy(mix.Reagent) {
		left[component] -= n * s.Reagent()
		size[component] += math.Abs(s.Reagent())
	}
	if !(math.Abs(charge) <= 1e-10*ions) {
		t.Fatalf("pH %g: charges are off by %g of %g", s.PH(), charge, ions)
	}
	for component, off := range left {
		if component != "H" && !(math.Abs(off) <= 2e-10*size[component]) {
			t.Fatalf("%s is off by %g of %g", component, off, size[component])
		}
	}
}

func broughtBy(reagent string) map[string]float64 {
	return map[string]map[string]float64{"NaOH": {"Na": 1}, "HCl": {"Cl": 1}, "Ca(OH)2": {"Ca": 1},
		"KOH": {"K": 1}}[reagent]
}

// Dilute mixtures are not refused: what the activity model is held for has an answer.
func TestWhatIsDiluteIsAnswered(t *testing.T) {
	long.Draws(t, 100)
	m, _ := aqueous.At(25)
	rapid.Check(t, func(t *rapid.T) {
		var mix aqueous.Mixture
		for _, of := range aqueous.Components() {
			if rapid.IntRange(0, 2).Draw(t, of) == 0 {
				mix.Totals = append(mix.Totals, aqueous.Amount{Of: of,
					Mol: math.Pow(10, rapid.Float64Range(-12, -1.3).Draw(t, "power"))})
			}
		}
		for _, of := range aqueous.Solids() {
			if rapid.IntRange(0, 2).Draw(t, of) == 0 {
				mix.Solids = append(mix.Solids, aqueous.Amount{Of: of})
			}
		}
		if _, err := m.Solve(mix); err != nil {
			t.Fatalf("%+v: %v", mix, err)
		}
	})
}

// A solution from which solids settle is found from where it was at rest. A trace of a solid
// that was there before has it found anew: both come to the same.
func TestSettlingFromRestIsTheSame(t *testing.T) {
	for trial := range 40 {
		mix := everything(true)
		for i := range mix.Totals { // from 1e-6 to 0.03 mol/kg, in another order each time
			mix.Totals[i].Mol = math.Pow(10, -6+4.5*math.Mod(float64(i+1)*math.Phi*float64(trial+1), 1))
		}
		short := solve(t, 10+float64(trial), mix)
		mix.Solids[trial%len(mix.Solids)].Mol = 1e-16
		anew := solve(t, 10+float64(trial), mix)
		if !nearly.To(short.PH(), anew.PH(), 1e-7) {
			t.Errorf("trial %d: pH %.9f from rest, %.9f anew", trial, short.PH(), anew.PH())
		}
		for _, a := range mix.Solids {
			if x, y := short.Transfer(a.Of), anew.Transfer(a.Of); !nearly.To(x, y, 1e-9) {
				t.Errorf("trial %d: %g mol of %s settle from rest, %g anew", trial, x, a.Of, y)
			}
		}
	}
}

// Where nearly all of it settles, what stays is a small difference of large amounts.
func TestWhatIsLeftOfASolid(t *testing.T) {
	for _, al := range []float64{0.05011872336272721, 0.3, 1.7} {
		s := solve(t, 25, aqueous.Mixture{Solids: []aqueous.Amount{{Of: "Gibbsite"}, {Of: "Alunite"}},
			Totals: []aqueous.Amount{{Of: "Na", Mol: 1.0746078283213176e-08}, {Of: "Al", Mol: al}, {Of: "S(6)", Mol: 1e-12}}})
		if off := s.Closure(); !(off < 1e-12) || !(s.PH() > 6.9 && s.PH() < 7.2) {
			t.Errorf("%g mol of aluminium: pH %g, off by %g", al, s.PH(), off)
		}
	}
}

// Faults of what is asked say what is accepted.
func TestFaultsAreNamed(t *testing.T) {
	m, _ := aqueous.At(25)
	f := []aqueous.Amount{{Of: "F", Mol: 0.1}}
	for _, c := range []struct {
		mix  aqueous.Mixture
		want string
	}{
		{aqueous.Mixture{Totals: []aqueous.Amount{{Of: "Xe", Mol: 1}}}, `"Xe" is no component; there are Li, Na`},
		{aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: math.NaN()}}}, "F: NaN mol/kg is no amount"},
		{aqueous.Mixture{Totals: []aqueous.Amount{{Of: "F", Mol: -1}}}, "F: -1 mol/kg is no amount"},
		{aqueous.Mixture{Totals: f, Solids: []aqueous.Amount{{Of: "sand"}}}, `"sand" is no solid; there are Calcite`},
		{aqueous.Mixture{Totals: f, Added: []aqueous.Amount{{Of: "FeCl3", Mol: 1}}}, "FeCl3: no constants are held for Fe"},
		{aqueous.Mixture{Totals: f, Added: []aqueous.Amount{{Of: "Na2SO3", Mol: 1}}}, "brings a charge of"},
		{aqueous.Mixture{Totals: f, Reagent: "HCl", FixedPH: 9}, "no amount of HCl up to 40 mol/kg brings the pH to 9"},
		{aqueous.Mixture{Totals: f, Reagent: "NaOH", FixedPH: 20}, "a pH of 20 cannot be kept"},
		{aqueous.Mixture{Totals: f, Gas: aqueous.Gas{Kind: aqueous.Open}}, "carbon dioxide at 0 atm is not held"},
		{aqueous.Mixture{Totals: []aqueous.Amount{{Of: "Cl", Mol: 60}}}, "too strong for any model held here"},
	} {
		if _, err := m.Solve(c.mix); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
	for _, celsius := range []float64{-1, 101, math.NaN(), math.Inf(1)} {
		if _, err := aqueous.At(celsius); err == nil {
			t.Errorf("%g degC is taken", celsius)
		}
	}
	if _, err := m.Variant("none"); err == nil {
		t.Error("a variant that is none is taken")
	}
}
