package review

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals/flammable"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

// source is something that can light hydrogen or vapour, where a step has it.
type source struct {
	key string
	in  func(*route.Step) bool
}

// warm is above any room, K: what is set warmer has a heater beside it.
const warm = 303.15

var sources = [...]source{
	{"stirrer", func(s *route.Step) bool { return s.Stirred != nil && *s.Stirred }},
	{"heater", func(s *route.Step) bool {
		return s.Temperature.Set && s.Temperature.SI > warm || s.Verb().Lights == "heater"
	}},
	{"sonicator", brings("sonicator")},
	{"current", brings("current")},
	{"oven", brings("oven")},
	{"centrifuge", brings("centrifuge")},
	{"fridge", func(s *route.Step) bool { return s.Verb().Does == route.Stores }},
	{"powder", func(s *route.Step) bool {
		return slices.ContainsFunc(s.What, func(m route.Material) bool {
			return m.Precursor || m.Substance != nil && m.Substance.State == "s" && !m.Strength.Set
		})
	}},
	{"liquid", func(s *route.Step) bool {
		return slices.ContainsFunc(s.What, func(m route.Material) bool {
			return m.Substance != nil && flammable.Can(m.Substance)
		})
	}},
}

// brings reports whether the verb of a step brings a source.
func brings(key string) func(*route.Step) bool {
	return func(s *route.Step) bool { return s.Verb().Lights == key }
}

// ignition lists what of the route can light the gas, and what always can.
func (b *builder) ignition() []document.Block {
	return lights("gas.ignition", b.Route().Steps)
}

// vapourIgnition lists the same of the steps over whose liquor a vapour can come to a quarter
// of its lower flammable limit, or nobody knows whether it can.
func (b *builder) vapourIgnition() []document.Block {
	burns := map[figure.Place]bool{}
	for i := range b.Review.Findings {
		if f := &b.Review.Findings[i]; f.Figure.Quantity == "air.flammable_share" &&
			f.Verdict.Rank() >= figure.UnknownVerdict.Rank() {
			burns[f.Figure.Place] = true
		}
	}
	var steps []route.Step
	for _, s := range b.Route().Steps {
		if burns[figure.Step(s.Number)] {
			steps = append(steps, s)
		}
	}
	if steps == nil {
		return nil
	}
	return lights("air.ignition", steps)
}

// lights lists what of some steps can light what stands over them.
func lights(lead string, steps []route.Step) []document.Block {
	l := document.List{}
	for _, x := range sources {
		var at []string
		for i := range steps {
			if x.in(&steps[i]) {
				at = append(at, strconv.Itoa(steps[i].Number))
			}
		}
		if at != nil {
			l.Items = append(l.Items, words.Of("ignition."+x.key, strings.Join(at, ", ")))
		}
	}
	l.Items = append(l.Items, words.Of("ignition.always"))
	return []document.Block{document.Paragraph{Text: words.Of(lead)}, l}
}
