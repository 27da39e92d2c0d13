package route

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/etching"
	"etchbound/schemas"
)

func (l *loader) precursor(n *schemas.Node) *Precursor {
	p := &Precursor{Mass: n.Value("mass"), Purity: n.Value("purity"), ParticleSize: n.Value("particle_size")}
	l.aboveZero(n, "mass", "purity", "particle_size")
	var ok bool
	l.holds.unsure = true
	if p.Phase, ok = l.formula(n.Get("phase")); ok {
		l.holds = holdings{phase: p.Phase.Text}
		p.Layers = l.layers(n.Get("layers"), p.Phase)
		l.layered(n, p)
	}
	l.impurities(n, p)
	return p
}

// layered refuses a formula that has nothing to etch away or nothing to keep.
func (l *loader) layered(n *schemas.Node, p *Precursor) {
	phase := n.Get("phase")
	if p.Phase.Charge != 0 {
		l.refuse(phase, p.Phase.Text+" carries a charge", "a formula without a charge", "")
		return
	}
	if n.Wrote("layers") && len(p.Layers) == 0 {
		return // told there
	}
	parts, err := etching.Split(chemicals.Base(), nil, p.Phase, p.Layers)
	for _, a := range parts.A {
		l.holds.leaving = append(l.holds.leaving, a.Symbol)
	}
	for _, m := range parts.M {
		l.holds.staying = append(l.holds.staying, m.Symbol)
	}
	if err != nil {
		hint := "write the formula of the powder as its supplier does"
		if slices.ContainsFunc([]string{"C", "N", "B"}, func(x string) bool { return slices.Contains(p.Phase.Order, x) }) {
			hint = "where the formula does not tell which elements leave, name them after layers, in brackets"
		}
		l.refuse(phase, err.Error(), layeredPhase, hint)
	}
}

const layeredPhase = "a layered phase: a metal that stays (of groups 3 to 6, or Mn), an element " +
	"that leaves, and carbon, nitrogen or boron"

// aboveZero refuses a zero where only more than nothing makes sense.
func (l *loader) aboveZero(n *schemas.Node, keys ...string) {
	for _, k := range keys {
		if v := n.Value(k); v.Set && (v.SI == 0 || v.Low == 0) {
			name := strings.ReplaceAll(k, "_", " ")
			hint := "leave the key out where a value is not known"
			if n.Get(k).Required() {
				hint = "the " + name + " has to be stated"
			}
			what := "the " + name + " is zero"
			if v.SI != 0 {
				what = "the " + name + " may be zero by its range"
			}
			l.refuse(n.Near(k), what, "more than zero", hint)
		}
	}
}

func (l *loader) layers(n *schemas.Node, phase chemicals.Formula) []string {
	if !n.Usable(schemas.List) {
		return nil
	}
	var list []string
	for _, x := range n.Items {
		if !x.Usable(schemas.Text) {
			continue
		}
		if _, ok := chemicals.ElementIndex(x.Text); !ok || !slices.Contains(phase.Order, x.Text) {
			l.refuse(x, x.Text+" is no element of "+phase.Text, "one of "+strings.Join(phase.Order, ", "), "")
			continue
		}
		list = append(list, x.Text)
	}
	return list
}

func (l *loader) impurities(n *schemas.Node, p *Precursor) {
	stated := n.Get("impurities")
	if stated == nil {
		if n.Has("impurities_source") && !n.Wrote("impurities") {
			l.refuseKey(n, "impurities_source", "a source of impurities that are not stated", "", "list the impurities, "+
				"or write impurities: none (source)")
		}
		return
	}
	p.Stated, p.Source = true, n.Str("impurities_source")
	if stated.Usable(schemas.Text) {
		p.Source = strings.TrimSuffix(strings.TrimPrefix(stated.Text, "none ("), ")")
		return
	}
	for _, x := range stated.Items {
		l.impurity(x, p)
	}
	l.shares(n, p)
}

func (l *loader) impurity(x *schemas.Node, p *Precursor) {
	formula := x.Get("formula")
	f, ok := l.formula(formula)
	if !ok {
		l.holds.unsure = true
		return
	}
	if same(f, p.Phase) {
		l.refuse(formula, "the layered phase itself is listed as an impurity", "other solids", "its share is the purity")
		return
	}
	if slices.ContainsFunc(p.Impurities, func(o Impurity) bool { return same(o.Formula, f) }) {
		l.refuse(formula, f.Text+" is listed twice", "each impurity once", "add up the shares")
		return
	}
	l.holds.impurities = append(l.holds.impurities, f.Text)
	p.Impurities = append(p.Impurities, Impurity{f, x.Value("share")})
}

func same(a, b chemicals.Formula) bool {
	return len(a.Order) > 0 && a.Of == b.Of && a.Charge == b.Charge
}

// shares refuses a powder that would be more than all of itself.
func (l *loader) shares(n *schemas.Node, p *Precursor) {
	total := 0.0
	if p.Purity.Set {
		total = p.Purity.SI
	}
	for _, i := range p.Impurities {
		total += i.Share.SI
	}
	if total > 1+1e-9 {
		l.refuseKey(n, "impurities", fmt.Sprintf("purity and impurities add up to %.4g wt%%", 100*total),
			"at most 100 wt% together", "")
	}
}
