// Package proposal knows a route as its file would read with some values changed, each
// named by what it is for. It must not know which changes are worth making, nor how a
// route is judged.
//
// A change is made in the text of the file and read by the loader like any other file, so
// that what is judged is what the file says, and what the file says of anything else,
// comments and layout included, stays.
package proposal

import (
	"bytes"
	"fmt"

	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/edit"
	"etchbound/schemas/quantity"
)

// Change is an edit of a route with what it is, as a person says it.
type Change struct {
	edit.Edit
	Says phrase.Phrase
}

// File is the case of a route with the text that it was read from. The route may be
// scaled: its changes are those of the text, at the batch written there.
type File struct {
	Case route.Case
	Text []byte
}

// Refused is the error of changes with which the loader refuses the file.
type Refused struct{ Problems []schemas.Problem }

// Error is the first problem, in a line.
func (r *Refused) Error() string {
	for _, p := range r.Problems {
		if p.Severity == schemas.Error {
			return p.Short()
		}
	}
	return "refused"
}

// With is the file with some changes, one after the other: the same site, limits and
// batch. The error is one of edit.Apply, a Refused, or one of route.NewCase.
func (f File) With(changes ...Change) (File, error) {
	edits := make([]edit.Edit, len(changes))
	for i := range changes {
		edits[i] = changes[i].Edit
	}
	text, err := edit.Apply(f.Text, edits...)
	if err != nil {
		return File{}, err
	}
	return f.reading(text)
}

// reading is the file with another text.
func (f File) reading(text []byte) (File, error) {
	was := f.Case.Route
	r, problems, err := route.Load(was.Name, bytes.NewReader(text))
	if err != nil {
		return File{}, err
	}
	if r == nil {
		return File{}, &Refused{problems}
	}
	if batch, scaled := f.scaledTo(); scaled {
		r = r.Scaled(batch)
	}
	c, err := route.NewCase(r, f.Case.Site, f.Case.Limits)
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", was.Name, err)
	}
	c.Brief, c.Rough = f.Case.Brief, f.Case.Rough
	return File{c, text}, nil
}

// scaledTo is the batch of the case where the text has another.
func (f File) scaledTo() (quantity.Value, bool) {
	p := f.Case.Route.Precursor
	if p == nil || !p.Mass.Set || f.Case.Route.ReadFrom(f.Text) {
		return quantity.Value{}, false
	}
	root, _ := schemas.Places(f.Case.Route.Name, f.Text)
	written, err := quantity.Parse(root.At("precursor.mass").String(), quantity.Mass)
	return p.Mass, err == nil && written.SI != p.Mass.SI
}
