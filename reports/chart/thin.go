package chart

import "math"

// point is a place in the picture.
type point struct{ x, y float64 }

// thin leaves of the points that share a column one unit wide, the width of a
// hair in print, the first, the highest, the lowest and the last. What is drawn
// covers the same paper and no extreme is lost.
func thin(points []point) []point {
	var out []point
	for i := 0; i < len(points); {
		j := i
		for j < len(points) && math.Floor(points[j].x) == math.Floor(points[i].x) {
			j++
		}
		out = append(out, corners(points[i:j])...)
		i = j
	}
	return level(out)
}

// corners are the first, the highest, the lowest and the last of some points in
// their order, each once.
func corners(points []point) []point {
	high, low := 0, 0
	for i, p := range points {
		if p.y < points[high].y {
			high = i
		}
		if p.y > points[low].y {
			low = i
		}
	}
	var out []point
	for i, p := range points {
		if i == 0 || i == high || i == low || i == len(points)-1 {
			out = append(out, p)
		}
	}
	return out
}

// level leaves out points in the midst of a horizontal piece.
func level(points []point) []point {
	var out []point
	for i, p := range points {
		if i > 0 && i < len(points)-1 && points[i-1].y == p.y && points[i+1].y == p.y {
			continue
		}
		out = append(out, p)
	}
	return out
}
