// Package classifying knows the classes of hazard of substances, and which classes a
// mixture of them has, the entry under which it is carried, and where its bottle stands.
// It must not know any route, nor what reacts in one: whoever asks says what is there and
// how much.
//
// The specific concentration limits of a substance count where it has some, the general
// ones where not; shares that count together are added as parts of their limits. The
// estimate of acute toxicity, with shares in wt%, is
//
//	100 / ATE = sum over the parts of share / ATE of the part
//
// What has no row is not known, and is named; it is never without a class. Start at
// Mixture.
package classifying

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/schemas/columns"
)

//go:embed classes.csv
var classTable string

//go:embed limits.csv
var limitTable string

//go:embed substances.csv
var substanceTable string

// statuses are what a row may say of itself, the surest first.
var statuses = []string{"read", "two-sources", "computed", "memory", "assumed"}

// Class is one class of hazard with its statement.
type Class struct {
	Key, Family string
	Rank        int // 1 is the severest of the family
	Name        string
	Code        string // of the statement
	Statement   string // in full words
	Signal      string // danger, warning or none
	Pictogram   string // its name, or none
	Source      string
	Status      string

	ate float64 // converted estimate, mg/kg or mg/L; NaN where none belongs to the class
	to  float64 // highest estimate of the class
}

// general is from which share, in wt%, a class counts that has no limit of its own.
type general struct {
	from        float64
	adds        bool
	becomes     string
	becomesFrom float64
}

// own is a limit of one substance: the class that begins at a share, in wt%.
type own struct {
	class *Class
	from  float64
}

// row is what is held of one substance.
type row struct {
	classes        []*Class
	limits         []own
	source, status string
}

type tables struct {
	classes    []*Class
	families   []string // in order
	byKey      map[string]*Class
	generals   map[string]general
	substances map[string]*row // by slug
}

var held = sync.OnceValue(func() *tables {
	t := &tables{byKey: map[string]*Class{}, generals: map[string]general{}, substances: map[string]*row{}}
	t.classes = columns.Must("chemicals/classifying/classes.csv", classTable, classOf)
	for _, c := range t.classes {
		t.byKey[c.Key] = c
		if !slices.Contains(t.families, c.Family) {
			t.families = append(t.families, c.Family)
		}
	}
	columns.Must("chemicals/classifying/limits.csv", limitTable, func(r columns.Row) bool {
		_ = r.Named("source") + r.Choice("status", statuses...)
		key := r.Named("class")
		if t.byKey[key] == nil {
			r.Fault("class", fmt.Errorf("%s is no class", key))
		}
		t.generals[key] = general{r.Stated("from"), r.Yes("adds"), r.Text("becomes"), r.Number("becomes_from")}
		return true
	})
	columns.Must("chemicals/classifying/substances.csv", substanceTable, func(r columns.Row) bool {
		t.read(r)
		return true
	})
	return t
})

func classOf(r columns.Row) *Class {
	return &Class{Key: r.Named("class"), Family: r.Named("family"), Rank: r.Count("rank"), Name: r.Named("name"),
		Code: r.Named("code"), Statement: r.Named("statement"), Signal: r.Choice("signal", "danger", "warning", "none"),
		Pictogram: r.Named("pictogram"), Source: r.Named("source"), Status: r.Choice("status", statuses...),
		ate: r.Number("ate"), to: r.Number("to")}
}

// read takes in what is held of a substance.
func (t *tables) read(r columns.Row) {
	_ = r.Text("note")
	name := r.Named("substance")
	s, there := chemicals.Library().Find(name)
	if !there {
		r.Fault("substance", fmt.Errorf("%s is no substance that is held", name))
		return
	}
	x := &row{source: r.Text("source"), status: r.Choice("status", statuses...)}
	for _, key := range r.List("classes") {
		switch c := t.byKey[key]; {
		case c != nil:
			x.classes = append(x.classes, c)
		case key != "none":
			r.Fault("classes", fmt.Errorf("%s is no class", key))
		}
	}
	for _, text := range r.List("limits") {
		key, band, _ := strings.Cut(text, ":")
		from, _, _ := strings.Cut(band, "-")
		v, err := strconv.ParseFloat(from, 64)
		if t.byKey[key] == nil || err != nil {
			r.Fault("limits", fmt.Errorf("%s is no limit: a class, a colon and the share it begins at", text))
			continue
		}
		x.limits = append(x.limits, own{t.byKey[key], v})
	}
	t.substances[s.Slug] = x
}

// Held reports whether the classes of a substance are held, one without any included.
func Held(s *chemicals.Substance) bool { return s != nil && held().substances[s.Slug] != nil }

// limit is the share in wt% from which a part alone gives a class or a severer one of its
// family: its own limit, else the general one of what it is, or of what that becomes, step by
// step: a hundred times chronic 1 counts as chronic 3 (Regulation (EC) 1272/2008, table 4.1.2).
// NaN where it never does.
func (x *row) limit(t *tables, c *Class) float64 {
	least, any := math.NaN(), false
	for _, o := range x.limits {
		if o.class.Family != c.Family {
			continue
		}
		any = true
		if o.class.Rank <= c.Rank && !(o.from >= least) {
			least = o.from
		}
	}
	if any {
		return least
	}
	for _, b := range x.classes {
		if b.Family != c.Family || b.ate == b.ate {
			continue
		}
		for times := 1.0; b != nil && b.Family == c.Family; {
			g := t.generals[b.Key]
			if from := g.from * times; b.Rank <= c.Rank && !(from >= least) {
				least = from
			}
			if b = t.byKey[g.becomes]; b != nil {
				times *= g.becomesFrom / t.generals[b.Key].from
			}
		}
	}
	return least
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return classTable + limitTable + substanceTable + transportTable + storageTable }
