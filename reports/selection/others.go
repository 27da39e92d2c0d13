package selection

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/upset"
	"etchbound/hazards/wetted"
	"etchbound/reports/draft"
	"etchbound/reports/number"
)

// maxOthers is how many matters beside the questions page 1 has.
const maxOthers = 6

// enough worse matters leave none that comes near a place.
const enough = 3

// failures is the key of the one matter of all that follows when something fails.
const failures = "failures"

// held is the key of the one matter of all that the site holds against thresholds.
const held = "stock"

// others are the worst matters that no question answers, at most six: what goes as
// written before what fails.
func (p *reader) others() []Line {
	asked := map[string]bool{"account.error": true}
	for _, q := range questions() {
		for _, name := range q.quantities {
			asked[name] = true
		}
	}
	by := map[string]matter{}
	var keys []string
	for i := range p.r.Findings {
		f := &p.r.Findings[i]
		key := f.Figure.Quantity
		switch {
		case f.Verdict == figure.Within:
			continue
		case key == "account.error" || f.Figure.Quantity == "gas.closed.pressure":
			// a balance that does not close is news; a lid has its question
		case f.Figure.Case.Failure != "":
			key = failures
		case asked[key]:
			continue
		case figure.Row(key).Family == held:
			key = held
		}
		if key == "gas.closed.pressure" {
			continue
		}
		if by[key] == nil {
			keys = append(keys, key)
		}
		by[key] = append(by[key], f)
	}
	if by[wetted.Quantity] != nil && onlyWalls(by[incompatible.Quantity]) { // one matter: the wall is not stated
		keys = slices.DeleteFunc(keys, func(k string) bool { return k == incompatible.Quantity })
	}
	slices.SortStableFunc(keys, func(a, b string) int {
		return cmp.Or(falseFirst(a == failures && class(by[b].top()) == over, b == failures && class(by[a].top()) == over),
			worse(by[a].top(), by[b].top()))
	})
	return p.told(keys, by)
}

// told are the lines of matters, those of failures among them.
func (p *reader) told(keys []string, by map[string]matter) []Line {
	var out []Line
	most := maxOthers
	if by[failures] != nil {
		most-- // its place is kept
	}
	stocked := by[held] != nil && class(by[held].top()) != unknown
	if stocked {
		most-- // so is the place of a stock that is near its threshold or above it
	}
	for _, key := range keys {
		kept := key == failures || key == held && stocked
		if !kept && (most == 0 || class(by[key].top()) == near && len(out) >= enough) {
			continue
		}
		l := Line{Key: key}
		switch key {
		case failures:
			p.failing(&l, by[key])
		case held:
			if !stocked {
				most--
			}
			p.holding(&l, by[key])
		default:
			most--
			l.Asks, l.Section = number.LabelOf(key), sectionOf(key)
			switch key {
			case incompatible.Quantity:
				p.pairsMet(&l, by[key])
			case wetted.Quantity:
				p.materials(&l, by[key])
			default:
				p.judge(&l, by[key])
			}
		}
		out = append(out, l)
	}
	return out
}

// sections are where more is told of the quantities of a family.
var sections = map[figure.Family]string{"gas": "gas", "vessel": "gas", "heat": "heat", "fluoride": "chemistry",
	"account": "chemistry", "air": "air", "wash": "waste", "neutralise": "waste", "spill": "emergency",
	"store": "storage", "dust": "solids", "handling": "solids", "unattended": "failures", "stock": "materials",
	"order": "pairs", "meeting": "pairs", "material": "construction"}

// sectionOf is the section that tells more of a quantity.
func sectionOf(quantity string) string { return sections[figure.Row(quantity).Family] }

// failing is the line of all failures: how many reach the limit, and the worst of them
// in the order in which people hear of them.
func (p *reader) failing(l *Line, m matter) {
	l.Asks, l.Section = say("failures.asks"), "upset"
	slices.SortStableFunc(m, func(a, b *figure.Finding) int {
		return cmp.Compare(slices.Index(upset.Keys(), a.Figure.Case.Failure), slices.Index(upset.Keys(),
			b.Figure.Case.Failure))
	})
	boils := slices.DeleteFunc(slices.Clone(m), func(f *figure.Finding) bool { return !boiling(f) })
	over := map[string]bool{}
	lost := map[string]bool{}
	for _, f := range boils {
		if class(f) == 0 {
			over[f.Figure.Case.Failure] = true
		} else if f.Verdict.Rank() == figure.Exceeds.Rank() {
			lost[f.Figure.Case.Failure] = true
		}
	}
	f := m.first(boils)
	p.verdict(l, matter{f})
	if other := m.house(f); other != nil {
		p.beside(l, other)
	}
	if len(over) == 0 {
		switch f = p.hottest(boils); {
		case f == nil && len(lost) == 1:
			l.Answer = say("failures.dark_one")
			return
		case f == nil:
			l.Answer = say("failures.dark", len(lost))
			return
		}
	}
	name, where := draft.CaseName(f.Figure.Case), p.where(f.Figure)
	shut := slices.ContainsFunc(boils, func(f *figure.Finding) bool { return class(f) == 0 && p.v.Shut(f.Figure.Place) })
	switch {
	case shut:
		l.Answer = say("failures.shut", len(over), name, where)
	case len(over) > 0:
		l.Answer = say("failures.count", len(over), name, where)
	default:
		l.Answer = say("failures.none", name, where)
	}
	if g := p.figs.Get(f.Figure); g != nil && !g.Danger().Unknown() {
		key := "failures.reaches"
		if class(f) == unknown {
			key = "failures.unless"
		}
		l.Answer += say(key, p.v.Value(g))
	}
	if len(lost) > 0 {
		l.Answer += say("failures.unknown", len(lost))
	}
}

// hottest is the finding of which the figure lies furthest toward danger; nil where none has a
// number there.
func (p *reader) hottest(m matter) *figure.Finding {
	var out *figure.Finding
	most := math.Inf(-1)
	for _, f := range m {
		if g := p.figs.Get(f.Figure); g != nil && g.Danger().V > most {
			out, most = f, g.Danger().V
		}
	}
	return out
}

// first is the first of the worst class of the findings of boiling, or of all where
// there is none of those.
func (m matter) first(boils matter) *figure.Finding {
	if len(boils) == 0 {
		boils = m
	}
	out := boils[0]
	for _, f := range boils[1:] {
		if class(f) < class(out) {
			out = f
		}
	}
	return out
}

// Worst are the findings that stand for the matters of a review, one a matter, worst
// first: those that no more than come near last, and none that is within.
func Worst(d *draft.Draft) []*figure.Finding {
	by := map[string]matter{}
	var out []*figure.Finding
	for i := range d.Review.Findings {
		f := &d.Review.Findings[i]
		key := f.Figure.Quantity
		if f.Figure.Case.Failure != "" {
			key = failures
		}
		if f.Verdict != figure.Within {
			by[key] = append(by[key], f)
		}
	}
	for key, m := range by {
		if key == failures {
			out = append(out, m.first(slices.DeleteFunc(slices.Clone(m), func(f *figure.Finding) bool { return !boiling(f) })))
			continue
		}
		out = append(out, m.top())
	}
	slices.SortFunc(out, func(a, b *figure.Finding) int {
		return cmp.Or(worse(a, b), a.Figure.Compare(b.Figure))
	})
	return out
}
