package scaling

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/schemas/quantity"
)

// Crossing is a batch at which a finding turns.
type Crossing struct {
	Figure  figure.ID
	Limit   limit.Limit
	Turns   figure.Verdict // near, exceeds or unknown
	Grams   float64        // last batch before it turns; first after it where it turns back
	Back    bool           // with more powder it is no longer so
	Already bool           // it is so at the smallest batch
}

// ID names the finding that turns.
func (c *Crossing) ID() figure.FindingID {
	return figure.FindingID{Figure: c.Figure, Limit: c.Limit.Key}
}

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
	id figure.FindingID
	at []figure.Finding // where there is none, within
}

// over lists the findings of all rungs, in the order in which they appear.
func (g *Growth) over() []*seen {
	var order []*seen
	byID := map[figure.FindingID]*seen{}
	for i := range g.Rungs {
		for _, f := range g.Rungs[i].Findings {
			s, there := byID[f.ID()]
			if !there {
				s = &seen{f.ID(), make([]figure.Finding, len(g.Rungs))}
				byID[f.ID()] = s
				order = append(order, s)
			}
			s.at[i] = f
		}
	}
	return order
}

// gap is one turn between two sizes, to be looked for.
type gap struct {
	of        *seen
	turn      int
	low, high *Rung
	limit     limit.Limit // as it was seen last
	before    bool        // it is so at the lower one
	danger    float64     // dangerous end at the turn
	out       Crossing
}

// is reports whether the finding of a gap has turned on a rung.
func (x *gap) is(r *Rung) bool {
	s, _ := r.sized.Judge(x.of.id)
	return turns[x.turn].is(s.Verdict)
}

// cross finds every turn of every finding.
func (g *Growth) cross() error {
	var gaps []*gap
	for _, s := range g.over() {
		for t := range turns {
			is := turns[t].is
			if is(s.at[0].Verdict) {
				g.Crossings = append(g.Crossings, Crossing{Figure: s.id.Figure, Limit: s.at[0].Limit, Turns: turns[t].to,
					Grams: g.From.In("g"), Already: true})
			}
			for i := 1; i < len(s.at); i++ {
				a, b := s.at[i-1].Verdict, s.at[i].Verdict
				lost := (a == figure.UnknownVerdict) != (b == figure.UnknownVerdict) && turns[t].to != figure.UnknownVerdict
				if is(a) != is(b) && !lost { // what turns to or from unknown is told once, as that
					x := &gap{of: s, turn: t, low: &g.Rungs[i-1], high: &g.Rungs[i], limit: s.at[i].Limit, before: is(a)}
					if x.limit.ID == "" {
						x.limit = s.at[i-1].Limit
					}
					gaps = append(gaps, x)
				}
			}
		}
	}
	if err := g.close(gaps); err != nil {
		return err
	}
	short := map[[2]*Rung]*hazards.Trail{}
	for _, x := range gaps {
		if at := [2]*Rung{x.low, x.high}; short[at] == nil {
			short[at] = hazards.Between(&x.low.sized, &x.high.sized)
		}
	}
	errs := make([]error, len(gaps))
	hazards.Each(len(gaps), func(i int) {
		x := gaps[i]
		errs[i] = g.narrow(x, short[[2]*Rung{x.low, x.high}])
		if errs[i] == nil && (g.restless(x.of.id.Figure, x.out.Grams) || turns[x.turn].to == figure.UnknownVerdict) {
			errs[i] = g.verify(x)
		}
	})
	for i, x := range gaps {
		if errs[i] != nil {
			return errs[i]
		}
		g.Crossings = append(g.Crossings, x.out)
	}
	slices.SortStableFunc(g.Crossings, func(a, b Crossing) int {
		return cmp.Or(cmp.Compare(a.Grams, b.Grams), cmp.Compare(b.Turns.Rank(), a.Turns.Rank()))
	})
	g.overflow()
	g.withhold()
	return nil
}

// content is the quantity of what a container holds.
const content = "vessel.content"

// overflow ends the list of turns where the first container runs over: a route that
// cannot be run at a batch has no turn there. Crossings are in the order of batches. One that
// at the smallest batch may run over, and does not at its best estimate, ends nothing: it is
// among what is exceeded there, and the rest is told.
func (g *Growth) overflow() {
	first := slices.IndexFunc(g.Crossings, func(c Crossing) bool {
		return c.Figure.Quantity == content && c.Turns == figure.Exceeds && !c.Back && !(c.Already && g.mayOnly(&c))
	})
	if first < 0 {
		return
	}
	over := g.Crossings[first]
	g.Overflows = &over
	g.Crossings = slices.DeleteFunc(g.Crossings, func(c Crossing) bool {
		beyond := c.Grams > over.Grams && !c.Already
		if beyond && !slices.Contains(g.Beyond, c.ID()) {
			g.Beyond = append(g.Beyond, c.ID())
		}
		return beyond
	})
}

// mayOnly reports whether only the dangerous end of a figure is over its limit at the smallest batch.
func (g *Growth) mayOnly(c *Crossing) bool {
	for i := range g.Rungs[0].Findings {
		if f := &g.Rungs[0].Findings[i]; f.ID() == c.ID() {
			return f.Surely == figure.DangerousEnd
		}
	}
	return false
}

// halvings is how often the size between two rungs is reviewed whole: three to a
// decade come to steps of two in a hundred.
const halvings = 5

// breaks is how often where the figure ends at a bound on one side alone, which come to as close as a
// crossing is found: what goes on smoothly on neither side of a runaway tells nothing about it.
const breaks = 11

// close brings both sides of a gap together by whole reviews, as long as the figure
// stands on one corner of the data at the one and on another at the other.
func (g *Growth) close(gaps []*gap) error {
	for n := range breaks {
		apart := map[[2]*Rung][]*gap{}
		var order [][2]*Rung
		for _, x := range gaps {
			a, b := &x.low.sized, &x.high.sized
			switch {
			case x.high.Batch.SI <= x.low.Batch.SI*(1+fine):
				continue
			case hazards.SameLead(a, b, x.of.id.Figure), n >= halvings && !hazards.Breaks(a, b, x.of.id.Figure):
				continue
			}
			at := [2]*Rung{x.low, x.high}
			if apart[at] == nil {
				order = append(order, at)
			}
			apart[at] = append(apart[at], x)
		}
		for _, at := range order {
			mid, err := g.nearby(math.Sqrt(at[0].Batch.In("g")*at[1].Batch.In("g")), at[0], at[1], apart[at]...)
			if err != nil {
				return err
			}
			for _, x := range apart[at] {
				if x.is(mid) == x.before {
					x.low = mid
				} else {
					x.high = mid
				}
			}
		}
	}
	return nil
}

// restless reports whether a figure stands on one corner of the data at one rung and
// on another at the next, near a batch in g.
func (g *Growth) restless(id figure.ID, grams float64) bool {
	const near = 2 // rungs to either side
	up := slices.IndexFunc(g.Rungs, func(r Rung) bool { return r.Batch.In("g") >= grams })
	for i := max(up-near, 1); i <= min(up+near-1, len(g.Rungs)-1); i++ {
		if !hazards.SameLead(&g.Rungs[i-1].sized, &g.Rungs[i].sized, id) {
			return true
		}
	}
	return false
}

// agrees is how far a review of the batch at which a figure turns may stand from
// what was found there; often is how many times a turn is looked for again.
const (
	agrees = 5e-3
	often  = 3
)

// verify reviews a figure where it was found to turn, and looks for the turn again
// from there where the review stands elsewhere.
func (g *Growth) verify(x *gap) error {
	for range often {
		r, err := g.nearby(x.out.Grams, x.low, x.high, x)
		if err != nil {
			return err
		}
		s, there := r.sized.Judge(x.of.id)
		so := turns[x.turn].is(s.Verdict)
		same := math.Abs(s.Danger-x.danger) <= agrees*math.Abs(x.danger)
		if math.IsNaN(s.Danger-x.danger) || turns[x.turn].to == figure.UnknownVerdict {
			same = so == (x.before != x.out.Back) // on the side it was found for
		}
		if !there || same || r.Batch.SI <= x.low.Batch.SI || r.Batch.SI >= x.high.Batch.SI {
			return nil
		}
		if so == x.before {
			x.low = r
		} else {
			x.high = r
		}
		if err := g.narrow(x, hazards.Between(&x.low.sized, &x.high.sized)); err != nil {
			return err
		}
	}
	return nil
}

// nearby is a batch between two rungs for the figures of some gaps alone.
func (g *Growth) nearby(grams float64, low, high *Rung, gaps ...*gap) (*Rung, error) {
	c, err := g.at(grams)
	if err != nil {
		return nil, err
	}
	var watched []func(*figure.Figure) bool
	for _, x := range gaps {
		watched = append(watched, hazards.Watch(x.of.id.Figure))
	}
	s, err := hazards.Nearby(c, func(f *figure.Figure) bool {
		return slices.ContainsFunc(watched, func(watch func(*figure.Figure) bool) bool { return watch(f) })
	}, &low.sized, &high.sized)
	return &Rung{Batch: quantity.Of(grams, "g", quantity.Mass), sized: s}, err
}

// narrow finds the batch of one turn: by the secant on logarithms where both sides
// are numbers, else by halving.
func (g *Growth) narrow(x *gap, trail *hazards.Trail) error {
	is := turns[x.turn].is
	low, high := x.low.Batch.In("g"), x.high.Batch.In("g")
	before, limit := x.before, x.limit
	to := turns[x.turn].to
	a, b := x.low.beyond(x.of, to), x.high.beyond(x.of, to)
	for tries := 0; high/low > 1+fine; tries++ {
		mid := between(low, high, a, b, tries)
		s, err := g.stand(trail, x.of, mid)
		if err != nil {
			return err
		}
		v := beyond(&s, to)
		x.danger = s.Danger
		if s.Limit.ID != "" { // one that depends on the batch, as it is where the finding turns
			limit = s.Limit
		}
		if is(s.Verdict) == before {
			low, a = mid, v
		} else {
			high, b = mid, v
		}
	}
	x.out = Crossing{Figure: x.of.id.Figure, Limit: limit, Turns: to, Grams: low, Back: before}
	if before { // it is over: the first batch at which it surely is
		x.out.Grams = high
	}
	return nil
}

// beyond is how far a finding is beyond where it turns, on a rung.
func (r *Rung) beyond(of *seen, to figure.Verdict) float64 {
	s, there := r.sized.Judge(of.id)
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
	at, err := trail.At(c, s.id.Figure)
	if err != nil {
		return hazards.Stand{}, err
	}
	f, _ := at.Judge(s.id)
	return f, nil
}

// withhold lists the findings that are not known somewhere at or below the batch
// at which the first known one exceeds: any of them could be exceeded sooner.
func (g *Growth) withhold() {
	first, ok := g.First()
	told := g.told()
	for i := range g.Crossings {
		c := &g.Crossings[i]
		beyond := ok && !first.Already && c.Grams > first.Grams
		if c.Turns == figure.UnknownVerdict && !c.Back && !beyond && !told[c.Figure] && !slices.Contains(g.Withheld, c.ID()) {
			g.Withheld = append(g.Withheld, c.ID())
		}
	}
}

// told are the figures that exceed a limit at every batch: which other limit of theirs is
// not known says nothing more.
func (g *Growth) told() map[figure.ID]bool {
	out := map[figure.ID]bool{}
	for i := range g.Crossings {
		if c := &g.Crossings[i]; c.Turns == figure.Exceeds && c.Already {
			out[c.Figure] = true
		}
	}
	for i := range g.Crossings {
		if c := &g.Crossings[i]; c.Turns == figure.Exceeds && c.Back {
			delete(out, c.Figure)
		}
	}
	return out
}

// NotKnownBelow are the findings that withhold a limit and are not known somewhere at or
// below a batch in g.
func (g *Growth) NotKnownBelow(grams float64) []figure.FindingID {
	var out []figure.FindingID
	for i := range g.Crossings {
		c := &g.Crossings[i]
		if c.Turns == figure.UnknownVerdict && !c.Back && c.Grams <= grams && slices.Contains(g.Withheld, c.ID()) &&
			!slices.Contains(out, c.ID()) {
			out = append(out, c.ID())
		}
	}
	return out
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
