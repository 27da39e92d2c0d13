// Package record knows how what was computed is written for programs: JSON with nine
// digits, CSV, and the schemas of both. It must not know how any of it is printed.
package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"

	"etchbound/hazards/workers"
)

// Write writes a struct as JSON, as every document of ours is: a space deeper a level,
// every key there, no sign escaped that need not be. It is what json.Encoder writes, but
// made and indented an entry of a list at a time, since what is indented is held twice.
func Write(w io.Writer, v any) error {
	e := encoder{to: w}
	of := reflect.ValueOf(v)
	before := "{"
	for _, field := range reflect.VisibleFields(of.Type()) {
		if field.Anonymous { // its own fields stand in its place
			continue
		}
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		e.text(before + "\n \"" + name + "\": ")
		before = ","
		if f := of.FieldByIndex(field.Index); f.Kind() == reflect.Slice && f.Len() > 0 {
			e.entries(f)
		} else {
			e.value(f, " ")
		}
	}
	e.text("\n}\n")
	return e.err
}

// encoder writes until something goes wrong.
type encoder struct {
	to              io.Writer
	plain, indented bytes.Buffer
	err             error
}

func (e *encoder) text(s string) {
	if e.err == nil {
		_, e.err = io.WriteString(e.to, s)
	}
}

// A long list is encoded some blocks at a time, each on a processor, so that a long
// document is never held whole; the text does not depend on how many there are.
const block, blocks = 64, 8

func (e *encoder) entries(list reflect.Value) {
	e.text("[")
	n := list.Len()
	for from := 0; from < n && e.err == nil; from += block * blocks {
		var texts [blocks]bytes.Buffer
		var faults [blocks]error
		workers.Each((min(n-from, block*blocks)+block-1)/block, func(b int) {
			one := encoder{to: &texts[b]}
			for i := from + b*block; i < min(from+(b+1)*block, n); i++ {
				if i > 0 {
					one.text(",")
				}
				one.text("\n  ")
				one.value(list.Index(i), "  ")
			}
			faults[b] = one.err
		})
		for b := range texts {
			if e.err == nil {
				_, e.err = e.to.Write(texts[b].Bytes())
			}
			if e.err == nil {
				e.err = faults[b]
			}
		}
	}
	e.text("\n ]")
}

// value writes one value whose lines begin with some spaces.
func (e *encoder) value(v reflect.Value, begin string) {
	if e.err != nil {
		return
	}
	e.plain.Reset()
	e.indented.Reset()
	plain := json.NewEncoder(&e.plain)
	plain.SetEscapeHTML(false)
	if e.err = plain.Encode(v.Interface()); e.err != nil {
		return
	}
	text := escaped(bytes.TrimSuffix(e.plain.Bytes(), []byte("\n")))
	if e.err = json.Indent(&e.indented, text, begin, " "); e.err == nil {
		_, e.err = e.to.Write(e.indented.Bytes())
	}
}

// escaped writes what a terminal would take for an order, U+007F to U+009F, as JSON names it:
// the encoder leaves them as they are.
func escaped(text []byte) []byte {
	var out []byte
	from := 0
	for i, c := range text {
		order := c == 0x7f || i+1 < len(text) && c == 0xc2 && text[i+1] < 0xa0
		if !order {
			continue
		}
		r, size := utf8.DecodeRune(text[i:])
		out = fmt.Appendf(append(out, text[from:i]...), "\\u%04x", r)
		from = i + size
	}
	if out == nil {
		return text
	}
	return append(out, text[from:]...)
}
