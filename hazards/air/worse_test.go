package air

import (
	"testing"

	"etchbound/chemicals/working"
)

// Of spills the worst stands for all: what is not known before any number, but what is dry
// runs out nowhere and hides no liquor, though nobody knows its vapour at the heat of the oven.
func TestWhatIsDryIsNoSpill(t *testing.T) {
	num := func(v float64) working.Num { return working.Exact("x", "1", v, "as written") }
	dark := working.Absent("p", "kPa", working.Lacks(working.NotGiven, "steps[2].temperature"))
	of := func(mL float64, p working.Num) *spilt { return &spilt{volume: num(mL), vapour: vapour{pressure: p}} }
	dry, acid, hot := of(0, dark), of(1200, num(3)), of(5, dark)
	if dry.worse(acid) || !acid.worse(dry) {
		t.Error("a dry tray is spilt before 1.2 L of acid")
	}
	if !hot.worse(acid) || acid.worse(hot) {
		t.Error("a liquor whose vapour is not known gives off less than one that is")
	}
}
