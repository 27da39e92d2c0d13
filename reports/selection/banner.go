package selection

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/labelling"
	"etchbound/hazards/route"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/schemas/columns"
)

// killer is a row of banner.csv: a gas that kills without warning, and what shows that
// it can come.
type killer struct{ on, of, says string }

//go:embed banner.csv
var bannerTable string

var killers = sync.OnceValue(func() []killer {
	return columns.Must("reports/selection/banner.csv", bannerTable, func(r columns.Row) killer {
		return killer{r.Choice("on", "pair", "fact", "gas", "powder"), r.Named("of"), r.Named("says")}
	})
})

// banner is everything that can kill without warning, with its key facts.
func (p *reader) banner() []string {
	var out []string
	if s := p.hf(); s != "" {
		out = append(out, s)
	}
	if s := p.base(); s != "" {
		out = append(out, s)
	}
	for _, f := range p.r.Walk.Facts {
		if f.ID == "hydride" || f.ID == "hydride_impurity" {
			out = append(out, folded(words.Say(f.Says))+p.hydride())
		}
	}
	var gases []string // each once, with all that shows it
	by := map[string][]string{}
	for _, k := range killers() {
		at := p.shows(k)
		if at != nil && by[k.says] == nil {
			gases = append(gases, k.says)
		}
		by[k.says] = append(by[k.says], at...)
	}
	for _, gas := range gases {
		out = append(out, say("banner.gas", gas, strings.Join(by[gas], "; ")))
	}
	return out
}

// shows is what shows that a gas of the table can come; nil where nothing does.
func (p *reader) shows(k killer) []string {
	var out []string
	switch k.on {
	case "pair":
		for _, m := range p.met {
			if m.ID == k.of {
				out = append(out, say("banner.where", m.Names, strings.Join(m.where, "; ")))
			}
		}
	case "fact":
		var at []figure.Place
		for _, f := range p.r.Walk.Facts {
			if f.ID == k.of {
				at = append(at, figure.Step(f.Step))
			}
		}
		if at != nil {
			out = append(out, p.v.places(at))
		}
	case "gas":
		if sub, held := chemicals.Library().Find(k.of); held {
			out = p.givenOff(sub.Name)
		}
	case "powder":
		if x := p.route().Precursor; x != nil && x.Phase.Count(k.of) > 0 && p.fluorine() {
			out = append(out, x.Phase.Text)
		}
	}
	return out
}

// givenOff is where a poisonous gas can come off; nil where it cannot.
func (p *reader) givenOff(name string) []string {
	var at []figure.Place
	for _, f := range p.r.Walk.Facts {
		if f.ID == "toxic_gas" && f.Says.Names(name) {
			at = append(at, figure.Step(f.Step))
		}
	}
	if at == nil {
		return nil
	}
	return []string{p.v.places(at)}
}

// hydride is how much of a toxic gas at most.
func (p *reader) hydride() string {
	if b := p.bare("gas.hydride.bound"); b != nil && !b.Danger().Unknown() {
		return say("banner.hydride", p.v.Danger(b))
	}
	return say("banner.hydride_unknown")
}

// fluorine reports whether any step holds fluorine: in an acid, in a salt, in a complex,
// or in what the data do not hold and may.
func (p *reader) fluorine() bool {
	if p.bare("fluoride.hf_equivalent") != nil || p.bare("fluoride.total") != nil {
		return true
	}
	return p.anyMaterial(func(_ *route.Step, s *chemicals.Substance) bool { return s.May("F") })
}

// tmaoh reports whether the route has tetramethylammonium hydroxide.
func (p *reader) tmaoh() bool {
	return p.anyMaterial(func(_ *route.Step, s *chemicals.Substance) bool { return s.Is("tmaoh") })
}

func (p *reader) anyMaterial(is func(*route.Step, *chemicals.Substance) bool) bool {
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		for j := range s.What {
			if s.What[j].Substance != nil && is(s, s.What[j].Substance) {
				return true
			}
		}
	}
	return false
}

// hf is the line of hydrofluoric acid: how much, how strong and where, and that a dry
// salt forms it.
func (p *reader) hf() string {
	if !p.fluorine() {
		return ""
	}
	f, dark := p.liquor()
	switch {
	case f == nil && dark == nil:
		return say("hf.amount_unknown") + p.forms()
	case f == nil:
		return say("hf.amount_unknown_in", p.v.places(dark)) + p.forms()
	}
	at := f.Place
	parts := []string{p.v.Danger(f)}
	for _, q := range [...]string{"fluoride.hf_concentration", "fluoride.hf_strength"} {
		g := p.figs.Get(figure.ID{Quantity: q, Place: at})
		switch {
		case g == nil:
			if len(parts) == 1 {
				parts = append(parts, say("hf.dry"))
			}
		case g.Danger().Unknown():
			parts = append(parts, say("hf.unknown", number.LabelOf(q)))
		default:
			parts = append(parts, p.v.Danger(g))
		}
	}
	where := ""
	if !at.IsZero() {
		where = say("hf.where", p.v.Place(at))
	}
	out := say("hf.present", strings.Join(parts, ", "), where)
	if dark != nil {
		out += say("hf.more_unknown", p.v.places(dark))
	}
	return out + p.forms()
}

// liquor is the figure of the most hydrofluoric acid that is known to stand in one liquor, of dry
// salts only where there is no liquor, and where nobody knows how much there is.
func (p *reader) liquor() (f *figure.Figure, dark []figure.Place) {
	var most, dry *figure.Figure
	for f := range p.figs.Of("fluoride.hf_equivalent") {
		at := &dry
		switch {
		case f.Place.IsZero(): // the worst of all stands for no place
			continue
		case f.Danger().Unknown():
			dark = append(dark, f.Place)
			continue
		case p.figs.Get(figure.ID{Quantity: "fluoride.hf_strength", Place: f.Place}) != nil:
			at = &most
		}
		if *at == nil || !(f.Danger().V <= (*at).Danger().V) {
			*at = f
		}
	}
	return cmp.Or(most, dry), dark
}

// forms says in which step hydrofluoric acid forms of what is not it, or can form, and what
// would form it and meets no acid.
func (p *reader) forms() string {
	if p.anyMaterial(func(_ *route.Step, s *chemicals.Substance) bool { return s.Formula.Text == "HF" }) {
		return ""
	}
	var of, would, steps []string
	p.anyMaterial(func(_ *route.Step, s *chemicals.Substance) bool {
		switch {
		case !(s.Formula.Count("F") > 0) && !(s.NotHeld && s.May("F")) || slices.Contains(of, s.Name) ||
			slices.Contains(would, s.Name):
		case p.would(s):
			would = append(would, s.Name)
		default:
			of = append(of, s.Name)
		}
		return false
	})
	for _, f := range p.r.Walk.Facts {
		if f.ID == "hf_formed" {
			if s := p.v.Place(figure.Step(f.Step)); !slices.Contains(steps, s) {
				steps = append(steps, s)
			}
		}
	}
	out := ""
	switch {
	case len(of) > 0 && len(steps) > 0:
		out = say("hf.forms", words.List(of), steps[0])
	case len(of) > 0:
		would = append(of, would...)
	}
	if len(would) > 0 {
		out += say("hf.with_acid", words.List(would))
	}
	return out
}

// would reports whether a salt forms hydrofluoric acid in no step of the route.
func (p *reader) would(s *chemicals.Substance) bool {
	return slices.ContainsFunc(p.r.Labels, func(l labelling.Label) bool { return l.Substance == s && l.Would })
}

// base is the line of tetramethylammonium hydroxide: how much and how strong.
func (p *reader) base() string {
	if !p.tmaoh() {
		return ""
	}
	var at []string
	p.eachMaterial(func(s *route.Step, m *route.Material) {
		if !m.Substance.Is("tmaoh") {
			return
		}
		how := joinedBy(", ", written(m.Volume), written(m.Mass), written(m.Amount), written(m.Strength))
		at = append(at, joinedBy(", ", how, p.v.Place(figure.Step(s.Number))))
	})
	return say("tmaoh", words.List(at))
}

func (p *reader) eachMaterial(do func(*route.Step, *route.Material)) {
	for i := range p.route().Steps {
		s := &p.route().Steps[i]
		for j := range s.What {
			if s.What[j].Substance != nil {
				do(s, &s.What[j])
			}
		}
	}
}
