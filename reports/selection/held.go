package selection

import (
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/stock"
	"etchbound/reports/number"
)

// holding is the line of what the site holds: the threshold that is worst, how much counts
// toward it, and how many batches are left to it.
func (p *reader) holding(l *Line, m matter) {
	l.Asks, l.Section = say("held.asks"), sectionOf("stock.share")
	p.verdict(l, m)
	f := m.top()
	switch {
	case f.Limit.ID == "threshold" && f.Limit.Value == 1:
		l.Against = say("held.against")
	case f.Limit.ID == "threshold":
		l.Against = say("held.against_part", number.Significant(100*f.Limit.Value, 3, 0))
	}
	s, name := p.share(f.Figure)
	if s == nil || s.Ratio.Unknown() {
		l.Answer = say("answer.unknown_at", p.notKnown(append([]figure.ID{f.Figure}, m.unknownBeside(f)...)))
		known := slices.DeleteFunc(slices.Clone(m), func(f *figure.Finding) bool { return class(f) != near })
		if len(known) == 0 {
			return
		}
		if s, name = p.share(known.top().Figure); s != nil {
			l.Answer += "; " + p.shared(s, name)
		}
		return
	}
	l.Answer = p.shared(s, name)
}

// shared is what counts toward a threshold, its share, and the batches that are left.
func (p *reader) shared(s *stock.Share, name string) string {
	out := say("held.share", name, number.Thing{Unit: "kg"}.Bound(s.Held.V, 1), s.Threshold.Programme,
		number.Percent(s.Ratio.V, 3, 1))
	if !s.Headroom.Unknown() {
		out += say("held.room", number.Thing{}.Bound(s.Headroom.V, -1))
	}
	return out
}

// share is what is held that a finding is of, with the name of the substance.
func (p *reader) share(id figure.ID) (*stock.Share, string) {
	for i := range p.r.Held {
		h := &p.r.Held[i]
		for j := range h.Shares {
			if at := h.Shares[j].ID; at.Place == id.Place && at.Agent == id.Agent {
				return &h.Shares[j], h.Name
			}
		}
	}
	for i := range p.r.Sums {
		if s := &p.r.Sums[i]; s.ID == id {
			return s, say("held.all")
		}
	}
	return nil, ""
}
