package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

const massFraction = quantity.MassFraction

// reaction says what a step adds to the chemistry of its liquor.
type reaction struct {
	closed  bool // heated in a closed vessel: acid alone etches too
	current bool // electrolysed
}

// Family is how a powder was etched.
type Family string

// The families.
const (
	FluorideAcid Family = "fluoride_acid"
	FluorideSalt Family = "fluoride_salt"
	HotAcid      Family = "hot_acid"
	Alkaline     Family = "alkaline"
	Oxidising    Family = "oxidising"
	Unheld       Family = "not_held"
	Molten       Family = "molten_chloride"
	Current      Family = "electrochemical"
	AcidWash     Family = "acid_wash"
)

// Etch is one meeting of powder and etchant.
type Etch struct {
	Step       int
	Place      string
	Family     Family
	Powder     working.Num // g
	N          working.Num // mol of layered phase; zero where only impurities react
	Product    etching.Product
	Hydrogen   working.Num // mol from the layered phase, all of it
	Heat       working.Num // kJ released by the layered phase, all of it
	Dissolved  []Dissolved
	AcidBefore working.Num // mol of acid equivalents offered
	Ammonium   bool
	StandIns   bool // the heat is put together from stand-ins
}

// Dissolved is an impurity that reacts with the liquor.
type Dissolved struct {
	Formula  chemicals.Formula
	N        working.Num // mol
	Hydrogen working.Num // mol
	Heat     working.Num // kJ released
	Unstated bool
	Metal    bool // a melt left it, and it is no impurity of the powder
}

// bath is what the liquid of a place is, judged by its central amounts; an
// unknown amount counts as there.
type bath struct {
	acid, fluoride, chloride, base, oxidant, ammonium bool

	stranger *chemicals.Substance // something in it that the data do not hold
}

func look(q *Pool) bath {
	acid := value(q, func(e *Entry) float64 { return e.Acid })
	f, _ := chemicals.ElementIndex("F")
	cl, _ := chemicals.ElementIndex("Cl")
	there := func(i int) bool {
		v := value(q, func(e *Entry) float64 { return e.Count(i) })
		return !(v <= 0)
	}
	base := has(q, func(s *chemicals.Substance) bool { // an amine or hydrazine is one too
		return s.Kind == "base" || s.Kind == "intercalant" && s.Acid < 0
	})
	return bath{
		stranger: q.Stranger(),
		acid:     acid > 0 || (acid != acid && has(q, func(s *chemicals.Substance) bool { return !(s.Acid <= 0) })),
		fluoride: there(f), chloride: there(cl),
		base:     base && !(acid > 0),
		oxidant:  has(q, func(s *chemicals.Substance) bool { return s.Oxidant > 0 }),
		ammonium: has(q, func(s *chemicals.Substance) bool { return s.Ammonium > 0 }),
	}
}

// react lets whatever meets in the place react.
func (k *walker) react(p *State, s *route.Step, r reaction) {
	if len(p.Solids) == 0 {
		return
	}
	q := k.merged(p)
	b := look(q)
	family, phase := k.family(p, b, r)
	lacks := doubted(p)
	if family == "" {
		return
	}
	switch {
	case family == Unheld:
		k.unmodelledBath(p, q, s, "unknown", b.stranger.Lacks())
		if !phase {
			k.mayTake(p, s, &b)
		}
		return
	case !lacks.IsZero() && comes(p, s): // it may be as it was, and react with this now
		k.unmodelledBath(p, q, s, "unknown", lacks)
		return
	case family == Oxidising:
		k.unmodelledBath(p, q, s, "oxidising", working.Missing{})
		return
	case b.acid && b.base: // only where an amount is unknown
		k.unmodelledBath(p, q, s, "acid_or_alkaline", working.Missing{})
		return
	}
	e := Etch{Step: s.Number, Place: p.Place, Family: family, Ammonium: b.ammonium,
		AcidBefore: Total(k.w, q, "n_acid", func(e *Entry) float64 { return e.Acid })}
	if len(q.More) > 0 {
		e.AcidBefore = working.Absent("n_acid", "mol", q.More...)
	}
	if k.out.Powder != nil {
		e.Powder = k.out.Powder.Mass
	}
	did := k.impurities(p, q, &e, b)
	if phase {
		did = k.etch(p, q, &e, etching.Bath{Fluoride: b.fluoride, Chloride: b.chloride}) || did
		if r.current {
			k.byCurrent(p, q, s, &e, b)
		}
	}
	did = k.metals(p, q, &e, b) || did
	if b.base && !phase { // what an etch in this very step leaves is part of its total
		k.residual(p, s)
	}
	if did {
		p.Etches = append(p.Etches, len(k.out.Etches))
		k.out.Etches = append(k.out.Etches, e)
	}
}

// comes reports whether a step brings anything to a place.
func comes(p *State, s *route.Step) bool { return len(s.What) > 0 || p.Place != s.In }

// doubted is what has to be known to say whether a solid of a place has reacted;
// zero where all of them are followed.
func doubted(p *State) working.Missing {
	for i := range p.Solids {
		if x := p.Solids[i].Lacks; !x.IsZero() {
			return x
		}
	}
	return working.Missing{}
}

// family decides how the liquor meets the solids, and whether the layered
// phase itself is etched.
func (k *walker) family(p *State, b bath, r reaction) (Family, bool) {
	phase := len(pick(p.Solids, Unetched)) > 0
	switch {
	case b.stranger != nil:
		return Unheld, phase
	case b.oxidant:
		return Oxidising, phase
	case r.current && phase:
		return Current, true
	case b.acid && b.fluoride:
		return FluorideAcid, phase
	case b.acid && r.closed && phase:
		return HotAcid, true
	case b.acid:
		return AcidWash, false
	case b.base:
		return Alkaline, phase
	case b.fluoride && phase:
		return FluorideSalt, true
	}
	return "", false
}

// unmodelledBath moves the solids of a place to the unresolved, because the
// electrons go to an oxidant or because nobody knows whether the liquor is acid
// or alkaline, or what is in it: how much gas of which kind comes off is unknown.
// lacks is what has to be known, zero for the gas and the heat themselves: a heat that the route
// itself states of its powder counts.
func (k *walker) unmodelledBath(p *State, q *Pool, s *route.Step, bath string, lacks working.Missing) {
	kept := p.Solids[:0:0]
	met, seen := false, false
	missing := working.Lacks("bath_gas", bath).In(s.Number)
	heat := working.Lacks("bath_heat", bath).In(s.Number)
	if !lacks.IsZero() {
		missing, heat = lacks, lacks
	}
	lostHeat := working.Absent("Q", "kJ", heat)
	whole := len(pick(p.Solids, Unetched)) > 0
	var dissolved []Dissolved // a toxic hydride stays named
	for i := range p.Solids {
		switch x := p.Solids[i]; x.Kind {
		case Unetched, Impurity, Residual, Based:
			met = met || x.Kind != Residual || !x.N.Unknown() || !x.Lacks.IsZero() && comes(p, s)
			if f, err := chemicals.ParseFormula(x.Formula); x.Kind == Impurity && err == nil && !k.inert(x.Formula) {
				dissolved = append(dissolved, Dissolved{Formula: f, N: x.N, Unstated: x.Unstated,
					Hydrogen: working.Absent("n_H2", "mol", missing), Heat: lostHeat})
			}
			k.unresolve(p, i, working.Lacks("gas_of_bath_left", bath).In(s.Number))
			p.Solids[i].Lacks = lacks
			kept = append(kept, p.Solids[i])
		case Metal:
			seen = true
			q.Entries = append(q.Entries, Entry{Name: x.Name + " dissolved", Of: x.Of, N: x.N})
		default:
			seen = seen || x.Kind == Product
			kept = append(kept, x)
		}
	}
	p.Solids = kept
	if (met || seen) && bath == "oxidising" {
		k.sayOxidant(s.Number)
	}
	if !met {
		return
	}
	q.doubt()
	e := Etch{Step: s.Number, Place: p.Place, Family: Oxidising, Powder: k.out.Powder.Mass, N: k.out.Powder.N,
		Hydrogen: working.Absent("n_H2", "mol", missing), Heat: lostHeat, Dissolved: dissolved}
	switch {
	case !lacks.IsZero():
		e.Family = Unheld
	case whole && bath == "oxidising" && k.out.Layered.Measured(k.st):
		k.heat(&e)
	}
	e.Product.Hydrogen = working.Absent("h", "mol/mol", missing)
	p.Etches = append(p.Etches, len(k.out.Etches))
	k.out.Etches = append(k.out.Etches, e)
}

func (k *walker) toUnresolved(of *chemicals.Composition, n float64) {
	for i := range of {
		if of[i] != 0 {
			k.unres[i] += of[i] * n
		}
	}
}

func (k *walker) toGas(of *chemicals.Composition, n float64) {
	for i := range of {
		if of[i] != 0 {
			k.gas[i] += of[i] * n
		}
	}
}

// atoms is the composition of one element.
func atoms(symbol string, n float64) *chemicals.Composition {
	c := new(chemicals.Composition)
	if i, ok := chemicals.ElementIndex(symbol); ok {
		c[i] = n
	}
	return c
}

var hydrogenGas = atoms("H", 2)

// release sends gas off and takes its elements from the pool.
func (k *walker) release(q *Pool, step int, place, gas, cause string, of *chemicals.Composition, n working.Num) {
	given := n
	if len(q.More) > 0 {
		given = working.Absent(n.Symbol, n.Unit, q.More...)
	}
	k.out.Releases = append(k.out.Releases, Release{step, place, gas, cause, given})
	k.toGas(of, n.V)
	k.take(q, gas+" given off", of, n, 0, 0)
}

// take appends a negative entry: n mol of `of` leave the pool.
func (k *walker) take(q *Pool, name string, of *chemicals.Composition, n working.Num, acid, base float64) {
	x := n.As("n")
	m := k.w.Line("n_taken", "mol", "-n", -x.V, x)
	q.Entries = append(q.Entries, Entry{Name: name, Of: of, N: m, Acid: acid, Base: base})
}
