package reports

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// GrowthFormat names the shape of the JSON of a growing route.
const GrowthFormat = "etchbound.scale/1"

type growthJSON struct {
	Format      string         `json:"format"`
	Notice      string         `json:"notice"`
	MadeBy      madeByJSON     `json:"made_by"`
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
	Title  string `json:"title"`
	Digest string `json:"digest"`
	From   nine   `json:"from"`
	To     nine   `json:"to"`
	Unit   string `json:"unit"`
}

type crossingJSON struct {
	Figure  string `json:"figure"`
	Limit   string `json:"limit"`
	Value   nine   `json:"limit_value"`
	Unit    string `json:"limit_unit"`
	Turns   string `json:"turns"`
	Batch   nine   `json:"batch"`
	Unit2   string `json:"unit"`
	Back    bool   `json:"back"`
	Already bool   `json:"from_the_start"`
}

type exponentJSON struct {
	Quantity string `json:"quantity"`
	Case     string `json:"case"`
	Fitted   nine   `json:"fitted"`
	Similar  nine   `json:"similar"`
	Explains nine   `json:"explains"`
}

type rungJSON struct {
	Batch    nine              `json:"batch"`
	Unit     string            `json:"unit"`
	Figures  []rungFigureJSON  `json:"figures"`
	Findings []rungFindingJSON `json:"findings"`
}

type rungFigureJSON struct {
	ID     string `json:"id"`
	Value  nine   `json:"value"`
	Danger nine   `json:"danger"`
	Unit   string `json:"unit"`
}

type rungFindingJSON struct {
	ID      string `json:"id"`
	Verdict string `json:"verdict"`
	Chance  nine   `json:"chance"`
}

type splitJSON struct {
	Pots int            `json:"pots"`
	Rows []splitRowJSON `json:"rows"`
}

type splitRowJSON struct {
	Quantity string `json:"quantity"`
	Case     string `json:"case"`
	Large    nine   `json:"large"`
	One      nine   `json:"one"`
	All      *nine  `json:"all"`
	Unit     string `json:"unit"`
}

// GrowthJSON writes a growing route for programs.
func GrowthJSON(w io.Writer, g *scaling.Growth, s scaling.Split, o draft.Options) error {
	out := growthJSON{Format: GrowthFormat, Notice: words.Of("deference.line"),
		MadeBy:  madeByJSON{o.Version, o.DataVersion, o.Platform},
		Route:   growthRoute{g.Case.Route.Title, g.Case.Route.Digest, nine(g.From.In("g")), nine(g.To.In("g")), "g"},
		Follows: follows(g.Follow), Withheld: draft.Names(g.Withheld), Beyond: draft.Names(g.Beyond),
		NotAssessed: strings0(hazards.NotAssessed()),
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
		out.Exponents = append(out.Exponents, exponentJSON{e.Quantity, e.Case, nine(e.Fitted), nine(e.Similar), nine(e.Fit)})
	}
	for i := range g.Rungs {
		out.Rungs = append(out.Rungs, rungOf(g, i))
	}
	out.Split = splitOf(&s)
	return encode(w, out)
}

func strings0(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
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
	return crossingJSON{c.Figure.String(), c.Limit.Key.String(), nine(c.Limit.Value), c.Limit.Unit, c.Turns.String(),
		nine(c.Grams), "g", c.Back, c.Already}
}

func rungOf(g *scaling.Growth, at int) rungJSON {
	r := &g.Rungs[at]
	out := rungJSON{Batch: nine(r.Batch.In("g")), Unit: "g", Figures: []rungFigureJSON{}, Findings: []rungFindingJSON{}}
	for i := range r.Figures {
		f := &r.Figures[i]
		danger := f.Value.V
		if hazards.Wanted(f) {
			danger = f.Danger().V
		}
		out.Figures = append(out.Figures, rungFigureJSON{f.ID.String(), nine(f.Value.V), nine(danger),
			number.UnitOf(f.Quantity)})
	}
	for i := range r.Findings {
		chance := math.NaN()
		if g.Chances != nil {
			chance = draft.SureChance(g.Chances[at], r.Findings[i].ID())
		}
		out.Findings = append(out.Findings, rungFindingJSON{r.Findings[i].ID().String(), r.Findings[i].Verdict.String(),
			nine(chance)})
	}
	return out
}

func splitOf(s *scaling.Split) splitJSON {
	out := splitJSON{Pots: s.Pots, Rows: []splitRowJSON{}}
	for i := range s.Rows {
		r := &s.Rows[i]
		row := splitRowJSON{r.Quantity, r.Case, nine(r.Large.Danger().V), nine(r.One.Danger().V), nil,
			number.UnitOf(r.Quantity)}
		if r.Adds {
			all := nine(r.All)
			row.All = &all
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

var crossingColumns = []string{"batch", "unit", "turns", "back", "from_the_start", "figure", "label", "limit",
	"limit_value", "limit_unit", "document", "status"}

// GrowthCSV writes the crossings of a growing route, one a row.
func GrowthCSV(w io.Writer, g *scaling.Growth) error {
	b := growthBuilder(g, draft.Options{})
	c := csv.NewWriter(w)
	c.Write(crossingColumns)
	for i := range g.Crossings {
		x := &g.Crossings[i]
		c.Write([]string{shortest(x.Grams), "g", x.Turns.String(), strconv.FormatBool(x.Back),
			strconv.FormatBool(x.Already), guard(x.Figure.String()), guard(b.NameOf(x.Figure)),
			guard(x.Limit.Key.String()), shortest(x.Limit.Value), guard(x.Limit.Unit), guard(words.Say(x.Limit.From())),
			guard(x.Limit.Status)})
	}
	c.Flush()
	return c.Error()
}
