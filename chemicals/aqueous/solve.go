package aqueous

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Solve finds the equilibrium of a mixture. It answers when every equation holds and
// every element and the charges balance to 1e-10 of what is there, and with an error
// that says what is wrong otherwise.
func (m *Model) Solve(mix Mixture) (*State, error) {
	w, err := m.rest(&mix)
	if err != nil {
		return nil, err
	}
	if len(mix.Added)+len(mix.Solids) == 0 && mix.Gas.Kind == None && mix.Reagent == "" {
		return w.state(&mix)
	}
	p, err := m.pot(w, &mix)
	if err != nil {
		return nil, err
	}
	if mix.onlySettles() {
		if s := m.settled(w, p); s != nil {
			return s, nil
		}
	}
	if w, err = m.meet(p); err != nil {
		return nil, err
	}
	return w.state(&mix)
}

// settled begins with the solution at rest and lets solids settle from it. It is the shorter
// way where few of many do; nil where it came to no answer.
func (m *Model) settled(r *work, p *pot) *State {
	w, err := m.vessel(p, 0)
	if err != nil || !w.follow(r) {
		return nil
	}
	s, err := w.state(p.mix)
	if err != nil {
		return nil
	}
	return s
}

// rest is the solution before anything is added.
func (m *Model) rest(mix *Mixture) (*work, error) {
	k := m.known
	total := make([]float64, k.masters)
	some := uint32(1)
	for _, a := range mix.Totals {
		j, there := k.byPart[a.Of]
		if !there || j == 0 {
			return nil, fmt.Errorf("%q is no component; there are %s", a.Of, strings.Join(Components(), ", "))
		}
		if !(a.Mol >= 0) || math.IsInf(a.Mol, 1) {
			return nil, fmt.Errorf("%s: %g mol/kg is no amount", a.Of, a.Mol)
		}
		if total[j] += a.Mol; a.Mol > 0 {
			some |= 1 << j
		}
	}
	closes := -1
	if mix.Closes != "" {
		j, there := k.byPart[mix.Closes]
		if !there || j == 0 || k.rows[j].charge == 0 {
			return nil, fmt.Errorf("%q is no component that can close the charge", mix.Closes)
		}
		closes, some = j, some|1<<j
	}
	for j := 1; j < k.masters; j++ {
		if j != closes {
			total[0] -= total[j] * k.rows[j].charge
		}
	}
	if closes >= 0 {
		total[0] -= total[closes] * k.rows[closes].charge
	}
	w := m.newWork(total, 0, some)
	w.fixed = true
	if closes >= 0 {
		z := k.rows[closes].charge
		h := hold{name: mix.Closes, row: -1, ln: -mix.InitialPH * math.Ln10, free: true, on: true}
		h.act, h.brings = make([]float64, len(w.comp)), make([]float64, len(w.comp))
		h.act[0], h.brings[0], h.brings[slices.Index(w.comp, closes)] = 1, -z, 1
		w.holds, w.active = []hold{h}, []int{0}
	}
	if err := w.run(); err != nil {
		return nil, err
	}
	return w, nil
}

// pot is a solution at rest with all that is put to it.
func (m *Model) pot(r *work, mix *Mixture) (*pot, error) {
	p := &pot{mix: mix, some: 1}
	p.total, p.water = r.contents()
	for _, j := range r.comp {
		p.some |= 1 << j
	}
	if err := p.put(m.known); err != nil {
		return nil, err
	}
	if mix.Gas.Kind == Open {
		p.some |= m.known.rows[m.carbon].present
	}
	return p, nil
}

// meet finds what becomes of all that came together.
func (m *Model) meet(p *pot) (*work, error) {
	w, err := m.vessel(p, 0)
	if err != nil {
		return nil, err
	}
	if err := w.run(); err == nil || p.mix.Reagent == "" {
		return w, err
	}
	return m.titrate(p)
}

// pot is all that comes together, before a reagent.
type pot struct {
	mix     *Mixture
	total   []float64 // mol of masters, without what starts as a solid
	water   float64   // mol
	some    uint32    // masters that are there
	reagent makeup
	trial   bool // the reagent is in by amount, and H+ comes and goes to keep the pH
}

// put adds what is added, and notes of which masters there is something.
func (p *pot) put(k *known) (err error) {
	note := func(of []float64) {
		for j, n := range of {
			if n != 0 {
				p.some |= 1 << j
			}
		}
	}
	for _, a := range p.mix.Added {
		b, err := k.makeupOf(a.Of)
		if err != nil {
			return err
		}
		if !(a.Mol >= 0) || math.IsInf(a.Mol, 1) {
			return fmt.Errorf("%s: %g mol/kg is no amount", a.Of, a.Mol)
		}
		if a.Mol == 0 {
			continue
		}
		note(b.of)
		for j, n := range b.of {
			p.total[j] += n * a.Mol
		}
		p.water += b.water * a.Mol
	}
	if p.mix.Reagent != "" {
		if p.reagent, err = k.makeupOf(p.mix.Reagent); err != nil {
			return err
		}
		note(p.reagent.of)
	}
	for n, s := range p.mix.Solids {
		i, there := k.byName[s.Of]
		switch {
		case !there || k.rows[i].kind != kindPhase:
			return fmt.Errorf("%q is no solid; there are %s", s.Of, strings.Join(Solids(), ", "))
		case !(s.Mol >= 0) || math.IsInf(s.Mol, 1):
			return fmt.Errorf("%s: %g mol/kg is no amount", s.Of, s.Mol)
		case slices.ContainsFunc(p.mix.Solids[:n], func(o Amount) bool { return o.Of == s.Of }):
			return fmt.Errorf("%s stands twice among the solids", s.Of)
		case s.Mol > 0:
			note(k.rows[i].of)
		}
	}
	return nil
}

// vessel is what is looked for with so many mol of the reagent put in.
func (m *Model) vessel(p *pot, mol float64) (*work, error) {
	total := slices.Clone(p.total)
	if mol != 0 {
		for j, n := range p.reagent.of {
			if total[j] += n * mol; j > 0 && n != 0 {
				total[j] = math.Max(total[j], scarce)
			}
		}
	}
	w := m.newWork(total, p.water+mol*p.reagent.water, p.some)
	return w, w.surround(p)
}

// contents are the masters and the water of a solution that was found, mol.
func (w *work) contents() (total []float64, water float64) {
	total = make([]float64, w.m.known.masters)
	for n, j := range w.comp {
		total[j] = w.total[n]
	}
	for _, k := range w.active {
		for n, j := range w.comp {
			total[j] -= w.holds[k].moved * w.holds[k].brings[n]
		}
	}
	water = perKg
	for i, r := range w.spec {
		water += w.mol[i] * w.m.known.rows[r].water
	}
	return total, water
}

// surround says what is held.
func (w *work) surround(p *pot) error {
	m, mix, some := w.m, p.mix, p.some
	w.holds = make([]hold, 0, 2+len(mix.Solids))
	if mix.Reagent != "" {
		if !(math.Abs(mix.FixedPH-6) <= 9) {
			return fmt.Errorf("a pH of %g cannot be kept: say one from -3 to 15", mix.FixedPH)
		}
		h := hold{name: mix.Reagent, row: -1, ln: -mix.FixedPH * math.Ln10, free: true, on: true,
			brings: w.present(p.reagent.of), bringWater: p.reagent.water, act: make([]float64, len(w.comp))}
		h.act[0] = 1
		if p.trial {
			h.brings, h.bringWater = h.act, 0
		}
		w.holds = append(w.holds, h)
	}
	switch g := mix.Gas; g.Kind {
	case Open, Pressure:
		if m.known.rows[m.carbon].present&^some != 0 {
			break // no carbonate, no gas of it
		}
		if !(g.Value > 0 && g.Value <= densest) {
			return fmt.Errorf("carbon dioxide at %g atm is not held: say one above 0, at most %d", g.Value, densest)
		}
		f := g.Value
		if g.Kind == Pressure {
			phi, _ := carbonDioxide.at(m.kelvin, g.Value)
			f *= phi
		}
		h := w.solid(m.known.rows[m.carbon].name, m.carbon, math.Log(f), 0)
		h.free, h.on = g.Kind == Open, g.Kind == Open
		w.holds = append(w.holds, h)
	case Space:
		if !(g.Value > 0) || math.IsInf(g.Value, 1) {
			return fmt.Errorf("a space of %g L is none", g.Value)
		}
		if m.known.rows[m.carbon].present&^some == 0 {
			w.space = g.Value
		}
	}
	for _, s := range mix.Solids {
		i := m.known.byName[s.Of]
		if m.known.rows[i].present&^some != 0 {
			continue // part of it is nowhere: it cannot settle
		}
		h := w.solid(s.Of, i, 0, s.Mol)
		h.on = s.Mol > 0
		w.holds = append(w.holds, h)
	}
	for k := range w.holds {
		if w.holds[k].on {
			w.active = append(w.active, k)
		}
	}
	return nil
}

// errStuck is a search that did not end.
var errStuck = errors.New("no equilibrium was found: the search did not end. Nothing is answered")
