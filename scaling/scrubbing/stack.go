package scrubbing

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/absorbing"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// Outdoors is what carries the air of the hood away.
type Outdoors struct {
	Air      float64  // m3/h
	Bore     float64  // mm of a duct at 10 m/s
	Mouth    float64  // mm of the end of the stack at 15 m/s
	Hydrogen ends.Two // vol% in that air
	Plumes   []Plume
	Missing  []working.Missing
}

// Plume is a vapour at the ground, and the stack from which it stays below its limit there.
type Plume struct {
	Agent string
	Now   ends.Two // ppm, with the stack that the site has
	Limit float64  // ppm, the strictest
	Stack float64  // m; not a number where none of those tried does, or nobody knows
}

// Speeds of air in a duct and out of a stack, m/s, and heights that are tried, m.
const (
	inDuct  = 10.0
	atMouth = 15.0
)

var heights = [...]float64{3, 5, 8, 12, 18, 25, 40, 60, 100}

// OutOf is what carries the air of the hood of a review away.
func OutOf(r *hazards.Review) Outdoors {
	b := reader{figs: figure.NewSet(r.Figures)}
	out := Outdoors{Air: math.NaN(), Hydrogen: ends.Unknown()}
	if q := r.Case.HoodFlow("Q"); q.Unknown() {
		b.missing = append(b.missing, q.Missing()...)
	} else {
		out.Air = q.V
	}
	out.Bore = 1000 * absorbing.Duct(out.Air/3600, inDuct)
	out.Mouth = 1000 * absorbing.Duct(out.Air/3600, atMouth)
	if f := b.figs.Get(figure.ID{Quantity: "air.hydrogen_share", Place: figure.Hood}); f != nil {
		out.Hydrogen = b.of(f)
	}
	for f := range b.figs.At("air.plume", figure.Stack) {
		if f.Agent == "" {
			continue
		}
		p := Plume{Agent: f.Agent, Now: b.of(f), Limit: math.NaN(), Stack: math.NaN()}
		for i := range r.Findings {
			if x := &r.Findings[i]; x.Figure == f.ID && !(x.Limit.Value >= p.Limit) {
				p.Limit = x.Limit.Value
			}
		}
		if p.Now.Known() && p.Limit > 0 {
			p.Stack = stackFor(r, f.ID, p.Limit)
		}
		out.Plumes = append(out.Plumes, p)
	}
	out.Missing = b.missing
	return out
}

// stackFor is the lowest of the heights from which a plume stays below a limit at its
// dangerous end.
func stackFor(r *hazards.Review, id figure.ID, limit float64) float64 {
	c, _, there := r.Leads.Case(r.Case, id)
	if !there {
		c = r.Case
	}
	c.Brief = true
	for _, h := range heights {
		site := route.Site{}
		if c.Site != nil {
			site = *c.Site
		}
		hood := route.Hood{}
		if site.Hood != nil {
			hood = *site.Hood
		}
		hood.Stack = quantity.Of(h, "m", quantity.Length)
		site.Hood, c.Site = &hood, &site
		a := hazards.Assess(c, nil)
		if a.Err != nil {
			return math.NaN()
		}
		if f := figure.NewSet(a.Figures).Get(id); f == nil || f.Value.Unknown() {
			return math.NaN()
		} else if f.Value.V < limit {
			return h
		}
	}
	return math.NaN()
}
