package main

import (
	"bytes"
	"io"
	"os"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/reports"
	"etchbound/scaling"
	"etchbound/schemas/quantity"
)

// demo is the bundled ten-step route.
const demo = "../../testdata/routes/demo-lif-hcl-2g.yaml"

func demoCase(b *testing.B) route.Case {
	raw, err := os.ReadFile(demo)
	if err != nil {
		b.Fatal(err)
	}
	r, problems, err := route.Load("demo", bytes.NewReader(raw))
	if err != nil || r == nil {
		b.Fatal(err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		b.Fatal(err)
	}
	return c
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		demoCase(b)
	}
}

func BenchmarkAssess(b *testing.B) {
	c := demoCase(b)
	for b.Loop() {
		if a := hazards.Assess(c, nil); a.Err != nil {
			b.Fatal(a.Err)
		}
	}
}

func BenchmarkMake(b *testing.B) {
	c := demoCase(b)
	for b.Loop() {
		if _, err := hazards.Make(c); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkScale is the ladder from 1 g to 10 kg with every turn. Target: 2 s.
func BenchmarkScale(b *testing.B) {
	c := demoCase(b)
	for b.Loop() {
		if _, err := scaling.Grow(c, quantity.Of(1, "g", quantity.Mass), quantity.Of(10, "kg", quantity.Mass),
			scaling.Follow{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHTML(b *testing.B) {
	r, err := hazards.Make(demoCase(b))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if err := reports.HTML(io.Discard, reports.Build(r, files{}.options(false))); err != nil {
			b.Fatal(err)
		}
	}
}
