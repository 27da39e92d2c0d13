package selection

import (
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/scaling"
)

// Page is page 1 in words, without layout.
type Page struct {
	Asked     string   // the decision in a sentence
	Within    string   // the bounds within which it is asked
	Banner    []string // what can kill without warning, each with its key facts
	Questions []Line   // in the order of their table
	Others    []Line   // the worst of the rest, worst first
	Stops     []Stop   // every hold point, the most dangerous first
	Gaps      []Gap    // what is not known, worst first
	Left      string   // what is not assessed at all
	Brief     bool     // what follows a failure is left out
}

// Line is one matter on one line.
type Line struct {
	Key     string
	Asks    string
	Answer  string
	Against string // what it is held against; empty: nothing
	State   State
	Verdict figure.Verdict // where it is judged
	Surely  string         // how surely; empty where nothing is said
	Section string         // key of the section that tells more

	limits []string // those that stand in Against, as they are told
}

// State is how far a line is answered.
type State uint8

// The states.
const (
	Told     State = iota // it is a fact, or an instruction: nothing is judged
	Judged                // it has a verdict
	Unjudged              // a figure that nothing is held against
	NotYet                // no model is built for it
	Absent                // the route has no such thing
)

// Stop is a hold point.
type Stop struct {
	ID   string
	Key  string // of the phrase it says; empty: it is put together
	Says string
	At   []string // where, as far as the words do not say it
	Here string   // the same in few words
	Part string   // what it is in a sentence with others of its kind; empty: it has one of its own
}

// Gap is something that is not known.
type Gap struct {
	What    string
	Where   string
	Settles string
}

// Read composes page 1 of a review; grown is nil where no other batch was looked at.
func Read(d *draft.Draft, grown *scaling.Outgrown) Page {
	p := newReader(d)
	p.grown = grown
	out := Page{Asked: p.asked(), Within: p.within(), Banner: p.banner(), Questions: p.questions()}
	out.Others = p.others()
	out.Stops = Matters(p.stops)
	out.Gaps, out.Left, out.Brief = p.gaps(), p.left(), d.Review.Case.Brief
	return out
}
