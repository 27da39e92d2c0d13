package review

import (
	"strings"

	"etchbound/chemicals/aqueous"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// spreadBlocks tell how far sets of constants agree on solutions of fluoride, where equilibria
// tell anything of a route.
func (b *builder) spreadBlocks() []document.Block {
	if len(b.Review.Speciated)+len(b.Review.Treated)+len(b.Review.Rinsed) == 0 {
		return nil
	}
	t := document.Table{Caption: words.Of("spread.caption"), Columns: document.Columns("spread.solution", "spread.ph",
		"spread.ph_others", "spread.fluoride", "spread.fluoride_others")}
	for _, s := range aqueous.Spreads() {
		fluoride, others := words.Of("value.dash"), words.Of("value.dash")
		if s.Solid != "" {
			fluoride, others = band(&s.Fluoride), fromTo(s.OtherFluoride, 3)
		}
		t.Rows = append(t.Rows, document.Row(solutionOf(&s), band(&s.PH), words.Of("spread.of", fromTo(s.OtherPH, 3), s.Sets),
			fluoride, others))
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("spread.note"), Tone: document.Note}}
}

// solutionOf names a solution by what is in it.
func solutionOf(s *aqueous.Spread) string {
	if s.Solid != "" {
		return words.Of("spread.over", s.Solid)
	}
	var parts []string
	for _, a := range s.Totals {
		parts = append(parts, words.Of("spread.part", a.Of, number.Nearest(a.Mol, 3)))
	}
	return strings.Join(parts, ", ")
}

// band is ours of a figure with what sources do not agree on; where it is beyond what the
// equilibria are held for it is no figure, and the band alone stands.
func band(b *aqueous.Band) string {
	ends := fromTo([2]float64{b.Low, b.High}, 3)
	if len(b.Outside) > 0 {
		return words.Of("spread.outside", ends)
	}
	return words.Of("spread.band", number.Nearest(b.Central, 3), ends)
}

// fromTo is a range, or one number where its ends are the same.
func fromTo(r [2]float64, digits int) string {
	a, b := number.Nearest(r[0], digits), number.Nearest(r[1], digits)
	if a == b {
		return a
	}
	return words.Of("treated.between", a, b)
}
