package hazards_test

import (
	"fmt"
	"math"
	"slices"

	"pgregory.net/rapid"

	"etchbound/schemas/long"
)

// course is a route of powder that etches in one pot of which everything is stated that can
// be: what cools it and how well, its wall, its vent, its stirrer.
func (d *drawing) course() *recipe {
	d.r = &recipe{places: &table{}, measured: &table{}}
	d.drawPowder()
	acid := d.num("acid", 20, 400)
	d.r.powder.set("mass", amount{acid * d.num("loading", 0.02, 0.2), "g"})
	coldest := float64(rapid.IntRange(0, 20).Draw(d.t, "coldest"))
	d.drawPot(acid, coldest)
	warm := func(s *table, degC float64) { s.put("temperature", amount{degC, "degC"}) }
	bath := d.step("charge", "pot")
	bath.put("what", d.etchant(acid))
	warm(bath, coldest)
	s := d.step("add", "pot")
	s.put("what", []any{"precursor"})
	s.put("over", amount{d.num("over", 4, 60), "min"})
	if d.coin("portions") {
		s.put("portions", fmt.Sprint(rapid.IntRange(2, 6).Draw(d.t, "portions")))
		if d.coin("portion time") {
			s.put("portion_time", "30 s")
		}
	}
	warm(s, coldest)
	degC := coldest
	for range rapid.IntRange(1, 3).Draw(d.t, "holds") {
		degC += float64(rapid.IntRange(0, 25).Draw(d.t, "warmer"))
		h := d.step("hold", "pot")
		h.put("time", amount{d.num("time", 60, 1500), "min"}) // no shorter than the addition
		warm(h, degC)
		for _, key := range []string{"attended", "stirred"} {
			if d.coin(key) {
				h.put(key, d.one("is", "true", "false"))
			}
		}
		if d.coin("purged") {
			h.put("gas", "argon")
			h.put("gas_flow", "0.1 L/min")
		}
	}
	d.ends()
	return d.r
}

// either is any route, or in the long form such a course.
func (d *drawing) either() *recipe {
	if long.Form() && d.coin("course") {
		return d.course()
	}
	return d.recipe()
}

// drawPot draws a pot that has room for its liquor, colder than any step by its cooling.
func (d *drawing) drawPot(acid, coldest float64) {
	p := &table{}
	p.put("kind", d.one("kind", "vessel", "bottle", "beaker"))
	p.put("material", d.one("material", "HDPE", "PTFE", "polypropylene", "PFA"))
	p.put("wall", amount{d.num("wall", 0.5, 6), "mm"})
	p.put("capacity", amount{acid * d.num("room", 1.5, 6), "mL"})
	p.put("closure", d.one("closure", "vented", "open", "closed"))
	switch p.get("closure") {
	case "vented":
		p.put("vent", amount{float64(rapid.IntRange(2, 12).Draw(d.t, "bore")), "mm"})
		p.put("vent_line", "1 m")
		p.put("lid_material", d.one("lid", "PTFE", "HDPE"))
	case "closed":
		p.put("rating", "400 kPa")
		p.put("relief", "200 kPa")
	}
	if d.coin("stirrer") {
		p.put("stirrer_heat", amount{acid * d.num("stirrer", 0.05, 1), "mW"})
	}
	c := &table{}
	kind := d.one("cooling", "water_bath", "water_bath", "ice_bath", "jacket", "none")
	c.put("kind", kind)
	switch kind {
	case "jacket":
		c.put("flow", amount{d.num("flow", 0.2, 5), "L/min"})
		c.put("liquid", amount{d.num("liquid", 0.1, 2), "L"})
		c.put("power", amount{d.num("chiller", 10, 500), "W"})
	case "water_bath":
		c.put("bath", amount{d.num("bath", 0.5, 10), "L"})
	case "ice_bath":
		c.put("ice", amount{d.num("ice", 0.1, 5), "kg"})
	}
	if kind != "none" {
		// 130 to 400 W/m2/K through the wetted wall of a cylinder as high as it is wide: no less than
		// poor films and a thin wall pass, since a worse one is a stated fault and no omission
		area := 5e-6 * acid / math.Pow(4e-6*acid/math.Pi, 1/3.0)
		c.put("ua", amount{d.num("ua", 130*area, 400*area), "W/K"})
		c.put("temperature", amount{min(coldest, d.num("coolant", 0, 10)), "degC"})
	}
	p.put("cooling", c)
	d.r.places.put("pot", p)
	tub := &table{}
	tub.put("kind", "drum")
	tub.put("material", "HDPE")
	tub.put("capacity", "5 L")
	tub.put("closure", "vented")
	tub.put("vent", "4 mm")
	tub.put("held_before", "empty")
	d.r.places.put("drum", tub)
}

// etchant is a liquor that etches most phases.
func (d *drawing) etchant(volume float64) []any {
	liquid := func(substance string, lo, hi float64, unit string) *table {
		m := &table{}
		m.put("substance", substance)
		m.put("strength", amount{d.num("strength", lo, hi), unit})
		m.put("volume", amount{volume, "mL"})
		return m
	}
	switch d.one("etchant", "hf", "lif", "bifluoride") {
	case "hf":
		return []any{liquid("hydrofluoric acid", 5, 50, "wt%")}
	case "lif":
		salt := &table{}
		salt.put("substance", d.one("salt", "lithium fluoride", "sodium fluoride", "potassium fluoride"))
		salt.put("mass", amount{volume * d.num("salt", 0.02, 0.15), "g"})
		return []any{salt, liquid("hydrochloric acid", 4, 11, "mol/L")}
	}
	salt, water := &table{}, &table{}
	salt.put("substance", "ammonium bifluoride")
	salt.put("mass", amount{volume * d.num("salt", 0.05, 0.3), "g"})
	water.put("substance", "water")
	water.put("volume", amount{volume, "mL"})
	return []any{salt, water}
}

// ends draws how the liquor is parted and what is washed with.
func (d *drawing) ends() {
	switch d.one("end", "none", "wash", "quench", "decant") {
	case "wash":
		w := d.step("wash", "pot")
		w.put("into", "drum")
		w.put("what", []any{d.water()})
		w.put("retained", amount{d.num("kept", 2, 5), "mL/g"})
		w.put("cycles", fmt.Sprint(rapid.IntRange(2, 12).Draw(d.t, "cycles")))
		w.put("target_ph", "6")
		w.put("water", "co2_free")
	case "quench":
		q := d.step("quench", "pot")
		q.put("what", []any{d.water()})
		q.put("temperature", amount{d.num("degC", 20, 60), "degC"})
	case "decant":
		s := d.step("decant", "pot")
		s.put("into", "drum")
		s.put("retained", amount{d.num("kept", 2, 5), "mL/g"})
		n := d.step("neutralise", "drum")
		n.put("what", []any{d.agent()})
		n.put("over", "60 min")
	}
}

// leavable are the keys of a recipe that can be left out, whatever they say. Those that say
// what else is to be done are none: a place is one container unless it says how many, powder
// goes in evenly unless it says by portions, all goes on unless a part of it does, a wash has as
// many cycles as its target needs, a quench is as warm as what it is, and a stirrer gives the
// heat that is stated (the table of keys).
func (r *recipe) leavable() []option {
	var out []option
	add := func(t *table, kept ...string) {
		for _, e := range t.entries {
			if !slices.Contains(kept, e.key) && (e.key != "rating" || t.get("relief") == nil) {
				out = append(out, option{t, e.key})
			}
		}
	}
	if r.powder != nil {
		add(r.powder, "phase", "mass")
	}
	add(r.measured)
	for _, e := range r.places.entries {
		p := e.value.(*table)
		if add(p, "kind", "count", "stirrer_heat"); p.get("kind") == "tube" && p.get("count") != nil {
			out = append(out, option{p, "count"}) // of tubes it is not known
		}
		if c, ok := p.get("cooling").(*table); ok {
			add(c, "kind")
		}
	}
	for _, s := range r.steps {
		kept := []string{"do", "in", "into", "what", "portions", "portion_time", "part", "cycles"}
		if s.get("do") == "quench" {
			kept = append(kept, "temperature")
		}
		add(s, kept...)
		what, _ := s.get("what").([]any)
		for _, x := range what {
			if m, ok := x.(*table); ok {
				add(m, "substance", "mass", "volume")
			}
		}
	}
	return out
}
