package chemicals_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// guessed are words of a row that say its value was neither read nor computed exactly.
var guessed = regexp.MustCompile(`(?i)estimat|bracket|not measured|measured it|additiv|added up|sum over|stand-in|` +
	`weak|judged|taken as|\bfit\b|extrapolat|interpolat|between three|middle of|uncertain|recalled|` +
	`density.functional|moved to|mean of calorimetry|no calorimetry|as assumed`)

// What a row says of itself is what its number counts as: nothing that was added up,
// bracketed, fitted or not measured is known.
func TestWhatWasNotMeasuredIsNotKnown(t *testing.T) {
	st := chemicals.Base()
	for _, d := range st.Rows() {
		said := guessed.FindString(d.Note + "; " + d.Where + "; " + d.Valid)
		if said != "" && st.Num(d.ID).Status == working.Known {
			t.Errorf("%s says %q and counts as known (%s)", d.ID, said, d.Status)
		}
		if d.Status == "computed" && d.Where == "" && d.Note == "" {
			t.Errorf("%s is computed and does not say from what", d.ID)
		}
	}
	for _, table := range st.Tables() {
		low, high := table.Range()
		if table.Doubtful() && (table.Read(low) || table.Read((low+high)/2) || table.Read(high)) {
			t.Errorf("%s is %s and counts as read", table.ID, table.Status)
		}
	}
}

// Of each way to come by a number, one of them.
func TestWhatCountsAsKnown(t *testing.T) {
	st := chemicals.Base()
	for id, want := range map[datum.ID]working.Status{
		"weight.Ti":                 working.Known,     // read twice
		"cp.LiF(s)":                 working.Known,     // read
		"hydrogen.impurity.Al":      working.Known,     // a balanced equation
		"enthalpy.LiF(s)":           working.Known,     // a sum of what was read
		"etch_heat.Ti3AlC2":         working.Estimated, // added up and never measured
		"enthalpy.Ti3C2F2(s)":       working.Estimated, // bracketed
		"enthalpy.Nb2AlC(s)":        working.Estimated, // a calculation of the solid
		"cp.TiAl3(s)":               working.Estimated, // a sum over elements
		"heat.impurity.hf.Al":       working.Estimated, // it stands on an enthalpy that was judged
		"complex.ratio_10":          working.Estimated, // of a weaker liquor
		"electrons.In":              working.Estimated, // recalled
		"impurity.unstated":         working.Estimated, // assumed
		"etch_heat_bound.Ti3AlC2":   working.Bound,
		"valence.Ti":                working.Bound,
		"dissolution_water.LiCl(s)": working.Known,
	} {
		if got := st.Num(id).Status; got != want {
			t.Errorf("%s is %v, want %v", id, got, want)
		}
	}
}

// Every number that nobody has read or measured can be moved, or says why not; and no
// reason stands there for nothing.
func TestEveryDoubtHasARangeOrAReason(t *testing.T) {
	st := chemicals.Base()
	used := map[datum.Pattern]bool{"given:*": true} // rows that a route adds
	for _, d := range st.Rows() {
		if !d.Doubtful() || !math.IsNaN(d.Low) {
			continue
		}
		says, rule := chemicals.NoRange(d.ID)
		if used[rule] = true; says == "" {
			t.Errorf("%s is %s, has no range and does not say why", d.ID, d.Status)
		}
		if strings.Contains(says, "leaves it") && d.Value != 0 {
			t.Errorf("%s is %g, and it is said that nothing attacks it", d.ID, d.Value)
		}
	}
	for _, rule := range chemicals.NoRangeRules() {
		if !used[rule] {
			t.Errorf("no_range.csv: %s is the reason of no datum", rule)
		}
	}
	for _, table := range st.Tables() {
		if table.Doubtful() && !movedTable.MatchString(table.Note) {
			t.Errorf("%s is %s and says neither how far it may be off nor what moves it", table.ID, table.Status)
		}
	}
}

// movedTable is what the note of a recalled table says: a share, or a datum that moves it.
var movedTable = regexp.MustCompile(`\d %|moved by [a-z_]+\.[a-z0-9_.]+`)
