package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"sync"
	"time"
)

// patience is how long a command works before it says so.
const patience = time.Second

// terminal is the terminal behind a stream, nil where there is none.
func terminal(w io.Writer) *os.File {
	f, ok := w.(*os.File)
	if !ok {
		return nil
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return nil
	}
	return f
}

// waiting says on a terminal, and nowhere else, what is being done once it has taken a
// second, and how long it has taken; what it returns ends that and leaves an empty line.
func waiting(w io.Writer, what string) (done func()) {
	if f := terminal(w); f != nil {
		return ticking(f, what, patience)
	}
	return func() {}
}

func ticking(w io.Writer, what string, each time.Duration) (done func()) {
	end := make(chan struct{})
	var told sync.WaitGroup
	told.Go(func() {
		began, tick := time.Now(), time.NewTicker(each)
		defer tick.Stop()
		shown := false
		for {
			select {
			case <-tick.C:
				shown = true
				fmt.Fprintf(w, "\r\033[Ketchbound: %s, %.0f s", what, time.Since(began).Seconds())
			case <-end:
				if shown {
					fmt.Fprint(w, "\r\033[K")
				}
				return
			}
		}
	})
	return func() { close(end); told.Wait() }
}

// many is a number of things as a person writes it: one sheet has no s.
func many(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// sheetsOf finds how many sheets a printed file says it has.
var sheetsOf = regexp.MustCompile(`/Type /Pages[^>]*?/Count (\d+)`)

// wrote is the line that says which file was written, how much is in it and what of it is
// worst, where anything is.
func wrote(name string, b pages, worst string) string {
	size := 0
	for _, p := range b {
		size += len(p)
	}
	much := fmt.Sprintf("%d kB", (size+999)/1000)
	if len(b) > 0 && bytes.HasPrefix(b[0], []byte("%PDF")) {
		most := 0 // the root of a tree of sheets counts all of them
		for _, m := range sheetsOf.FindAllSubmatch(slices.Concat(b...), -1) {
			n, _ := strconv.Atoi(string(m[1]))
			most = max(most, n)
		}
		if most > 0 {
			much = many(most, "sheet")
		}
	}
	line := fmt.Sprintf("written: %s, %s", filepath.ToSlash(name), much)
	if worst != "" {
		line += "; worst: " + worst
	}
	return line
}
