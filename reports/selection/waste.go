package selection

import (
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/scaling"
)

// neutralise answers what neutralises the waste: the agent the route writes, of several
// steps that which exceeds, else the first that is offered.
func (p *reader) neutralise(l *Line) {
	f := p.agentMass()
	if f == nil {
		p.hydrolysed(l)
		return
	}
	m := p.treating(f)
	p.verdict(l, m)
	if f.Danger().Unknown() {
		l.Answer = say("neutralise.unknown", draft.AgentName(f.Quantity, f.Agent))
		if f.Conditions.Says("neutralise.binds_and_leaves_acid") {
			l.Answer = say("neutralise.stays", draft.AgentName(f.Quantity, f.Agent))
		}
		return
	}
	l.Answer = say(p.binds(f), p.v.Danger(f), draft.AgentName(f.Quantity, f.Agent))
	others, lost := p.treatedBeside(f)
	if others > 0 {
		l.Answer = say("answer.at", p.v.Place(f.Place)) + l.Answer
	}
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
	if lost != "" {
		l.Answer += say("answer.also_unknown", lost)
	}
	if t := m.top(); t != nil {
		p.narrows(l, t)
	}
}

// hydrolysed answers for a waste without acid by the walk: none, but for what of a chloride that
// water turns into acid did not leave as gas, which nobody knows.
func (p *reader) hydrolysed(l *Line) {
	all := scaling.HydrolysedOf(p.r)
	if len(all) == 0 {
		l.State, l.Answer = Absent, say("neutralise.none")
		return
	}
	l.State, l.Verdict, l.Against = Judged, figure.UnknownVerdict, say("against.nothing")
	for i := range all {
		if i > 0 {
			l.Answer += "; "
		}
		l.Answer += draft.HydrolysedText(&all[i])
	}
}

// treating are the findings of what an agent does where it is put.
func (p *reader) treating(f *figure.Figure) matter {
	var m matter
	for _, q := range [...]string{"neutralise.mass", "neutralise.temperature_rise"} {
		for _, x := range p.findings(q, asWritten) {
			if x.Figure.Place == f.Place && x.Figure.Agent == f.Agent {
				m = append(m, x)
			}
		}
	}
	return m
}

// treatedBeside is in how many other steps the route writes an agent, and those of which it
// is not known how much they take.
func (p *reader) treatedBeside(told *figure.Figure) (others int, lost string) {
	var ids []figure.ID
	for f := range p.figs.Of("neutralise.mass") {
		if _, step := f.Place.Step(); !step || f.Agent == "" || f.Place == told.Place {
			continue
		}
		others++
		if f.Danger().Unknown() {
			ids = append(ids, figure.ID{Quantity: f.Quantity, Place: f.Place})
		}
	}
	return others, p.notKnown(ids)
}

// worseTreated reports whether what is put into one waste is told before what is put into
// another: what exceeds first, then the more.
func (p *reader) worseTreated(f, than *figure.Figure) bool {
	a, b := p.treating(f).top(), p.treating(than).top()
	if a != nil && b != nil && class(a) != class(b) {
		return class(a) < class(b)
	}
	return f.Danger().V > than.Danger().V
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

// agentMass is the mass of the agent that the route writes, the worst of them; where
// it writes none, of lime, and else the first.
func (p *reader) agentMass() *figure.Figure {
	var written, lime, first *figure.Figure
	for f := range p.figs.Of("neutralise.mass") {
		if f.Agent == "" {
			continue
		}
		_, step := f.Place.Step()
		switch {
		case step && (written == nil || p.worseTreated(f, written)):
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
