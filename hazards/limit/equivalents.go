package limit

import (
	_ "embed"
	"math"
	"sync"

	"etchbound/chemicals"
	"etchbound/schemas/columns"
)

//go:embed equivalents.csv
var equivalentTable string

// equivalent is a gas that counts as so many mol of another one.
type equivalent struct {
	agent, as string
	called    string // what of it is in the air, in words
	moles     float64
	aegl2     string // series of the emergency levels of tier 2
}

var equivalentsHeld = sync.OnceValue(func() []equivalent {
	return columns.Must("hazards/limit/equivalents.csv", equivalentTable, func(r columns.Row) equivalent {
		r.Named("status")
		r.Text("note")
		return equivalent{r.Named("agent"), r.Named("as"), r.Named("called"), r.Stated("moles"), r.Named("aegl2")}
	})
})

// equivalents are the limits of gases that are held against those of another: 3 ppm of
// HF are 0.75 ppm of SiF4, which gives four HF.
func equivalents(all []Exposure) []Exposure {
	var out []Exposure
	for _, q := range equivalentsHeld() {
		for _, e := range all {
			if e.Agent == q.as {
				e.ID, e.Agent, e.Value, e.Mass = e.ID+"_for_"+q.agent, q.agent, e.Value/q.moles, 0
				if e.Series = ""; e.Tier == 2 {
					e.Series = q.aegl2
				}
				e.Label += " of " + q.called + " that it makes"
				out = append(out, e)
			}
		}
	}
	return out
}

// molarVolume is that of a gas at 20 degC and 101.325 kPa, L/mol. Limits by mass are
// turned into ppm by it everywhere, which is the stricter where they mean 25 degC.
const molarVolume = 24.055

// ofMass is a concentration by mass, mg/m3, in ppm of an agent, unknown where no data
// are held of it.
func ofMass(agent string, mass float64) float64 {
	s, held := chemicals.Library().Find(agent)
	if !held {
		return math.NaN()
	}
	return mass * molarVolume / s.Formula.MolarMass(chemicals.Base(), nil).V
}

// Makes is what one of a gas turns into in moist air or water, and how many of it; "" of a
// gas of which no row is held.
func Makes(gas string) (as string, moles float64) {
	for _, q := range equivalentsHeld() {
		if q.agent == gas {
			return q.as, q.moles
		}
	}
	return "", 0
}
