package route

import (
	"io"
	"math"

	"etchbound/chemicals"
	"etchbound/schemas"
	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// LoadSite reads a site file as Load reads a route.
func LoadSite(name string, r io.Reader) (*Site, []schemas.Problem, error) {
	root, raw, problems, err := schemas.Read(name, r, "site")
	if err != nil || root == nil {
		return nil, problems, err
	}
	l := &loader{problems: problems}
	s := l.site(root)
	problems = schemas.Sorted(l.problems)
	if schemas.Refused(problems) {
		return nil, problems, nil
	}
	s.Name, s.Digest, s.Notices = name, digest(raw), notices(problems)
	return s, problems, nil
}

func (l *loader) site(root *schemas.Node) *Site {
	room, cold := root.Get("room"), root.Get("cooling")
	s := &Site{
		Title: root.Str("title"), Jurisdiction: root.Str("jurisdiction"),
		RoomVolume: room.Value("volume"), RoomFlow: room.Value("flow"), Cabinet: room.Value("cabinet"),
		Cylinder: room.Value("cylinder"), Dewar: room.Value("dewar"),
		CoolingPower: cold.Value("power"), CoolingPoint: cold.Value("temperature"),
		CoolingTaken: cold.Value("others"),
		Triggers:     triggers(root.Get("triggers")),
	}
	l.aboveZero(room, "volume")
	if room.Value("cabinet").SI != 0 { // zero says that there is none
		l.aboveZero(room, "cabinet")
	}
	if h := root.Get("hood"); h.Usable(schemas.Map) {
		l.aboveZero(h, "containment", "face_velocity", "flow")
		s.Hood = &Hood{Flow: h.Value("flow"), FaceVelocity: h.Value("face_velocity"), TestDate: h.Str("tested"),
			Containment: h.Value("containment"), Stack: h.Value("stack")}
		l.date(h.Get("tested"))
	}
	s.Unattended = l.unattended(root.Get("unattended"))
	if n := root.Get("fire_code"); n.Usable(schemas.Map) {
		s.FireCode = &FireCode{Table: n.Str("table"), Times: ratio(n, "times")}
	}
	for _, n := range root.List("stock") {
		if x, ok := l.stock(n); ok {
			s.Stock = append(s.Stock, x)
		}
	}
	s.Visit(func(x field.Seen) {
		if a, ok := x.Value.(field.Amount); ok && x.Range == field.NoRange && a.Of.HasRange() {
			p := root.At(x.At).Problem("a range is of no use here: "+valueOf(*a.Of)+" counts", "one value", "")
			p.Severity = schemas.Notice
			l.problems = append(l.problems, p)
		}
	})
	s.Data, s.Notes = l.data(root.Get("data"), "site", nil), root.Str("notes")
	return s
}

// unattended reads what may run with nobody there.
func (l *loader) unattended(n *schemas.Node) *Unattended {
	if !n.Usable(schemas.Map) {
		return nil
	}
	u := &Unattended{Time: n.Value("time"), Gas: n.Value("gas"), Temperature: n.Value("temperature")}
	if n.Wrote("never") {
		u.Never = []*chemicals.Substance{}
	}
	for _, x := range n.List("never") {
		if s := l.substance(x, "leave %s out, and say in words what it is"); s != nil {
			u.Never = append(u.Never, s)
		}
	}
	return u
}

// valueOf is a quantity without its range.
func valueOf(v quantity.Value) string {
	v.Low, v.High = math.NaN(), math.NaN()
	return v.Format(v.Unit(), 0)
}

// ratio is a plain number of a map, NaN where it is not stated.
func ratio(n *schemas.Node, key string) float64 {
	if v := n.Get(key); v.Usable(schemas.Number) {
		return v.Number
	}
	return math.NaN()
}

func triggers(n *schemas.Node) Triggers {
	t := Triggers{QuantityRatio: ratio(n, "quantity_ratio"), StrengthRatio: ratio(n, "strength_ratio"),
		TimeRatio: ratio(n, "time_ratio"), TemperatureChange: n.Value("temperature_change"),
		HFStrength: n.Value("hf_strength")}
	for _, x := range n.List("mass_bands") {
		if q, err := quantity.Parse(x.Text, quantity.Mass); err == nil && q.Set {
			t.MassBands = append(t.MassBands, q)
		}
	}
	for _, x := range n.List("ignore") {
		t.Ignore = append(t.Ignore, x.Text)
	}
	return t
}

// stock reads one substance that is kept. Acid above the strengths that are
// calculated may be kept, so only its form is checked.
func (l *loader) stock(n *schemas.Node) (Stock, bool) {
	if !n.Usable(schemas.Map) {
		return Stock{}, false
	}
	x := Stock{Substance: l.heldOrNot(n), Strength: n.Value("strength"), Mass: n.Value("mass"),
		Volume: n.Value("volume"), Bottle: n.Value("bottle"), Stands: n.Str("stands"),
		At: n.Path}
	if x.Mass.Set { // that of a site may be more, and is a mass as any other
		x.Mass.Dim = quantity.Mass
	}
	if x.Substance == nil {
		return x, false
	}
	switch {
	case n.Wrote("mass") == n.Wrote("volume"):
		l.refuse(n, "how much "+x.Substance.Name+" is kept is not said in one way", "mass or volume", "")
	case needsStrength(x.Substance) && !n.Wrote("strength"):
		l.refuseKey(n, "strength", x.Substance.Name+" without its strength",
			quantity.Accepted(quantity.MassFraction, quantity.Molarity), "take it from the label of the bottle")
	case !x.Substance.NotHeld && !takesStrength(x.Substance) && n.Wrote("strength"):
		l.refuseKey(n, "strength", x.Substance.Name+" takes no strength", "a volume or a mass", "")
	case x.Substance.State == "s" && n.Wrote("volume") && !n.Wrote("strength"):
		l.refuseKey(n, "volume", "a volume of solid "+x.Substance.Name, "a mass", "")
	}
	return x, true
}
