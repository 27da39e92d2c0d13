package figure

// Asked is a set of places of which figures are asked for: steps by their numbers, and
// as one whatever is no step. The zero Asked is everywhere. A step beyond 63 is always
// in it: to work out more than was asked for is never wrong.
type Asked uint64

// Everywhere asks for all places.
const Everywhere Asked = 0

// AskedAt asks for one place.
func AskedAt(p Place) Asked {
	n, ok := p.Step()
	switch {
	case !ok:
		return 1
	case n > 63:
		return Everywhere
	}
	return 1 << n
}

// Has reports whether a place is in the set.
func (a Asked) Has(p Place) bool {
	one := AskedAt(p)
	return a == Everywhere || one == Everywhere || a&one != 0
}

// And is the set with the places of another one.
func (a Asked) And(b Asked) Asked {
	if a == Everywhere || b == Everywhere {
		return Everywhere
	}
	return a | b
}
