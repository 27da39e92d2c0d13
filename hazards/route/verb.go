package route

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/schemas/columns"
	"etchbound/schemas/quantity"
)

// Does is what a step does with what stands in its place.
type Does string

// What a step can do.
const (
	Fills       Does = "fill"       // puts in what it brings; what is there can react
	Moves       Does = "move"       // takes all of it, or a part, to another place
	Parts       Does = "part"       // sends the liquid that the solid does not hold to another place
	Washes      Does = "wash"       // puts in and parts, cycle by cycle
	Prewashes   Does = "prewash"    // puts in, lets it react, then parts once
	Dries       Does = "dry"        // takes the liquid out
	Stores      Does = "store"      // puts it by
	Neutralises Does = "neutralise" // brings it to neutral
	Melts       Does = "melt"       // puts in and melts
	Shuts       Does = "closed"     // heats it closed
	Conducts    Does = "current"    // sends a current through it
)

// Where what stands in a place goes.
const (
	Stays = "stays"
	Into  = "into" // to the place the step names
	Out   = "out"  // into the air
)

// Verb is one word of the language in which steps are written, with all that the
// review needs to know of it. No list of verbs stands anywhere else.
type Verb struct {
	Name           string
	Does           Does
	Liquid, Solids string // where they go: Stays, Into or Out
	// "contents": its place has to be filled; "nothing": it may be empty; "": unless it brings something
	Needs        string
	Passive      bool     // no temperature is set in it: the one last set in the place holds
	EndsEtch     bool     // after it the powder no longer stands in the liquor of its etch
	Cooled       bool     // its temperature is one that the coolant of the place has to reach
	Runs         bool     // it can go on with nobody there, whether its time is stated or not
	Held         bool     // its time is time that the liquor is held
	Opens        bool     // the vessel stands open in it, whatever its closure
	Pours        bool     // liquor is poured over in it
	Spins        string   // "yes": it spins; "tube": it spins what stands in tubes
	Mixes        bool     // the heat of what it dissolves and dilutes is reported
	Waste        string   // "yes": what it sends on is waste; "here": what it is done in
	Aims         bool     // it can be told a pH to reach
	Lights       string   // what it brings that can light a gas, as a key of the report
	Calm         []string // it throws up drops, unless something wetted is called by one of these
	Tag          string   // the tag by which rules of the report apply
	Moving       string   // the verb it moves its contents like, where a step of it names another place
	Receives     bool     // it tells of the place that it pours into, and sets the temperature there
	Status, Note string
}

//go:embed verbs.csv
var verbsCSV string

var verbs = sync.OnceValue(func() map[string]*Verb {
	out := map[string]*Verb{}
	for _, v := range columns.Must("hazards/route/verbs.csv", verbsCSV, verbRow) {
		out[v.Name] = &v
	}
	return out
})

// moving are the verbs of which a step pours into another place where it names one: they
// move all there is, and tell of the place that receives it.
var moving = sync.OnceValue(func() map[string]*Verb {
	out := map[string]*Verb{}
	for name, v := range verbs() {
		if m := verbs()[v.Moving]; m != nil {
			x := *m
			x.Name, x.EndsEtch, x.Passive, x.Receives = name, v.EndsEtch, false, true
			out[name] = &x
		}
	}
	return out
})

func verbRow(r columns.Row) Verb {
	return Verb{Name: r.Named("verb"),
		Does: Does(r.Choice("does", string(Fills), string(Moves), string(Parts), string(Washes), string(Prewashes),
			string(Dries), string(Stores), string(Neutralises), string(Melts), string(Shuts), string(Conducts))),
		Liquid: r.Choice("liquid", Stays, Into, Out), Solids: r.Choice("solids", Stays, Into),
		Needs: r.Choice("needs", "", "contents", "nothing"), Passive: r.Yes("passive"), EndsEtch: r.Yes("ends_etch"),
		Cooled: r.Yes("cooled"), Held: r.Yes("held"), Runs: r.Yes("runs"), Opens: r.Yes("opens"), Pours: r.Yes("pours"),
		Spins: r.Choice("spins", "", "yes", "tube"), Mixes: r.Yes("mixes"), Waste: r.Choice("waste", "", "yes", "here"),
		Lights: r.Text("lights"), Calm: r.List("calm"), Aims: r.Yes("aims"), Tag: r.Text("tag"), Moving: r.Text("into"),
		Status: r.Named("status"), Note: r.Text("note")}
}

// Verb is the row of what a step does. A word that is none of the language, which no
// loaded route holds, counts as one that opens, pours and mixes.
func (s *Step) Verb() *Verb {
	if s.Into != "" {
		if v := moving()[s.Do]; v != nil {
			return v
		}
	}
	return VerbOf(s.Do)
}

// Throws reports whether a step throws up drops of its liquor by itself: a sonicator does in
// a vessel that is not closed, unless step or place says that it is a bath.
func (r *Route) Throws(s *Step) bool {
	v, p := s.Verb(), r.Place(s.In)
	if v.Calm == nil || p == nil || p.Closure == Closed && p.ClosureStated {
		return false
	}
	return !slices.ContainsFunc(slices.Concat(s.Wetted, p.Wetted), func(x Wetted) bool {
		return slices.ContainsFunc(v.Calm, func(w string) bool { return strings.Contains(strings.ToLower(x.What), w) })
	})
}

// Works is the place of which a step tells, that of its reaction and its temperature.
func (s *Step) Works() string {
	if s.Verb().Receives {
		return s.Into
	}
	return s.In
}

// boiling is the boiling point of water, K.
const boiling = 373.15

// Boils reports whether a step sets a temperature, at the high end of its range, at which
// water boils.
func (s *Step) Boils() bool {
	for _, t := range [...]quantity.Value{s.Temperature, s.NotAbove} {
		if t.Set && (t.SI >= boiling || t.High >= boiling) {
			return true
		}
	}
	return false
}

// Timed reports whether what a step adds goes in over a time: one of no length is at once.
func (s *Step) Timed() bool { return s.Over.Set && s.Over.SI != 0 }

// VerbOf is the row of a verb, as Step.Verb gives it.
func VerbOf(name string) *Verb {
	if v := verbs()[name]; v != nil {
		return v
	}
	return &Verb{Name: name, Does: Fills, Liquid: Stays, Solids: Stays, Opens: true, Pours: true, Spins: "yes",
		Mixes: true}
}

// Cycles reports whether the verb can be done cycle by cycle.
func (v *Verb) Cycles() bool { return v.Does == Washes || v.Does == Prewashes }

// Keeps is what stays in place where the verb parts solid from liquid, else "".
func (v *Verb) Keeps() string {
	if v.Liquid == Into && v.Solids == Stays {
		return "solids"
	}
	return ""
}
