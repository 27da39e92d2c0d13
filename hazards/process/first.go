package process

import (
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// slurry is what of a pool a step neutralises. Base that lies in it without any acid is
// what the liquor is poured on to, and counts among the doses.
func (k *walker) slurry(l *Liquor, q *Pool) []Entry {
	acid := value(q, func(e *Entry) float64 { return max(e.Base, 0) })
	var out []Entry
	for i := range q.Entries {
		e := q.Entries[i]
		if acid != 0 || e.Sub == nil || !(e.Sub.Acid < 0) {
			out = append(out, e)
			continue
		}
		n, M := e.N.As("n"), e.Sub.Formula.MolarMass(k.st, k.w).As("M")
		l.Doses = append(l.Doses, Dose{Sub: e.Sub, N: e.N, Mass: k.w.Line("m", "kg", "n*M/1000", n.V*M.V/1000, n, M)})
	}
	return out
}

// first adds up the water of a step that is there before acid and base meet, in the
// order in which the step lists its materials, and that which comes with one of the
// two. What is poured in when they have met comes too late to be counted.
func (k *walker) first(s *route.Step, l *Liquor, before *Pool, mix *Mixing) {
	acid := !(value(before, func(e *Entry) float64 { return max(e.Base, 0) }) <= 0)
	_, held := sides(before)
	base := !(held <= 0)
	meet := 0
	for ; meet < len(s.What); meet++ {
		if m := &s.What[meet]; m.Substance != nil {
			brings := neutralising.Of(m.Substance).Base
			acid, base = acid || !(brings >= 0), base || !(brings <= 0)
		}
		if acid && base {
			break
		}
	}
	var terms []working.Num
	for i := range s.What {
		for _, c := range came(mix, &s.What[i]) {
			if brings := neutralising.Of(c.Of.Substance).Base; i >= meet && brings == 0 {
				l.Later = true
				continue
			}
			terms = append(terms, c.Water)
		}
	}
	if terms != nil {
		l.First = k.w.Sum("n_w", "mol", terms...)
	}
}

// came is the water that one material of a step brought.
func came(mix *Mixing, m *route.Material) []Came {
	if mix == nil {
		return nil
	}
	for i := range mix.Came {
		if mix.Came[i].Of == m {
			return mix.Came[i : i+1]
		}
	}
	return nil
}
