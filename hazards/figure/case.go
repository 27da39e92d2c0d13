package figure

import (
	"slices"
	"strconv"
	"strings"
)

// Case is what a figure holds for beside its place: the state of a container, what
// has gone wrong, and the law or branch by which it is worked out. The zero Case is
// the route as it is meant to go.
type Case struct {
	State   State
	Failure string  // key of a failure; empty: all goes as written
	Branch  string  // law of the reaction, or branch; empty: none
	Over    float64 // min over which it is averaged; 0: at any moment
}

// State is how a container stands.
type State uint8

// The states.
const (
	AsWritten State = iota
	Closed          // if it were shut, which the route does not say
	Heated          // shut and hot
	Cold            // shut, and cold again
)

var stateNames = [...]string{"", "closed", "heated", "cold"}

// String is the word in an id; empty as written.
func (s State) String() string { return stateNames[s] }

// Branches that are no law.
const (
	Residual = "residual" // powder that an etch left
	Boiling  = "boiling"  // what boils off as it is meant, by the worst of the laws
	Mist     = "mist"     // drops that bubbling gas throws up
	Current  = "current"  // what a current makes, evenly
	OwnHeat  = "own_heat" // as warm as what reacts makes it if cooling fails
	// OuterBound is all carbon of stored flakes as carbon dioxide, which nobody expects: told beside
	// the worst that is estimated, and in place of none of it.
	OuterBound = "carbon_dioxide"
)

// By is the case of a law or a branch.
func By(branch string) Case { return Case{Branch: branch} }

// Over is the case of what is averaged over a time in min.
func Over(minutes float64) Case { return Case{Over: minutes} }

// If is the case of a failure, by all its laws.
func If(failure string) Case { return Case{Failure: failure} }

// IsZero reports whether the route goes as it is meant to, by no law in particular.
func (c Case) IsZero() bool { return c == Case{} }

// By is the case by a law or a branch.
func (c Case) By(branch string) Case { c.Branch = branch; return c }

// If is the case with a failure.
func (c Case) If(failure string) Case { c.Failure = failure; return c }

// Supposed reports whether it is only so if a container were shut, or if something
// goes wrong.
func (c Case) Supposed() bool { return c.State == Closed || c.Failure != "" }

// Hot reports whether it is of a container that is warmer than it was filled.
func (c Case) Hot() bool { return c.State == Heated || c.Branch == OwnHeat }

// Bracketed reports whether it is worked out by laws that nobody has measured, as what
// follows a failure is: none of them is a best estimate, together they are a bracket.
func (c Case) Bracketed() bool {
	switch c.Branch {
	case "instantaneous", "accumulated", "early_peak", "self_accelerating":
		return true
	}
	return c.Failure != ""
}

// Parts are the state, the failure, the branch and the time of averaging, as far as
// there are any.
func (c Case) Parts() []string {
	over := ""
	if c.Over != 0 {
		over = before + strconv.FormatFloat(c.Over, 'g', -1, 64) + behind
	}
	return slices.DeleteFunc([]string{c.State.String(), c.Failure, c.Branch, over}, func(s string) bool { return s == "" })
}

// What stands before and behind a time of averaging.
const before, behind = "over_", "_min"

// overIn is the time of averaging that a part says.
func overIn(part string) (minutes float64, ok bool) {
	rest, begins := strings.CutPrefix(part, before)
	rest, ends := strings.CutSuffix(rest, behind)
	minutes, err := strconv.ParseFloat(rest, 64)
	return minutes, begins && ends && err == nil && minutes > 0
}

// String joins the parts by commas.
func (c Case) String() string {
	switch c {
	case Case{Branch: c.Branch}:
		return c.Branch
	case Case{Failure: c.Failure}:
		return c.Failure
	}
	return strings.Join(c.Parts(), ",")
}

// branches are those an id can end with: the laws of a reaction and the branches of
// a storage. What is none of them and no state is a failure.
var branches = []string{"instantaneous", "accumulated", "first_order", "early_peak", "self_accelerating", "measured",
	Boiling, Mist, Residual, Current, OwnHeat, "carbon_kept", "methane", OuterBound, "ph_mode_1", "ph_mode_2"}

// ParseCase reads what String writes.
func ParseCase(text string) Case {
	var c Case
	for part := range strings.SplitSeq(text, ",") {
		state := slices.Index(stateNames[:], part)
		over, averaged := overIn(part)
		switch {
		case part == "":
		case state > 0:
			c.State = State(state)
		case averaged:
			c.Over = over
		case slices.Contains(branches, part):
			c.Branch = part
		default:
			c.Failure = part
		}
	}
	return c
}
