package plain

func Join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}
