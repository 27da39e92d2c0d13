package scaling

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// Crossing is a batch at which a finding turns.
type Crossing struct {
	Figure  string // id
	Limit   figure.LimitRef
	Turns   figure.Verdict // near, exceeds or unknown
	Grams   float64        // last batch before it turns; first after it where it turns back
	Back    bool           // with more powder it is no longer so
	Already bool           // it is so at the smallest batch
}

// ID names the finding that turns.
func (c *Crossing) ID() string { return c.Figure + "+" + c.Limit.ID }

// fine is how close a crossing is found, as a share of the batch.
const fine = 5e-4

// turns are what a finding may turn to, each with what is so from there on.
var turns = [...]struct {
	to figure.Verdict
	is func(figure.Verdict) bool
}{
	{figure.Near, func(v figure.Verdict) bool { return v == figure.Near || v == figure.Exceeds }},
	{figure.Exceeds, func(v figure.Verdict) bool { return v == figure.Exceeds }},
	{figure.UnknownVerdict, func(v figure.Verdict) bool { return v == figure.UnknownVerdict }},
}

// seen is one finding over the rungs.
type seen struct {
	figure, limit string
	at            []figure.Finding // where there is none, within
}

// over lists the findings of all rungs, in the order in which they appear.
func (g *Growth) over() []*seen {
	var order []*seen
	byID := map[string]*seen{}
	for i := range g.Rungs {
		for _, f := range g.Rungs[i].Findings {
			s, there := byID[f.ID()]
			if !there {
				s = &seen{f.Figure, f.Limit.ID, make([]figure.Finding, len(g.Rungs))}
				byID[f.ID()] = s
				order = append(order, s)
			}
			s.at[i] = f
		}
	}
	return order
}

// gap is one turn between two rungs, to be looked for.
type gap struct {
	of   *seen
	turn int
	rung int // the upper one
	out  Crossing
}

// cross finds every turn of every finding.
func (g *Growth) cross() error {
	var gaps []*gap
	for _, s := range g.over() {
		for t := range turns {
			is := turns[t].is
			if is(s.at[0].Verdict) {
				g.Crossings = append(g.Crossings, Crossing{Figure: s.figure, Limit: s.at[0].Limit, Turns: turns[t].to, Grams: g.From.In("g"), Already: true})
			}
			for i := 1; i < len(s.at); i++ {
				a, b := s.at[i-1].Verdict, s.at[i].Verdict
				lost := (a == figure.UnknownVerdict) != (b == figure.UnknownVerdict) && turns[t].to != figure.UnknownVerdict
				if is(a) != is(b) && !lost { // what turns to or from unknown is told once, as that
					gaps = append(gaps, &gap{of: s, turn: t, rung: i})
				}
			}
		}
	}
	short := make([]*hazards.Trail, len(g.Rungs))
	for i := 1; i < len(g.Rungs); i++ {
		short[i] = g.trail.Between(&g.Rungs[i-1].sized, &g.Rungs[i].sized)
	}
	errs := make([]error, len(gaps))
	hazards.Each(len(gaps), func(i int) { errs[i] = g.narrow(gaps[i], short[gaps[i].rung]) })
	for i, x := range gaps {
		if errs[i] != nil {
			return errs[i]
		}
		g.Crossings = append(g.Crossings, x.out)
	}
	slices.SortStableFunc(g.Crossings, func(a, b Crossing) int {
		return cmp.Or(cmp.Compare(a.Grams, b.Grams), cmp.Compare(b.Turns.Rank(), a.Turns.Rank()))
	})
	g.withhold()
	return nil
}

// narrow finds the batch of one turn: by the secant on logarithms where both sides
// are numbers, else by halving.
func (g *Growth) narrow(x *gap, trail *hazards.Trail) error {
	is := turns[x.turn].is
	low, high := g.Rungs[x.rung-1].Batch.In("g"), g.Rungs[x.rung].Batch.In("g")
	before := is(x.of.at[x.rung-1].Verdict)
	limit := x.of.at[x.rung].Limit
	if limit.ID == "" {
		limit = x.of.at[x.rung-1].Limit
	}
	to := turns[x.turn].to
	a, b := g.Rungs[x.rung-1].beyond(x.of, to), g.Rungs[x.rung].beyond(x.of, to)
	for tries := 0; high/low > 1+fine; tries++ {
		mid := between(low, high, a, b, tries)
		s, err := g.stand(trail, x.of, mid)
		if err != nil {
			return err
		}
		v := beyond(&s, to)
		if s.Limit.ID != "" { // one that depends on the batch, as it is where the finding turns
			limit = s.Limit
		}
		if is(s.Verdict) == before {
			low, a = mid, v
		} else {
			high, b = mid, v
		}
	}
	x.out = Crossing{Figure: x.of.figure, Limit: limit, Turns: to, Grams: low, Back: before}
	if before { // it is over: the first batch at which it surely is
		x.out.Grams = high
	}
	return nil
}

// beyond is how far a finding is beyond where it turns, on a rung.
func (r *Rung) beyond(of *seen, to figure.Verdict) float64 {
	s, there := r.sized.Judge(of.figure, of.limit)
	if !there {
		return math.NaN()
	}
	return beyond(&s, to)
}

// between is where to look next: where the straight line through both ends
// crosses, a little to either side in turns so that both ends close in, and half
// way where they are not known or that does not settle.
func between(low, high, a, b float64, tries int) float64 {
	half := math.Sqrt(low * high)
	if math.IsNaN(a-b) || a == b || tries > 5 {
		return half
	}
	t := a / (a - b)
	at := low * math.Pow(high/low, t)
	if tries%2 == 0 {
		at *= 1 + fine/3
	} else {
		at /= 1 + fine/3
	}
	if !(at > low && at < high) {
		return half
	}
	return at
}

// beyond is how far a figure is beyond where it turns, on the logarithm where it
// can be; not a number for what turns to unknown.
func beyond(s *hazards.Stand, to figure.Verdict) float64 {
	at := s.Limit.Value
	switch to {
	case figure.Near:
		at = s.Near
	case figure.UnknownVerdict:
		return math.NaN()
	}
	if s.Danger > 0 && at > 0 {
		return math.Log(s.Danger / at)
	}
	return s.Danger - at
}

// stand is one finding at a batch.
func (g *Growth) stand(trail *hazards.Trail, s *seen, grams float64) (hazards.Stand, error) {
	c, err := g.at(grams)
	if err != nil {
		return hazards.Stand{}, err
	}
	at, err := trail.At(c, hazards.Watch(s.figure))
	if err != nil {
		return hazards.Stand{}, err
	}
	f, _ := at.Judge(s.figure, s.limit)
	return f, nil
}

// withhold lists the findings that are not known somewhere at or below the batch
// at which the first known one exceeds: any of them could be exceeded sooner.
func (g *Growth) withhold() {
	first, ok := g.First()
	for i := range g.Crossings {
		c := &g.Crossings[i]
		beyond := ok && !first.Already && c.Grams > first.Grams
		if c.Turns == figure.UnknownVerdict && !c.Back && !beyond && !slices.Contains(g.Withheld, c.ID()) {
			g.Withheld = append(g.Withheld, c.ID())
		}
	}
}

// First is the first assessed limit to be exceeded; false where none is.
func (g *Growth) First() (Crossing, bool) {
	for _, c := range g.Crossings {
		if c.Turns == figure.Exceeds && !c.Back {
			return c, true
		}
	}
	return Crossing{}, false
}
