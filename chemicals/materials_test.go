package chemicals

import (
	"math"
	"slices"
	"testing"

	"etchbound/chemicals/datum"
)

// Nothing that is held conducts heat worse, or softens earlier, than what is counted
// where a material is not known: a material left out never does better.
func TestAnUnknownMaterialIsTheWorst(t *testing.T) {
	s := Base()
	row := func(id datum.ID) Datum {
		d, ok := s.Row(id)
		if !ok {
			t.Fatalf("no row %s", id)
		}
		return d
	}
	inside, bath, still := row("film.inside"), row("film.bath"), row("film.still")
	unknown, thick, weakest := row("wall.unknown"), row("wall.thick"), row("service.unknown")
	for _, m := range s.Materials().Rows() {
		k := row(datum.Of("conductivity", m.Slug))
		least := 1 / (1/(inside.Low*still.Value) + thick.High/1000/k.Low + 1/bath.Low)
		most := 1 / (1/inside.High + thick.Low/1000/k.High + 1/bath.High)
		if !(unknown.Low <= least) || !(unknown.High >= most) {
			t.Errorf("%s: %.3g to %.3g W/m2/K, an unknown wall %g to %g", m.Slug, least, most, unknown.Low, unknown.High)
		}
		if d, ok := s.Row(datum.Of("service", m.Slug)); ok && !(weakest.Value <= d.Value) {
			t.Errorf("%s is used up to %g degC, what is not known up to %g", m.Slug, d.Value, weakest.Value)
		}
	}
	for _, d := range s.Rows() {
		if (d.ID.Key().Is("wall") || d.ID == "wall.other") && d.Unit == "mm" && d.ID != "wall.thick" &&
			(!(d.High == row("wall.other").High) || !(d.High <= thick.High) || !(d.Low >= thick.Low)) {
			t.Errorf("%s: %g to %g mm: a wall that is left out counts to another thickness", d.ID, d.Low, d.High)
		}
	}
}

// The rows that the table of materials adds are data like all others, each once.
func TestEveryIDOnce(t *testing.T) {
	var ids []datum.ID
	for _, d := range Base().Rows() {
		if slices.Contains(ids, d.ID) {
			t.Errorf("%s stands twice", d.ID)
		}
		ids = append(ids, d.ID)
	}
	if d, ok := Base().Row("conductivity.tantalum"); !ok || d.Status != "memory" || math.IsNaN(d.Value) {
		t.Errorf("tantalum: %+v", d)
	}
}
