package selection

import (
	"cmp"
	"slices"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/wetted"
	"etchbound/reports/words"
)

// gaps are what is not known, one a matter: what the same thing settles of the same
// kind is one, with every place it is of. First what leaves most verdicts unknown.
func (p *reader) gaps() []Gap {
	type group struct {
		Gap
		places  []figure.Place
		each    []string // where that has words of its own
		figures map[figure.ID]bool
	}
	var all []*group
	var failed []string
	for i := range p.r.Unknown {
		u := &p.r.Unknown[i]
		if p.stopped(u.Kind) {
			continue // the hold point says it, and what settles it
		}
		if name := lackedBy(u); name != "" {
			if !slices.Contains(failed, name) {
				failed = append(failed, name)
			}
			continue
		}
		what, settles := words.Ask(u.Missing)
		what, settles = folded(what), folded(settles)
		if key := "settles." + u.Kind; words.HasFirstPage(key) {
			settles = say(key)
		}
		at := slices.IndexFunc(all, func(g *group) bool {
			return g.What == cmp.Or(general(u), what) && (general(u) != "" || g.Settles == settles)
		})
		if at < 0 {
			g := &group{Gap: Gap{What: cmp.Or(general(u), what), Settles: settles}, figures: map[figure.ID]bool{}}
			at, all = len(all), append(all, g)
		}
		for _, id := range u.Figures {
			all[at].figures[id] = true
		}
		if key := "each." + u.Kind; words.HasFirstPage(key) {
			if s := say(key, p.v.places(p.places(u)), subject(u)); !slices.Contains(all[at].each, s) {
				all[at].each = append(all[at].each, s)
			}
			continue
		}
		all[at].places = append(all[at].places, p.places(u)...)
	}
	judged := p.unknownVerdicts()
	weight := func(g *group) int { return weightOf(g.figures, judged) }
	slices.SortStableFunc(all, func(a, b *group) int { return cmp.Compare(weight(b), weight(a)) })
	out := make([]Gap, len(all))
	for i, g := range all {
		out[i] = Gap{g.What, joinedBy(", ", append(g.each, p.v.places(g.places))...), g.Settles}
	}
	for _, name := range failed {
		out = append(out, Gap{What: say("gap.failure", words.Of("case."+name)), Settles: say("gap.failure_settles")})
	}
	return joined(out)
}

// joined are gaps of which those that the same settles are one, at the place of the worst.
func joined(gaps []Gap) []Gap {
	var out []Gap
	for _, g := range gaps {
		if at := slices.IndexFunc(out, func(x Gap) bool { return x.Settles == g.Settles && g.Settles != "" }); at >= 0 {
			out[at] = Gap{What: say("gap.with", out[at].told(), g.told()), Settles: g.Settles}
			continue
		}
		out = append(out, g)
	}
	return out
}

// told is what is not known with where.
func (g Gap) told() string {
	if g.Where == "" {
		return g.What
	}
	return say("gap.at", g.What, g.Where)
}

// subject is what something missing is of in words: of a quantity its label.
func subject(u *doubt.UnknownItem) string {
	if q, ok := figure.Lookup(u.Subject.String()); ok && q.Label != "" {
		return strings.ToLower(q.Label[:1]) + q.Label[1:]
	}
	return u.Subject.String()
}

// weightOf is how many verdicts of some figures are not known. What parts are made of is
// one matter, of however many parts.
func weightOf(figures map[figure.ID]bool, judged map[figure.ID]int) int {
	n, part := 0, 0
	for id := range figures {
		if id.Quantity == wetted.Quantity {
			part = 1
			continue
		}
		n += judged[id]
	}
	return n + part
}

// lackedBy is the one failure that alone lacks something, as a figure of it or as the
// worst of all failures; empty where a figure of the route as it is written does.
func lackedBy(u *doubt.UnknownItem) string {
	name, of := "", map[string]bool{}
	for _, id := range u.Figures {
		switch id.Case.Failure {
		case "", name:
		default:
			if name != "" {
				return ""
			}
			name = id.Case.Failure
		}
		if id.Case.Failure != "" {
			of[id.Quantity] = true
		}
	}
	for _, id := range u.Figures {
		if id.Case.Failure == "" && !of[id.Quantity] {
			return ""
		}
	}
	return name
}

// stopped reports whether a hold point says already that something of a kind is missing.
func (p *reader) stopped(kind string) bool {
	return slices.ContainsFunc(p.stops, func(x Stop) bool { return slices.Contains(ranks()[x.ID].settles, kind) })
}

// general is what several of a kind are called together, the places standing beside it;
// empty where each has its own words.
func general(u *doubt.UnknownItem) string {
	if u.Kind == working.NoDatum && !words.NamesSubject(u.Missing) {
		return "" // what it is has words that need no name of a datum
	}
	if key := "gap." + u.Kind; words.HasFirstPage(key) {
		return say(key)
	}
	return ""
}

// places are where something is missing: its step, or that whose key is not written, the
// place it is of, else those of the figures that lack it.
func (p *reader) places(u *doubt.UnknownItem) []figure.Place {
	if u.Step > 0 {
		return []figure.Place{figure.Step(u.Step)}
	}
	if step, _, is := route.FromAt(u.Subject.String()); is && u.Kind == working.NotGiven {
		return []figure.Place{figure.Step(step)}
	}
	if place := p.route().Place(u.Subject.String()); place != nil {
		return []figure.Place{figure.At(place.Key)}
	}
	var out []figure.Place
	for _, id := range u.Figures {
		out = append(out, id.Place)
	}
	return out
}

// unknownVerdicts counts the findings that are not known by their figures.
func (p *reader) unknownVerdicts() map[figure.ID]int {
	out := map[figure.ID]int{}
	for i := range p.r.Findings {
		if f := &p.r.Findings[i]; class(f) == unknown {
			out[f.Figure]++
		}
	}
	return out
}

// left names what no model is built for: a whole family by its name, else its
// quantities.
func (p *reader) left() string {
	all, lacks := map[figure.Family]int{}, map[figure.Family][]string{}
	var order []figure.Family
	for _, q := range figure.Catalogue() {
		all[q.Family]++
		if !slices.Contains(p.r.NotAssessed, q.Name) {
			continue
		}
		if lacks[q.Family] == nil {
			order = append(order, q.Family)
		}
		lacks[q.Family] = append(lacks[q.Family], strings.ToLower(q.Label[:1])+q.Label[1:])
	}
	var names []string
	for _, f := range order {
		if key := "left." + string(f); len(lacks[f]) == all[f] && words.HasFirstPage(key) {
			names = append(names, say(key))
			continue
		}
		names = append(names, lacks[f]...)
	}
	if names == nil {
		return doubted(p.r.Doubts)
	}
	return say("left", words.List(names)) + " " + doubted(p.r.Doubts)
}

// doubted counts the numbers behind the page that nobody has read or measured.
func doubted(n doubt.Counts) string {
	return say("left.doubts", n.Memory, n.Assumed, n.Estimated)
}

// folded joins the lines of a text with single blanks.
func folded(s string) string { return strings.Join(strings.Fields(s), " ") }
