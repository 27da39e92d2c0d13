// Package aqueous knows equilibria in water: which species a solution holds, which solids
// settle or dissolve, and which gas stands over it. It must not know routes, vessels, nor
// whether anything is allowed.
//
// Start with At, which is the model at one temperature, and Solve, which takes a Mixture:
// what is dissolved, what is added, which solids may settle, how it meets carbon dioxide,
// and the pH that a reagent keeps. What it finds is a State. Band gives a figure with what
// the models make of it that sources do not agree on; where State.Outside says anything the
// band, and not the figure, is the answer.
//
// # Equations
//
// Unknown are ln a of as many species as there are components, the ionic strength I, the
// activity of water and its mass. They are settled by
//
//	m_i g_i = K_i prod a_j^n_ij a_w^w_i        for each species
//	sum n_ij m_i kg + sum n_kj moved_k = T_j   for each component, H+ by neutrality
//	prod a_j^n_kj = K_k                        for each solid that is there
//	I = 1/2 sum m z^2,  a_w = 1 - 0.017 sum m
//	55.506 mol of water in a kg, and what species, solids and reagents take of it or give
//
// log10 g is -A z^2 sqrt I/(1 + B a sqrt I) + b I for an ion with a size a, A z^2 (0.3 I -
// sqrt I/(1 + sqrt I)) for one without, b I for what has no charge; A and B follow from the
// density and the permittivity of water. pH is -log10 a(H+) as that gives it, on no other
// scale. Constants (constants.csv, with source and status) move with temperature by an
// expression of their own or by an enthalpy. Molalities are mol per kg of the water there is
// at the end; amounts that settle, leave or are added are mol per kg of that at the start.
// Carbon dioxide is a real gas by a cubic equation of state; pressure moves no constant.
//
// # How it is found
//
// What holds most is guessed by a linear program, so no luck is needed. Then the equations
// are written with the most abundant species that suffice, so that the logarithm of each
// balance is almost straight, and Newton's steps, cut where they do not help, end it. Solids
// that would be less than nothing are dropped and what is most oversaturated is added until
// nothing is wrong. A pH that a reagent keeps is found directly, or by trying amounts.
//
// An answer is given only where every element, the charges and the water balance to 1e-10
// of what there is, worked out anew from the amounts; otherwise an error says what failed.
//
// # Limits
//
// Ionic strength to 1 mol/kg, HF and HF2- to 0.9 mol/kg, pH from 0.5, 5 to 60 degC. Beyond
// them answers follow the equations and say so. From an ionic strength of about 20 mol/kg or
// an activity of water of 0.4 nothing is answered. Not modelled: polyfluorides, complexes of
// titanium (it keeps six fluorides), fluoride taken up by hydroxide flocs, time: a solid that
// is allowed settles at once, and one that is not named never does.
package aqueous
