package selection

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
)

// judged is one figure of a review, held against one limit.
type judged struct {
	id      figure.ID
	v       float64 // NaN: not known
	limit   string
	origin  limit.Origin
	at      float64 // NaN: nobody knows the limit
	verdict figure.Verdict
	open    bool // its dangerous end is left open
}

// answered is the line of a question of page 1 of a review that holds nothing but some figures.
func answered(rows []judged, compose func(*reader, *Line)) Line {
	r := &hazards.Review{Case: route.Case{Route: &route.Route{}}}
	for i := range rows {
		h := &rows[i]
		q, _ := figure.Lookup(h.id.Quantity)
		f := figure.Figure{ID: h.id, Value: working.Exact("x", q.Unit, h.v, "as written")}
		if h.v != h.v {
			f.Value = working.Absent("x", q.Unit, working.Lacks("not_held", "a test"))
		}
		f.SetRange(h.v, h.v)
		if h.open {
			f.LeaveOpen([]working.Missing{working.Lacks("not_given", "a test")})
		}
		role := limit.Role("")
		if strings.HasPrefix(h.limit, "boil") {
			role = limit.Boils
		}
		margin := h.at - h.v
		if h.verdict == figure.UnknownVerdict {
			margin = math.NaN()
		}
		r.Figures = append(r.Figures, f)
		if h.limit != "" {
			r.Findings = append(r.Findings, figure.Finding{Figure: h.id, Verdict: h.verdict, Margin: margin,
				Limit: limit.Limit{Key: limit.Key{Origin: h.origin, ID: h.limit}, Quantity: h.id.Quantity, Value: h.at,
					Unit: q.Unit, Role: role}})
		}
	}
	d := draft.New(r, draft.Options{})
	l := Line{}
	compose(&reader{r: r, v: voice{d}, figs: d.Set}, &l)
	return l
}

func step(quantity string, n int, agent string) figure.ID {
	return figure.ID{Quantity: quantity, Place: figure.Step(n), Agent: agent}
}

func place(quantity, key string, s figure.State) figure.ID {
	return figure.ID{Quantity: quantity, Place: figure.At(key), Case: figure.Case{State: s}}
}

// What the rows below are of.
const (
	unknownAt, overAt, withinAt = figure.UnknownVerdict, figure.Exceeds, figure.Within
	peak, mtsr, took            = "heat.temperature_peak", "heat.mtsr", "heat.addition_time.required"
	shut, store, lime           = "gas.closed.pressure", "store.pressure", "neutralise.mass"
)

var no = math.NaN() // what nobody knows

// failing is a figure of what fails in step 2.
func failing(failure string) figure.ID {
	return figure.ID{Quantity: mtsr, Place: figure.Step(2), Case: figure.Case{Failure: failure}}
}

// failed is the line of all failures.
func failed(p *reader, l *Line) {
	var m matter
	for i := range p.r.Findings {
		m = append(m, &p.r.Findings[i])
	}
	p.failing(l, m)
}

// milder are rows of which one would hide another, with what page 1 has to say, and not.
var milder = map[string]struct {
	ask       func(*reader, *Line)
	rows      []judged
	says, not []string
}{
	"a rule of the house hides no boiling point that is not known": {(*reader).cooling, []judged{
		{id: step(peak, 2, ""), v: 62, limit: "top", origin: limit.Local, at: 40, verdict: overAt},
		{id: step(peak, 2, ""), v: 62, limit: "boiling_as_run", at: no, verdict: unknownAt},
	}, []string{"40 °C, local limit", "boiling point not known"}, nil},
	"of a boiling point that is not known the hottest step is told": {(*reader).cooling, []judged{
		{id: step(mtsr, 2, ""), v: 80, limit: "boiling_point", at: no, verdict: unknownAt},
		{id: step(mtsr, 3, ""), v: 150, limit: "boiling_point", at: no, verdict: unknownAt},
		{id: step(mtsr, 4, ""), v: no, limit: "boiling_point", at: no, verdict: unknownAt},
	}, []string{"150 °C", "not known: step 4"}, []string{"80"}},
	"where it boils is told beside another limit": {(*reader).cooling, []judged{
		{id: step(mtsr, 2, ""), v: 42, limit: "hood_limit", at: no, verdict: unknownAt},
		{id: step(peak, 2, ""), v: 24, limit: "boiling_as_run", at: 107, verdict: withinAt},
	}, []string{"boiling at 107 °C"}, nil},
	"flows that are left open are named": {(*reader).hydrogen, []judged{
		{id: figure.ID{Quantity: "gas.hydrogen.total"}, v: 1},
		{id: figure.ID{Quantity: "gas.hydrogen.dilution_air"}, v: 0.9},
		{id: step("gas.hydrogen.dilution_air", 3, ""), v: 0.9, limit: "site_hood", at: 900, verdict: unknownAt, open: true},
	}, []string{"not known: step 3"}, []string{"at its fastest"}},
	"what is rated for its pressure hides nothing that is not": {(*reader).lid, []judged{
		{id: place(shut, "autoclave", figure.AsWritten), v: 610, limit: "container_rating", at: 5500, verdict: withinAt},
		{id: place(shut, "tubes", figure.AsWritten), v: 150, limit: "no_rated_container", verdict: overAt},
	}, []string{"tubes, shut as written"}, []string{"autoclave"}},
	"what is shut as written stands before what is only supposed": {(*reader).stored, []judged{
		{id: place(store, "jar", figure.AsWritten), v: 2, limit: "no_rated_store", verdict: overAt},
		{id: place(store, "tank", figure.Closed), v: 230},
	}, []string{"jar, shut as written"}, []string{"tank", "must not"}},
	"a long addition that is within hides no short one that exceeds": {(*reader).addition, []judged{
		{id: step(took, 2, ""), v: 240, limit: "written_over", at: 300, verdict: withinAt},
		{id: step(took, 5, ""), v: 30, limit: "written_over", at: 20, verdict: overAt},
	}, []string{"At least 30 min in step 5"}, nil},
	"a large waste that is treated hides no small one that is not": {(*reader).neutralise, []judged{
		{id: step(lime, 8, "calcium_hydroxide"), v: 13, limit: "written_mass", at: 20, verdict: withinAt},
		{id: step(lime, 9, "calcium_hydroxide"), v: 5, limit: "written_mass", at: 2, verdict: overAt},
		{id: step(lime, 10, "calcium_hydroxide"), v: no, limit: "written_mass", at: 2, verdict: unknownAt},
	}, []string{"step 9: 5", "not known: step 10"}, nil},
	"gas on the floor stands before a vapour that is within": {(*reader).breathe, []judged{
		{id: step("air.breathing_zone", 3, "hf"), v: 1, limit: "site_hood", at: 2, verdict: withinAt},
		{id: figure.ID{Quantity: "air.floor", Place: figure.Room, Agent: "carbon_dioxide"}, v: 340000, limit: "site_hood",
			at: 5000, verdict: overAt},
	}, []string{"carbon dioxide up to 34 vol% on the floor", "0.5 vol% of the hood"}, []string{"5000"}},
	"what people breathe as drops is told as drops": {(*reader).breathe, []judged{
		{id: figure.ID{Quantity: "air.breathing_zone", Place: figure.Step(3), Agent: "hf",
			Case: figure.Case{Branch: figure.Mist}}, v: 161, limit: "site_hood", at: 2, verdict: overAt},
	}, []string{"hydrogen fluoride, as drops, up to 161 ppm (step 3)"}, nil},
	"what is not told of the run begins the row": {(*reader).cooling, []judged{
		{id: step(mtsr, 1, ""), v: 1650, limit: "boiling_point", at: no, verdict: unknownAt},
	}, []string{"If cooling fails"}, []string{"if cooling fails"}},
	"of failures the hottest is told where nobody knows what boils": {failed, []judged{
		{id: failing("cooling_lost"), v: 79, limit: "boiling_point", at: no, verdict: unknownAt},
		{id: failing("all_at_once"), v: 276, limit: "boiling_point", at: no, verdict: unknownAt},
	}, []string{"276 °C, unless it boils before", "2 not known"}, []string{"79"}},
	"no failure is the worst of those that are not known": {failed, []judged{
		{id: failing("cooling_lost"), v: no, limit: "boiling_point", at: no, verdict: unknownAt},
	}, []string{"Not known of one failure"}, []string{"worst"}},
	"what is spilled beside what is known is named": {(*reader).spill, []judged{
		{id: figure.ID{Quantity: "air.room_peak", Place: figure.Spill, Agent: "ammonia"}, v: 530, limit: "site_hood",
			at: 220, verdict: overAt},
		{id: figure.ID{Quantity: "air.room_peak", Place: figure.Spill, Agent: "hf"}, v: no, limit: "site_hood", at: 95,
			verdict: unknownAt},
	}, []string{"530 ppm of ammonia", "not known: hydrogen fluoride"}, nil},
}

// What is told is never the milder of two: nothing that is within, rated, supposed or known hides
// what exceeds, stands as written, or is not known; and of what is held against a limit that
// nobody knows the figure is told that lies furthest toward danger.
func TestNothingMilderIsTold(t *testing.T) {
	for name, c := range milder {
		l := answered(c.rows, c.ask)
		for _, s := range c.says {
			if !strings.Contains(l.Answer+" | "+l.Against, s) {
				t.Errorf("%s: nothing says %q: %s | %s", name, s, l.Answer, l.Against)
			}
		}
		for _, s := range c.not {
			if strings.Contains(l.Answer+" | "+l.Against, s) {
				t.Errorf("%s: says %q: %s | %s", name, s, l.Answer, l.Against)
			}
		}
	}
}
