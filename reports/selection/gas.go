package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
)

// hydrogen answers how much hydrogen comes, and what air dilutes it.
func (p *reader) hydrogen(l *Line) {
	total := p.bare("gas.hydrogen.total")
	if total == nil {
		l.State, l.Answer = Absent, say("hydrogen.none")
		return
	}
	m := p.findings("gas.hydrogen.dilution_air", asWritten)
	p.verdict(l, m)
	l.Answer = say("hydrogen.total", p.v.Value(total))
	if total.Value.Unknown() {
		l.Answer = say("hydrogen.unknown")
		if b := p.bare("gas.hydride.bound"); b != nil && !b.Danger().Unknown() {
			l.Answer = say("hydrogen.hydride", p.v.Danger(b))
		}
	}
	if air := p.bare("gas.hydrogen.dilution_air"); air != nil {
		lost := p.notKnown(p.dark(m))
		switch {
		case air.Danger().Unknown():
			l.Answer += say("hydrogen.air_unknown")
		case lost != "":
			l.Answer += say("hydrogen.air_known", p.v.Danger(air), lost)
		default:
			l.Answer += say("hydrogen.air", p.v.Danger(air))
		}
	}
}

// lid answers what a shut lid does: the place with the highest pressure, of those that are
// shut as written before those that only could be, and every place of which it is not known.
func (p *reader) lid(l *Line) {
	var worst *figure.Figure
	var lost []string
	for f := range p.figs.Of("gas.closed.pressure") {
		if f.Case.Failure != "" || !f.Of().IsZero() || f.Place.IsZero() {
			continue
		}
		switch {
		case f.Danger().Unknown():
			if s := p.v.Place(f.Place); !slices.Contains(lost, s) {
				lost = append(lost, s)
			}
		case worst == nil || pressesMore(f, worst):
			worst = f
		}
	}
	m := p.findings("gas.closed.pressure", func(c figure.Case) bool { return c.Failure == "" })
	if worst == nil && len(lost) == 0 {
		l.State, l.Answer = Absent, say("lid.none")
		for f := range p.figs.Of("store.pressure") {
			if f.Case.State != figure.Closed {
				l.Answer = say("lid.stored")
			}
		}
		return
	}
	over := p.highestOver(m)
	if over != nil && worst != nil && worst.Case.State != figure.Closed && !p.exceeds(worst, m) {
		worst = over // one that is rated for what it comes to hides none that is not
	}
	p.shut(l, worst, m)
	if worst == nil {
		l.Answer += strings.Join(lost, ", ")
		return
	}
	if worst.Case.State == figure.Closed && len(m) > 0 && len(lost) > 0 { // another place is judged, of which nobody knows
		l.Answer = say("lid.unknown") + joinedBy("; ", strings.Join(lost, ", "), l.Answer)
		return
	}
	if worst.Case.State == figure.Cold { // what it comes to hot is said to be not known
		lost = slices.DeleteFunc(lost, func(s string) bool { return s == p.v.Place(worst.Place) })
	}
	if len(lost) > 0 {
		l.Answer += say("lid.also_unknown", strings.Join(lost, ", "))
	}
}

// pressesMore reports whether a pressure is told before another: that of a container that is
// shut as written and expected to be under pressure before one that is only supposed, then
// the higher.
func pressesMore(f, than *figure.Figure) bool {
	expected := func(f *figure.Figure) bool { return f.Case.State != figure.Closed && f.Value.V > 0 }
	if a, b := expected(f), expected(than); a != b {
		return a
	}
	return f.Danger().V > than.Danger().V
}

// highestOver is the highest pressure of those that exceed what their container may hold.
func (p *reader) highestOver(m matter) *figure.Figure {
	var out *figure.Figure
	for _, f := range m {
		if g := p.figs.Get(f.Figure); g != nil && class(f) == over && (out == nil || g.Danger().V > out.Danger().V) {
			out = g
		}
	}
	return out
}

// exceeds reports whether a finding of a matter is that a figure exceeds what it may be.
func (p *reader) exceeds(g *figure.Figure, m matter) bool {
	return slices.ContainsFunc(m, func(f *figure.Finding) bool { return f.Figure == g.ID && class(f) == over })
}

// shut says what the worst place comes to, and holds it against what a container may
// hold. One that is only supposed to be shut has no finding: it must not be shut.
func (p *reader) shut(l *Line, worst *figure.Figure, m matter) {
	p.verdict(l, m)
	if len(m) == 0 {
		l.Against = say("lid.must_not")
	}
	if worst == nil {
		l.Answer = say("lid.unknown")
		return
	}
	if f := m.top(); f != nil && f.Figure != worst.ID {
		l.Surely = ""
	}
	says := "lid.written"
	switch worst.Case.State {
	case figure.Closed:
		says = "lid.supposed"
	case figure.Cold: // of which nobody knows what it came to hot, or that were the worst
		says = "lid.cold"
	}
	l.Answer = say("lid.supposed", p.v.Place(worst.Place), p.v.Value(worst))
	if says != "lid.supposed" {
		l.Answer = say(says, p.v.Place(worst.Place), p.closure(worst.Place), p.v.Value(worst))
	}
	least := p.figs.Get(figure.ID{Quantity: "gas.closed.least", Place: worst.Place})
	if least != nil && worst.Case.State == figure.Cold && !least.Danger().Unknown() {
		l.Answer = say("lid.least", p.v.Place(worst.Place), p.closure(worst.Place), p.v.Danger(least), p.v.Value(worst))
	}
	if f := p.movedUnfinished(worst); f != nil {
		l.Answer += say("lid.moved", p.v.Danger(f), p.v.Place(f.Place))
	}
}

// closure says that a place is shut: as the route has it, or because it says nothing of it.
func (p *reader) closure(at figure.Place) string {
	for i := range p.r.Case.Route.Places {
		if x := &p.r.Case.Route.Places[i]; figure.At(x.Key) == at && !x.ClosureStated {
			return say("lid.not_stated")
		}
	}
	return say("lid.as_written")
}

// movedUnfinished is the highest pressure of what is moved before it has reacted, where
// that is more than the worst of what goes as written.
func (p *reader) movedUnfinished(worst *figure.Figure) *figure.Figure {
	var out *figure.Figure
	most := worst.Danger().V
	for f := range p.figs.Of("gas.closed.pressure") {
		if f.Case.Failure != "" && f.Of().IsZero() && !f.Danger().Unknown() && f.Danger().V > most {
			out, most = f, f.Danger().V
		}
	}
	return out
}
