package process

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// Contact is a medium that one part of a place meets, with what is known of the two.
type Contact struct {
	Place, Part string // wall, lid, or the name of what else meets the liquor
	Material    string // as written, "" where it is not stated
	Medium      string
	Step        int // in which it is there first
	material.Stand
}

// touch is what the liquor of a place has held of a medium so far. What was there once
// counts to the end: a residue is enough.
type touch struct {
	place, medium     string
	step              int
	strength, hottest float64 // wt% and degC, the greatest; NaN once one was not known
}

// touches notes what the liquor q of a place holds in a step that a material may not
// stand, how strong and how hot. What a reaction warms it to is not counted.
func (k *walker) touches(p *State, q *Pool, s *route.Step) {
	degC := p.Set.V
	if p.Set.None() {
		degC = math.NaN()
	}
	for _, medium := range material.Media() {
		strength, there := k.holds(q, medium)
		if !there {
			continue
		}
		k.touched = noted(k.touched, touch{p.Place, medium, s.Number, strength, degC}, false)
		if len(s.Wetted) > 0 {
			k.passing = noted(k.passing, touch{s.In, medium, s.Number, strength, degC}, true)
		}
	}
}

// noted adds a touch to those of its place and medium, and of its step where each counts
// by itself.
func noted(list []touch, x touch, each bool) []touch {
	for i := range list {
		t := &list[i]
		if t.place == x.place && t.medium == x.medium && (t.step == x.step || !each) {
			t.strength, t.hottest = math.Max(t.strength, x.strength), math.Max(t.hottest, x.hottest)
			return list
		}
	}
	return append(list, x)
}

// holds reports whether a liquor holds a medium, and at which strength in wt%, NaN
// where that is not followed.
func (k *walker) holds(q *Pool, medium string) (float64, bool) {
	if element := material.HeldAs(medium); element != "" {
		i, _ := chemicals.ElementIndex(element)
		n := value(q, func(e *Entry) float64 { return e.Count(i) })
		const molar = 20.006 // g/mol of HF: to tell a strong acid from a weak one, in no figure
		return 100 * n * molar / q.Mass.V, !(n <= 1e-6*k.in[i])
	}
	class := material.ClassOf(medium)
	return math.NaN(), has(q, func(s *chemicals.Substance) bool {
		return s.Is(class) || s.NotHeld && (class != "chloride" || s.May("Cl"))
	})
}

// contacts judges every part of every place by what its liquor held, and says where
// one does not stand it or nobody knows.
func (k *walker) contacts() {
	held := k.st.Materials()
	for _, t := range k.touched {
		at := k.c.Route.Place(t.place)
		if at == nil {
			continue
		}
		parts := []route.Wetted{{What: "wall", Material: at.Material}, {What: "lid", Material: at.LidMaterial}}
		for _, part := range append(parts, at.Wetted...) {
			if part.What != "lid" || at.Closure != route.Open || part.Material != "" {
				k.meetsPart(held, &t, part)
			}
		}
	}
	for _, t := range k.passing {
		for _, part := range k.c.Route.Steps[t.step-1].Wetted {
			k.meetsPart(held, &t, part)
		}
	}
	k.sayAttacked()
	k.sayUnknown()
}

// meetsPart notes what one part stands of what it meets.
func (k *walker) meetsPart(held *material.Table, t *touch, part route.Wetted) {
	wall := held.Read(part.Material)
	stand := held.WallStands(&wall, t.medium, t.strength, t.hottest)
	k.out.Contacts = append(k.out.Contacts, Contact{t.place, part.What, wall.Text, t.medium, t.step, stand})
}

// sayAttacked says once for each part of a place what it does not stand.
func (k *walker) sayAttacked() {
	done := map[[3]string]bool{}
	for i := range k.out.Contacts {
		c := &k.out.Contacts[i]
		key := [...]string{c.Place, c.Part, c.Material}
		if c.Verdict != material.No || done[key] {
			continue
		}
		done[key] = true
		var media []string
		for _, o := range k.out.Contacts {
			if o.Place == c.Place && o.Part == c.Part && o.Material == c.Material && o.Verdict == material.No {
				media = with(media, material.Called(o.Medium))
			}
		}
		k.fact("attacked", c.Step, phrase.Of("fact.attacked", c.Part, c.Place, c.Material, c.Step,
			strings.Join(media, ", "), orEaten(c.Note)))
	}
}

func orEaten(note string) phrase.Phrase {
	if note == "" {
		return phrase.Of("fact.attacked_eaten")
	}
	return phrase.As(note)
}

// sayUnknown says once for each material of a part what nobody knows of it.
func (k *walker) sayUnknown() {
	done := map[[2]string]bool{}
	for i := range k.out.Contacts {
		c := &k.out.Contacts[i]
		key := [...]string{c.Part, c.Material}
		if c.Verdict != material.Unknown || done[key] {
			continue
		}
		done[key] = true
		var places, media []string
		for _, o := range k.out.Contacts {
			if o.Part == c.Part && o.Material == c.Material && o.Verdict == material.Unknown {
				places, media = with(places, o.Place), with(media, material.Called(o.Medium))
			}
		}
		id, what, settle := "material_unknown", phrase.As(c.Material), phrase.Of("fact.material_unknown_which")
		if c.Material == "" {
			what, settle = phrase.Of("fact.material_unknown_none"), phrase.Of("fact.material_unknown_write")
		}
		if c.Material == "" && c.Part == "lid" {
			id = "lid_unknown" // so of nearly every route: it comes behind what is worse
		}
		k.fact(id, c.Step, phrase.Of("fact.material_unknown", c.Part, strings.Join(places, ", "), what,
			strings.Join(media, ", "), c.Step, settle))
	}
}

func with(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}
