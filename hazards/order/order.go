package order

import (
	_ "embed"
	"math"
	"slices"
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
	"etchbound/schemas/columns"
)

// rule is what may not come to what.
type rule struct {
	id           string
	there, comes meeting.Side
	met          bool // only where the acid and base that meet warm it
}

//go:embed rules.csv
var rulesCSV string

var rules = sync.OnceValue(func() []rule {
	return columns.Must("hazards/order/rules.csv", rulesCSV, func(r columns.Row) rule {
		_ = r.Named("source") + r.Named("status")
		side := func(column string) meeting.Side {
			s, err := meeting.ReadSide(r.Named(column), solids, meeting.Any, "base")
			if err != nil {
				r.Fault(column, err)
			}
			return s
		}
		return rule{r.Named("id"), side("there"), side("comes"), r.Yes("met")}
	})
})

// Read gives the steps of a walk that go against a rule of order, or may.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	var all []against
	meetings(c.Route, &k, func(s *route.Step, m *together) {
		if s.Verb().Does != route.Neutralises {
			all = append(all, m.against(s.Number)...)
		}
	})
	all = append(all, early(&c, &k)...)
	var out []figure.Figure
	for i := range c.Route.Steps {
		if f, there := told(w, c.Route.Steps[i].Number, all); there {
			out = append(out, f)
		}
	}
	return out
}

// against is one step that goes against one rule, or may, or for once does not.
type against struct {
	step  int
	is    truth
	says  phrase.Phrase
	lacks working.Missing
}

// against holds a meeting against every rule.
func (m *together) against(step int) []against {
	var out []against
	var told []meeting.Side // what comes is told once, by the first row that holds
	for _, r := range rules() {
		there, lies := m.there.has(r.there)
		comes, what := m.comes.has(r.comes)
		is := there.and(comes)
		if is == no || slices.ContainsFunc(told, r.comes.Same) {
			continue
		}
		if is == yes {
			told = append(told, r.comes)
		}
		x := against{step: step, is: is, says: phrase.Of("order."+r.id, phrase.Step(step), what, lies, m.place),
			lacks: working.Lacks("order", m.place).In(step)}
		switch {
		case is == maybe:
			x.says = phrase.Of("order.maybe", phrase.Step(step), what, lies, m.place)
		case r.met && math.IsNaN(m.rise):
			x.is = maybe
		case r.met && m.rise <= process.NoRise:
			x.is, x.says = no, phrase.Of("order.washed", phrase.Step(step), what, lies, m.place)
		}
		out = append(out, x)
	}
	return out
}

// told is the figure of a step: how many rules it goes against, unknown where it may
// go against one and surely goes against none.
func told(w *working.Sheet, step int, all []against) (figure.Figure, bool) {
	n, there := 0.0, false
	var first, open, washed *against
	for i := range all {
		x := &all[i]
		if x.step != step {
			continue
		}
		there = true
		switch {
		case x.is == yes:
			if n++; first == nil {
				first = x
			}
		case x.is == maybe && open == nil:
			open = x
		case x.is == no && washed == nil:
			washed = x
		}
	}
	if !there {
		return figure.Figure{}, false
	}
	f := figure.Figure{ID: figure.ID{Quantity: "order.against", Place: figure.Step(step)}}
	switch {
	case first != nil:
		f.Conditions, f.Value = first.says, working.Exact("n", "1", n, "rules of order that the step goes against")
	case open != nil:
		f.Conditions, f.Value = open.says, working.Absent("n", "1", open.lacks)
	default:
		f.Conditions = washed.says
		f.Value = working.Exact("n", "1", 0, "rules of order that the step goes against")
	}
	f.Value = w.Keep(f.Value)
	return f, true
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return rulesCSV }
