package air

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/flammable"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// strongInWater is by how much water can raise the vapour of an organic liquid over its
// share of the mol at most: activity coefficients at infinite dilution of those held run
// from 1 to about 17 (memory). No liquor gives more than the pure liquid.
const strongInWater = 20

// fire reports how near the vapour of what can burn comes to its lower flammable limit
// over the liquor of each step, at the highest temperature set there:
//
//	air.flammable_share = min(1, 20 x) p(t)/P * 100/LFL
//
// x is its share of the mol in the liquor. It is a bound: over the liquor itself, before
// any air has thinned it. Nothing is known of a liquid that has no row.
func (r *reader) fire() {
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if !r.asks(d.Number) {
			continue
		}
		for _, s := range [...]*process.State{&d.Before, d.First, d.Full, &d.After, d.Filled} {
			if s != nil {
				r.over(d, s)
			}
		}
		if b := d.Behind; b != nil {
			r.over(b, &b.Before)
			r.over(b, &b.After)
		}
	}
}

// over reports what can burn over one liquor of a step; the greater of two states stays.
func (r *reader) over(d *process.Done, s *process.State) {
	for _, o := range r.organics(s, d.Number) {
		r.burns(d, &o)
	}
}

// mayHold are the liquids that can burn which steps up to one sent on to a place of which
// nobody knows how much more came into it: a wash that does not say how often.
func (r *reader) mayHold(s *process.State, upTo int) []*chemicals.Substance {
	if !slices.ContainsFunc(s.Liquid, func(q process.Pool) bool { return q.More != nil }) {
		return nil
	}
	var out []*chemicals.Substance
	for i := range r.c.Route.Steps[:upTo] {
		for j := range r.c.Route.Steps[i].What {
			sub := r.c.Route.Steps[i].What[j].Substance
			if r.c.Route.Steps[i].Into == s.Place && sub != nil && flammable.Can(sub) && !slices.Contains(out, sub) {
				out = append(out, sub)
			}
		}
	}
	return out
}

// burns puts the figure of one liquid.
func (r *reader) burns(d *process.Done, o *organic) {
	l, place, sub := flammable.Of(o.sub), figure.Step(d.Number), o.sub
	if l == nil {
		r.greater(place, sub.Slug, working.Absent("s", "1", working.Lacks("flammable", sub.Name)),
			phrase.Of("air.burns_unknown"))
		return
	}
	x, t, P := o.bounded(), d.Hot.As("t"), r.c.Store.Num("gas.pressure").As("P")
	low := working.Exact("LFL", "vol%", l.Lower, l.Source).Worse(working.Estimated)
	p := r.pure(sub, l, t)
	v := r.w.Line("s", "1", "min(1,20*x)*p/P*100/LFL", min(1, strongInWater*x.V)*p.V/P.V*100/low.V, x, p, P, low)
	r.greater(place, sub.Slug, v, phrase.Of("air.burns", l.Flash))
}

// greater keeps of two figures of a step the one where danger lies, what is not known
// before any number.
func (r *reader) greater(place figure.Place, slug string, v working.Num, conditions phrase.Phrase) {
	for i := range r.out {
		f := &r.out[i]
		if f.Quantity != "air.flammable_share" || f.Place != place || f.Agent != slug {
			continue
		}
		if !f.Value.Unknown() && (v.Unknown() || v.V > f.Value.V) {
			f.Value, f.Conditions = r.w.Keep(v), conditions
		}
		return
	}
	r.put("air.flammable_share", place, slug, figure.Case{}, v, conditions)
}
