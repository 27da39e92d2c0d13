package field

// InOrder pairs the items of two lists that keep their order: the longest run of
// items that are alike stays together, the others stand alone, with -1 beside them.
func InOrder[E any](a, b []E, alike func(a, b *E) bool) [][2]int {
	long := longest(a, b, alike)
	var out [][2]int
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		switch {
		case alike(&a[i], &b[j]) && long[i][j] == long[i+1][j+1]+1:
			out = append(out, [2]int{i, j})
			i, j = i+1, j+1
		case long[i+1][j] >= long[i][j+1]:
			out = append(out, [2]int{i, -1})
			i++
		default:
			out = append(out, [2]int{-1, j})
			j++
		}
	}
	for ; i < len(a); i++ {
		out = append(out, [2]int{i, -1})
	}
	for ; j < len(b); j++ {
		out = append(out, [2]int{-1, j})
	}
	return out
}

// longest gives, from each pair of places on, how many items can stay together.
func longest[E any](a, b []E, alike func(a, b *E) bool) [][]int {
	long := make([][]int, len(a)+1)
	for i := range long {
		long[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			long[i][j] = max(long[i+1][j], long[i][j+1])
			if alike(&a[i], &b[j]) {
				long[i][j] = max(long[i][j], long[i+1][j+1]+1)
			}
		}
	}
	return long
}
