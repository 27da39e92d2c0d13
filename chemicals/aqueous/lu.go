package aqueous

import "math"

// lu is a square matrix taken apart by elimination with the largest pivot of each column, so
// that it can be solved for many right sides. Most of what it gets is 0, which a general
// library does not skip: with all components it takes a quarter of the time of one.
type lu struct {
	a    []float64 // row by row: the upper triangle, and below it what was taken of each row
	swap []int     // the row that came in the place of each
}

// factor takes a apart in its place. It is false where a pivot is 0 or no number.
func (f *lu) factor(a []float64, c int) bool {
	f.a, f.swap = a, f.swap[:0]
	for j := range c {
		best, at := 0.0, -1
		for i := j; i < c; i++ {
			if v := math.Abs(a[i*c+j]); v > best {
				best, at = v, i
			}
		}
		if at < 0 {
			return false
		}
		f.swap = append(f.swap, at)
		row := a[j*c : (j+1)*c]
		if at != j {
			other := a[at*c : (at+1)*c][:len(row)]
			for k, v := range row {
				row[k], other[k] = other[k], v
			}
		}
		row = row[j:]
		by := 1 / row[0]
		for i := j + 1; i < c; i++ {
			if v := a[i*c+j]; v != 0 {
				v *= by
				less(a[i*c+j+1:(i+1)*c], row[1:], v)
				a[i*c+j] = v
			}
		}
	}
	return true
}

// solve makes x of b.
func (f *lu) solve(b []float64) {
	c := len(b)
	for j, at := range f.swap {
		b[j], b[at] = b[at], b[j]
	}
	for i := 1; i < c; i++ {
		v := b[i]
		for k, l := range f.a[i*c : i*c+i] {
			v -= l * b[k]
		}
		b[i] = v
	}
	for i := c - 1; i >= 0; i-- {
		v := b[i]
		for k := i + 1; k < c; k++ {
			v -= f.a[i*c+k] * b[k]
		}
		b[i] = v / f.a[i*c+i]
	}
}

// less takes f of a row from another, four at a time.
func less(from, row []float64, f float64) {
	for len(row) >= 4 && len(from) >= 4 {
		from[0] -= f * row[0]
		from[1] -= f * row[1]
		from[2] -= f * row[2]
		from[3] -= f * row[3]
		row, from = row[4:], from[4:]
	}
	for k, v := range row {
		from[k] -= f * v
	}
}
