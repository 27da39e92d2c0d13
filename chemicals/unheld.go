package chemicals

import (
	"math"
	"strings"

	"etchbound/chemicals/working"
)

// Unheld is a substance that the data do not hold, by the name a writer gives it
// and its formula where he states one; formula may be the zero Formula. What it
// brings, holds, gives off and reacts with is unknown: its numbers are NaN where
// its formula does not rule them out.
func Unheld(name string, formula Formula) *Substance {
	s := &Substance{Slug: slugOf(name), Name: name, Formula: formula, Kind: "not_held", NotHeld: true,
		Acid: math.NaN(), Oxidant: math.NaN(), Vapour: "gives", Status: "assumed"}
	if s.May("N") {
		s.Ammonium = math.NaN()
	}
	if s.May("F") {
		s.HydrolysisHF, s.HydrolysisAcid = math.NaN(), math.NaN()
	}
	s.classes = s.classify(classes())
	return s
}

// Same reports whether two substances are one: what is not held is told by its name.
func (s *Substance) Same(o *Substance) bool {
	return s == o || s != nil && o != nil && s.NotHeld && o.NotHeld && s.Name == o.Name
}

// May reports whether a substance can hold an element: by its formula, or because
// nobody states one.
func (s *Substance) May(element string) bool {
	return s.NotHeld && len(s.Formula.Order) == 0 || s.Formula.Count(element) > 0
}

// Count is the mol of an element per mol of a substance; NaN where its formula is
// not stated.
func (s *Substance) Count(element string) float64 {
	if s.NotHeld && len(s.Formula.Order) == 0 {
		return math.NaN()
	}
	return s.Formula.Count(element)
}

// Lacks is what has to be known to work with a substance that is not held.
func (s *Substance) Lacks() working.Missing { return working.Lacks(working.NotHeld, s.Name) }

// slugOf makes of a name what can stand in an id.
func slugOf(name string) string {
	b := []byte(strings.ToLower(name))
	for i, c := range b {
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') {
			b[i] = '_'
		}
	}
	return unheldPrefix + strings.Trim(string(b), "_")
}

// unheldPrefix begins the slug of what is not held, so that it is that of nothing held.
const unheldPrefix = "x_"

// SaidOf is what a person reads of a slug that is of nothing held: near what was written.
func SaidOf(slug string) string {
	said := strings.ReplaceAll(strings.TrimPrefix(slug, unheldPrefix), "_", " ")
	if rest, is := strings.CutPrefix(said, "ph "); is {
		return "pH " + rest // no slug has a capital
	}
	return said
}
