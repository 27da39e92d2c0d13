package review

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

// source is something that can light hydrogen, where a step has it.
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
		return slices.ContainsFunc(s.What, func(m route.Material) bool { return m.Precursor })
	}},
}

// brings reports whether the verb of a step brings a source.
func brings(key string) func(*route.Step) bool {
	return func(s *route.Step) bool { return s.Verb().Lights == key }
}

// ignition lists what of the route can light the gas, and what always can.
func (b *builder) ignition() []document.Block {
	l := document.List{}
	for _, x := range sources {
		var at []string
		for i := range b.Route().Steps {
			if s := &b.Route().Steps[i]; x.in(s) {
				at = append(at, strconv.Itoa(s.Number))
			}
		}
		if at != nil {
			l.Items = append(l.Items, words.Of("ignition."+x.key, strings.Join(at, ", ")))
		}
	}
	l.Items = append(l.Items, words.Of("ignition.always"))
	return []document.Block{document.Paragraph{Text: words.Of("gas.ignition")}, l}
}
