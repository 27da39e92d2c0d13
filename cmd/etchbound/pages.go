package main

import "io"

// pages is an output that is made before it is written. Unlike a bytes.Buffer it never
// copies what is in it to grow.
type pages [][]byte

// pageSize is how much a page takes, in bytes.
const pageSize = 128 << 10

// Write implements io.Writer. It never fails.
func (p *pages) Write(text []byte) (int, error) {
	written := len(text)
	for len(text) > 0 {
		last := len(*p) - 1
		if last < 0 || len((*p)[last]) == pageSize {
			*p = append(*p, make([]byte, 0, pageSize))
			last++
		}
		page := (*p)[last]
		n := min(len(text), pageSize-len(page))
		(*p)[last], text = append(page, text[:n]...), text[n:]
	}
	return written, nil
}

// writeTo writes what is in the pages.
func (p *pages) writeTo(w io.Writer) error {
	for _, page := range *p {
		if _, err := w.Write(page); err != nil {
			return err
		}
	}
	return nil
}
