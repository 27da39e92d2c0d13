// Package change knows how it is told what a proposed route changes of a reviewed
// one. It must not know another page.
package change

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Format names the shape of the JSON of a change.
const Format = "etchbound.change/2"

// mostMoved rows of a change are printed; the others are folded away.
const mostMoved = 40

// Build lays out what a proposed route changes of a reviewed one: a sheet of
// one page, then everything.
func Build(c scaling.Change, o draft.Options) document.Document {
	a, b := newBuilder(&c.Reviewed, o), newBuilder(&c.Proposed, o)
	d := document.Document{Title: words.Of("change.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: controlOf(&c, o)}
	inputs, moved, verdicts := changeInputs(&c), changeMoved(b, &c), changeVerdicts(a, b, &c)
	d.Sections = []document.Section{changeSheet(a, b, &c),
		{Key: "change-rules", Title: words.Of("change.rules"), Blocks: changeFired(&c)},
		{Key: "change-inputs", Title: words.Of("change.inputs"), Blocks: inputs},
		{Key: "change-figures", Title: words.Of("change.figures"), Blocks: moved},
		{Key: "change-verdicts", Title: words.Of("change.verdicts"), Blocks: verdicts}}
	return d
}

// controlOf is the control line of a change, on both routes, with the site and the limits of the
// review where they are others.
func controlOf(c *scaling.Change, o draft.Options) string {
	was, to := &c.Reviewed.Case, &c.Proposed.Case
	return draft.ControlOf(o, to.Site, to.Limits, was.Route.Digest, to.Route.Digest) + draft.ReviewedWith(was, to)
}

// changeSheet is what a committee signs.
func changeSheet(a, b *builder, c *scaling.Change) document.Section {
	s := document.Section{Key: "page-1", Title: words.Of("change.sheet")}
	s.Blocks = append(s.Blocks, document.Facts{Pairs: []document.Pair{
		{Name: words.Of("change.reviewed"), Value: a.Title() + " (" + a.DigestText() + ")"},
		{Name: words.Of("change.proposed"), Value: b.Title() + " (" + b.DigestText() + ")"},
		{Name: words.Of("control.version"), Value: b.VersionText()},
		{Name: words.Of("control.state"), Value: words.Of("control.draft")}}},
		document.Paragraph{Text: words.Of("deference.line")})
	if len(c.Fired) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("change.none")})
	} else {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("change.some", len(c.Fired)), Tone: document.Warning},
			changeSummary(c))
	}
	worse := 0
	for i := range c.Verdicts {
		if c.Verdicts[i].Worse() {
			worse++
		}
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("change.counts", len(c.Inputs), len(c.Moved), worse,
		len(c.Verdicts)-worse)},
		document.FormLine{Label: words.Of("change.decision"),
			Boxes: []string{words.Of("change.again"), words.Of("change.note"), words.Of("change.refuse")}},
		document.Blanks{Labels: []string{words.Of("change.who"), words.Of("change.committee")}})
	return s
}

// ruleText is a rule with its value.
func ruleText(f *scaling.Fired) string {
	if math.IsNaN(f.Value) {
		return f.Label
	}
	return f.Label + ": " + number.With(number.Nearest(f.Value, 4), plainUnit(f.Unit))
}

// changeSummary has a row for each rule that a change meets, with how often and
// one place, so that the sheet stays one page.
func changeSummary(c *scaling.Change) document.Block {
	t := document.Table{Caption: words.Of("change.fired"),
		Columns: document.Right(document.Columns("change.rule", "change.times", "change.example"), 1)}
	for i := range c.Fired {
		f := &c.Fired[i]
		first := &f.Met[0]
		t.Rows = append(t.Rows, document.Row(ruleText(f), strconv.Itoa(len(f.Met)),
			words.Of("change.example_of", MetAt(first), first.Was, first.Is)))
	}
	return t
}

// changeFired are all rules that a change meets, each place of its own.
func changeFired(c *scaling.Change) []document.Block {
	if len(c.Fired) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("change.none")}}
	}
	t := document.Table{Caption: words.Of("change.fired_all"),
		Columns: document.Columns("change.rule", "change.where", "change.was",
			"change.is", "change.source")}
	for i := range c.Fired {
		f := &c.Fired[i]
		for j := range f.Met {
			m := &f.Met[j]
			t.Rows = append(t.Rows, document.Row(ruleText(f), MetAt(m), m.Was, m.Is, f.Source+" ("+f.Status+")"))
		}
	}
	return []document.Block{t}
}

func plainUnit(u string) string {
	if u == "1" {
		return ""
	}
	return u
}

func changeInputs(c *scaling.Change) []document.Block {
	if len(c.Inputs) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("change.same")}}
	}
	t := document.Table{Caption: words.Of("change.inputs_caption"),
		Columns: document.Columns("change.where", "change.what", "change.was",
			"change.is")}
	for _, x := range c.Inputs {
		t.Rows = append(t.Rows, document.Row(x.Where, strings.ReplaceAll(x.What, "_", " "), input(x.Was),
			input(x.Is)))
	}
	return []document.Block{t}
}

func input(s string) string { return words.OrDash(plain.Fold(s)) }

func changeMoved(b *builder, c *scaling.Change) []document.Block {
	if len(c.Moved) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("change.still")}}
	}
	t := document.Table{Caption: words.Of("change.moved"),
		Columns: document.Columns("col.figure", "change.was", "change.is", "change.share")}
	for i := range c.Moved {
		m := &c.Moved[i]
		t.Rows = append(t.Rows, document.Row(b.FigureName(&m.Is), b.Options.Units.Whole(&m.Was), b.Options.Units.Whole(&m.Is),
			changeText(m.Share)))
	}
	if len(t.Rows) <= mostMoved {
		return []document.Block{t}
	}
	rest := t
	t.Rows, rest.Rows = t.Rows[:mostMoved], t.Rows[mostMoved:]
	return []document.Block{t, document.Fold{Summary: words.Of("change.more", len(rest.Rows)),
		Blocks: []document.Block{rest}}}
}

// changeText is a change as a share; none where one of the two is not known.
func changeText(share float64) string {
	if math.IsNaN(share) || math.IsInf(share, 0) {
		return words.Of("value.dash")
	}
	return number.Change(share)
}

func changeVerdicts(a, b *builder, c *scaling.Change) []document.Block {
	if len(c.Verdicts) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("change.verdicts_still")}}
	}
	t := document.Table{Caption: words.Of("change.verdicts_caption"),
		Columns: document.Columns("col.figure", "col.limit_basis", "change.was",
			"change.is")}
	for i := range c.Verdicts {
		v := &c.Verdicts[i]
		f, in := v.Is, b
		if f.Figure.IsZero() {
			f, in = v.Was, a
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(in.NameOf(f.Figure)),
			document.Text(in.LimitText(&f.Limit, f.Figure)),
			changeVerdict(&v.Was),
			changeVerdict(&v.Is)})
	}
	return []document.Block{t}
}

// changeVerdict is a verdict, or that there was none.
func changeVerdict(f *figure.Finding) document.Cell {
	if f.Figure.IsZero() {
		return document.Text(words.Of("change.not_there"))
	}
	return draft.VerdictCell(f.Verdict)
}

// MetAt says where a rule is met, what is no longer known or which hold point is new.
func MetAt(m *scaling.Met) string {
	switch {
	case m.Lacks != (working.Missing{}):
		text, _ := words.Ask(m.Lacks)
		return text
	case !m.Stop.IsZero():
		return words.Say(m.Stop)
	}
	return m.Where
}

type Shape struct {
	record.Opening
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
	ID     string      `json:"id"`
	Value  record.Nine `json:"value"`
	Unit   string      `json:"unit"`
	Source string      `json:"source"`
	Status string      `json:"status"`
	Met    []metJSON   `json:"met"`
}

type metJSON struct {
	Where string `json:"where"`
	Was   string `json:"was"`
	Is    string `json:"is"`
}

type inputDiffJSON struct {
	Where string `json:"where"`
	What  string `json:"what"`
	Was   string `json:"was"`
	Is    string `json:"is"`
}

type movedJSON struct {
	ID    string      `json:"id"`
	Was   record.Nine `json:"was"`
	Is    record.Nine `json:"is"`
	Unit  string      `json:"unit"`
	Share record.Nine `json:"share"`
}

type verdictChangeJSON struct {
	ID  string  `json:"id"`
	Was *string `json:"was"`
	Is  *string `json:"is"`
}

// JSON writes a change for programs.
func JSON(w io.Writer, c scaling.Change, o draft.Options) error {
	out := Shape{Opening: record.OpeningOf(Format, o, controlOf(&c, o)),
		Reviewed: changeRouteJSON{c.Reviewed.Case.Route.Title, c.Reviewed.Case.Route.Digest},
		Proposed: changeRouteJSON{c.Proposed.Case.Route.Title, c.Proposed.Case.Route.Digest},
		Fired:    []firedJSON{}, Inputs: []inputDiffJSON{}, Figures: []movedJSON{}, Findings: []verdictChangeJSON{}}
	for _, f := range c.Fired {
		x := firedJSON{ID: f.ID, Value: record.Nine(f.Value), Unit: f.Unit, Source: f.Source, Status: f.Status}
		for i := range f.Met {
			x.Met = append(x.Met, metJSON{MetAt(&f.Met[i]), f.Met[i].Was, f.Met[i].Is})
		}
		out.Fired = append(out.Fired, x)
	}
	for _, x := range c.Inputs {
		out.Inputs = append(out.Inputs, inputDiffJSON(x))
	}
	for i := range c.Moved {
		m := &c.Moved[i]
		out.Figures = append(out.Figures, movedJSON{m.ID.String(), record.Nine(m.Was.Value.V), record.Nine(m.Is.Value.V),
			number.UnitOf(m.Is.Quantity), record.Nine(m.Share)})
	}
	for i := range c.Verdicts {
		v := &c.Verdicts[i]
		out.Findings = append(out.Findings, verdictChangeJSON{v.ID.String(), verdictJSON(&v.Was), verdictJSON(&v.Is)})
	}
	return record.Write(w, out)
}

func verdictJSON(f *figure.Finding) *string {
	if f.Figure.IsZero() {
		return nil
	}
	s := f.Verdict.String()
	return &s
}

var Columns = []string{"kind", "id", "where", "was", "is", "unit"}

// CSV writes a change as rows: rules that fire, inputs, figures, verdicts.
func CSV(w io.Writer, c scaling.Change) error {
	out := csv.NewWriter(w)
	out.Write(Columns)
	for _, f := range c.Fired {
		for i := range f.Met {
			m := &f.Met[i]
			out.Write([]string{"rule", f.ID, record.Guard(MetAt(m)), record.Guard(m.Was), record.Guard(m.Is),
				record.Guard(f.Unit)})
		}
	}
	for _, x := range c.Inputs {
		out.Write([]string{"input", record.Guard(x.What), record.Guard(x.Where), record.Guard(x.Was), record.Guard(x.Is), ""})
	}
	for i := range c.Moved {
		m := &c.Moved[i]
		out.Write([]string{"figure", record.Guard(m.ID.String()), "", record.Machine(m.Is.Quantity, m.Was.Value),
			record.Machine(m.Is.Quantity, m.Is.Value), record.Guard(number.UnitOf(m.Is.Quantity))})
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
		out.Write([]string{"finding", record.Guard(v.ID.String()), "", was, is, ""})
	}
	out.Flush()
	return out.Error()
}
