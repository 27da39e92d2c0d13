package figure

import (
	_ "embed"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed supposed.csv
var supposedCSV string

// supposing is what holds only if something fails or gets out, in whatever case it is told.
type supposing struct {
	quantities map[string]bool
	places     map[Place]bool
}

var supposed = sync.OnceValue(func() supposing {
	out := supposing{map[string]bool{}, map[Place]bool{}}
	columns.Must("hazards/figure/supposed.csv", supposedCSV, func(r columns.Row) bool {
		r.Named("supposes")
		if place := r.Text("place"); place != "" {
			out.places[At(place)] = true
			return true
		}
		out.quantities[r.Named("quantity")] = true
		return true
	})
	return out
})
