package field

// InOrder pairs the items of two lists that keep their order, with -1 beside an item that
// stands alone. Of all ways to pair them it is one with the largest sum of marks; mark says
// how much two items are alike, 0 where they are not to be paired at all.
func InOrder[E any](a, b []E, mark func(a, b *E) int) [][2]int {
	marks, most := marked(a, b, mark)
	var out [][2]int
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		switch {
		case marks[i][j] > 0 && most[i][j] == most[i+1][j+1]+marks[i][j]:
			out = append(out, [2]int{i, j})
			i, j = i+1, j+1
		case most[i+1][j] >= most[i][j+1]:
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

// marked gives the mark of every two items, and from each two on the largest sum of marks.
func marked[E any](a, b []E, mark func(a, b *E) int) (marks, most [][]int) {
	marks, most = table(len(a), len(b)), table(len(a), len(b))
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			marks[i][j] = mark(&a[i], &b[j])
			most[i][j] = max(most[i+1][j], most[i][j+1])
			if marks[i][j] > 0 {
				most[i][j] = max(most[i][j], most[i+1][j+1]+marks[i][j])
			}
		}
	}
	return marks, most
}

// table has a row and a column more than there are items, for the ends of the lists.
func table(rows, columns int) [][]int {
	out := make([][]int, rows+1)
	for i := range out {
		out[i] = make([]int, columns+1)
	}
	return out
}
