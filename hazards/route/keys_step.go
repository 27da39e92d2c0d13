package route

import (
	"etchbound/chemicals"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// stepKeys are the keys of a step.
var stepKeys = field.Keys[Step]{
	field.OneOf("do", func(s *Step) *string { return &s.Do }),
	field.Words("in", func(s *Step) *string { return &s.In }),
	field.Words("into", func(s *Step) *string { return &s.Into }),
	field.Items("what", materialKeys, materialList, func(s *Step) *[]Material { return &s.What }),
	field.Items("wetted", wettedKeys, wettedList, func(s *Step) *[]Wetted { return &s.Wetted }),
	field.Of("over", func(s *Step) *quantity.Value { return &s.Over }),
	field.Times("portions", func(s *Step) *int { return &s.Portions }),
	field.Of("portion_time", func(s *Step) *quantity.Value { return &s.PortionTime }),
	field.Of("time", func(s *Step) *quantity.Value { return &s.Time }),
	field.Of("temperature", func(s *Step) *quantity.Value { return &s.Temperature }),
	field.Of("not_above", func(s *Step) *quantity.Value { return &s.NotAbove }),
	field.Yes("attended", func(s *Step) **bool { return &s.Attended }),
	field.Yes("stirred", func(s *Step) **bool { return &s.Stirred }),
	field.Times("cycles", func(s *Step) *int { return &s.Cycles }),
	field.Of("retained", func(s *Step) *quantity.Value { return &s.Retained }).Grows(field.GrowsAsVolume).IsFact(),
	field.OneOf("product", func(s *Step) *string { return &s.Product }).IsFact(),
	field.Maybe("target_ph", func(s *Step) **float64 { return &s.TargetPH }),
	field.Custom(field.Choice, "water", waterOf).IsFact(),
	field.Of("part", func(s *Step) *quantity.Value { return &s.Part }).Grows(field.GrowsAsVolume),
	field.Of("current", func(s *Step) *quantity.Value { return &s.Current }),
	field.Of("voltage", func(s *Step) *quantity.Value { return &s.Voltage }).IsFact(),
	field.Of("power", func(s *Step) *quantity.Value { return &s.Power }).IsFact(),
	field.Words("gas", func(s *Step) *string { return &s.Gas }),
	field.Of("gas_flow", func(s *Step) *quantity.Value { return &s.GasFlow }),
	field.OneOf("cryogen", func(s *Step) *string { return &s.Cryogen }),
	field.Of("cryogen_amount", func(s *Step) *quantity.Value { return &s.CryogenAmount }),
	field.OneOf("form", func(s *Step) *string { return &s.Form }).IsFact(),
	field.Words("label", func(s *Step) *string { return &s.Label }),
	field.Words("note", func(s *Step) *string { return &s.Note }),
}

// waterOf tells what was written of the water of a wash, not what counts where
// nothing was.
func waterOf(s *Step) field.Value {
	return field.Told{
		Tell: func() string {
			if !s.WaterStated && s.Water != "co2_free" {
				return ""
			}
			return s.Water
		},
		Counts: openAir,
		Forget: func() {
			s.WaterStated = false
			if s.Water = ""; s.Do == "wash" {
				s.Water = openAir
			}
		},
	}
}

// openAir is the water of a wash that does not say otherwise.
const openAir = "open_air"

// materialKeys are the keys of what is put in; the powder of the route has none.
var materialKeys = field.Keys[Material]{
	substanceKey(ofMaterial),
	unheldFormula(ofMaterial),
	unheldFlag(ofMaterial),
	field.Of("strength", func(m *Material) *quantity.Value { return &m.Strength }),
	field.Of("mass", func(m *Material) *quantity.Value { return &m.Mass }).Grows(field.Grows),
	field.Of("volume", func(m *Material) *quantity.Value { return &m.Volume }).Grows(field.Grows),
	field.Of("amount", func(m *Material) *quantity.Value { return &m.Amount }).Grows(field.Grows),
	field.Of("ratio", func(m *Material) *quantity.Value { return &m.Ratio }),
}

func ofMaterial(m *Material) **chemicals.Substance { return &m.Substance }

// Name is that of the substance, or the word for the powder of the route.
func (m *Material) Name() string {
	if m.Precursor || m.Substance == nil {
		return "precursor"
	}
	return m.Substance.Name
}
