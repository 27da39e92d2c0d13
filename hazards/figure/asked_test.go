package figure_test

import (
	"testing"

	"etchbound/hazards/figure"
)

func TestAsked(t *testing.T) {
	three, room := figure.AskedAt(figure.Step(3)), figure.AskedAt(figure.Room)
	for _, tt := range []struct {
		name  string
		asked figure.Asked
		place figure.Place
		want  bool
	}{
		{"a step", three, figure.Step(3), true},
		{"another step", three, figure.Step(4), false},
		{"no step", three, figure.Spill, false},
		{"what is no step, as one", room, figure.Place{}, true},
		{"a step beside it", room, figure.Step(3), false},
		{"both", three.And(room), figure.Step(3), true},
		{"neither of both", three.And(room), figure.Step(63), false},
		{"a step beyond the last that is told apart", three, figure.Step(64), true},
		{"of such a step", figure.AskedAt(figure.Step(200)), figure.Step(1), true},
		{"everywhere", three.And(figure.Everywhere), figure.Step(9), true},
	} {
		if got := tt.asked.Has(tt.place); got != tt.want {
			t.Errorf("%s: %v", tt.name, got)
		}
	}
}
