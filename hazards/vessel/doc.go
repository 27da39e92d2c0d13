// Package vessel knows one vessel in time: a Plan of what goes in and what
// takes heat away gives a Run of temperature, heat and gas. It must not know
// which step of a route it serves, nor any limit.
//
// Everything in it is in SI (mol, J, K, s, W, kg); volumes of liquor are in L
// because rate constants are.
//
// # Balances
//
// A Plan is integrated by package ode over what is suspended, in the heap, reacted,
// evaporated, melted and taken away, and over the temperature:
//
//	C dT/dt = q r + P_stirrer + P_heater - UA (T - T_c) - what vapour and feed take
//	dn/dt   = -r
//
// T_c is that of the piece, of a bath whose ice has melted away, or of the liquid in a
// jacket, which has a balance of its own. Rates follow
// Arrhenius, k exp(-Ea/R (1/T - 1/Tr)), and stop growing within 1 K above the boiling
// point; temperatures do not, so nothing is credited for what boils away. The laws:
//
//	first order        r = k n
//	contracting        r = k n^(2/3) n_0^(1/3)
//	self-accelerating  r = k n (seed + n_reacted/n_0)
//	measured           the slopes of the curve, and the last one from there on
//
// Calibrate sets k so that a law is at 99 % at the end of the stated hold. Powder goes in
// as stated, or is there from the start; instantaneous powder reacts as it goes in.
//
// A product that is added to something is converted to float64 first, here and in package ode:
// that rounds it, and no processor may fuse the two. Times of flat maxima and ends found by
// coarse runs would differ by up to 2 in 10000 between processors; they do not by 1 in a million.
//
// # Closed forms
//
//	all at once        T + Q/C
//	headspace          y = 1 - exp(-V/V_head)
//	bubbles            j/u = a (1-a)^2/((1-a^3)(1 - C0 a)),  u = 1.18 (s g/rho)^(1/4)
//	outlet             see Outlet.Drop
package vessel
