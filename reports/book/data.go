package book

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// WriteData writes the rows of data about an id, a beginning of ids or a
// substance (name, formula, slug or CAS number), with value, range, unit,
// status and source. Nothing found is an error that offers the nearest.
func WriteData(w io.Writer, st *chemicals.Store, query string) error {
	query = strings.TrimSpace(query)
	sub, isSub := chemicals.Library().Find(query)
	found := dataRows(st, query, sub)
	if len(found) == 0 && !isSub {
		return fmt.Errorf("%s", words.Of("data.unknown", query, strings.Join(nearestData(st, query), ", ")))
	}
	if isSub {
		if _, err := fmt.Fprintln(w, words.Of("data.substance", sub.Name, sub.Formula.Text, words.OrNone(sub.CAS),
			words.OrNone(strings.Join(sub.Synonyms, ", ")))); err != nil {
			return err
		}
	}
	if len(found) == 0 {
		_, err := fmt.Fprintln(w, words.Of("data.no_rows"))
		return err
	}
	t := tabwriter.NewWriter(w, 2, 0, 2, ' ', 0)
	head := []string{"col.id", "col.symbol", "col.value", "col.range", "col.status", "col.source", "col.note"}
	for i, k := range head {
		head[i] = words.Of(k)
	}
	fmt.Fprintln(t, strings.Join(head, "\t"))
	for _, d := range found {
		fmt.Fprintln(t, strings.Join([]string{string(d.ID), d.Symbol, number.Measure(d.Value, 9, d.Unit), draft.DataRange(d),
			draft.DataStatus(d),
			strings.Trim(d.Source+" "+plain.Fold(d.Where), " "), plain.Fold(d.Note)}, "\t"))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	return writeSources(w, st, found)
}

// dataRows picks the rows of a substance, or those whose id is the query or
// begins with it; without a query, all.
func dataRows(st *chemicals.Store, query string, sub *chemicals.Substance) []chemicals.Datum {
	var out []chemicals.Datum
	for _, d := range st.Rows() {
		switch {
		case d.ID.Begins(query):
		case sub != nil && ofSubstance(d.ID.Key(), sub):
		default:
			continue
		}
		out = append(out, d)
	}
	return out
}

// ofSubstance reports whether a row is about a substance: about its formula in whatever state,
// its solution in water, its element, or itself.
func ofSubstance(k datum.Key, s *chemicals.Substance) bool {
	if k.Kind == nil {
		return false
	}
	switch k.Kind.Of {
	case datum.Formula:
		return k.Bare() == s.Formula.Text || s.Solution != "" && k.Subject == s.Solution+"_aq"
	case datum.Element:
		return k.Subject == s.Formula.Text
	case datum.Substance:
		return k.Subject == s.Slug
	case datum.Solution:
		return k.Subject == s.Solution
	}
	return k.Kind.About == s.Slug
}

// nearestData offers substances first, then the ids whose beginning is nearest.
func nearestData(st *chemicals.Store, query string) []string {
	out := chemicals.Library().Nearest(query, 3)
	heads := map[string]datum.ID{}
	var names []string
	for _, d := range st.Rows() {
		head := d.ID.Head(len(query))
		if _, ok := heads[head]; !ok {
			heads[head] = d.ID
			names = append(names, head)
		}
	}
	for _, h := range nearestOf(strings.ToLower(query), names, 2) {
		out = append(out, string(heads[h]))
	}
	return out
}

func writeSources(w io.Writer, st *chemicals.Store, found []chemicals.Datum) error {
	seen := map[string]bool{}
	for _, d := range found {
		for _, src := range draft.SourcesOf(st, d) {
			if seen[src.Key] {
				continue
			}
			if len(seen) == 0 {
				if _, err := fmt.Fprintf(w, "\n%s\n", words.Of("sources.caption")); err != nil {
					return err
				}
			}
			seen[src.Key] = true
			if _, err := fmt.Fprintf(w, "%s: %s\n", src.Key, draft.SourceText(src)); err != nil {
				return err
			}
		}
	}
	return nil
}
