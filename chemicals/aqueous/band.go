package aqueous

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed variants.csv
var variantsText string

// variant is a model in which one thing is as another source has it.
type variant struct {
	name, row string
	logK      float64
	davies    bool
}

var variants = sync.OnceValue(func() []variant {
	return columns.Must("chemicals/aqueous/variants.csv", variantsText, func(r columns.Row) variant {
		_ = r.Named("source") + r.Choice("status", "two-sources", "read", "computed", "memory", "assumed") + r.Text("note")
		return variant{r.Named("variant"), r.Text("row"), r.Number("log_k"), r.Choice("activity", "", "davies") != ""}
	})
})

// Variants are the names of what sources do not agree on.
func Variants() []string {
	var out []string
	for _, v := range variants() {
		out = append(out, v.name)
	}
	return out
}

// Variant is the model at the same temperature with one thing as another source has it.
func (m *Model) Variant(name string) (*Model, error) {
	for _, v := range variants() {
		if v.name == name {
			return with(m.known, m.Celsius(), v)
		}
	}
	return nil, fmt.Errorf("%q is no variant; there are %v", name, Variants())
}

// Band is a figure with what it is under the models that sources do not agree on. The
// ends are the least and the most of all of them; a model that finds no equilibrium is
// named in Without, and then the band is no bound on that side of it.
type Band struct {
	Central, Low, High float64
	Without            []string
	Outside            []string // why Central is no figure to rely on, empty where it is
}

// Band works a figure out under every variant. It costs about ten times one equilibrium.
// The error is that of the model itself.
func (m *Model) Band(mix Mixture, of func(*State) float64) (Band, error) {
	s, err := m.Solve(mix)
	if err != nil {
		return Band{}, err
	}
	b := Band{Central: of(s), Outside: s.Outside()}
	b.Low, b.High = b.Central, b.Central
	for _, v := range variants() {
		other, err := with(m.known, m.Celsius(), v)
		if err == nil {
			s, err = other.Solve(mix)
		}
		if err != nil {
			b.Without = append(b.Without, v.name)
			continue
		}
		b.Low, b.High = math.Min(b.Low, of(s)), math.Max(b.High, of(s))
	}
	return b, nil
}

// Limits of what the activity model and the constants are held for.
const (
	StrongestIons = 1   // mol/kg of ionic strength
	StrongestAcid = 0.9 // mol/kg of HF and HF2-: polyfluorides and the neutral acid are not modelled
	LeastPH       = 0.5 // below it the pH hangs on a convention about single ions
	coolest       = 5   // degC
	warmest       = 60
	highest       = 5 // atm of carbon dioxide: pressure moves no constant here
)

// Outside says why the figures are outside of what the model is held for, in words for a
// reader; it is empty where they are inside. What is outside is a band, see Model.Band.
func (s *State) Outside() []string {
	var out []string
	say := func(is bool, format string, a ...any) {
		if is {
			out = append(out, fmt.Sprintf(format, a...))
		}
	}
	hf, _ := s.Molality("HF")
	hf2, _ := s.Molality("HF2-")
	t := s.w.m.Celsius()
	say(!(s.IonicStrength() <= StrongestIons), "ionic strength %.3g mol/kg is above %g", s.IonicStrength(),
		float64(StrongestIons))
	say(!(hf+hf2 <= StrongestAcid), "%.3g mol/kg of HF and HF2- is above %g", hf+hf2, StrongestAcid)
	say(!(s.PH() >= LeastPH), "pH %.2f is below %g", s.PH(), LeastPH)
	say(!(t >= coolest && t <= warmest), "%.4g degC is not from %d to %d", t, coolest, warmest)
	say(s.mix.Gas.Kind != None && s.Fugacity() > highest, "carbon dioxide at %.3g atm is above %d", s.Fugacity(), highest)
	return out
}

//go:embed kept.csv
var keptText string

// Kept is a complex that gives its fluoride up slowly: what one of it becomes, and the
// share that has within the hours of a cold treatment.
type Kept struct {
	Component        string
	Becomes          []Amount // mol per mol
	Low, Share, High float64
}

var kept = sync.OnceValue(func() []Kept {
	return columns.Must("chemicals/aqueous/kept.csv", keptText, func(r columns.Row) Kept {
		_ = r.Named("source") + r.Choice("status", "read", "memory", "assumed") + r.Text("note")
		k := Kept{Component: r.Named("component"), Low: r.Stated("share_low"), Share: r.Stated("share"),
			High: r.Stated("share_high")}
		for _, text := range r.List("becomes") {
			var a Amount
			if n, err := fmt.Sscanf(text, "%1s:%g", &a.Of, &a.Mol); n != 2 || err != nil {
				r.Fault("becomes", fmt.Errorf("%q is not component:mol", text))
			}
			k.Becomes = append(k.Becomes, a)
		}
		return k
	})
})

// Slow are the complexes that give their fluoride up slowly.
func Slow() []Kept { return slices.Clone(kept()) }

// After is what mol of the complex are when a share of it, 0 to 1, has gone to what it
// becomes: totals for a Mixture. Base has to be counted for all of it, share 1.
func (k Kept) After(mol, share float64) []Amount {
	out := []Amount{{k.Component, mol * (1 - share)}}
	for _, a := range k.Becomes {
		out = append(out, Amount{a.Of, a.Mol * mol * share})
	}
	return out
}
