package hazards

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Make reviews a case: the traced centre, the swings and corners that give
// each figure its range, then the verdicts. Err of the assessment is returned
// as it is.
func Make(c route.Case) (Review, error) {
	w := working.NewSheet()
	a := Assess(c, w)
	if a.Err != nil {
		return Review{Case: c}, a.Err
	}
	for i := range a.Figures {
		a.Figures[i].Value = w.Keep(a.Figures[i].Value)
	}
	used := read(c.Store, w)
	r := ranges(c, variables(used), a.Figures, a.Courses)
	out := Review{Case: c, Sheet: w, Walk: a.Walk, Runs: a.Runs, Courses: a.Courses, Used: used, Applied: c.Applied}
	out.Assumptions = r.assumptions()
	widenClasses(c, &a.Walk, a.Figures)
	out.Figures = bare(withoutTraces(a.Figures))
	out.Findings = judge(c, out.Figures, &a.Walk)
	out.NotAssessed = NotAssessed()
	out.Warnings = append(append([]string(nil), c.Route.Notices...), a.Warnings...)
	out.Warnings = append(out.Warnings, c.Limits.Notices...)
	if c.Site == nil || c.Site.Jurisdiction == "" {
		out.Warnings = append(out.Warnings, "No jurisdiction is stated in a site file: the exposure limits of every one held here count.")
	}
	out.Warnings = append(out.Warnings, tooCold(c)...)
	if c.Brief {
		out.Warnings = append(out.Warnings, "What happens when something fails is left out of a brief review.")
	}
	out.Unknown = unknown(&out)
	out.Holds = holds(&out)
	return out, nil
}

// tooCold are the jackets that a route wants colder than the shared cooling of the
// site is.
func tooCold(c route.Case) []string {
	if c.Site == nil || !c.Site.CoolingPoint.Set {
		return nil
	}
	var out []string
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		if k := p.Cooling; k != nil && k.Kind == "jacket" && k.Temperature.Set && k.Temperature.SI < c.Site.CoolingPoint.SI {
			out = append(out, fmt.Sprintf("The jacket of %s is written at %s, and the shared cooling of the site is at %s: it gets no colder than that, so what is worked out here is too cold.", p.Key, k.Temperature.Text, c.Site.CoolingPoint.Text))
		}
	}
	return out
}

// read lists the rows of the store that the traced run used, in its order.
func read(st *chemicals.Store, w *working.Sheet) []chemicals.Datum {
	seen := map[string]bool{}
	var out []chemicals.Datum
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Kind != working.KindDatum || seen[l.Ref] {
			continue
		}
		seen[l.Ref] = true
		if d, ok := st.Row(l.Ref); ok {
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, func(a, b chemicals.Datum) int { return a.Index - b.Index })
	return out
}

// trace is the share of the largest fluoride of the route below which that of
// another place is not reported: ideal dilution says nothing about so little.
const trace = 1e-6

// Vapour of less than this over a liquor, or less that leaves it, is nothing a
// person or an instrument could tell: ppm, mg/min and shares of a limit.
const traceOver, traceLeaving, traceShare = 1e-3, 1e-6, 1e-6

// withoutTraces drops the fluoride figures of places that hold a trace at the
// most, and the air of steps that give off no more. It looks at whole ranges, so
// a figure does not come and go within one.
func withoutTraces(figs []figure.Figure) []figure.Figure {
	trace := traces(figs)
	return slices.DeleteFunc(figs, func(f figure.Figure) bool { return trace(&f) })
}

// traces tells which figures are of traces, by the whole of them.
func traces(figs []figure.Figure) func(*figure.Figure) bool {
	most, high, nothing := 0.0, map[string]float64{}, map[[2]string]bool{}
	for i := range figs {
		switch f := &figs[i]; f.Quantity {
		case "fluoride.total":
			high[f.Place] = f.High.V
			most = max(most, f.High.V)
		case "air.emission":
			nothing[[2]string{f.Place, f.Agent}] = f.High.V < traceLeaving
		}
	}
	return func(f *figure.Figure) bool {
		switch f.Quantity {
		case "air.saturated":
			return f.High.V < traceOver
		case "air.additive":
			return f.High.V < traceShare
		}
		return strings.HasPrefix(f.Quantity, "fluoride.") && high[f.Place] < trace*most ||
			strings.HasPrefix(f.Quantity, "air.") && nothing[[2]string{f.Place, f.Agent}]
	}
}

// NotAssessed lists the catalogued quantities no model covers yet.
func NotAssessed() []string {
	var out []string
	for _, q := range figure.Catalogue() {
		if !q.Built {
			out = append(out, q.Name)
		}
	}
	return out
}
