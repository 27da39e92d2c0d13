// Package scaling knows one route at many sizes, many routes beside each other and many
// draws of the data, all by assessing again. It must not know how anything is computed
// inside an assessment, nor how it is printed.
//
// # Ladder
//
// A route from one batch to another is worked out at every rung, three to a decade, as a
// review does: all swings, and of every figure that has a verdict the corner of its
// dangerous end. Between two rungs the corners that lead at either count; where a figure
// stands on one corner at the one and on another at the other, the gap is halved by further
// reviews, up to five times. Where a figure changes its corner within two rungs of a turn,
// the turn is reviewed and looked for again from there. A turn is found to 0.05 % of the
// batch, by the secant on logarithms, and rounded down; one that is over again is rounded
// up. A figure on a third corner between two rungs and on the same one at all of them can
// still turn elsewhere. The first limit is withheld while a finding at or below it is not
// known. Amounts and containers grow with the batch; strengths, temperatures, holds, hood
// and room never do. An exponent is the slope of a line through logarithms.
//
// # Draws
//
// Every datum that a review swings moves, in its groups, by a Latin hypercube; rows of
// shape bound stay. Findings are judged on the value drawn. A draw that is not known ranks
// as the most dangerous, so one in twenty leaves the dangerous end unknown; a finding that
// is unknown in more has no chance, never a chance of zero. No draw of what has a low end
// of zero or above is below zero.
//
// # Side by side
//
// A quantity tells routes apart only where no two ranges meet and nothing in it is unknown.
// The mass of product is that of complete etching; its ends carry the lightest and the
// heaviest groups. A change is held against the rules of triggers.csv, each met once; what one
// of two routes does not state counts as met. Steps are known by what they do, containers by
// what is done in them; a finding that is new is worse only where the reviewed route has none
// of its matter as bad. An improvement is listed and meets no rule.
//
// # Stock
//
// stock.mass is pure substance by CAS number over all routes and bottles; stock.share is
// that over a quantity threshold, unknown without a site file. Some thresholds are of classes
// of hazard and not of substances: a mixture of the class counts whole, in one category of a
// group, and the shares of a group are summed; what nobody has classified counts there over
// the least quantity. A quantity of release is reported and reaches no limit by being held.
package scaling
