// Package material knows what vessels, linings, lids and seals are made of: by which
// words each material is written, and what it stands of which medium, strength and
// temperature. It must not know any route, nor what is done where one does not stand.
//
// A text is read word by word, never by a part of a word. What stands of it is that of
// the worst material it names; of a lining, or a coat, it is the lining that meets the
// liquor, and the shell behind it that does not. A word that is neither a material nor
// a plain word of the trade leaves the material unknown: what nobody can name stands
// nothing. Where a strength, a temperature or the time of contact is not known, every row
// that could apply does, and the worst of them counts.
package material

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/schemas/columns"
)

// Verdict is what a material stands.
type Verdict uint8

// The verdicts, from the best. Unknown is worse than Limited: it may be No.
const (
	Yes Verdict = iota
	Limited
	Unknown
	No
)

// String is the word of the tables: yes, limited, unknown or no.
func (v Verdict) String() string { return [...]string{"yes", "limited", "unknown", "no"}[v] }

func verdict(word string) Verdict {
	return Verdict(slices.Index([]string{"yes", "limited", "", "no"}, word))
}

// medium is what a liquor can hold that some material does not stand: a column of the
// table of materials. It is there with the substances of a class, or with an element.
type medium struct{ name, class, element, called string }

var media = [...]medium{
	{"hf", "", "F", "acid fluoride"},
	{"acid", "acid", "", "strong acid"},
	{"chloride", "chloride", "", "hydrochloric acid or chloride"},
	{"strong_base", "strong_base", "", "strong base"},
	{"tmaoh", "organic_base", "", "quaternary ammonium hydroxide"},
	{"amine", "amine", "", "ammonia or an amine"},
	{"solvent", "solvent", "", "organic solvent"},
	{"oxidising", "oxidising", "", "oxidising acid, peroxide or another oxidant"},
}

// Media lists them by their names.
func Media() []string {
	out := make([]string, len(media))
	for i := range media {
		out[i] = media[i].name
	}
	return out
}

func mediumOf(name string) *medium {
	for i := range media {
		if media[i].name == name {
			return &media[i]
		}
	}
	return &medium{called: name}
}

// Judges reports whether the table says of a medium what stands it.
func Judges(medium string) bool { return slices.Contains(Media(), medium) }

// Called is a medium in words.
func Called(medium string) string { return mediumOf(medium).called }

// ClassOf is the class of substances that a medium is; "" for one that is there
// wherever an element is.
func ClassOf(medium string) string { return mediumOf(medium).class }

// HeldAs is the element with which a medium is there; "" for a class of substances.
func HeldAs(medium string) string { return mediumOf(medium).element }

// Material is one row of the table.
type Material struct {
	Slug, Name string
	Words      []string
	Class      string // "not named" for one that only says which sort it is, such as plastic
	// Service is the temperature in degC up to which it is used; NaN where none is
	// held. Unlimited: it stands the boiling of any liquor here.
	Service   float64
	Unlimited bool
	// Conductivity is that of heat, W/m/K, with its ends; NaN where none is held here.
	Conductivity, Low, High float64
	Note, Source, Status    string

	stands [len(media)]Verdict
}

// Stand is what is known of one material in one medium.
type Stand struct {
	Verdict
	Note, Source, Status string
}

// Exposure is how strong, how hot and how long a medium is where a material meets it: wt%,
// degC and h. Each is NaN where it is not known, and then every row that could apply does.
type Exposure struct{ Strength, DegC, Hours float64 }

// rule is a row of its own for a medium: it applies between two strengths, two
// temperatures and two times of contact. NaN: no bound.
type rule struct {
	material, medium string
	above, upTo      Exposure
	Stand
}

// applies reports whether a rule is of an exposure, as far as that is known.
func (r *rule) applies(x Exposure) bool {
	return !(x.Strength <= r.above.Strength || x.Strength > r.upTo.Strength || x.DegC <= r.above.DegC ||
		x.DegC > r.upTo.DegC || x.Hours <= r.above.Hours || x.Hours > r.upTo.Hours)
}

// Table is what is held of all materials.
type Table struct {
	rows  []Material
	rules []rule
	words map[string]meaning
	most  int // words of the longest name
}

// meaning is what a word, or some words, of a text are.
type meaning struct {
	row  int  // of the material, -1: none
	coat bool // it says that what is named lines or coats the rest
}

// Text is the three tables: the materials, what they stand that no column of these
// can say, and the other words of the trade.
type Text struct{ Materials, Resistance, Words string }

// Parse reads the tables. The error names file, row and column.
func Parse(text Text) (*Table, error) {
	t := &Table{words: map[string]meaning{}}
	var err error
	n := 0
	t.rows, err = columns.Read("chemicals/data/materials.csv", text.Materials, func(r columns.Row) Material {
		t.called(r, meaning{row: n})
		n++
		return materialOf(r)
	})
	if err != nil {
		return nil, err
	}
	all, err := columns.Read("chemicals/data/material_resistance.csv", text.Resistance, t.rulesOf)
	if err != nil {
		return nil, err
	}
	t.rules = slices.Concat(all...)
	_, err = columns.Read("chemicals/data/material_words.csv", text.Words, func(r columns.Row) bool {
		coat := r.Choice("meaning", "plain", "coat") == "coat"
		at := t.row(r.Text("material"))
		if r.Text("material") != "" && at < 0 {
			r.Fault("material", fmt.Errorf("there is no material %q", r.Text("material")))
		}
		t.called(r, meaning{at, coat})
		return r.Named("note")+r.Named("source")+r.Named("status") != ""
	})
	return t, err
}

func materialOf(r columns.Row) Material {
	m := Material{Slug: r.Named("slug"), Name: r.Named("name"), Words: r.List("words"), Class: r.Named("class"),
		Conductivity: r.Number("conductivity"), Low: r.Number("conductivity_low"), High: r.Number("conductivity_high"),
		Note: r.Text("note"), Source: r.Named("source"), Status: r.Named("status"), Service: math.NaN()}
	if m.Unlimited = r.Text("service") == "none"; !m.Unlimited {
		m.Service = r.Number("service")
	}
	for i := range media {
		m.stands[i] = verdict(r.Choice(media[i].name, "", "yes", "limited", "no"))
	}
	return m
}

func (t *Table) rulesOf(r columns.Row) []rule {
	var out []rule
	for _, slug := range r.List("materials") {
		if t.row(slug) < 0 {
			r.Fault("materials", fmt.Errorf("there is no material %q", slug))
		}
		out = append(out, rule{slug, r.Choice("medium", Media()...),
			Exposure{r.Number("above_wt"), r.Number("above_degc"), r.Number("above_h")},
			Exposure{r.Number("up_to_wt"), r.Number("up_to_degc"), r.Number("up_to_h")},
			Stand{verdict(r.Choice("verdict", "yes", "limited", "no")), r.Text("note"), r.Named("source"), r.Named("status")}})
	}
	return out
}

func (t *Table) row(slug string) int {
	return slices.IndexFunc(t.rows, func(m Material) bool { return m.Slug == slug })
}

// called gives all words of a row a meaning.
func (t *Table) called(r columns.Row, what meaning) {
	for _, w := range r.List("words") {
		if err := t.name(w, what); err != nil {
			r.Fault("words", err)
		}
	}
}

// name gives some words a meaning; none may have two.
func (t *Table) name(written string, what meaning) error {
	w := split(written)
	key := strings.Join(w, " ")
	if old, twice := t.words[key]; twice && old != what || key == "" {
		return fmt.Errorf("the words %q are blank or mean two things", written)
	}
	t.words[key] = what
	t.most = max(t.most, len(w))
	return nil
}

// Rows are the materials held, in the order of the table.
func (t *Table) Rows() []Material { return slices.Clone(t.rows) }

// Stands is what is known of a material in a medium as it meets it. A row of its own for
// the medium counts before the column of the table.
func (t *Table) Stands(m *Material, medium string, x Exposure) Stand {
	worst := Stand{Verdict: Unknown}
	found := false
	for i := range t.rules {
		r := &t.rules[i]
		if r.material != m.Slug || r.medium != medium || !r.applies(x) {
			continue
		}
		if !found || r.Verdict > worst.Verdict {
			worst, found = r.Stand, true
		}
	}
	if found {
		return worst
	}
	if i := slices.Index(Media(), medium); i >= 0 && m.stands[i] != Unknown {
		return Stand{m.stands[i], m.Note, m.Source, m.Status}
	}
	return worst
}

// WallStands is what is known of a wall in a medium: that of the worst material that
// meets the liquor, and unknown where not all of that is held.
func (t *Table) WallStands(w *Wall, medium string, x Exposure) Stand {
	worst := Stand{}
	if !w.Known() {
		worst.Verdict = Unknown
	}
	for i, m := range w.Wetted {
		if s := t.Stands(m, medium, x); i == 0 && w.Known() || s.Verdict > worst.Verdict {
			worst = s
		}
	}
	return worst
}
