package limit

import (
	"strconv"

	"etchbound/chemicals"
	"etchbound/schemas/field"
)

// setKeys are the keys of a limits file, as the set of limits it becomes holds them.
var setKeys = field.Keys[Set]{
	field.Custom(field.Choice, "limits", func(*Set) field.Value { return field.Word("etchbound/1") }).
		NotListed("it takes one value only"),
	field.Words("title", func(s *Set) *string { return &s.Title }),
	field.OneOf("jurisdiction", func(s *Set) *string { return &s.Jurisdiction }),
	field.Each("entries", limitKeys, func(_ int, l *Limit) string { return l.ID },
		func(s *Set) *[]Limit { return &s.Limits }),
}

var limitKeys = field.Keys[Limit]{
	field.Words("id", func(l *Limit) *string { return &l.ID }),
	field.Words("quantity", func(l *Limit) *string { return &l.Quantity }),
	field.Custom(field.Text, "agent", agentOf),
	field.Custom(field.Text, "label", labelOf),
	field.In("value", func(l *Limit) (*float64, string) { return &l.Value, l.Unit }),
	field.Words("document", func(l *Limit) *string { return &l.Document }),
	field.Words("section", func(l *Limit) *string { return &l.Section }),
	field.Words("edition", func(l *Limit) *string { return &l.Edition }),
	number(field.Quantity, "average", func(l *Limit) (*float64, string) { return &l.Average, "min" }),
	number(field.Quantity, "near", func(l *Limit) (*float64, string) { return &l.Near, nearUnit(l.Unit) }),
}

// agentOf tells the substance by its name.
func agentOf(l *Limit) field.Value {
	return field.Told{
		Tell: func() string {
			if s, ok := chemicals.Library().Find(l.Agent); ok {
				return s.Name
			}
			return l.Agent
		},
		Forget: func() { l.Agent = "" },
	}
}

// labelOf tells what was written: the document stands in where nothing was.
func labelOf(l *Limit) field.Value {
	return field.Told{
		Tell: func() string {
			if l.Label == l.Document {
				return ""
			}
			return l.Label
		},
		Forget: func() { l.Label = l.Document },
	}
}

// number is a key whose number is 0 where it is not stated.
func number(k field.Kind, key string, of func(*Limit) (*float64, string)) field.Key[Limit] {
	return field.Custom(k, key, func(l *Limit) field.Value {
		x, unit := of(l)
		return field.Told{
			Tell: func() string {
				if *x == 0 {
					return ""
				}
				return strconv.FormatFloat(*x, 'g', 9, 64) + " " + unit
			},
			Forget: func() { *x = 0 },
		}
	})
}

// nearUnit is that of the margin: kelvin below a temperature, else a share.
func nearUnit(unit string) string {
	if unit == "degC" {
		return "K"
	}
	return "of the limit"
}

// Fields lists every key of a limits file.
func Fields() []field.Field { return setKeys.Whole("limits").List() }

// Visit shows every key of the set, in the order of Fields.
func (s *Set) Visit(visit func(field.Seen)) { setKeys.Whole("limits").Visit(s, visit) }

// Beside shows every key of two sets side by side.
func Beside(a, b *Set, visit func(field.Beside)) { setKeys.Whole("limits").Beside(a, b, visit) }

// OwnFile is what the file of the site gave to the set.
func (s *Set) OwnFile() *Set {
	out := &Set{Title: s.Title, Jurisdiction: s.Jurisdiction, Digest: s.Digest}
	for _, l := range s.Limits {
		if l.Origin == Local {
			out.Limits = append(out.Limits, l)
		}
	}
	return out
}
