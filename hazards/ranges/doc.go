// Package ranges moves the data of a case within what they can be, by assessing it
// again: the range of every figure, the dangerous ends of a case at another size,
// and draws. It must not know what a datum means, nor how anything is printed.
//
// Low and high of a figure are the least and the greatest of the centre, of every single
// swing, and of that figure's own two corner runs, in which every datum stands at the end
// that moved this figure down, or up. Rows of one group move together. A datum whose two
// ends move a figure the same way stays central in the opposite corner. A figure that is
// nothing at the centre has one corner more, in which what moves nothing there stands
// where it moves the same quantity most elsewhere. A figure that goes with a run has that in
// which the liquor gets hottest, with the rest as the figure has it. Figures marked kinked in the catalogue
// (boiling point, capped rises, the least of several limits) get the quarter points too. If a
// corner is unknown, that end is unknown. Rows of shape bound
// are printed and not swung. An amount that the writer gave has no range unless he gives
// one.
//
// Near a runaway no number of runs bounds a flow: a pace or a wall between its ends can be worse
// than either. What goes with the run of a step that passes the temperature beyond which it runs
// away ends where no run comes, with all powder waiting and no heat lost (vessel.Plan.Bound), and
// with it all that stands on it; its highest temperature ends at that reached if cooling fails.
//
// Of a course of several steps that can run away, where nobody states what cools it, no end
// bounds what a later step does: what is colder early leaves more for it, and the worst lies
// anywhere between. Flows of later steps, and of the first where a later one is set warmer and
// nobody says what heats it, are left open there, which no limit is met by, and
// how hot they get is bounded by all the heat of the course. What a search over moments found
// has the range of about eight corners.
package ranges
