package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// locally is a set of limits of a limits file, of every limit of a review one with
// the same id, far looser.
func locally(rv *hazards.Review) *limit.Set {
	out, seen := &limit.Set{}, map[string]bool{}
	for i := range rv.Findings {
		f := &rv.Findings[i]
		if seen[f.Limit.ID] {
			continue
		}
		seen[f.Limit.ID] = true
		q, _ := figure.Lookup(f.Figure.Quantity)
		out.Limits = append(out.Limits, limit.Limit{Key: limit.Named(limit.Local, f.Limit.ID), Quantity: q.Name,
			Label: "house rule", Value: 1e9, Unit: q.Unit, Document: "house rules", Status: "stated"})
	}
	return out
}

// once fails where two figures or two findings of a review have one id, or one text.
func once(t interface{ Fatalf(string, ...any) }, rv *hazards.Review, yaml string) {
	figures, findings := map[string]bool{}, map[string]bool{}
	for i := range rv.Figures {
		if id := rv.Figures[i].ID.String(); figures[id] {
			t.Fatalf("two figures are %s\n%s", id, yaml)
		} else {
			figures[id] = true
		}
	}
	for i := range rv.Findings {
		if id := rv.Findings[i].ID().String(); findings[id] {
			t.Fatalf("two findings are %s\n%s", id, yaml)
		} else {
			findings[id] = true
		}
	}
}

// Whatever a limits file calls its limits, every figure and every finding has an id
// of its own, and what the file does not say stays as it was, words included.
func TestIDsAreUnique(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		yaml := (&drawing{t: t}).recipe().yaml(plainly)
		c := newCase(tb, load(tb, yaml))
		rv := must(tb, c)
		once(t, &rv, yaml)
		notLessThanNothing(t, &rv, yaml)
		c.Limits = c.Limits.With(locally(&rv))
		local := must(tb, c)
		once(t, &local, yaml)
		unmoved(t, &rv, &local, yaml)
	})
}

// notLessThanNothing fails where an amount, a time or a flow of a figure is below zero: of a
// difference of two alone can that be.
func notLessThanNothing(t interface{ Fatalf(string, ...any) }, rv *hazards.Review, yaml string) {
	amounts := []string{"g", "kg", "mol", "mL", "L", "min", "h", "d", "L/min", "m3/h", "ppm", "mg/min", "mol/L",
		"wt%", "W"}
	for i := range rv.Figures {
		f := &rv.Figures[i]
		if slices.Contains(amounts, f.Value.Unit) && (f.Value.V < 0 || f.Low().V < 0) {
			t.Fatalf("%s is %g %s, at least %g\n%s", f.ID, f.Value.V, f.Value.Unit, f.Low().V, yaml)
		}
	}
}

// unmoved fails where a finding of a review is another in one with more limits, or one
// of the others has picked up its words.
func unmoved(t interface{ Fatalf(string, ...any) }, rv, more *hazards.Review, yaml string) {
	at := map[figure.FindingID]*figure.Finding{}
	for i := range more.Findings {
		f := &more.Findings[i]
		at[f.ID()] = f
		if f.Limit.Origin == limit.Local && f.Verdict == figure.Exceeds && !strings.HasPrefix(f.Figure.Quantity, "air.") &&
			f.Says.Key != "finding.site" {
			t.Fatalf("%s says %q\n%s", f.ID(), words.Say(f.Says), yaml)
		}
	}
	for i := range rv.Findings {
		f := &rv.Findings[i]
		if g := at[f.ID()]; g != nil && (g.Verdict != f.Verdict || !g.Says.Equal(f.Says)) || g == nil &&
			f.Verdict != figure.UnknownVerdict {
			t.Fatalf("%s is not as it was\n%s", f.ID(), yaml)
		}
	}
}

// A vial that is heated shut and holds powder that was moved to it unfinished has a
// pressure hot and one cold: each is a figure of its own, and the worse of them
// stands for both.
func TestMovedUnfinishedAndHeated(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, head+"precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+"}\n"+`places:
  pot: {kind: vessel, closure: vented, capacity: 1 L, material: PTFE}
  vial: {kind: vessel, closure: closed, capacity: 100 mL, rating: 5 MPa, relief: 4.5 MPa}
steps:
`+charges(hf10)+addsIt+`  - {do: hold, in: pot, time: 24 h, temperature: 20 degC}
  - {do: transfer, in: pot, into: vial}
  - {do: heat_closed, in: vial, time: 5 h, temperature: 120 degC}
`)
	once(t, &rv, "")
	worst := figureOf(&rv, "gas.closed.pressure@vial:moved_unfinished")
	hot := figureOf(&rv, "gas.closed.pressure@vial:heated,moved_unfinished")
	cold := figureOf(&rv, "gas.closed.pressure@vial:cold,moved_unfinished")
	if worst == nil || hot == nil || cold == nil || worst.Of() != hot.ID {
		t.Fatalf("worst %v, hot %v, cold %v", worst, hot, cold)
	}
}

// The finding of the temperature when cooling fails names the law it was judged by.
func TestAFindingNamesWhatItWasJudgedBy(t *testing.T) {
	long.Only(t)
	for name, rv := range bundledReviews(t) {
		for i := range rv.Findings {
			f := &rv.Findings[i]
			if f.Figure.Quantity != "heat.mtsr" || f.Margin != f.Margin {
				continue
			}
			judged := f.Figure
			if !f.Of.IsZero() {
				judged = f.Of
			}
			if got := f.Limit.Value - figureOf(&rv, judged.String()).High().V; !within(got, f.Margin, 1e-6) {
				t.Errorf("%s: %s has margin %g, %s leaves %g", name, f.ID(), f.Margin, judged, got)
			}
		}
	}
}

// What is missing always says what it is and what settles it, with its object: over
// any route, and with every fact that can be left out left out.
func TestMissingThingsSayWhatTheyAre(t *testing.T) {
	costly(t, func(tb testing.TB, t *rapid.T) {
		r := (&drawing{t: t}).recipe()
		for _, o := range r.leavable() {
			if rapid.Bool().Draw(t, "left out") {
				o.from.drop(o.key)
			}
		}
		yaml := r.yaml(plainly)
		left, _, err := route.Load("check.yaml", strings.NewReader(yaml))
		if err != nil || left == nil {
			return // refused
		}
		rv := must(tb, newCase(tb, left))
		for _, u := range rv.Unknown {
			saysWhat(t, u.Missing, yaml)
		}
		for i := range rv.Sheet.Lines {
			for _, m := range rv.Sheet.Lines[i].Missing {
				saysWhat(t, m, yaml)
			}
		}
	})
}

func saysWhat(t interface{ Fatalf(string, ...any) }, m working.Missing, yaml string) {
	text, settles := words.Ask(m)
	for _, s := range []string{words.Name(m), text, settles} {
		if s == "" || strings.ContainsAny(s, "{}") || containsAny(s, "NaN", "%!", "steps[", "places.", "is not stated  ") {
			t.Fatalf("%+v: %q\n%s", m, s, yaml)
		}
	}
	if m.Kind == working.NothingIn || m.Kind == working.NotGiven && m.Subject == "" || strings.HasPrefix(text, " ") {
		t.Fatalf("%+v: %q\n%s", m, text, yaml)
	}
}
