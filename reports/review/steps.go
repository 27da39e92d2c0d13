package review

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// aStep is a picture of some quantities step by step.
type aStep struct {
	id, title, axis string
	quantities      []string
}

var (
	heatByStep = aStep{"heat-by-step", "bars.heat", "bars.heat_axis",
		[]string{"heat.etch.total", "heat.mix.total", "neutralise.heat"}}
	gasByStep = aStep{"gas-by-step", "bars.gas", "bars.gas_axis",
		[]string{"gas.hydrogen.total", "neutralise.carbon_dioxide", "neutralise.ammonia"}}
)

// stepBars draw what each step gives of some quantities, with the range in words. Bars
// below zero take it up.
func (b *builder) stepBars(of *aStep) []document.Block {
	c := chart.Bars{ID: of.id, Title: words.Of(of.title), Alt: words.Of(of.title)}
	t := document.Table{Columns: document.Columns("col.step", "col.figure", "col.value_range")}
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		kind := slices.Index(of.quantities, f.Quantity)
		step, ok := f.Place.Step()
		if kind < 0 || !ok || f.Value.Unknown() || f.Case.Failure != "" || !f.Of().IsZero() || f.Value.V == 0 {
			continue
		}
		c.X.Unit = number.UnitText(number.UnitOf(f.Quantity))
		name := number.LabelOf(f.Quantity)
		c.Kinds, kind = named(c.Kinds, name)
		text := b.ValueAndRange(f)
		c.Rows = append(c.Rows, chart.Row{Label: words.Of("bars.step", step), Text: text, Parts: []chart.Part{{
			From: min(0, f.Value.V), To: max(0, f.Value.V), Mark: math.NaN(), Kind: kind}}})
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(step), name, text))
	}
	slices.SortStableFunc(t.Rows, func(x, y []document.Cell) int { return numbered(x[0].Text) - numbered(y[0].Text) })
	slices.SortStableFunc(c.Rows, func(x, y chart.Row) int { return numbered(x.Label) - numbered(y.Label) })
	c.X.Label = words.Of(of.axis)
	return bars(c, t)
}

// numbered is the number at the end of a text.
func numbered(s string) int { n, _ := strconv.Atoi(s[strings.LastIndexByte(s, ' ')+1:]); return n }

// named is the number of a kind, put behind the others where it is new.
func named(kinds []string, name string) ([]string, int) {
	if i := slices.Index(kinds, name); i >= 0 {
		return kinds, i
	}
	return append(kinds, name), min(len(kinds), chart.Shades-1)
}

// fluorine draws in which places the fluorine is after each step, as F.
func (b *builder) fluorine() []document.Block {
	where := b.Where("F")
	if len(where) == 0 || len(where) > chart.Shades {
		return nil
	}
	unit := number.UnitText(number.UnitOf("fluoride.total"))
	c := chart.Bars{ID: "fluorine", Title: words.Of("bars.fluorine"), Alt: words.Of("bars.fluorine"),
		X: chart.Axis{Label: words.Of("bars.fluorine_axis"), Unit: unit}}
	t := document.Table{Columns: document.Columns("col.step")}
	for _, h := range where {
		c.Kinds = append(c.Kinds, h.Place)
		t.Columns = append(t.Columns, document.Column{Text: h.Place + ", " + unit, Right: true})
	}
	for i := range b.Review.Walk.Steps {
		s := &b.Review.Case.Route.Steps[b.Review.Walk.Steps[i].Number-1]
		row := chart.Row{Label: words.Of("bars.done", s.Number, draft.Verb(s))}
		cells, from := document.Row(strconv.Itoa(s.Number)), 0.0
		for k, h := range where {
			g := max(draft.Tiny(h.Moles[i])*draft.MolarFluorine, 0)
			cells = append(cells, document.Text(number.Nearest(g, 3)))
			if g > 0 {
				row.Parts = append(row.Parts, chart.Part{From: from, To: from + g, Mark: math.NaN(), Kind: k})
				from += g
			}
		}
		c.Rows, t.Rows = append(c.Rows, row), append(t.Rows, cells)
	}
	return bars(c, t)
}

// breathedBars draw for each agent what is breathed near each step, low to high, on a
// logarithmic axis with the limits that are held.
func (b *builder) breathedBars() []document.Block {
	var out []document.Block
	agents, at := breathedMost(b.Review.Figures)
	for _, a := range agents {
		out = append(out, b.breathedBy(a, at[a])...)
	}
	return out
}

// breath is what is breathed near a step: the most that is known, nil where nothing is, and
// whether something is not known.
type breath struct {
	step int
	most *figure.Figure
	lost bool
}

// breathedMost is for each agent what is breathed at each step as the route is written: by
// vapour, by drops or boiling, whichever comes to most at the end where danger lies. An agent
// of which no step has a number is left out.
func breathedMost(all []figure.Figure) (agents []string, at map[string][]breath) {
	at = map[string][]breath{}
	for i := range all {
		f := &all[i]
		step, ok := f.Place.Step()
		if f.Quantity != "air.breathing_zone" || !ok || !f.Of().IsZero() || f.Agent == "" || f.Case.Failure != "" {
			continue
		}
		j := slices.IndexFunc(at[f.Agent], func(x breath) bool { return x.step == step })
		if j < 0 {
			j = len(at[f.Agent])
			at[f.Agent] = append(at[f.Agent], breath{step: step})
		}
		switch x := &at[f.Agent][j]; {
		case f.Value.Unknown() || f.High().Unknown():
			x.lost = true
		case x.most == nil || f.High().V > x.most.High().V:
			x.most = f
		}
		if !slices.Contains(agents, f.Agent) {
			agents = append(agents, f.Agent)
		}
	}
	agents = slices.DeleteFunc(agents, func(a string) bool {
		return !slices.ContainsFunc(at[a], func(x breath) bool { return x.most != nil && x.most.High().V > 0 })
	})
	return agents, at
}

func (b *builder) breathedBy(agent string, at []breath) []document.Block {
	title := words.Of("bars.air", draft.AgentName("air.breathing_zone", agent))
	c := chart.Bars{ID: "air-by-step-" + agent, Title: title, Alt: title,
		X: chart.Axis{Label: words.Of("bars.air_axis"), Unit: "ppm", Log: true}}
	for _, l := range b.breathed(agent) {
		c.Lines = append(c.Lines, chart.Line{Y: l.Y, Label: words.Of("bars.limit", number.Nearest(l.Y, 3), l.Label)})
	}
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		local := chart.Line{Y: f.Limit.Value, Label: b.LimitText(&f.Limit, f.Figure)}
		if f.Figure.Quantity == "air.breathing_zone" && f.Figure.Agent == agent && f.Limit.Origin == limit.Local &&
			!slices.ContainsFunc(c.Lines, func(l chart.Line) bool { return l.Y == local.Y }) {
			c.Lines = append(c.Lines, local)
		}
	}
	t := document.Table{Columns: document.Columns("col.step", "col.value_range")}
	lowest := math.Inf(1)
	for _, l := range c.Lines {
		lowest = min(lowest, l.Y)
	}
	for _, x := range at {
		if x.most != nil && x.most.High().V > 0 {
			lowest = min(lowest, x.most.High().V)
		}
	}
	floor := lowest / 100
	reach := func(v float64) float64 { return max(v, floor) }
	for _, x := range at {
		row := chart.Row{Label: words.Of("bars.step", x.step)}
		says := words.Of("bars.unknown")
		if f := x.most; f != nil {
			says = b.ValueAndRange(f)
			if f.High().V > 0 {
				row.Parts = []chart.Part{{From: reach(f.Low().V), To: reach(f.High().V), Mark: reach(f.Value.V), Kind: 1}}
			}
			if x.lost {
				row.Label = words.Of("bars.step_in_part", x.step)
				says += "; " + words.Of("bars.more_unknown")
			}
		} else {
			row.Text = says
		}
		c.Rows = append(c.Rows, row)
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(x.step), says))
	}
	return bars(c, t)
}

// fed draws what goes in and when, step by step, on an axis that is broken where the
// powder is in.
func (b *builder) fed() []document.Block {
	c := chart.Bars{ID: "fed", Title: words.Of("bars.fed"), Alt: words.Of("bars.fed"),
		Kinds: []string{words.Of("bars.goes_in"), words.Of("bars.goes_on")},
		X:     chart.Axis{Label: words.Of("bars.fed_axis"), Unit: "h"}}
	t := document.Table{Columns: document.Columns("col.step", "bars.fed_what", "bars.fed_from", "bars.goes_in",
		"bars.goes_on")}
	now := 0.0
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		over, time := 0.0, 0.0
		if s.Over.Set {
			over = s.Over.In("h")
		}
		if s.Time.Set {
			time = s.Time.In("h")
		}
		row := chart.Row{Label: words.Of("bars.done", s.Number, draft.Verb(s))}
		if len(s.What) > 0 {
			row.Parts = append(row.Parts, chart.Part{From: now, To: now + over, Mark: math.NaN(), Kind: 0})
			row.Text = words.OrNotStated(draft.Amount(s.Over))
		}
		if time > 0 {
			row.Parts = append(row.Parts, chart.Part{From: now + over, To: now + over + time, Mark: math.NaN(), Kind: 1})
		}
		if slices.ContainsFunc(s.What, powder) && c.X.Break == 0 {
			c.X.Break = now + over
		}
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(s.Number), b.StepMaterials(s), number.Nearest(now, 3),
			words.OrDash(draft.Amount(s.Over)), words.OrDash(draft.Amount(s.Time))))
		c.Rows = append(c.Rows, row)
		now += over + time
	}
	if now == 0 {
		return nil
	}
	return bars(c, t)
}

func powder(m route.Material) bool { return m.Precursor }
