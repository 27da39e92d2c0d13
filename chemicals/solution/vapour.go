package solution

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

const (
	mmHg = 0.133322 // kPa

	// Below weakHF wt% the table of hydrofluoric acid ends and the dilute law
	// takes over; between the two pressures are joined by their logarithms.
	weakHF, tabledHF = 5.0, 10.0
)

// Vapour returns the partial pressure in kPa of the acid over an aqueous
// solution of the given mass fraction (g/g) at a temperature in degC. Models hf
// (to 0.70) and hcl (to 0.42), from 0 degC to the row vapour.highest; for others
// and outside that it is unknown. It is estimated at best, and swings by the
// factors of the table vapour_factor of the model:
//
//	lg p[mmHg] = A - B/T, straight in wt%
//	p = 0.037 mmHg m exp(-5900 (1/T - 1/298.15)), hydrofluoric acid below 5 wt%
func Vapour(st *chemicals.Store, w *working.Sheet, model string, fraction, celsius working.Num) working.Num {
	p := pressure(st, w, model, fraction, celsius).As("p_0")
	if p.Unknown() {
		return p.As("p")
	}
	return spreadOut(st, w, model, p, fraction)
}

// spreadOut is a pressure with the factor that it may be off by.
func spreadOut(st *chemicals.Store, w *working.Sheet, model string, p, fraction working.Num) working.Num {
	id := "vapour_factor." + model
	low, high := read(st, w, "f_l", id, "low", fraction, percent), read(st, w, "f_h", id, "high", fraction, percent)
	z := st.Num(datum.Of("vapour", model)).As("z")
	v := p.V * math.Pow(high.V, math.Max(z.V, 0)) * math.Pow(low.V, math.Max(-z.V, 0))
	return w.Line("p", "kPa", "p_0*pow(f_h,max(z,0))*pow(f_l,max(-z,0))", v, p, high, low, z).Worse(working.Estimated)
}

const vapourName = "lg p = A - B/T of the acid, straight in wt%"

func pressure(st *chemicals.Store, w *working.Sheet, model string, fraction, celsius working.Num) working.Num {
	id, highest := "pressure."+model+".acid", st.Num("vapour.highest")
	t, ok := st.Table(id)
	switch {
	case fraction.Unknown() || celsius.Unknown() || highest.Unknown():
		return working.Absent("p", "kPa", working.Joined(fraction.Missing(), celsius.Missing(), highest.Missing())...)
	case !ok:
		return working.Absent("p", "kPa", working.LacksDatum(datum.ID(id)))
	case !(celsius.V >= 0 && celsius.V <= highest.V):
		return working.Absent("p", "kPa", working.Lacks("vapour_outside", model))
	}
	x, kelvin := fraction.V*percent, celsius.V+273.15
	low, high := t.Range()
	if x > high*(1+1e-12) || x < 0 {
		return working.Absent("p", "kPa", working.LacksDatum(datum.ID(id)))
	}
	at := func(x float64) float64 {
		a, b := coefficients(t, x)
		return mmHg * math.Exp(a-b/kelvin)
	}
	if x >= low {
		return w.Model("p", "kPa", vapourName, at(min(x, high)), fraction, celsius)
	}
	if model == "hf" {
		return dilute(st, w, at(low), fraction, celsius)
	}
	// The acid falls off faster than its strength, so this is more than it is.
	return w.Model("p", "kPa", vapourName+", in proportion below the table", at(low)*x/low, fraction,
		celsius).Worse(working.Bound)
}

// dilute is the pressure over hydrofluoric acid below its table, at being the
// pressure in kPa at its first row.
func dilute(st *chemicals.Store, w *working.Sheet, at float64, fraction, celsius working.Num) working.Num {
	h, b := st.Num("vapour.hf_dilute").As("h"), st.Num("vapour.hf_slope").As("b")
	kelvin, x := celsius.V+273.15, fraction.V*percent
	law := func(x float64) float64 {
		molal := 1000 * x / 20.0063 / (percent - x)
		return mmHg * h.V * molal * math.Exp(-b.V*(1/kelvin-1/298.15))
	}
	if x <= weakHF {
		return w.Model("p", "kPa", "dilute law of hydrofluoric acid", law(x), fraction, celsius, h, b)
	}
	s := (x - weakHF) / (tabledHF - weakHF)
	v := math.Exp((1-s)*math.Log(law(weakHF)) + s*math.Log(at))
	return w.Model("p", "kPa", "dilute law and table of hydrofluoric acid joined by their logarithms", v, fraction,
		celsius, h, b)
}

// OverStrongAcid returns the partial pressure in kPa of HF at a molality in
// mol/kg of water over hydrochloric acid of a mass fraction (g/g): the dilute
// law times what the lower activity of water does to it. Nobody has measured it:
// the row vapour.salting runs from none of that (0) to all of it (1).
//
//	p = 0.0577 mmHg m exp(-5890 (1/T - 1/298.15)) f^s
func OverStrongAcid(st *chemicals.Store, w *working.Sheet, molality, hcl, celsius working.Num) working.Num {
	highest := st.Num("vapour.highest")
	if celsius.V < 0 || celsius.V > highest.V {
		return working.Absent("p_HF", "kPa", working.Lacks("vapour_outside", "hf"))
	}
	h, b, s := st.Num("vapour.hf_strong").As("h"), st.Num("vapour.hf_strong_slope").As("b"),
		st.Num("vapour.salting").As("s")
	f := read(st, w, "f", "vapour_salting.hf", "factor", hcl, percent)
	m, t := molality.As("m"), celsius.As("T")
	v := mmHg * h.V * m.V * math.Exp(-b.V*(1/(t.V+273.15)-1/298.15)) * math.Pow(f.V, s.V)
	return w.Line("p_HF", "kPa", "0.133322*h*m*exp(-b*(1/(T+273.15)-1/298.15))*pow(f,s)", v, h, m, b, t, f,
		s).Worse(working.Bound)
}

// OverSalt returns the partial pressure in kPa of HCl over hydrochloric acid in
// which a salt has taken some of the acid: free and total are the pressures in kPa
// over the acid that is left and over all the chloride as acid, and ratio is what is
// left over all. In the middle it is the pressure of all the chloride times that
// ratio; at the high end that of all the chloride, the moment before the salt goes
// in; at the low end that of the acid left.
func OverSalt(st *chemicals.Store, w *working.Sheet, free, total, ratio working.Num) working.Num {
	whole, left := total.As("p_t"), free.As("p_f")
	x, z := ratio.As("r"), st.Num("vapour.hcl_salt").As("z")
	c := whole.V * x.V
	v := c + math.Max(z.V, 0)*(whole.V-c) + math.Max(-z.V, 0)*(left.V-c)
	return w.Line("p", "kPa", "p_t*r+max(z,0)*(p_t-p_t*r)+max(-z,0)*(p_f-p_t*r)", v, whole, x, z,
		left).Worse(working.Bound)
}

// BesideHF returns the partial pressure in kPa of HCl over hydrochloric acid that
// holds HF as well, at a temperature in degC; alone, thin and thick are mass fractions
// of HCl. In the middle it is that of the acid in its water alone; at the low end the
// HF counts as so much water more; at the high end each HF holds one water back, which
// is no less than an equal activity of water gives. Nobody has measured it.
func BesideHF(st *chemicals.Store, w *working.Sheet, alone, thin, thick, celsius working.Num) working.Num {
	t, ok := st.Table("pressure.hcl.acid")
	if !ok {
		return working.Absent("p", "kPa", working.LacksDatum("pressure.hcl.acid"))
	}
	_, end := t.Range()
	top, x := working.Exact("w_m", "1", end/percent, "where the table of hydrochloric acid ends"), thick.As("w")
	x = w.Line("w", "1", "min(w,w_m)", math.Min(x.V, top.V), x, top)
	middle, low := Vapour(st, w, "hcl", alone, celsius).As("p_m"), Vapour(st, w, "hcl", thin, celsius).As("p_l")
	high, z := Vapour(st, w, "hcl", x, celsius).As("p_h"), st.Num("vapour.hcl_hf").As("z")
	v := middle.V + math.Max(z.V, 0)*(high.V-middle.V) + math.Max(-z.V, 0)*(low.V-middle.V)
	return w.Line("p", "kPa", "p_m+max(z,0)*(p_h-p_m)+max(-z,0)*(p_l-p_m)", v, middle, z, high,
		low).Worse(working.Estimated)
}

// WaterVapour returns the partial pressure in kPa of water over an aqueous acid
// of a mass fraction at a temperature in degC: of the tables from their first
// row on, and of pure water below it. It is unknown where Vapour is.
func WaterVapour(st *chemicals.Store, w *working.Sheet, model string, fraction, celsius working.Num) working.Num {
	t, ok := st.Table("pressure." + model + ".water")
	if !ok || fraction.Unknown() || celsius.Unknown() || celsius.V < 0 || celsius.V > st.Num("vapour.highest").V {
		return working.Absent("p_w", "kPa", working.Lacks("water_over", model))
	}
	x, kelvin := fraction.V*percent, celsius.V+273.15
	low, _ := t.Range()
	if x < low {
		return w.Model("p_w", "kPa", "saturation pressure of water", Saturation(kelvin), celsius)
	}
	a, b := coefficients(t, x)
	return w.Model("p_w", "kPa", "lg p = A - B/T of the water, straight in wt%", mmHg*math.Exp(a-b/kelvin), fraction,
		celsius)
}

// Saturation is the vapour pressure of pure water in kPa at a temperature in K,
// from 273.16 to 647 K (IAPWS, saturation properties of ordinary water, 1992).
func Saturation(kelvin float64) float64 {
	const critical, pressure = 647.096, 22064.0
	a := [...]float64{-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502}
	t := 1 - kelvin/critical
	sum := a[0]*t + a[1]*math.Pow(t, 1.5) + a[2]*t*t*t + a[3]*math.Pow(t, 3.5) + a[4]*math.Pow(t, 4) + a[5]*math.Pow(t,
		7.5)
	return pressure * math.Exp(critical/kelvin*sum)
}

// mostAmmonia is the molality up to which the table of ammonia was read.
const mostAmmonia = 24

// Ammonia returns the partial pressure in kPa of ammonia over water that holds
// it at a molality in mol/kg, all of it free, at a temperature in degC: Henry's
// law, with what a solubility table at 20 and 30 degC has beyond it,
//
//	p = P m/h exp(-b (1/T - 1/298.15 K)) exp(k m)
//
// up to 24 mol/kg, where the table ends, and unknown beyond.
func Ammonia(st *chemicals.Store, w *working.Sheet, molality, celsius working.Num) working.Num {
	h, b := st.Num("vapour.nh3").As("h"), st.Num("vapour.nh3_slope").As("b")
	m, t := molality.As("m"), celsius.As("T")
	k := st.Num("vapour.nh3_excess").As("k")
	if m.V > mostAmmonia {
		return working.Absent("p", "kPa", working.Lacks("ammonia_over_strong", ""))
	}
	v := 101.325 * m.V / h.V * math.Exp(-b.V*(1/(t.V+273.15)-1/298.15)) * math.Exp(k.V*m.V)
	return w.Line("p", "kPa", "101.325*m/h*exp(-b*(1/(T+273.15)-1/298.15))*exp(k*m)", v, m, h, b, t,
		k).Worse(working.Bound)
}
