package keeping

import (
	"slices"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
)

// Losses are the shares lost at which days are counted.
var Losses = [3]float64{0.1, 0.2, 0.5}

// AsWritten is the condition without an edit.
const AsWritten = "as_written"

// Way is one condition in which product of a place is kept.
type Way struct {
	Condition string
	Place     string
	Edits     []edit.Edit
	Additives []Additive
	Days      [len(Losses)]working.Num // as expected
	Life      *figure.Figure           // to a fifth lost, by the trade's mode of pH, with its range
	Pressure  *figure.Figure           // the higher of what counts, at the end; nil in an open container
	Soon      *figure.Figure           // time to 10 kPa of the same
	Supposed  bool                     // it is vented: the pressure is that if it were shut
	Verdict   figure.Verdict           // of the pressure; Unknown where there is no finding
	Judged    bool                     // there is a finding
	Why       phrase.Phrase            // why nothing is told of it; zero where something is
	Over      []Point                  // how it goes over the time of the store, once traced

	of     route.Case      // the route as it is changed
	common *process.Common // what it begins with as others do; nil where it changes a place
	same   bool            // its edits change nothing that is written
}

// Of are the ways in which the product of a route can be kept, place by place, as it is
// written first. None where nothing is stored.
func Of(c route.Case) ([]Way, error) {
	c.Brief = true
	base := hazards.StoredOnly(c, nil)
	if base.Err != nil {
		return nil, base.Err
	}
	ratio, err := written(&c)
	if err != nil {
		return nil, err
	}
	var out []Way
	for _, place := range places(&base) {
		m := maker{c: &c, walk: &base.Walk, place: place, ratio: ratio}
		common := process.Until(m.stores()[0])
		out = append(out, Way{Condition: AsWritten, Place: place, common: common})
		for _, name := range names() {
			w := Way{Condition: name, Place: place}
			w.Edits, w.Additives, w.Why = m.edits(name)
			if !slices.ContainsFunc(w.Edits, ofPlace) {
				w.common = common
			}
			out = append(out, w)
		}
	}
	hazards.Each(len(out), func(i int) { out[i].judge(c) })
	first := 0
	for i := range out {
		switch w := &out[i]; {
		case w.Condition == AsWritten:
			first = i
		case w.same:
			w.takes(&out[first])
		}
	}
	return out, nil
}

// ofPlace reports whether an edit changes a place, of which the steps before know as well.
func ofPlace(e edit.Edit) bool { return strings.HasPrefix(e.Path, "places.") }

// places are those with stored product, in the order of the figures.
func places(a *hazards.Assessment) []string {
	var out []string
	for i := range a.Figures {
		f := &a.Figures[i]
		if p := f.Place.Key(); f.Quantity == "store.shelf_life" && p != "" && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// judge assesses the route as it is changed.
func (w *Way) judge(c route.Case) {
	if !w.Why.IsZero() {
		return
	}
	var err error
	if len(w.Edits) > 0 {
		was := c.Route.Text
		if c, err = changed(c, w.Edits); err != nil {
			w.Why = phrase.Of("keep.cannot", err.Error())
			return
		}
		if w.same = c.Route.Text == was; w.same {
			return
		}
	}
	w.of = c
	s, err := hazards.Stored(c, w.common)
	if err != nil {
		w.Why = phrase.Of("keep.cannot", err.Error())
		return
	}
	if w.read(&s); w.Life == nil {
		w.Why = phrase.Of("keep.gone")
		return
	}
	for i, a := range hazards.StoredWith(c, w.common, lossDatum, Losses[:]...) {
		w.Days[i] = life(&a, w.Place)
	}
}

// takes is what is told of a way whose edits change nothing: that of the route as written.
func (w *Way) takes(x *Way) {
	w.Days, w.Life, w.Pressure, w.Soon, w.Supposed = x.Days, x.Life, x.Pressure, x.Soon, x.Supposed
	w.Verdict, w.Judged, w.Why, w.of = x.Verdict, x.Judged, x.Why, x.of
}

// changed is the case of a route with edits in its text.
func changed(c route.Case, edits []edit.Edit) (route.Case, error) {
	changes := make([]proposal.Change, len(edits))
	for i := range edits {
		changes[i].Edit = edits[i]
	}
	f, err := proposal.File{Case: c, Text: []byte(c.Route.Text)}.With(changes...)
	if err == nil && f.Case.Store.Alike(c.Store) {
		f.Case.Store = c.Store // what was worked out with the one serves for the other
	}
	return f.Case, err
}

// lossDatum is the datum of the loss to which a shelf life is counted.
const lossDatum = "storage.loss"

// life is the time to the loss, as expected; unknown where nothing is stored there any more.
func life(a *hazards.Assessment, place string) working.Num {
	for i := range a.Figures {
		if f := &a.Figures[i]; f.Quantity == "store.shelf_life" && at(f, place) && f.Case.Branch == tradeMode {
			return f.Value
		}
	}
	return working.Absent("t", "d", working.Lacks("carries_flakes", ""))
}

// tradeMode is the mode of pH that a shelf life is told by.
const tradeMode = "ph_mode_1"

func at(f *figure.Figure, place string) bool { return f.Of().IsZero() && f.Place.Key() == place }

// read takes what is told of a way from its figures, and the worst verdict of its pressure.
func (w *Way) read(s *hazards.Sized) {
	for i := range s.Figures {
		f := &s.Figures[i]
		if !at(f, w.Place) || f.Case.Branch == figure.OuterBound {
			continue
		}
		switch f.Quantity {
		case "store.shelf_life":
			if f.Case.Branch == tradeMode {
				w.Life = f
			}
		case "store.pressure":
			if w.Pressure == nil || worse(f, w.Pressure) {
				w.Pressure, w.Supposed = f, f.Case.State == figure.Closed
			}
		}
	}
	for i := range s.Figures {
		f := &s.Figures[i]
		if w.Pressure != nil && f.Quantity == "store.time_to_10_kpa" && at(f, w.Place) && f.Case == w.Pressure.Case {
			w.Soon = f
		}
	}
	figs := hazards.Judge(s.Case, s.Figures, &s.Walk)
	for i := range figs {
		if f := &figs[i]; f.Figure.Quantity == "store.pressure" && f.Figure.Place.Key() == w.Place &&
			(!w.Judged || f.Verdict.Rank() > w.Verdict.Rank()) {
			w.Verdict, w.Judged = f.Verdict, true
		}
	}
}

// worse reports whether a pressure is above another, or not known.
func worse(f, than *figure.Figure) bool {
	x, y := f.High(), than.High()
	return !y.Unknown() && (x.Unknown() || x.V > y.V)
}
