package record

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/schemas/quantity"
)

func newReviewJSON(r *hazards.Review, o draft.Options) Shape {
	b := newBuilder(r, o)
	return Shape{
		Opening: Opening{Format, words.Of("deference.full"), MadeBy(o, b.ControlLine())},
		Route:   b.routeJSON(),
		Figures: each(r.Figures, b.figureToJSON), Findings: each(r.Findings, b.findingToJSON),
		Holds: each(selection.Stops(b.Draft), func(s *selection.Stop) holdJSON {
			return holdJSON{s.ID, s.Says,
				list(s.At)}
		}),
		Labels: each(r.Labels, labelToJSON), Treated: each(r.Treated, treatedToJSON),
		Containers: each(r.Containers, containerToJSON),
		Rinsed:     each(r.Rinsed, rinsedToJSON), Speciated: each(r.Speciated, speciatedToJSON),
		Spread: spreads(r),
		Lines:  linesToJSON(r.Sheet), Ends: endsToJSON(r), Data: b.dataJSON(), Sources: b.sourcesJSON(),
		Account: b.accountJSON(), Series: b.seriesJSON(),
		Replaced: each(r.Applied, replacedToJSON(r)), Milder: each(r.Milder, milderToJSON),
		Turns:       each(r.Turns, turnToJSON),
		Assumptions: each(r.Assumptions, assumptionToJSON), Unknown: each(r.Unknown, unknownToJSON),
		NotAssessed: list(r.NotAssessed), Warnings: words.SayAll(r.Warnings),
	}
}

// each maps a list; the result is never nil, so that JSON has [] and not null.
func each[T, U any](in []T, f func(*T) U) []U {
	out := make([]U, len(in))
	for i := range in {
		out[i] = f(&in[i])
	}
	return out
}

func list(s []string) []string { return append([]string{}, s...) }

// valueOf is a number's value, null where it is unknown.
func valueOf(n working.Num) Nine {
	if n.Unknown() {
		return Nine(math.NaN())
	}
	return Nine(n.V)
}

func stated(v quantity.Value, unit string) valueJSON {
	if !v.Set || !v.Can(unit) {
		return valueJSON{Nine(math.NaN()), unit}
	}
	return valueJSON{Nine(v.In(unit)), unit}
}

func (b *builder) routeJSON() routeJSON {
	r := b.Route()
	out := routeJSON{Title: r.Title, Batch: valueJSON{Nine(math.NaN()), "g"}, Digest: r.Digest,
		Steps: each(r.Steps, func(s *route.Step) stepJSON { return stepJSON{s.Number, s.Do, s.In, s.Into} }),
		Places: each(r.Places, func(p *route.Place) placeJSON {
			return placeJSON{p.Key, p.Kind, p.Material, stated(p.Capacity, "mL"), closureKey(p)}
		})}
	if r.Precursor != nil {
		out.Batch = stated(r.Precursor.Mass, "g")
	}
	if b.Review.Case.Site != nil {
		out.SiteDigest = b.Review.Case.Site.Digest
	}
	if b.Review.Case.Limits != nil {
		out.LimitsDigest = b.Review.Case.Limits.Digest
	}
	return out
}

func closureKey(p *route.Place) string {
	return [...]string{route.Closed: "closed", route.Vented: "vented", route.Open: "open"}[p.Closure]
}

func (b *builder) figureToJSON(f *figure.Figure) figureJSON {
	drawn := drawsJSON{Nine(math.NaN()), Nine(math.NaN()), Nine(math.NaN())}
	if x, there := b.BandOf(f); there {
		drawn = drawsJSON{Nine(x.P05), Nine(x.P50), Nine(x.P95)}
	}
	zeroed := func(n working.Num) Nine { return Nine(number.Balance(f.Quantity, float64(valueOf(n)))) }
	return figureJSON{ID: f.ID.String(), Quantity: f.Quantity, Place: f.Place.String(), Agent: f.Agent,
		Case: f.Case.String(), Of: f.Of().String(),
		Label: number.LabelOf(f.Quantity), Value: zeroed(f.Value), Low: zeroed(f.Low()), High: zeroed(f.High()),
		Unit: number.UnitOf(f.Quantity), Status: f.Value.Status.String(), Conditions: words.Say(f.Conditions),
		Line:    f.Value.Line(),
		Missing: MissingJSONs(f.Value.Missing()), Draws: drawn}
}

func (b *builder) findingToJSON(f *figure.Finding) findingJSON {
	l, chance := f.Limit, b.ChanceOf(f)
	return findingJSON{ID: f.ID().String(), Figure: f.Figure.String(),
		Limit: limitJSON{l.ID, l.Origin.String(), Nine(l.Value), l.Unit, words.Say(l.From()), draft.SectionOf(&l), l.Edition,
			l.Status},
		Verdict: f.Verdict.String(), Surely: f.Surely.String(), Of: f.Of.String(), Margin: Nine(f.Margin),
		Needs: each(f.Needs, func(n *figure.Need) needJSON {
			return needJSON{n.Quantity, Nine(n.Value), n.Unit,
				words.Say(n.Says)}
		}),
		Chance: Nine(chance)}
}

func linesToJSON(s *working.Sheet) []lineJSON {
	if s == nil {
		return []lineJSON{}
	}
	return each(s.Lines, lineToJSON)
}

func lineToJSON(l *working.Line) lineJSON {
	out := lineJSON{N: l.N, Kind: l.Kind.String(), Symbol: l.Symbol, Unit: l.Unit, Formula: l.Formula,
		Value: Nine(l.V), Status: l.Status.String(),
		In: each(l.In, func(i *working.Input) inputJSON { return inputJSON{i.Symbol, Nine(i.V), i.Unit, i.Line} })}
	switch {
	case l.Kind == working.KindDatum:
		out.Data = l.Ref
	default:
		out.At = draft.StatedAt(l)
	}
	return out
}

// MissingJSONs are missing things; the list is never nil.
func MissingJSONs(all []working.Missing) []MissingJSON {
	return each(all, func(m *working.Missing) MissingJSON {
		return MissingJSON{m.Kind, m.Subject.String(), m.Step, words.Name(*m)}
	})
}

func (b *builder) dataJSON() []datumJSON {
	out := make([]datumJSON, len(b.Review.Used))
	for i, d := range b.Review.Used {
		out[i] = datumJSON{string(d.ID), Nine(d.Value), Nine(d.Low), Nine(d.High), d.Unit, d.Status, d.Source, d.OverriddenBy}
	}
	none := Nine(math.NaN())
	for _, t := range b.Review.Tables {
		out = append(out, datumJSON{t.ID, none, none, none, t.Unit, t.Status, t.Source, ""})
	}
	return out
}

func (b *builder) sourcesJSON() []sourceJSON {
	out := []sourceJSON{}
	for _, s := range b.Sources() {
		out = append(out, sourceJSON(s))
	}
	return out
}

func (b *builder) accountJSON() []balanceJSON {
	out := make([]balanceJSON, len(b.Review.Walk.Account))
	for i, e := range b.Review.Walk.Account {
		to := make(map[string]Nine, len(e.Out))
		for k, v := range e.Out {
			to[k] = Nine(draft.Tiny(v))
		}
		out[i] = balanceJSON{e.Element, Nine(draft.Tiny(e.In)), to, Nine(draft.Tiny(e.Error))}
	}
	return out
}

// dosedJSON is the highest temperature of a step against the share that is dosed.
func dosedJSON(x *course.Stage) []seriesJSON {
	doses := x.Dosed()
	if doses == nil {
		return nil
	}
	id := figure.ID{Quantity: "heat.mtsr", Place: figure.Step(x.Step.Number)}
	s := seriesJSON{ID: id.String() + "~dosed", X: axisJSON{"dosed", "1"}, Unit: "degC",
		Points: make([][2]Nine, len(doses)), Events: []eventJSON{}}
	for i, d := range doses {
		s.Points[i] = [2]Nine{Nine(d.Share), Nine(d.Hottest)}
	}
	return []seriesJSON{s}
}

func eventsToJSON(n *course.Course) []eventJSON {
	out := []eventJSON{}
	for _, e := range draft.Events(n) {
		out = append(out, eventJSON{Nine(e.At / 60), e.Says})
	}
	return out
}

// heldJSON is where the fluorine is, place by place, after each step.
func (b *builder) heldJSON() []seriesJSON {
	var out []seriesJSON
	for _, h := range b.Where("F") {
		s := seriesJSON{ID: figure.ID{Quantity: "fluoride.total", Place: figure.At(h.Place)}.String() + "~step",
			X: axisJSON{"step", "1"}, Unit: number.UnitOf("fluoride.total"), Events: []eventJSON{}}
		for i, n := range b.Review.Walk.Steps {
			s.Points = append(s.Points, [2]Nine{Nine(n.Number), Nine(draft.Tiny(h.Moles[i]) * draft.MolarFluorine)})
		}
		out = append(out, s)
	}
	return out
}

// airJSON is what is in the air over an hour: in the middle of its range, and where danger
// lies.
func (b *builder) airJSON() []seriesJSON {
	var out []seriesJSON
	for _, t := range b.AirTracks() {
		for _, x := range []struct {
			end    string
			points [][2]float64
		}{{"~t", t.Middle}, {"~t_worst", t.Worst}} {
			s := seriesJSON{ID: t.Of.ID.String() + x.end, X: axisJSON{"time", "min"}, Unit: number.UnitOf(t.Of.Quantity),
				Points: make([][2]Nine, len(x.points)), Events: []eventJSON{}}
			for i, p := range x.points {
				s.Points[i] = [2]Nine{Nine(p[0]), Nine(p[1])}
			}
			out = append(out, s)
		}
	}
	return out
}

// seriesJSON is what every run in time shows against it, and every addition against the
// share that is in.
func (b *builder) seriesJSON() []seriesJSON {
	out := []seriesJSON{}
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range n.Stages {
			out = append(out, dosedJSON(&n.Stages[j])...)
		}
		for k := range n.Runs {
			points := n.Runs[k].Vessel.Points()
			if len(points) == 0 {
				continue
			}
			for j := range draft.Tracks {
				t := &draft.Tracks[j]
				if t.OverGas() && n.Space.Unknown() || !t.In(n) {
					continue
				}
				id := b.TrackID(t, n, n.Runs[k].Law).String() + "~t"
				s := seriesJSON{ID: id, X: axisJSON{"time", "min"}, Unit: t.Unit, Points: make([][2]Nine, len(points)),
					Events: eventsToJSON(n)}
				for m, p := range points {
					s.Points[m] = [2]Nine{Nine(p.Time / 60), Nine(t.Of(n, p))}
				}
				out = append(out, s)
			}
		}
	}
	for i := range b.Review.Treated {
		out = append(out, curvesJSON(&b.Review.Treated[i])...)
	}
	return append(append(out, b.heldJSON()...), b.airJSON()...)
}

func assumptionToJSON(a *hazards.Assumption) assumptionJSON {
	return assumptionJSON{string(a.ID), a.Text, Nine(a.Value), a.Unit, a.Status,
		each(a.Moves, func(m *hazards.Move) moveJSON { return moveJSON{m.Figure.String(), Nine(m.From), Nine(m.To)} })}
}

func unknownToJSON(u *hazards.UnknownItem) unknownJSON {
	text, settles := words.Ask(u.Missing)
	m := u.Missing
	return unknownJSON{words.Name(m), m.Kind, m.Subject.String(), m.Step, text, settles, draft.Names(u.Figures)}
}

// replacedToJSON writes a datum that was replaced, in the unit of its row.
func replacedToJSON(r *hazards.Review) func(*chemicals.Applied) replacedJSON {
	return func(a *chemicals.Applied) replacedJSON {
		return replacedJSON{ID: string(a.ID), Value: Nine(a.Value), Low: Nine(a.Low), High: Nine(a.High),
			Unit: draft.UnitOfDatum(r, a),
			Old:  Nine(a.Old), Source: a.Source, At: a.At, From: a.From}
	}
}

func milderToJSON(m *hazards.Milder) milderJSON {
	out := milderJSON{Finding: m.ID.String(), Was: m.Was.String()}
	if !m.Gone {
		out.Is = m.Is.String()
	}
	return out
}

func List(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}
