package route

import (
	"fmt"
	"strings"

	"etchbound/chemicals"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// charge is what has been put in so far: the powder, and the strongest acid of
// each place.
type charge struct {
	hasPowder bool
	powder    *schemas.Node
	acid      map[string]strongest
}

// strongest is the highest molarity of acid equivalents put into a place, in
// mol/L, with the text it was written as.
type strongest struct {
	molarity float64
	text     string
}

func (l *loader) materials(n *schemas.Node, s Step, c *charge) []Material {
	what := n.Get("what")
	var list []Material
	switch {
	case what.Usable(schemas.Text) && what.Text == "precursor":
		list = append(list, l.powder(what, c))
	case what.Usable(schemas.List):
		for _, x := range what.Items {
			if m, ok := l.material(x, c); ok {
				list = append(list, m)
			}
		}
	case what != nil:
		l.holds.unsure = true
	}
	for _, m := range list {
		c.note(s.In, m)
	}
	if what.Usable(schemas.List) && len(list) == len(what.Items) {
		for i, m := range list {
			l.saltRatio(what.Items[i], m, c.acid[s.In])
		}
	}
	return list
}

func (l *loader) powder(n *schemas.Node, c *charge) Material {
	switch {
	case !c.hasPowder:
		l.refuse(n, "the word precursor in a route that has none", "a precursor block with phase and mass",
			"add precursor: at the top of the file")
	case c.powder != nil:
		l.refuse(n, fmt.Sprintf("the precursor is put in a second time: first in line %d", c.powder.Line),
			"the precursor once",
			"one step adds all of it: over says how long that takes, and portions in how many lots")
	default:
		c.powder = n
	}
	return Material{Precursor: true, At: n.Path}
}

func (l *loader) material(n *schemas.Node, c *charge) (Material, bool) {
	if n.Usable(schemas.Text) && n.Text == "precursor" {
		return l.powder(n, c), true
	}
	if !n.Usable(schemas.Map) {
		l.holds.unsure = true
		return Material{}, false
	}
	m := Material{Mass: n.Value("mass"), Volume: n.Value("volume"), Amount: n.Value("amount"),
		Ratio: n.Value("ratio"), Strength: n.Value("strength"), At: n.Path}
	l.somethingOf(n, "mass", "volume", "amount", "ratio", "strength")
	m.Substance = l.heldOrNot(n)
	if m.Substance == nil {
		l.holds.unsure = true
		return m, false
	}
	l.holds.substance(m.Substance)
	if m.Ratio.Set && !c.hasPowder {
		l.refuse(n.Near("ratio"), "a ratio to the precursor in a route that has none", "a mass, a volume or an amount", "")
	}
	l.howMuch(n, m)
	l.strength(n.Get("strength"), m.Substance, m.Strength)
	return m, true
}

// somethingOf refuses a material of which there is nothing.
func (l *loader) somethingOf(n *schemas.Node, keys ...string) {
	for _, k := range keys {
		if v := n.Value(k); v.Set && (v.SI == 0 || v.Low == 0) {
			l.refuse(n.Near(k), "the "+k+" is zero", "more than zero", "leave the whole material out if none of it is put in")
		}
	}
}

// substance finds a substance by whatever the writer calls it; otherwise says what to
// write where it is not held.
func (l *loader) substance(n *schemas.Node, otherwise string) *chemicals.Substance {
	if !n.Usable(schemas.Text) {
		return nil
	}
	text := n.Text
	lib := chemicals.Library()
	s, ok := lib.Find(text)
	if ok && s.State != "aq" {
		return s
	}
	if plain := strings.TrimSpace(strings.Replace(strings.ToLower(text), "anhydrous", "", 1)); !ok &&
		plain != strings.ToLower(text) {
		if hf, found := lib.Find(plain); found && hf.Slug == "hf" {
			l.refuse(n, "anhydrous hydrogen fluoride is outside of what is calculated here", "hydrofluoric acid up to 70 wt%",
				"it needs a specialist's review")
			return nil
		}
	}
	if ok {
		l.refuse(n, text+" is an ion, which is never put in alone", "a substance as it stands in the bottle", "")
		return nil
	}
	if strings.EqualFold(text, "precursor") {
		l.refuse(n, "the precursor is no substance with an amount", "the word precursor alone", "write - precursor")
		return nil
	}
	l.refuse(n, "the substance "+text+" is not known", "a name, formula or CAS number of a known substance",
		notKnown(text, otherwise))
	return nil
}

// howMuch holds the ways of saying how much against the sort of substance.
func (l *loader) howMuch(n *schemas.Node, m Material) {
	ways, last := 0, ""
	for _, k := range []string{"mass", "volume", "amount", "ratio"} {
		if n.Wrote(k) {
			ways++
			last = k
		}
	}
	s := m.Substance
	switch {
	case ways > 1:
		l.refuseKey(n, last, "more than one way of saying how much "+s.Name, "one of mass, volume, amount, ratio", "")
	case ways == 0 && !n.Wrote("strength"):
		l.refuse(n, "how much "+s.Name+" is not said", "one of mass, volume, amount, ratio", "")
	case ways == 0 && (!solid(s) && !s.NotHeld || m.Strength.Set && m.Strength.Dim != quantity.Molarity):
		l.refuse(n, "how much "+s.Name+" is not said", "one of mass, volume, amount, ratio; for a salt also strength "+
			"in mol/L alone", "add what was measured: its mass, volume or amount, with its unit")
	case needsStrength(s) && !n.Wrote("strength"):
		l.refuseKey(n, "strength", s.Name+" without its strength",
			quantity.Accepted(quantity.MassFraction, quantity.Molarity), "take it from the label of the bottle")
	case !takesStrength(s) && n.Wrote("strength"):
		l.refuseKey(n, "strength", s.Name+" takes no strength", "a volume or a mass", "state what is dissolved in it "+
			"as a material of its own")
	case solid(s) && n.Wrote("strength") && ways == 1 && last != "volume":
		l.refuseKey(n, "strength", fmt.Sprintf("a strength beside the %s of a solid", last),
			last+" alone, or strength and volume for a solution", "")
	case s.State == "s" && last == "volume" && !n.Wrote("strength"):
		l.refuseKey(n, "volume", "a volume of solid "+s.Name, "a mass, or strength and volume for a solution", "")
	}
}

// solid reports whether a substance is weighed as a solid unless its solution
// is asked for.
func solid(s *chemicals.Substance) bool {
	return s.State == "s" && s.Kind != "acid" && !needsStrength(s)
}

// needsStrength reports whether a substance comes as a solution only.
func needsStrength(s *chemicals.Substance) bool {
	return s.Sold == "solution" || (s.Kind == "acid" || s.Kind == "base") && s.State != "s"
}

func takesStrength(s *chemicals.Substance) bool {
	return s.Kind != "water" && s.Kind != "solvent"
}
