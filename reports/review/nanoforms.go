package review

import (
	"slices"
	"strings"

	"etchbound/hazards/process"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

// paste is how much liquid stands on a gram of solid at most where it is a paste or a wet
// cake and no dispersion, mL/g.
const paste = 10

// nanoform is the form in which powder or flakes stand in a place after steps.
type nanoform struct {
	form, place string
	steps       []int
}

// nanoforms is in what form powder and flakes are after each step, a form at a time. A route
// without any has none.
func (b *builder) nanoforms() []document.Block {
	var all []nanoform
	note := func(step int, s *process.State) {
		form := formOfSolids(s)
		if form == "" {
			return
		}
		for i := range all {
			if all[i].place == s.Place && all[i].form == form {
				all[i].steps = append(all[i].steps, step)
				return
			}
		}
		all = append(all, nanoform{form, s.Place, []int{step}})
	}
	for i := range b.Review.Walk.Steps {
		d := &b.Review.Walk.Steps[i]
		note(d.Number, &d.After)
		if d.Filled != nil {
			note(d.Number, d.Filled)
		}
	}
	if len(all) == 0 {
		return nil
	}
	var forms, said []string
	for i := range all {
		if !slices.Contains(forms, all[i].form) {
			forms = append(forms, all[i].form)
		}
	}
	for _, form := range forms {
		var at []string
		for i := range all {
			if all[i].form == form {
				at = append(at, words.Of("nanoforms.at", all[i].place, words.List(words.Runs(all[i].steps))))
			}
		}
		said = append(said, words.Of("nanoforms.form", words.Of(form), strings.Join(at, ", ")))
	}
	return []document.Block{document.Paragraph{Text: words.Of("nanoforms.says", strings.Join(said, "; "))}}
}

// formOfSolids is the form of what is solid in a place; "" where nothing of the powder is.
func formOfSolids(s *process.State) string {
	grams, salts, there := 0.0, 0.0, false
	for i := range s.Solids {
		x := &s.Solids[i]
		if there = there || x.Kind != process.Inert; !x.Mass.None() {
			grams += x.Mass.V
		}
	}
	for i := range s.Liquid {
		salts += s.Liquid[i].Mass.V * s.Liquid[i].Kept()
	}
	volume := s.Volume(nil)
	dry := s.Dried() || s.Powdery()
	switch {
	case !there:
		return ""
	case dry && salts > grams:
		return "nanoforms.salt"
	case dry || !volume.Unknown() && volume.V == 0:
		return "nanoforms.dry"
	case volume.Unknown():
		return "nanoforms.wet"
	case volume.V <= paste*grams:
		return "nanoforms.paste"
	}
	return "nanoforms.dispersion"
}
