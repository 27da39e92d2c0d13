// Package wetted knows what each part of a place stands of what it meets, as figures, and
// which parts a step needs that nobody states. It must not know what a material is made
// of, nor what is done where one does not stand.
//
// Wall, lid and what else meets a liquor are judged by the walk, each by how strong, hot
// and long a medium meets it; the worst of the media counts. A part that nobody states, of
// which nobody says what it is made of, or of which nobody knows what it stands, is unknown.
//
//	material.attack    0 where a part stands all it meets, 1 where it does for a time or
//	                   has to be looked at, 2 where it does not
//
// It is worked out once, of the route, and never in the runs that swing data.
package wetted
