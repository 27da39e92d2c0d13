package verdict

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// ranged is a figure of the rise, whose dangerous end is high, or of the oxygen
// of air, whose dangerous end is low.
func ranged(quantity string, low, mid, high float64, s working.Status) *figure.Figure {
	num := func(v float64) working.Num {
		if math.IsNaN(v) {
			return working.Absent("x", "1")
		}
		return working.Exact("x", "1", v, "x").Worse(s)
	}
	f := &figure.Figure{ID: figure.ID{Quantity: quantity}, Value: num(mid)}
	f.SetRange(low, high)
	return f
}

func TestSurely(t *testing.T) {
	const rise, oxygen = "heat.adiabatic_rise", "air.oxygen"
	none := math.NaN()
	for _, c := range []struct {
		name           string
		quantity       string
		low, mid, high float64
		status         working.Status
		limit          float64
		verdict        figure.Verdict
		want           figure.Surety
	}{
		{"all of it over", rise, 60, 70, 80, working.Known, 50, figure.Exceeds, figure.WholeRange},
		{"best estimate over", rise, 40, 70, 80, working.Estimated, 50, figure.Exceeds, figure.BestEstimate},
		{"only the end over", rise, 40, 45, 80, working.Known, 50, figure.Exceeds, figure.DangerousEnd},
		{"a bound has no best estimate", rise, 40, 70, 80, working.Bound, 50, figure.Exceeds, figure.NotSaid},
		{"only the end of a bound", rise, 40, 45, 80, working.Bound, 50, figure.Exceeds, figure.NotSaid},
		{"all of a bound over", rise, 60, 70, 80, working.Bound, 50, figure.Exceeds, figure.WholeRange},
		{"tame end unknown", rise, none, 70, 80, working.Known, 50, figure.Exceeds, figure.BestEstimate},
		{"only the end known", rise, none, none, 80, working.Unknown, 50, figure.Exceeds, figure.NotSaid},
		{"near by its end", rise, 10, 20, 40, working.Known, 50, figure.Near, figure.DangerousEnd},
		{"near all along", rise, 30, 35, 40, working.Known, 50, figure.Near, figure.WholeRange},
		{"within is of all", rise, 1, 2, 3, working.Bound, 50, figure.Within, figure.WholeRange},
		{"unknown figure", rise, none, none, none, working.Unknown, 50, figure.UnknownVerdict, figure.NotSaid},
		{"exceeds whatever it is", rise, none, none, none, working.Unknown, 50, figure.Exceeds, figure.NotSaid},
		{"unknown limit", rise, 60, 70, 80, working.Known, none, figure.UnknownVerdict, figure.NotSaid},
		{"danger is low, all of it", oxygen, 15, 16, 17, working.Known, 19.5, figure.Exceeds, figure.WholeRange},
		{"danger is low, the end", oxygen, 15, 20, 20.9, working.Known, 19.5, figure.Exceeds, figure.DangerousEnd},
		{"danger is low, best", oxygen, 15, 18, 20.9, working.Known, 19.5, figure.Exceeds, figure.BestEstimate},
	} {
		f := ranged(c.quantity, c.low, c.mid, c.high, c.status)
		if got := surely(f, &limit.Limit{Value: c.limit, Unit: "1"}, c.verdict); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// Where the dangerous end is not known, what is known can be over the limit all the same; and no
// wall holds what hot liquid fills.
func TestWhatIsKnownCanExceed(t *testing.T) {
	none := math.NaN()
	for _, c := range []struct {
		name           string
		quantity       string
		low, mid, high float64
		limit          float64
		want           figure.Verdict
	}{
		{"over at its tame end", "heat.adiabatic_rise", 60, 70, none, 50, figure.Exceeds},
		{"over at its best estimate alone", "heat.adiabatic_rise", 40, 70, none, 50, figure.UnknownVerdict},
		{"tame end not known either", "heat.adiabatic_rise", none, 70, none, 50, figure.UnknownVerdict},
		{"under it as far as known", "heat.adiabatic_rise", 10, 20, none, 50, figure.UnknownVerdict},
		{"danger is low", "air.oxygen", none, 16, 17, 19.5, figure.Exceeds},
		{"limit not known", "heat.adiabatic_rise", 60, 70, none, none, figure.UnknownVerdict},
	} {
		f := ranged(c.quantity, c.low, c.mid, c.high, working.Known)
		got := compared(&subject{figs: figure.NewSet(nil), f: f}, &limit.Limit{Value: c.limit, Unit: "1"})
		if got.Verdict != c.want {
			t.Errorf("%s: %v, want %v", c.name, got.Verdict, c.want)
		}
	}
	p := ranged("gas.closed.pressure", none, none, none, working.Unknown)
	p.Value = working.Absent("p", "kPa gauge", working.Lacks("no_space_hot", "jar"))
	if got := compared(&subject{f: p}, &limit.Limit{Value: 1000, Unit: "kPa gauge"}); got.Verdict != figure.Exceeds {
		t.Errorf("hot liquid fills a rated jar: %v", got.Verdict)
	}
}

// Laws that nobody has measured are a bracket: none of them is a best estimate.
func TestALawNobodyMeasuredHasNoBestEstimate(t *testing.T) {
	over := &limit.Limit{Value: 50, Unit: "1"}
	for _, c := range []struct {
		of   figure.Case
		mid  float64
		low  float64
		want figure.Surety
	}{
		{figure.By("self_accelerating"), 70, 40, figure.NotSaid},
		{figure.By("early_peak"), 45, 40, figure.NotSaid},
		{figure.By("instantaneous"), 70, 60, figure.WholeRange},
		{figure.If("cooling_lost"), 70, 40, figure.NotSaid},
		{figure.By("measured"), 70, 40, figure.BestEstimate},
		{figure.By("measured"), 45, 40, figure.DangerousEnd},
	} {
		f := ranged("heat.adiabatic_rise", c.low, c.mid, 80, working.Estimated)
		f.Case = c.of
		if got := surely(f, over, figure.Exceeds); got != c.want {
			t.Errorf("%s, %g to 80: %v, want %v", c.of, c.low, got, c.want)
		}
	}
}
