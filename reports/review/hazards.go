package review

import (
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
)

func (b *builder) heat() document.Section {
	s := document.Begin("heat")
	s.Blocks = append(s.Blocks, b.CoolingLost()...)
	s.Blocks = append(s.Blocks, firstPrinted(second(b.curves("heat"),
		append(b.stepBars(&heatByStep), b.dosedCurves()...)))...)
	s.Blocks = append(s.Blocks, b.About("heat")...)
	return s
}

func (b *builder) gas() document.Section {
	s := document.Begin("gas")
	s.Blocks = append(s.Blocks, firstPrinted(second(b.curves("gas"), b.stepBars(&gasByStep)))...)
	s.Blocks = append(s.Blocks, b.About("gas", "vessel")...)
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
	s.Blocks = append(s.Blocks, b.vapourIgnition()...)
	s.Blocks = append(s.Blocks, b.hood()...)
	s.Blocks = append(s.Blocks, figures...)
	s.Blocks = append(s.Blocks, firstPrinted(append(b.breathedBars(), b.airCurves()...))...)
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
	s.Blocks = append(s.Blocks, b.nanoforms()...)
	s.Blocks = append(s.Blocks, b.About("handling", "dust")...)
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
	about, treated := b.About("wash", "neutralise"), b.treated()
	if t, ok := firstOf(about); ok && len(treated) > 0 { // agents side by side say it on paper
		about[0] = document.Unprinted{Blocks: []document.Block{t}}
	}
	s.Blocks = append(s.Blocks, about...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("waste.base")})
	if !draft.InAny(b.Review.Figures, "neutralise") {
		all := scaling.HydrolysedOf(b.Review)
		for i := range all {
			s.Blocks = append(s.Blocks, document.Paragraph{Text: draft.HydrolysedText(&all[i]), Tone: document.Warning})
		}
	}
	s.Blocks = append(append(append(s.Blocks, treated...), b.contained()...), b.rinsed()...)
	return s
}

// firstOf is the table that blocks begin with, if they begin with the one of agents.
func firstOf(blocks []document.Block) (document.Table, bool) {
	if len(blocks) == 0 {
		return document.Table{}, false
	}
	t, ok := blocks[0].(document.Table)
	return t, ok && t.Caption == words.Of("matrix.neutralise")
}

func (b *builder) scale() document.Section {
	s := document.Begin("scale")
	s.Blocks = append(b.batches(), document.Paragraph{Text: words.Of("scale.pointer")},
		document.Paragraph{Text: words.Of("scale.rule")})
	return s
}
