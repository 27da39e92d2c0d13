package route

import (
	"fmt"
	"strings"

	"etchbound/chemicals"
	"etchbound/schemas"
)

// heldOrNot finds the substance of a map, or takes one that the data do not hold
// where the map says so. The same name is the same substance wherever it stands.
func (l *loader) heldOrNot(n *schemas.Node) *chemicals.Substance {
	name, not := n.Get("substance"), n.Bool("not_held")
	stated := not != nil && *not
	if n.Wrote("formula") && !stated {
		l.refuseKey(n, "formula", "a formula beside a substance", "substance alone, or not_held: true beside a formula",
			"of a substance that is held, the formula is known")
		return nil
	}
	if !stated {
		return l.substance(name, unheldLine)
	}
	if !name.Usable(schemas.Text) {
		return nil
	}
	text := strings.TrimSpace(name.Text)
	if s, held := chemicals.Library().Find(text); held || strings.EqualFold(text, "precursor") {
		what := text + " is held"
		if held && s.Name != text {
			what += ", as " + s.Name
		}
		l.refuse(name, what, "a substance that the data do not hold beside not_held", "leave not_held out")
		return nil
	}
	f, _ := chemicals.ParseFormula(n.Str("formula")) // one that does not read says nothing of its elements
	if f.Charge != 0 {
		f = chemicals.Formula{}
	}
	if s := l.unheld[text]; s != nil {
		if s.Formula.Text != f.Text {
			l.refuse(n, text+" has another formula here than before", "one formula for one name",
				"write the same formula, or another name for another substance")
		}
		return s
	}
	s := chemicals.Unheld(text, f)
	if l.unheld == nil {
		l.unheld = map[string]*chemicals.Substance{}
	}
	l.unheld[text] = s
	return s
}

// near is how many letters a misspelt name may be away from a known one.
const near = 2

// unheldLine is what to write for a substance that is not held.
const unheldLine = "another chemical is another chemistry: write {substance: %s, formula: ..., not_held: true} " +
	"with its amount, and all that it touches is unknown"

// notKnown says what to do about a name that is not known. Another chemical is
// another chemistry, so that only a misspelling is told.
func notKnown(text, otherwise string) string {
	write := fmt.Sprintf(otherwise, text)
	if names := chemicals.Library().Misspelt(text, near); len(names) > 0 {
		return "if it is misspelt: " + strings.Join(names, ", ") + "; if not, " + write
	}
	return write
}
