package selection

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/words"
)

// matter is the findings that are one thing to decide, whatever limit each meets.
type matter []*figure.Finding

// top is the finding that stands for all, nil where there is none.
func (m matter) top() *figure.Finding {
	if len(m) == 0 {
		return nil
	}
	return slices.MinFunc(m, before)
}

// The order in which findings of a matter stand for it: a number that exceeds before
// what is not known, and nothing that is within before either.
const (
	over = iota
	unknown
	near
	within
)

// class is the place of a finding in that order.
func class(f *figure.Finding) int {
	switch {
	case f.Verdict == figure.Exceeds && !math.IsNaN(f.Margin):
		return over
	case f.Verdict == figure.Exceeds || f.Verdict == figure.UnknownVerdict:
		return unknown
	case f.Verdict == figure.Near:
		return near
	}
	return within
}

// before orders findings, what is said first first. Boiling stands before a limit of
// the house that is stricter: that the house is exceeded must not hide that it boils.
func before(a, b *figure.Finding) int {
	return cmp.Or(
		cmp.Compare(class(a), class(b)),
		falseFirst(supposed(a), supposed(b)),
		falseFirst(!boiling(a), !boiling(b)),
		falseFirst(a.Limit.Value != 0, b.Limit.Value != 0),
		cmp.Compare(a.Margin, b.Margin))
}

// worse orders the findings that stand for matters, worst first: by verdict, then what
// may hold nothing before the rest.
func worse(a, b *figure.Finding) int {
	return cmp.Or(
		cmp.Compare(b.Verdict, a.Verdict),
		falseFirst(supposed(a), supposed(b)),
		falseFirst(a.Limit.Value != 0, b.Limit.Value != 0),
		before(a, b))
}

func falseFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// boiling reports whether a finding is that a liquor boils.
func boiling(f *figure.Finding) bool {
	return f.Limit.Role == limit.Boils
}

// supposed reports whether a finding is of something that is no step of the route: an
// agent it does not use, a bottle on its way.
func supposed(f *figure.Finding) bool {
	switch f.Figure.Place {
	case figure.Waste, figure.Delivery, figure.Yard:
		return f.Figure.Agent != ""
	}
	return false
}

// judge answers a line by the finding that stands for a matter, and names what else of
// it is not known.
func (p *reader) judge(l *Line, m matter) {
	f := p.foremost(m)
	p.verdict(l, m)
	if g := p.figs.Get(f.Figure); g != nil && !g.Danger().Unknown() {
		l.Answer = p.named(g) + p.valueOf(g) + p.alsoUnknown(m, f)
	} else {
		l.Answer = say("answer.unknown_at", p.notKnown(append([]figure.ID{f.Figure}, m.unknownBeside(f)...)))
	}
	p.narrows(l, f)
}

// valueOf is a figure with its range; of a count what is counted with it, where page 1 has
// words for that.
func (p *reader) valueOf(f *figure.Figure) string {
	if key := "counts." + f.Quantity; words.HasFirstPage(key) {
		return say(key, p.v.Value(f))
	}
	return p.v.Value(f)
}

// narrows adds what is expected and what would narrow the range, where that decides.
func (p *reader) narrows(l *Line, f *figure.Finding) {
	if s := p.narrow(f, l.Answer); s != "" {
		l.Answer += "; " + s
	}
}

// verdict sets what a line is held against, its verdict and how surely.
func (p *reader) verdict(l *Line, m matter) {
	f := m.top()
	if f == nil {
		l.State, l.Against = Unjudged, say("against.nothing")
		return
	}
	l.State, l.Verdict, l.Against, l.Surely = Judged, f.Verdict, p.v.Limit(&f.Limit, f.Figure), p.surely(f)
	l.limits = append(l.limits, l.Against)
	if other := m.house(f); other != nil {
		p.beside(l, other)
	}
	if other := m.boilsUnknown(f); other != nil {
		p.beside(l, other)
	}
}

// beside sets another limit beside the one a line is held against, each with how surely it
// is exceeded where the two differ: of one that all of a range is over nobody reads "may".
func (p *reader) beside(l *Line, other *figure.Finding) {
	against, surely := p.v.Limit(&other.Limit, other.Figure), p.surely(other)
	l.limits = append(l.limits, against)
	if surely == l.Surely {
		l.Against = say("against.and", l.Against, against)
		return
	}
	l.Against, l.Surely = say("against.and", withSurely(l.Against, l.Surely), withSurely(against, surely)), ""
}

// withSurely is a limit with how surely it is exceeded, as far as that is said.
func withSurely(against, surely string) string {
	if surely == "" {
		return against
	}
	return say("against.surely", against, surely)
}

// house is the first finding of a limit of the house that is exceeded beside the one
// that stands for the matter.
func (m matter) house(top *figure.Finding) *figure.Finding {
	for _, f := range m {
		if f.Limit.Origin == limit.Local && f.Limit.Key != top.Limit.Key && class(f) == over && class(top) == over {
			return f
		}
	}
	return nil
}

// foremost is the finding of a matter whose figure is told: the one that stands for it, or, of a
// limit that nobody knows, the one whose figure lies furthest toward danger.
func (p *reader) foremost(m matter) *figure.Finding {
	top := m.top()
	if top == nil || class(top) != unknown {
		return top
	}
	out := top
	for _, f := range m {
		g, worst := p.figs.Get(f.Figure), p.figs.Get(out.Figure)
		if class(f) != unknown || f.Limit.Key != top.Limit.Key || supposed(f) != supposed(top) || g == nil || worst == nil {
			continue
		}
		q, _ := figure.Lookup(g.Quantity)
		a, b := g.Danger().V, worst.Danger().V
		if q.Danger == figure.Low && a < b || q.Danger != figure.Low && a > b {
			out = f
		}
	}
	return out
}

// boilsUnknown is a boiling point that nobody knows, beside another limit that stands for the
// matter: that one of the house is exceeded must not hide it.
func (m matter) boilsUnknown(top *figure.Finding) *figure.Finding {
	if boiling(top) {
		return nil
	}
	return m.headed(func(f *figure.Finding) bool { return boiling(f) && class(f) == unknown })
}

// headed is the finding of a kind that is said first, nil where there is none.
func (m matter) headed(is func(*figure.Finding) bool) *figure.Finding {
	return slices.DeleteFunc(slices.Clone(m), func(f *figure.Finding) bool { return !is(f) }).top()
}

// dark are the figures of a matter that have no number at their dangerous end, or an end that
// something nobody states leaves open, of another step than one of those told.
func (p *reader) dark(m matter, told ...*figure.Finding) []figure.ID {
	var out []figure.ID
	for _, f := range m {
		at := func(t *figure.Finding) bool { return t != nil && t.Figure.Place == f.Figure.Place }
		g := p.figs.Get(f.Figure)
		if g != nil && (g.Danger().Unknown() || g.Open() != nil) && !slices.ContainsFunc(told, at) {
			out = append(out, f.Figure)
		}
	}
	return out
}

// alsoUnknown names the places of a matter that are not known beside the finding that
// stands for it.
func (p *reader) alsoUnknown(m matter, top *figure.Finding) string {
	if s := p.notKnown(m.unknownBeside(top)); s != "" {
		return say("answer.also_unknown", s)
	}
	return ""
}

// unknownBeside are the figures of a matter that are not known, of another place or
// agent than the finding that stands for it.
func (m matter) unknownBeside(top *figure.Finding) []figure.ID {
	var out []figure.ID
	for _, f := range m {
		if class(f) == unknown && (f.Figure.Place != top.Figure.Place || f.Figure.Agent != top.Figure.Agent) {
			out = append(out, f.Figure)
		}
	}
	return out
}
