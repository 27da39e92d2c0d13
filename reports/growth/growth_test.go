package growth_test

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/growth"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
	"etchbound/schemas/quantity"
)

// crossed is a route that meets a limit at some grams.
func crossed(already bool, withheld ...figure.FindingID) *scaling.Growth {
	of := figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(2)}
	return &scaling.Growth{Case: fixture.Review().Case, From: quantity.Of(1, "g"), To: quantity.Of(100, "g"),
		Withheld: withheld, Crossings: []scaling.Crossing{{Figure: of, Turns: figure.Exceeds, Grams: 12.5, Already: already,
			Limit: limit.Limit{Key: limit.Key{Origin: limit.Local, ID: "most"}, Quantity: of.Quantity, Label: "a limit",
				Document: "house rules", Value: 50, Unit: "K", Status: "assumed"}}}}
}

func warnings(g *scaling.Growth) string {
	out := ""
	for _, b := range growth.Build(g, scaling.Split{}, draft.Options{}).Sections[0].Blocks {
		if p, ok := b.(document.Paragraph); ok && p.Tone == document.Warning {
			out += p.Text + "\n"
		}
	}
	return out
}

// The batch that meets the first known limit is told, and what could come before it because
// it is not known, by name; what is not known only above it is not.
func TestTheFirstLimitNamesWhatCouldComeBefore(t *testing.T) {
	if got := warnings(crossed(false)); !strings.Contains(got, "12.5 g") || strings.Contains(got, "Withheld") {
		t.Errorf("%q, want 12.5 g in it and nothing withheld", got)
	}
	for at, before := range map[float64]bool{5: true, 50: false} {
		of := figure.ID{Quantity: "gas.suck_back", Place: figure.Step(2)}
		g := crossed(false)
		other := scaling.Crossing{Figure: of, Turns: figure.UnknownVerdict, Grams: at, Limit: g.Crossings[0].Limit}
		g.Crossings, g.Withheld = append(g.Crossings, other), []figure.FindingID{other.ID()}
		if got := warnings(g); !strings.Contains(got, "12.5 g") ||
			strings.Contains(got, words.Of("growth.before", number.LabelOf("gas.suck_back"))[:40]) != before {
			t.Errorf("not known at %g g: %q", at, got)
		}
	}
	if none := warnings(&scaling.Growth{Case: fixture.Review().Case, To: quantity.Of(100, "g")}); !strings.Contains(none,
		words.Of("growth.none", "100.0 g")) && !strings.Contains(none, words.Of("growth.none", "100 g")) {
		t.Errorf("%q, want that nothing is met up to 100 g", none)
	}
}

// What is exceeded at the smallest batch is told as that, and nothing says after it that no limit
// is exceeded; a vessel that runs over first is told instead, in no stars.
func TestWhatIsExceededAtOnceIsNotDenied(t *testing.T) {
	got := warnings(crossed(true))
	if !strings.Contains(got, "exceeded already: Adiabatic temperature rise (a limit)") ||
		!strings.Contains(got, "Of what is not exceeded there") || strings.Contains(got, "No assessed limit") {
		t.Errorf("it reads %q", got)
	}
	g := crossed(true)
	over := g.Crossings[0]
	over.Figure, over.Grams = figure.ID{Quantity: "vessel.content", Place: figure.At("pot")}, 7
	over.Already = false
	g.Overflows = &over
	if got := warnings(g); !strings.Contains(got, "Above 7 g, pot runs over") || strings.Contains(got, "*") {
		t.Errorf("it reads %q", got)
	}
}

// What is done as written is told first, and what would be exceeded if something failed after it
// and as that.
func TestWhatFailsIsToldAfterWhatIsWritten(t *testing.T) {
	g := crossed(true)
	fails := g.Crossings[0]
	fails.Figure.Case = figure.Case{Failure: "cooling_fails"}
	fails.Figure.Quantity = "heat.temperature_peak"
	g.Crossings = append([]scaling.Crossing{fails}, g.Crossings...)
	if got := warnings(g); !strings.Contains(got, "exceeded already: Adiabatic temperature rise (a limit). If something "+
		"fails, this is exceeded there too: Highest temperature (a limit).") {
		t.Errorf("it reads %q", got)
	}
	for _, id := range []figure.ID{{Quantity: "heat.mtsr", Place: figure.Step(2)},
		{Quantity: "air.room_peak", Place: figure.Spill}, {Quantity: "air.plume", Place: figure.Yard}} {
		g.Crossings[0].Figure = id
		if got := warnings(g); !strings.Contains(got, "exceeded already: Adiabatic temperature rise (a limit). If something "+
			"fails, this is exceeded there too: "+number.LabelOf(id.Quantity)) {
			t.Errorf("%s: it reads %q", id, got)
		}
	}
	g.Crossings[0].Figure = fails.Figure
	g.Crossings = g.Crossings[:1]
	if got := warnings(g); !strings.Contains(got, "exceeded if something fails: Highest temperature (a limit).") ||
		strings.Contains(got, "exceeded already") {
		t.Errorf("it reads %q", got)
	}
}

// Times of addition of a large batch and of small ones are in hours and days, and kilograms in
// kilograms: 2960 min are 2.056 d, 13200 min 9.17 d (by hand).
func TestALargeBatchIsToldAsPeopleTellIt(t *testing.T) {
	of := func(q, unit string, v float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: q}, Value: working.Exact("x", unit, v, "as written")}
		f.SetRange(v, v)
		return f
	}
	took, acid := "heat.addition_time.required", "fluoride.hf_equivalent"
	s := scaling.Split{Pots: 10, Rows: []scaling.SplitRow{
		{Quantity: took, Large: of(took, "min", 2960), One: of(took, "min", 90), All: 13200, Adds: true},
		{Quantity: acid, Large: of(acid, "g as HF", 42800), One: of(acid, "g as HF", 428), All: 4280, Adds: true}}}
	var got []string
	for _, sec := range growth.Build(crossed(true), s, draft.Options{}).Sections {
		for _, b := range sec.Blocks {
			if table, ok := b.(document.Table); ok && len(table.Rows) > 2 && len(table.Rows[0]) == 4 {
				for _, row := range table.Rows[:2] {
					got = append(got, row[1].Text+"|"+row[2].Text+"|"+row[3].Text)
				}
			}
		}
	}
	if want := []string{"2.06 d|90 min|9.17 d", "42.8 kg as HF|428 g as HF|4.28 kg as HF"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Each crossing is a row, with the batch to nine digits.
func TestRowsOfAGrowingRoute(t *testing.T) {
	g := crossed(true)
	g.Crossings[0].Grams = 12.3456789
	var b strings.Builder
	if err := growth.CSV(&b, g); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 2 {
		t.Fatal(rows, err)
	}
	if x := rows[1]; x[0] != "12.3456789" || x[2] != figure.Exceeds.String() || x[3] != "false" || x[4] != "true" ||
		x[5] != "heat.adiabatic_rise@2" || x[8] != "50" {
		t.Errorf("%q", x)
	}
}
