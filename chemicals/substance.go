package chemicals

import (
	"io/fs"
	"math"

	"etchbound/schemas/columns"
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
	// HydrolysisHF is the mol of HF that water or base can free from the complex
	// that holds its fluoride, such as 4 for BF4-, and HydrolysisAcid the acid
	// equivalents that this adds to Acid, per mol; 0 where nothing is held so.
	HydrolysisHF, HydrolysisAcid float64
	// Liquor is salt for a fluoride that takes up strong acid and leaves the
	// chloride of its metal, half_acid for one of which half the fluoride is an
	// acid already, and "" for what no model of the vapour over a liquor counts.
	Liquor string
	// WasteAgent ranks what is offered for waste that nobody wrote an agent for,
	// from 1; 0 is not offered.
	WasteAgent int
	// Vapour is none for a liquid that adds nothing to the vapour of water, gives
	// for a solid that does, and "" for what its state says.
	Vapour string
	// Sold is solution for a substance that comes as its solution alone.
	Sold string
	// NotHeld marks a substance of which the data hold nothing; see Unheld.
	NotHeld bool
	Status  string // of CAS and name: read or memory

	classes []string // nil: not worked out
}

func loadSubstances(fsys fs.FS) ([]*Substance, error) {
	all, err := read(fsys, "data/substances.csv", substanceOf)
	if err != nil {
		return nil, err
	}
	rows, err := loadClasses(fsys)
	for _, s := range all {
		s.classes = s.classify(rows)
	}
	return all, err
}

func substanceOf(r columns.Row) *Substance {
	s := &Substance{Slug: r.Named("slug"), Name: r.Named("name"), Synonyms: r.List("synonyms"), CAS: r.Text("cas"),
		State: r.Text("state"), Acid: counts(r, "acid"), Kind: r.Named("kind"), Solution: r.Text("solution"),
		Ammonium: counts(r, "ammonium"), Oxidant: counts(r, "oxidant"), Metal: r.Text("metal"),
		MetalElectrons: counts(r, "metal_electrons"), HydrolysisHF: counts(r, "hydrolysis_hf"),
		HydrolysisAcid: counts(r, "hydrolysis_acid"), Liquor: r.Text("liquor"), WasteAgent: int(counts(r, "waste_agent")),
		Vapour: r.Text("vapour"), Sold: r.Text("sold"), Status: r.Named("status")}
	var err error
	if s.Formula, err = ParseFormula(r.Text("formula")); err != nil {
		r.Fault("formula", err)
	}
	return s
}

// counts is how a substance counts in a balance: not at all where its cell is blank.
func counts(r columns.Row, head string) float64 {
	v := r.Number(head)
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// Carbonate is the mol of carbon dioxide that acid frees of one mol.
func (s *Substance) Carbonate() float64 {
	if s.NotHeld && s.May("C") && s.May("O") {
		return math.NaN()
	}
	if s.Kind != "carbonate" {
		return 0
	}
	return s.Formula.Count("C")
}

// Neutral is the base in mol per mol that takes it to neutral, ammonium to
// ammonia, and what its complexes free with it; negative where it brings base.
func (s *Substance) Neutral() float64 { return s.Acid + s.Ammonium + s.HydrolysisAcid }

// String returns the name.
func (s *Substance) String() string { return s.Name }
