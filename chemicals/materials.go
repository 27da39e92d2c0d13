package chemicals

import (
	"io/fs"
	"math"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/material"
)

func loadMaterials(fsys fs.FS) (*material.Table, error) {
	var text [3]string
	for i, name := range [...]string{"materials", "material_resistance", "material_words"} {
		data, err := fs.ReadFile(fsys, "data/"+name+".csv")
		if err != nil {
			return nil, err
		}
		text[i] = string(data)
	}
	return material.Parse(material.Text{Materials: text[0], Resistance: text[1], Words: text[2]})
}

// ofMaterials are the scalar rows that the table of materials holds: how each conducts
// heat and up to which temperature it is used.
func ofMaterials(t *material.Table) []Datum {
	var out []Datum
	for _, m := range t.Rows() {
		d := Datum{Value: m.Conductivity, Low: m.Low, High: m.High, Source: "own", Where: m.Source, Status: m.Status,
			Old: math.NaN()}
		if !math.IsNaN(m.Conductivity) {
			k := d
			k.ID, k.Symbol, k.Unit, k.Shape = datum.Of("conductivity", m.Slug), "k_w", "W/m/K", "triangle"
			k.Note = "how well " + m.Name + " conducts heat"
			out = append(out, k)
		}
		if !math.IsNaN(m.Service) {
			s := d
			s.ID, s.Symbol, s.Unit, s.Note = datum.Of("service", m.Slug), "T_s", "degC", m.Name
			s.Value, s.Low, s.High = m.Service, math.NaN(), math.NaN()
			out = append(out, s)
		}
	}
	return out
}

// Materials is the table of what vessels, linings and lids are made of.
func (s *Store) Materials() *material.Table { return s.rows.files.materials }
