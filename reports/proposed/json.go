package proposed

import (
	"io"
	"math"

	"etchbound/chemicals/datum"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling/levers"
)

// Shape is a proposal as it is written for programs.
type Shape struct {
	record.Head
	State   string       `json:"state"`
	Tried   int          `json:"tried"`
	Before  countJSON    `json:"before"`
	After   countJSON    `json:"after"`
	Changes []changeJSON `json:"changes"`
	Dropped []string     `json:"dropped"`
	Left    []leftJSON   `json:"left"`
	Changed string       `json:"changed_route"`
}

type countJSON struct {
	Surely  int `json:"exceed_surely"`
	May     int `json:"may_exceed"`
	Failing int `json:"exceed_if_it_fails"`
	Unknown int `json:"unknown"`
}

type changeJSON struct {
	Lever string      `json:"lever"`
	Edits []editJSON  `json:"edits"`
	Takes []movedJSON `json:"takes_away"`
}

type editJSON struct {
	At   string `json:"at"`
	To   string `json:"to"`
	Says string `json:"says"`
}

type movedJSON struct {
	ID        string      `json:"id"`
	Unit      string      `json:"unit"`
	Was       record.Nine `json:"was"`
	WasSurely string      `json:"was_surely"`
	Is        record.Nine `json:"is"`
	Verdict   *string     `json:"verdict"`
	Surely    *string     `json:"surely"`
}

type leftJSON struct {
	ID     string      `json:"id"`
	Value  record.Nine `json:"value"`
	Low    record.Nine `json:"low"`
	High   record.Nine `json:"high"`
	Unit   string      `json:"unit"`
	Limit  record.Nine `json:"limit"`
	Surely string      `json:"surely"`
	Others int         `json:"others"`
	Why    string      `json:"why"`
	Batch  *string     `json:"smaller_batch"`
	Data   []datum.ID  `json:"data"`
}

// nothing is a number that is not there.
var nothing = math.NaN()

// JSON writes a proposal for programs.
func JSON(w io.Writer, f *levers.Found, o draft.Options) error {
	out := Shape{Head: record.HeadOf(Format, &f.Before.Case, o), State: words.Of("propose.state"), Tried: f.Tried,
		Before: countJSON(count(&f.Before)), After: countJSON(count(&f.After)), Changes: []changeJSON{},
		Dropped: append([]string{}, f.Dropped...), Left: []leftJSON{}, Changed: string(f.Text)}
	out.MadeBy = record.MadeBy(o, controlOf(f, o)) // of both routes
	for i := range f.Bought {
		out.Changes = append(out.Changes, changeOf(&f.Bought[i]))
	}
	for i := range f.Left {
		out.Left = append(out.Left, leftOf(&f.Left[i]))
	}
	return record.Write(w, out)
}

func changeOf(x *levers.Bought) changeJSON {
	out := changeJSON{x.Lever, []editJSON{}, []movedJSON{}}
	for i := range x.Changes {
		c := &x.Changes[i]
		to := c.To
		if c.With != "" {
			to = route.Told(c.With)
		}
		out.Edits = append(out.Edits, editJSON{route.Told(c.Path), to, words.Say(c.Says)})
	}
	for i := range x.Moved {
		m := &x.Moved[i]
		y := movedJSON{ID: m.Was.ID().String(), Unit: number.UnitOf(m.Was.Figure.Quantity),
			Was: record.Nine(m.WasOf.Value.V), WasSurely: m.Was.Surely.String(), Is: record.Nine(m.IsOf.Value.V)}
		if m.Is.Figure.IsZero() {
			y.Is = record.Nine(nothing)
		} else {
			verdict, surely := m.Is.Verdict.String(), m.Is.Surely.String()
			y.Verdict, y.Surely = &verdict, &surely
		}
		out.Takes = append(out.Takes, y)
	}
	return out
}

func leftOf(l *levers.Left) leftJSON {
	x, f := &l.Finding, &l.Figure
	out := leftJSON{ID: x.ID().String(), Unit: number.UnitOf(x.Figure.Quantity), Limit: record.Nine(x.Limit.Value),
		Value: record.Nine(nothing), Low: record.Nine(nothing), High: record.Nine(nothing), Surely: x.Surely.String(),
		Others: l.Others, Why: words.Say(l.Why), Data: append([]datum.ID{}, l.Data...)}
	if f.ID != (figure.ID{}) {
		out.Value, out.Low, out.High = record.Nine(f.Value.V), record.Nine(f.Low().V), record.Nine(f.High().V)
	}
	if l.Batch != "" {
		out.Batch = &l.Batch
	}
	return out
}
