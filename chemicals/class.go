package chemicals

import (
	"io/fs"
	"slices"
	"strings"

	"etchbound/schemas/columns"
)

// A class is what a rule about substances looks for: what must not meet, what a
// material does not stand, how something is handled. What follows from the row of a
// substance is worked out here; the rest is a row of the table of classes.

// follows are the classes that follow from what the row of a substance says.
var follows = [...]struct {
	class    string
	elements []string // that each of the class holds
	is       func(*Substance) bool
}{
	{"acid", nil, func(s *Substance) bool { return s.Kind == "acid" || s.Acid > 0 && s.Kind != "water" }},
	{"free_acid", nil, func(s *Substance) bool { return s.Kind == "acid" }},
	{"hf", []string{"F"}, func(s *Substance) bool { return s.Acid > 0 && s.Formula.Count("F") > 0 }},
	{"fluoride_salt", []string{"F"}, func(s *Substance) bool { return s.Kind == "fluoride_salt" }},
	{"carbonate", []string{"C", "O"}, func(s *Substance) bool { return s.Kind == "carbonate" }},
	{"ammonia", []string{"N"}, func(s *Substance) bool { return s.base() && s.Ammonium > 0 }},
	{"strong_base", nil, (*Substance).strongBase},
	{"organic_base", []string{"C"}, func(s *Substance) bool { return s.strongBase() && s.Formula.Count("C") > 0 }},
	{"ammonium", []string{"N"}, func(s *Substance) bool { return s.Ammonium > 0 }},
	{"oxidant", nil, func(s *Substance) bool { return s.Oxidant > 0 || s.Kind == "oxidant" }},
	{"oxidiser", nil, func(s *Substance) bool { return s.Kind == "oxidant" }},
	{"chloride", []string{"Cl"}, func(s *Substance) bool { return s.Formula.Count("Cl") > 0 && s.Kind != "oxidant" }},
	{"calcium", []string{"Ca"}, func(s *Substance) bool { return s.Formula.Count("Ca") > 0 }},
	{"organic", []string{"C", "H"}, func(s *Substance) bool {
		return s.Formula.Count("C") > 0 && s.Formula.Count("H") > 0 && s.Kind != "carbonate"
	}},
	{"solvent", nil, func(s *Substance) bool { return s.Kind == "solvent" }},
	{"powder", nil, func(s *Substance) bool { return s.Kind == "precursor_metal" }},
	{"hydrogenous", []string{"H"}, func(s *Substance) bool { return s.Kind != "water" && s.Formula.Count("H") > 0 }},
	{"not_held", nil, func(s *Substance) bool { return s.NotHeld }},
}

func (s *Substance) base() bool { return s.Acid < 0 && s.Kind != "carbonate" }

// strongBase reports a base that is not ammonia.
func (s *Substance) strongBase() bool { return s.base() && !(s.Ammonium > 0) }

// class is a row of the table of classes.
type class struct {
	name                      string
	formulas, words, elements []string
}

var classes = embedded(loadClasses)

func loadClasses(fsys fs.FS) ([]class, error) {
	return read(fsys, "data/classes.csv", func(r columns.Row) class {
		_ = r.Named("says") + r.Named("source") + r.Named("status")
		return class{r.Named("class"), r.List("formulas"), r.List("words"), r.List("elements")}
	})
}

// Classes are all classes that are looked for.
func Classes() []string {
	var out []string
	for _, f := range follows {
		out = append(out, f.class)
	}
	for _, c := range classes() {
		if !slices.Contains(out, c.name) {
			out = append(out, c.name)
		}
	}
	return out
}

// Is reports whether a substance is of a class; of one that is not held, whether its
// name or its formula says so.
func (s *Substance) Is(class string) bool { return slices.Contains(s.Classes(), class) }

// MayBe reports whether a substance is of a class or, where the data do not hold it, may
// be: whether its formula, or that none is stated, leaves room for what the class holds.
func (s *Substance) MayBe(class string) bool {
	return s.Is(class) || s.NotHeld && !slices.ContainsFunc(elementsOf(class), func(e string) bool { return !s.May(e) })
}

// elementsOf are the elements that each substance of a class holds.
func elementsOf(name string) []string {
	for _, f := range follows {
		if f.class == name {
			return f.elements
		}
	}
	for _, c := range classes() {
		if c.name == name {
			return c.elements
		}
	}
	return nil
}

// Classes are all classes of a substance. The slice is shared and not to be changed.
func (s *Substance) Classes() []string {
	if s.classes == nil {
		return s.classify(classes())
	}
	return s.classes
}

// classify works out the classes of a substance.
func (s *Substance) classify(rows []class) []string {
	out := []string{}
	add := func(name string, is bool) {
		if is && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, f := range follows {
		add(f.class, f.is(s))
	}
	for i := range rows {
		add(rows[i].name, rows[i].has(s))
	}
	return out
}

// has reports whether the formula or a word of a name of a substance is one of a class.
func (c *class) has(s *Substance) bool {
	if s.Formula.Text != "" && slices.Contains(c.formulas, s.Formula.Text) {
		return true
	}
	names := append([]string{s.Name, strings.ReplaceAll(s.Slug, "_", " ")}, s.Synonyms...)
	return slices.ContainsFunc(c.words, func(word string) bool {
		return slices.ContainsFunc(names, func(n string) bool { return strings.Contains(strings.ToLower(n), word) })
	})
}
