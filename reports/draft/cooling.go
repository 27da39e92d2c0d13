package draft

import (
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// CoolingLost is a failure of the cooling as the trade writes it: one table of the four
// temperatures, the times that are left and the class of each step that has a highest
// temperature, and what would be needed to stop it. Steps of which the same holds share a
// row: no class is made of fewer than four temperatures.
func (b *Draft) CoolingLost() []document.Block {
	t := document.Table{Caption: words.Of("temperatures.caption"),
		Columns: document.Columns("col.step", "temperatures.set", "temperatures.mtsr", "temperatures.limit",
			"temperatures.decomposition", "temperatures.rate", "temperatures.boils", "temperatures.class")}
	t.Columns[2].Text = number.LabelOf("heat.mtsr")
	t.Columns[3].Text = number.LabelOf("heat.technical_limit")
	stops := document.List{}
	var of []string // the steps of the last line of stops
	last := ""
	for i := range b.Route().Steps {
		st := &b.Route().Steps[i]
		place := figure.Step(st.Number)
		mtsr, ok := b.At("heat.mtsr", place)
		if !ok {
			continue
		}
		decomposes := words.Of("value.not_assessed")
		if d := b.Route().TD24; d.Set {
			decomposes = Amount(d)
		}
		row := document.Row(place.String(), b.setIn(st), b.ValueAndRange(mtsr),
			b.technicalLimit(place), decomposes, b.onceLost("heat.time_to_maximum_rate", place),
			b.onceLost("heat.time_to_boil", place), b.classText(place))
		t.Rows = joined(t.Rows, row)
		if s := b.stopped(place); s != last {
			stops.Items, of, last = append(stops.Items, ""), nil, s
		}
		of = append(of, place.String())
		steps := words.Of("fact.of_step", of[0])
		if len(of) > 1 {
			steps = words.Of("fact.of_steps", strings.Join(of, ", "))
		}
		stops.Items[len(stops.Items)-1] = words.Of("temperatures.stop", steps, last)
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("temperatures.note"), Tone: document.Note}, stops}
}

// setIn is the temperature of the process in a step: as it is stated, else as what is
// there was last set to.
func (b *Draft) setIn(s *route.Step) string {
	if s.Temperature.Set {
		return Amount(s.Temperature)
	}
	for i := range b.Review.Walk.Steps {
		if d := &b.Review.Walk.Steps[i]; d.Number == s.Number && !d.Hot.Unknown() && !d.Hot.None() {
			return b.Options.Units.Amount("heat.mtsr", "", d.Hot.V, 0)
		}
	}
	return words.Of("value.not_stated")
}

// joined is rows with another behind them, or in the last where it says the same of its
// step.
func joined(rows [][]document.Cell, row []document.Cell) [][]document.Cell {
	if n := len(rows); n > 0 {
		last, same := rows[n-1], true
		for i := 1; i < len(row); i++ {
			same = same && row[i].Says(last[i])
		}
		if same {
			last[0].Text += ", " + row[0].Text
			return rows
		}
	}
	return append(rows, row)
}

// onceLost is a time from when cooling is lost in the lot of liquor that a step is part
// of, at the worst moment.
func (b *Draft) onceLost(quantity string, place figure.Place) string {
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range n.Stages {
			if figure.Step(n.Stages[j].Step.Number) != place {
				continue
			}
			f := b.ByID[figure.ID{Quantity: quantity, Place: figure.Step(n.Stages[0].Step.Number),
				Case: figure.If("cooling_lost")}]
			switch {
			case f == nil && b.Review.Case.Brief:
				return words.Of("value.not_assessed")
			case f == nil:
				return words.Of("value.unknown")
			}
			if quantity == "heat.time_to_boil" {
				return b.ToBoiling(f, place, b.ValueAndRange(f))
			}
			return b.ValueAndRange(f)
		}
	}
	return words.Of("value.unknown")
}

// stopped is the water that would stop what has begun in a step, whether its vessel has
// room for it, and the vessel it would be emptied into.
func (b *Draft) stopped(place figure.Place) string {
	text := func(quantity string, danger bool) string {
		f, ok := b.At(quantity, place)
		switch {
		case !ok || f.Danger().Unknown():
			return words.Of("value.unknown")
		case danger:
			return b.Options.Units.Danger(f)
		}
		return b.ValueAndRange(f)
	}
	switch f, ok := b.At("heat.quench_water", place); {
	case !ok || f.Danger().Unknown():
		return words.Of("temperatures.stopped_unknown")
	case f.Danger().V == 0:
		return words.Of("temperatures.stopped_cold")
	}
	return words.Of("temperatures.stopped", text("heat.quench_water", false), b.quenchRoom(place),
		text("heat.dump.volume", true), text("heat.dump.water", true))
}

// quenchRoom says whether the vessel of a step has room for its quench water.
func (b *Draft) quenchRoom(place figure.Place) string {
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		if f.Figure.Quantity == "heat.quench_water" && f.Figure.Place == place &&
			f.Limit.Key == limit.Named(limit.Route, "vessel_room") {
			return words.Of("temperatures.room_" + f.Verdict.String())
		}
	}
	return words.Of("temperatures.room_unknown")
}

// classText is the class of a step at its worst, with how far the next one is, or why
// there is none.
func (b *Draft) classText(place figure.Place) string {
	f, ok := b.At("heat.criticality_class", place)
	switch {
	case !b.Route().TD24.Set:
		return words.Of("temperatures.none_td24")
	case !ok || f.High().Unknown():
		return words.Of("temperatures.none_other")
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
func (b *Draft) technicalLimit(place figure.Place) string {
	for _, q := range []string{"heat.technical_limit", "heat.boiling_point"} {
		f, ok := b.At(q, place)
		if !ok {
			continue
		}
		if q == "heat.boiling_point" {
			return b.IfOpen(place, words.Of("temperatures.boiling", b.ValueAndRange(f)))
		}
		return b.ValueAndRange(f)
	}
	return words.Of("value.not_assessed")
}
