package route

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"strings"
	"time"

	"etchbound/chemicals"
	"etchbound/schemas"
)

// Load reads a route file; name is used in messages. The route is nil where any
// problem is an error. Problems come by position and hold the notices too. The
// error is one of reading r.
func Load(name string, r io.Reader) (*Route, []schemas.Problem, error) {
	root, raw, problems, err := schemas.Read(name, r, "route")
	if err != nil || root == nil {
		return nil, problems, err
	}
	l := &loader{problems: problems}
	route := l.route(root)
	if !schemas.Refused(l.problems) {
		l.problems = append(l.problems, l.doubts...)
	}
	problems = schemas.Sorted(l.problems)
	if schemas.Refused(problems) {
		return nil, problems, nil
	}
	route.Name, route.Digest, route.Text = name, digest(raw), string(raw)
	route.Notices = append(notices(problems), l.notices...)
	return route, problems, nil
}

func digest(raw []byte) string {
	sum := sha256.Sum256(raw)
	return hex.EncodeToString(sum[:])
}

// ReadFrom reports whether a route is as a file with this text writes it: neither scaled
// nor changed since.
func (r *Route) ReadFrom(text []byte) bool { return r.Digest == digest(text) }

func notices(problems []schemas.Problem) []string {
	var list []string
	for _, p := range problems {
		list = append(list, p.Short())
	}
	return list
}

// loader turns nodes into the typed route and collects what does not fit
// together. It goes on after a fault, so that all are told at once.
type loader struct {
	problems []schemas.Problem
	doubts   []schemas.Problem // notices that mean something in a file without errors only
	notices  []string
	holds    holdings
	unheld   map[string]*chemicals.Substance // by the name they are written with
}

// refuse reports an error at a node.
func (l *loader) refuse(n *schemas.Node, what, accepted, hint string) {
	l.problems = append(l.problems, n.Problem(what, accepted, hint))
}

// doubt notices something at a node of a file that is not refused.
func (l *loader) doubt(n *schemas.Node, what, hint string) {
	p := n.Problem(what, "", hint)
	p.Severity = schemas.Notice
	l.doubts = append(l.doubts, p)
}

// refuseKey reports an error at a key of a map.
func (l *loader) refuseKey(n *schemas.Node, key, what, accepted, hint string) {
	l.problems = append(l.problems, n.KeyProblem(key, what, accepted, hint))
}

func (l *loader) route(root *schemas.Node) *Route {
	basis := root.Get("basis")
	r := &Route{
		Title: root.Str("title"), Written: root.Str("title"), Date: root.Str("date"), Family: root.Str("family"),
		Purpose: root.Str("purpose"), Notes: root.Str("notes"),
		Basis: Basis{Status: basis.Str("status"), Title: basis.Str("title"), Publisher: basis.Str("publisher"),
			Year: basis.Str("year"), DOI: basis.Str("doi"), Section: basis.Str("section"), Note: basis.Str("note")},
	}
	l.date(root.Get("date"))
	if p := root.Get("precursor"); p.Usable(schemas.Map) {
		r.Precursor = l.precursor(p)
		r.BatchText = r.Precursor.Mass.Text
	} else if root.Wrote("precursor") {
		l.holds.unsure = true
	}
	r.Places = l.places(root.Get("places"))
	r.Steps = l.steps(root, r)
	l.measured(root, r)
	r.Data = l.data(root.Get("data"), "route", r.Overrides())
	l.agree(root, r)
	return r
}

// date refuses days that no calendar has.
func (l *loader) date(n *schemas.Node) {
	if !n.Usable(schemas.Text) || strings.Trim(n.Text, "0123456789-") != "" || len(n.Text) != 10 {
		return
	}
	if _, err := time.Parse(time.DateOnly, n.Text); err != nil {
		l.refuse(n, n.Text+" is no day of the calendar", "a date as year-month-day, such as 2026-11-25", "")
	}
}

// formula reads a formula, or reports why it is none.
func (l *loader) formula(n *schemas.Node) (chemicals.Formula, bool) {
	if !n.Usable(schemas.Text) {
		return chemicals.Formula{}, false
	}
	f, err := chemicals.ParseFormula(n.Text)
	if err == nil {
		return f, true
	}
	why := err.Error()
	if e, ok := err.(*chemicals.FormulaError); ok {
		why = fmt.Sprintf("%s (character %d)", e.Problem, e.Position)
	}
	l.refuse(n, fmt.Sprintf("%q is no formula: %s", n.Text, why), "a formula such as Ti3AlC2 or Ti1.8Nb0.2AlC",
		nearestFormula(n.Text))
	return f, false
}

// alike is a formula in which capitals and signs that look alike are one.
func alike(formula string) string {
	return strings.NewReplacer("1", "l", "0", "o").Replace(strings.ToLower(formula))
}

// nearestFormula offers a solid that is tabled, where only signs that look alike tell
// its formula from what was written. One letter more or another is another solid.
func nearestFormula(text string) string {
	for _, d := range chemicals.Base().Rows() {
		k := d.ID.Key()
		if f := k.Bare(); k.Is("density") && alike(f) == alike(text) {
			return "did you mean " + f + "?"
		}
	}
	return "write the symbol of each element and how many there are of it"
}
