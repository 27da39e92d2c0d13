package hazards_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals"
	"etchbound/chemicals/flammable"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// judged is a finding whatever it is a finding about: agents and cases aside.
type judged struct {
	quantity string
	place    figure.Place
	limit    limit.Key
	organic  bool // what is published of a liquid that can burn
}

// worstOf is the worst rank of every finding. The strength is judged at the
// strongest place, which may move.
func worstOf(rv *hazards.Review) map[judged]int {
	out := map[judged]int{}
	for i := range rv.Findings {
		f := &rv.Findings[i]
		k := judged{f.Figure.Quantity, f.Figure.Place, f.Limit.Key, organic(f)}
		if k.quantity == "fluoride.hf_strength" || strings.HasPrefix(k.quantity, "stock.") { // of a substance
			k.place = figure.Place{}
		}
		out[k] = max(out[k], f.Verdict.Rank())
	}
	return out
}

// neverBetter holds that nothing was removed and nothing improved.
func neverBetter(t reporter, full, bare *hazards.Review, what string) {
	keepsHolds(t, full, bare, what)
	after, breathed := worstOf(bare), breathedUnknown(bare)
	for k, was := range worstOf(full) {
		is, there := after[k]
		if !there && breathed && k.organic {
			continue // what is published of one liquid is no limit of another: that one has to be known
		}
		forms := judged{quantity: "gas.evolved.bound", place: k.place, limit: k.limit}
		if k.quantity == "air.breathing_zone" && k.limit == limit.HasToBeKnown && after[forms] >= was {
			continue // which gas forms there is not known at all
		}
		if !there || is < was {
			t.Errorf("%s @%s +%s: rank %d becomes %d (there %v) %s", k.quantity, k.place, k.limit.ID, was, is, there, what)
		}
	}
}

// organic reports whether a finding holds a liquid that can burn, one that is held, against
// what is published of its vapour.
func organic(f *figure.Finding) bool {
	sub, held := chemicals.Library().Find(f.Figure.Agent)
	return held && flammable.Of(sub) != nil && f.Limit.Origin != limit.Local &&
		slices.Contains([]string{"air.breathing_zone", "air.time_average", "air.room_peak"}, f.Figure.Quantity)
}

// breathedUnknown reports whether it is a finding that what people breathe of something is
// not known.
func breathedUnknown(rv *hazards.Review) bool {
	return slices.ContainsFunc(rv.Findings, func(f figure.Finding) bool {
		return f.Figure.Quantity == "air.breathing_zone" && f.Limit.Key == limit.HasToBeKnown &&
			f.Verdict == figure.UnknownVerdict
	})
}

// materials are the substances a recipe puts in.
func (r *recipe) materials() []*table {
	var out []*table
	for _, s := range r.steps {
		what, _ := s.get("what").([]any)
		for _, x := range what {
			if m, ok := x.(*table); ok && m.get("substance") != nil {
				out = append(out, m)
			}
		}
	}
	return out
}

// Whatever is put in, something that the data do not hold in its place never
// removes a finding and never improves a verdict.
func TestWhatIsNotHeldNeverHelps(t *testing.T) {
	tried, taken := 0, 0
	costly(t, func(tb testing.TB, t *rapid.T) {
		r := (&drawing{t: t}).either()
		all := r.materials()
		if len(all) == 0 {
			return
		}
		before := r.yaml(plainly)
		c := newCase(tb, load(tb, before))
		if rapid.Bool().Draw(t, "site") {
			c.Site = fullSite(tb)
		}
		full := must(tb, c)
		m := rapid.SampledFrom(all).Draw(t, "swapped")
		was := m.get("substance").(string)
		m.set("substance", "zorblium chloride of the third kind")
		m.put("not_held", "true")
		if rapid.Bool().Draw(t, "formula") {
			s, _ := chemicals.Library().Find(was)
			m.put("formula", fmt.Sprintf("%q", s.Formula.Text))
		}
		tried++
		left, _, err := route.Load("check.yaml", strings.NewReader(r.yaml(plainly)))
		if err != nil || left == nil {
			return // refused: no verdict at all
		}
		taken++
		strange := newCase(tb, left)
		strange.Site = c.Site
		bare := must(tb, strange)
		neverBetter(t, &full, &bare, "with "+was+" not held in\n"+before+"\n"+r.yaml(plainly))
	})
	if 10*taken < 9*tried {
		t.Errorf("%d of %d swaps are refused", tried-taken, tried)
	}
}
