package ode

// Coefficients of the explicit pair of order 5(4) with seven stages, the last
// of which is the first of the next step (the Dormand-Prince pair). Solving
// Ordinary Differential Equations I, Springer, 1993, table II.5.2 and section
// II.6 for the dense output.
const (
	ea21                         = 1.0 / 5
	ea31, ea32                   = 3.0 / 40, 9.0 / 40
	ea41, ea42, ea43             = 44.0 / 45, -56.0 / 15, 32.0 / 9
	ea51, ea52, ea53, ea54       = 19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729
	ea61, ea62, ea63, ea64, ea65 = 9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656
	eb1, eb3, eb4, eb5, eb6      = 35.0 / 384, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84
	ee1, ee3, ee4, ee5, ee6, ee7 = 71.0 / 57600, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40
	ed1, ed3, ed4                = -12715105075.0 / 11282082432, 87487479700.0 / 32700410799, -10690763975.0 / 1880347072
	ed5, ed6, ed7                = 701980252875.0 / 199316789632, -1453857185.0 / 822651844, 69997945.0 / 29380423
	ec2, ec3, ec4, ec5           = 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9
	explicitOrder, explicitTerms = 5, 5 // terms: vectors of dense output
)

// explicitStep tries a step of h: z and g = f(t+h, z) are set.
func (r *run) explicitStep(h float64) (float64, outcome) {
	y, u, k := r.y, r.arg, &r.k
	k1, k2, k3, k4, k5, k6 := r.f, k[0], k[1], k[2], k[3], k[4]
	add1(u, y, h*ea21, k1)
	if !r.rate(r.t+float64(ec2*h), u, k2) {
		return 0, nonFinite
	}
	add2(u, y, h*ea31, k1, h*ea32, k2)
	if !r.rate(r.t+float64(ec3*h), u, k3) {
		return 0, nonFinite
	}
	add3(u, y, h*ea41, k1, h*ea42, k2, h*ea43, k3)
	if !r.rate(r.t+float64(ec4*h), u, k4) {
		return 0, nonFinite
	}
	add4(u, y, h*ea51, k1, h*ea52, k2, h*ea53, k3, h*ea54, k4)
	if !r.rate(r.t+float64(ec5*h), u, k5) {
		return 0, nonFinite
	}
	add5(u, y, h*ea61, k1, h*ea62, k2, h*ea63, k3, h*ea64, k4, h*ea65, k5)
	if !r.rate(r.t+h, u, k6) {
		return 0, nonFinite
	}
	add5(r.z, y, h*eb1, k1, h*eb3, k3, h*eb4, k4, h*eb5, k5, h*eb6, k6)
	if !r.rate(r.t+h, r.z, r.g) {
		return 0, nonFinite
	}
	return r.explicitError(h), tried
}

func (r *run) explicitError(h float64) float64 {
	r.scale(r.y, r.z)
	clear(r.e)
	add5(r.e, r.e, h*ee1, r.f, h*ee3, r.k[1], h*ee4, r.k[2], h*ee5, r.k[3], h*ee6, r.k[4])
	add1(r.e, r.e, h*ee7, r.g)
	return r.norm(r.e)
}

// explicitDense writes the coefficients of the interpolant of order 4.
func (r *run) explicitDense(h float64, c []float64) {
	n := r.n
	c1, c2, c3, c4, c5 := c[:n], c[n:2*n], c[2*n:3*n], c[3*n:4*n], c[4*n:5*n]
	copy(c1, r.y)
	for i := range n {
		rise := r.z[i] - r.y[i]
		bend := float64(h*r.f[i]) - rise
		c2[i], c3[i], c4[i] = rise, bend, rise-float64(h*r.g[i])-bend
	}
	clear(c5)
	add5(c5, c5, h*ed1, r.f, h*ed3, r.k[1], h*ed4, r.k[2], h*ed5, r.k[3], h*ed6, r.k[4])
	add1(c5, c5, h*ed7, r.g)
}

// explicitValue evaluates the interpolant at the fraction s of the step.
func explicitValue(c []float64, s float64, out []float64) {
	n, q := len(out), 1-s
	c1, c2, c3, c4, c5 := c[:n], c[n:2*n], c[2*n:3*n], c[3*n:4*n], c[4*n:5*n]
	for i := range out {
		out[i] = c1[i] + float64(s*(c2[i]+float64(q*(c3[i]+float64(s*(c4[i]+float64(q*c5[i])))))))
	}
}
