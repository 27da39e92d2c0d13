package ode_test

import (
	"fmt"
	"testing"

	"etchbound/hazards/ode"
)

// errors are the greatest over the times of the table, so that an end that
// settles by itself cannot flatter.
func (c *reference) errors(b *testing.B, o ode.Options) (kelvin, conversion float64) {
	o.Discard = false
	res, y := solved(b, c.problem(), o), make([]float64, 6)
	for _, r := range table(b, "trajectories.csv") {
		if r["case"] != c.name {
			continue
		}
		if err := res.At(r.num(b, "t_s"), y); err != nil {
			b.Fatal(err)
		}
		kelvin = max(kelvin, off(y[3], r.num(b, "temperature_k")))
		conversion = max(conversion, off(y[2], r.num(b, "reacted_mol"))/c.dosed())
	}
	return kelvin, conversion
}

// BenchmarkReference is the end state alone, which is what the peers do. Errors
// are in millionths of a kelvin and in 1e-9 of the conversion.
func BenchmarkReference(b *testing.B) {
	all := references(b)
	for _, name := range referenceNames {
		for _, rtol := range []float64{1e-5, 1e-6, 1e-7, 1e-8} {
			b.Run(fmt.Sprintf("%s/%.0e", name, rtol), func(b *testing.B) {
				c := all[name]
				p, o := c.problem(), c.options(rtol, ode.Automatic)
				o.Discard = true
				kelvin, conversion := c.errors(b, o)
				var res ode.Result
				for b.Loop() {
					res = solved(b, p, o)
				}
				b.ReportMetric(kelvin*1e6, "uK_error")
				b.ReportMetric(conversion*1e9, "ppb_error")
				b.ReportMetric(float64(res.Stats.RateCalls), "rate_calls")
			})
		}
	}
}

// BenchmarkWhole is what a review asks for: trajectory and three peaks.
func BenchmarkWhole(b *testing.B) {
	all := references(b)
	for _, name := range referenceNames {
		for _, rtol := range []float64{1e-4, 1e-6} {
			b.Run(fmt.Sprintf("%s/%.0e", name, rtol), func(b *testing.B) {
				p, o := all[name].problem(), all[name].options(rtol, ode.Automatic)
				p.Peaks = all[name].peaks()
				b.ReportAllocs()
				for b.Loop() {
					solved(b, p, o)
				}
			})
		}
	}
}

func BenchmarkRobertson(b *testing.B) {
	p := robertson(4e10)
	o := ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-10, 1e-14, 1e-10}, Discard: true}
	var res ode.Result
	for b.Loop() {
		res = solved(b, p, o)
	}
	for _, r := range table(b, "robertson.csv") {
		if r.num(b, "t_s") == p.To {
			b.ReportMetric(off(res.Y[0]/r.num(b, "y1"), 1)*1e6, "ppm_error")
		}
	}
	b.ReportMetric(float64(res.Stats.Steps), "steps")
}

func BenchmarkExotherm(b *testing.B) {
	p := exotherm()
	o := ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9}, Discard: true}
	var res ode.Result
	for b.Loop() {
		res = solved(b, p, o)
	}
	b.ReportMetric(off(res.Y[2], exothermEnd[2])*1e6, "uK_error")
	b.ReportMetric(float64(res.Stats.Steps), "steps")
}
