package process

import (
	"fmt"
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// sayHF records that a liquor holds HF wherever fluoride and acid meet.
func (k *walker) sayHF(q *Pool, s *route.Step) {
	b := look(q)
	f, _ := chemicals.ElementIndex("F")
	if !b.fluoride || value(q, func(e *Entry) float64 { return e.Of[f] }) < 1e-6*k.in[f] {
		return
	}
	switch {
	case b.acid:
		k.fact("hf_formed", s.Number, fmt.Sprintf("HF is in the liquor of step %d: fluoride and acid together are hydrofluoric acid, whatever bottles they came from.", s.Number))
	case b.ammonium:
		k.fact("hf_formed", s.Number, fmt.Sprintf("HF can form in the liquor of step %d: it holds ammonium fluoride.", s.Number))
	}
}

// sayRatio prints a fluoride salt as mass, molarity and mole ratio, since the
// three are mixed up in print.
func (k *walker) sayRatio(m *route.Material, n, g working.Num, q *Pool) {
	if m.Substance.Kind != "fluoride_salt" || math.IsNaN(n.V) {
		return
	}
	text := fmt.Sprintf("%s: %.4g g", m.Substance.Name, g.V)
	if q.Volume.V > 0 {
		text += fmt.Sprintf(", %.4g mol/L of the liquid so far", n.V/q.Volume.V*1000)
	}
	if p := k.out.Powder; p != nil && p.N.V > 0 {
		text += fmt.Sprintf(", %.4g mol per mol of layered phase", n.V/p.N.V)
	}
	k.fact("salt_ratio", 0, text+".")
}

// specialistAbove is the mass fraction of HF above which this tool computes but
// asks for a specialist.
const specialistAbove = 0.50

func (k *walker) sayStrong(sub *chemicals.Substance, w working.Num, step int) {
	if sub.Solution == "hf" && w.V > specialistAbove+1e-9 {
		k.fact("hf_strong", step, fmt.Sprintf("Step %d uses HF of %.3g wt%%, above 50 wt%%.", step, w.V*100))
	}
}

func (k *walker) sayOxidant(step int) {
	k.fact("oxidant", step, fmt.Sprintf("Step %d brings an oxidant to powder, metal or product: electrons go to the oxidant, oxygen and nitrogen oxides can come off with or instead of hydrogen, and dissolved metal speeds up the decomposition of the oxidant, also later in a bottle. None of this is modelled: gas and heat are unknown.", step))
}

// sayMethane warns of a carbide that acid turns into methane.
func (k *walker) sayMethane(formula string, step int) {
	k.fact("methane", step, fmt.Sprintf("%s gives methane, not hydrogen, in step %d: it burns as well, and in a closed container it counts as gas.", formula, step))
}

// sayAmmonia warns where base meets ammonium.
func (k *walker) sayAmmonia(q *Pool, s *route.Step) {
	acid := value(q, func(e *Entry) float64 { return e.Acid })
	base := has(q, func(s *chemicals.Substance) bool { return s.Acid < 0 })
	salt := has(q, func(s *chemicals.Substance) bool { return s.Ammonium > 0 && s.Acid >= 0 })
	if base && salt && !(acid > 0) {
		k.fact("ammonia", s.Number, fmt.Sprintf("Step %d brings base to ammonium: ammonia comes off.", s.Number))
	}
}
