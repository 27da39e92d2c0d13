package route

import (
	"cmp"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// siteKeys are the keys of a site file.
var siteKeys = field.Keys[Site]{
	formatKey[Site]("site"),
	field.Words("title", func(s *Site) *string { return &s.Title }),
	field.OneOf("jurisdiction", func(s *Site) *string { return &s.Jurisdiction }).IsFact(),
	field.Pointer("hood", hoodKeys, func(s *Site) **Hood { return &s.Hood }).IsFact(),
	field.Part("room", roomKeys, func(s *Site) *Site { return s }),
	field.Part("cooling", sharedKeys, func(s *Site) *Site { return s }),
	field.Each("stock", stockKeys, stockName, func(s *Site) *[]Stock { return &s.Stock }).IsFact(),
	field.Pointer("unattended", aloneKeys, func(s *Site) **Unattended { return &s.Unattended }),
	field.Pointer("fire_code", fireKeys, func(s *Site) **FireCode { return &s.FireCode }),
	field.Part("triggers", triggerKeys, func(s *Site) *Triggers { return &s.Triggers }),
	field.Each("data", datumKeys, datumName, func(s *Site) *[]chemicals.Override { return &s.Data }),
	field.Words("notes", func(s *Site) *string { return &s.Notes }),
}

var hoodKeys = field.Keys[Hood]{
	field.Of("flow", func(h *Hood) *quantity.Value { return &h.Flow }).IsFact(),
	field.Of("face_velocity", func(h *Hood) *quantity.Value { return &h.FaceVelocity }).IsFact(),
	field.Words("tested", func(h *Hood) *string { return &h.TestDate }).IsFact(),
	field.Of("containment", func(h *Hood) *quantity.Value { return &h.Containment }).IsFact(),
	field.Of("stack", func(h *Hood) *quantity.Value { return &h.Stack }).IsFact(),
}

var roomKeys = field.Keys[Site]{
	field.Of("volume", func(s *Site) *quantity.Value { return &s.RoomVolume }).IsFact(),
	field.Of("flow", func(s *Site) *quantity.Value { return &s.RoomFlow }).IsFact(),
	field.Of("cabinet", func(s *Site) *quantity.Value { return &s.Cabinet }).IsFact(),
	field.Of("cylinder", func(s *Site) *quantity.Value { return &s.Cylinder }).IsFact(),
	field.Of("dewar", func(s *Site) *quantity.Value { return &s.Dewar }).IsFact(),
}

var fireKeys = field.Keys[FireCode]{
	field.Words("table", func(x *FireCode) *string { return &x.Table }),
	field.Plain("times", func(x *FireCode) *float64 { return &x.Times }).IsFact(),
}

var aloneKeys = field.Keys[Unattended]{
	field.Of("time", func(u *Unattended) *quantity.Value { return &u.Time }).IsFact(),
	field.Of("temperature", func(u *Unattended) *quantity.Value { return &u.Temperature }).IsFact(),
	field.Of("gas", func(u *Unattended) *quantity.Value { return &u.Gas }).IsFact(),
	field.Custom(field.List, "never", neverAlone).IsFact(),
}

// never is the list of what may not be left alone, told by its names.
type never struct{ u *Unattended }

func neverAlone(u *Unattended) field.Value { return never{u} }

func (n never) Stated() bool            { return n.u.Never != nil }
func (n never) Same(o field.Value) bool { return n.String() == o.String() }
func (n never) Clear()                  { n.u.Never = nil }
func (n never) Own()                    { n.u.Never = slices.Clone(n.u.Never) }

func (n never) String() string {
	if !n.Stated() {
		return ""
	}
	var names []string
	for _, s := range n.u.Never {
		names = append(names, s.Name)
	}
	return cmp.Or(strings.Join(names, ", "), "none")
}

var sharedKeys = field.Keys[Site]{
	field.Of("power", func(s *Site) *quantity.Value { return &s.CoolingPower }).IsFact(),
	field.Of("temperature", func(s *Site) *quantity.Value { return &s.CoolingPoint }).IsFact(),
	field.Of("others", func(s *Site) *quantity.Value { return &s.CoolingTaken }).IsFact(),
}

var stockKeys = field.Keys[Stock]{
	substanceKey(ofStock),
	unheldFormula(ofStock),
	unheldFlag(ofStock),
	field.Of("strength", func(x *Stock) *quantity.Value { return &x.Strength }),
	field.Of("mass", func(x *Stock) *quantity.Value { return &x.Mass }),
	field.Of("volume", func(x *Stock) *quantity.Value { return &x.Volume }),
	field.Of("bottle", func(x *Stock) *quantity.Value { return &x.Bottle }).IsFact(),
	field.Words("stands", func(x *Stock) *string { return &x.Stands }).IsFact(),
}

func ofStock(x *Stock) **chemicals.Substance { return &x.Substance }

func stockName(_ int, x *Stock) string { return x.Substance.Name }

var triggerKeys = field.Keys[Triggers]{
	field.Plain("quantity_ratio", func(t *Triggers) *float64 { return &t.QuantityRatio }),
	field.Plain("strength_ratio", func(t *Triggers) *float64 { return &t.StrengthRatio }),
	field.Plain("time_ratio", func(t *Triggers) *float64 { return &t.TimeRatio }),
	field.Exactly("temperature_change", func(t *Triggers) *quantity.Value { return &t.TemperatureChange }),
	field.Exactly("hf_strength", func(t *Triggers) *quantity.Value { return &t.HFStrength }),
	field.Amounts("mass_bands", func(t *Triggers) *[]quantity.Value { return &t.MassBands }),
	field.Texts("ignore", func(t *Triggers) *[]string { return &t.Ignore }),
}

// SiteFields lists every key of a site file.
func SiteFields() []field.Field { return siteKeys.Whole("site").List() }

// Visit shows every key of what the site holds, in the order of SiteFields.
func (s *Site) Visit(visit func(field.Seen)) { siteKeys.Whole("site").Visit(s, visit) }

// Copy shares nothing with the site that a calculation could change.
func (s *Site) Copy() *Site {
	out := *s
	out.Notices = slices.Clone(s.Notices)
	siteKeys.Own(&out)
	return &out
}

// Without is the site without the key at a path, false where it states none there.
func (s *Site) Without(at string) (*Site, bool) {
	out, there := s.Copy(), false
	out.Visit(func(x field.Seen) {
		if x.At == at && x.Value.Stated() {
			there = true
			x.Value.Clear()
		}
	})
	return out, there
}

// SitesBeside shows every key of two sites side by side.
func SitesBeside(a, b *Site, visit func(field.Beside)) { siteKeys.Whole("site").Beside(a, b, visit) }
