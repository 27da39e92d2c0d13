package review

import (
	"maps"
	"slices"
	"strings"

	"etchbound/chemicals/classifying"
	"etchbound/hazards/labelling"
	"etchbound/reports/document"
	"etchbound/reports/words"
)

// classes are the hazard statements of what is delivered and of each liquor: a row a
// label, and below the statements of all in full words, each once.
func (b *builder) classes() []document.Block {
	t := document.Table{Caption: words.Of("classes.caption"), Columns: document.Columns("classes.of", "classes.word",
		"classes.codes", "classes.pictograms", "classes.carried", "classes.stands")}
	var codes document.List
	status := map[string]string{} // of a statement, the least sure of all that have it
	for i := range b.Review.Labels {
		l := &b.Review.Labels[i]
		t.Rows = append(t.Rows, document.Row(b.labelled(l), signal(l), statements(l),
			words.OrDash(strings.Join(l.Pictograms(), ", ")), carried(l), stands(l)))
		for _, f := range l.Classes {
			text := words.Of("classes.in_full_line", f.Class.Code, f.Class.Statement)
			status[text] = classifying.LessSure(status[text], classifying.LessSure(f.Status, f.Class.Status))
		}
	}
	if t.Rows == nil {
		return []document.Block{document.Paragraph{Text: words.Of("classes.none")}}
	}
	for _, text := range slices.Sorted(maps.Keys(status)) {
		codes.Items = append(codes.Items, words.Of("classes.in_full_status", text, status[text]))
	}
	return []document.Block{t, document.Paragraph{Text: words.Of("classes.in_full")}, codes,
		document.Paragraph{Text: words.Of("classes.note")}}
}

// labelled is what a label is of, with what a reader has to know of it.
func (b *builder) labelled(l *labelling.Label) string {
	out := ""
	switch {
	case l.Substance != nil && l.Strength != "":
		out = words.Of("classes.bottle_at", l.Substance.Name, l.Strength)
	case l.Substance != nil:
		out = words.Of("classes.bottle", l.Substance.Name)
	case len(l.Steps) == 0:
		out = words.Of("classes.end", l.Place)
	default:
		out = words.Of("classes.liquor", l.Place, strings.Join(words.Runs(l.Steps), ", "))
	}
	switch {
	case l.Hydrofluoric && l.Dried:
		out += words.Of("classes.dried")
	case l.Hydrofluoric && l.Dry:
		out += words.Of("classes.dry")
	case l.Hydrofluoric && l.Substance == nil:
		out += words.Of("classes.hydrofluoric")
	}
	if l.FormsIn > 0 {
		out += words.Of("classes.forms", l.FormsIn)
	}
	if l.Would {
		out += words.Of("classes.would")
	}
	if l.Extreme {
		out += words.Of("classes.extreme")
	}
	if l.Neutralised {
		out += words.Of("classes.neutralised")
	}
	if l.Product {
		out += words.Of("classes.product")
	}
	return out
}

func signal(l *labelling.Label) string {
	if s := l.Signal(); s != "" {
		return words.Of("signal." + s)
	}
	return words.Of("value.dash")
}

// statements are the codes of a label, and what has none because nothing is held of it.
func statements(l *labelling.Label) string {
	var out []string
	for _, f := range l.Classes {
		if !slices.Contains(out, f.Class.Code) {
			out = append(out, f.Class.Code)
		}
	}
	text := strings.Join(out, ", ")
	switch {
	case len(l.NotHeld) > 0 && text != "":
		return words.Of("classes.and_unknown", text, strings.Join(l.NotHeld, ", "))
	case len(l.NotHeld) > 0:
		return words.Of("classes.unknown", strings.Join(l.NotHeld, ", "))
	case text == "":
		return words.Of("classes.below")
	}
	return text
}

func carried(l *labelling.Label) string {
	if l.Carried == nil {
		if len(l.Classes)+len(l.NotHeld) == 0 {
			return words.Of("value.dash")
		}
		return words.Of("classes.no_entry")
	}
	e := l.Carried
	if e.Free {
		return words.Of("classes.free", e.Status)
	}
	class := e.Class
	if e.Subsidiary != "" {
		class += " (" + e.Subsidiary + ")"
	}
	return words.Of("classes.entry", e.Number, class, words.OrDash(e.Group))
}

func stands(l *labelling.Label) string {
	var out []string
	for _, s := range l.Stands {
		out = append(out, s.Group)
	}
	if out == nil {
		return words.Of("classes.no_group")
	}
	return strings.Join(out, ", ")
}
