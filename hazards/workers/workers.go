// Package workers calls a function for many numbers on several processors. It
// knows nothing of what is called.
package workers

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// EachOn calls f for 0 to n-1, each once, in no order, on so many workers, and
// returns when all are done. A panic of f is raised again where EachOn was
// called, so that the program can say so as it does for any other.
func EachOn(n, workers int, f func(i int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	var once sync.Once
	var fault any
	one := func() {
		defer func() {
			if p := recover(); p != nil {
				once.Do(func() { fault = p })
			}
		}()
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			f(i)
		}
	}
	for range min(max(workers, 1), n) {
		wg.Go(one)
	}
	wg.Wait()
	if fault != nil {
		panic(fault)
	}
}

// Each is EachOn on every processor. What f gives must not depend on how many
// there are.
func Each(n int, f func(i int)) { EachOn(n, runtime.GOMAXPROCS(0), f) }
