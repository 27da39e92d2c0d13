package proposed_test

import (
	"encoding/json"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/proposal"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/proposed"
	"etchbound/scaling/levers"
	"etchbound/schemas/edit"
)

// found is a proposal with one change, what it takes away and what it leaves: its findings are
// the first of the review that exceed and that nobody knows.
func found(t *testing.T) *levers.Found {
	t.Helper()
	r := fixture.Review()
	f := levers.Found{Before: r, After: r, Dropped: []string{"measured.td24"}, Tried: 7, Text: []byte("route: changed\n")}
	figs := figure.NewSet(r.Figures)
	for i := range r.Findings {
		x := r.Findings[i]
		of := figs.Get(x.Figure)
		if of == nil || x.Verdict != figure.Exceeds || x.Figure.Case.Failure != "" {
			continue
		}
		if len(f.Bought) == 0 {
			f.Bought = []levers.Bought{{Lever: "time", Moved: []levers.Moved{{Was: x, WasOf: *of}},
				Changes: []proposal.Change{{Edit: edit.Edit{Path: "steps[1].over", To: "90 min"},
					Says: phrase.Of("lever.new.over", "step 2", "90 min")}}}}
			continue
		}
		f.Left = append(f.Left, levers.Left{Finding: x, Figure: *of, Others: 2, Why: phrase.Of("left.hood")})
		return &f
	}
	t.Fatal("too little exceeds in the review")
	return nil
}

// A proposal says what it is, gives the changed file whole, what a change takes away, what it
// leaves with why, and what was taken out; it calls nothing safe and carries no sign-off.
func TestWhatAProposalSays(t *testing.T) {
	var b strings.Builder
	if err := document.Markdown(&b, proposed.Build(found(t), draft.Options{})); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"not tried", "no longer there", "measured.td24", "route: changed", "2 more places"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is not said", want)
		}
	}
	for _, not := range []string{"NaN", "%!", "is safe", "Approved", "Signature:"} {
		if strings.Contains(b.String(), not) {
			t.Errorf("%q is said", not)
		}
	}
}

// What fails is one row, with all that is exceeded then and each limit of it: the same
// advice fifty times is read by nobody.
func TestAFailureIsToldOnce(t *testing.T) {
	f := found(t)
	at := func(quantity, says string) levers.Left {
		l := f.Left[0]
		l.Others, l.Figure = 0, figure.Figure{}
		l.Finding.Figure = figure.ID{Quantity: quantity, Case: figure.Case{Failure: "stirrer_stops"}}
		l.Finding.Limit = limit.Limit{Label: says, Value: 7, Unit: "degC"}
		l.Why = phrase.Of("left.failure")
		return l
	}
	f.Left = []levers.Left{at("heat.temperature_peak", "first"), at("heat.temperature_peak", "second"),
		at("gas.flow", "third")}
	var b strings.Builder
	if err := document.Markdown(&b, proposed.Build(f, draft.Options{})); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "after a stop, stir up slowly"); n != 1 {
		t.Errorf("the advice stands %d times in\n%s", n, b.String())
	}
	for _, want := range []string{"first; ", "second); ", "third)"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is not said in\n%s", want, b.String())
		}
	}
}

// Nothing that a writer can change takes anything away: that is said, and no empty table.
func TestNothingIsProposed(t *testing.T) {
	f := found(t)
	f.Bought, f.Left, f.Dropped = nil, nil, nil
	var b strings.Builder
	if err := document.Markdown(&b, proposed.Build(f, draft.Options{})); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "the route stays as it is written") ||
		strings.Contains(b.String(), "What it takes away") {
		t.Error(b.String())
	}
}

// Programs are told the same: the state, the change, what is gone as null, and what is left.
func TestAProposalForPrograms(t *testing.T) {
	var b strings.Builder
	if err := proposed.JSON(&b, found(t), draft.Options{}); err != nil {
		t.Fatal(err)
	}
	var got struct {
		State   string
		Tried   int
		Changed string `json:"changed_route"`
		Changes []struct {
			Takes []struct {
				ID string
				Is *float64
			} `json:"takes_away"`
		}
		Left []struct{ Others int }
	}
	if err := json.Unmarshal([]byte(b.String()), &got); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(got.State, "not tried") || got.Tried != 7 || got.Changed != "route: changed\n" ||
		len(got.Changes) != 1 || len(got.Changes[0].Takes) != 1 || got.Changes[0].Takes[0].Is != nil ||
		len(got.Left) != 1 || got.Left[0].Others != 2 {
		t.Errorf("%+v of %s", got, b.String())
	}
}
