package ode

import "math"

// matrix is a small dense square matrix by rows, factored in place. Meant for
// a dozen unknowns; it neither blocks nor allocates.
type matrix struct {
	n     int
	a     []float64
	pivot []int
}

func newMatrix(n int) matrix {
	return matrix{n: n, a: make([]float64, n*n), pivot: make([]int, n)}
}

// factor turns the matrix into its triangular factors with partial pivoting;
// the diagonal keeps reciprocals. False: a pivot is zero or not finite.
func (m *matrix) factor() bool {
	n := m.n
	for k := range n {
		p := m.largest(k)
		v := m.a[p*n+k]
		if v == 0 || !isFinite(v) {
			return false
		}
		m.pivot[k] = p
		m.exchange(k, p)
		m.eliminate(k, 1/v)
	}
	return true
}

func (m *matrix) largest(k int) int {
	p, best := k, math.Abs(m.a[k*m.n+k])
	for i := k + 1; i < m.n; i++ {
		if v := math.Abs(m.a[i*m.n+k]); v > best || v != v {
			p, best = i, v
		}
	}
	return p
}

func (m *matrix) exchange(k, p int) {
	if k == p {
		return
	}
	a, b := m.a[k*m.n:(k+1)*m.n], m.a[p*m.n:(p+1)*m.n]
	for j := range a {
		a[j], b[j] = b[j], a[j]
	}
}

func (m *matrix) eliminate(k int, reciprocal float64) {
	n := m.n
	top := m.a[k*n : (k+1)*n]
	top[k] = reciprocal
	for i := k + 1; i < n; i++ {
		row := m.a[i*n : (i+1)*n]
		if row[k] == 0 {
			continue
		}
		f := row[k] * reciprocal
		row[k] = f
		for j := k + 1; j < len(row) && j < len(top); j++ {
			row[j] -= float64(f * top[j])
		}
	}
}

// solve puts the solution in place of the right-hand side b.
func (m *matrix) solve(b []float64) {
	n := m.n
	b = b[:n]
	for k, p := range m.pivot {
		b[k], b[p] = b[p], b[k]
	}
	for i := 1; i < n; i++ {
		row := m.a[i*n : i*n+i]
		b[i] -= dot(row, b)
	}
	for i := n - 1; i >= 0; i-- {
		row := m.a[i*n+i : (i+1)*n]
		b[i] = (b[i] - dot(row[1:], b[i+1:])) * row[0]
	}
}

// dot multiplies u with as much of v.
func dot(u, v []float64) (s float64) {
	v = v[:len(u)]
	for i := range u {
		s += float64(u[i] * v[i])
	}
	return s
}
