package figure

import "strconv"

// Place is where a figure holds: a step with the liquor it leaves, a place of the
// route by its key, or one of the surroundings every route has. The zero Place is
// the whole route.
type Place struct {
	step int
	key  string
}

// The surroundings of a route.
var (
	Waste    = At("waste")    // all liquor that is collected
	Spill    = At("spill")    // the floor a container breaks on
	Room     = At("room")     // the room of the hood
	Site     = At("site")     // everything the site holds
	Delivery = At("delivery") // the way a bottle comes in by
	Yard     = At("yard")     // out of doors
	Stack    = At("stack")    // where the extract leaves
	Hood     = At("hood")     // the space of the hood
	Cabinet  = At("cabinet")  // the cabinet it is stored in
)

// Step is the place of a step, counted from 1 as written.
func Step(n int) Place { return Place{step: n} }

// At is the place with a key, of the route or of its surroundings.
func At(key string) Place { return Place{key: key} }

// IsZero reports whether it is the whole route.
func (p Place) IsZero() bool { return p == Place{} }

// Step is the number of the step, and whether the place is one.
func (p Place) Step() (n int, ok bool) { return p.step, p.step != 0 }

// Key is the key of the place; empty for a step and for the whole route.
func (p Place) Key() string { return p.key }

// String is the number of the step or the key; empty for the whole route.
func (p Place) String() string {
	if p.step != 0 {
		return strconv.Itoa(p.step)
	}
	return p.key
}

// ParsePlace reads what String writes. Keys of places begin with a letter, so a
// number is a step.
func ParsePlace(text string) Place {
	if n, err := strconv.Atoi(text); err == nil && n > 0 {
		return Step(n)
	}
	return At(text)
}
