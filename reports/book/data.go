package book

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"etchbound/chemicals"
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
		fmt.Fprintln(t, strings.Join([]string{d.ID, d.Symbol, number.Measure(d.Value, 9, d.Unit), draft.DataRange(d),
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
		case query == "", strings.HasPrefix(strings.ToLower(d.ID), strings.ToLower(query)):
		case sub != nil && ofSubstance(d.ID, sub):
		default:
			continue
		}
		out = append(out, d)
	}
	return out
}

// ofSubstance reports whether a row is about a substance: a part of its id is
// the slug, the aqueous model or the formula, with or without its phase.
func ofSubstance(id string, s *chemicals.Substance) bool {
	if _, rest, ok := strings.Cut(id, "."); ok {
		for _, phase := range []string{"", "(s)", "(l)", "(g)", "(aq)"} {
			if rest == s.Formula.Text+phase {
				return true
			}
		}
	}
	if s.Solution != "" && strings.Contains(id, "."+s.Solution+"_aq.") {
		return true
	}
	return len(s.Slug) > 2 && hasPart(id, []string{s.Slug})
}

func hasPart(id string, names []string) bool {
	for p := range strings.SplitSeq(id, ".") {
		if slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(n, p) }) {
			return true
		}
	}
	return false
}

// nearestData offers substances first, then the ids whose beginning is nearest.
func nearestData(st *chemicals.Store, query string) []string {
	out := chemicals.Library().Nearest(query, 3)
	heads := map[string]string{}
	var names []string
	for _, d := range st.Rows() {
		head := strings.ToLower(d.ID[:min(len(d.ID), len(query))])
		if _, ok := heads[head]; !ok {
			heads[head] = d.ID
			names = append(names, head)
		}
	}
	for _, h := range nearestOf(strings.ToLower(query), names, 2) {
		out = append(out, heads[h])
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
