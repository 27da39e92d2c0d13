package process

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// fluorideOfBoron is the fluoride that one boron holds in acid, as BF4-.
const fluorideOfBoron = 4

// held counts the fluoride that a complex holds and cold base does not set free, mol:
// that of BF4- and PF6-, and that which boric acid takes up in acid; of what the data do
// not hold it is not known. Heat and time that the route states for the place lift that.
//
//	n_c = min(n_F, sum of n times the fluoride that one holds)
func (k *walker) held(l *Liquor) {
	boron, _ := chemicals.ElementIndex("B")
	name := ""
	per := func(e *Entry) float64 {
		switch {
		case e.Sub == nil:
			return 0
		case e.Sub.NotHeld && e.Sub.May("F"):
			return math.NaN() // nobody knows what holds its fluoride
		case e.Sub.NotHeld:
			return 0
		case e.Sub.Is("slow_fluoride"):
			name = e.Name
			return e.Sub.HydrolysisHF
		case e.Of[boron] > 0:
			if name == "" {
				name = e.Name
			}
			return fluorideOfBoron * e.Of[boron]
		}
		return 0
	}
	if most := value(&l.Pool, per); most == 0 {
		return
	}
	if l.Step > 0 && name != "" && k.heated(l) {
		k.fact("slow_fluoride_heated", l.Step, phrase.Of("fact.slow_fluoride_heated", phrase.Step(l.Step), name))
		return
	}
	n, f := Total(k.w, &l.Pool, "n_s", per).As("n_s"), Element(k.w, &l.Pool, "F").As("n_F")
	l.Held = k.w.Line("n_c", "mol", "min(n_F,n_s)", math.Min(f.V, n.V), f, n).Worse(working.Bound)
	if l.Step > 0 && l.Held.V != 0 && name != "" {
		k.fact("slow_fluoride", l.Step, phrase.Of("fact.slow_fluoride", phrase.Step(l.Step), name))
	}
}

// heated reports whether the route states heat and time that take apart what holds
// fluoride, from the step on in which base is there: in acid it stays whole, or forms
// again.
func (k *walker) heated(l *Liquor) bool {
	k.ahead = true
	hot, long := k.st.Num("hydrolysis.temperature").V, k.st.Num("hydrolysis.time").V
	for i := range k.c.Route.Steps {
		s := &k.c.Route.Steps[i]
		does := s.Verb().Does
		if s.In != l.Place || s.Number < l.Step || !s.Temperature.Set || does != route.Neutralises && !s.Verb().Held {
			continue
		}
		lasts := s.Time
		if !lasts.Set {
			lasts = s.Over
		}
		if lasts.Set && s.Temperature.In("degC") >= hot && lasts.In("min") >= long {
			return true
		}
	}
	return false
}
