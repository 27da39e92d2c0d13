package process

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
)

// end closes the walk: what is where, the acid liquors nobody neutralised, and
// the account of every element.
func (k *walker) end() {
	for i := range k.c.Route.Places {
		p := k.places[k.c.Route.Places[i].Key]
		if !p.Neutralised && len(p.Liquid) > 0 {
			q := k.merged(p)
			if len(q.Entries) > 0 {
				l := Liquor{Place: p.Place, Pool: *q}
				k.held(&l)
				k.out.Treated = append(k.out.Treated, l)
			}
		}
		k.out.Ends = append(k.out.Ends, p.copy())
	}
	if k.out.Powder != nil && !k.charged {
		k.warn(phrase.Of("warn.the_precursor_is_never"))
	}
	k.balance()
}

func contents(p *State) chemicals.Composition {
	var c chemicals.Composition
	add := func(of *chemicals.Composition, n float64) {
		if math.IsNaN(n) {
			return // not in the account either
		}
		for i := range of {
			if of[i] != 0 {
				c[i] += of[i] * n
			}
		}
	}
	for i := range p.Liquid {
		q := &p.Liquid[i]
		for j := range q.Entries {
			share := q.Share.V
			if q.Whole {
				share = 1
			}
			add(q.Entries[j].Of, q.Entries[j].N.V*share)
		}
	}
	for i := range p.Solids {
		add(p.Solids[i].Of, p.Solids[i].N.V)
	}
	return c
}

// unshared is what has to be known to say how much of what went in stands in a place.
func (k *walker) unshared() []working.Missing {
	var in []working.Num
	for i := range k.out.Ends {
		for j := range k.out.Ends[i].Liquid {
			q := &k.out.Ends[i].Liquid[j]
			if !q.Whole {
				in = append(in, q.Share)
			}
			for l := range q.Entries {
				in = append(in, q.Entries[l].N)
			}
		}
	}
	var out []working.Missing
	for i := range in {
		if in[i].Unknown() {
			out = append(out, in[i].Missing()...)
		}
	}
	return working.Joined(out)
}

// rounding is the error of an account that closes.
const rounding = 1e-9

func (k *walker) balance() {
	held := make([]chemicals.Composition, len(k.out.Ends))
	for i := range k.out.Ends {
		held[i] = contents(&k.out.Ends[i])
	}
	worst := 0.0
	for el := range k.in {
		if math.Abs(k.in[el]) <= 1e-12*k.gross[el] {
			continue // nothing went in, or what did was taken back but for rounding
		}
		b := Balance{Element: chemicals.ElementSymbol(el), In: k.in[el], Out: map[string]float64{}}
		sum := 0.0
		put := func(place string, v float64) {
			if v != 0 {
				b.Out[place] = v
				sum += v
			}
		}
		for i := range held {
			put(k.out.Ends[i].Place, held[i][el])
		}
		put("gas", k.gas[el])
		put("evaporated", k.lost[el])
		put("unresolved", k.unres[el])
		b.Error = math.Abs(b.In-sum) / math.Abs(b.In)
		if b.Error > rounding && k.decanted == nil {
			k.decanted = k.unshared()
		}
		if b.Error > rounding && k.decanted != nil { // something stands where nobody knows how much there is
			b.Error = math.NaN()
		}
		if math.IsNaN(b.Error) || b.Error > worst {
			worst = b.Error
		}
		k.out.Account = append(k.out.Account, b)
	}
	if math.IsNaN(worst) {
		k.unclosed = append(k.unclosed, k.decanted...)
	}
	if len(k.unclosed) > 0 {
		k.out.Error = working.Absent("err", "1", k.unclosed...)
		return
	}
	k.out.Error = k.w.Model("err", "1", "account of every element: largest |in - held - gas| / in", worst)
}
