package hazards_test

import (
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// stopped is a matter at which work stops, and where: agents, words and numbers aside.
type stopped struct {
	id    string
	place figure.Place // zero where it is of the whole route
}

// stoppedAt are the hold points of a review by matter and place. What is said of what strong acid
// may do to a wall and of what a wall nobody states may stand are one matter.
func stoppedAt(rv *hazards.Review) map[stopped]bool {
	out := map[stopped]bool{}
	for i := range rv.Holds {
		h := &rv.Holds[i]
		out[stopped{id: h.ID}] = true
		for _, p := range h.Places {
			out[stopped{h.ID, p}] = true
		}
		for _, p := range append(h.Parts, h.Says) {
			if step, of := p.Step(); of {
				out[stopped{h.ID, figure.Step(int(step))}] = true
			}
		}
	}
	return out
}

// byUnheld are the matters that what is not held may bring from the step on in which it comes:
// work stops there before a specialist has said what it does.
var byUnheld = map[string]bool{"oxidant": true, "hf_strong": true, "toxic_gas": true, "overfull": true,
	"ammonia": true, "oxygen": true, "second_gas": true}

// fromThen are the matters that hold from the step on that their one sentence names.
var fromThen = map[string]bool{"unfollowed": true, "attacked": true, "material_unknown": true, "lid_unknown": true}

// kept reports whether work stops at a matter, or at one that is stricter.
func kept(after map[stopped]bool, h stopped) bool {
	for x := range after {
		switch {
		case x == h:
			return true
		case byUnheld[h.id] && x.id == "not_held" && (h.place.IsZero() || x.place == h.place || earlier(x.place, h.place)):
			return true
		case h.id == "attacked" && x.id == "material_unknown": // what it is made of was left out
			return true
		case (h.id == "attacked" || h.id == "material_unknown") && x.id == "lid_unknown": // likewise of a lid
			return true
		case fromThen[h.id] && x.id == h.id && earlier(x.place, h.place): // from there on
			return true
		}
	}
	return false
}

// earlier reports whether both places are steps, the first before the other.
func earlier(x, than figure.Place) bool {
	a, one := x.Step()
	b, other := than.Step()
	return one && other && a < b
}

// asked reports whether a matter that stops work once its limit is exceeded is one of a site that
// is no longer described at all: its finding stays, as unknown, with what settles it. What stands
// in a room of which nobody says that it is there is not there.
func asked(full, bare *hazards.Review, h stopped) bool {
	gone := full.Case.Site != nil && bare.Case.Site == nil
	return gone && slices.ContainsFunc(bare.Findings, func(f figure.Finding) bool {
		return f.Verdict == figure.UnknownVerdict && (h.place.IsZero() || f.Figure.Place == h.place) &&
			(f.Limit.ID == h.id || f.Limit.Role == limit.Gathers && h.id == "hydrogen_quarter")
	})
}

// keepsHolds holds that no point at which work stops has gone.
func keepsHolds(t reporter, full, bare *hazards.Review, what string) {
	after := stoppedAt(bare)
	for h := range stoppedAt(full) {
		if !kept(after, h) && !asked(full, bare, h) {
			t.Errorf("hold point %s @%s is gone %s", h.id, h.place, what)
		}
	}
}
