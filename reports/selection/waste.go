package selection

import (
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/number"
)

// neutralise answers what neutralises the waste: the agent the route writes, else the
// first that is offered.
func (p *reader) neutralise(l *Line) {
	f := p.agentMass()
	if f == nil {
		l.State, l.Answer = Absent, say("neutralise.none")
		return
	}
	var m matter
	for _, q := range [...]string{"neutralise.mass", "neutralise.temperature_rise"} {
		for _, x := range p.findings(q, asWritten) {
			if x.Figure.Place == f.Place && x.Figure.Agent == f.Agent {
				m = append(m, x)
			}
		}
	}
	p.verdict(l, m)
	if f.Danger().Unknown() {
		l.Answer = say("neutralise.unknown", draft.AgentName(f.Quantity, f.Agent))
		if f.Conditions.Says("neutralise.binds_and_leaves_acid") {
			l.Answer = say("neutralise.stays", draft.AgentName(f.Quantity, f.Agent))
		}
		return
	}
	l.Answer = say(p.binds(f), p.v.Danger(f), draft.AgentName(f.Quantity, f.Agent))
	for _, x := range [...]struct{ quantity, some, none string }{
		{"neutralise.carbon_dioxide", "neutralise.gas", "neutralise.no_gas"},
		{"neutralise.temperature_rise", "neutralise.rise", ""},
		{"neutralise.dilution_water", "neutralise.water", "neutralise.no_water"},
	} {
		g := p.figs.Get(figure.ID{Quantity: x.quantity, Place: f.Place, Agent: f.Agent})
		switch {
		case g != nil && g.Danger().Unknown():
			l.Answer += say("neutralise.not_known", number.LabelOf(x.quantity))
		case g != nil && g.Danger().V > 0:
			l.Answer += say(x.some, p.v.Danger(g))
		case x.none != "":
			l.Answer += say(x.none)
		}
	}
	if t := m.top(); t != nil {
		p.narrows(l, t)
	}
}

// binds is the sentence of what an agent does to acid and fluoride.
func (p *reader) binds(f *figure.Figure) string {
	switch {
	case p.bare("fluoride.hf_equivalent") == nil:
		return "neutralise.acid"
	case f.Conditions.Says("neutralise.leaves_fluoride"):
		return "neutralise.mass_leaves"
	case f.Conditions.Says("neutralise.held"):
		return "neutralise.mass_held"
	case f.Conditions.Says("neutralise.too_little_calcium"):
		return "neutralise.mass_short"
	}
	return "neutralise.mass"
}

// agentMass is the mass of the agent that the route writes, the largest of them; where
// it writes none, of lime, and else the first.
func (p *reader) agentMass() *figure.Figure {
	var written, lime, first *figure.Figure
	for f := range p.figs.Of("neutralise.mass") {
		if f.Agent == "" {
			continue
		}
		_, step := f.Place.Step()
		switch {
		case step && (written == nil || f.Danger().V > written.Danger().V):
			written = f
		case f.Agent == "calcium_hydroxide":
			lime = f
		}
		if first == nil {
			first = f
		}
	}
	switch {
	case written != nil:
		return written
	case lime != nil:
		return lime
	}
	return first
}
