package reports

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// ChangeFormat names the shape of the JSON of a change.
const ChangeFormat = "etchbound.change/1"

// most rows of a change that are printed; all stand in the JSON and the CSV.
const mostMoved = 40

// BuildChange lays out what a proposed route changes of a reviewed one: a sheet of
// one page, then everything.
func BuildChange(c scaling.Change, o Options) Document {
	a, b := newBuilder(&c.Reviewed, o), newBuilder(&c.Proposed, o)
	d := Document{Title: say("change.title", b.title()), Lang: say("lang"), Paper: o.Paper,
		Digest: shortDigest(b.route().Digest)}
	inputs, moved, verdicts := changeInputs(&c), changeMoved(b, &c), changeVerdicts(a, b, &c)
	d.Sections = []Section{changeSheet(a, b, &c), {Key: "change-rules", Title: say("change.rules"), Page: true,
		Blocks: changeFired(&c)},
		{Key: "change-inputs", Title: say("change.inputs"), Blocks: inputs},
		{Key: "change-figures", Title: say("change.figures"), Blocks: moved},
		{Key: "change-verdicts", Title: say("change.verdicts"), Blocks: verdicts}}
	return d
}

// changeSheet is what a committee signs.
func changeSheet(a, b *builder, c *scaling.Change) Section {
	s := Section{Key: "page-1", Title: say("change.sheet")}
	s.Blocks = append(s.Blocks, Facts{[]Pair{
		{say("change.reviewed"), a.title() + " (" + a.digestText() + ")"},
		{say("change.proposed"), b.title() + " (" + b.digestText() + ")"},
		{say("control.version"), b.versionText()}, {say("control.state"), say("control.draft")}}},
		Paragraph{Text: say("deference.line")})
	if len(c.Fired) == 0 {
		s.Blocks = append(s.Blocks, Paragraph{Text: say("change.none")})
	} else {
		s.Blocks = append(s.Blocks, Paragraph{say("change.some", len(c.Fired)), Warning}, changeSummary(c))
	}
	worse := 0
	for i := range c.Verdicts {
		if c.Verdicts[i].Worse() {
			worse++
		}
	}
	s.Blocks = append(s.Blocks, Paragraph{Text: say("change.counts", len(c.Inputs), len(c.Moved), worse,
		len(c.Verdicts)-worse)},
		FormLine{say("change.decision"), []string{say("change.again"), say("change.note"), say("change.refuse")}},
		Blanks{[]string{say("change.who"), say("change.committee")}})
	return s
}

// ruleText is a rule with its value.
func ruleText(f *scaling.Fired) string {
	if math.IsNaN(f.Value) {
		return f.Label
	}
	return f.Label + ": " + with(nearest(f.Value, 4), plainUnit(f.Unit))
}

// changeSummary has a row for each rule that a change meets, with how often and
// one place, so that the sheet stays one page.
func changeSummary(c *scaling.Change) Block {
	t := Table{Caption: say("change.fired"), Columns: right(columns("change.rule", "change.times", "change.example"), 1)}
	times := map[string]int{}
	for i := range c.Fired {
		times[c.Fired[i].ID]++
	}
	for i := range c.Fired {
		f := &c.Fired[i]
		if i > 0 && c.Fired[i-1].ID == f.ID {
			continue
		}
		t.Rows = append(t.Rows, []Cell{text(ruleText(f)), text(strconv.Itoa(times[f.ID])),
			text(clip(say("change.example_of", FiredAt(f), f.Was, f.Is), 80))})
	}
	return t
}

// changeFired are all rules that a change meets, each place of its own.
func changeFired(c *scaling.Change) []Block {
	if len(c.Fired) == 0 {
		return []Block{Paragraph{Text: say("change.none")}}
	}
	t := Table{Caption: say("change.fired_all"), Columns: columns("change.rule", "change.where", "change.was",
		"change.is", "change.source")}
	for i := range c.Fired {
		f := &c.Fired[i]
		t.Rows = append(t.Rows, []Cell{text(ruleText(f)), text(FiredAt(f)), text(clip(f.Was, 60)), text(clip(f.Is, 60)),
			text(f.Source + " (" + f.Status + ")")})
	}
	return []Block{t}
}

func plainUnit(u string) string {
	if u == "1" {
		return ""
	}
	return u
}

func changeInputs(c *scaling.Change) []Block {
	if len(c.Inputs) == 0 {
		return []Block{Paragraph{Text: say("change.same")}}
	}
	t := Table{Caption: say("change.inputs_caption"), Columns: columns("change.where", "change.what", "change.was",
		"change.is")}
	for _, x := range c.Inputs {
		t.Rows = append(t.Rows, []Cell{text(x.Where), text(strings.ReplaceAll(x.What, "_", " ")), text(input(x.Was)),
			text(input(x.Is))})
	}
	return []Block{t}
}

// longestInput is how many letters of an input are printed; all stand in the JSON and
// the CSV.
const longestInput = 160

func input(s string) string { return orDash(clip(fold(s), longestInput)) }

func changeMoved(b *builder, c *scaling.Change) []Block {
	if len(c.Moved) == 0 {
		return []Block{Paragraph{Text: say("change.still")}}
	}
	t := Table{Caption: say("change.moved"), Columns: columns("col.figure", "change.was", "change.is", "change.share")}
	for i := range c.Moved {
		m := &c.Moved[i]
		if i == mostMoved {
			break
		}
		t.Rows = append(t.Rows, []Cell{text(b.figureName(&m.Is)), text(valueAndRange(&m.Was)), text(valueAndRange(&m.Is)),
			text(changeText(m.Share))})
	}
	out := []Block{t}
	if more := len(c.Moved) - len(t.Rows); more > 0 {
		out = append(out, Paragraph{Text: say("change.more", more), Tone: Note})
	}
	return out
}

// changeText is a change as a share; none where one of the two is not known.
func changeText(share float64) string {
	switch {
	case math.IsNaN(share) || math.IsInf(share, 0):
		return say("value.dash")
	case share > 0:
		return "+" + nearest(100*share, 3) + " %"
	}
	return nearest(100*share, 3) + " %"
}

func changeVerdicts(a, b *builder, c *scaling.Change) []Block {
	if len(c.Verdicts) == 0 {
		return []Block{Paragraph{Text: say("change.verdicts_still")}}
	}
	t := Table{Caption: say("change.verdicts_caption"), Columns: columns("col.figure", "col.limit_basis", "change.was",
		"change.is")}
	for i := range c.Verdicts {
		v := &c.Verdicts[i]
		f, in := v.Is, b
		if f.Figure.IsZero() {
			f, in = v.Was, a
		}
		t.Rows = append(t.Rows, []Cell{text(in.nameOf(f.Figure)), text(limitText(&f.Limit)), changeVerdict(&v.Was),
			changeVerdict(&v.Is)})
	}
	return []Block{t}
}

// changeVerdict is a verdict, or that there was none.
func changeVerdict(f *figure.Finding) Cell {
	if f.Figure.IsZero() {
		return text(say("change.not_there"))
	}
	return verdictCell(f.Verdict)
}

// FiredAt says where a rule is met, or what is no longer known.
func FiredAt(f *scaling.Fired) string {
	if f.Lacks != (working.Missing{}) {
		text, _ := words.Ask(f.Lacks)
		return text
	}
	return f.Where
}

type changeJSON struct {
	Format   string              `json:"format"`
	Notice   string              `json:"notice"`
	MadeBy   madeByJSON          `json:"made_by"`
	Reviewed changeRouteJSON     `json:"reviewed"`
	Proposed changeRouteJSON     `json:"proposed"`
	Fired    []firedJSON         `json:"fired"`
	Inputs   []inputDiffJSON     `json:"inputs"`
	Figures  []movedJSON         `json:"figures"`
	Findings []verdictChangeJSON `json:"findings"`
}

type changeRouteJSON struct {
	Title  string `json:"title"`
	Digest string `json:"digest"`
}

type firedJSON struct {
	ID     string `json:"id"`
	Value  nine   `json:"value"`
	Unit   string `json:"unit"`
	Where  string `json:"where"`
	Was    string `json:"was"`
	Is     string `json:"is"`
	Source string `json:"source"`
	Status string `json:"status"`
}

type inputDiffJSON struct {
	Where string `json:"where"`
	What  string `json:"what"`
	Was   string `json:"was"`
	Is    string `json:"is"`
}

type movedJSON struct {
	ID    string `json:"id"`
	Was   nine   `json:"was"`
	Is    nine   `json:"is"`
	Unit  string `json:"unit"`
	Share nine   `json:"share"`
}

type verdictChangeJSON struct {
	ID  string  `json:"id"`
	Was *string `json:"was"`
	Is  *string `json:"is"`
}

// ChangeJSON writes a change for programs.
func ChangeJSON(w io.Writer, c scaling.Change, o Options) error {
	out := changeJSON{Format: ChangeFormat, Notice: say("deference.line"),
		MadeBy:   madeByJSON{o.Version, o.DataVersion, o.Platform},
		Reviewed: changeRouteJSON{c.Reviewed.Case.Route.Title, c.Reviewed.Case.Route.Digest},
		Proposed: changeRouteJSON{c.Proposed.Case.Route.Title, c.Proposed.Case.Route.Digest},
		Fired:    []firedJSON{}, Inputs: []inputDiffJSON{}, Figures: []movedJSON{}, Findings: []verdictChangeJSON{}}
	for _, f := range c.Fired {
		out.Fired = append(out.Fired, firedJSON{f.ID, nine(f.Value), f.Unit, FiredAt(&f), f.Was, f.Is, f.Source, f.Status})
	}
	for _, x := range c.Inputs {
		out.Inputs = append(out.Inputs, inputDiffJSON(x))
	}
	for i := range c.Moved {
		m := &c.Moved[i]
		out.Figures = append(out.Figures, movedJSON{m.ID.String(), nine(m.Was.Value.V), nine(m.Is.Value.V),
			unitOf(m.Is.Quantity), nine(m.Share)})
	}
	for i := range c.Verdicts {
		v := &c.Verdicts[i]
		out.Findings = append(out.Findings, verdictChangeJSON{v.ID.String(), verdictJSON(&v.Was), verdictJSON(&v.Is)})
	}
	return encode(w, out)
}

func verdictJSON(f *figure.Finding) *string {
	if f.Figure.IsZero() {
		return nil
	}
	s := f.Verdict.String()
	return &s
}

var changeColumns = []string{"kind", "id", "where", "was", "is", "unit"}

// ChangeCSV writes a change as rows: rules that fire, inputs, figures, verdicts.
func ChangeCSV(w io.Writer, c scaling.Change) error {
	out := csv.NewWriter(w)
	out.Write(changeColumns)
	for _, f := range c.Fired {
		out.Write([]string{"rule", f.ID, guard(FiredAt(&f)), guard(f.Was), guard(f.Is), guard(f.Unit)})
	}
	for _, x := range c.Inputs {
		out.Write([]string{"input", guard(x.What), guard(x.Where), guard(x.Was), guard(x.Is), ""})
	}
	for i := range c.Moved {
		m := &c.Moved[i]
		out.Write([]string{"figure", guard(m.ID.String()), "", machine(m.Is.Quantity, m.Was.Value),
			machine(m.Is.Quantity, m.Is.Value), guard(unitOf(m.Is.Quantity))})
	}
	for i := range c.Verdicts {
		v := &c.Verdicts[i]
		was, is := "", ""
		if x := verdictJSON(&v.Was); x != nil {
			was = *x
		}
		if x := verdictJSON(&v.Is); x != nil {
			is = *x
		}
		out.Write([]string{"finding", guard(v.ID.String()), "", was, is, ""})
	}
	out.Flush()
	return out.Error()
}
