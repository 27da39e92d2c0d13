package route

import (
	"strconv"

	"etchbound/schemas/field"
	"etchbound/schemas/quantity"
)

// placeKeys are the keys of a container.
var placeKeys = field.Keys[Place]{
	field.OneOf("kind", func(p *Place) *string { return &p.Kind }),
	field.Words("material", func(p *Place) *string { return &p.Material }).IsFact(),
	field.Of("capacity", func(p *Place) *quantity.Value { return &p.Capacity }).Grows(field.GrowsUnlessKept).IsFact(),
	field.Custom(field.Count, "count", countOf).IsFact(),
	field.Times("batches", func(p *Place) *int { return &p.Batches }).IsFact(),
	field.Custom(field.Choice, "closure", closureOf).IsFact(),
	field.Of("rating", func(p *Place) *quantity.Value { return &p.Rating }).IsFact(),
	field.Of("relief", func(p *Place) *quantity.Value { return &p.Relief }).IsFact(),
	field.Of("vent", func(p *Place) *quantity.Value { return &p.VentBore }).IsFact(),
	field.Of("vent_line", func(p *Place) *quantity.Value { return &p.VentLine }),
	field.Of("bubbler", func(p *Place) *quantity.Value { return &p.Bubbler }),
	field.Words("scrubber", func(p *Place) *string { return &p.Scrubber }),
	field.Of("wall", func(p *Place) *quantity.Value { return &p.Wall }),
	field.Words("lid_material", func(p *Place) *string { return &p.LidMaterial }),
	field.Texts("held_before", func(p *Place) *[]string { return &p.HeldBefore }),
	field.Items("wetted", wettedKeys, wettedList, func(p *Place) *[]Wetted { return &p.Wetted }),
	field.Of("stirrer_heat", func(p *Place) *quantity.Value { return &p.StirrerHeat }).Grows(field.Grows),
	field.Pointer("cooling", coolingKeys, func(p *Place) **Cooling { return &p.Cooling }).IsFact(),
	field.Custom(field.Flag, "keep", keepOf).IsFact(),
}

// placeList pairs containers by their key.
var placeList = field.ListOf[Place]{
	Name: func(_ int, p *Place) string { return p.Key }, Under: true, Kept: func(p *Place) bool { return p.Keep },
	One: "place", Tell: func(p *Place) string { return p.Kind },
	Part: func(a, b *Place) string {
		if a == nil {
			a = b
		}
		return "place " + a.Key
	},
}

// wettedKeys are the keys of what meets a liquor beside the wall and the lid.
var wettedKeys = field.Keys[Wetted]{
	field.Words("what", func(x *Wetted) *string { return &x.What }),
	field.Words("material", func(x *Wetted) *string { return &x.Material }),
}

var wettedList = field.ListOf[Wetted]{Name: func(_ int, x *Wetted) string { return x.What }}

var coolingKeys = field.Keys[Cooling]{
	field.OneOf("kind", func(c *Cooling) *string { return &c.Kind }),
	field.Of("temperature", func(c *Cooling) *quantity.Value { return &c.Temperature }),
	field.Of("ua", func(c *Cooling) *quantity.Value { return &c.UA }),
	field.Of("ice", func(c *Cooling) *quantity.Value { return &c.Ice }).Grows(field.Grows),
	field.Of("bath", func(c *Cooling) *quantity.Value { return &c.Bath }).Grows(field.GrowsUnlessKept),
	field.Of("flow", func(c *Cooling) *quantity.Value { return &c.Flow }).IsFact(),
	field.Of("liquid", func(c *Cooling) *quantity.Value { return &c.Liquid }).IsFact(),
	field.Of("power", func(c *Cooling) *quantity.Value { return &c.Power }).IsFact(),
}

func countOf(p *Place) field.Value {
	return field.Told{
		Tell: func() string {
			if !p.CountStated && p.Count <= 1 {
				return ""
			}
			return strconv.Itoa(p.Count)
		},
		Forget: func() { p.Count, p.CountStated = 1, false },
		Counts: "1",
	}
}

var closureWords = [...]string{Closed: "closed", Vented: "vented", Open: "open"}

func closureOf(p *Place) field.Value {
	return field.Told{
		Tell: func() string {
			if !p.ClosureStated {
				return ""
			}
			return closureWords[p.Closure]
		},
		Forget: func() { p.Closure, p.ClosureStated = Closed, false },
	}
}

func keepOf(p *Place) field.Value {
	return field.Told{
		Tell: func() string {
			if !p.KeepStated && !p.Keep {
				return ""
			}
			return strconv.FormatBool(p.Keep)
		},
		Forget: func() { p.Keep, p.KeepStated = false, false },
		Counts: "false",
	}
}
