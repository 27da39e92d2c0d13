package limit

// Key names a limit: where it comes from, and its id there. No two limits of a
// review have the same, whatever a limits file calls its own.
type Key struct {
	Origin Origin
	ID     string
}

// Origin is where a limit comes from.
type Origin uint8

// The origins.
const (
	BuiltIn Origin = iota // carried by the program
	Local                 // the limits file
	Route                 // what the route writes
	Site                  // what the site file writes
	Review                // worked out in the review itself
)

var originNames = [...]string{"built_in", "local", "route", "site", "review"}

// String is the word for the origin.
func (o Origin) String() string { return originNames[o] }

// Named is the key of a limit.
func Named(from Origin, id string) Key { return Key{Origin: from, ID: id} }

// String is the id as it stands in the id of a finding: a local one is marked, since
// its file may call it what the program calls one of its own.
func (k Key) String() string {
	if k.Origin == Local {
		return Local.String() + ":" + k.ID
	}
	return k.ID
}
