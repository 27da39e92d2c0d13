// Package absorbing knows how a gas is taken up in a packed column by a liquor that reacts
// with it at once, how wide and how high that column is, how warm its liquor gets, and what a
// condenser, a trap and a line of a flow come to. It must not know of routes, nor which gas
// comes from where.
//
// A gas that reacts at once has no pressure over the liquor, so that its film of gas alone
// holds it up:
//
//	N = ln(y1/y2),  H = G_m/(k_G a_w P),  Z = H N
//
// k_G and the wetted area a_w are those of the correlation of the Journal of Chemical
// Engineering of Japan 1 (1968) 56. Below the flows for which that holds (Re 5 of the gas
// over the packing) a unit counts no lower than there.
//
// All is in SI; what is not known is not a number, and so is what follows of it.
package absorbing
