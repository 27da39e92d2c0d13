package draft

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// A held is one figure with every limit that it is not within.
type held struct {
	of      figure.ID
	name    string
	limits  []string
	says    []string
	verdict figure.Verdict
}

// hold puts a finding to those on the same figure.
func (b *Draft) hold(rows []*held, f *figure.Finding) []*held {
	at := slices.IndexFunc(rows, func(h *held) bool { return h.of == f.Figure })
	if at < 0 {
		at = len(rows)
		rows = append(rows, &held{of: f.Figure, name: b.NameOf(f.Figure)})
	}
	h := rows[at]
	h.verdict = max(h.verdict, f.Verdict)
	h.limits = append(h.limits, words.Of("held.limit", b.LimitText(&f.Limit, f.Figure), b.Margin(f)))
	if says := plain.Fold(words.Say(f.Says)); !f.Says.IsZero() && !slices.Contains(h.says, says) {
		h.says = append(h.says, says)
	}
	return rows
}

// heldTable has a row for each figure, or for several of which the same is so. What a
// finding means is said once where it stays the same from row to row.
func heldTable(rows []*held) document.Table {
	t := document.Table{Caption: words.Of("held.caption"),
		Columns: document.Columns("col.figure", "held.limits", "col.verdict", "held.means")}
	for _, h := range rows {
		row := []document.Cell{document.Text(h.name), document.Text(strings.Join(h.limits, "; ")),
			VerdictCell(h.verdict), document.Text(strings.Join(h.says, " "))}
		if !Joins(t.Rows, row) {
			t.Rows = append(t.Rows, row)
		}
	}
	for i := len(t.Rows) - 1; i > 0; i-- {
		if c := &t.Rows[i][3]; c.Text != "" && c.Text == t.Rows[i-1][3].Text {
			c.Text = words.Of("held.same")
		}
	}
	return t
}
