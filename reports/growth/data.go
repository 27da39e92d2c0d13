package growth

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Format names the shape of the JSON of a growing route.
const Format = "etchbound.scale/1"

type Shape struct {
	record.Opening
	Route       growthRoute    `json:"route"`
	Follows     []string       `json:"follows"`
	First       *crossingJSON  `json:"first_limit"`
	Withheld    []string       `json:"not_known"`
	NotAssessed []string       `json:"not_assessed"`
	Crossings   []crossingJSON `json:"crossings"`
	Overflows   *crossingJSON  `json:"overflows"`
	Beyond      []string       `json:"beyond_overflow"`
	Exponents   []exponentJSON `json:"exponents"`
	Rungs       []rungJSON     `json:"rungs"`
	Split       splitJSON      `json:"split"`
}

type growthRoute struct {
	Title  string      `json:"title"`
	Digest string      `json:"digest"`
	From   record.Nine `json:"from"`
	To     record.Nine `json:"to"`
	Unit   string      `json:"unit"`
}

type crossingJSON struct {
	Figure  string      `json:"figure"`
	Limit   string      `json:"limit"`
	Value   record.Nine `json:"limit_value"`
	Unit    string      `json:"limit_unit"`
	Turns   string      `json:"turns"`
	Batch   record.Nine `json:"batch"`
	Unit2   string      `json:"unit"`
	Back    bool        `json:"back"`
	Already bool        `json:"from_the_start"`
}

type exponentJSON struct {
	Quantity string      `json:"quantity"`
	Case     string      `json:"case"`
	Fitted   record.Nine `json:"fitted"`
	Similar  record.Nine `json:"similar"`
	Explains record.Nine `json:"explains"`
}

type rungJSON struct {
	Batch    record.Nine       `json:"batch"`
	Unit     string            `json:"unit"`
	Figures  []rungFigureJSON  `json:"figures"`
	Findings []rungFindingJSON `json:"findings"`
}

type rungFigureJSON struct {
	ID     string      `json:"id"`
	Value  record.Nine `json:"value"`
	Danger record.Nine `json:"danger"`
	Unit   string      `json:"unit"`
}

type rungFindingJSON struct {
	ID      string      `json:"id"`
	Verdict string      `json:"verdict"`
	Chance  record.Nine `json:"chance"`
}

type splitJSON struct {
	Pots int            `json:"pots"`
	Rows []splitRowJSON `json:"rows"`
}

type splitRowJSON struct {
	Quantity string       `json:"quantity"`
	Case     string       `json:"case"`
	Large    record.Nine  `json:"large"`
	One      record.Nine  `json:"one"`
	All      *record.Nine `json:"all"`
	Unit     string       `json:"unit"`
}

// JSON writes a growing route for programs.
func JSON(w io.Writer, g *scaling.Growth, s scaling.Split, o draft.Options) error {
	out := Shape{Opening: record.OpeningOf(Format, o, draft.ControlOf(o, g.Case.Site, g.Case.Limits, g.Case.Route.Digest)),
		Route: growthRoute{g.Case.Route.Title, g.Case.Route.Digest, record.Nine(g.From.In("g")),
			record.Nine(g.To.In("g")), "g"},
		Follows: follows(g.Follow), Withheld: draft.Names(g.Withheld), Beyond: draft.Names(g.Beyond),
		NotAssessed: record.List(hazards.NotAssessed()),
		Crossings:   []crossingJSON{}, Exponents: []exponentJSON{}, Rungs: []rungJSON{}}
	if first, ok := g.First(); ok && (first.Already || !g.NotKnown()) {
		x := crossingOf(&first)
		out.First = &x
	}
	if g.Overflows != nil {
		x := crossingOf(g.Overflows)
		out.Overflows = &x
	}
	for i := range g.Crossings {
		out.Crossings = append(out.Crossings, crossingOf(&g.Crossings[i]))
	}
	for _, e := range g.Exponents() {
		out.Exponents = append(out.Exponents, exponentJSON{e.Quantity, e.Case, record.Nine(e.Fitted),
			record.Nine(e.Similar), record.Nine(e.Fit)})
	}
	for i := range g.Rungs {
		out.Rungs = append(out.Rungs, rungOf(g, i))
	}
	out.Split = splitOf(&s)
	return record.Write(w, out)
}

func follows(f scaling.Follow) []string {
	out := []string{}
	for _, x := range []struct {
		name string
		on   bool
	}{{"vessel", f.Vessel}, {"addition", f.Addition}, {"cooling", f.Cooling}} {
		if x.on {
			out = append(out, x.name)
		}
	}
	return out
}

func crossingOf(c *scaling.Crossing) crossingJSON {
	return crossingJSON{c.Figure.String(), c.Limit.Key.String(), record.Nine(c.Limit.Value), c.Limit.Unit,
		c.Turns.String(),
		record.Nine(c.Grams), "g", c.Back, c.Already}
}

func rungOf(g *scaling.Growth, at int) rungJSON {
	r := &g.Rungs[at]
	out := rungJSON{Batch: record.Nine(r.Batch.In("g")), Unit: "g", Figures: []rungFigureJSON{},
		Findings: []rungFindingJSON{}}
	for i := range r.Figures {
		f := &r.Figures[i]
		danger := f.Value.V
		if hazards.Wanted(f) {
			danger = f.Danger().V
		}
		out.Figures = append(out.Figures, rungFigureJSON{f.ID.String(), record.Nine(f.Value.V), record.Nine(danger),
			number.UnitOf(f.Quantity)})
	}
	for i := range r.Findings {
		chance := math.NaN()
		if g.Chances != nil {
			chance = draft.SureChance(g.Chances[at], r.Findings[i].ID())
		}
		out.Findings = append(out.Findings, rungFindingJSON{r.Findings[i].ID().String(), r.Findings[i].Verdict.String(),
			record.Nine(chance)})
	}
	return out
}

func splitOf(s *scaling.Split) splitJSON {
	out := splitJSON{Pots: s.Pots, Rows: []splitRowJSON{}}
	for i := range s.Rows {
		r := &s.Rows[i]
		row := splitRowJSON{r.Quantity, r.Case, record.Nine(r.Large.Danger().V), record.Nine(r.One.Danger().V), nil,
			number.UnitOf(r.Quantity)}
		if r.Adds {
			all := record.Nine(r.All)
			row.All = &all
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

var Columns = []string{"batch", "unit", "turns", "back", "from_the_start", "figure", "label", "limit",
	"limit_value", "limit_unit", "document", "status"}

// CSV writes the crossings of a growing route, one a row.
func CSV(w io.Writer, g *scaling.Growth) error {
	b := growthBuilder(g, draft.Options{})
	c := csv.NewWriter(w)
	c.Write(Columns)
	for i := range g.Crossings {
		x := &g.Crossings[i]
		c.Write([]string{record.Shortest(x.Grams), "g", x.Turns.String(), strconv.FormatBool(x.Back),
			strconv.FormatBool(x.Already), record.Guard(x.Figure.String()), record.Guard(b.NameOf(x.Figure)),
			record.Guard(x.Limit.Key.String()), record.Shortest(x.Limit.Value), record.Guard(x.Limit.Unit),
			record.Guard(words.Say(x.Limit.From())),
			record.Guard(x.Limit.Status)})
	}
	c.Flush()
	return c.Error()
}
