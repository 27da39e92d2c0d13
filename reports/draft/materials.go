package draft

import (
	"cmp"
	"math"
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Verb is what a step does, in a word or two.
func Verb(s *route.Step) string {
	if key := "verb." + s.Do; words.Has(key) {
		return words.Of(key)
	}
	return strings.ReplaceAll(s.Do, "_", " ")
}

// StepText is the verb with what the writer added to it.
func StepText(s *route.Step) string {
	verb := Verb(s)
	t := []string{verb}
	if s.Label != "" {
		t[0] = words.Of("step.label", verb, plain.Fold(s.Label))
	}
	if s.Cycles > 0 {
		t = append(t, words.Of("step.cycles", s.Cycles))
	}
	if s.TargetPH != nil {
		t = append(t, words.Of("step.target", number.Nearest(*s.TargetPH, 3)))
	}
	if s.Retained.Set {
		t = append(t, words.Of("step.retained", Amount(s.Retained)))
	}
	if s.Part.Set {
		t = append(t, words.Of("step.part", Amount(s.Part)))
	}
	if s.Current.Set {
		t = append(t, Amount(s.Current))
	}
	if s.Voltage.Set {
		t = append(t, Amount(s.Voltage))
	}
	if s.Stirred != nil && !*s.Stirred {
		t = append(t, words.Of("step.unstirred"))
	}
	return strings.Join(t, ", ")
}

func (b *Draft) StepMaterials(s *route.Step) string {
	var t []string
	for i := range s.What {
		t = append(t, b.materialText(&s.What[i]))
	}
	return strings.Join(t, "; ")
}

// Held is one material of the route and every step that puts some in.
type Held struct {
	Name, Formula, Cas string
	Uses               []string
}

func (b *Draft) Held() []*Held {
	var out []*Held
	at := map[string]*Held{}
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		for j := range s.What {
			m := &s.What[j]
			name := b.MaterialName(m)
			h := at[name]
			if h == nil {
				h = &Held{Name: name}
				switch p := b.Route().Precursor; {
				case m.Substance != nil:
					h.Formula, h.Cas = m.Substance.Formula.Text, m.Substance.CAS
				case p != nil:
					h.Formula = p.Phase.Text
				}
				at[name] = h
				out = append(out, h)
			}
			use := cmp.Or(b.howMuch(m), name)
			h.Uses = append(h.Uses, words.Of("material.use", use, s.Number)+cyclesOf(s))
		}
	}
	return out
}

func cyclesOf(s *route.Step) string {
	switch {
	case !s.Verb().Cycles():
		return ""
	case s.Cycles > 0:
		return words.Of("material.cycles", s.Cycles)
	}
	return words.Of("material.each_cycle")
}

// Tiny is v, or 0 where it is only rounding of the machine.
func Tiny(v float64) float64 {
	if math.Abs(v) < 1e-12 {
		return 0
	}
	return v
}
