package treating

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
)

// practice is what is done and found beyond what equilibria and stoichiometry say.
type practice struct {
	base, carbonate, salt       chemicals.Datum // times what is needed
	byCalcium, byMagnesium      chemicals.Datum // mg/L of fluoride that stay
	settled, gas, warmed, still chemicals.Datum
	meets, portion              chemicals.Datum
}

func practiceOf(st *chemicals.Store) practice {
	row := func(id datum.ID) chemicals.Datum { d, _ := st.Row(id); return d }
	return practice{row("treat.excess.hydroxide"), row("treat.excess.carbonate"), row("treat.excess.salt"),
		row("treat.left.calcium"), row("treat.left.magnesium"), row("treat.settled"), row("treat.gas"),
		row("treat.warmed"), row("loss.still_air"), row("treat.meets"), row("treat.portion")}
}

// excess is how many times what is needed is put in.
func (p *practice) excess(x brings) float64 {
	switch {
	case x.carbon > 0:
		return p.carbonate.Value
	case x.base > 0:
		return p.base.Value
	}
	return p.salt.Value
}

// inPractice is what stays in practice: no less than what others find, nor than
// equilibrium; where nothing binds it, all of it.
func (b *bench) inPractice(w *Way, l *Liquor, sum brings) {
	found := b.practice.byMagnesium
	if sum.calcium {
		found = b.practice.byCalcium
	}
	if !w.Binds {
		w.Practical = [2]float64{w.Left, max(w.Left, w.Ends[1])}
		return
	}
	all := l.all()
	w.Practical = [2]float64{min(max(found.Low, w.Left), all), min(max(found.High, w.Ends[1]), all)}
}

// Molar masses of what settles, g/mol.
const (
	calciumFluoride    = 78.07
	magnesiumFluoride  = 62.30
	aluminiumHydroxide = 78.00
)

// sludge is fluoride of calcium or magnesium as far as it is bound, and hydroxide of
// aluminium where there is base for it; what is put in over that comes on top.
func (b *bench) sludge(w *Way, l *Liquor, sum brings) {
	salt := magnesiumFluoride
	if sum.calcium {
		salt = calciumFluoride
	}
	w.SludgeDry = min(l.Fluoride-l.Held, sum.binds) / 2 * salt
	if sum.base > 0 {
		w.SludgeDry += l.aluminium * aluminiumHydroxide
	}
	wet := func(share float64) float64 { return w.SludgeDry / share / 1000 }
	w.SludgeWet = [2]float64{wet(b.practice.settled.High), wet(b.practice.settled.Low)}
}
