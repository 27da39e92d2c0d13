package reports

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// BuildStock is what a site holds and what one run of every route takes, as a
// document.
func BuildStock(h *scaling.Holdings, o Options) Document {
	d := Document{Title: say("stock.title"), Lang: say("lang"), Paper: o.Paper, Digest: shortDigest(digestOf(h))}
	top := Section{Key: "page-1", Title: d.Title,
		Blocks: []Block{Paragraph{Text: say("deference.line")}, Paragraph{Text: say("stock.lead", len(h.Routes))}}}
	if h.Site == nil {
		top.Blocks = append(top.Blocks, Paragraph{say("stock.no_site"), Warning})
	} else if h.Site.Jurisdiction == "" {
		top.Blocks = append(top.Blocks, Paragraph{say("stock.no_jurisdiction"), Warning})
	}
	d.Sections = []Section{top,
		{Key: "thresholds", Title: say("stock.shares"), Blocks: stockShares(h)},
		{Key: "substances", Title: say("stock.substances"), Blocks: stockMasses(h)},
		{Key: "hood", Title: say("stock.hood"), Blocks: stockHood(h)},
		{Key: "routes", Title: say("stock.routes"), Blocks: stockRoutes(h)}}
	return d
}

// digestOf stands for all files at once: another route or site gives another.
func digestOf(h *scaling.Holdings) string {
	all := sha256.New()
	for _, r := range h.Routes {
		io.WriteString(all, r.Digest+"\n")
	}
	if h.Site != nil {
		io.WriteString(all, "site "+h.Site.Digest+"\n")
	}
	return hex.EncodeToString(all.Sum(nil))
}

func stockShares(h *scaling.Holdings) []Block {
	t := Table{Caption: say("stock.shares_caption"),
		Columns: right(columns("col.material", "stock.threshold", "stock.held", "stock.limit", "stock.share", "col.verdict",
			"stock.counts"), 2, 3, 4)}
	for i := range h.Substances {
		s := &h.Substances[i]
		for j := range s.Shares {
			x := &s.Shares[j]
			t.Rows = append(t.Rows, []Cell{text(s.Name + " (" + s.CAS + ")"), text(thresholdName(x.Threshold)),
				text(kilos(x.Held, 1)),
				text(kilos(working.Exact("T", "kg", x.Threshold.Limit, ""), 0)), text(shareText(x.Ratio)), verdictCell(x.Verdict),
				text(shareNote(x))})
		}
	}
	if len(t.Rows) == 0 {
		return []Block{Paragraph{Text: say("stock.no_threshold")}}
	}
	return []Block{t, Paragraph{Text: say("stock.shares_note"), Tone: Note}}
}

func thresholdName(t *scaling.Threshold) string {
	from := slices.DeleteFunc([]string{t.Document, t.Section, t.Edition}, func(s string) bool { return s == "" })
	return t.Programme + ", " + t.Tier + ": " + t.Substance + " (" + strings.Join(from, ", ") + ")"
}

// shareNote is what counts, what does not, what is missing, and whether the
// threshold itself was seen.
func shareNote(x *scaling.Share) string {
	var out []string
	if x.Threshold.Note != "" {
		out = append(out, x.Threshold.Note)
	}
	if !x.Left.Unknown() && x.Left.V > 0 {
		out = append(out, say("stock.left", kilos(x.Left, 1)))
	}
	if x.Ratio.Unknown() {
		out = append(out, say("stock.missing", strings.Join(words.Names(x.Ratio.Missing()), ", ")))
	}
	if x.Threshold.Status == "memory" {
		out = append(out, say("stock.memory"))
	}
	return strings.Join(out, "; ")
}

func stockMasses(h *scaling.Holdings) []Block {
	t := Table{Caption: say("stock.masses_caption"),
		Columns: right(columns("col.material", "col.cas", "stock.sum", "stock.largest", "stock.on_site", "stock.runs",
			"stock.strongest", "stock.taken"), 2, 3, 4, 5, 6)}
	for i := range h.Substances {
		s := &h.Substances[i]
		t.Rows = append(t.Rows, []Cell{text(s.Name), text(s.CAS), text(massText(s.Sum.Mass)), text(massText(s.Largest.Mass)),
			text(massText(s.Stock)), text(rounded(s.Runs, 3, -1)), text(strength(s.Strongest)), text(takenBy(s))})
	}
	out := []Block{t}
	if x, there := h.AsHF(); there {
		out = append(out, Paragraph{Text: say("stock.as_hf", massText(x.Runs), massText(x.Stock)), Tone: Warning})
	}
	return append(out, Paragraph{Text: say("stock.masses_note"), Tone: Note})
}

// massText is a mass, its upper end where it has one, or what is missing.
func massText(m scaling.Mass) string {
	if m.Mid.Unknown() {
		return say("stock.unknown", strings.Join(words.Names(m.Mid.Missing()), ", "))
	}
	if mid, top := kilos(m.Mid, 0), kilos(m.Top, 1); round9(m.Top.V) != round9(m.Mid.V) {
		return say("stock.up_to", mid, top)
	}
	return kilos(m.Mid, 0)
}

func takenBy(s *scaling.Holding) string {
	if len(s.Takes) == 0 {
		return say("stock.by_none")
	}
	out := make([]string, 0, 8)
	for _, t := range s.Takes {
		if len(out) == 8 {
			return strings.Join(out, ", ") + " " + say("stock.by_more", len(s.Takes)-8)
		}
		out = append(out, strconv.Itoa(t.Route+1))
	}
	return strings.Join(out, ", ")
}

func stockHood(h *scaling.Holdings) []Block {
	l := &h.Hood
	t := Table{Caption: say("stock.hood_caption"),
		Columns: right(columns("stock.need", "stock.amount", "stock.of_flow", "stock.missing_head"), 1, 2)}
	none := working.Absent("x", "1")
	for _, r := range []struct {
		label      string
		need, part working.Num
	}{{say("stock.hydrogen"), l.Hydrogen, none}, {say("stock.dilution"), l.Dilution, l.DilutionShare},
		{say("stock.exhaust"), l.Exhaust, l.ExhaustShare}, {say("stock.flow"), l.Flow, none}} {
		part := shareText(r.part)
		if r.part.Unknown() && len(r.part.Missing()) == 0 {
			part = say("value.dash")
		}
		t.Rows = append(t.Rows, []Cell{text(r.label), text(measureNum(r.need)), text(part),
			text(fewOf(words.Names(r.need.Missing())))})
	}
	return []Block{Paragraph{Text: assumes(h)}, t, Paragraph{Text: say("stock.hood_note"), Tone: Note}}
}

// assumes says which routes run at once.
func assumes(h *scaling.Holdings) string {
	if h.SameDay {
		return say("stock.one_day")
	}
	return say("stock.one_at_a_time")
}

// fewOf names what is missing; of many only the first and how many more.
func fewOf(missing []string) string {
	if n := len(missing); n > 6 {
		return strings.Join(missing[:6], ", ") + " " + say("stock.by_more", n-6)
	}
	return strings.Join(missing, ", ")
}

func stockRoutes(h *scaling.Holdings) []Block {
	t := Table{Caption: say("stock.routes_caption"),
		Columns: right(columns("stock.number", "stock.file", "stock.route_title", "stock.hydrogen", "stock.dilution",
			"stock.exhaust"), 3, 4, 5)}
	for i, r := range h.Routes {
		l := &h.Hood.Routes[i]
		t.Rows = append(t.Rows, []Cell{text(strconv.Itoa(i + 1)), text(r.Name), text(r.Title), text(measureNum(l.Hydrogen)),
			text(measureNum(l.Dilution)), text(measureNum(l.Exhaust))})
	}
	return []Block{t}
}

func kilos(n working.Num, way int) string {
	if n.Unknown() {
		return say("value.unknown")
	}
	return with(rounded(n, 4, way), "kg")
}

// rounded is a number rounded towards way, or the word for unknown.
func rounded(n working.Num, digits, way int) string {
	if n.Unknown() {
		return say("value.unknown")
	}
	return significant(n.V, digits, way)
}

func measureNum(n working.Num) string {
	if n.Unknown() {
		return say("value.unknown")
	}
	return with(significant(n.V, 3, 1), n.Unit)
}

func shareText(n working.Num) string {
	if n.Unknown() {
		return say("value.unknown")
	}
	return significant(100*n.V, 3, 1) + " %"
}

func strength(n working.Num) string {
	if n.Unknown() {
		return say("value.unknown")
	}
	return significant(100*n.V, 3, 1) + " wt%"
}
