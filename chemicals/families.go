package chemicals

import (
	"io/fs"

	"etchbound/schemas/columns"
)

// Family is a family of layered phases beside M(n+1)AX(n): how many of M, of A and of
// X there are, which elements leave its layers and what its X are.
type Family struct {
	Name           string
	M, A, X        float64
	Leaving, Other []string
}

var families = embedded(func(fsys fs.FS) ([]Family, error) {
	return read(fsys, "data/families.csv", func(r columns.Row) Family {
		r.Choice("status", "read", "memory")
		r.Text("note")
		return Family{r.Named("family"), r.Stated("m"), r.Stated("a"), r.Stated("x"), r.List("leaving"), r.List("other")}
	})
})

// Families are the families of layered phases that are known beside M(n+1)AX(n). The
// list is shared and not to be changed.
func Families() []Family { return families() }
