package review

import (
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// speciated tells in what the fluoride of each liquor is, as far as equilibria are held, and
// of which liquors they are not.
func (b *builder) speciated() []document.Block {
	t := document.Table{Caption: words.Of("speciated.caption"), Columns: document.Columns("speciated.liquor",
		"speciated.ph", "speciated.dissolved", "speciated.free", "speciated.per_aluminium", "speciated.over",
		"speciated.molecules")}
	told := 0
	for i := range b.Review.Speciated {
		l := &b.Review.Speciated[i]
		dash := words.Of("value.dash")
		if l.Why != "" {
			t.Rows = append(t.Rows, document.Row(l.Place.String(), words.Of("speciated.why."+string(l.Why)), dash, dash, dash,
				dash, dash))
			continue
		}
		told++
		per := dash
		if l.PerAluminium == l.PerAluminium {
			per = number.Said(l.PerAluminium, 3, "")
		}
		t.Rows = append(t.Rows, document.Row(l.Place.String(), number.Nearest(l.PH, 3), number.Said(l.Dissolved, 2, "wt%"),
			number.Said(l.Free, 2, "wt%"), per, number.Said(l.Over, 2, "ppm"), number.Said(l.Molecules, 2, "ppm")))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	fold := document.Fold{Summary: words.Of("speciated.fold", told, len(t.Rows)),
		Blocks: []document.Block{t, document.Paragraph{Text: words.Of("speciated.note"), Tone: document.Note}}}
	return []document.Block{document.Unprinted{Blocks: []document.Block{fold}}}
}

// freeOnSkin says how much free HF the liquors have of which equilibria tell, and that the
// band of strength counts all.
func (b *builder) freeOnSkin() []document.Block {
	most := -1.0
	for i := range b.Review.Speciated {
		if l := &b.Review.Speciated[i]; l.Why == "" {
			most = max(most, l.Free)
		}
	}
	if most < 0 {
		return nil
	}
	return []document.Block{document.Unprinted{Blocks: []document.Block{document.Paragraph{
		Text: words.Of("skin.free", number.Said(most, 2, "wt%")), Tone: document.Note}}}}
}
