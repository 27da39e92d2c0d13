package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/schemas/quantity"
)

// Charge is what one portion of a reagent brings.
type Charge struct {
	Mass     working.Num // g, of all of it
	Volume   working.Num // mL, of liquid; a solid adds none
	Solute   working.Num // mol of the substance; 0 for water
	Water    working.Num // mol
	Fraction working.Num // g/g of the substance; 0 for water, 1 undiluted
	// HeatCapacity is in J/K, at the low end of what is known, and an estimate with its
	// range where no row or table is held.
	HeatCapacity working.Num
}

// Charged works out a portion of a substance at a strength, of which either
// the volume in mL or the mass in g is stated and the other is working.Num{}.
// The strength is a mass fraction, molarity, molality or mass concentration;
// left out, the portion is the undiluted substance. Mass fractions and
// molalities are read at 20 degC, the other strengths at 25 degC.
func Charged(st *chemicals.Store, w *working.Sheet, sub *chemicals.Substance, strength quantity.Value, volume,
	mass working.Num) Charge {
	p := portion{st: st, w: w, sub: sub}
	p.volume, p.byVolume = volume.As("V"), stated(volume)
	p.mass = mass.As("m")
	if !p.byVolume && !stated(mass) {
		p.mass = working.Absent("m", "g", working.Lacks("mass_or_volume", sub.Name))
	}
	switch {
	case sub.Solution == "water":
		return p.water()
	case !strength.Set:
		return p.undiluted()
	}
	return p.solution(strength)
}

// stated tells a number from the empty working.Num{}.
func stated(n working.Num) bool { return !n.None() }

type portion struct {
	st           *chemicals.Store
	w            *working.Sheet
	sub          *chemicals.Substance
	volume, mass working.Num
	byVolume     bool
}

// weigh fills in the volume or the mass, whichever was not stated.
func (p *portion) weigh(rho working.Num) {
	rho = rho.As("rho")
	if p.byVolume {
		p.mass = p.w.Line("m", "g", "V*rho", p.volume.V*rho.V, p.volume, rho)
	} else {
		p.volume = p.w.Line("V", "mL", "m/rho", p.mass.V/rho.V, p.mass, rho)
	}
}

func (p *portion) water() Charge {
	p.weigh(p.st.Num("water.density"))
	molar, cp := waterMass(p.st, p.w), p.st.Num("water.cp")
	return Charge{
		Mass: p.mass, Volume: p.volume,
		Solute:       working.Exact("n", "mol", 0, "water holds no solute"),
		Water:        p.w.Line("n_w", "mol", "m/M_w", p.mass.V/molar.V, p.mass, molar),
		Fraction:     working.Exact("w", "g/g", 0, "water holds no solute"),
		HeatCapacity: p.w.Line("C", "J/K", "m*c_w", p.mass.V*cp.V, p.mass, cp),
	}
}

func (p *portion) undiluted() Charge {
	tag := p.sub.Formula.Text + "(" + p.sub.State + ")"
	switch {
	case p.sub.State == "l" || p.byVolume:
		p.weigh(p.st.Num(datum.Of("density", tag)))
	case p.sub.State == "s":
		p.volume = working.Exact("V", "mL", 0, "a solid adds no liquid")
	default:
		p.volume = working.Absent("V", "mL", working.Lacks("strength", p.sub.Name))
	}
	molar := p.sub.Formula.MolarMass(p.st, p.w)
	c := Charge{
		Mass: p.mass, Volume: p.volume,
		Solute:   p.w.Line("n", "mol", "m/M", p.mass.V/molar.V, p.mass, molar),
		Water:    working.Exact("n_w", "mol", 0, "undiluted"),
		Fraction: working.Exact("w", "g/g", 1, "undiluted"),
	}
	c.HeatCapacity = undilutedHeat(p.st, p.w, p.sub, c.Solute)
	return c
}

func (p *portion) solution(strength quantity.Value) Charge {
	molar := p.sub.Formula.MolarMass(p.st, p.w)
	fraction, conc, at20 := p.strength(strength, molar)
	p.weigh(Density(p.st, p.w, densityModel(p.sub), fraction, at20))
	waterMolar := waterMass(p.st, p.w)
	c := Charge{
		Mass: p.mass, Volume: p.volume, Fraction: fraction,
		Water: p.w.Line("n_w", "mol", "m*(1-w)/M_w", p.mass.V*(1-fraction.V)/waterMolar.V, p.mass, fraction,
			waterMolar),
		HeatCapacity: heatCapacity(p.st, p.w, p.sub, p.named(strength), p.mass, fraction),
	}
	if p.byVolume && conc.Symbol == "c" { // mol/L times the stated volume, whatever the density
		c.Solute = p.w.Line("n", "mol", "c*V/1000", conc.V*p.volume.V/1000, conc, p.volume)
	} else {
		c.Solute = p.w.Line("n", "mol", "m*w/M", p.mass.V*fraction.V/molar.V, p.mass, fraction, molar)
	}
	return c
}

// named is the substance with its strength as it was written.
func (p *portion) named(strength quantity.Value) string {
	if strength.Text == "" {
		return p.sub.Name + " in water"
	}
	return p.sub.Name + " of " + strength.Text
}

// strength returns the mass fraction, the strength as stated, and whether
// densities are those of 20 degC.
func (p *portion) strength(s quantity.Value, molar working.Num) (fraction, given working.Num, at20 bool) {
	switch s.Dim {
	case quantity.MassFraction:
		given = working.Given("w", "g/g", s.SI, s.At)
		return given, given, true
	case quantity.Molality:
		given = working.Given("b", "mol/kg", s.SI, s.At)
		v := given.V * molar.V / (1000 + given.V*molar.V)
		return p.w.Line("w", "g/g", "b*M/(1000+b*M)", v, given, molar), given, true
	case quantity.Molarity:
		given = working.Given("c", "mol/L", s.SI/1000, s.At)
		y := p.w.Line("y", "g/L", "c*M", given.V*molar.V, given, molar)
		return fractionOf(p.st, p.w, densityModel(p.sub), y), given, false
	case quantity.MassConc:
		given = working.Given("y", "g/L", s.SI, s.At)
		return fractionOf(p.st, p.w, densityModel(p.sub), given), given, false
	}
	given = working.Absent("w", "g/g", working.Lacks("strength", p.sub.Name))
	return given, given, true
}
