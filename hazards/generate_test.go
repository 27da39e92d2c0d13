package hazards_test

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// entry and table are a route file as a tree whose keys can be taken out again
// and whose amounts can be written in another unit or size.
type (
	entry struct {
		key   string
		value any // string, amount, table, []any
	}
	table  struct{ entries []entry }
	amount struct {
		value float64
		unit  string
	}
)

func (t *table) put(key string, value any) { t.entries = append(t.entries, entry{key, value}) }

func (t *table) get(key string) any {
	for _, e := range t.entries {
		if e.key == key {
			return e.value
		}
	}
	return nil
}

func (t *table) drop(key string) {
	t.entries = slices.DeleteFunc(t.entries, func(e entry) bool { return e.key == key })
}

// writing is how amounts are written.
type writing struct {
	other  bool    // in another unit of the same kind
	powder float64 // the mass of powder is multiplied by this
	acid   float64 // every volume of an acid is multiplied by this
}

var plainly = writing{powder: 1, acid: 1}

var otherUnits = map[string]struct {
	unit   string
	factor float64
}{"g": {"kg", 1e-3}, "mL": {"L", 1e-3}, "min": {"h", 1. / 60}, "wt%": {"g/g", 1e-2}, "kPa": {"MPa", 1e-3},
	"degC": {"degC", 1}, "mL/g": {"L/kg", 1}, "mol/L": {"mol/m3", 1e3}, "%": {"%", 1}, "mol": {"mmol", 1e3}}

func (w writing) amount(a amount) string {
	if w.other {
		if o, ok := otherUnits[a.unit]; ok && o.unit != "g/g" && o.unit != "mol/m3" {
			return fmt.Sprintf("%.15g %s", a.value*o.factor, o.unit)
		}
	}
	return fmt.Sprintf("%.15g %s", a.value, a.unit)
}

func (w writing) text(v any) string {
	switch v := v.(type) {
	case amount:
		return w.amount(v)
	case *table:
		return w.table(v)
	case []any:
		var out []string
		for _, x := range v {
			out = append(out, w.text(x))
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	return fmt.Sprint(v)
}

func (w writing) table(t *table) string {
	var out []string
	isAcid := false
	if s, ok := t.get("substance").(string); ok {
		isAcid = strings.HasSuffix(s, "acid")
	}
	for _, e := range t.entries {
		v := e.value
		if a, ok := v.(amount); ok && isAcid && e.key == "volume" {
			a.value *= w.acid
			v = a
		}
		out = append(out, e.key+": "+w.text(v))
	}
	return "{" + strings.Join(out, ", ") + "}"
}

// recipe is a whole route.
type recipe struct {
	powder   *table
	measured *table
	places   *table
	steps    []*table
}

func (r *recipe) yaml(w writing) string {
	var b strings.Builder
	b.WriteString(head)
	if r.powder != nil {
		mass := r.powder.get("mass").(amount)
		was := mass
		mass.value *= w.powder
		r.powder.set("mass", mass)
		fmt.Fprintf(&b, "precursor: %s\n", w.table(r.powder))
		r.powder.set("mass", was)
	}
	fmt.Fprintf(&b, "places:\n")
	for _, e := range r.places.entries {
		fmt.Fprintf(&b, "  %s: %s\n", e.key, w.text(e.value))
	}
	fmt.Fprintf(&b, "steps:\n")
	for _, s := range r.steps {
		fmt.Fprintf(&b, "  - %s\n", w.table(s))
	}
	if r.measured != nil && len(r.measured.entries) > 0 {
		fmt.Fprintf(&b, "measured: %s\n", w.table(r.measured))
	}
	return b.String()
}

func (t *table) set(key string, v any) {
	for i := range t.entries {
		if t.entries[i].key == key {
			t.entries[i].value = v
		}
	}
}

// drawing makes recipes.
type drawing struct {
	t     *rapid.T
	mild  bool // nothing stated is worse than what is assumed where it is not
	plain bool // no organics and no oxidants: charges can be counted from the elements
	calm  bool // nothing whose gas is not known
	bath  bool // no liquid is parted: what stays behind would grow with the powder
	in    bool // the powder went in
	r     *recipe
	keys  []string
}

func (d *drawing) num(name string, lo, hi float64) float64 {
	v := rapid.Float64Range(lo, hi).Draw(d.t, name)
	return float64(int(v*1000)) / 1000
}

func (d *drawing) coin(name string) bool { return rapid.Bool().Draw(d.t, name) }
func (d *drawing) one(name string, from ...string) string {
	return rapid.SampledFrom(from).Draw(d.t, name)
}

var (
	known   = []string{"Ti3AlC2", "Ti2AlC", "V2AlC", "Nb2AlC", "Ti3SiC2", "Mo2Ga2C", "Mo2TiAlC2", "Ti3AlCN", "Ti2AlN"}
	strange = []string{"V2AsC", "Ti2SC", "Ti2CdC", "Nb2InC", "Zr2AlC", "Ti3Al0.8Sn0.2C2", "Zr3Al3C5", "Nb2SnC"}
)

func (d *drawing) recipe() *recipe {
	d.r = &recipe{places: &table{}, measured: &table{}}
	d.drawPlaces()
	if d.calm || d.coin("has powder") {
		d.drawPowder()
	}
	bath := d.step("charge", "pot")
	bath.put("what", d.liquids("bath"))
	d.warm(bath)
	for i := range rapid.IntRange(0, 7).Draw(d.t, "steps") {
		d.drawStep(i)
	}
	if d.calm {
		d.add("pot")
	}
	return d.r
}

func (d *drawing) drawPowder() {
	p := &table{}
	phases := known
	if !d.calm {
		phases = append(slices.Clone(known), strange...)
	}
	p.put("phase", d.one("phase", phases...))
	p.put("mass", amount{d.num("powder", 0.2, 20), "g"})
	least := 80.0
	if d.mild {
		least = 95
	}
	switch {
	case d.coin("purity"):
		p.put("purity", amount{d.num("pure", least, 100), "wt%"})
	case d.coin("none"):
		p.put("impurities", "none (certificate)")
	case d.coin("listed"):
		d.drawImpurities(p)
	}
	if d.coin("size") {
		p.put("particle_size", "38 um")
	}
	d.r.powder = p
	if phase := p.get("phase"); d.coin("measured") && phase == "Ti3AlC2" {
		d.r.measured.put("etch_heat", "760 (740 to 780) kJ/mol")
		if d.coin("hydrogen measured") {
			d.r.measured.put("hydrogen", "3.0 (2.9 to 3.1) mol/mol")
		}
		if d.coin("conversion measured") {
			d.r.measured.put("conversion", amount{d.num("conversion", 96, 100), "%"})
		}
	}
}

func (d *drawing) drawImpurities(p *table) {
	most, sorts := 3.0, []string{"Al", "TiAl3", "TiC", "Al2O3"}
	if !d.mild {
		most = 9
		if !d.plain {
			sorts = append(sorts, "Fe", "GaAs", "Al4C3", "CrSi2")
		}
	}
	var list []any
	for _, f := range rapid.SliceOfNDistinct(rapid.SampledFrom(sorts), 1, 2, rapid.ID[string]).Draw(d.t, "impurities") {
		im := &table{}
		im.put("formula", f)
		im.put("share", amount{d.num("share", 0.1, most/2), "wt%"})
		list = append(list, im)
	}
	p.put("impurities", list)
}

func (d *drawing) drawPlaces() {
	for _, key := range []string{"pot", "tube", "drum"} {
		p := &table{}
		p.put("kind", d.one("kind", "vessel", "bottle", "tube", "drum"))
		if d.coin("material") {
			p.put("material", "HDPE")
		}
		if d.coin("capacity") {
			p.put("capacity", amount{d.num("capacity", 5, 5000), "mL"})
		}
		if d.coin("count") {
			p.put("count", fmt.Sprint(rapid.IntRange(1, 4).Draw(d.t, "count")))
		}
		if d.coin("closure") {
			p.put("closure", d.one("closure", "open", "vented", "closed"))
		}
		if d.coin("rated") {
			r := d.num("rating", 50, 5000)
			p.put("rating", amount{r, "kPa"})
			p.put("relief", amount{r * 0.8, "kPa"})
		}
		if p.get("closure") != "closed" && d.coin("vent") {
			p.put("vent", "3 mm")
		}
		if d.coin("cooling") {
			c := &table{}
			c.put("kind", "water_bath")
			c.put("temperature", "0 degC") // as cold as any step is set
			p.put("cooling", c)
		}
		d.r.places.put(key, p)
		d.keys = append(d.keys, key)
	}
}

func (d *drawing) step(do, in string) *table {
	s := &table{}
	s.put("do", do)
	s.put("in", in)
	d.r.steps = append(d.r.steps, s)
	return s
}

func (d *drawing) warm(s *table) { s.put("temperature", amount{d.num("degC", 0, 60), "degC"}) }

func (d *drawing) add(in string) {
	if d.r.powder == nil || d.in {
		return
	}
	d.in = true
	s := d.step("add", in)
	s.put("what", []any{"precursor"})
	s.put("over", amount{d.num("over", 1, 60), "min"})
	d.warm(s)
}

// agent is something that neutralises, and how much of it.
func (d *drawing) agent() *table {
	m := &table{}
	m.put("substance", d.one("agent", "calcium hydroxide", "calcium carbonate", "sodium hydrogencarbonate"))
	m.put("mass", amount{d.num("agent", 0.1, 500), "g"})
	return m
}

// melt gives a step its salt and its temperature.
func (d *drawing) melt(s *table) {
	m := &table{}
	m.put("substance", d.one("salt", "zinc chloride", "copper(II) chloride"))
	m.put("mass", amount{d.num("salt", 1, 50), "g"})
	s.put("what", []any{m})
	s.put("temperature", "550 degC")
}

func (d *drawing) drawStep(i int) {
	in := d.one("in", d.keys...)
	into := d.one("into", slices.DeleteFunc(slices.Clone(d.keys), func(k string) bool { return k == in })...)
	switch do := d.one("do", d.verbs()...); do {
	case "powder":
		d.add(d.one("where", d.keys...))
	case "add":
		s := d.step(do, in)
		s.put("what", d.liquids("added"))
		s.put("over", amount{d.num("over", 1, 60), "min"})
		d.warm(s)
	case "pour":
		d.drawPour(in, into)
	case "mix", "dilute", "quench", "redisperse", "intercalate":
		s := d.step(do, in)
		s.put("what", d.liquids("mixed"))
		d.warm(s)
	case "wash", "exchange":
		d.drawWash(do, in, into)
	case "prewash":
		s := d.step(do, in)
		s.put("into", into)
		s.put("what", d.liquids("prewash"))
	case "decant", "filter", "centrifuge":
		s := d.step(do, in)
		s.put("into", into)
		d.retained(s)
	case "transfer", "collect", "sample":
		s := d.step(do, in)
		s.put("into", into)
		if do == "sample" || d.coin("part") {
			s.put("part", amount{d.num("part", 1, 60), "%"})
		}
	case "neutralise":
		d.step(do, in).put("what", []any{d.agent()})
	case "electrolyse":
		if d.plain || d.calm {
			return // the gas goes by the charge, and what the anode gives is not in the account
		}
		s := d.step(do, in)
		s.put("time", amount{d.num("time", 1, 600), "min"})
		s.put("current", "1 A")
		d.warm(s)
	case "melt":
		if !d.calm {
			d.melt(d.step(do, in))
		}
	default:
		s := d.step(do, in)
		if slices.Contains([]string{"hold", "heat_closed", "store", "electrolyse", "sinter", "mill"}, do) {
			s.put("time", amount{d.num("time", 60, 600), "min"}) // no shorter than an addition
		}
		d.warm(s)
	}
}

// verbs are those that a step is drawn of.
func (d *drawing) verbs() []string {
	if d.bath {
		return []string{"powder", "add", "mix", "hold", "heat", "cool", "dilute", "quench", "store", "sonicate"}
	}
	return []string{"powder", "add", "mix", "hold", "heat", "cool", "dilute", "quench", "pour", "wash", "exchange",
		"prewash", "decant", "filter", "centrifuge", "transfer", "collect", "sample", "store", "neutralise", "redisperse",
		"sonicate", "intercalate", "dry", "freeze_dry", "freeze", "heat_closed", "electrolyse", "melt",
		"sinter", "mill", "sieve"}
}

func (d *drawing) drawPour(in, into string) {
	s := d.step("quench", in)
	s.put("into", into)
	s.put("over", amount{d.num("over", 1, 60), "min"})
	s.put("time", amount{d.num("time", 60, 600), "min"})
	d.warm(s)
}

func (d *drawing) drawWash(do, in, into string) {
	s := d.step(do, in)
	s.put("into", into)
	what := d.liquids("wash")
	if d.coin("water only") {
		what = []any{d.water()}
	}
	s.put("what", what)
	d.retained(s)
	if d.coin("cycles") {
		s.put("cycles", fmt.Sprint(rapid.IntRange(1, 12).Draw(d.t, "cycles")))
	}
	if do == "wash" && d.coin("target") {
		s.put("target_ph", fmt.Sprint(rapid.IntRange(2, 8).Draw(d.t, "ph")))
		if d.coin("co2") {
			s.put("water", "co2_free")
		}
	}
}

func (d *drawing) retained(s *table) {
	if !d.coin("retained") {
		return
	}
	if d.mild {
		s.put("retained", amount{d.num("kept", 2, 5), "mL/g"})
		return
	}
	s.put("retained", rapid.SampledFrom([]amount{{4, "mL"}, {5, "mL/g"}, {10, "%"}, {35, "%"}}).Draw(d.t, "kept"))
}

func (d *drawing) water() *table {
	m := &table{}
	m.put("substance", "water")
	m.put("volume", amount{d.num("water", 1, 500), "mL"})
	return m
}

func (d *drawing) liquids(name string) []any {
	out := []any{}
	sorts := []string{"hf", "hcl", "h2so4", "water", "salt", "salt"}
	if !d.plain && !d.calm {
		sorts = append(sorts, "base", "peroxide", "solvent", "lye", "nitric")
	}
	for range rapid.IntRange(1, 3).Draw(d.t, name) {
		m := &table{}
		liquid := func(substance string, lo, hi float64, unit string) {
			m.put("substance", substance)
			m.put("strength", amount{d.num("strength", lo, hi), unit})
			m.put("volume", amount{d.num("volume", 1, 200), "mL"})
		}
		switch d.one("sort", sorts...) {
		case "hf":
			liquid("hydrofluoric acid", 1, 60, "wt%")
		case "hcl":
			liquid("hydrochloric acid", 0.5, 11, "mol/L")
		case "h2so4":
			liquid("sulfuric acid", 2, 60, "wt%")
		case "nitric":
			liquid("nitric acid", 2, 60, "wt%")
		case "base":
			liquid("TMAOH", 2, 25, "wt%")
		case "peroxide":
			liquid("hydrogen peroxide", 3, 30, "wt%")
		case "lye":
			liquid("sodium hydroxide", 0.2, 8, "mol/L")
		case "solvent":
			m.put("substance", d.one("solvent", "ethanol", "DMSO"))
			m.put("volume", amount{d.num("volume", 1, 200), "mL"})
		case "salt":
			m.put("substance", d.one("salt", "lithium fluoride", "sodium fluoride", "potassium fluoride", "ammonium fluoride",
				"ammonium bifluoride", "lithium chloride"))
			m.put("mass", amount{d.num("salt", 0.1, 20), "g"})
		default:
			m = d.water()
		}
		out = append(out, m)
	}
	if !slices.ContainsFunc(out, func(x any) bool { return x.(*table).get("volume") != nil }) {
		out = append(out, d.water()) // a salt needs something to go into
	}
	return out
}
