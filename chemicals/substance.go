package chemicals

import (
	"fmt"
	"io/fs"
	"strings"
)

// Substance is something a bench holds: what it is called, what it is made of
// and how it counts in a balance.
type Substance struct {
	Slug, Name string
	Synonyms   []string
	Formula    Formula
	CAS        string
	State      string // as the pure substance at 25 degC: s, l, g, or aq for an ion
	// Acid is the acid equivalents in mol per mol toward a strong base, such as
	// 2 for sulfuric acid and -2 for calcium hydroxide.
	Acid float64
	// Kind is one of acid, base, carbonate, fluoride_salt, chloride_salt,
	// oxidant, solvent, intercalant, neutraliser, water, reductant, polymer,
	// precursor_metal, other.
	Kind string
	// Solution names the model of the aqueous solution: hf, hcl, h2so4, naoh,
	// koh, nh3, hno3, h2o2, h3po4, water, or "" where there is none.
	Solution string
	Ammonium float64 // mol of nitrogen held as ammonium or ammonia, per mol
	Oxidant  float64 // mol of electrons taken up at most, per mol; 0 for none
	// Metal is the metal that a molten chloride leaves behind and MetalElectrons
	// the mol of electrons it takes for that, per mol; "" and 0 for others.
	Metal          string
	MetalElectrons float64
	Status         string // of CAS and name: read or memory
}

const substanceHeader = "slug,name,synonyms,formula,cas,state,acid,kind,solution,ammonium,oxidant,metal,metal_electrons,status"

func loadSubstances(fsys fs.FS) ([]*Substance, error) {
	records, err := readCSV(fsys, "data/substances.csv", substanceHeader)
	if err != nil {
		return nil, err
	}
	all := make([]Substance, len(records))
	out := make([]*Substance, len(records))
	for n, r := range records {
		if err := all[n].read(r); err != nil {
			return nil, fmt.Errorf("data/substances.csv, row %d: %w", n+2, err)
		}
		out[n] = &all[n]
	}
	return out, nil
}

func (s *Substance) read(r []string) error {
	s.Slug, s.Name, s.CAS, s.State = r[0], r[1], r[4], r[5]
	s.Kind, s.Solution, s.Metal, s.Status = r[7], r[8], r[11], r[13]
	if r[2] != "" {
		s.Synonyms = strings.Split(r[2], "|")
	}
	var err error
	if s.Formula, err = ParseFormula(r[3]); err != nil {
		return err
	}
	for k, to := range map[int]*float64{6: &s.Acid, 9: &s.Ammonium, 10: &s.Oxidant, 12: &s.MetalElectrons} {
		if r[k] == "" {
			continue // not stated means it does not count, for these four
		}
		if *to, err = readNumber(r[k]); err != nil {
			return err
		}
	}
	return nil
}

// String returns the name.
func (s *Substance) String() string { return s.Name }
