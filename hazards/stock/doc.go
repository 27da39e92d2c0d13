// Package stock knows what a site keeps of each substance and what a run takes of it, and
// what of both the programmes of laws count. It must not know what a reaction makes of them,
// nor how routes are set beside each other.
//
// stock.mass is pure substance by CAS number. stock.share is the larger of the stock and of
// one run over the quantity of a programme; some quantities are of classes of hazard: a
// mixture of the class counts whole, in one category of a group, and the shares of a group
// are summed. What nobody has classified counts there over the least quantity, and what is on
// no list that we could look at is unknown. stock.release is the same over a quantity that is
// reported once it gets out: it is near at the most, since it is reached by no holding.
// stock.batches is how many runs bring in as much as is left to a quantity, rounded down.
package stock
