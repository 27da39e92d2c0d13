package chart

import (
	"cmp"
	"slices"
)

// byPlace lists events from left to right, equal ones in the order given.
func byPlace(marks []Mark) []int {
	order := make([]int, len(marks))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(marks[a].X, marks[b].X) })
	return order
}

// sortEnds puts labels in the order of what they name, from the top down.
func sortEnds(ends []end) {
	slices.SortStableFunc(ends, func(a, b end) int { return cmp.Compare(a.want, b.want) })
}

// group is a run of labels that touch one another.
type group struct {
	top, height float64
	n           int
}

// spread moves sorted labels apart within top and bottom with the least sum of
// squared shifts: labels that would overlap form a group, which stands where
// the mean of their wishes is, and groups that then overlap merge.
func spread(ends []end, top, bottom float64) {
	var groups []group
	for _, e := range ends {
		groups = append(groups, group{top: e.want - e.height()/2, height: e.height(), n: 1})
		for n := len(groups); n > 1 && groups[n-2].top+groups[n-2].height > groups[n-1].top; n = len(groups) {
			groups = append(groups[:n-2], merge(groups[n-2], groups[n-1]))
		}
	}
	i, free := 0, top
	for k, g := range groups {
		y := max(min(g.top, bottom-remaining(groups[k:])), free)
		for range g.n {
			ends[i].at = y + ends[i].height()/2
			y += ends[i].height()
			i++
		}
		free = y
	}
}

// merge puts b under a. The wish of a group is that of its top: for b it is
// higher by the height of a.
func merge(a, b group) group {
	n := float64(a.n + b.n)
	return group{
		top:    (float64(a.top*float64(a.n)) + float64((b.top-a.height)*float64(b.n))) / n,
		height: a.height + b.height,
		n:      a.n + b.n,
	}
}

func remaining(groups []group) float64 {
	h := 0.0
	for _, g := range groups {
		h += g.height
	}
	return h
}
