// Package measuring knows which experiment would settle what a figure hangs on, and how much
// of the way to its dangerous end that would cut. It must not know how any of it is printed.
//
// At the dangerous end of a figure some data stand elsewhere than at their best estimate.
// Those that one experiment settles are put back together, and alone put there, and the
// route is assessed again each time: an experiment that finds the best estimates cuts what
// lies between the end and what is left. One that finds worse moves the figure to there.
package measuring

import (
	"cmp"
	_ "embed"
	"math"
	"slices"
	"sync"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/ranges"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed experiments.csv
var table string

type row struct {
	id              datum.Pattern
	experiment, key string
}

var rows = sync.OnceValue(func() []row {
	return columns.Must("scaling/measuring/experiments.csv", table, func(r columns.Row) row {
		x := row{datum.Pattern(r.Named("id")), r.Named("experiment"), r.Text("key")}
		if err := x.id.Valid(); err != nil {
			r.Fault("id", err)
		}
		return x
	})
})

// Experiments are all that there are, each once.
func Experiments() []string {
	var out []string
	for _, r := range rows() {
		if !slices.Contains(out, r.experiment) {
			out = append(out, r.experiment)
		}
	}
	return out
}

// of is the row of a datum: the one that says it, or the longest with a star.
func of(id datum.ID) row {
	return *datum.Best(rows(), func(r *row) datum.Pattern { return r.id }, id)
}

// Figure is a figure that people ask for first, with what would narrow it, most first.
type Figure struct {
	ID      figure.ID // as it is asked for
	Best    float64
	End     float64           // the dangerous one
	Low     bool              // danger lies at the low end
	By      []By              // what cuts, most first, and what is not known to
	Beyond  float64           // the worst seen past End, with part of the data at their best; not a number: none
	Missing []working.Missing // why it is not known
}

// By is one experiment for a figure.
type By struct {
	Experiment string
	Keys       []string // where its result is written, in order
	Data       []ranges.Stood
	Alone      float64 // the figure with these data alone where they stand at its dangerous end
	Left       float64 // its dangerous end with these data at their best estimates
}

// Cut is the share of the way from the best estimate to the dangerous end that it cuts.
func (f *Figure) Cut(b *By) float64 { return (f.End - b.Left) / (f.End - f.Best) }

// Of are the figures that people ask for first, those not known with what is missing; those
// whose dangerous end is the best estimate are left out.
func Of(r *hazards.Review) []Figure {
	var out []Figure
	figs := figure.NewSet(r.Figures)
	for _, q := range figure.Headlines() {
		f := figs.One(q, figure.Place{})
		if f == nil {
			continue
		}
		x := Figure{ID: f.ID, Best: f.Value.V, End: f.Danger().V, Low: figure.Row(q).Danger == figure.Low,
			Beyond: math.NaN()}
		if f.Danger().Unknown() {
			x.Missing = append(f.Value.Missing(), f.Danger().Missing()...)
			out = append(out, x)
			continue
		}
		member := r.Member(f.ID)
		c, stood, there := r.Leads.Case(r.Case, member)
		if !there || x.End == x.Best {
			continue
		}
		c.Store = r.Case.Store
		x.keep(narrowed(c, member, stood))
		out = append(out, x)
	}
	return out
}

// Shares of the way to the dangerous end: what says nothing, and from what on an end is told as
// passed.
const rounding, passed = 1e-6, 0.01

// keep takes the experiments that cut, most first, and those of which that is not known. What
// cuts nothing settles nothing of this figure; what leads beyond its end says that the ends of
// single data are not the worst together, and how far it was seen to go.
func (f *Figure) keep(all []By) {
	for i := range all {
		b := &all[i]
		for _, v := range [...]float64{b.Left, b.Alone} {
			if (f.End-v)/(f.End-f.Best) < -passed && !(f.past(v) <= f.past(f.Beyond)) {
				f.Beyond = v
			}
		}
		if !(f.Cut(b) <= rounding) {
			f.By = append(f.By, *b)
		}
	}
	slices.SortStableFunc(f.By, func(a, b By) int { return cmp.Compare(f.Cut(&b), f.Cut(&a)) })
}

// past is how far a value lies on the dangerous side of the dangerous end.
func (f *Figure) past(v float64) float64 {
	if f.Low {
		return f.End - v
	}
	return v - f.End
}

// narrowed are the experiments that settle what stands elsewhere than at its best estimate.
func narrowed(c route.Case, id figure.ID, stood []ranges.Stood) []By {
	var out []By
	for _, s := range stood {
		r := of(s.ID)
		key := r.key
		if at, given := s.ID.Stated(); given {
			key = route.Told(at)
		} else if key == "" {
			key = "data: " + string(s.ID)
		}
		i := slices.IndexFunc(out, func(b By) bool { return b.Experiment == r.experiment })
		if i < 0 {
			i = len(out)
			out = append(out, By{Experiment: r.experiment})
		}
		if !slices.Contains(out[i].Keys, key) {
			out[i].Keys = append(out[i].Keys, key)
		}
		out[i].Data = append(out[i].Data, s)
	}
	for i := range out {
		in := func(s ranges.Stood) bool {
			return slices.ContainsFunc(out[i].Data, func(d ranges.Stood) bool { return d.ID == s.ID })
		}
		out[i].Alone = at(c, id, stood, in)
		out[i].Left = at(c, id, stood, func(s ranges.Stood) bool { return !in(s) })
	}
	return out
}

// at is a figure with those of the data moved that are wanted; not a number where it is not
// known then.
func at(c route.Case, id figure.ID, stood []ranges.Stood, want func(ranges.Stood) bool) float64 {
	move := map[int]float64{}
	for _, s := range stood {
		if want(s) {
			move[s.Index] = s.At
		}
	}
	c.Brief, c.Store = true, c.Store.With(move)
	a := hazards.Assess(c, nil)
	for i := range a.Figures {
		if a.Figures[i].ID == id {
			return a.Figures[i].Value.V
		}
	}
	return math.NaN()
}
