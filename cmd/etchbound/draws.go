package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"etchbound/hazards/route"
	"etchbound/scaling"
)

// drawing is how the data are drawn.
type drawing struct {
	n, workers int
	seed       uint64
}

func (d *drawing) flags(c *cobra.Command) {
	c.Flags().IntVar(&d.n, "draws", 0, "draw the data this many times from their shapes")
	c.Flags().Uint64Var(&d.seed, "seed", 1, "seed of the draws: the same gives the same")
	c.Flags().IntVar(&d.workers, "workers", min(runtime.NumCPU(), mostWorkers),
		"draws that run at once; the result does not depend on it")
}

// sample draws the data of a case; nothing where no draws were asked for. An
// interrupt ends it, and nothing is written then.
func (d *drawing) sample(ctx context.Context, c route.Case, s streams) (*scaling.Sample, error) {
	var x scaling.Sample
	err := d.into(ctx, s, func(ctx context.Context, show func(int)) (err error) {
		x, err = scaling.Draws(ctx, c, d.n, d.seed, d.workers, show)
		return err
	})
	if err != nil || d.n == 0 {
		return nil, err
	}
	return &x, nil
}

// mostWorkers is more than any machine has cores.
const mostWorkers = 1024

// asked refuses what only draws would use, and more at once than can be meant.
func (d *drawing) asked(c *cobra.Command) error {
	if d.n != 0 && (d.n < scaling.FewestDraws || d.n > scaling.MostDraws) {
		return input("--draws: %d draws: %d to %d say something of the ends", d.n, scaling.FewestDraws, scaling.MostDraws)
	}
	if d.workers < 1 || d.workers > mostWorkers {
		return input("--workers: found %d, accepted are 1 to %d", d.workers, mostWorkers)
	}
	for _, name := range []string{"seed", "workers"} {
		if d.n == 0 && c.Flags().Changed(name) {
			return input("--%s: it is of the draws, and none are asked for; add --draws, such as --draws 1000", name)
		}
	}
	return nil
}

// into runs some draws, if any were asked for, with progress and an end by
// interrupt.
func (d *drawing) into(ctx context.Context, s streams, run func(context.Context, func(int)) error) error {
	if d.n == 0 {
		return nil
	}
	if ctx == nil {
		ctx = context.Background()
	}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt)
	defer stop()
	defer within(drawn(d.n))()
	show := progress(s.err, d.n)
	err := run(ctx, show)
	if show != nil {
		fmt.Fprint(s.err, "\r\033[K")
	}
	switch {
	case errors.Is(err, context.Canceled):
		return errors.New("interrupted: nothing was written")
	case err != nil:
		return input("--draws: %v", err)
	}
	return nil
}

// progress shows how many draws are done, on a terminal and nowhere else.
func progress(w io.Writer, of int) func(int) {
	f := terminal(w)
	if f == nil {
		return nil
	}
	var lock sync.Mutex
	var last time.Time
	return func(done int) {
		lock.Lock()
		defer lock.Unlock()
		if now := time.Now(); done == of || now.Sub(last) > 100*time.Millisecond {
			last = now
			fmt.Fprintf(f, "\r%d of %d draws", done, of)
		}
	}
}
