package selection

import (
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/number"
)

// allAtOnce answers whether the whole addition may be tipped in: by the failure in which
// it is, and of what goes in at once as written by how hot that can get.
func (p *reader) allAtOnce(l *Line) {
	m := p.findings("heat.temperature_peak", onFailure("all_at_once"))
	timed := m.top() != nil
	m = append(m, p.chargedAtOnce()...)
	f := p.foremost(m)
	switch {
	case !timed && p.r.Case.Brief && p.isTimed():
		l.State, l.Answer = NotYet, say("brief")
		return
	case f == nil && p.route().Precursor == nil:
		l.State, l.Answer = Absent, say("at_once.none")+p.baseAtOnce()
		return
	case f == nil:
		l.State, l.Verdict, l.Answer = Judged, figure.UnknownVerdict, say("at_once.not_computed")
		return
	}
	p.verdict(l, m)
	l.Answer = p.atOnce(f) + p.atOnceGas(f.Figure.Place) + p.alsoUnknown(m, f)
	p.narrows(l, f)
}

// baseAtOnce is what the base of a route without powder gives where all of it goes in at once:
// its gas and its heat, as far as it gives any. Empty where no step writes one.
func (p *reader) baseAtOnce() string {
	f := p.agentMass()
	if f == nil {
		return ""
	}
	if _, step := f.Place.Step(); !step {
		return ""
	}
	var parts []string
	for _, x := range [...]struct{ quantity, says string }{
		{"neutralise.carbon_dioxide", "at_once.base_gas"}, {"neutralise.temperature_rise", "at_once.base_rise"},
	} {
		g := p.figs.Get(figure.ID{Quantity: x.quantity, Place: f.Place, Agent: f.Agent})
		switch {
		case g == nil:
		case g.Danger().Unknown():
			parts = append(parts, say("at_once.base_unknown", number.LabelOf(x.quantity)))
		case g.Danger().V > 0:
			parts = append(parts, say(x.says, p.v.Danger(g)))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return say("at_once.base", draft.AgentName("neutralise.mass", f.Agent), p.v.Place(f.Place), strings.Join(parts, ", "))
}

// atOnce is how hot it gets where all goes in at once.
func (p *reader) atOnce(f *figure.Finding) string {
	g, at := p.figs.Get(f.Figure), p.where(f.Figure)
	if o := p.figs.Get(f.Of); o != nil {
		g = o
	}
	written := f.Figure.Case.Failure == ""
	switch {
	case g == nil || g.Danger().Unknown():
		if written {
			return say("at_once.written_unknown", at)
		}
		return say("at_once.unknown", at)
	case written && class(f) == over:
		return say("at_once.written_over", at, p.v.Value(g))
	case written:
		return say("at_once.written", at, p.v.Danger(g))
	case boiling(f) && class(f) == over:
		return say("at_once.boils", at, p.v.Value(g))
	case class(f) == over:
		return say("at_once.over", at, p.v.Value(g))
	case class(f) == unknown:
		return say("at_once.unheld", at, p.v.Danger(g))
	}
	return say("at_once.within", at, p.v.Danger(g))
}

// atOnceGas bounds the hydrogen: no rate of a law is believed where the liquor boils, and
// no law gives it sooner than as the powder is wetted.
func (p *reader) atOnceGas(at figure.Place) string {
	total := p.figs.Get(figure.ID{Quantity: "gas.hydrogen.total", Place: at})
	switch {
	case total == nil:
		return ""
	case total.Danger().Unknown():
		return say("at_once.gas_unknown")
	}
	return say("at_once.gas", p.v.Danger(total))
}

// chargedAtOnce are the findings of how hot it gets in steps that bring powder, or what
// ought to take its time, in no time.
func (p *reader) chargedAtOnce() matter {
	slow := map[figure.Place]bool{}
	for _, f := range p.findings("heat.addition_time.required", asWritten) {
		slow[f.Figure.Place] = true
	}
	var out matter
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		at := figure.Step(s.Number)
		if s.Timed() || len(s.What) == 0 || !slow[at] && !bringsPowder(s) {
			continue
		}
		for _, q := range [...]string{"heat.mtsr", "heat.temperature_peak"} {
			for _, f := range p.findings(q, byNoLaw) {
				if f.Figure.Place == at && f.Limit.ID != "hood_limit" {
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// isTimed reports whether something goes in over a time.
func (p *reader) isTimed() bool {
	for i := range p.route().Steps {
		if p.route().Steps[i].Timed() {
			return true
		}
	}
	return false
}

// bringsPowder reports whether a step takes the precursor.
func bringsPowder(s *route.Step) bool {
	for i := range s.What {
		if s.What[i].Precursor {
			return true
		}
	}
	return false
}
