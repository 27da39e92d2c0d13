package process

import (
	"math"
	"strconv"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
)

// ByFamily is the id of the datum of a kind of flakes of the layered phase of a walk:
// their own, such as that of Ti3C2, else of a carbide as thin or as thick as they
// are, or of what has nitrogen in it, where the data hold such rows. The id of what has neither is its own.
func (k *Walk) ByFamily(st *chemicals.Store, kind string) datum.ID {
	name, layers, carbide, nitrided := "", 0.0, true, true
	for _, x := range k.Layered.M {
		name, layers = name+x.Symbol+count(x.Count), layers+x.Count
	}
	for _, x := range k.Layered.X {
		name, carbide = name+x.Symbol+count(x.Count), carbide && x.Symbol == "C"
		nitrided = nitrided && (x.Symbol == "C" || x.Symbol == "N")
	}
	id, like := datum.Of(kind, name), datum.ID("")
	switch {
	case !carbide && nitrided:
		like = datum.Of(kind, "nitrided")
	case !carbide:
	case math.Abs(layers-2) < 1e-9:
		like = datum.Of(kind, "thin")
	case math.Abs(layers-3) < 1e-9, math.Abs(layers-4) < 1e-9:
		like = datum.Of(kind, "thick")
	}
	_, own := st.Row(id)
	if _, general := st.Row(like); !own && general {
		return like
	}
	return id
}

func count(x float64) string {
	if x == 1 {
		return ""
	}
	return strconv.FormatFloat(x, 'g', 3, 64)
}
