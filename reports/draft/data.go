package draft

import (
	"math"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// DatumName is the id of a data row, or of what the writer stated with a range.
func DatumName(id datum.ID) string {
	if at, stated := id.Stated(); stated {
		return words.Of("data.stated", route.Told(at))
	}
	return string(id)
}

// DatumNames are the names of some, in their order.
func DatumNames(ids []datum.ID) []string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = DatumName(id)
	}
	return out
}

func DataRange(d chemicals.Datum) string {
	if math.IsNaN(d.Low) || math.IsNaN(d.High) {
		if says, _ := chemicals.NoRange(d.ID); says != "" && d.Doubtful() {
			return words.Of("range.none_since", says)
		}
		return words.Of("range.none")
	}
	return words.Of("range", number.Nearest(d.Low, 9), number.Nearest(d.High, 9))
}

// DataStatus marks what was not seen in a source, so that it stands out in
// print.
func DataStatus(d chemicals.Datum) string {
	s := d.Status
	if d.Doubtful() {
		s = words.Of("data.doubtful", s)
	}
	if d.OverriddenBy != "" {
		s += ", " + words.Of("data.overridden", d.OverriddenBy)
	}
	return s
}

// Sources are the sources of the rows and tables used, in the order of first use.
func (b *Draft) Sources() []chemicals.Source {
	st := b.Review.Case.Store
	if st == nil {
		return nil
	}
	seen := map[string]bool{}
	var out []chemicals.Source
	add := func(keys string) {
		for _, src := range sourcesOf(st, keys) {
			if !seen[src.Key] {
				seen[src.Key] = true
				out = append(out, src)
			}
		}
	}
	for _, d := range b.Review.Used {
		add(d.Source)
	}
	for _, t := range b.Review.Tables {
		add(t.Source)
	}
	return out
}

// SourcesOf resolves the keys of a row, which blanks part.
func SourcesOf(st *chemicals.Store, d chemicals.Datum) []chemicals.Source {
	return sourcesOf(st, d.Source)
}

func sourcesOf(st *chemicals.Store, keys string) []chemicals.Source {
	var out []chemicals.Source
	for _, key := range strings.Fields(keys) {
		if src, ok := st.Source(key); ok {
			out = append(out, src)
		}
	}
	return out
}

func SourceText(s chemicals.Source) string {
	var p []string
	for _, v := range []string{s.Title, s.Publisher, s.Year, s.DOI, s.Section} {
		if v != "" {
			p = append(p, v)
		}
	}
	return strings.Join(p, ", ")
}

func UnitOfDatum(r *hazards.Review, a *chemicals.Applied) string {
	unit, _ := r.Case.Store.UnitOf(a.Override)
	return unit
}
