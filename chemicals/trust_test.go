package chemicals_test

import (
	"regexp"
	"testing"

	"etchbound/chemicals"
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
	for id, want := range map[string]working.Status{
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
