package review

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// The limits of a gas that comes off a melt or an electrode, with no liquor to give it off as
// vapour, are listed beside those of vapours, each agent once.
func TestGasesWithoutALiquorHaveTheirLimitsListed(t *testing.T) {
	of := func(quantity, agent string) figure.Figure {
		return figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.Step(1), Agent: agent}}
	}
	zone := "air.breathing_zone"
	r := &hazards.Review{Figures: []figure.Figure{of(zone, "titanium_tetrachloride"), of(breathedAs, "hf"),
		of(zone, "hf"), of(zone, "chlorine")}}
	b := &builder{Draft: draft.New(r, draft.Options{})}
	if got := strings.Join(b.agentsOfTheAir(), " "); got != "titanium_tetrachloride hf chlorine" {
		t.Errorf("limits are listed of %s", got)
	}
	var said strings.Builder
	d := document.Document{Sections: []document.Section{{Blocks: b.airLimits()}}}
	if err := document.Markdown(&said, d); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"titanium tetrachloride", "of hydrogen chloride that it makes", "chlorine"} {
		if !strings.Contains(said.String(), want) {
			t.Errorf("the limits do not say %q", want)
		}
	}
}

// The picture of a step shows what gives most of an agent, drops and boiling too, and says
// where something of it is not known; what fails is drawn elsewhere.
func TestThePictureShowsWhatGivesMost(t *testing.T) {
	of := func(step int, kase figure.Case, high float64) figure.Figure {
		v := working.Exact("C", "ppm", high, "as written")
		if math.IsNaN(high) {
			v = working.Absent("C", "ppm", working.Lacks(working.NotGiven, "steps[0].temperature"))
		}
		f := figure.Figure{ID: figure.ID{Quantity: "air.breathing_zone", Place: figure.Step(step), Agent: "hf",
			Case: kase}, Value: v}
		f.SetRange(0, high)
		return f
	}
	mist, boils := figure.By("mist"), figure.By(figure.Boiling)
	all := []figure.Figure{of(2, figure.Case{}, 1), of(2, mist, 115), of(2, boils, 3), of(3, figure.Case{}, math.NaN()),
		of(3, mist, 4), of(4, figure.Case{}, math.NaN()), of(2, figure.If("hood_fails"), 900)}
	agents, at := breathedMost(all)
	if len(agents) != 1 || len(at["hf"]) != 3 {
		t.Fatalf("%v, %v", agents, at)
	}
	for i, want := range []struct {
		most float64 // 0: nothing is known
		lost bool
	}{{115, false}, {4, true}, {0, true}} {
		x := at["hf"][i]
		most := 0.0
		if x.most != nil {
			most = x.most.High().V
		}
		if most != want.most || x.lost != want.lost {
			t.Errorf("step %d: %g, not all known %v; want %+v", x.step, most, x.lost, want)
		}
	}
}
