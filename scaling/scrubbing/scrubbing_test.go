package scrubbing_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/scaling/ends"
	"etchbound/scaling/scrubbing"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

const small = `route: etchbound/1
title: one gram
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  etch: {kind: vessel, material: PTFE, lid_material: PTFE, capacity: 100 mL, closure: vented, vent: 6 mm,
    vent_line: 1 m, cooling: {kind: ice_bath, ice: 1 kg}}
steps:
  - do: charge
    in: etch
    what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}]
    temperature: 5 degC
  - {do: add, in: etch, what: [precursor], over: 20 min, temperature: 5 degC}
  - {do: hold, in: etch, time: 20 h, temperature: 20 degC}
`

// train is the way out of the gas of a route, with some of its text replaced.
func train(t *testing.T, with ...string) scrubbing.Train {
	t.Helper()
	c := bench.CaseOf(t, strings.NewReplacer(with...).Replace(small))
	c.Brief = true
	r, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	all, err := scrubbing.Of(&r)
	if err != nil || len(all) != 1 {
		t.Fatalf("%d places: %v", len(all), err)
	}
	return all[0]
}

// By hand: 20 mL of 10 wt% acid (20.7 g) hold 0.1035 mol, and no gas takes more base than
// that; 1 g of Ti3AlC2 (194.6 g/mol) gives at least 1.5 mol a mol, 189 mL, which all goes
// past; the gas space is no more than the vessel, and the line of 1 m by 6 mm 28.3 mL.
func TestASmallEtch(t *testing.T) {
	long.NotShort(t)
	x := train(t)
	s := &x.Scrubber
	if !(s.Taken.Best > 0 && s.Taken.Most >= s.Taken.Best && s.Taken.Most <= 0.1036) {
		t.Errorf("base taken %v", s.Taken)
	}
	if !nearly.Share(s.Needed.Most, 2*s.Taken.Most, 1e-12) || !nearly.Share(s.Warms.Most, 119*0.5/3.8, 1e-9) {
		t.Errorf("base %v, warms %v", s.Needed, s.Warms)
	}
	if !(s.Half.Most > 0 && s.Half.Most <= s.Half.Best && s.Half.Best <= 8760) {
		t.Errorf("half is spent after %v h", s.Half)
	}
	if !(s.Past.Best > 0.188 && s.Past.Most >= s.Past.Best) {
		t.Errorf("past it %v", s.Past)
	}
	if !(s.Column.Height >= 0.3 && s.Column.Most >= s.Column.Height) || s.Holds != "hf" {
		t.Errorf("column %+v for %q", s.Column, s.Holds)
	}
	if !nearly.Share(x.Back.Whole.Most, 100+28.27, 1e-3) || !(x.Back.Trap.Most <= x.Back.Whole.Most) {
		t.Errorf("drawn back %+v", x.Back)
	}
	if x.Line.TwoPhase() != scrubbing.Stays || !(x.Line.Liquor.Most > 0) {
		t.Errorf("line %+v", x.Line)
	}
}

// A shut vessel gives nothing off, and what it will once a way out is there is sized all the
// same: never no base and no column.
func TestAShutVesselIsSizedAsIfItHadAWayOut(t *testing.T) {
	x := train(t, "closure: vented, vent: 6 mm,\n    vent_line: 1 m,", "closure: closed,")
	if len(x.Acids) == 0 || !(x.Scrubber.Taken.Best > 0) || !(x.Scrubber.Column.Units > 0) {
		t.Errorf("acids %v, base %v, column %+v", x.Acids, x.Scrubber.Taken, x.Scrubber.Column)
	}
}

// What nobody states leaves its number unknown, and says what is missing: it never makes one
// smaller.
func TestWhatIsNotStatedIsNotKnown(t *testing.T) {
	long.Only(t)
	for name, row := range map[string]struct {
		from, to string
		of       func(x *scrubbing.Train) float64
	}{
		"capacity": {"capacity: 100 mL, ", "", func(x *scrubbing.Train) float64 { return x.Back.Trap.Most }},
		"acid not held": {"substance: hydrofluoric acid, strength: 10 wt%", "substance: mystery liquid, not_held: true",
			func(x *scrubbing.Train) float64 { return x.Scrubber.Taken.Most }},
		"acid not held, column": {"substance: hydrofluoric acid, strength: 10 wt%",
			"substance: mystery liquid, not_held: true", func(x *scrubbing.Train) float64 { return x.Scrubber.Column.Most }},
		"gas without its flow": {"time: 20 h", "time: 20 h, gas: argon",
			func(x *scrubbing.Train) float64 { return x.Gas.Most }},
		"gas without its flow, column": {"time: 20 h", "time: 20 h, gas: argon",
			func(x *scrubbing.Train) float64 { return x.Scrubber.Column.Diameter }},
	} {
		x := train(t, row.from, row.to)
		if got := row.of(&x); !math.IsNaN(got) || x.Missing == nil {
			t.Errorf("%s: %g, missing %v", name, got, x.Missing)
		}
	}
}

// Gas that is faster, or that needs more room, carries liquor along; what is not known of it
// counts as if it did.
func TestLiquorComesWithTheGas(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		velocity, room ends.Two
		space          float64
		want           scrubbing.TwoPhase
	}{
		{ends.Two{Best: 1, Most: 10}, ends.Two{Best: 1, Most: 5}, 50, scrubbing.Stays},
		{ends.Two{Best: 1, Most: 50}, ends.Two{Best: 1, Most: 5}, 50, scrubbing.May},
		{ends.Two{Best: 1, Most: 10}, ends.Two{Best: 1, Most: 60}, 50, scrubbing.May},
		{ends.Two{Best: 60, Most: 90}, ends.Two{Best: 1, Most: 5}, 50, scrubbing.Leaves},
		{ends.Two{Best: 60, Most: nan}, ends.Two{Best: 1, Most: 5}, 50, scrubbing.Leaves},
		{ends.Two{Best: 1, Most: nan}, ends.Two{Best: 1, Most: 5}, 50, scrubbing.Unknown},
		{ends.Two{Best: 1, Most: 10}, ends.Two{Best: 1, Most: 5}, nan, scrubbing.Unknown},
	} {
		l := scrubbing.Line{Velocity: row.velocity, Room: row.room, Space: row.space}
		if got := l.TwoPhase(); got != row.want {
			t.Errorf("%+v: %s", row, got)
		}
	}
}

// The bore for liquor at its dangerous end is that of the least coefficient, the heaviest and
// thickest liquor and the longest line. By hand, without a line: 4.2 L/min and the margin of
// 2 are 1.4e-4 m3/s, and d = sqrt(4 Q/(C pi) sqrt(rho/(2 dp))) with 0.6, 1200 kg/m3 and 1 kPa
// is 15.17 mm, as here the line is next to none.
func TestLiquorAtItsDangerousEnd(t *testing.T) {
	long.Only(t)
	x := train(t, "vent_line: 1 m", "vent_line: 0.001 mm")
	bare := func(flow, c, rho float64) float64 {
		return 1000 * math.Sqrt(4*2*flow/60000/(c*math.Pi)*math.Sqrt(rho/2000))
	}
	if hand := bare(4.2, 0.6, 1200); !nearly.Share(hand, 15.17, 1e-3) {
		t.Errorf("by hand %g mm", hand)
	}
	if l := &x.Line; !nearly.Share(l.Liquor.Most, bare(x.Gas.Most, 0.6, 1200), 1e-3) ||
		!nearly.Share(l.Liquor.Best, bare(x.Gas.Best, 0.62, 1035), 1e-3) {
		t.Errorf("%+v of %+v", l.Liquor, x.Gas)
	}
	y := train(t, "vent_line: 1 m", "vent_line: 5 m")
	if z := train(t, ",\n    vent_line: 1 m", ""); !nearly.Share(z.Line.Liquor.Most, y.Line.Liquor.Most, 1e-4) {
		t.Errorf("no line stated %g mm, 5 m of it %g", z.Line.Liquor.Most, y.Line.Liquor.Most)
	}
	if !(x.Tenfold.Most >= x.Failing.Most && x.Line.Tenfold.Most >= x.Line.Failing.Most) {
		t.Errorf("ten times the powder %v, something failing %v", x.Tenfold, x.Failing)
	}
}
