// Package incompatible knows which two that must not meet do so in the places of a route,
// with which step, and whether a step means it. It must not know how much heat or gas that
// gives, nor move material.
//
// What meets, and what a step that brings two together has to do so that it means it, are
// rows of the table of package meeting. A pair that a step means is named, and judged by
// the figures of its row; one that nobody means counts. So does a pair one of which is what
// earlier stood in the container. Of two of which one is not held nobody knows, and neither
// of a container for waste of which nobody says what earlier stood in it.
//
//	meeting.pair    1 where the pair meets unasked, 0 where a step means it
//
// It is worked out once, of the route, and never in the runs that swing data.
package incompatible
