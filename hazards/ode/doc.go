// Package ode knows how to integrate ordinary differential equations, stiff or
// not, with dense output, events, peaks and switches. It must not know what the
// equations mean: plain floats, the caller's units, nothing of ours imported.
//
// # Methods
//
// Explicit: Runge-Kutta pair of order 5(4) with dense output of order 4 (the
// Dormand-Prince pair); Solving Ordinary Differential Equations I, Springer,
// 1993, sections II.4 to II.6. Implicit: L-stable Rosenbrock pair of order 4(3)
// with dense output of order 3 (Rodas4); Solving Ordinary Differential
// Equations II, Springer, 1996, sections IV.2, IV.7, IV.8 and VI.4. Automatic
// goes from one to the other by the dominant eigenvalue. Without an analytic
// Jacobian differences are taken, central ones below a relative tolerance of
// 1e-8.
//
// # How exact
//
// The tolerance is that of one step. At the end of the reference problems the
// error is below ten times the tolerance; inside a step a state that is slaved
// by stiffness can be off by fifty times. A maximum is integrated once more, at
// a hundredth of the tolerance, so that its time is as good as its value. A top
// that is flat has no sharp time. Where the right-hand side has no bounded
// slope (a power below one that reaches zero) the explicit method is the
// quicker one, and Automatic stays with it.
//
// Nothing numeric is returned as NaN: a failure is a Status.
//
// # Benchmarks
//
// Times in ms at a relative tolerance of 1e-6, and the greatest errors over the
// times of the tables, by peers.sh: two virtual cores, x86-64, other work
// running; two repeats of the table differed by up to 20 % for CVODE 6.4 (C,
// -O2) and SciPy 1.10, up to 80 % here. End state only, workspace included.
// R1 to R9: vessels with made-up constants, six states, numeric Jacobian.
// Robertson: to 4e10, analytic Jacobian. Exotherm: seven states.
//
//	            here                        CVODE BDF                   SciPy LSODA  Radau
//	case        ms     K error  X error     ms     K error  X error     ms           ms
//	R1          0.034  9.3e-6   6.4e-8      0.19   1.1e-4   2.8e-6      1.2          10
//	R2          0.028  3.8e-5   1.3e-6      0.22   6.6e-5   1.9e-6      1.2          20
//	R3          0.13   3.6e-6   2.1e-7      0.31   7.1e-5   7.4e-6      3.3          25
//	R4a         0.044  4.5e-5   1.2e-6      0.26   2.1e-4   5.7e-6      3.0          25
//	R4b         0.070  1.5e-5   1.9e-7      0.44   2.8e-4   3.5e-6      2.5          33
//	R5          0.052  1.8e-5   4.9e-7      0.49   2.2e-4   2.2e-6      5.9          34
//	R6          0.033  3.5e-5   4.5e-7      0.27   5.4e-4   7.0e-6      1.6          36
//	R8          0.043  1.6e-4   4.4e-7      0.51   1.8e-3   2.2e-5      5.5          54
//	R9          0.037  5.7e-6   1.5e-7      0.40   1.9e-4   1.7e-6      3.3          26
//	Robertson   0.14   relative 1.1e-5      1.15   relative 3.8e-3
//	Exotherm    0.37   3.8e-5               0.76   6.4e-4
//
// With the trajectory kept and three peaks located: 0.10 to 0.45 ms, at 1e-4
// 0.07 to 0.3 ms.
package ode
