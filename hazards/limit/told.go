package limit

import "etchbound/hazards/phrase"

// HasToBeKnown is the limit of a figure that no other limit judges.
var HasToBeKnown = Named(Review, "has_to_be_known")

// While is how a limit of an average holds for what lasts less long. The zero While is
// a limit as it stands.
type While struct {
	Minutes float64 // how long it lasts
	Full    float64 // the value as its document has it; 0: the document has one for every time
}

// Says is what the limit is called: by its document or its file, and where the route,
// the site or the review makes it, by its id.
func (l *Limit) Says() phrase.Phrase {
	says := l.title()
	if l.Unseen {
		return says.And(phrase.Of("limit.from_memory"))
	}
	return says
}

func (l *Limit) title() phrase.Phrase {
	switch {
	case l.Label == "":
		return phrase.Of("limit." + l.ID)
	case l.While == While{}:
		return phrase.As(l.Label)
	case l.Origin == Local:
		return phrase.Of("limit.average_while", l.While.Full, l.Average, l.Label, l.While.Minutes)
	case l.While.Full == 0:
		return phrase.Of("limit.for_minutes", l.Label, l.While.Minutes)
	}
	return phrase.Of("limit.exposure_while", l.While.Full, l.Label, l.While.Minutes)
}

// From is the document it is of, or who says so where there is none.
func (l *Limit) From() phrase.Phrase {
	switch {
	case l.Document != "":
		return phrase.As(l.Document)
	case l.Key == HasToBeKnown:
		return phrase.Of("document.rule")
	}
	return phrase.Of("document." + l.Origin.String())
}
