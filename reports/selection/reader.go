package selection

import (
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// reader is a review as page 1 is read off it.
type reader struct {
	r     *hazards.Review
	v     voice
	figs  *figure.Set
	met   []met
	stops []Stop // all hold points
	grown *scaling.Outgrown
}

func newReader(d *draft.Draft) *reader {
	return &reader{r: d.Review, v: voice{d}, figs: d.Set, met: meets(d), stops: Stops(d)}
}

// say is a sentence of page 1.
func say(key string, args ...any) string { return words.FirstPage(key, args...) }

// route is what was reviewed; an empty one where a review has none.
func (p *reader) route() *route.Route {
	if p.r.Case.Route == nil {
		return &route.Route{}
	}
	return p.r.Case.Route
}

// bare is the figure of a quantity for the whole route, nil where there is none.
func (p *reader) bare(quantity string) *figure.Figure {
	return p.figs.Get(figure.ID{Quantity: quantity})
}

// kind picks figures by the case they hold for.
type kind func(figure.Case) bool

// asWritten picks what goes as the route means it.
func asWritten(c figure.Case) bool { return c.Failure == "" && c.State != figure.Closed }

// onFailure picks one failure, by all its laws.
func onFailure(key string) kind { return func(c figure.Case) bool { return c == figure.If(key) } }

// findings are those of a quantity in the cases of a kind.
func (p *reader) findings(quantity string, of kind) matter {
	var out matter
	for i := range p.r.Findings {
		if f := &p.r.Findings[i]; f.Figure.Quantity == quantity && of(f.Figure.Case) {
			out = append(out, f)
		}
	}
	return out
}

// of is what a figure is of in words: its quantity, place and agent.
func (p *reader) of(id figure.ID) string {
	s := []string{number.LabelOf(id.Quantity)}
	if w := p.where(id); w != "" {
		s = append(s, w)
	}
	return strings.Join(s, ", ")
}

// where is the place and the agent of a figure in words.
func (p *reader) where(id figure.ID) string {
	if f := p.figs.Get(id); f != nil && !f.Of().IsZero() {
		id = f.Of()
	}
	var s []string
	if !id.Place.IsZero() {
		s = append(s, p.v.Place(id.Place))
	}
	if id.Agent != "" {
		s = append(s, draft.AgentName(id.Quantity, id.Agent))
	}
	return strings.Join(s, ", ")
}

// named is where a figure holds, as the lead of its number.
func (p *reader) named(f *figure.Figure) string {
	if w := p.where(f.ID); w != "" {
		return say("answer.at", w)
	}
	return ""
}

// step is a step of the route by its place; nil for another place.
func (p *reader) step(at figure.Place) *route.Step {
	n, ok := at.Step()
	steps := p.route().Steps
	if !ok || n < 1 || n > len(steps) {
		return nil
	}
	return &steps[n-1]
}
