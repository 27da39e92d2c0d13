package number

import "testing"

// By hand: a power behind a sign of division stays one number.
func TestFormulasAsPeopleWriteThem(t *testing.T) {
	for _, tt := range [][2]string{
		{"pow(4*V/1e6/3.141592653589793,1/3.0)", "pow(4*V/10^6/pi,1/3.0)"}, {"m/4e6", "m/(4*10^6)"},
		{"max(x,1e-30)", "max(x,10^-30)"}, {"pow(1.56e-5/D,-0.67)", "pow((1.56*10^-5)/D,-0.67)"},
		{"1e6*n", "10^6*n"}, {"x2e3+k_1e2", "x2e3+k_1e2"}, {"n*M", "n*M"}, {"", ""},
	} {
		if got := Formula(tt[0]); got != tt[1] {
			t.Errorf("%s: %s, want %s", tt[0], got, tt[1])
		}
	}
}
