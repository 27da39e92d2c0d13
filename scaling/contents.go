package scaling

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// Contents is what a container holds: the most liquid in any step, mL, with the powder in it
// as a share of its capacity, and what it is made of at the end of the route.
type Contents struct {
	Place    string
	Step     int
	Most     working.Num // mL of liquid
	Full     working.Num // mL/mL of liquid and powder; of all of them where several share it
	Elements []Part      // empty where an element of the route is not accounted for
	PH       *float64    // aimed at by the last step that neutralises in it
}

// Part is an element with its mass, g, and its share of the mass of all, wt%.
type Part struct {
	Element string
	Mass    working.Num
	WT      working.Num
}

// ContentsOf is the contents of a place of a reviewed route.
func ContentsOf(r *hazards.Review, place string) Contents {
	out := Contents{Place: place, Most: working.Absent("V", "mL", working.Lacks("amount_of", place))}
	out.Full = out.Most
	var w *working.Sheet
	for i := range r.Walk.Fullest {
		f := &r.Walk.Fullest[i]
		if f.Place != place {
			continue
		}
		out.Step, out.Most = f.Step, f.Volume
		out.Full = working.Absent("x", "mL/mL", working.Lacks(working.NotGiven, "places."+place+".capacity"))
		if p := r.Case.Route.Place(place); p != nil && p.Capacity.Set && !p.Several() {
			room := working.Given("C", "mL", p.Capacity.In("mL")*float64(max(p.Count, 1)), p.Capacity.At)
			v, m := f.Volume.As("V_l"), f.Solid.As("V_s")
			out.Full = w.Line("x", "mL/mL", "(V_l+V_s)/C", (v.V+m.V)/room.V, v, m, room)
		}
	}
	for i := range r.Case.Route.Steps {
		if s := &r.Case.Route.Steps[i]; s.In == place && s.TargetPH != nil && s.Do == "neutralise" {
			out.PH = s.TargetPH
		}
	}
	out.Elements = elementsIn(r, place)
	return out
}

func elementsIn(r *hazards.Review, place string) []Part {
	var w *working.Sheet
	var out []Part
	for i := range r.Walk.Ends {
		if s := &r.Walk.Ends[i]; s.Place == place && s.Unsaid() != nil {
			return nil
		}
	}
	all := 0.0
	for _, e := range r.Walk.Account {
		if math.Abs(e.Out["unresolved"]) > 1e-9*math.Abs(e.In) {
			return nil
		}
		n := e.Out[place]
		f, err := chemicals.ParseFormula(e.Element)
		if err != nil {
			return nil
		}
		g := n * f.MolarMass(r.Case.Store, nil).V
		all += g
		if e.Element != "H" && e.Element != "O" && n != 0 {
			out = append(out, Part{Element: e.Element, Mass: working.Exact("m", "g", g, e.Element)})
		}
	}
	for i := range out {
		m := out[i].Mass
		total := working.Exact("a", "g", all, "all of it")
		out[i].WT = w.Line("w", "wt%", "100*m/a", 100*m.V/all, m, total)
		if math.IsNaN(all) || !(all > 0) {
			return nil
		}
	}
	return out
}

// Need is an amount of air that a route needs, m3/h, at its dangerous end, and its share
// of the flow of the hood of the site; unknown where no hood or flow is stated.
type Need struct {
	Of    *figure.Figure
	Share working.Num
}

// NeedsOf is the largest need of each sort and agent, failures left out.
func NeedsOf(r *hazards.Review) []Need {
	var out []Need
	at := map[string]int{}
	for i := range r.Figures {
		f := &r.Figures[i]
		if f.Quantity != "air.exhaust_required" && f.Quantity != "gas.hydrogen.dilution_air" || f.Case.Failure != "" ||
			f.Place.IsZero() {
			continue
		}
		key := f.Quantity + "/" + figure.AgentsOf(f.Agent)[0]
		if f.High().Unknown() {
			key += "?" // beside the largest that is known, which it must not hide
		}
		n, ok := at[key]
		if !ok {
			at[key] = len(out)
			out = append(out, Need{Of: f})
			continue
		}
		if f.High().V > out[n].Of.High().V {
			out[n].Of = f
		}
	}
	for i := range out {
		out[i].Share = shareOfHood(r, out[i].Of.High())
	}
	return out
}

func shareOfHood(r *hazards.Review, need working.Num) working.Num {
	s := r.Case.Site
	if s == nil || s.Hood == nil || !s.Hood.Flow.Set {
		return working.Absent("x", "1", working.Lacks(working.NotGiven, "hood.flow"))
	}
	var w *working.Sheet
	least := s.Hood.Flow.In("m3/h")
	if low, _ := s.Hood.Flow.Range("m3/h"); s.Hood.Flow.HasRange() {
		least = low
	}
	flow := working.Given("Q", "m3/h", least, s.Hood.Flow.At)
	return w.Line("x", "1", "q/Q", need.V/flow.V, need.As("q"), flow)
}

// PerGram is a figure of a reviewed route for each gram of its powder, at the dangerous
// end; unknown where it or the powder is.
func PerGram(r *hazards.Review, f *figure.Figure) working.Num {
	p := r.Case.Route.Precursor
	if p == nil || !p.Mass.Set {
		return working.Absent("x", f.Value.Unit, working.Lacks(working.NotGiven, "precursor.mass"))
	}
	var w *working.Sheet
	d, g := f.Danger(), working.Given("m", "g", p.Mass.In("g"), p.Mass.At)
	return w.Line("x", d.Unit, "d/m", d.V/g.V, d.As("d"), g)
}

// Reaction is what one formula unit of the layered phase takes and gives in an etch, mol.
type Reaction struct {
	Step                                 int
	Phase                                string
	Acid, Water                          float64 // NaN where the electrons are not known
	Oxygen, Fluorine, Hydroxyl, Chlorine float64
	Hydrogen                             float64
	Known                                bool // false: no equation of this etch is held
}

// ReactionsOf are the etches of a reviewed route, the reaction of each written once.
func ReactionsOf(r *hazards.Review) []Reaction {
	var out []Reaction
	l := r.Walk.Layered
	for i := range r.Walk.Etches {
		e := &r.Walk.Etches[i]
		if l == nil || e.N.None() || !(e.N.V > 0) && !e.N.Unknown() {
			continue
		}
		p := &e.Product
		x := Reaction{Step: e.Step, Phase: l.Formula.Text, Oxygen: p.Oxygen.V, Fluorine: p.Fluorine.V,
			Hydroxyl: p.Hydroxyl.V, Chlorine: p.Chlorine.V, Hydrogen: p.Hydrogen.V,
			Acid: p.Fluorine.V + p.Chlorine.V + l.Electrons.V, Water: p.Oxygen.V + p.Hydroxyl.V}
		x.Known = e.Family == "fluoride_acid" && !math.IsNaN(x.Acid+x.Water+x.Hydrogen) && !l.Slab
		if len(out) == 0 || out[len(out)-1].Known != x.Known {
			out = append(out, x)
		}
	}
	return out
}
