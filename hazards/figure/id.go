package figure

import (
	"errors"
	"fmt"
	"strings"
)

// ID names a figure: its quantity, and where it is not of the whole route, the
// place, the agent and the case it holds for. Two figures of a review never have
// the same. It is a value: compare it, and key maps by it; its text is for files
// and the command line.
type ID struct {
	Quantity string // name in the catalogue
	Place    Place
	Agent    string // slug of a substance, or two joined by _and_; empty: none
	Case     Case
}

// Together is the agent that several substances make, by their slugs in order.
func Together(slugs ...string) string { return strings.Join(slugs, withAnother) }

// AgentsOf are the substances of an agent, by their slugs in order.
func AgentsOf(agent string) []string { return strings.Split(agent, withAnother) }

const withAnother = "_and_"

// IsZero reports whether the id names nothing.
func (id ID) IsZero() bool { return id == ID{} }

// Bare reports whether it is of the whole route: the sum or the worst of its members.
func (id ID) Bare() bool { return id == ID{Quantity: id.Quantity} }

// Supposed reports whether it is no figure of what is done as written: its case, its quantity or
// its place supposes that something fails, is done otherwise or gets out.
func (id ID) Supposed() bool {
	s := supposed()
	return id.Case.Supposed() || s.quantities[id.Quantity] || s.places[id.Place]
}

// String is quantity[@place][/agent][:case].
func (id ID) String() string {
	if id.Bare() {
		return id.Quantity
	}
	var b strings.Builder
	b.WriteString(id.Quantity)
	for _, part := range [...]struct{ before, text string }{{"@", id.Place.String()}, {"/", id.Agent},
		{":", id.Case.String()}} {
		if part.text != "" {
			b.WriteString(part.before)
			b.WriteString(part.text)
		}
	}
	return b.String()
}

// Compare orders ids by their text.
func (id ID) Compare(other ID) int { return strings.Compare(id.String(), other.String()) }

// ErrNoID is the error of Parse.
var ErrNoID = errors.New("not the id of a figure")

// Parse reads what String writes. The error wraps ErrNoID: the quantity is not in
// the catalogue, or a part is empty.
func Parse(text string) (ID, error) {
	rest, kase, hasCase := strings.Cut(text, ":")
	rest, agent, hasAgent := strings.Cut(rest, "/")
	quantity, place, hasPlace := strings.Cut(rest, "@")
	if _, known := Lookup(quantity); !known {
		return ID{}, fmt.Errorf("%w: %q: no quantity is called %q", ErrNoID, text, quantity)
	}
	if hasCase && kase == "" || hasAgent && agent == "" || hasPlace && place == "" {
		return ID{}, fmt.Errorf("%w: %q: nothing stands behind one of its marks", ErrNoID, text)
	}
	return ID{Quantity: quantity, Place: ParsePlace(place), Agent: agent, Case: ParseCase(kase)}, nil
}
