package aqueous

import (
	"slices"
)

// work is one solution being looked for.
type work struct {
	m       *Model
	comp    []int     // masters present, H+ first
	spec    []int     // rows of species present, masters first and in the order of comp
	ions    []ion     // of these
	counts  []float64 // of masters in these, master by master
	total   []float64 // mol of each master, dissolved or not
	water   float64   // mol of water, bound or not
	fixed   bool      // 1 kg of water is there, whatever else happens
	holds   []hold
	active  []int // holds that are on
	space   float64
	x       []float64 // ln a of masters
	lnI     float64   // of the ionic strength, mol/kg
	lnWater float64   // of the activity of water
	lnKg    float64   // of the kg of water
	ln      []float64 // of molalities
	mol     []float64 // of species, and of the gas of a rigid space behind them
	gasZ    float64   // ln of fugacity coefficient times compressibility
	frame
	newton
	steps int
}

const perKg = 55.506 // mol of water in 1 kg, as the source of the constants takes it

// newWork makes room for the masters that have something in them.
func (m *Model) newWork(total []float64, water float64, some uint32) *work {
	w := &work{m: m, water: water, comp: make([]int, 0, len(total)), total: make([]float64, 0, len(total)),
		spec: make([]int, 0, len(m.species)), ions: make([]ion, 0, len(m.species))}
	for j := range total {
		if some>>j&1 == 1 {
			w.comp = append(w.comp, j)
			w.total = append(w.total, total[j])
		}
	}
	for _, i := range m.species {
		if m.known.rows[i].present&^some == 0 {
			w.spec, w.ions = append(w.spec, i), append(w.ions, m.ions[i])
		}
	}
	w.counts = make([]float64, len(w.comp)*len(w.spec))
	for i, r := range w.spec {
		for j, c := range w.comp {
			w.counts[j*len(w.spec)+i] = m.known.rows[r].of[c]
		}
	}
	n := len(w.spec) + 1
	room := make([]float64, 2*n+len(w.comp))
	w.ln, w.mol, w.x = room[:n], room[n:2*n], room[2*n:]
	return w
}

// order sorts species by amount, largest first.
func (w *work) order() []int {
	out := make([]int, len(w.spec))
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(a, b int) int {
		switch {
		case w.ln[a] > w.ln[b]:
			return -1
		case w.ln[a] < w.ln[b]:
			return 1
		}
		return a - b
	})
	return out
}
