package hazards_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	assessing "etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/ranges"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

// What is kept of the stages of a case gives to the bit what the whole gives.
func TestKeptStagesGiveTheSame(t *testing.T) {
	long.NotShort(t)
	site := demoSite(t)
	all := bundled(t)
	for _, name := range long.Some(sorted(all), 4, 1) {
		t.Run(name, func(t *testing.T) {
			c, err := route.NewCase(all[name], site, nil)
			if err != nil {
				t.Fatal(err)
			}
			c.Brief = true
			moves := movesOf(t, c, 4)
			slicedIsWhole(t, c, moves)
			c.Brief = testing.Short()
			slicedIsWhole(t, c, moves[:1])
			c.Brief, c.Rough = true, true
			slicedIsWhole(t, c, moves[:2])
		})
	}
}

// The same of a hundred routes that nobody wrote, of ten outside of the long form.
func TestKeptStagesOfAnyRouteGiveTheSame(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		c := newCase(tb, load(tb, yaml))
		c.Brief = true
		slicedIsWhole(tb, c, movesOf(tb, c, 3))
	})
}

// movesOf are data of a case moved one at a time to an end, many at a time to
// theirs, and all of them to anywhere.
func movesOf(t testing.TB, c route.Case, n int) []map[int]float64 {
	t.Helper()
	w := working.NewSheet()
	if a := assessing.Case(c, w); a.Err != nil {
		return nil
	}
	data := slices.DeleteFunc(ranges.Used(c.Store, w), func(d chemicals.Datum) bool { return !d.Swings() })
	chance := rand.New(rand.NewPCG(1, 0))
	out := []map[int]float64{{}, {}}
	for range n {
		single, corner, drawn := map[int]float64{}, map[int]float64{}, map[int]float64{}
		for _, d := range data {
			if chance.IntN(3) == 0 {
				corner[d.Index] = d.High
			}
			drawn[d.Index] = d.Low + chance.Float64()*(d.High-d.Low)
		}
		if len(data) > 0 {
			d := data[chance.IntN(len(data))]
			single[d.Index] = d.Low
			corner[d.Index] = math.NaN() // a datum that is taken away
		}
		out = append(out, single, corner, drawn, single)
	}
	return out
}

// walkedOnly are parts that look at the walk and at no courses.
var walkedOnly = assessing.Of(assessing.Fluoride, assessing.Wash, assessing.Waste, assessing.Order, assessing.Storage,
	assessing.Handling, assessing.Account)

// slicedIsWhole assesses a case with data moved, as a whole and by kept stages, all
// of it, some of its parts, and going on from a beginning.
func slicedIsWhole(t testing.TB, c route.Case, moves []map[int]float64) {
	t.Helper()
	kept, common := assessing.Keep(c, nil), process.Until(len(c.Route.Steps)/2)
	var all sync.WaitGroup
	faults := make([]string, len(moves))
	for i, m := range moves {
		all.Go(func() {
			moved := c
			moved.Store = c.Store.With(m)
			whole := assessing.Case(moved, nil)
			step := figure.AskedAt(figure.Step(1 + i%len(c.Route.Steps)))
			some := kept.At(moved.Store, assessing.All, step)
			if faults[i] = differ(&whole, some, assessing.All); faults[i] != "" {
				return
			}
			for _, want := range []assessing.Set{assessing.Of(assessing.Air), assessing.Of(assessing.Upset), assessing.All} {
				if faults[i] = differ(&whole, kept.With(moved.Store, want), want); faults[i] != "" {
					return
				}
			}
			if i%3 != 2 {
				return
			}
			for range 2 { // the second goes on from where the first stood
				anew := assessing.Keep(c, nil).From(common)
				got := anew.Assessment(moved.Store, walkedOnly, figure.Everywhere)
				if a, b := told(&whole.Walk), told(&got.Walk); a != b {
					faults[i] = fmt.Sprintf("%s, and from a beginning %s", a, b)
					return
				}
				if faults[i] = differ(&whole, anew.With(moved.Store, walkedOnly), walkedOnly); faults[i] != "" {
					return
				}
			}
		})
	}
	all.Wait()
	for i := range faults {
		if faults[i] != "" {
			t.Fatalf("with %v: %s", moves[i], faults[i])
		}
	}
}

// told is what a walk tells beside states and figures.
func told(k *process.Walk) string {
	return fmt.Sprint(k.Facts, k.Warnings, k.Fullest, k.Contacts, k.Unfollowed, k.Evolved, k.Releases)
}

// differ says where the parts of an assessment that are wanted differ from the whole.
func differ(whole *assessing.Assessment, sliced assessing.Lots, want assessing.Set) string {
	if (whole.Err == nil) != (sliced.Err == nil) {
		return fmt.Sprintf("%v, and %v by stages", whole.Err, sliced.Err)
	}
	from := 0
	for p, n := range whole.Counts {
		figs := whole.Figures[from : from+n]
		from += n
		if !want.Has(assessing.Part(p)) {
			continue
		}
		asked, got := sliced.Of[p].Asked, sliced.Of[p].Figures
		figs = slices.DeleteFunc(slices.Clone(figs), func(f figure.Figure) bool { return !asked.Has(f.Place) })
		n = len(figs)
		if len(got) != n {
			return fmt.Sprintf("part %d has %d figures, %d by stages", p, n, len(got))
		}
		for i := range figs {
			if a, b := inFull(&figs[i]), inFull(&got[i]); a != b {
				return fmt.Sprintf("%s, and by stages %s", a, b)
			}
			if set := assessing.GivenBy(figs[i].Quantity); !set.Has(assessing.Part(p)) {
				return fmt.Sprintf("part %d gives %s", p, figs[i].ID)
			}
		}
	}
	return ""
}

// inFull is everything a figure says.
func inFull(f *figure.Figure) string {
	v := &f.Value
	return fmt.Sprint(f.ID, f.Searched, f.Conditions, v.Symbol, v.Unit,
		math.Float64bits(v.V), v.Status, v.Ref(), v.Missing())
}
