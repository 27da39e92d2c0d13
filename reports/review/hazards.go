package review

import (
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

func (b *builder) heat() document.Section {
	s := document.Begin("heat")
	s.Blocks = append(s.Blocks, b.temperatures()...)
	s.Blocks = append(s.Blocks, firstPrinted(second(b.curves("heat"),
		append(b.stepBars(&heatByStep), b.dosedCurves()...)))...)
	s.Blocks = append(s.Blocks, b.About("heat")...)
	return s
}

// temperatures is the small table of the four temperatures of each step that
// has a highest temperature, with what they make of it in words: no class is
// made of fewer than four.
func (b *builder) temperatures() []document.Block {
	t := document.Table{Caption: words.Of("temperatures.caption"),
		Columns: document.Columns("col.step", "temperatures.set", "temperatures.mtsr", "temperatures.limit",
			"temperatures.decomposition", "temperatures.class")}
	t.Columns[2].Text = number.LabelOf("heat.mtsr")
	t.Columns[3].Text = number.LabelOf("heat.technical_limit")
	for i := range b.Route().Steps {
		st := &b.Route().Steps[i]
		place := figure.Step(st.Number)
		mtsr, ok := b.At("heat.mtsr", place)
		if !ok {
			continue
		}
		decomposes := words.Of("value.not_assessed")
		if d := b.Route().TD24; d.Set {
			decomposes = draft.Amount(d)
		}
		t.Rows = append(t.Rows, document.Row(place.String(), words.OrNotStated(draft.Amount(st.Temperature)),
			b.ValueAndRange(mtsr), b.technicalLimit(st.Number), decomposes, b.classText(place)))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("temperatures.note"), Tone: document.Note}}
}

// classText is the class of a step at its worst, with how far the next one is.
func (b *builder) classText(place figure.Place) string {
	f, ok := b.At("heat.criticality_class", place)
	if !ok || f.High().Unknown() {
		return words.Of("value.not_assessed")
	}
	s := number.Significant(f.High().V, 1, 1)
	if m, ok := b.At("heat.class_margin", place); ok && !m.Low().Unknown() {
		return words.Of("temperatures.margin", s, number.With(number.Significant(m.Low().V, 2, -1),
			number.UnitOf("heat.class_margin")))
	}
	return s
}

// technicalLimit is the technical limit of a step, or the boiling point under
// its own name where only that is known.
func (b *builder) technicalLimit(step int) string {
	for _, q := range []string{"heat.technical_limit", "heat.boiling_point"} {
		f, ok := b.At(q, figure.Step(step))
		if !ok {
			continue
		}
		if q == "heat.boiling_point" {
			return words.Of("temperatures.boiling", b.ValueAndRange(f))
		}
		return b.ValueAndRange(f)
	}
	return words.Of("value.not_assessed")
}

func (b *builder) gas() document.Section {
	s := document.Begin("gas")
	s.Blocks = append(s.Blocks, firstPrinted(second(b.curves("gas"), b.stepBars(&gasByStep)))...)
	s.Blocks = append(s.Blocks, b.About("gas")...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("gas.closed_rule")})
	if b.Tags.Has("hydrogen") {
		s.Blocks = append(s.Blocks, b.ignition()...)
	}
	return s
}

func (b *builder) air() document.Section {
	s := document.Begin("air")
	figures := b.Counts(func(f *figure.Figure) bool { return f.Case.Failure == "" && draft.InFamily(f.Quantity, "air") })
	if len(figures) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("air.not_assessed"), Tone: document.Warning},
			document.Paragraph{Text: words.Of("air.means")})
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("air.lead")})
	}
	s.Blocks = append(s.Blocks, b.hood()...)
	s.Blocks = append(s.Blocks, firstPrinted(append(b.breathedBars(), b.airCurves()...))...)
	s.Blocks = append(s.Blocks, figures...)
	failing := b.FigureTable(func(f *figure.Figure) bool {
		return f.Case.Failure != "" &&
			draft.InFamily(f.Quantity, "air")
	})
	if failing != nil {
		s.Blocks = append(s.Blocks, document.Fold{Summary: words.Of("air.failing"), Blocks: failing})
	}
	s.Blocks = append(s.Blocks, b.NotAssessed("air")...)
	return s
}

func (b *builder) solids() document.Section {
	s := document.Begin("solids")
	s.Blocks = append(s.Blocks, b.About("dust")...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("solids.dust")})
	return s
}

func (b *builder) storage() document.Section {
	s := document.Begin("storage")
	s.Blocks = append(s.Blocks, b.About("store")...)
	t := document.Table{Caption: words.Of("storage.caption"),
		Columns: document.Columns("col.place", "col.kind", "col.material_of",
			"col.capacity", "col.closure", "col.as_planned", "col.if_unfinished")}
	for i := range b.Route().Places {
		p := &b.Route().Places[i]
		t.Rows = append(t.Rows, document.Row(p.Key, p.Kind, words.OrNotStated(plain.Fold(p.Material)),
			words.OrNotStated(draft.Amount(p.Capacity)),
			draft.ClosureText(p), b.closedPressure(p.Key, ""), b.closedPressure(p.Key, "moved_unfinished")))
	}
	for i := 5; i < 7; i++ {
		t.Columns[i].Text = words.Of("storage.pressure", number.LabelOf("gas.closed.pressure"), t.Columns[i].Text)
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("storage.rule")})
	if kept := b.keeping(); len(kept) > 0 { // a paper of its own has them
		s.Blocks = append(s.Blocks, document.Unprinted{Blocks: kept},
			document.Paragraph{Text: words.Of("keep.on_paper"), Tone: document.OnPaper})
	}
	return s
}

// closedPressure is the worst pressure that a place reaches, as it is closed or as if it
// were, when all goes as planned (no failure) or by a failure.
func (b *builder) closedPressure(key, failure string) string {
	var worst *figure.Figure
	for f := range b.Set.At("gas.closed.pressure", figure.At(key)) {
		if f.Of().IsZero() && f.Case.Failure == failure && (worst == nil || worse(f, worst)) {
			worst = f
		}
	}
	if worst == nil {
		return words.Of("value.dash")
	}
	return b.ValueAndRange(worst)
}

// worse reports whether the high end of f is above that of another, or not known where
// that is.
func worse(f, than *figure.Figure) bool {
	x, y := f.High().V, than.High().V
	return y == y && (x != x || x > y)
}

func (b *builder) waste() document.Section {
	s := document.Begin("waste")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("waste.ask"), Tone: document.Warning})
	s.Blocks = append(s.Blocks, b.About("wash", "neutralise")...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("waste.base")})
	s.Blocks = append(append(s.Blocks, b.treated()...), b.rinsed()...)
	return s
}

func (b *builder) scale() document.Section {
	s := document.Begin("scale")
	s.Blocks = append(b.batches(), document.Paragraph{Text: words.Of("scale.pointer")},
		document.Paragraph{Text: words.Of("scale.rule")})
	return s
}
