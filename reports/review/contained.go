package review

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/treating"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// contained tells of each container of waste what stands in it, batch by batch.
func (b *builder) contained() []document.Block {
	var out []document.Block
	for i := range b.Review.Containers {
		c := &b.Review.Containers[i]
		name := b.PlaceName(figure.At(c.Place))
		t := document.Table{Caption: words.Of("contained.caption", name), Columns: document.Columns("contained.when",
			"contained.volume", "contained.fluoride", "contained.dissolved", "contained.solids", "contained.gas",
			"contained.warms")}
		for j := range c.Moments {
			m := &c.Moments[j]
			t.Rows = append(t.Rows, document.Row(moment(m), number.Said(m.Litres, 3, "L"),
				number.Said(m.Fluoride, 2, "g"), draft.Dissolved(m), settled(m), given(m), warms(m)))
		}
		out = append(out, t)
		if c.Batches == 0 {
			out = append(out, document.Paragraph{Text: words.Of("contained.not_stated", name), Tone: document.Warning})
		}
	}
	if len(out) > 0 {
		out = append(out, document.Paragraph{Text: words.Of("contained.note"), Tone: document.Note})
	}
	return out
}

func moment(m *treating.Moment) string {
	switch {
	case m.Before:
		return words.Of("contained.comes", m.Batches)
	case m.Batches == 1:
		return words.Of("contained.first")
	}
	return words.Of("contained.after", m.Batches)
}

func settled(m *treating.Moment) string {
	return words.Of("contained.share", number.Said(m.Solids, 2, "g"), number.Said(100*m.Share, 2, "wt%"))
}

// given is the gas that comes off.
func given(m *treating.Moment) string {
	s := between(m.CarbonDioxide, "L")
	if m.Ammonia > 0 {
		s = words.Of("treated.with_ammonia", s, number.Said(m.Ammonia, 2, "L"))
	}
	return s
}

func warms(m *treating.Moment) string {
	if !m.Before && m.Litres == m.Litres {
		return words.Of("value.dash")
	}
	return words.Of("treated.heat_rise", number.Said(m.Heat, 2, "kJ"), number.Said(m.Rise, 2, "K"))
}
