package paper

import (
	"bytes"
	"regexp"
	"strconv"
)

// The parts of a PDF that Chromium writes uncompressed: where the anchors are that the
// page links to, and the tree of its sheets.
var (
	catalogue   = regexp.MustCompile(`/Type /Catalog\s+/Pages (\d+) 0 R\s+/Dests (\d+) 0 R`)
	kids        = regexp.MustCompile(`/Kids \[([^\]]*)\]`)
	reference   = regexp.MustCompile(`(\d+) 0 R`)
	destination = regexp.MustCompile(`/([^\s/\[\]]+) \[(\d+) 0 R /XYZ`)
)

// Places are the sheets, from 1, on which the anchors stand that something on the page
// links to; empty where a PDF does not show them.
func Places(pdf []byte) map[string]int {
	root := catalogue.FindSubmatch(pdf)
	if root == nil {
		return nil
	}
	sheets := map[string]int{}
	count(pdf, string(root[1]), sheets)
	out := map[string]int{}
	for _, d := range destination.FindAllSubmatch(object(pdf, string(root[2])), -1) {
		if n := sheets[string(d[2])]; n > 0 {
			out[string(d[1])] = n
		}
	}
	return out
}

// count numbers the sheets under an object of the tree, in their order. Each object is
// met once, whatever a damaged tree says.
func count(pdf []byte, id string, sheets map[string]int) {
	if _, met := sheets[id]; met {
		return
	}
	below := kids.FindSubmatch(object(pdf, id))
	if below == nil {
		n := 1
		for _, at := range sheets {
			if at > 0 {
				n++
			}
		}
		sheets[id] = n
		return
	}
	sheets[id] = 0
	for _, k := range reference.FindAllSubmatch(below[1], -1) {
		count(pdf, string(k[1]), sheets)
	}
}

// object is what stands in an object of a PDF, nil where it has none of that number.
func object(pdf []byte, id string) []byte {
	if _, err := strconv.Atoi(id); err != nil {
		return nil
	}
	_, rest, ok := bytes.Cut(pdf, []byte("\n"+id+" 0 obj\n"))
	body, _, closed := bytes.Cut(rest, []byte("\nendobj"))
	if !ok || !closed {
		return nil
	}
	return body
}
