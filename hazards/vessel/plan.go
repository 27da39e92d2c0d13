package vessel

import "slices"

// Law is how a solid is taken to react.
type Law string

// The laws. The first two need no integration and bracket every reaction:
// Instantaneous bounds what happens while powder goes in, Accumulated how hot
// everything together can get. The others are integrated.
const (
	Instantaneous    Law = "instantaneous"
	Accumulated      Law = "accumulated"
	FirstOrder       Law = "first_order"
	Contracting      Law = "early_peak"        // shrinking grains: fastest at the start
	SelfAccelerating Law = "self_accelerating" // slow at first, fastest half-way
	Measured         Law = "measured"          // follows a measured curve
)

// Kinetics is the rate of one solid. With n the amount left, N all of it and x
// the share that has reacted, the rate in mol/s is
//
//	FirstOrder        k c n
//	Contracting       k c n^(2/3) N^(1/3)
//	SelfAccelerating  k c n (Seed + x)
//	Measured          k c n s(x)/(1 - x), s the slope of the curve at x
//
// with k = Rate exp(-Activation/R (1/T - 1/Reference)) and c the acid in mol/L,
// or 1 where the plan gives no volume. For Measured, Rate is 1, Reference the
// temperature of the curve and x the share reacted of what has gone in.
type Kinetics struct {
	Rate       float64 // 1/s, or L/mol/s where acid counts
	Activation float64 // J/mol
	Reference  float64 // K
	Seed       float64 // share that starts a self-accelerating reaction
	Curve      Curve   // for Measured
}

// Curve is a conversion measured at constant temperature: both rise strictly,
// the times in s from above 0, the conversions from above 0 to 1. Between the
// points it is straight, and beyond the last what is left goes on at the share
// per second it had there.
type Curve struct{ Time, Conversion []float64 }

// Solid is a powder that goes into the vessel.
type Solid struct {
	Amount   float64 // mol, over the whole plan
	Heat     float64 // J/mol released
	Gas      float64 // mol of gas per mol
	Capacity float64 // J/K of all of it
	Kinetics
}

// Liquor is what the powder goes into.
type Liquor struct {
	Capacity float64 // J/K of the liquid and the vessel at the start of the plan
	Acid     float64 // mol
	Taken    float64 // mol of acid per mol of the slow solid
	Volume   float64 // L; 0: the rate does not depend on acid
	Vapour   *Vapour // nil: nothing evaporates
	Boils    float64 // K; no rate is greater than 1 K above it, with or without vapour; 0: none
}

// Vapour is what leaves the liquor as vapour: below the boiling point in
// proportion to its pressure, above it as fast as the excess drives it.
type Vapour struct {
	Molar       float64 // kg/mol
	Specific    float64 // J/kg/K of the liquid that leaves
	Latent      float64 // J/mol
	Boiling     float64 // K
	Evaporation float64 // mol/s at the boiling point
	Boil        float64 // W per K above the boiling point
	Stripped    bool    // the gas given off leaves saturated with it
}

// Piece is a stretch of time with the same inputs throughout.
type Piece struct {
	Step     int     // pieces of one number that follow one another make a window
	Until    float64 // s from the start of the plan
	Dose     float64 // mol/s of the slow solid; the fast one in proportion
	Feed     float64 // K, temperature of the powder
	UA       float64 // W/K to the coolant
	Coolant  float64 // K
	Loss     float64 // W/K to the room, beside the coolant
	Room     float64 // K
	Iced     bool    // the coolant is the ice bath of the plan
	Jacketed bool    // the coolant comes into the jacket of the plan, which is as warm as its balance makes it
	Stirring float64 // W
	Settled  bool    // not stirred: what goes in lies as a heap that does not react
	Lift     bool    // the heap is stirred up at the beginning of the piece
	Added    float64 // J/K of liquor that goes in all at once at the beginning of the piece
	Pour     float64 // J/K/s of liquor that goes in throughout
	PourAt   float64 // K, temperature of the liquor that goes in
}

// Capacity is that of what is in the vessel in a state, J/K; what has evaporated
// counts as there.
func (p *Plan) Capacity(s *State) float64 {
	solids := (p.Slow.Capacity + p.Fast.Capacity) / p.Slow.Amount
	return p.Liquor.Capacity + s.Poured + float64(solids*(s.Suspended+s.Heap+s.Reacted))
}

// After is what is left of some pieces after t seconds, counted from there: what
// happens at the beginning of one that has begun has happened.
func After(pieces []Piece, t float64) []Piece {
	var out []Piece
	from := 0.0
	for _, x := range pieces {
		begun := from < t
		from = x.Until
		if x.Until <= t {
			continue
		}
		x.Until -= t
		if begun {
			x.Added, x.Lift = 0, false
		}
		out = append(out, x)
	}
	return out
}

// Ice is the melting that keeps a bath cold, and the bath that warms after it: by
// what the vessel gives it, and by the air of the room.
type Ice struct {
	Melting float64 // J that the ice takes up; below 0 where the bath begins warmer than ice by that much
	Bath    float64 // J/K of the water that is left; 0: ice without end
	Room    float64 // W/K to the bath from the air of the room
	Air     float64 // K of that air
}

// Jacket is the liquid between the vessel and its chiller, mixed throughout. What flows
// through comes in at the temperature of the coolant, as long as the chiller takes what it
// carries off; beyond that it comes back warmer.
type Jacket struct {
	Capacity float64 // J/K of the liquid in it; 0: there is none, and the vessel meets the coolant itself
	Flow     float64 // W/K of the liquid that flows through
	Power    float64 // W that the chiller takes at most
	Begins   float64 // K
}

// State is what is in a vessel at one moment.
type State struct {
	Suspended, Heap, Reacted float64 // mol of the slow solid
	Fast, FastHeap           float64 // mol of the fast solid
	Temperature              float64 // K
	Removed                  float64 // J the coolant has taken
	Warmed                   float64 // J a bath of ice has taken from the air of the room
	Jacket                   float64 // K of the liquid in the jacket; 0 where the plan has none
	Evaporated               float64 // mol
	Poured                   float64 // J/K of liquor that has gone in since the start of the plan
}

// Plan is one vessel and what is done to it.
type Plan struct {
	Step   int // handed back, nothing else
	Law    Law // of the slow solid
	Slow   Solid
	Fast   Solid   // metal and fines, first order; none if Amount is 0
	Ready  float64 // mol of the slow solid that is in the vessel at the start
	Begin  *State  // instead of Ready and Start: goes on from here
	Liquor Liquor
	Ice    Ice
	Jacket Jacket
	Start  float64 // K; for Accumulated the highest temperature set
	Dose   float64 // s over which the powder goes in, for Instantaneous
	Pieces []Piece // rising in time; none for the closed-form laws

	Tolerance float64 // relative; 0: 1e-6
	Coarse    bool    // peaks are those at the steps of the integration, not sought between them
}

// Same reports whether two plans give the same run: the same in every number.
// Plans with vapour or a state to begin from are never taken for the same.
func (p *Plan) Same(q *Plan) bool {
	if p.Begin != nil || q.Begin != nil || p.Liquor.Vapour != nil || q.Liquor.Vapour != nil {
		return false
	}
	return p.Step == q.Step && p.Law == q.Law && p.Ready == q.Ready && p.Liquor == q.Liquor && p.Ice == q.Ice &&
		p.Jacket == q.Jacket && p.Start == q.Start && p.Dose == q.Dose && p.Tolerance == q.Tolerance &&
		p.Coarse == q.Coarse && slices.Equal(p.Pieces, q.Pieces) && p.Slow.same(&q.Slow) && p.Fast.same(&q.Fast)
}

func (s *Solid) same(t *Solid) bool {
	return s.Amount == t.Amount && s.Heat == t.Heat && s.Gas == t.Gas && s.Capacity == t.Capacity &&
		s.Rate == t.Rate && s.Activation == t.Activation && s.Reference == t.Reference && s.Seed == t.Seed &&
		slices.Equal(s.Curve.Time, t.Curve.Time) && slices.Equal(s.Curve.Conversion, t.Curve.Conversion)
}
