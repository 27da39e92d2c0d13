package process

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
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
	// Met is how: the greatest strength and temperature; Hours NaN where a time of those that it lasts is not stated.
	Met     material.Exposure
	AtLeast float64 // h, the times that are stated
	UsedTo  float64 // degC to which the material is used, where what it meets is hotter; else NaN
	material.Stand
}

// touch is what the liquor of a place has held of a medium so far. What was there once
// counts to the end: a residue is enough.
type touch struct {
	place, medium string
	step          int
	met           material.Exposure // the greatest; NaN once one was not known
	least         material.Exposure // the greatest of those that are known
	atLeast       float64           // h that are stated
	counted       int               // the step up to which the time is counted
	stands        bool              // liquor stood in the place after that step
	kept          bool              // the step says how long it is kept there
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
		met := material.Exposure{Strength: strength, DegC: degC}
		k.touched = noted(k.touched, touch{place: p.Place, medium: medium, step: s.Number, met: met}, false)
		if len(s.Wetted) > 0 {
			met.Hours = lasts(s)
			k.passing = noted(k.passing, touch{place: s.In, medium: medium, step: s.Number, met: met,
				atLeast: stated(s)}, true)
		}
	}
	k.goesOn(p, s, len(q.Entries) > 0 || q.Wet())
}

// goesOn adds the time of the steps in which a liquor has stood in a place to how long
// what it holds has met it. It came at the end of the step that brought it, and in one that
// empties the place it stood as long as that says, if it does.
func (k *walker) goesOn(p *State, s *route.Step, stands bool) {
	for i := range k.touched {
		t := &k.touched[i]
		if t.place != p.Place || t.counted == s.Number {
			continue
		}
		from := s.Number
		if t.stands {
			from = t.counted + 1 // with those done elsewhere since
		}
		for n := from; n <= s.Number; n++ {
			x := &k.met.hours[n-1]
			t.atLeast += x.stated
			if n == t.step || n == s.Number && !stands {
				t.met.Hours += x.stated
			} else {
				t.met.Hours += x.lasts
			}
		}
		t.counted, t.stands = s.Number, stands
		t.kept = s.Verb().Does == route.Stores && s.In == p.Place
	}
}

// lasts is how long a step takes, h; NaN where that is not stated.
func lasts(s *route.Step) float64 {
	washes := s.Verb().Does == route.Washes || s.Verb().Does == route.Prewashes
	if !s.Time.Set && !s.Over.Set || washes && s.Cycles == 0 {
		return math.NaN()
	}
	return stated(s)
}

// stated is what a step says of its time, h. A time of a wash is that of a cycle.
func stated(s *route.Step) float64 {
	h := 0.0
	if s.Over.Set {
		h += s.Over.In("h")
	}
	if s.Time.Set {
		h += s.Time.In("h") * float64(max(s.Cycles, 1))
	}
	return h
}

// noted adds a touch to those of its place and medium, and of its step where each counts
// by itself.
func noted(list []touch, x touch, each bool) []touch {
	for i := range list {
		t := &list[i]
		if t.place == x.place && t.medium == x.medium && (t.step == x.step || !each) {
			t.met.Strength, t.met.DegC = math.Max(t.met.Strength, x.met.Strength), math.Max(t.met.DegC, x.met.DegC)
			t.least.Strength, t.least.DegC = most(t.least.Strength, x.met.Strength), most(t.least.DegC, x.met.DegC)
			return list
		}
	}
	x.least = x.met
	return append(list, x)
}

// most is the greater of two numbers, of which one may not be known.
func most(a, b float64) float64 {
	if a != a || b > a {
		return b
	}
	return a
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
	walls := map[string]material.Wall{}
	for i := range k.touched {
		t := &k.touched[i]
		if t.stands && !t.kept { // until somebody fetches or uses it
			t.met.Hours = math.NaN()
		}
		at := k.c.Route.Place(t.place)
		if at == nil {
			continue
		}
		parts := []route.Wetted{{What: "wall", Material: at.Material}, {What: "lid", Material: at.LidMaterial}}
		for _, part := range append(parts, at.Wetted...) {
			if part.What != "lid" || at.Closure != route.Open || part.Material != "" {
				k.meetsPart(t, part, walls)
			}
		}
	}
	for i := range k.passing {
		for _, part := range k.c.Route.Steps[k.passing[i].step-1].Wetted {
			k.meetsPart(&k.passing[i], part, walls)
		}
	}
	k.sayAttacked()
	k.sayUnknown()
}

// meetsPart notes what one part stands of what it meets. What it is made of is read once for
// the same text. What is not known of how it met that hides nothing of what is: what the part
// does not stand of that, it does not stand.
func (k *walker) meetsPart(t *touch, part route.Wetted, walls map[string]material.Wall) {
	wall, read := walls[part.Material]
	if !read {
		wall = k.st.Materials().Read(part.Material)
		walls[part.Material] = wall
	}
	c := k.contact(t, part.What, &wall, t.met)
	if x := t.least; c.Verdict != material.No && (x.DegC != t.met.DegC || x.Strength != t.met.Strength) {
		x.Hours = t.met.Hours
		if y := k.contact(t, part.What, &wall, x); y.Verdict == material.No {
			c = y
		}
	}
	k.out.Contacts = append(k.out.Contacts, c)
}

// contact is a part in what it meets. Hotter than a material is used it stands nothing.
func (k *walker) contact(t *touch, part string, wall *material.Wall, met material.Exposure) Contact {
	c := Contact{Place: t.place, Part: part, Material: wall.Text, Medium: t.medium, Step: t.step, Met: met,
		AtLeast: t.atLeast, UsedTo: math.NaN(), Stand: k.st.Materials().WallStands(wall, t.medium, met)}
	for _, m := range wall.Wetted {
		if d, is := k.st.Row(datum.Of("service", m.Slug)); is && met.DegC > d.Value && !(c.UsedTo <= d.Value) {
			c.UsedTo = d.Value
			c.Stand = material.Stand{Verdict: material.No, Source: d.Source, Status: d.Status}
			if from, is := k.st.Source(d.Source); is {
				c.Source = from.Title
			}
		}
	}
	return c
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
		k.fact("attacked", c.Step, phrase.Of("fact.attacked", c.Part, c.Place, c.Material, phrase.Step(c.Step),
			strings.Join(media, ", "), orEaten(c)))
	}
}

// orEaten is what becomes of a part that does not stand what it meets.
func orEaten(c *Contact) phrase.Phrase {
	switch {
	case !math.IsNaN(c.UsedTo):
		return phrase.Of("fact.attacked_hot", c.UsedTo, c.Met.DegC)
	case c.Note == "":
		return phrase.Of("fact.attacked_eaten")
	}
	return phrase.As(c.Note)
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
			strings.Join(media, ", "), phrase.Step(c.Step), settle))
	}
}

func with(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}
