package review

import (
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// onHand is what the site keeps of a substance; a blank where nobody wrote it down.
func onHand(run *scaling.Run, cas string) document.Cell {
	m, ok := run.OnSite(cas)
	if !ok || m.Top.Unknown() {
		return document.Cell{Blank: true}
	}
	return document.Text(words.Of("materials.on_site", kilograms(m.Top)) + bottlesOf(run, cas))
}

// bottlesOf is in how many bottles the site keeps a substance, and the largest of each entry.
func bottlesOf(run *scaling.Run, cas string) string {
	var said []string
	for i := range run.Substances {
		if run.Substances[i].CAS != cas {
			continue
		}
		for j := range run.Substances[i].Bottles {
			switch x := &run.Substances[i].Bottles[j]; {
			case !x.Stock.Bottle.Set:
				said = append(said, words.Of("materials.no_bottle"))
			default:
				said = append(said, words.Of("materials.bottles", number.Significant(x.Count.V, 6, -1), x.Stock.Bottle.Text))
			}
		}
	}
	return strings.Join(said, "")
}

func kilograms(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return number.Thing{Unit: "kg"}.Bound(n.V, 1)
}

// formed is the most HF that is in any step, all fluoride counted; nil where no step
// holds fluorine.
func (b *builder) formed() *figure.Figure {
	var out *figure.Figure
	for f := range b.Set.Of("fluoride.hf_equivalent") {
		if f.Case.Failure != "" || f.Place.IsZero() {
			continue
		}
		if out == nil || !(f.Danger().V <= out.Danger().V) {
			out = f
		}
	}
	return out
}

// formedRow is the HF that forms, as a material like those from bottles.
func (b *builder) formedRow() [][]document.Cell {
	f := b.formed()
	if f == nil {
		return nil
	}
	return [][]document.Cell{document.Row(words.Of("materials.formed"), "HF", hydrofluoricAcid,
		words.Of("materials.formed_use", b.ValueAndRange(f), f.Place), words.Of("materials.formed_hand"),
		words.Of("value.dash"), words.Of("value.dash"))}
}

const hydrofluoricAcid = "7664-39-3"

// molar is the table of moles and of both units of every strength.
func (b *builder) molar(run *scaling.Run) []document.Block {
	if len(run.Portions) == 0 {
		return nil
	}
	t := document.Table{Caption: words.Of("molar.caption"), Columns: document.Right(document.Columns("col.material",
		"col.step", "molar.mol", "molar.per_phase", "molar.molar", "molar.wt"), 1, 2, 3, 4, 5)}
	for i := range run.Portions {
		p := &run.Portions[i]
		t.Rows = append(t.Rows, document.Row(b.MaterialName(p.Of), number.Nearest(float64(p.Step), 9),
			counted(p.Mol), counted(p.PerPhase), counted(p.Molar), counted(p.WT)))
	}
	if f := b.formed(); f != nil {
		mol, per := scaling.FormedHF(b.Review, f.Danger())
		t.Rows = append(t.Rows, document.Row(words.Of("materials.formed"), f.Place.String(), counted(mol), counted(per),
			b.strengthAt("fluoride.hf_concentration", f), b.strengthAt("fluoride.hf_strength", f)))
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("molar.note"), Tone: document.Note}}
}

func (b *builder) strengthAt(quantity string, of *figure.Figure) string {
	f, ok := b.At(quantity, of.Place)
	if !ok {
		return words.Of("value.not_assessed")
	}
	return counted(f.Danger()) // its column has the unit
}

// counted is a number of the table; a dash for one that is not there.
func counted(n working.Num) string {
	switch {
	case n.None():
		return words.Of("value.dash")
	case n.Unknown():
		return words.Of("value.unknown")
	}
	return number.Nearest(n.V, 3)
}

// airLimits is the limits of all that the air is worked out for, in both units.
func (b *builder) airLimits() []document.Block {
	where := ""
	if s := b.Review.Case.Site; s != nil {
		where = s.Jurisdiction
	}
	all, lowest := breathedTable("breathed.all"), breathedTable("breathed.caption")
	for _, agent := range b.agentsOfTheAir() {
		n := len(all.Rows)
		for _, e := range limit.ExposureAt(agent, where) {
			if e.Kind != limit.Emergency {
				all.Rows = append(all.Rows, breathedRow(agent, &e))
			}
		}
		if len(all.Rows) > n {
			for _, e := range b.lowest(agent) {
				lowest.Rows = append(lowest.Rows, breathedRow(agent, e))
			}
			continue
		}
		dash := words.Of("value.dash")
		lowest.Rows = append(lowest.Rows, document.Row(draft.AgentName(breathedAs, agent), words.Of("breathed.none"),
			dash, dash, dash, dash, dash))
	}
	if len(lowest.Rows) == 0 {
		return []document.Block{document.Paragraph{Text: words.Of("breathed.no_agent")}}
	}
	out := []document.Block{lowest}
	if n := len(all.Rows); n > 0 {
		out = append(out, document.Fold{Summary: words.Of("breathed.fold", n), Blocks: []document.Block{all}})
	}
	return append(out, document.Paragraph{Text: words.Of("breathed.note"), Tone: document.Note})
}

func breathedTable(caption string) document.Table {
	return document.Table{Caption: words.Of(caption), Columns: document.OnScreen(document.Right(document.Columns(
		"breathed.agent", "col.limit", "breathed.ppm", "breathed.mass", "col.document", "col.edition", "col.status"), 2, 3),
		4)}
}

// breathedAs is the quantity whose words and units the limits are written in.
const breathedAs = "air.saturated"

func breathedRow(agent string, e *limit.Exposure) []document.Cell {
	ppm := number.Units{}.Limit(&limit.Limit{Quantity: breathedAs, Value: e.Value, Unit: "ppm"}, agent)
	mass := number.Units{Mass: true}.Amount(breathedAs, agent, e.Value, 0)
	if mass == ppm {
		mass = words.Of("value.unknown")
	}
	return document.Row(draft.AgentName(breathedAs, agent), e.Label, ppm, mass,
		strings.TrimSpace(e.Document+" "+e.Section), e.Edition, e.Status)
}

// agentsOfTheAir are the agents of the figures of the air, in the order of first use: vapours of
// a liquor, and what people breathe of a gas that comes off without one.
func (b *builder) agentsOfTheAir() []string {
	var out []string
	seen := map[string]bool{}
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		inAir := f.Quantity == breathedAs || f.Quantity == "air.breathing_zone"
		if inAir && f.Case.Failure == "" && f.Agent != "" && !seen[f.Agent] {
			seen[f.Agent] = true
			out = append(out, f.Agent)
		}
	}
	return out
}

// trays is how much the tray below the containers has to hold.
func trays(run *scaling.Run) document.Block {
	v := run.Tray.Volume
	if v.None() || v.Unknown() {
		return document.Paragraph{Text: words.Of("tray.unknown"), Tone: document.Warning}
	}
	return document.Paragraph{Text: words.Of("tray.litres", number.Thing{Unit: "L"}.Bound(v.V, 1), run.Tray.Largest)}
}

// thresholds is what the site and this run hold against the quantities of laws.
func (b *builder) thresholds(run *scaling.Run) []document.Block {
	if b.Review.Case.Site == nil {
		return []document.Block{document.Paragraph{Text: words.Of("thresholds.no_site"), Tone: document.Note}}
	}
	t := document.Table{Caption: words.Of("thresholds.caption"), Columns: document.Right(document.Columns("col.material",
		"stock.threshold", "stock.held", "stock.limit", "stock.share", "thresholds.left", "col.verdict"), 2, 3, 4, 5)}
	far := t
	for i := range run.Substances {
		h := &run.Substances[i]
		for j := range h.Shares {
			x := &h.Shares[j]
			share := words.Of("value.unknown")
			if !x.Ratio.Unknown() {
				share = number.Percent(x.Ratio.V, 3, 1)
			}
			into := &t
			if x.Verdict == figure.Within && x.Ratio.V < farWithin {
				into = &far
			}
			into.Rows = append(into.Rows, []document.Cell{document.Text(h.Name),
				document.Text(strings.Join([]string{x.Threshold.Programme, x.Threshold.Tier, x.Threshold.Substance}, ", ")),
				document.Text(kilograms(x.Held)),
				document.Text(number.Thing{Unit: "kg"}.Bound(x.Threshold.Limit, 0)), document.Text(share),
				document.Text(batches(x.Headroom)), draft.VerdictCell(x.Verdict)})
		}
	}
	var out []document.Block
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	if n := len(far.Rows); n > 0 {
		out = append(out, document.Fold{Summary: words.Of("thresholds.far", n), Blocks: []document.Block{far}})
	}
	if out == nil {
		return []document.Block{document.Paragraph{Text: words.Of("stock.no_threshold")}}
	}
	return append(out, document.Paragraph{Text: words.Of("thresholds.note"), Tone: document.Note})
}

// farWithin is the share of a threshold below which it is counted and not printed.
const farWithin = 0.1

// batches is how many runs are left to a threshold; a dash where no run brings any of it.
func batches(n working.Num) string {
	if n.Unknown() {
		return words.Of("value.dash")
	}
	return number.Thing{}.Bound(n.V, -1)
}
