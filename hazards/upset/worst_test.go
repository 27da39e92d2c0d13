package upset

import (
	"math"
	"testing"

	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// nominal is 10 g of a powder in 200 mL that goes in over 10 min and stays for
// 4 h in ice: constants chosen round, for a test.
func nominal(t *testing.T, law vessel.Law, hold float64) *course.Run {
	t.Helper()
	p := vessel.Plan{Law: law, Start: 275, Tolerance: 1e-6,
		Slow: vessel.Solid{Amount: 0.05, Heat: 760000, Gas: 3, Capacity: 7,
			Kinetics: vessel.Kinetics{Activation: 60000, Seed: 0.01, Reference: 275}},
		Liquor: vessel.Liquor{Capacity: 820, Boils: 374},
		Pieces: []vessel.Piece{{Step: 4, Until: 600, Dose: 0.05 / 600, Feed: 298, UA: 2, Coolant: 273.15},
			{Step: 5, Until: 600 + hold, UA: 2, Coolant: 273.15}}}
	p.Slow.Rate = vessel.Calibrate(law, hold, p.Slow.Seed)
	r, err := vessel.Simulate(p)
	if err != nil {
		t.Fatal(err)
	}
	return &course.Run{Law: law, Vessel: r}
}

// The search is held against a failure at each of 400 moments of the run.
func TestWorstMomentAgainstEveryMoment(t *testing.T) {
	long.Only(t)
	hours := 3600.0
	for _, law := range []vessel.Law{vessel.SelfAccelerating, vessel.Contracting} {
		for _, hold := range []float64{0.5 * hours, 4 * hours, 24 * hours} {
			for i := range failures {
				f := &failures[i]
				if f.key != "cooling_lost" && f.key != "cooling_lost_addition_on" && f.key != "stirrer_stops" {
					continue
				}
				to := 600 + hold
				if f.key != "cooling_lost" {
					to = 600
				}
				x := nominal(t, law, hold)
				s := search{x: x, f: f, s: setting{still: 0.5, stop: 600}, boils: 374, spans: []span{{0, to}}}
				s.look()
				worst, err := s.worst(span{0, to})
				if err != nil {
					t.Fatal(err)
				}
				if s.runs > mostRuns {
					t.Errorf("%s %s: %d runs", law, f.key, s.runs)
				}
				against(t, &s, worst, to)
			}
		}
	}
}

// against runs the failure everywhere. Temperatures are held to half a kelvin,
// flows to 5 %, times to 2 % and 6 s.
func against(t *testing.T, s *search, worst [kinds]outcome, to float64) {
	t.Helper()
	hot, gas, soon := 0.0, 0.0, math.Inf(1)
	for i := range 401 {
		o, err := s.at(to*float64(i)/400, true)
		if err != nil {
			t.Fatal(err)
		}
		hot, gas, soon = max(hot, o.bad[hottest]), max(gas, o.bad[mostGas]), min(soon, o.boils)
	}
	if got := worst[hottest].run.Peak.Value; !(got >= hot-0.5) {
		t.Errorf("%s %s: %.2f K found, %.2f K there", s.x.Law, s.f.key, got, hot)
	}
	if got := worst[mostGas].run.Gas.Value; !(got >= 0.95*gas) {
		t.Errorf("%s %s: %.4g mol/s found, %.4g there", s.x.Law, s.f.key, got, gas)
	}
	if got := worst[soonest].boils; !(got <= 1.02*soon+6) {
		t.Errorf("%s %s: boils in %.4g s found, %.4g s there", s.x.Law, s.f.key, got, soon)
	}
}

// With nothing lost and all of it reacting within the day, the highest
// temperature once cooling fails is the greatest of T + waiting heat/C over the
// run (energy balance).
func TestCoolingLostComesToWhatWaits(t *testing.T) {
	x := nominal(t, vessel.Contracting, 2*3600)
	s := search{x: x, f: &failures[0], s: setting{}, boils: 374, spans: []span{{0, 600 + 2*3600}}}
	s.look()
	worst, err := s.worst(s.spans[0])
	if err != nil {
		t.Fatal(err)
	}
	if got, want := worst[hottest].run.Peak.Value, x.Vessel.MTSR.Value; !nearly.To(got, want, 0.2) {
		t.Errorf("%.3f K, want %.3f", got, want)
	}
}

func TestSettledPieces(t *testing.T) {
	add, hold := vessel.Piece{Until: 600, Dose: 1, UA: 4, Stirring: 3}, vessel.Piece{Until: 4000, UA: 4, Stirring: 3}
	standing := func(until, dose float64) vessel.Piece {
		return vessel.Piece{Until: until, Dose: dose, UA: 2, Settled: true}
	}
	lifted := func(p vessel.Piece) vessel.Piece { p.Lift = true; return p }
	for name, c := range map[string]struct {
		least float64
		want  []vessel.Piece
	}{
		"to the end of the addition": {0, []vessel.Piece{standing(600, 1), lifted(hold)}},
		"longer than the addition":   {1000, []vessel.Piece{standing(600, 1), standing(1000, 0), lifted(hold)}},
		"longer than the run":        {5000, []vessel.Piece{standing(600, 1), standing(4000, 0)}},
	} {
		got := settled([]vessel.Piece{add, hold}, c.least, 0.5)
		if len(got) != len(c.want) {
			t.Errorf("%s: %+v", name, got)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s, piece %d: %+v, want %+v", name, i, got[i], c.want[i])
			}
		}
	}
}
