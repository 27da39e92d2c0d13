package classifying

import "slices"

// What counts as extreme: the strong acid and the hydroxide, mol/L, from which on a liquor
// is at pH 2 or below, or at 11.5 or above, 10^-2 and 10^-2.5 (Regulation (EC) 1272/2008
// 3.2.3.1.2, memory).
const (
	ExtremeAcid = 1e-2
	ExtremeBase = 3.1623e-3
)

// extremeSource is where the rule stands.
const extremeSource = "Regulation (EC) 1272/2008 3.2.3.1.2"

// Extreme counts a mixture as corrosive by its pH, where no class of its parts says so, and
// reports whether it was so.
func (c *Classified) Extreme() bool {
	if slices.ContainsFunc(c.Classes, func(f Found) bool { return f.Class.Code == "H314" }) {
		return false
	}
	t := held()
	n := slices.IndexFunc(t.classes, func(x *Class) bool { return x.Key == "skin_corr_1c" })
	if n < 0 {
		return false
	}
	f := Found{Class: t.classes[n], Source: extremeSource, Status: "memory"}
	kept := slices.DeleteFunc(c.Classes, func(x Found) bool { return x.Class.Family == f.Class.Family })
	at := slices.IndexFunc(kept, func(x Found) bool {
		return slices.Index(t.families, x.Class.Family) > slices.Index(t.families, f.Class.Family)
	})
	if at < 0 {
		at = len(kept)
	}
	c.Classes = slices.Insert(kept, at, f)
	*c = c.implied()
	return true
}
