package hazards_test

import (
	"sync/atomic"
	"testing"

	"etchbound/hazards"
)

func TestEachCallsAllOnce(t *testing.T) {
	for _, workers := range []int{0, 1, 3, 100} {
		var calls [50]atomic.Int32
		hazards.EachOn(len(calls), workers, func(i int) { calls[i].Add(1) })
		for i := range calls {
			if n := calls[i].Load(); n != 1 {
				t.Errorf("%d workers: %d called %d times", workers, i, n)
			}
		}
	}
}

func TestEachRaisesAPanic(t *testing.T) {
	defer func() {
		if p := recover(); p != "broken" {
			t.Errorf("found %v", p)
		}
	}()
	hazards.EachOn(10, 2, func(i int) {
		if i == 3 {
			panic("broken")
		}
	})
	t.Error("no panic")
}
