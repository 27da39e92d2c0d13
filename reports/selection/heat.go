package selection

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/number"
)

// addition answers how long the addition must take, for which cooling.
func (p *reader) addition(l *Line) {
	var m matter
	for _, q := range [...]string{"heat.addition_time.required", "gas.addition_time.hood", "gas.addition_time.vent"} {
		m = append(m, p.findings(q, asWritten)...)
	}
	f := m.longest(p)
	if f == nil {
		p.allAtOnce(l) // what takes no time goes in at once, of which the question before it tells
		if len(p.chargedAtOnce()) > 0 {
			l.Answer = say("addition.at_once")
		}
		return
	}
	p.verdict(l, matter{f})
	g := p.figs.Get(f.Figure)
	if g == nil || g.Danger().Unknown() {
		l.Answer = say("addition.unknown", p.where(f.Figure))
	} else {
		l.Answer = say("addition.at_least", p.v.Danger(g), p.where(f.Figure))
	}
	if f.Figure.Quantity == "heat.addition_time.required" {
		l.Answer += p.cooledBy(f.Figure.Place)
	} else {
		l.Answer += say("addition.by", number.LabelOf(f.Figure.Quantity))
	}
	if s := p.step(f.Figure.Place); s != nil && s.Portions > 1 && s.Over.Set {
		l.Against = say("addition.portions", l.Against, s.Portions, written(s.Over))
	}
	l.Answer += p.alsoUnknown(m, f)
	p.narrows(l, f)
}

// longest is the finding that asks for the longest addition, one that exceeds what is written
// before one that does not, and one with a number before one without.
func (m matter) longest(p *reader) *figure.Finding {
	var out *figure.Finding
	most := math.Inf(-1)
	for _, f := range m {
		g := p.figs.Get(f.Figure)
		if g == nil {
			continue
		}
		v := g.Danger().V
		longer := out == nil || falseFirst(class(f) != over, class(out) != over) < 0
		if !longer && (class(f) == over) == (class(out) == over) {
			longer = v > most || math.IsNaN(most) && !math.IsNaN(v)
		}
		if longer {
			out, most = f, v
		}
	}
	return out
}

// cooledBy says for which cooling of the place of a step an addition is worked out.
func (p *reader) cooledBy(at figure.Place) string {
	s := p.step(at)
	if s == nil {
		return ""
	}
	place := p.route().Place(s.Works())
	switch {
	case place == nil || place.Cooling == nil:
		return say("cooled.not_stated")
	case place.Cooling.Kind == "none":
		return say("cooled.none")
	case !place.Cooling.UA.Set && !place.Cooling.Temperature.Set:
		return say("cooled.little", coolant(place.Cooling))
	}
	return say("cooled.by", coolant(place.Cooling))
}

// coolant is what cools a vessel in words.
func coolant(c *route.Cooling) string {
	s := []string{say("coolant." + c.Kind)}
	if c.Temperature.Set {
		s = append(s, written(c.Temperature))
	}
	if c.UA.Set {
		s = append(s, written(c.UA))
	}
	return strings.Join(s, ", ")
}

// cooling answers how hot it gets as written, and if cooling fails.
func (p *reader) cooling(l *Line) {
	run, fails := p.findings("heat.temperature_peak", asWritten), p.findings("heat.mtsr", byNoLaw)
	boils := matter{}
	for _, f := range append(append(matter{}, run...), fails...) {
		if f.Limit.ID != "hood_limit" {
			boils = append(boils, f)
		}
	}
	if len(boils) == 0 {
		p.unheld(l, []string{"heat.mtsr", "heat.adiabatic_rise", "heat.temperature_peak"})
		return
	}
	first, second := run, fails
	if run.standsBehind(fails) {
		first, second = fails, run
	}
	p.verdict(l, first)
	if f := second.top(); f != nil && class(f) == over {
		for _, x := range []*figure.Finding{f, second.house(f)} {
			if x != nil && !slices.Contains(l.limits, p.v.Limit(&x.Limit, x.Figure)) { // two boil at what rounds to the same
				p.beside(l, x)
			}
		}
	}
	all := append(slices.Clone(run), fails...)
	l.Answer = capital(joinedBy("; ", p.asRun(run), p.ifCoolingFails(fails))) + p.boilsAt(l, all)
	if s := p.notKnown(p.dark(all, p.foremost(run), p.foremost(fails))); s != "" {
		l.Answer += say("answer.also_unknown", s)
	}
	if f := first.top(); f != nil {
		p.narrows(l, f)
	}
}

// capital begins a text as a sentence begins.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// byNoLaw picks what goes as written, by no law in particular.
func byNoLaw(c figure.Case) bool { return asWritten(c) && c.Branch == "" }

// standsBehind reports whether what fails goes before what is so as it runs: where it is
// worse, and where it boils while as it runs only a limit of the house is exceeded.
func (m matter) standsBehind(fails matter) bool {
	a, b := m.top(), fails.top()
	if a == nil || b == nil {
		return a == nil
	}
	return class(b) < class(a) || class(b) == class(a) && boiling(b) && !boiling(a)
}

// asRun is how hot it gets with its cooling at work.
func (p *reader) asRun(m matter) string {
	f := p.foremost(m)
	if f == nil {
		return ""
	}
	g := p.figs.Get(f.Figure)
	switch {
	case g == nil || g.Danger().Unknown():
		return say("run.unknown", p.where(f.Figure))
	case boiling(f) && class(f) == over && p.v.Shut(f.Figure.Place):
		return say("run.shut", p.v.Value(g), p.where(f.Figure))
	case boiling(f) && class(f) == over:
		if f.Surely < figure.BestEstimate {
			return say("run.can_boil", p.where(f.Figure), p.v.Value(g))
		}
		return say("run.boils", p.where(f.Figure))
	}
	return say("run.reaches", p.v.Value(g), p.where(f.Figure))
}

// boilsAt is where the liquor boils, for a row that says so nowhere else.
func (p *reader) boilsAt(l *Line, m matter) string {
	for _, f := range m {
		if boiling(f) && slices.Contains(l.limits, p.v.Limit(&f.Limit, f.Figure)) {
			return ""
		}
	}
	f := m.headed(func(f *figure.Finding) bool { return boiling(f) && !math.IsNaN(f.Limit.Value) })
	if f == nil {
		return ""
	}
	return "; " + p.v.Limit(&f.Limit, f.Figure)
}

// ifCoolingFails is how hot it gets if nothing has reacted when cooling fails.
func (p *reader) ifCoolingFails(m matter) string {
	f := p.foremost(m)
	if f == nil {
		return ""
	}
	g := p.figs.Get(f.Figure)
	if o := p.figs.Get(f.Of); o != nil {
		g = o
	}
	if g == nil || g.Danger().Unknown() {
		return say("mtsr.unknown", p.where(f.Figure))
	}
	return say("mtsr.reaches", p.v.Value(g), p.where(f.Figure))
}

// outgrown answers at which batch the first safeguard is outgrown.
func (p *reader) outgrown(l *Line) {
	x := p.grown
	switch {
	case p.route().Precursor == nil:
		l.State, l.Answer = Absent, say("outgrown.no_powder")
		return
	case x == nil:
		l.State, l.Answer = NotYet, say("outgrown.not_looked")
		return
	}
	now := p.exceededNow()
	from, to := p.v.Amount(p.route().Precursor.Mass.In("g"), "g"), p.v.Amount(x.To, "g")
	switch {
	case x.Finding == nil && now == "":
		l.Answer = say("outgrown.none", to)
	case x.Finding == nil:
		l.Answer = say("outgrown.already", from, now) + say("outgrown.no_next", to)
	case now == "":
		l.Answer = say("outgrown.at", p.v.Amount(x.Holds, "g"), p.v.Amount(x.Over, "g"), p.of(x.Finding.Figure))
	default:
		l.Answer = say("outgrown.already", from, now) +
			say("outgrown.next", p.v.Amount(x.Over, "g"), number.LabelOf(x.Finding.Figure.Quantity))
	}
	// The limit of what comes next, where more is exceeded already, stands on the page of the batch.
	if x.Finding != nil && now == "" && x.Finding.Limit.Value >= 0 { // what is left of room may be less than none
		l.Against = p.v.Limit(&x.Finding.Limit, x.Finding.Figure)
	}
	if x.Unknown > 0 {
		l.Answer += say("outgrown.unless", x.Unknown)
	}
}

// mostNow is how many of the matters that are exceeded already are named, the rest counted: the
// rows above it have the others.
const mostNow = 1

// exceededNow names what a number exceeds at this batch as the route is written, worst
// first, each quantity once; empty where nothing is.
func (p *reader) exceededNow() string {
	by := map[string]matter{}
	var names []string
	for i := range p.r.Findings {
		f := &p.r.Findings[i]
		if class(f) != over || !asWritten(f.Figure.Case) || supposed(f) {
			continue
		}
		if by[f.Figure.Quantity] == nil {
			names = append(names, f.Figure.Quantity)
		}
		by[f.Figure.Quantity] = append(by[f.Figure.Quantity], f)
	}
	slices.SortStableFunc(names, func(a, b string) int { return worse(by[a].top(), by[b].top()) })
	more := len(names) - mostNow
	if more > 0 {
		names = names[:mostNow]
	}
	for i, n := range names {
		names[i] = number.LabelOf(n)
	}
	if more > 0 {
		names = append(names, say("outgrown.more", more))
	}
	return strings.Join(names, "; ")
}
