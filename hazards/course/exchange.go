package course

import "etchbound/chemicals/working"

// Exchange is what heat goes to and comes from: how warm that is, and how well heat gets
// there. A bath, melting ice and the air of a room are nothing more; a jacket extends what
// flows through it by what it holds and by what its chiller takes.
type Exchange struct {
	Coolant working.Num // degC
	UA      working.Num // W/K
}

// behind is what gets through one exchange and then another, W/K: what lies between them is
// as warm as lets the same heat through both.
//
//	UA = U_w J/(U_w + J)
func (x *Exchange) behind(w *working.Sheet, wall working.Num) working.Num {
	u, j := wall.As("U_w"), x.UA.As("J")
	return w.Line("UA", "W/K", "U_w*J/(U_w+J)", u.V*j.V/(u.V+j.V), u, j)
}
