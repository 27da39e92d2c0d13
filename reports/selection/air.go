package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
)

// breathe answers what people breathe at the worst step, agent by agent.
func (p *reader) breathe(l *Line) {
	m := append(p.findings("air.breathing_zone", asWritten), p.onTheFloor()...)
	lost := p.unbreathed()
	switch {
	case len(m) == 0 && len(lost) == 0:
		l.State, l.Answer = Absent, say("breathe.none")
		return
	case len(m) == 0:
		l.State, l.Verdict, l.Against = Judged, figure.UnknownVerdict, say("against.nothing")
		if p.lacks("air_unjudged") {
			l.Against = say("breathe.held")
		}
		l.Answer = unbreathable(lost)
		return
	}
	by := map[string]matter{}
	var agents []string
	for _, f := range m {
		if by[f.Figure.Agent] == nil {
			agents = append(agents, f.Figure.Agent)
		}
		by[f.Figure.Agent] = append(by[f.Figure.Agent], f)
	}
	slices.SortStableFunc(agents, func(a, b string) int { return before(by[a].top(), by[b].top()) })
	p.verdict(l, m)
	var told, dark []string
	var held []*figure.Finding
	for _, a := range agents {
		f := by[a].top()
		g := p.figs.Get(f.Figure)
		if g == nil || g.Danger().Unknown() {
			name := draft.AgentName("air.breathing_zone", a)
			lost = slices.DeleteFunc(lost, func(s string) bool { return s == name })
			dark = append(dark, name)
			continue
		}
		key := "breathe.agent"
		switch {
		case f.Figure.Quantity == "air.floor":
			key = "breathe.floor"
		case f.Figure.Case.Branch == figure.Mist:
			key = "breathe.drops"
		}
		told = append(told, say(key, draft.AgentName("air.breathing_zone", a), p.v.Danger(g), p.v.Place(f.Figure.Place)))
		held = append(held, f)
	}
	if len(told) > 0 {
		l.Answer = told[0] // the worst, whose range it is that could be narrowed
		p.eachHeld(l, held)
		p.narrows(l, m.top())
		l.Answer = strings.Join(append([]string{l.Answer}, told[1:]...), "; ")
	}
	if lost = append(dark, lost...); len(lost) > 0 { // what has a limit first
		l.Answer = joinedBy("; ", l.Answer, unbreathable(lost))
		if l.Verdict.Rank() < figure.UnknownVerdict.Rank() { // what nobody knows is within nothing
			l.Verdict, l.Surely = figure.UnknownVerdict, ""
		}
	}
}

// onTheFloor are the findings of gas that lies on the floor, as dry ice gives it, where it is
// not within what people may breathe.
func (p *reader) onTheFloor() matter {
	return slices.DeleteFunc(p.findings("air.floor", asWritten),
		func(f *figure.Finding) bool { return f.Verdict == figure.Within })
}

// eachHeld sets what the agents of a line are held against, one limit of several once, and of
// each how surely where that is not the same of all.
func (p *reader) eachHeld(l *Line, held []*figure.Finding) {
	differ := slices.ContainsFunc(held, func(f *figure.Finding) bool { return p.surely(f) != l.Surely })
	var limits []string
	surely := map[string][]string{}
	for _, f := range held {
		s := p.v.Limit(&f.Limit, f.Figure)
		if !slices.Contains(limits, s) {
			limits = append(limits, s)
		}
		surely[s] = append(surely[s], p.surely(f))
	}
	switch {
	case len(limits) > 1 && len(limits) < len(held): // the order tells which limit is of which agent
		limits = nil
		for i, f := range held {
			s := p.v.Limit(&f.Limit, f.Figure)
			if i > 0 && s == p.v.Limit(&held[i-1].Limit, held[i-1].Figure) {
				s = say("against.same")
			}
			if differ {
				s = withSurely(s, p.surely(f))
			}
			limits = append(limits, s)
		}
	case differ:
		for i, s := range limits {
			limits[i] = withSurely(s, joinedBy(", ", surely[s]...))
		}
	}
	if l.Against = strings.Join(limits, "; "); differ {
		l.Surely = ""
	}
}

// unbreathed are the substances of which nobody works out what people breathe: those of
// which a limit is held, and those of which none is.
func (p *reader) unbreathed() []string {
	var out []string
	for i := range p.r.Unknown {
		u := &p.r.Unknown[i]
		if (u.Kind == "air_unjudged" || u.Kind == "no_limit_held") && !slices.Contains(out, u.Subject.String()) {
			out = append(out, u.Subject.String())
		}
	}
	return out
}

// lacks reports whether something of a kind is missing.
func (p *reader) lacks(kind string) bool {
	return slices.ContainsFunc(p.r.Unknown, func(u doubt.UnknownItem) bool { return u.Kind == kind })
}

// mostNamed is how many substances the answer names of which nobody knows anything.
const mostNamed = 4

// unbreathable names what is not known, and how many more there are.
func unbreathable(lost []string) string {
	if n := len(lost) - mostNamed; n > 1 {
		return say("breathe.unknown_more", strings.Join(lost[:mostNamed], ", "), n)
	}
	return say("breathe.unknown", strings.Join(lost, ", "))
}

// joinedBy joins what is not empty.
func joinedBy(sep string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), sep)
}

// spill answers what to do if it spills or the hood stops, with what the room then
// holds.
func (p *reader) spill(l *Line) {
	l.Answer = say("spill.do")
	m := p.findings("air.room_peak", func(figure.Case) bool { return true })
	m = slices.DeleteFunc(m, func(f *figure.Finding) bool { return f.Figure.Place != figure.Spill })
	f := p.foremost(m)
	if f == nil {
		l.State = Told
		return
	}
	p.verdict(l, m)
	if g := p.figs.Get(f.Figure); g != nil && !g.Danger().Unknown() {
		l.Answer += say("spill.room", draft.AgentName(f.Figure.Quantity, f.Figure.Agent), p.v.Danger(g)) +
			p.alsoUnknownOf(m, f)
	} else {
		l.Answer += say("spill.unknown")
	}
}

// alsoUnknownOf names the agents of a matter at one place that are not known beside the one
// told.
func (p *reader) alsoUnknownOf(m matter, told *figure.Finding) string {
	var names []string
	for _, id := range m.unknownBeside(told) {
		if s := draft.AgentName(id.Quantity, id.Agent); !slices.Contains(names, s) {
			names = append(names, s)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return say("answer.also_unknown", strings.Join(names, ", "))
}

// skin answers what to do if it touches skin or eye.
func (p *reader) skin(l *Line) {
	l.State = Told
	hf, tmaoh := p.fluorine(), p.tmaoh()
	switch {
	case hf && tmaoh:
		l.Answer = say("skin.hf") + " " + say("skin.tmaoh")
	case hf:
		l.Answer = say("skin.hf")
	case tmaoh:
		l.Answer = say("skin.tmaoh")
	default:
		l.Answer = say("skin.other")
	}
	l.Answer += " " + say("skin.check")
}
