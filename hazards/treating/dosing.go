package treating

import (
	"math"

	"etchbound/hazards/roots"
	"etchbound/hazards/vessel"
)

// Dosing is how an agent is put in evenly so that temperature, foam and gas stay in hand,
// by the vessel model: a bare container in still air, stirred, from 25 degC, without water
// first.
type Dosing struct {
	Minutes  float64 // at least
	Portions int     // equal ones, at least
	Peak     float64 // degC, highest
	Gas      float64 // L/min of carbon dioxide, greatest
	run      vessel.Run
}

const (
	capacity = 4184.0 // J/K of a litre of water
	room     = 25 + 273.15
	second   = 1.0 / 60 // min
)

// minutes is how long a dose takes so that what is in it stays below the temperature that
// is held, in a container as high as it is wide in still air and without water first, and
// so that its carbon dioxide does not carry the liquor over the rim. The first is that of
// heat let go as it is put in,
//
//	dT = Q/(t U A) (1 - exp(-t U A/C)),  A = 5/4 pi d^2,  V = pi d^3/4
//
// which the vessel model has to bear out for the usual ways.
func (b *bench) minutes(w *Way, l *Liquor) {
	w.MinutesGas = w.CarbonDioxide / (b.practice.gas.Value * (l.Water + w.WaterFirst))
	heat, ua, held := w.Heat*1000, b.loss(l), b.practice.warmed.Value
	least := max(heat-capacity*l.Water*held, 0) // of it the air has to take
	if !(least > 0) {
		w.MinutesHeat = least // NaN too
		return
	}
	over := func(t float64) float64 { return -heat/(t*ua)*math.Expm1(-t*ua/(capacity*l.Water)) - held }
	w.MinutesHeat = math.NaN()
	if r, err := roots.Find(over, least/(ua*held), heat/(ua*held), 1e-6*heat/(ua*held)); err == nil {
		w.MinutesHeat = r.X / 60
	}
}

// loss is what still air takes of a bare container for each K, W/K.
func (b *bench) loss(l *Liquor) float64 {
	d := math.Cbrt(4 * l.Water / 1000 / math.Pi)
	return b.practice.still.Value * 1.25 * math.Pi * d * d
}

// dosing is the plan of a way in the time that its heat and gas ask for, or in one minute.
func (b *bench) dosing(w *Way, l *Liquor) *Dosing {
	d := Dosing{Minutes: max(w.MinutesHeat, w.MinutesGas, 1)}
	if d.Minutes != d.Minutes || w.Heat != w.Heat || !(l.Water > 0) {
		return nil
	}
	amount := 0.0
	for i := range w.Parts {
		amount += w.Parts[i].Grams
	}
	t := d.Minutes * 60
	gas := w.CarbonDioxide / b.litres()
	p := vessel.Plan{Law: vessel.FirstOrder, Start: room, Tolerance: 1e-4, Coarse: true,
		Slow: vessel.Solid{Amount: amount, Heat: w.Heat * 1000 / amount, Gas: gas / amount,
			Kinetics: vessel.Kinetics{Rate: 1 / b.practice.meets.Value, Reference: room}},
		Liquor: vessel.Liquor{Capacity: capacity * l.Water},
		Pieces: []vessel.Piece{
			{Until: t, Dose: amount / t, Feed: room, Loss: b.loss(l), Room: room},
			{Until: furthest * t, Feed: room, Loss: b.loss(l), Room: room}}}
	run, err := vessel.Simulate(p)
	if err != nil {
		return nil
	}
	d.run, d.Peak, d.Gas = run, run.Peak.Value-273.15, run.Gas.Value*b.litres()/second
	each := max(math.Abs(w.Heat)*1000/(capacity*l.Water*b.practice.portion.Value), w.MinutesGas)
	d.Portions = int(math.Ceil(max(each, 1)))
	return &d
}

// at is how warm it is, degC, and how much carbon dioxide has left, L, when a share of the
// dose is in.
func (d *Dosing) at(share, litres float64) (warm, gas float64) {
	if d == nil || d.run.Path == nil {
		return math.NaN(), math.NaN()
	}
	p, err := d.run.Path.At(min(max(share, 1e-9), furthest*(1-1e-12)) * d.Minutes * 60) // within it, rounded or not
	if err != nil {
		return math.NaN(), math.NaN()
	}
	return p.Temperature - 273.15, p.Released * litres
}
