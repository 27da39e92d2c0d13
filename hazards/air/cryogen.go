package air

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed cryogens.csv
var cryogenTable string

// cryogen is what cools by turning to gas in the open.
type cryogen struct {
	kind    string
	kept    string // key of the room of a site that says how much of it stands there
	gas     *chemicals.Substance
	density float64 // g/mL
	source  string
}

var cryogens = sync.OnceValue(func() []cryogen {
	return columns.Must("hazards/air/cryogens.csv", cryogenTable, func(r columns.Row) cryogen {
		s, held := chemicals.Library().Find(r.Named("gas"))
		if !held {
			r.Fault("gas", fmt.Errorf("%s is no substance that is held", r.Named("gas")))
		}
		r.Choice("status", "read", "two-sources", "memory", "assumed")
		return cryogen{kind: r.Named("kind"), kept: r.Text("kept"), gas: s,
			density: r.Stated("density"), source: r.Named("source")}
	})
})

// chilled reports whether a step is set so cold, at the low end of its range, that no freezer
// that runs by itself comes there: something cold was poured for it.
func (r *reader) chilled(s *route.Step) bool {
	const ice = 273.15 // K, above which nothing freezes
	t := s.Temperature
	if t.Low < t.SI {
		t.SI = t.Low
	}
	return t.Set && t.SI < ice && t.In("degC") < r.c.Store.Num("freezer.coldest").V
}

// boils is the gas in L, at 25 degC and 101.325 kPa, that all of what cools a step becomes:
//
//	v = m/M Vm,  m = V rho where a volume is stated     [L: g, g/mol, L/mol, mL, g/mL]
//
// A step that freezes and does not say with what may do so with any of them, however cold it
// is: a freezer is said by none.
func (r *reader) boils(s *route.Step) (v working.Num, of *cryogen) {
	switch {
	case s.Cryogen == "none":
		return working.Num{}, nil
	case s.Cryogen == "":
		if r.chilled(s) || s.Verb().Tag == "freeze" {
			return working.Absent("v", "L", working.Lacks(working.NotGiven, s.At+".cryogen")), nil
		}
		return working.Num{}, nil
	}
	if x := cryogenOf(s.Cryogen); x != nil {
		return r.turned(x, s), x
	}
	return working.Absent("v", "L", working.Lacks(working.NotGiven, s.At+".cryogen")), nil
}

// cryogenOf is the row of a kind of what cools, nil where there is none.
func cryogenOf(kind string) *cryogen {
	all := cryogens()
	if i := slices.IndexFunc(all, func(x cryogen) bool { return x.kind == kind }); i >= 0 {
		return &all[i]
	}
	return nil
}

// turned is the gas of one amount of it, L.
func (r *reader) turned(x *cryogen, s *route.Step) working.Num {
	if !s.CryogenAmount.Set {
		return working.Absent("v", "L", working.Lacks(working.NotGiven, s.At+".cryogen_amount"))
	}
	if s.CryogenAmount.Can("g") {
		m, M := r.c.Given("m", "g", s.CryogenAmount), x.gas.Formula.MolarMass(r.c.Store, r.w).As("M")
		return r.w.Line("v", "L", "m/M*Vm", m.V/M.V*r.vm.V, m, M, r.vm)
	}
	return r.turnedVolume(x, r.c.Given("V", "mL", s.CryogenAmount))
}

// turnedVolume is the gas of a volume of it, L.
func (r *reader) turnedVolume(x *cryogen, V working.Num) working.Num {
	M := x.gas.Formula.MolarMass(r.c.Store, r.w).As("M")
	rho := working.Exact("rho", "g/mL", x.density, x.source).Worse(working.Estimated)
	return r.w.Line("v", "L", "V*rho/M*Vm", V.V*rho.V/M.V*r.vm.V, V, rho, M, r.vm)
}

// dewarMost is the largest vessel of liquid nitrogen of a bench.
const dewarMost datum.ID = "dewar.most"

// nitrogen is the gas of a volume of what is kept in a dewar, L; unknown where no row says
// what that is.
func (r *reader) nitrogen(V working.Num) working.Num {
	all := cryogens()
	i := slices.IndexFunc(all, func(x cryogen) bool { return x.kept == "dewar" })
	if i < 0 {
		return working.Absent("v", "L", working.Lacks("site_dewar", ""))
	}
	return r.turnedVolume(&all[i], V)
}

// dewar is the gas of the largest vessel of what a site keeps in one, L; none where it says
// that there is none, unknown where no site says, or no row says what that is.
func (r *reader) dewar(how stating) (working.Num, bool) {
	v := working.Absent("v", "L", working.Lacks("site_dewar", ""))
	switch s := r.c.Site; {
	case s != nil && s.Dewar.Set && s.Dewar.SI == 0, how == atWorst && s == nil:
		return working.Num{}, false
	case s != nil && s.Dewar.Set:
		v = r.nitrogen(r.c.Given("V", "mL", s.Dewar))
	case how == atWorst:
		v = r.nitrogen(r.c.Store.Num(dewarMost).As("V"))
	}
	return v, true
}

// bottled is the gas of the largest cylinder of the room, L; none where a site says that there
// is none. Where no site says, how much one could let out is not known.
func (r *reader) bottled(how stating) (working.Num, bool) {
	switch s := r.c.Site; {
	case s != nil && s.Cylinder.Set && s.Cylinder.SI == 0, how == atWorst && s == nil:
		return working.Num{}, false
	case s != nil && s.Cylinder.Set:
		return r.c.Given("v", "L", s.Cylinder), true
	case how == atWorst:
		return r.c.Store.Num("cylinder.most").As("v"), true
	}
	return working.Absent("v", "L", working.Lacks("site_cylinder", "")), true
}

// cold reports the gas of each step asked for that something cold is poured for, and keeps
// those of all of them for the air of the room.
func (r *reader) cold() {
	for i := range r.c.Route.Steps {
		s := &r.c.Route.Steps[i]
		if !r.asks(s.Number) {
			continue
		}
		if v, _ := r.boils(s); !v.None() {
			r.chill = append(r.chill, v)
			r.put("air.cryogen", figure.Step(s.Number), "", figure.Case{}, v, phrase.Of("air.cryogen"))
		}
	}
}

// iced is the amount of carbon dioxide in mol that dry ice gives in a step, unknown where
// nobody says with what it is made cold; false where that is no dry ice.
func (r *reader) iced(s *route.Step) (working.Num, bool) {
	v, x := r.boils(s)
	if v.None() || x != nil && x.gas.Formula.Text != "CO2" {
		return working.Num{}, false
	}
	v = v.As("v")
	return r.w.Line("n", "mol", "v/Vm", v.V/r.vm.V, v, r.vm), true
}
