package workers_test

import (
	"sync/atomic"
	"testing"

	"etchbound/hazards/workers"
)

func TestEachCallsAllOnce(t *testing.T) {
	for _, count := range []int{0, 1, 3, 100} {
		var calls [50]atomic.Int32
		workers.EachOn(len(calls), count, func(i int) { calls[i].Add(1) })
		for i := range calls {
			if n := calls[i].Load(); n != 1 {
				t.Errorf("%d workers: %d called %d times", count, i, n)
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
	workers.EachOn(10, 2, func(i int) {
		if i == 3 {
			panic("broken")
		}
	})
	t.Error("no panic")
}
