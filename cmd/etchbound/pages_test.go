package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// What goes in comes out, whatever the pieces.
func TestPages(t *testing.T) {
	for _, piece := range []int{1, 1000, pageSize - 1, pageSize, 3*pageSize + 5} {
		var p pages
		var want, got bytes.Buffer
		for i := range 4*pageSize/piece + 2 {
			text := []byte(strings.Repeat(string(rune('a'+i%26)), piece))
			want.Write(text)
			if n, err := p.Write(text); n != piece || err != nil {
				t.Fatalf("%d, %v", n, err)
			}
			if i > 20000 {
				break
			}
		}
		if err := p.writeTo(&got); err != nil || !bytes.Equal(got.Bytes(), want.Bytes()) {
			t.Errorf("in pieces of %d bytes: %d bytes come out, %d went in (%v)", piece, got.Len(), want.Len(), err)
		}
	}
}

type closed struct{}

var errClosed = errors.New("nobody reads on")

func (closed) Write([]byte) (int, error) { return 0, errClosed }

func TestPagesToNobody(t *testing.T) {
	p := pages{[]byte("text")}
	if err := p.writeTo(closed{}); !errors.Is(err, errClosed) {
		t.Errorf("%v", err)
	}
}
