package reports

import (
	"etchbound/hazards/figure"
)

func (b *builder) heat() Section {
	s := section("heat")
	s.Blocks = append(s.Blocks, b.temperatures()...)
	s.Blocks = append(s.Blocks, b.curves("heat")...)
	s.Blocks = append(s.Blocks, b.about("heat")...)
	return s
}

// temperatures is the small table of the four temperatures of each step that
// has a highest temperature, with what they make of it in words: no class is
// made of fewer than four.
func (b *builder) temperatures() []Block {
	t := Table{Caption: say("temperatures.caption"),
		Columns: columns("col.step", "temperatures.set", "temperatures.mtsr", "temperatures.limit",
			"temperatures.decomposition", "temperatures.class")}
	t.Columns[2].Text = labelOf("heat.mtsr")
	t.Columns[3].Text = labelOf("heat.technical_limit")
	for i := range b.route().Steps {
		st := &b.route().Steps[i]
		place := figure.Step(st.Number)
		mtsr, ok := b.at("heat.mtsr", place)
		if !ok {
			continue
		}
		decomposes := say("value.not_assessed")
		if d := b.route().TD24; d.Set {
			decomposes = amount(d)
		}
		t.Rows = append(t.Rows, []Cell{text(place.String()), text(orNotStated(amount(st.Temperature))),
			text(b.valueAndRange(mtsr)), text(b.technicalLimit(st.Number)), text(decomposes), text(b.classText(place))})
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []Block{t, Paragraph{Text: say("temperatures.note"), Tone: Note}}
}

// classText is the class of a step at its worst, with how far the next one is.
func (b *builder) classText(place figure.Place) string {
	f, ok := b.at("heat.criticality_class", place)
	if !ok || f.High().Unknown() {
		return say("value.not_assessed")
	}
	s := significant(f.High().V, 1, 1)
	if m, ok := b.at("heat.class_margin", place); ok && !m.Low().Unknown() {
		return say("temperatures.margin", s, with(significant(m.Low().V, 2, -1), unitOf("heat.class_margin")))
	}
	return s
}

// technicalLimit is the technical limit of a step, or the boiling point under
// its own name where only that is known.
func (b *builder) technicalLimit(step int) string {
	for _, q := range []string{"heat.technical_limit", "heat.boiling_point"} {
		f, ok := b.at(q, figure.Step(step))
		if !ok {
			continue
		}
		if q == "heat.boiling_point" {
			return say("temperatures.boiling", b.valueAndRange(f))
		}
		return b.valueAndRange(f)
	}
	return say("value.not_assessed")
}

func orNotStated(s string) string {
	if s == "" {
		return say("value.not_stated")
	}
	return s
}

func (b *builder) gas() Section {
	s := section("gas")
	s.Blocks = append(s.Blocks, b.curves("gas")...)
	s.Blocks = append(s.Blocks, b.about("gas")...)
	s.Blocks = append(s.Blocks, Paragraph{Text: say("gas.closed_rule")})
	if b.tags.has("hydrogen") {
		s.Blocks = append(s.Blocks, b.ignition()...)
	}
	return s
}

func (b *builder) air() Section {
	s := section("air")
	figures := b.figureTable(func(f *figure.Figure) bool { return inFamily(f.Quantity, "air") })
	if len(figures) == 0 {
		s.Blocks = append(s.Blocks, Paragraph{say("air.not_assessed"), Warning}, Paragraph{Text: say("air.means")})
	} else {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("air.lead")})
	}
	s.Blocks = append(s.Blocks, b.airCurves()...)
	s.Blocks = append(s.Blocks, figures...)
	s.Blocks = append(s.Blocks, b.findingTable(func(q string) bool { return inFamily(q, "air") })...)
	s.Blocks = append(s.Blocks, b.notAssessed("air")...)
	return s
}

func (b *builder) solids() Section {
	s := section("solids")
	s.Blocks = append(s.Blocks, b.about("dust")...)
	s.Blocks = append(s.Blocks, Paragraph{Text: say("solids.dust")})
	return s
}

func (b *builder) storage() Section {
	s := section("storage")
	s.Blocks = append(s.Blocks, b.about("store")...)
	t := Table{Caption: say("storage.caption"), Columns: columns("col.place", "col.kind", "col.material_of",
		"col.capacity", "col.closure", "col.pressure")}
	for i := range b.route().Places {
		p := &b.route().Places[i]
		pressure := say("value.dash")
		if f := b.closedPressure(p.Key); f != nil {
			pressure = b.valueAndRange(f)
		}
		t.Rows = append(t.Rows, []Cell{text(p.Key), text(p.Kind), text(orNotStated(fold(p.Material))),
			text(orNotStated(amount(p.Capacity))),
			text(closureText(p)), text(pressure)})
	}
	t.Columns[5].Text = labelOf("gas.closed.pressure")
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, Paragraph{Text: say("storage.rule")})
	return s
}

// closedPressure is the pressure a place would reach if it were closed.
func (b *builder) closedPressure(key string) *figure.Figure {
	for _, state := range []figure.State{figure.AsWritten, figure.Closed} {
		id := figure.ID{Quantity: "gas.closed.pressure", Place: figure.At(key), Case: figure.Case{State: state}}
		if f, ok := b.byID[id]; ok {
			return f
		}
	}
	return nil
}

func (b *builder) waste() Section {
	s := section("waste")
	s.Blocks = append(s.Blocks, b.about("wash", "neutralise")...)
	s.Blocks = append(s.Blocks, Paragraph{Text: say("waste.base")}, Paragraph{Text: say("waste.ask")})
	return s
}

func (b *builder) scale() Section {
	s := section("scale")
	s.Blocks = []Block{Paragraph{Text: say("scale.pointer")}, Paragraph{Text: say("scale.rule")}}
	return s
}
