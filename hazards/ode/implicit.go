package ode

// Coefficients of the stiffly accurate L-stable Rosenbrock pair of order 4(3)
// with six stages (Rodas4), in the form that needs no products with the
// Jacobian. Solving Ordinary Differential Equations II, Springer, 1996,
// section IV.7 and section VI.4 for the dense output.
const (
	ra21                         = 1.544
	ra31, ra32                   = 0.9466785280815826, 0.2557011698983284
	ra41, ra42, ra43             = 3.314825187068521, 2.896124015972201, 0.9986419139977817
	ra51, ra52, ra53, ra54       = 1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950
	rc21                         = -5.6688
	rc31, rc32                   = -2.430093356833875, -0.2063599157091915
	rc41, rc42, rc43             = -0.1073529058151375, -9.594562251023355, -20.47028614809616
	rc51, rc52, rc53, rc54       = 7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160
	rc61, rc62, rc63, rc64, rc65 = 8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136,
		-6.058818238834054
	rgamma                  = 0.25
	rt2, rt3, rt4           = 0.386, 0.21, 0.63              // times of the stages
	rd1, rd2, rd3, rd4      = 0.25, -0.1043, 0.1035, -0.0362 // factors of df/dt
	rh1, rh2, rh3, rh4, rh5 = 10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823,
		1.025137723295662
	rk1, rk2, rk3, rk4, rk5 = -0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386,
		-6.594389125716872
	implicitOrder, implicitTerms = 4, 4 // terms: vectors of dense output
)

// implicitStep tries a step of h: z is set, g is not.
func (r *run) implicitStep(h float64) (float64, outcome) {
	if !r.linearised && !r.linearise() {
		return 0, badJacobian
	}
	if !r.shifted(1 / (h * rgamma)) {
		return 0, singular
	}
	if !r.implicitStages(h, 1/h) {
		return 0, nonFinite
	}
	r.scale(r.y, r.z)
	return r.norm(r.k[5]), tried
}

func (r *run) implicitStages(h, q float64) bool {
	y, k, arg, t := r.y, &r.k, r.arg, r.t
	copy(k[0], r.f)
	r.stage(k[0], h*rd1)

	add1(arg, y, ra21, k[0])
	if !r.rate(t+float64(rt2*h), arg, r.e) {
		return false
	}
	add1(k[1], r.e, q*rc21, k[0])
	r.stage(k[1], h*rd2)

	add2(arg, y, ra31, k[0], ra32, k[1])
	if !r.rate(t+float64(rt3*h), arg, r.e) {
		return false
	}
	add2(k[2], r.e, q*rc31, k[0], q*rc32, k[1])
	r.stage(k[2], h*rd3)

	add3(arg, y, ra41, k[0], ra42, k[1], ra43, k[2])
	if !r.rate(t+float64(rt4*h), arg, r.e) {
		return false
	}
	add3(k[3], r.e, q*rc41, k[0], q*rc42, k[1], q*rc43, k[2])
	r.stage(k[3], h*rd4)
	return r.implicitEnd(t+h, q)
}

// implicitEnd does the last two stages, both at the end of the step; the sixth
// is the error estimate.
func (r *run) implicitEnd(t, q float64) bool {
	k, arg := &r.k, r.arg
	add4(arg, r.y, ra51, k[0], ra52, k[1], ra53, k[2], ra54, k[3])
	if !r.rate(t, arg, r.e) {
		return false
	}
	add4(k[4], r.e, q*rc51, k[0], q*rc52, k[1], q*rc53, k[2], q*rc54, k[3])
	r.w.solve(k[4])

	add1(arg, arg, 1, k[4])
	if !r.rate(t, arg, r.e) {
		return false
	}
	add5(k[5], r.e, q*rc61, k[0], q*rc62, k[1], q*rc63, k[2], q*rc64, k[3], q*rc65, k[4])
	r.w.solve(k[5])
	add1(r.z, arg, 1, k[5])
	return true
}

// stage adds the part of a right-hand side that depends on time and solves.
func (r *run) stage(k []float64, factor float64) {
	if !r.p.Autonomous {
		add1(k, k, factor, r.ft)
	}
	r.w.solve(k)
}

// shifted factors shift*I - J.
func (r *run) shifted(shift float64) bool {
	r.stats.Factorisations++
	w, j := r.w.a, r.jac[:len(r.w.a)]
	for i := range w {
		w[i] = -j[i]
	}
	for i := 0; i < len(w); i += r.n + 1 {
		w[i] += shift
	}
	return r.w.factor()
}

// implicitDense writes the coefficients of the interpolant of order 3.
func (r *run) implicitDense(c []float64) {
	n, k := r.n, &r.k
	copy(c[:n], r.y)
	copy(c[n:2*n], r.z)
	a, b := c[2*n:3*n], c[3*n:4*n]
	clear(c[2*n : 4*n])
	add5(a, a, rh1, k[0], rh2, k[1], rh3, k[2], rh4, k[3], rh5, k[4])
	add5(b, b, rk1, k[0], rk2, k[1], rk3, k[2], rk4, k[3], rk5, k[4])
}

// implicitValue evaluates the interpolant at the fraction s of the step.
func implicitValue(c []float64, s float64, out []float64) {
	n, q := len(out), 1-s
	y, z, a, b := c[:n], c[n:2*n], c[2*n:3*n], c[3*n:4*n]
	for i := range out {
		out[i] = float64(q*y[i]) + float64(s*(z[i]+float64(q*(a[i]+float64(s*b[i])))))
	}
}
