package ranges

import (
	"cmp"
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/workers"
)

// Turn is what one datum does to a verdict, while all others stay where they are worst
// and the limit stays as it is.
type Turn struct {
	Finding figure.FindingID
	Verdict figure.Verdict
	Datum   chemicals.Datum // of data that move together, the first; none where the whole range has the verdict
	Worst   float64         // where it stands at the dangerous end
	At      float64         // the first value, from there, at which the verdict is milder; NaN: none of its range
	Share   float64         // how much of its range that is; infinite where At is NaN
	Becomes figure.Verdict
}

// turner looks for the turns of one verdict.
type turner struct {
	r     *ranger
	lots  *lots // of runs whose peaks are bounds where it ends at one
	i     int   // the figure judged, in base
	worst key
	find  *figure.Finding
	low   bool
}

// matter is what findings have in common that differ in place and law alone.
type matter struct {
	quantity, agent string
	whole           bool // all of the range has the verdict
}

// Turns are the turns of the verdicts that are near or exceed, of what is as it is meant:
// of each quantity and agent that of the worst place and law, and of the worst
// whose range does not all have it; a row for each datum that is not at its best estimate. A
// verdict that the whole range has stands with
// no datum, for none can turn it. The verdict that counts most and the datum of which
// least has to be known come first.
func (s *Swung) Turns(findings []figure.Finding) []Turn {
	all := s.turners(findings)
	found := make([][]Turn, len(all))
	workers.Each(len(all), func(i int) { found[i] = all[i].turns() })
	out := slices.Concat(found...)
	slices.SortStableFunc(out, func(a, b Turn) int {
		return cmp.Or(-cmp.Compare(a.Verdict, b.Verdict), cmp.Compare(a.Share, b.Share))
	})
	return out
}

func (s *Swung) turners(findings []figure.Finding) []turner {
	at := make(map[figure.ID]int, len(s.r.base))
	for i := range s.r.base {
		at[s.r.base[i].ID] = i
	}
	var all []turner
	place := map[matter]int{}
	for k := range findings {
		f := &findings[k]
		id := f.Figure
		if !f.Of.IsZero() {
			id = f.Of
		}
		i, there := at[id]
		if !there || id.Case.Failure != "" || f.Verdict != figure.Near && f.Verdict != figure.Exceeds ||
			s.r.base[i].Danger().Unknown() {
			continue
		}
		q, _ := figure.Lookup(id.Quantity)
		t := turner{s.r, s.r.lots, i, s.Leads.of[id].key, f, q.Danger == figure.Low}
		if s.Leads.of[id].bound {
			t.lots = s.r.bounds
		}
		m := matter{id.Quantity, id.Agent, f.Surely == figure.WholeRange}
		if n, there := place[m]; !there {
			place[m] = len(all)
			all = append(all, t)
		} else if f.Margin < all[n].find.Margin {
			all[n] = t
		}
	}
	return all
}

// turns tries every datum that does not stand at its best estimate.
func (t *turner) turns() []Turn {
	none := Turn{Finding: t.find.ID(), Verdict: t.find.Verdict, Worst: math.NaN(), At: math.NaN(), Share: math.Inf(1),
		Becomes: t.find.Verdict}
	if t.find.Surely == figure.WholeRange || t.worst == "" {
		return []Turn{none}
	}
	var out []Turn
	for v := range t.r.vars {
		if t.worst[v] == centre {
			continue
		}
		if !t.reaches(v) {
			continue
		}
		x := none
		x.Datum, x.Worst = t.r.vars[v].rows[0], t.value(v, 0, 0)
		if share, there, turns := t.turn(v); turns {
			x.Share, x.At, x.Becomes = share, t.value(v, 0, share), t.level(there)
		}
		out = append(out, x)
	}
	return out
}

// reaches reports whether a datum alone may turn the verdict: not where it moves the
// figure from its centre by so little that three times as many orders of magnitude would
// not do.
func (t *turner) reaches(v int) bool {
	i := t.i
	x, y := t.r.lots.at(&t.r.swings[v*len(ends)], i), t.r.lots.at(&t.r.swings[(v+1)*len(ends)-1], i)
	worst, at := t.r.base[i].Danger().V, t.threshold()
	if !(x > 0 && y > 0 && worst > 0 && at > 0) {
		return true
	}
	return 3*math.Abs(math.Log(x/y)) >= math.Abs(math.Log(worst/at))
}

// turn is the share of the range of a datum, from where it is worst, at which the verdict
// turns, and what the figure is there. What is worst of the others with this datum where
// it was need not be worst with it better known: where another end of one of them gives
// the verdict again, it is looked for from there.
func (t *turner) turn(v int) (share, there float64, turns bool) {
	here := *t
	for range len(t.r.vars) {
		other := here.with(v, 1)
		if here.level(other) >= t.find.Verdict {
			return 0, 0, false
		}
		share, there = here.first(v, other)
		worse, found := here.again(v, share)
		if !found {
			return share, there, true
		}
		here.worst = worse
	}
	return 0, 0, false
}

// again is a run with another datum at another end that has the verdict all the same.
func (t *turner) again(v int, share float64) (key, bool) {
	for u := range t.r.vars {
		if u == v || !t.r.base[t.i].Case.Bracketed() || t.worst[u] == centre && !t.r.stirs(u, t.r.driver(t.i)) {
			continue
		}
		for _, end := range [...]byte{0, centre, 4} {
			if end == t.worst[u] {
				continue
			}
			x, b := *t, []byte(t.worst)
			b[u] = end
			if x.worst = key(b); t.level(x.with(v, share)) >= t.find.Verdict {
				return x.worst, true
			}
		}
	}
	return "", false
}

// fine is the part of the range of a datum to which it is found where a verdict turns.
const fine = 1e-2

// first is the share of a range, from where it is worst, at which the verdict turns, and
// what the figure is there. It is looked for where it would be if the figure were a power
// of the datum, then a hair beside that, and then by halves.
func (t *turner) first(v int, other float64) (share, there float64) {
	from, to := 0.0, 1.0
	above, below := t.r.base[t.i].Danger().V, other
	there = other
	beside := 0.0
	for tries := 0; to-from > fine; tries++ {
		m := (from + to) / 2
		switch x := t.guess(v, from, to, above, below); {
		case tries%3 == 0 && x > from && x < to:
			m = x
		case tries%3 == 1 && beside > from && beside < to:
			m = beside
		}
		x := t.with(v, m)
		if t.level(x) < t.find.Verdict {
			to, there, below, beside = m, x, x, m-fine
		} else {
			from, above, beside = m, x, m+fine
		}
	}
	return to, there
}

// guess is the share at which the figure would be where the verdict turns if it were a
// power of the datum between two shares, or straight where one of them is not above zero.
func (t *turner) guess(v int, from, to, above, below float64) float64 {
	worst, other := t.value(v, 0, 0), t.value(v, 0, 1)
	x, y, at := worst+from*(other-worst), worst+to*(other-worst), t.threshold()
	if x > 0 && y > 0 && above > 0 && below > 0 && at > 0 {
		part := math.Log(above/at) / math.Log(above/below)
		return (x*math.Pow(y/x, part) - worst) / (other - worst)
	}
	return from + (to-from)*(above-at)/(above-below)
}

// threshold is the value of the figure at which the verdict turns.
func (t *turner) threshold() float64 {
	if t.find.Verdict == figure.Near {
		return t.find.Limit.NearFrom(t.low)
	}
	return t.find.Limit.Value
}

// value is a row of a variable at a share of the way from its worst end to its other.
func (t *turner) value(v, row int, share float64) float64 {
	d, from, to := t.r.vars[v].rows[row], map[int]float64{}, map[int]float64{}
	t.r.vars[v].at(t.worst[v], from)
	t.r.vars[v].at(4-t.worst[v], to)
	return from[d.Index] + share*(to[d.Index]-from[d.Index])
}

// with is the figure with a variable at a share of that way, and the others where they
// are worst.
func (t *turner) with(v int, share float64) float64 {
	move := map[int]float64{}
	for i := range t.r.vars {
		t.r.vars[i].at(t.worst[i], move)
	}
	for row := range t.r.vars[v].rows {
		move[t.r.vars[v].rows[row].Index] = t.value(v, row, share)
	}
	x := t.lots.asked(t.r.c.Store.With(move), t.r.wants(t.i))
	return t.lots.at(&x, t.i)
}

// level is the verdict on a value.
func (t *turner) level(v float64) figure.Verdict {
	if math.IsNaN(v) {
		return figure.Exceeds
	}
	level, _ := t.find.Limit.Compare(v, t.low)
	return [...]figure.Verdict{figure.Within, figure.Near, figure.Exceeds, figure.Exceeds}[level]
}
