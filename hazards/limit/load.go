package limit

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards/phrase"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// File is a limits file as written, before its values are put into the units of
// the catalogue.
type File struct {
	Title        string
	Jurisdiction string
	Digest       string // hex SHA-256 of the file's bytes
	Entries      []Entry
	Notices      []string
}

// Entry is one limit as written. The Value, Unit and Near of its Limit are set
// by Resolve, from Stated and Margin.
type Entry struct {
	Limit
	Stated quantity.Value // of dimension None for a plain number
	Margin quantity.Value // Fraction or TemperatureDiff; not Set where near was left out
	node   *schemas.Node
}

// Catalogue is what has to be known of the catalogued quantities to read
// limits: the unit of each, whether danger lies below its limits, and their names for
// suggestions.
type Catalogue interface {
	Unit(quantity string) (unit string, known bool)
	Low(quantity string) bool
	Names() []string
}

// LoadFile reads a limits file; name is used in messages. The file is nil where
// any problem is an error. The error is one of reading r.
func LoadFile(name string, r io.Reader) (*File, []schemas.Problem, error) {
	root, raw, problems, err := schemas.Read(name, r, "limits")
	if err != nil || root == nil {
		return nil, problems, err
	}
	f := &File{Title: root.Str("title"), Jurisdiction: root.Str("jurisdiction")}
	sum := sha256.Sum256(raw)
	f.Digest = hex.EncodeToString(sum[:])
	lines := map[string]int{}
	for _, n := range root.List("entries") {
		if !n.Usable(schemas.Map) {
			continue
		}
		e, more := entry(n, f.Jurisdiction)
		problems = append(problems, more...)
		if first, twice := lines[e.ID]; twice && e.ID != "" {
			problems = append(problems, n.Near("id").Problem("the limit "+e.ID+" is given twice: first in line "+
				strconv.Itoa(first), "each id once", ""))
		}
		lines[e.ID] = n.Line
		f.Entries = append(f.Entries, e)
	}
	problems = schemas.Sorted(problems)
	if schemas.Refused(problems) {
		return nil, problems, nil
	}
	for _, p := range problems {
		f.Notices = append(f.Notices, p.Short())
	}
	return f, problems, nil
}

func entry(n *schemas.Node, jurisdiction string) (Entry, []schemas.Problem) {
	e := Entry{Margin: n.Value("near"), node: n}
	e.Limit = Limit{Key: Named(Local, n.Str("id")), Quantity: n.Str("quantity"), Label: n.Str("label"),
		Jurisdiction: jurisdiction,
		Document:     n.Str("document"), Section: n.Str("section"), Edition: n.Str("edition"), Status: "stated"}
	if e.Label == "" {
		e.Label = e.Document
	}
	var problems []schemas.Problem
	if n.Wrote("average") && e.Quantity != breathing {
		problems = append(problems, n.Near("average").Problem("an averaging time for "+e.Quantity,
			"an averaging time for "+breathing+" alone", "leave average out"))
	}
	if v := n.Value("average"); v.Set {
		e.Average = v.In("min")
	}
	if agent := n.Get("agent"); agent.Usable(schemas.Text) {
		if s, ok := chemicals.Library().Find(agent.Text); ok {
			e.Agent = s.Slug
		} else {
			problems = append(problems, agent.Problem("the substance "+agent.Text+" is not known", "a name, formula or "+
				"CAS number of a known substance",
				misspelt(agent.Text)))
		}
	}
	if v := n.Get("value"); v.Usable(schemas.Text) || v.Usable(schemas.Number) {
		stated, err := quantity.Parse(v.Text)
		if err != nil {
			problems = append(problems, refusal(v, err))
		}
		stated.At = v.Path
		e.Stated = stated
	}
	return e, append(problems, e.ranges()...)
}

// ranges notices a range where only its value counts.
func (e *Entry) ranges() []schemas.Problem {
	var out []schemas.Problem
	for key, v := range map[string]quantity.Value{"value": e.Stated, "near": e.Margin,
		"average": e.node.Value("average")} {
		if v.HasRange() {
			p := e.node.Near(key).Problem("a range is of no use here: "+valueOf(v)+" counts", "one value", "")
			p.Severity = schemas.Notice
			out = append(out, p)
		}
	}
	return out
}

// valueOf is a quantity without its range.
func valueOf(v quantity.Value) string {
	v.Low, v.High = math.NaN(), math.NaN()
	return v.Format(v.Unit(), 0)
}

// breathing is the one quantity that is averaged over time.
const breathing = "air.breathing_zone"

func refusal(n *schemas.Node, err error) schemas.Problem {
	if e, ok := err.(*quantity.Error); ok {
		return n.Problem(e.Words(), e.Accepted, e.Hint)
	}
	return n.Problem(err.Error(), "", "")
}

// Resolve puts every limit into the unit of its catalogued quantity.
func (f *File) Resolve(c Catalogue) (*Set, []schemas.Problem) {
	s := &Set{Title: f.Title, Jurisdiction: f.Jurisdiction, Digest: f.Digest, Notices: phrase.AsAll(f.Notices)}
	var problems []schemas.Problem
	for _, e := range f.Entries {
		l, more := e.resolve(c)
		s.Limits = append(s.Limits, l)
		problems = append(problems, more...)
	}
	return s, schemas.Sorted(problems)
}

func (e Entry) resolve(c Catalogue) (Limit, []schemas.Problem) {
	l := e.Limit
	unit, known := c.Unit(e.Quantity)
	if !known {
		hint := ""
		if near := schemas.Nearest(e.Quantity, c.Names()); near != "" {
			hint = "did you mean " + near + "?"
		}
		return l, []schemas.Problem{e.node.Near("quantity").Problem(e.Quantity+" is no catalogued quantity",
			"the name of a figure, without @ and what follows it", hint)}
	}
	l.Unit, l.low = unit, c.Low(e.Quantity)
	v, err := inCatalogueUnit(e.node.Get("value").Text, unit)
	if err != nil {
		p := refusal(e.node.Get("value"), err)
		p.What = "\"" + e.Stated.Text + "\" is no limit for " + e.Quantity + ", which is in " + unit
		p.Accepted = "a value in " + unit
		return l, []schemas.Problem{p}
	}
	l.Value = v
	var problems []schemas.Problem
	if l.Near, err = e.near(unit); err != nil {
		problems = append(problems, refusal(e.node.Get("near"), err))
	}
	return l, problems
}

// misspelt offers the names of which a text is a slip of the pen: another chemical has
// other limits.
func misspelt(text string) string {
	if names := chemicals.Library().Misspelt(text, 2); len(names) > 0 {
		return "if it is misspelt: " + strings.Join(names, ", ")
	}
	return "another chemical has other limits: leave the entry out where the substance is not held"
}
