// Package assess joins the walk, the vessels and the readers into one pure
// function of a case, its central figures. It must not know a range, a verdict or
// how anything is printed, nor read a clock, a file or the environment.
//
// The walk comes first, then the courses and their runs in time, then the readers, each
// of which makes figures of one hazard. Numbers are central ones only: no range and no
// second path. A kept result of a stage serves another case if every datum it read has
// the same value there and the case differs in nothing else; it is the same function,
// remembered by stage. The one figure of its own is account.error, what the walk cannot
// find again of what went in, and should be rounding alone.
package assess
