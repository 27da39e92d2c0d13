package cards

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/labelling"
	"etchbound/hazards/meeting"
	"etchbound/hazards/residue"
	"etchbound/hazards/treating"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// labelLines is the label of a container; one of waste says so, and how full it may be.
func (b *builder) labelLines(c *meeting.Contents, waste bool) []string {
	lines := []string{words.Of("label.of", b.PlaceName(figure.At(c.Place.Key)))}
	if waste {
		lines[0] = words.Of("label.head", c.Place.Key)
	}
	lines = append(lines, words.Of("label.contents", strings.Join(c.Names, ", ")))
	lines = append(lines, b.classes(c.Place.Key)...)
	if c.Tags.Has("hf") {
		lines = append(lines, words.Of("label.hf"))
	}
	if c.Tags.Has("tmaoh") {
		lines = append(lines, words.Of("label.tmaoh"))
	}
	if c.Tags.Has("powder") && (c.Tags.Has("water") || c.Tags.Has("hydrogenous")) { // of what holds none none comes
		lines = append(lines, words.Of("label.gas"))
	}
	if gases := b.Poisons(c.Place.Key); gases != nil {
		lines = append(lines, words.Of("label.poison", words.List(gases)))
	}
	lines = append(lines, b.inside(c, waste)...)
	if waste {
		lines = append(lines, b.treated(c.Place.Key)...)
		lines = append(lines, words.Of("label.fill"), words.Of("label.shares"))
		if n := c.Place.Batches; n > 1 {
			lines = append(lines, words.Of("label.batches", n))
			lines = append(lines, b.gathered(c.Place.Key)...)
		}
	}
	lines = append(lines, b.stored(c.Place.Key)...)
	return append(lines, words.Of("label.date"))
}

// gathered is what a container holds once all its batches are in.
func (b *builder) gathered(place string) []string {
	for i := range b.Review.Containers {
		c := &b.Review.Containers[i]
		if c.Place != place || len(c.Moments) == 0 {
			continue
		}
		m := &c.Moments[len(c.Moments)-1]
		if m.Litres != m.Litres {
			return []string{words.Of("label.gathered_unknown", m.Batches)}
		}
		return []string{words.Of("label.gathered", m.Batches, number.Measure(m.Litres, 3, "L"),
			number.Measure(m.Fluoride, 2, "g"), draft.Dissolved(m), number.Measure(100*m.Share, 2, "wt%"))}
	}
	return nil
}

// stored is when a container of product was made and by when it is opened and vented: the
// earliest time to 10 kPa. Where powder left makes that alone, or nobody knows, at once.
func (b *builder) stored(place string) []string {
	var soon *figure.Figure
	for f := range b.Set.At("store.time_to_10_kpa", figure.At(place)) {
		if !f.Of().IsZero() || soon != nil && (soon.Danger().Unknown() || f.Danger().V >= soon.Danger().V) {
			continue
		}
		soon = f
	}
	switch {
	case soon == nil:
		return nil
	case soon.Danger().Unknown() || soon.Danger().V <= 0:
		return []string{words.Of("label.made"), words.Of("label.vent_now")}
	}
	return []string{words.Of("label.made"), words.Of("label.vent_by", b.Options.Units.Danger(soon))}
}

// storedLines are those of the bench card: what each container of product is told of.
func (b *builder) storedLines() []document.Block {
	var l document.List
	for i := range b.Route().Places {
		key := b.Route().Places[i].Key
		if lines := b.stored(key); lines != nil {
			l.Items = append(l.Items, words.Of("bench.stored_in", b.PlaceName(figure.At(key)), lines[1]))
		}
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []document.Block{document.Paragraph{Text: words.Of("bench.stored")}, l}
}

// classes are the signal word, the codes of the statements and the pictograms of the
// liquor that is worst of all that the container holds.
func (b *builder) classes(place string) []string {
	l := labelling.Worst(b.Review.Labels, place)
	if l == nil {
		return nil
	}
	var out, codes []string
	for _, f := range l.Classes {
		if !slices.Contains(codes, f.Class.Code) {
			codes = append(codes, f.Class.Code)
		}
	}
	if signal := l.Signal(); signal != "" {
		out = append(out, words.Of("label.classes", words.Of("signal."+signal), strings.Join(codes, ", "),
			words.OrDash(strings.Join(l.Pictograms(), ", "))))
	}
	if len(l.NotHeld) > 0 {
		out = append(out, words.Of("label.classes_unknown", strings.Join(l.NotHeld, ", ")))
	}
	return out
}

// inside is how much a container holds, of what at the end, and its pH.
func (b *builder) inside(c *meeting.Contents, waste bool) []string {
	held := scaling.ContentsOf(b.Review, c.Place.Key)
	lines := []string{words.Of("label.total_unknown")}
	if !held.Most.Unknown() {
		full := words.Of("value.unknown")
		if !held.Full.Unknown() {
			full = number.Significant(100*held.Full.V, 2, 1) + " %"
		}
		in := words.Of("label.in_it")
		if n := c.Place.Count; n > 1 {
			in = words.Of("label.in_all", n)
		}
		lines[0] = words.Of("label.total", poured(held.Most.V), in, held.Step, full)
	}
	if !waste {
		return lines
	}
	var parts []string
	for _, e := range held.Elements {
		share := words.Of("label.traces")
		if e.WT.V >= tracesOf {
			share = words.Of("label.share", number.Thing{Unit: "g", Digits: 2}.Bound(e.Mass.V, 0), number.Nearest(e.WT.V, 2))
		}
		parts = append(parts, e.Element+" "+share)
	}
	if len(parts) == 0 {
		lines = append(lines, words.Of("label.elements_unknown"))
	} else {
		lines = append(lines, words.Of("label.elements", strings.Join(parts, ", ")))
	}
	grams := b.slow(c.Place.Key)
	switch calcium := c.Tags.Has("calcium") && c.Tags.Has("hf"); {
	case calcium && grams > 0:
		lines = append(lines, words.Of("label.calcium_held", number.Measure(grams, 2, "g")))
	case calcium:
		lines = append(lines, words.Of("label.calcium"))
	case grams > 0:
		lines = append(lines, words.Of("label.held", number.Measure(grams, 2, "g")))
	}
	if held.PH != nil {
		return append(lines, words.Of("label.ph_aimed", number.Nearest(*held.PH, 3)))
	}
	if ph := b.treatedPH(c.Place.Key); ph != "" {
		return append(lines, words.Of("label.ph_computed", ph))
	}
	return append(lines, words.Of("label.ph"))
}

// treatedPH is the pH that the last step which treats what is in a place comes to; "" where none
// does, or nobody knows it.
func (b *builder) treatedPH(place string) string {
	out := ""
	for i := range b.Review.Treated {
		l := &b.Review.Treated[i]
		if l.Place != place || l.Step == 0 {
			continue
		}
		low, known := b.At("neutralise.ph", figure.Step(l.Step))
		high, there := b.At("neutralise.ph_most", figure.Step(l.Step))
		if out = ""; known && there && !low.Danger().Unknown() && !high.Danger().Unknown() {
			out = number.Thing{Unit: "1"}.Whole(number.Ends{Value: low.Value.V, Low: low.Danger().V, High: high.Danger().V})
		}
	}
	return out
}

// solids are the shares of a treated liquor that are solid and solution, with what of a base
// that hardly dissolves is over.
func solids(l *treating.Liquor, w *treating.Way) string {
	share := func(grams float64) float64 { return 100 * grams / (grams + 1000*l.Water) }
	least := share(w.SludgeDry)
	over := (l.Held - l.Written.AcidLeft) / l.Base * w.Parts[0].Grams // cold, a complex takes none
	if most := share(w.SludgeDry + over); w.Binds && most > 1.1*least {
		return words.Of("label.solids_over", number.Nearest(least, 2), number.Significant(most, 2, 1),
			number.Nearest(100-most, 3), number.Nearest(100-least, 3))
	}
	return words.Of("label.solids", number.Nearest(least, 2), number.Nearest(100-least, 4))
}

// slow is the fluoride, g, that base leaves in complexes in a place that is treated.
func (b *builder) slow(place string) float64 {
	for i := range b.Review.Treated {
		if l := &b.Review.Treated[i]; l.Place == place && l.Step > 0 {
			return l.Held * residue.Milligrams / 1000
		}
	}
	return 0
}

// poured is a volume as it is read off a vessel: mL below a litre, rounded up.
func poured(ml float64) string {
	if ml < 1000 {
		return number.With(number.Significant(ml, 3, 1), "mL")
	}
	return number.Thing{Unit: "L"}.Bound(ml/1000, 1)
}

// tracesOf is the share below which an element of a label is a trace, wt%.
const tracesOf = 1e-3

// treated is what a container says whose liquor is treated in it: how long it stays
// uncapped, and what share of it is solid.
func (b *builder) treated(place string) []string {
	for i := range b.Review.Treated {
		l := &b.Review.Treated[i]
		if l.Place != place || l.Step == 0 {
			continue
		}
		out := []string{words.Of("label.hold")}
		if l.Written == nil {
			return out
		}
		if len(l.Written.Subs) != 1 {
			return append(out, b.settled(place)...)
		}
		for j := range l.Ways {
			w := &l.Ways[j]
			if len(w.Parts) != 1 || w.Parts[0].Sub != l.Written.Subs[0] || !(w.SludgeDry > 0) {
				continue
			}
			return append(out, solids(l, w))
		}
		return append(out, b.settled(place)...)
	}
	return nil
}

// settled are the shares that are solid and solution by equilibrium, of what several agents, or
// one that is not set side by side, have treated: with one batch in, agent that is over with it.
func (b *builder) settled(place string) []string {
	for i := range b.Review.Containers {
		c := &b.Review.Containers[i]
		if c.Place != place || len(c.Moments) == 0 {
			continue
		}
		if m := &c.Moments[0]; m.Share == m.Share {
			return []string{words.Of("label.settled", number.Nearest(100*m.Share, 2), number.Nearest(100*(1-m.Share), 4))}
		}
	}
	return []string{words.Of("label.settled_unknown")}
}
