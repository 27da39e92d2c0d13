package main

import (
	"bytes"
	"os"
	"strings"
	"sync"
	"testing"
	"time"
)

// locked is a buffer that two write to.
type locked struct {
	sync.Mutex
	bytes.Buffer
}

func (l *locked) Write(b []byte) (int, error) {
	l.Lock()
	defer l.Unlock()
	return l.Buffer.Write(b)
}

// Who waits at a terminal sees what is done, on a line that is gone afterwards; what goes
// elsewhere, and what is quick, has none of it.
func TestWaiting(t *testing.T) {
	var shown locked
	done := ticking(&shown, "working", time.Millisecond)
	for began := time.Now(); time.Since(began) < 5*time.Second; time.Sleep(time.Millisecond) {
		shown.Lock()
		n := shown.Len()
		shown.Unlock()
		if n > 0 {
			break
		}
	}
	done()
	const gone = "\r\x1b[K"
	if text := shown.String(); !strings.HasPrefix(text, gone+"etchbound: working, 0 s") || !strings.HasSuffix(text, gone) {
		t.Errorf("shown is %q", text)
	}
	var quick locked
	ticking(&quick, "working", time.Hour)()
	var buffer bytes.Buffer
	waiting(&buffer, "working")()
	file, err := os.CreateTemp(t.TempDir(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	waiting(file, "working")()
	info, err := file.Stat()
	if err != nil || quick.Len()+buffer.Len() > 0 || info.Size() > 0 || terminal(file) != nil || terminal(&buffer) != nil {
		t.Errorf("%v: %q, %q and %d bytes in a file", err, quick.String(), buffer.String(), info.Size())
	}
}

// The sheets of a printed file are those of the root of their tree, which need not come
// first; of others the size is told.
func TestWroteSaysHowMuch(t *testing.T) {
	tree := "%PDF-1.4\n<</Type /Pages /Kids [1 0 R] /Count 8>>\n<</Type /Pages\n/Count 19>>\n<</Type /Pages /Count 3>>"
	for _, c := range []struct{ text, worst, want string }{
		{tree, "", "written: a, 19 sheets"},
		{"%PDF-1.4\n<</Type /Pages /Count 1>>", "", "written: a, 1 sheet"},
		{"%PDF-1.4 of another kind", "", "written: a, 1 kB"},
		{strings.Repeat("x", 300_001), "it boils", "written: a, 301 kB; worst: it boils"},
		{"", "", "written: a, 0 kB"},
	} {
		var b pages
		if _, err := b.Write([]byte(c.text)); err != nil {
			t.Fatal(err)
		}
		if got := wrote("a", b, c.worst); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
