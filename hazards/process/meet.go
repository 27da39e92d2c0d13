package process

// No pair of acid and base met here gives more heat than this, solid soda on HF
// included.
const mostHeat = 130.0 // kJ per mol of acid met; common practice, memory

// NoRise is a rise on mixing that may be left out, K: common practice.
const NoRise = 0.5

// MostRise is the greatest rise of a place, K, when mol of acid meet base there.
func (s *State) MostRise(met float64) float64 { return met * mostHeat * 1000 / s.HeatCapacity(nil).V }

// Sides is the acid and the base that the liquor of a place has seen, mol, as charged.
func (s *State) Sides() (acid, base float64) {
	for i := range s.Liquid {
		q := &s.Liquid[i]
		a, b := sides(q)
		acid, base = acid+a*q.Kept(), base+b*q.Kept()
	}
	return acid, base
}
