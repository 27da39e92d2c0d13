package process

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// sayHF records that a liquor holds HF wherever fluoride and acid meet.
func (k *walker) sayHF(q *Pool, s *route.Step) {
	b := look(q)
	f, _ := chemicals.ElementIndex("F")
	if !b.fluoride || value(q, func(e *Entry) float64 { return e.Count(f) }) < 1e-6*k.in[f] {
		return
	}
	switch {
	case b.stranger != nil:
		k.fact("hf_formed", s.Number, phrase.Of("fact.hf_formed_unheld", phrase.Step(s.Number), b.stranger.Name))
	case b.acid:
		k.fact("hf_formed", s.Number, phrase.Of("fact.hf_formed", phrase.Step(s.Number)))
	case b.ammonium:
		k.fact("hf_formed", s.Number, phrase.Of("fact.hf_formed_hf_can", phrase.Step(s.Number)))
	default:
		for i := range q.Entries { // a complex that water takes apart, so slowly as it may
			if x := q.Entries[i].Sub; x != nil && x.HydrolysisHF > 0 {
				k.fact("hf_formed", s.Number, phrase.Of("fact.hf_formed_water", phrase.Step(s.Number), x.Name))
			}
		}
	}
}

// sayRatio prints a fluoride salt as mass, molarity and mole ratio, since the
// three are mixed up in print.
func (k *walker) sayRatio(m *route.Material, n, g working.Num, q *Pool) {
	if m.Substance.Kind != "fluoride_salt" || math.IsNaN(n.V) {
		return
	}
	var strength, ratio phrase.Phrase
	if q.Volume.V > 0 {
		strength = phrase.Of("fact.salt_ratio_strength", n.V/q.Volume.V*1000)
	}
	if p := k.out.Powder; p != nil && p.N.V > 0 {
		ratio = phrase.Of("fact.salt_ratio_powder", n.V/p.N.V)
	}
	k.fact("salt_ratio", 0, phrase.Of("fact.salt_ratio", m.Substance.Name, g.V, strength, ratio))
}

// specialistAbove is the mass fraction of HF above which this tool computes but
// asks for a specialist.
const specialistAbove = 0.50

func (k *walker) sayStrong(sub *chemicals.Substance, w working.Num, step int) {
	if sub.Solution == "hf" && w.V > specialistAbove+1e-9 {
		k.fact("hf_strong", step, phrase.Of("fact.hf_strong", phrase.Step(step), w.V*100))
	}
}

func (k *walker) sayOxidant(step int) {
	k.fact("oxidant", step, phrase.Of("fact.oxidant", phrase.Step(step)))
}

// sayMethane warns of a carbide that acid turns into methane.
func (k *walker) sayMethane(formula string, step int) {
	k.fact("methane", step, phrase.Of("fact.methane", formula, phrase.Step(step)))
}

// sayAmmonia warns where base meets ammonium.
func (k *walker) sayAmmonia(q *Pool, s *route.Step) {
	acid := value(q, func(e *Entry) float64 { return e.Acid })
	base := has(q, func(s *chemicals.Substance) bool { return s.Acid < 0 })
	salt := has(q, func(s *chemicals.Substance) bool { return s.Ammonium > 0 && s.Acid >= 0 })
	if base && salt && !(acid > 0) {
		k.fact("ammonia", s.Number, phrase.Of("fact.ammonia", phrase.Step(s.Number)))
	}
}
