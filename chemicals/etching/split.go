package etching

import (
	"fmt"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// hydrides names, for an element that acid can take off as a toxic gas, the
// formula of the gas and how many atoms of hydrogen one atom takes.
var hydrides = map[string]string{
	"P": "PH3", "As": "AsH3", "Sb": "SbH3", "S": "H2S", "Se": "H2Se", "Te": "H2Te",
}

// toxicMetals make the waste a toxic-metal waste wherever they leave.
var toxicMetals = []string{"As", "Sb", "Se", "Tl", "Cd", "Pb"}

// Hydride returns the toxic hydride acid can make of an element, or "".
func Hydride(element string) string { return hydrides[element] }

// Toxic reports whether an element makes its waste toxic-metal waste.
func Toxic(element string) bool { return slices.Contains(toxicMetals, element) }

// ErrNotLayered says why a formula is not a layered precursor.
type ErrNotLayered struct{ Formula, Why string }

// Error implements error.
func (e *ErrNotLayered) Error() string {
	return fmt.Sprintf("%s is not a layered precursor: %s", e.Formula, e.Why)
}

// Split takes a layered phase apart: M is groups 3 to 6 and Mn, X is C, N and
// B, and the rest is the A layer that leaves. layers, if not empty, names the
// elements that leave instead. The phase must have all three parts.
func Split(st *chemicals.Store, w *working.Sheet, f chemicals.Formula, layers []string) (Layered, error) {
	l := Layered{Formula: f}
	for _, el := range f.Order {
		i, ok := chemicals.ElementIndex(el)
		if !ok {
			return l, &ErrNotLayered{f.Text, "unknown element " + el}
		}
		p := Part{el, f.Of[i]}
		switch part(el, layers) {
		case 'M':
			l.M = append(l.M, p)
		case 'X':
			l.X = append(l.X, p)
		default:
			l.A = append(l.A, p)
		}
	}
	for _, need := range []struct {
		parts []Part
		why   string
	}{
		{l.M, "no element of groups 3 to 6 and no manganese in it"},
		{l.X, "no carbon, nitrogen or boron in it"},
		{l.A, "no element that could leave the layers (name it with the key layers)"},
	} {
		if len(need.parts) == 0 {
			return l, &ErrNotLayered{f.Text, need.why}
		}
	}
	l.Slab = count(l.X) > count(l.M)
	l.MolarMass = f.MolarMass(st, w)
	l.count(st, w)
	return l, nil
}

func part(el string, layers []string) byte {
	if slices.Contains(layers, el) {
		return 'A'
	}
	g := chemicals.Group(el)
	switch {
	case el == "C" || el == "N" || el == "B":
		return 'X'
	case g >= 3 && g <= 6, el == "Mn":
		return 'M'
	case len(layers) > 0:
		return 'M' // the writer said what leaves; the rest stays
	}
	return 'A'
}

func count(parts []Part) float64 {
	n := 0.0
	for _, p := range parts {
		n += p.Count
	}
	return n
}

// count fills in the electrons of A, the hydride and the toxic metals.
func (l *Layered) count(st *chemicals.Store, w *working.Sheet) {
	electrons := make([]working.Num, 0, len(l.A))
	for _, a := range l.A {
		if h := Hydride(a.Symbol); h != "" {
			l.Hydride = h
		}
		if Toxic(a.Symbol) {
			l.Toxic = append(l.Toxic, a.Symbol)
		}
		e := st.Num(datum.Of("electrons", a.Symbol))
		if e.Unknown() {
			l.Unlisted = a.Symbol
		}
		x := working.Exact("x", "mol/mol", a.Count, a.Symbol+" per formula unit")
		electrons = append(electrons, w.Line("e_"+a.Symbol, "mol/mol", "x*e", x.V*e.V, x, e.As("e")))
	}
	for _, m := range l.M {
		if Toxic(m.Symbol) {
			l.Toxic = append(l.Toxic, m.Symbol)
		}
	}
	l.Electrons = w.Sum("e", "mol/mol", electrons...)
}
