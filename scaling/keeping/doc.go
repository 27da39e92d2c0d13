// Package keeping knows how product of a route can be kept, each way as edits of the route
// that are judged as the route is. It must not know what a condition does to product, nor how
// any of it is printed; none of them is recommended.
//
// A condition is rows of conditions.csv. The route is read again with its edits in the text,
// and what stored product does is assessed with every swing and corner, as a review does:
// figures and verdicts are those of a review of the changed route.
//
//	days[i] = time to a loss of 10, 20 and 50 %, d, of the trade's mode of pH; 3650: not by then
//	dose    = 1.05 c_a V M/1e6        mass of an additive, g, rounded up to two digits
//	own     = n n_g R T/P             gas that an additive itself can give, mL
package keeping
