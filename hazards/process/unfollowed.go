package process

import (
	"slices"
	"strings"

	"etchbound/chemicals/material"
	"etchbound/chemicals/working"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// Unfollowed is what a place has held by a step that may give gas of which nobody works
// out how much: what a shut container comes to is unknown then.
type Unfollowed struct {
	Place string
	Step  int
	Lacks working.Missing
	Wall  bool // it may be the wall that gives it: nobody says what that is made of
}

// unfollowed looks through the places for what gives gas that nothing here follows:
// two things that must not meet, a wall that dissolves, something that is not held. A
// residue is enough. One that stands open holds no pressure.
func (k *walker) unfollowed() {
	for i := range k.met.of {
		c := &k.met.of[i]
		if c.Place.Closure == route.Open || len(c.Tags) == 0 {
			continue
		}
		k.meets(c, k.met.pairs[i])
		if step, there := c.Tags["not_held"]; there {
			k.unworked(c.Place, step, working.Lacks(working.GasUnheld, c.Place.Key))
			_, fact := k.toldBy(c.Place)
			k.fact(fact, step, phrase.Of("fact.unfollowed_unheld", c.Place.Key, phrase.Step(step)))
		}
		k.eaten(c.Place)
	}
}

func (k *walker) unworked(p *route.Place, step int, lacks working.Missing) {
	k.out.Unfollowed = append(k.out.Unfollowed, Unfollowed{Place: p.Key, Step: step, Lacks: lacks})
}

// meets notes the pairs of a place whose gas is not worked out, and says them in one
// fact, before all others. What is heated closed cannot be kept vented.
func (k *walker) meets(c *meeting.Contents, pairs []paired) {
	kind, fact := k.toldBy(c.Place)
	var names, bounded []string
	first, since := 0, 0 // 0: what stood in it before does by itself
	for i := range pairs {
		p, step := pairs[i].Pair, pairs[i].step
		stood := p.Gas == meeting.Counted || p.Gas == meeting.Bounded
		if p.Gas == meeting.Bounded && !c.Stood(p) {
			if bounded = append(bounded, p.Names); since == 0 || step < since {
				since = step
			}
		}
		if p.A.Is("not_held") || !(p.Gas == meeting.UnknownGas || stood && c.Stood(p)) {
			continue // what counts gas knows nothing of what earlier stood in a place
		}
		if kinds, wall := p.Wall(); wall && !WallGives(k.out.Contacts, c.Place, p.A.String(), kinds) {
			continue
		}
		lacks := working.Lacks(kind, p.Names).In(step)
		if step == 0 && kind == "gas_of_pair" {
			lacks = working.Lacks("gas_of_pair_before", p.Names)
		}
		k.unworked(c.Place, step, lacks)
		if names = append(names, p.Names); len(names) == 1 || step < first {
			first = step
		}
	}
	n, at := k.out.MostOxygen(nil, c.Place.Key)
	switch {
	case bounded != nil && at != nil && n.Unknown(): // no bound is known: it is as any other
		if names = append(names, bounded...); len(names) == len(bounded) || since < first {
			first = since
		}
	case bounded != nil && at != nil:
		litres := n.V * MolarVolume(k.st, nil).V
		k.out.Facts = slices.Insert(k.out.Facts, 0, Fact{fact, since,
			phrase.Of("fact.bounded", c.Place.Key, phrase.Step(since), litres, strings.Join(bounded, "; "))})
	}
	if names != nil {
		says := phrase.Of("fact.unfollowed", c.Place.Key, phrase.Step(first), strings.Join(names, "; "))
		if first == 0 {
			says = phrase.Of("fact.unfollowed_before", c.Place.Key, strings.Join(names, "; "))
		}
		k.out.Facts = slices.Insert(k.out.Facts, 0, Fact{fact, first, says})
	}
}

// toldBy is what gas of a place that nobody works out is told by: what is lacking, and the
// fact that says to keep it vented, or not to heat it closed.
func (k *walker) toldBy(p *route.Place) (kind, fact string) {
	if k.heatsClosed(p) {
		return "gas_of_pair_hot", "unfollowed_hot"
	}
	return "gas_of_pair", "unfollowed"
}

// heatsClosed reports whether a step heats a place closed.
func (k *walker) heatsClosed(p *route.Place) bool {
	return slices.ContainsFunc(k.c.Route.Steps, func(s route.Step) bool {
		return s.In == p.Key && s.Verb().Does == route.Shuts
	})
}

// WallGives reports whether the wall of a place, or what stands in its liquor, is of some
// materials and what it meets of a class is more than it stands.
func WallGives(contacts []Contact, p *route.Place, class string, kinds []string) bool {
	return slices.ContainsFunc(contacts, func(c Contact) bool {
		return c.Place == p.Key && c.Part != "lid" && c.Verdict > material.Limited && meeting.MadeOf(c.Material, kinds) &&
			(c.Medium == class || class == "acid" && (c.Medium == "hf" || c.Medium == "chloride"))
	})
}

// eaten notes a shut place of which nobody can say what it is made of: it may be of what
// its liquor turns into gas.
func (k *walker) eaten(p *route.Place) {
	if p.Closure != route.Closed || !meeting.WallUnread(p) {
		return
	}
	for i := range k.out.Contacts {
		if c := &k.out.Contacts[i]; c.Place == p.Key && c.Part == "wall" && c.Verdict == material.Unknown &&
			c.Medium != "solvent" {
			k.out.Unfollowed = append(k.out.Unfollowed, Unfollowed{p.Key, c.Step, working.Lacks("gas_of_wall", p.Key), true})
			return
		}
	}
}
