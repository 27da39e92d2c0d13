// Package storage knows what product does in the container it is kept in: how much of
// it degrades, and what pressure its gas makes. It must not move material, and it must
// not know what a container is allowed to hold.
//
// Water is the main oxidant, also under argon; oxygen of the gas space comes first and
// gives no gas. The rates are of first order, per day:
//
//	k_w = k_W a f_x f_q f_m f_pH f_ice/S      water
//	k_o = k_O a f_x f_q f_m f_pH f_ice/S      air, in full supply
//	a   = exp(-E_s/R (1/T - 1/298.15))
//
// f_x is of the family, f_q of the flakes, f_m of the medium, S of an additive in at
// least its dose, which has its own pH in it; f_ice below 0 degC. Sources disagree about
// pH: ph_mode_1 is what the trade sees, base faster; ph_mode_2 what one laboratory reads,
// acid faster. Pressure takes the faster of the two. Stages of one container add up.
//
//	X_w = 1 - exp(-k_w t)
//	X_o = X_m (1 - r), r = (1 - (1-m_O) u/X_m)^(1/(1-m_O)), u = 1 - exp(-k_o t)
//	conversion = 1 - (1-X_w)(1-X_o)
//
// X_m is the conversion that the oxygen shut in suffices for; open or vented, X_o = u.
// Of M_m C_c N_n with o O in all, h H and d halide, its oxide of valence z, per mol of it
// with w = z m/2 - o of water:
//
//	carbon_kept     H2 = (h + 2w - 3n - d)/2
//	methane         CH4 = c, H2 = (h + 2w - 4c - 3n - d)/2
//	carbon_dioxide  CO2 = c, H2 = (h + 2w + 4c - 3n - d)/2      outer bound, with all that
//	                an additive can give itself
//
// Nitrogen leaves as ammonia, which stays in the water below pH 8, as far as the acid of the
// flakes takes it; above that, and where it is more, all of it counts as free. Every gas is
// shared with the liquid by Henry's law:
//
//	p_i = n_i X_w f_g/(V_g/(R T) + H_i V_l)
//	pressure = sum of p_i - oxygen used + what warmth above 25 degC adds
//
// Gas of powder that the etch left counts in it. Oxygen that is used makes a slight
// vacuum first; what it does not cost in gas later is not credited, and where nobody says
// what the container is filled with nothing of it is. Vented, the pressure is that if it
// were shut. Ice takes its room and dissolves nothing. time_to_10_kpa is from the start,
// without that vacuum; 3650 d says not within ten years. shelf_life is to a loss of a
// fifth from the first stage on, the oxygen shut in being used at once.
//
// What is gone had its halides as fluoride and acid: fluoride = X n d M, and store.ph by the
// charge balance of the liquid with it; weak acids keep protons by their pKa. store.ice is
// 1.09 of the water and the solid over the capacity; what a solvent keeps from freezing is not
// slowed by ice. A container shut at the end with product in it that no step stores comes to
// the gas of all of it. One of waste holds the flakes and the liquid of all its batches.
//
// time_to_quarter is until what burns of the gas, all of it let out, is at 25 % of the lower
// flammable limit in the air of the fridge or cabinet of the site, of which nothing changes.
//
// antioxidant is the mass of each additive that brings the fullest stage to the dose c from
// which it counts, a twentieth more: 1.05 c V M.
//
// The rates were fitted to most of what was observed: they agree with it, which is no
// proof. Brine has common salt in it near saturation: f_m of it, no ice, and no gas dissolved.
// Light is not in the rates. What is dry goes by its form: powder, a film, or in a polymer.
// Away from neutral water of 25 degC and Ti3C2 they hold to a factor of 3 to 5.
package storage
