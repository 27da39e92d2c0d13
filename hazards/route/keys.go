package route

import (
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// Keys of a route file. A key that is added to the schema is added here, and is then
// scaled, copied, compared and listed; the table of an item stands in a file of its
// own.
var routeKeys = field.Keys[Route]{
	formatKey[Route]("route"),
	field.Words("title", func(r *Route) *string { return &r.Written }),
	field.Part("basis", basisKeys, func(r *Route) *Basis { return &r.Basis }),
	field.Words("date", func(r *Route) *string { return &r.Date }),
	field.Words("purpose", func(r *Route) *string { return &r.Purpose }),
	field.OneOf("family", func(r *Route) *string { return &r.Family }),
	field.Pointer("precursor", precursorKeys, func(r *Route) **Precursor { return &r.Precursor }),
	field.Items("places", placeKeys, placeList, func(r *Route) *[]Place { return &r.Places }),
	field.Items("steps", stepKeys, stepList, func(r *Route) *[]Step { return &r.Steps }),
	field.Part("measured", measuredKeys, func(r *Route) *Measured { return &r.Measured }),
	field.Each("data", datumKeys, datumName, func(r *Route) *[]chemicals.Override { return &r.Data }),
	field.Words("notes", func(r *Route) *string { return &r.Notes }),
}

// formatKey is the key by which a file says what it is. It takes one value.
func formatKey[T any](name string) field.Key[T] {
	return field.Custom(field.Choice, name, func(*T) field.Value { return field.Word("etchbound/1") }).
		NotListed("it takes one value only")
}

var basisKeys = field.Keys[Basis]{
	field.OneOf("status", func(b *Basis) *string { return &b.Status }),
	field.Words("title", func(b *Basis) *string { return &b.Title }),
	field.Words("publisher", func(b *Basis) *string { return &b.Publisher }),
	field.Words("year", func(b *Basis) *string { return &b.Year }),
	field.Words("doi", func(b *Basis) *string { return &b.DOI }),
	field.Words("section", func(b *Basis) *string { return &b.Section }),
	field.Words("note", func(b *Basis) *string { return &b.Note }),
}

var precursorKeys = field.Keys[Precursor]{
	formulaKey("phase", func(p *Precursor) *chemicals.Formula { return &p.Phase }),
	field.Texts("layers", func(p *Precursor) *[]string { return &p.Layers }),
	field.Of("mass", func(p *Precursor) *quantity.Value { return &p.Mass }).Grows(field.Grows),
	field.Of("purity", func(p *Precursor) *quantity.Value { return &p.Purity }).IsFact(),
	field.Items("impurities", impurityKeys, impurityList, func(p *Precursor) *[]Impurity { return &p.Impurities }).
		With(impuritiesStated).IsFact(),
	field.Words("impurities_source", func(p *Precursor) *string { return &p.Source }),
	field.Of("particle_size", func(p *Precursor) *quantity.Value { return &p.ParticleSize }).IsFact(),
}

var impurityList = field.ListOf[Impurity]{Name: func(_ int, i *Impurity) string { return i.Formula.Text }, Told: true}

// impuritiesStated tells a list and a written none from what was left out.
func impuritiesStated(p *Precursor) field.Value {
	return field.Told{
		Tell: func() string {
			switch {
			case !p.Stated:
				return ""
			case len(p.Impurities) == 0:
				return "none"
			}
			var names []string
			for _, x := range p.Impurities {
				names = append(names, x.Formula.Text)
			}
			return strings.Join(names, ", ")
		},
		Forget: func() { p.Stated, p.Impurities, p.Source = false, nil, "" },
	}
}

var impurityKeys = field.Keys[Impurity]{
	formulaKey("formula", func(i *Impurity) *chemicals.Formula { return &i.Formula }),
	field.Of("share", func(i *Impurity) *quantity.Value { return &i.Share }),
}

// formulaKey is a key that takes a chemical formula.
func formulaKey[T any](name string, of func(*T) *chemicals.Formula) field.Key[T] {
	return field.Custom(field.Text, name, func(t *T) field.Value {
		f := of(t)
		return field.Told{
			Tell:   func() string { return f.Text },
			Forget: func() { *f = chemicals.Formula{} },
			Share:  func() { f.Order = append([]string(nil), f.Order...) },
		}
	})
}

// substanceKey is a key that takes a substance by any of its names.
func substanceKey[T any](of func(*T) **chemicals.Substance) field.Key[T] {
	return field.Custom(field.Text, "substance", func(t *T) field.Value {
		return field.Told{
			Tell: func() string {
				if s := *of(t); s != nil {
					return s.Name
				}
				return ""
			},
			Forget: func() { *of(t) = nil },
		}
	})
}

var measuredKeys = field.Keys[Measured]{
	field.Of("etch_heat", func(m *Measured) *quantity.Value { return &m.EtchHeat }).ForDatum("etch_heat").IsFact(),
	field.Of("hydrogen", func(m *Measured) *quantity.Value { return &m.Hydrogen }).ForDatum("etch_hydrogen").IsFact(),
	field.Of("conversion", func(m *Measured) *quantity.Value { return &m.Conversion }).
		ForDatum("etch_conversion").IsFact(),
	field.Of("density", func(m *Measured) *quantity.Value { return &m.Density }).ForDatum("density").IsFact(),
	field.Pointer("curve", curveKeys, func(m *Measured) **Curve { return &m.Curve }),
	field.OneOf("kinetics", func(m *Measured) *string { return &m.Kinetics }),
	field.Of("td24", func(m *Measured) *quantity.Value { return &m.TD24 }),
	field.Words("source", func(m *Measured) *string { return &m.Source }),
}

var curveKeys = field.Keys[Curve]{
	field.Of("temperature", func(c *Curve) *quantity.Value { return &c.Temperature }),
	field.Each("points", pointKeys, func(i int, _ *CurvePoint) string { return "point " + strconv.Itoa(i+1) },
		func(c *Curve) *[]CurvePoint { return &c.Points }),
}

var pointKeys = field.Keys[CurvePoint]{
	field.Of("time", func(p *CurvePoint) *quantity.Value { return &p.Time }),
	field.Of("conversion", func(p *CurvePoint) *quantity.Value { return &p.Conversion }),
}

var datumKeys = field.Keys[chemicals.Override]{
	field.Words("id", func(o *chemicals.Override) *string { return (*string)(&o.ID) }),
	field.In("value", func(o *chemicals.Override) (*float64, string) { return &o.Value, o.Unit }),
	field.In("low", func(o *chemicals.Override) (*float64, string) { return &o.Low, o.Unit }),
	field.In("high", func(o *chemicals.Override) (*float64, string) { return &o.High, o.Unit }),
	field.Words("source", func(o *chemicals.Override) *string { return &o.Source }),
}

func datumName(_ int, o *chemicals.Override) string { return string(o.ID) }

// Fields lists every key of a route file.
func Fields() []field.Field { return routeKeys.File("route").List() }

// Visit shows every key of what the route holds, in the order of Fields.
func (r *Route) Visit(visit func(field.Seen)) { routeKeys.File("route").Visit(r, visit) }

// Without is the route without the key at a path, false where it states none there.
func (r *Route) Without(at string) (*Route, bool) {
	out, there := r.Copy(), false
	out.Visit(func(s field.Seen) {
		if s.At == at && s.Value.Stated() {
			there = true
			s.Value.Clear()
		}
	})
	return out, there
}

// Beside shows every key of two routes side by side: those of the same container, of
// the same step and, in it, of the same material.
func Beside(a, b *Route, visit func(field.Beside)) { routeKeys.File("route").Beside(a, b, visit) }

// unheldFormula and unheldFlag are the keys of a substance that the data do not hold.
func unheldFormula[T any](of func(*T) **chemicals.Substance) field.Key[T] {
	return unheldKey(field.Text, "formula", of, func(s *chemicals.Substance) string { return s.Formula.Text },
		func(t *T) { *of(t) = chemicals.Unheld((*of(t)).Name, chemicals.Formula{}) })
}

func unheldFlag[T any](of func(*T) **chemicals.Substance) field.Key[T] {
	return unheldKey(field.Flag, "not_held", of, func(*chemicals.Substance) string { return "true" },
		func(t *T) { *of(t) = nil })
}

func unheldKey[T any](kind field.Kind, name string, of func(*T) **chemicals.Substance,
	tell func(*chemicals.Substance) string, forget func(*T)) field.Key[T] {
	unheld := func(t *T) bool { s := *of(t); return s != nil && s.NotHeld }
	return field.Custom(kind, name, func(t *T) field.Value {
		return field.Told{
			Tell: func() string {
				if !unheld(t) {
					return ""
				}
				return tell(*of(t))
			},
			Forget: func() {
				if unheld(t) {
					forget(t)
				}
			},
		}
	})
}
