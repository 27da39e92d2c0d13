package reports

import (
	"os"
	"runtime/debug"
	"slices"
	"testing"
)

// TestMain has garbage collected as seldom as the command does: reviews leave much
// behind.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	code := m.Run()
	for _, stop := range slices.Backward(closing) {
		stop()
	}
	os.Exit(code)
}
