package reports

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"etchbound/chemicals"
)

// WriteData writes the rows of data about an id, a beginning of ids or a
// substance (name, formula, slug or CAS number), with value, range, unit,
// status and source. Nothing found is an error that offers the nearest.
func WriteData(w io.Writer, st *chemicals.Store, query string) error {
	found := dataRows(st, query)
	if len(found) == 0 {
		return fmt.Errorf("%s", say("data.unknown", query, strings.Join(nearestData(st, query), ", ")))
	}
	t := tabwriter.NewWriter(w, 2, 0, 2, ' ', 0)
	head := []string{"col.id", "col.symbol", "col.value", "col.range", "col.status", "col.source", "col.note"}
	for i, k := range head {
		head[i] = say(k)
	}
	fmt.Fprintln(t, strings.Join(head, "\t"))
	for _, d := range found {
		fmt.Fprintln(t, strings.Join([]string{d.ID, d.Symbol, measure(d.Value, 9, d.Unit), dataRange(d), dataStatus(d),
			strings.Trim(d.Source+" "+fold(d.Where), " "), fold(d.Note)}, "\t"))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	return writeSources(w, st, found)
}

// dataRows picks the rows that bear the query as id, as beginning of the id or
// as one dotted part of it, under any name of the substance.
func dataRows(st *chemicals.Store, query string) []chemicals.Datum {
	query = strings.TrimSpace(query)
	if query == "" {
		return nil
	}
	names := []string{query}
	if s, ok := chemicals.Library().Find(query); ok {
		names = append(names, s.Slug, s.Formula.Text)
		if s.Solution != "" {
			names = append(names, s.Solution)
		}
	}
	var out []chemicals.Datum
	for _, d := range st.Rows() {
		if d.ID == query || strings.HasPrefix(d.ID, query+".") || hasPart(d.ID, names) {
			out = append(out, d)
		}
	}
	return out
}

func hasPart(id string, names []string) bool {
	for p := range strings.SplitSeq(id, ".") {
		if slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(n, p) }) {
			return true
		}
	}
	return false
}

func nearestData(st *chemicals.Store, query string) []string {
	var ids []string
	for _, d := range st.Rows() {
		ids = append(ids, d.ID)
	}
	return append(nearestOf(query, ids, 3), chemicals.Library().Nearest(query, 2)...)
}

func writeSources(w io.Writer, st *chemicals.Store, found []chemicals.Datum) error {
	seen := map[string]bool{}
	for _, d := range found {
		for _, src := range sourcesOf(st, d) {
			if seen[src.Key] {
				continue
			}
			if len(seen) == 0 {
				if _, err := fmt.Fprintf(w, "\n%s\n", say("sources.caption")); err != nil {
					return err
				}
			}
			seen[src.Key] = true
			if _, err := fmt.Fprintf(w, "%s: %s\n", src.Key, sourceText(src)); err != nil {
				return err
			}
		}
	}
	return nil
}
