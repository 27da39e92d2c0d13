package cards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/aid"
	"etchbound/reports/cards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// section is a sheet of the fixture, with only the figures that are kept.
func section(t *testing.T, key string, keep func(*figure.Figure) bool) document.Section {
	t.Helper()
	r := fixture.Review()
	var figures []figure.Figure
	for i := range r.Figures {
		if keep(&r.Figures[i]) {
			figures = append(figures, r.Figures[i])
		}
	}
	r.Figures = figures
	for _, s := range cards.Sections(draft.New(&r, draft.Options{})) {
		if s.Key == key {
			return s
		}
	}
	t.Fatalf("no sheet %s", key)
	return document.Section{}
}

func all(*figure.Figure) bool { return true }

// The door names hydrogen wherever the review has a figure of it, known or not, and no
// gas where there is none.
func TestTheDoorNamesTheGases(t *testing.T) {
	gas := func(keep func(*figure.Figure) bool) string {
		for _, b := range section(t, "door", keep).Blocks {
			facts, _ := b.(document.Facts)
			for _, p := range facts.Pairs {
				if p.Name == words.Of("door.gas") {
					return p.Value
				}
			}
		}
		return ""
	}
	hydrogen := func(f *figure.Figure) bool { return f.Quantity == "gas.hydrogen.total" }
	label := number.LabelOf("gas.hydrogen.total")
	if got := gas(hydrogen); !strings.Contains(got, label) {
		t.Errorf("%q does not name hydrogen", got)
	}
	if got := gas(func(f *figure.Figure) bool { return !hydrogen(f) }); got == "" || strings.Contains(got, label) {
		t.Errorf("%q", got)
	}
}

// The door names a poisonous gas that a step gives off as written, once, known or not, and none
// that only a mistake would bring.
func TestTheDoorNamesPoisonousGases(t *testing.T) {
	of := func(step int, agent, failure string, v float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: "gas.evolved.bound", Place: figure.Step(step), Agent: agent,
			Case: figure.Case{Failure: failure}}, Value: working.Exact("x", "L", v, "as written")}
		f.SetRange(v, v)
		return f
	}
	r := hazards.Review{Case: route.Case{Route: &route.Route{}}, Figures: []figure.Figure{of(1, "chlorine", "", 0.4),
		of(2, "chlorine", "", 0.1), of(2, "phosgene", "all_at_once", 1), of(2, "ammonia", "", 0)}}
	for _, s := range cards.Sections(draft.New(&r, draft.Options{})) {
		if got := fmt.Sprint(s.Blocks); s.Key == "door" && (strings.Count(got, "chlorine") != 1 ||
			strings.Contains(got, "phosgene") || strings.Contains(got, "ammonia")) {
			t.Error(got)
		}
	}
}

// The sheet at the bench has first aid before any step, and a row to tick for every step.
func TestTheBenchBeginsWithFirstAid(t *testing.T) {
	r := fixture.Review()
	first := aid.Of(draft.New(&r, draft.Options{})).FirstAid()
	if len(first) == 0 {
		t.Fatal("no first aid")
	}
	aided, steps := -1, -1
	for i, b := range section(t, "bench", all).Blocks {
		if fmt.Sprint(b) == fmt.Sprint(first[0]) {
			aided = i
		}
		if table, ok := b.(document.Table); ok && table.Caption == words.Of("bench.caption") {
			if steps = i; len(table.Rows) != len(r.Case.Route.Steps) {
				t.Errorf("%d rows of %d steps", len(table.Rows), len(r.Case.Route.Steps))
			}
		}
	}
	if aided < 0 || steps < aided {
		t.Errorf("first aid is block %d, the steps block %d", aided, steps)
	}
}

// Every sheet that leaves the desk defers to the people who decide.
func TestSheetsDefer(t *testing.T) {
	for _, key := range []string{"door", "bench"} {
		blocks := section(t, key, all).Blocks
		if last, ok := blocks[len(blocks)-1].(document.Paragraph); !ok || last.Text != words.Of("deference.short") {
			t.Errorf("%s ends with %v", key, blocks[len(blocks)-1])
		}
	}
}
