package hazards_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/hazards/spread"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// The lines of an open surface say what the law of the package that was held
// against worked cases says: 10 wt% HF in an open beaker of 1 L, at the pressure
// the review itself has.
func TestEmissionIsTheLawOfEvaporation(t *testing.T) {
	rv := review(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: beaker, "+
		"material: PTFE, capacity: 1 L, closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 200 mL}], "+
		"temperature: 25 degC}\n"+
		"  - {do: hold, in: pot, time: 1 h, temperature: 25 degC}\n")
	ppm := figureOf(&rv, "air.saturated@2/hf").Value.V
	wide := math.Cbrt(4 * 1e-3 / math.Pi) // m, as high as it is wide
	area := math.Pi / 4 * wide * wide
	l := spread.Leaving{Area: area, Velocity: 0.5, Molar: 20.0064, Pressure: ppm * 0.101325, Kelvin: 298.15,
		Diffuses: 2.3e-5, Board: wide - 200e-6/area}
	p := l.Pressure // the lines let what leaves carry more with it at any pressure
	l.Pressure = -spread.Atmosphere * math.Log(1-p/spread.Atmosphere)
	want := l.Most() * l.Molar * 60e3
	if got := figureOf(&rv, "air.emission@2/hf").Value.V; !nearly.Share(got, want, 1e-3) {
		t.Errorf("%g mg/min, the law says %g", got, want)
	}
}

// At the temperature the hood stands, the air that the vapour asks for is that of
// the hood, or a scrubber is asked for: the same acid written at that temperature.
func TestTheHoodIsExceededWhereItSays(t *testing.T) {
	long.Only(t)
	for _, strength := range []string{"49 wt%", "40 wt%"} {
		yaml := strings.Replace(strings.Replace(inIce("100 g", "2 L", "200 W/K"), "10 wt%", strength, 1), "closure: vented",
			"capacity: 3 L, closure: open", 1)
		site := *demoSite(t)
		hood := *site.Hood
		hood.Flow = quantity.Of(300, "m3/h")
		site.Hood = &hood
		c := newCase(t, load(t, yaml))
		c.Site = &site
		rv := must(t, c)
		f := figureOf(&rv, "air.hood_limit@2")
		if f == nil || !(f.Value.V > 2 && f.Value.V < 60) {
			t.Fatalf("%s: %+v, want a temperature between the step and the end of the data", strength, f)
		}
		c.Route = load(t, strings.ReplaceAll(yaml, "temperature: 2 degC", fmt.Sprintf("temperature: %.6f degC", f.Value.V)))
		hot := must(t, c)
		air, left := figureOf(&hot, "air.exhaust_required@2/hf").Value.V, figureOf(&hot, "air.emission@2/hf").Value.V
		if share := math.Max(air/300, left/250); !nearly.To(share, 1, 2e-3) {
			t.Errorf("%s at %g degC: %g m3/h and %g mg/min, want 300 or 250", strength, f.Value.V, air, left)
		}
		if v := verdicts(&rv)["heat.mtsr@2+hood_limit"]; v != exceeds {
			t.Errorf("%s: what the hood stands of it is %v", strength, v)
		}
	}
	rv := review(t, inIce("10 g", "200 mL", "2 W/K")) // no site
	if f := figureOf(&rv, "air.hood_limit@2"); f == nil || !f.Value.Unknown() {
		t.Errorf("without a site %+v, want unknown", f)
	}
}

// airRoutes give every figure of the air: a carbonate in acid, a purge, bottles.
var airRoutes = []check{{name: "carbonate and a purge", yaml: "route: etchbound/1\ntitle: check\nbasis: " +
	"{status: invented}\nplaces:\n" +
	"  pot: {kind: beaker, material: PTFE, capacity: 1 L, closure: open}\nsteps:\n" +
	"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 49 wt%, volume: 100 mL}, " +
	"{substance: hydrochloric acid, strength: 1 mol/L, volume: 200 mL}], temperature: 20 degC}\n" +
	"  - {do: hold, in: pot, time: 60 min, temperature: 20 degC, gas: argon, gas_flow: 35 L/min}\n" +
	"  - {do: neutralise, in: pot, what: [{substance: sodium hydrogencarbonate, mass: 8.4006 g}], over: 5 min, " +
	"temperature: 20 degC}\n"}}

func airReview(t *testing.T) hazards.Review {
	t.Helper()
	return airReviewIn(t, func(*route.Hood) {})
}

// airReviewIn is airReview in a site whose hood is told of otherwise.
func airReviewIn(t *testing.T, tell func(*route.Hood)) hazards.Review {
	t.Helper()
	site := *demoSite(t)
	hood := *site.Hood
	tell(&hood)
	site.Hood = &hood
	site.Cylinder = quantity.Of(0, "m3") // what flows is all there is
	site.RoomVolume, site.RoomFlow = quantity.Of(30, "m3"), quantity.Of(180, "m3/h")
	site.Stock = []route.Stock{{Substance: mustFind(t, "hydrofluoric acid"), Strength: quantity.Of(49, "wt%"),
		Volume: quantity.Of(5, "L"), Bottle: quantity.Of(1, "L")}}
	c := newCase(t, load(t, airRoutes[0].yaml))
	c.Site = &site
	return must(t, c)
}

func mustFind(t *testing.T, name string) *chemicals.Substance {
	t.Helper()
	s, ok := chemicals.Library().Find(name)
	if !ok {
		t.Fatal(name)
	}
	return s
}

// 2.1 m3 of inert gas in a room of 30 m3 leave 20.9 exp(-0.07) = 19.5 vol% of
// oxygen (common practice: dilution as it mixes). A tenth of a mol of carbon
// dioxide, 2.447 L, in a layer of 0.3 m of a room 2.7 m high, 3.33 m3, is 734 ppm, of which
// a hundredth gets past the hood. It comes in 5 min, in which 180 m3/h, three tenths of it as
// it mixes, change 0.15 of the air of the room and of the layer: 1 - exp(-0.15) for 0.15.
func TestGasesInTheRoom(t *testing.T) {
	long.NotShort(t)
	rv := airReview(t)
	for id, want := range map[string]float64{"air.oxygen@room": 20.9 * math.Exp(-(2.1+0.1*24.4654e-3)/30),
		// a hood of 0.1 %, which may let out ten times that
		"air.floor@room/carbon_dioxide": 7.3396 / 0.15 * (1 - math.Exp(-0.15)),
		"air.oxygen@hood":               20.9 * 800 / (800 + 35*0.06)} {
		if f := figureOf(&rv, id); f == nil || !nearly.Share(f.Value.V, want, 1e-4) {
			t.Errorf("%s: %+v, want %g", id, f, want)
		}
	}
	if f := figureOf(&rv, "air.oxygen@room"); !nearly.To(f.Value.V, 19.5, 0.05) {
		t.Errorf("%g vol%% of oxygen left, want 19.5", f.Value.V)
	}
}

// A hood that is rated and tested takes carbon dioxide before it lies on the floor, at
// worst a hundred times what it is rated for gets past; one without a date takes none.
func TestATestedHoodTakesCarbonDioxide(t *testing.T) {
	long.NotShort(t)
	floor := func(date string) (value, high float64) {
		rv := airReviewIn(t, func(h *route.Hood) {
			h.TestDate, h.FaceVelocity, h.Containment = date, quantity.Of(0.5, "m/s"), quantity.Of(0.001, "1")
		})
		f := figureOf(&rv, "air.floor@room/carbon_dioxide")
		return f.Value.V, f.High().V
	}
	all, _ := floor("")
	some, most := floor("2026-05-04")
	if !(some < 0.2*all) || !(some > 0) || !(most <= all*1.0001) || !(most > some) {
		t.Errorf("%g ppm on the floor, past a hood %g, at most %g", all, some, most)
	}
}

// The exchange of a room counts where it is stated, and the gas that comes at once meets
// none of it (mass balance: what is not stated is not there).
func TestTheRoomChangesTheAirOnTheFloor(t *testing.T) {
	const bare = 1e6 * 0.1 * 24.4654e-3 / (30 * 0.3 / 2.7) // ppm, less than half a thousandth of it for what it displaces
	for name, c := range map[string]struct {
		over string
		flow quantity.Value
		want float64
	}{
		"no exchange stated": {"over: 5 min, ", quantity.Value{}, bare},
		"all at once":        {"", quantity.Of(180, "m3/h"), bare},
		"in an hour":         {"over: 1 h, ", quantity.Of(180, "m3/h"), bare / 1.8 * (1 - math.Exp(-1.8))},
	} {
		site := *demoSite(t)
		site.Hood, site.RoomVolume, site.RoomFlow = nil, quantity.Of(30, "m3"), c.flow
		k := newCase(t, load(t, strings.Replace(airRoutes[0].yaml, "over: 5 min, ", c.over, 1)))
		k.Site = &site
		f := byID(hazards.Assess(k, nil).Figures)["air.floor@room/carbon_dioxide"]
		if f == nil || !nearly.Share(f.Value.V, c.want, 1e-3) {
			t.Errorf("%s: %+v, want %g ppm", name, f, c.want)
		}
	}
}

// A bottle that breaks on its way is a pool as deep as a spill, and a plume out
// of doors is that of the package that was held against worked cases.
func TestABottleBreaksOnItsWay(t *testing.T) {
	long.NotShort(t)
	rv := airReview(t)
	ppm := 0.0
	for _, f := range rv.Figures {
		if f.ID.String() == "air.room_peak@delivery/hf" {
			ppm = f.Value.V
		}
	}
	area := 1e-3 / 2e-3
	l := spread.Leaving{Area: area, Velocity: 0.1, Molar: 20.0064, Kelvin: 298.15, Diffuses: 2.3e-5, Pressure: 2270}
	l.Pressure = pressure49(t)
	l.Pressure = -spread.Atmosphere * math.Log(1-l.Pressure/spread.Atmosphere)
	room := spread.Room{Volume: 30, Flow: 180.0 / 3600 * 0.3}
	if want := 1e6 * room.End(l.Most()*24.4654e-3); !nearly.Share(ppm, want, 2e-3) {
		t.Errorf("%g ppm in the room, the law says %g", ppm, want)
	}
	l.Velocity = 1.5
	want := 1e6 * spread.Sky{Stable: true}.Plume(l.Most()*24.4654e-3, 1.5, 0, 100)
	if f := figureOf(&rv, "air.plume@yard/hf"); f == nil || !nearly.Share(f.Value.V, want, 2e-3) {
		t.Errorf("%+v out of doors, the formulas say %g ppm", f, want)
	}
}

// pressure49 is the pressure of HF over 49 wt% acid at 25 degC, Pa, as the review
// of that acid has it.
func pressure49(t *testing.T) float64 {
	rv := review(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: beaker, "+
		"closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 49 wt%, volume: 1 L}], "+
		"temperature: 25 degC}\n")
	return figureOf(&rv, "air.saturated@1/hf").Value.V * 0.101325
}

// A limit of the house that is averaged over 15 min allows three times as much
// for 5 min; one without an averaging time allows no more.
func TestALocalLimitIsAveraged(t *testing.T) {
	long.NotShort(t)
	yaml := "limits: etchbound/1\ntitle: House\nentries:\n" +
		"  - {id: mean, quantity: air.breathing_zone, agent: hydrogen fluoride, value: 0.5 ppm, average: 15 min, " +
		"document: House rules}\n" +
		"  - {id: top, quantity: air.breathing_zone, agent: hydrogen fluoride, value: 0.5 ppm, document: House rules}\n"
	set, problems, err := limit.Load("house.yaml", strings.NewReader(yaml), figure.Units{})
	if err != nil || set == nil {
		t.Fatal(problems, err)
	}
	c := newCase(t, load(t, strings.Replace(airRoutes[0].yaml, "time: 60 min", "time: 5 min", 1)))
	c.Site, c.Limits = demoSite(t), limit.Base().With(set)
	rv := must(t, c)
	got := map[string]float64{}
	for _, f := range rv.Findings {
		if f.Figure.String() == "air.breathing_zone@2/hf" {
			got[f.Limit.ID] = f.Limit.Value
		}
	}
	if got["mean"] != 1.5 || got["top"] != 0.5 {
		t.Errorf("limits of %v ppm, want 1.5 and 0.5", got)
	}
}

// A person near a source is at a limit when the two zones say so, and never
// sooner than with the room left out.
func TestHowSoonTheNearFieldIsAtALimit(t *testing.T) {
	c := newCase(t, load(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: "+
		"beaker, material: PTFE, capacity: 250 mL, closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 49 wt%, volume: 100 mL}], "+
		"temperature: 25 degC}\n"+
		"  - {do: hold, in: pot, time: 60 min, temperature: 25 degC}\n"))
	site := *demoSite(t)
	site.Hood, site.RoomVolume, site.RoomFlow, site.Stock = nil, quantity.Of(30, "m3"), quantity.Of(180, "m3/h"), nil
	c.Site = &site
	rv := must(t, c)
	f, end := figureOf(&rv, "air.time_to_short_limit@2/hf"), figureOf(&rv, "air.breathing_zone@2/hf").Value.V
	room := spread.Room{Volume: 30, Flow: 180.0 / 3600 * 0.3}
	gas := end * 1e-6 / (1/room.Flow + 60/5.0)
	const limit = 2e-6 // the ceiling of the TLV; the limit of the EU over 15 min is 3
	if !(end >= 2) {
		t.Fatalf("the source comes to %g ppm alone", end)
	}
	close, _ := room.TwoZones(gas, 5.0/60, 0.262, 60*f.Value.V)
	if !nearly.Share(close, limit, 1e-3) {
		t.Errorf("%g ppm after %g min, want %g", 1e6*close, f.Value.V, 1e6*limit)
	}
}

// placeTake takes one fact of a place out of a route.
type placeTake struct {
	what string
	take func(*route.Place)
}

// placeTakes are the facts that a place can leave unsaid: its quantities, those of
// its cooling, its material and its closure. A line, a bubbler and the heat of a
// stirrer are things that are there: a stated fault is no omission.
func placeTakes(place *route.Place) []placeTake {
	there := map[string]bool{"VentLine": true, "Bubbler": true, "StirrerHeat": true}
	var out []placeTake
	empty := func(what string, in func(*route.Place) reflect.Value) {
		v := in(place)
		for f := range v.NumField() {
			field := v.Type().Field(f).Name
			if q, ok := v.Field(f).Interface().(quantity.Value); ok && q.Set && !there[field] {
				gone := reflect.ValueOf(quantity.Value{At: q.At})
				out = append(out, placeTake{what + field, func(p *route.Place) { in(p).Field(f).Set(gone) }})
			}
		}
	}
	empty("", func(p *route.Place) reflect.Value { return reflect.ValueOf(p).Elem() })
	if place.Cooling != nil {
		empty("cooling ", func(p *route.Place) reflect.Value { return reflect.ValueOf(p.Cooling).Elem() })
		out = append(out, placeTake{"cooling", func(p *route.Place) { p.Cooling = nil }})
	}
	return append(out, placeTake{"material", func(p *route.Place) { p.Material = "" }},
		placeTake{"closure", func(p *route.Place) { p.Closure, p.ClosureStated = route.Closed, false }})
}

// A place of which less is said never makes a verdict better. A quarter of the
// facts of every route is taken out, another quarter in the next.
func TestAPlaceOfWhichLessIsSaidNeverHelps(t *testing.T) {
	long.Only(t)
	type try struct {
		name  string
		place int
		placeTake
	}
	routes := bundled(t)
	var tries []try
	for turn, name := range sorted(routes) {
		for i := range routes[name].Places {
			for _, x := range placeTakes(&routes[name].Places[i]) {
				if turn++; turn%4 == 0 { // every fourth, whose turn it is by place and route
					tries = append(tries, try{name, i, x})
				}
			}
		}
	}
	wholes := map[string]*hazards.Review{}
	for _, x := range tries {
		held, ok := wholes[x.name]
		if !ok {
			held = heldReview(t, x.name, routes[x.name])
			wholes[x.name] = held
		}
		less := *routes[x.name]
		less.Places = slices.Clone(less.Places)
		p := &less.Places[x.place]
		if p.Cooling != nil {
			cooling := *p.Cooling
			p.Cooling = &cooling
		}
		x.take(p)
		c := held.Case
		c.Route = &less
		rv := must(t, c)
		notBetter(t, held, &rv, x.name+" without "+x.what+" of "+p.Key)
	}
}

// heldReview is the brief review of a route on the site of the examples, with the
// findings that are held against others. A step at the edge of a runaway is not:
// what is cooled less runs away sooner, with less of the powder waiting, and so may
// give its gas more gently.
func heldReview(t *testing.T, name string, r *route.Route) *hazards.Review {
	t.Helper()
	c := newCase(t, r)
	c.Brief, c.Site = true, demoSite(t)
	full := must(t, c)
	wild, all := runAway(&full), len(full.Findings)
	full.Findings = slices.DeleteFunc(slices.Clone(full.Findings), func(f figure.Finding) bool {
		course := strings.HasPrefix(f.Figure.Quantity, "heat.") || strings.HasPrefix(f.Figure.Quantity, "gas.")
		return course && slices.Contains(wild, f.Figure.Place.String())
	})
	if len(full.Findings) < all/3 {
		t.Errorf("%s: %d of %d findings are held", name, len(full.Findings), all)
	}
	return &full
}

// runAway are the steps that boil at one end of what is known and do not at its
// centre.
func runAway(rv *hazards.Review) []string {
	var out []string
	for _, f := range rv.Findings {
		if f.Limit.ID == "boiling_as_run" && f.Verdict.Rank() == figure.Exceeds.Rank() &&
			figureOf(rv, f.Figure.String()).Value.V < f.Limit.Value {
			place, _, _ := strings.Cut(strings.TrimPrefix(f.Figure.String(), "heat.temperature_peak@"), ":")
			out = append(out, place)
		}
	}
	return out
}

// A bottle is as large as the stock says. What the route takes is less than the
// bottle it comes in: where no stock as strong is stated, the bottle is unknown.
func TestABottleThatIsNotInStockIsUnknown(t *testing.T) {
	long.NotShort(t)
	acid := mustFind(t, "hydrofluoric acid")
	stock := func(percent, litres float64) []route.Stock {
		return []route.Stock{{Substance: acid, Strength: quantity.Of(percent, "wt%"), Volume: quantity.Of(litres, "L")}}
	}
	for _, x := range []struct {
		name  string
		stock []route.Stock
		known bool
	}{
		{"stock of the acid", stock(49, 1), true},
		{"stronger stock", stock(60, 1), true},
		{"little stock", stock(49, 0.01), true}, // then what the route takes is the larger
		{"weaker stock", stock(10, 1), false},
		{"no stock", nil, false},
	} {
		c := newCase(t, load(t, airRoutes[0].yaml))
		c.Brief, c.Site = true, demoSite(t)
		c.Site.Stock = x.stock
		rv := must(t, c)
		for _, id := range []string{"air.room_peak@delivery/hf", "air.spill_area@delivery/hf", "air.plume@yard/hf"} {
			if f := figureOf(&rv, id); f == nil || f.Value.Unknown() == x.known {
				t.Errorf("%s: %s is %+v", x.name, id, f)
			}
		}
	}
}

// A mmol/min of hydrogen, 0.0244654 L/min, takes 2.42 L/min of air to come to
// 1 vol%: 99 times its own volume (by hand).
func TestAirForHydrogen(t *testing.T) {
	long.NotShort(t)
	rv := review(t, inIce("10 g", "200 mL", "2 W/K"))
	air, gas := figureOf(&rv, "gas.hydrogen.dilution_air@2:early_peak"),
		figureOf(&rv, "gas.hydrogen.peak_rate.during_addition@2:early_peak")
	if air == nil || gas == nil {
		t.Fatal(air, gas)
	}
	mmol := gas.Value.V / 0.0244654
	if got := air.Value.V / 0.06 / mmol; !nearly.To(got, 2.42, 0.005) {
		t.Errorf("%g L/min of air a mmol/min, want 2.42", got)
	}
}
