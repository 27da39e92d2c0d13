package route

import (
	"fmt"
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"

	"etchbound/schemas"
)

func (l *loader) places(n *schemas.Node) []Place {
	if !n.Usable(schemas.Map) {
		return nil
	}
	list := make([]Place, 0, len(n.Keys))
	for _, k := range n.Keys {
		if k.Value.Usable(schemas.Map) {
			list = append(list, l.place(k.Name, k.Value))
		}
	}
	l.scrubbed(n, list)
	return list
}

func (l *loader) place(key string, n *schemas.Node) Place {
	p := Place{
		Key: key, Kind: n.Str("kind"), Material: n.Str("material"), Capacity: n.Value("capacity"), Count: n.Int("count", 1),
		Batches:     n.Int("batches", 0),
		CountStated: n.Has("count"), KeepStated: n.Has("keep"),
		ClosureStated: n.Has("closure"), Rating: n.Value("rating"), Relief: n.Value("relief"), VentBore: n.Value("vent"),
		At:       n.Path,
		VentLine: n.Value("vent_line"), Bubbler: n.Value("bubbler"), Wall: n.Value("wall"),
		Wetted: wetted(n), HeldBefore: texts(n.Get("held_before")),
		Scrubber: n.Str("scrubber"), LidMaterial: n.Str("lid_material"), StirrerHeat: n.Value("stirrer_heat"),
	}
	switch n.Str("closure") {
	case "open":
		p.Closure = Open
	case "vented":
		p.Closure = Vented
	}
	if keep := n.Bool("keep"); keep != nil {
		p.Keep = *keep
	}
	l.aboveZero(n, "capacity", "vent", "vent_line", "bubbler", "wall")
	if p.Rating.Set && p.Relief.Set && p.Relief.SI > p.Rating.SI {
		l.refuse(n.Near("relief"), "the relief opens at "+p.Relief.Text+", above the rating of "+p.Rating.Text,
			"a relief that opens at or below the rating", "")
	}
	l.closed(n)
	p.Cooling = l.cooling(n.Get("cooling"))
	l.thick(n, &p)
	return p
}

// texts are those of a list, or of one text in which they stand behind each other: commas
// within a name have no space behind them.
func texts(n *schemas.Node) []string {
	var out []string
	take := func(text string) {
		for _, x := range strings.Split(strings.ReplaceAll(text, ";", ", "), ", ") {
			if x = strings.TrimSpace(x); x != "" {
				out = append(out, x)
			}
		}
	}
	switch {
	case n.Usable(schemas.Text):
		take(n.Text)
	case n.Usable(schemas.List):
		for _, x := range n.Items {
			if x.Usable(schemas.Text) {
				take(x.Text)
			}
		}
	}
	return out
}

// wetted is what meets a liquor beside the wall and the lid.
func wetted(n *schemas.Node) []Wetted {
	var out []Wetted
	for _, x := range n.List("wetted") {
		if x.Usable(schemas.Map) {
			out = append(out, Wetted{What: x.Str("what"), Material: x.Str("material")})
		}
	}
	return out
}

// scrubbed refuses a scrubber that is none, and one behind a place that stands open.
func (l *loader) scrubbed(n *schemas.Node, list []Place) {
	for i := range list {
		p := &list[i]
		at := n.Get(p.Key).Get("scrubber")
		to := slices.IndexFunc(list, func(x Place) bool { return x.Key == p.Scrubber })
		switch {
		case p.Scrubber == "":
		case to < 0:
			l.refuse(at, "the place "+p.Scrubber+" is not declared", "the key of a place of kind: scrubber",
				"declare it under places, and charge it with its liquor in a step")
		case list[to].Kind != "scrubber" || to == i:
			l.refuse(at, "the gas of "+p.Key+" goes to "+p.Scrubber+", a "+list[to].Kind,
				"the key of a place of kind: scrubber", "")
		case p.Closure == Open && p.ClosureStated:
			l.refuse(at, "the gas of an open place goes to the room and not to "+p.Scrubber,
				"closure: vented, or no scrubber", "")
		}
	}
}

// thick refuses a wall that counts and is thicker than one that is left out can count:
// else leaving it out would do better than stating it.
func (l *loader) thick(n *schemas.Node, p *Place) {
	if !p.Wall.Set || p.Cooling == nil || p.Cooling.Kind == "none" || p.Cooling.UA.Set {
		return
	}
	held := chemicals.Base()
	row, what := datum.ID("wall.thick"), "any vessel"
	if big := held.Num("wall.big").V; p.Capacity.Set && p.Capacity.In("L") <= big {
		row, what = "wall.other", fmt.Sprintf("a vessel of up to %.4g L", big)
	}
	d, _ := held.Row(row)
	if !(p.Wall.In("mm") <= d.High*(1+1e-9)) {
		l.refuse(n.Near("wall"), fmt.Sprintf("a wall of %s is thicker than the %.4g mm that are known here of %s",
			p.Wall.Text, d.High, what),
			fmt.Sprintf("a wall of %.4g mm at most", d.High), "state what the bath takes instead: cooling: ua, in W/K")
	}
}

// closed refuses ways out of a place that is shut.
func (l *loader) closed(n *schemas.Node) {
	if n.Str("closure") != "closed" {
		return
	}
	for _, key := range []string{"vent", "vent_line", "bubbler", "scrubber"} {
		if n.Value(key).Set || key == "scrubber" && n.Str(key) != "" {
			name := strings.ReplaceAll(key, "_", " ")
			l.refuse(n.Near(key), "a closed place with a "+name, "closure: vented, or no "+name, "say vented if the gas "+
				"can leave through it")
		}
	}
}

// known refuses a place that was not declared. Without places at all, that is
// told once, and a place whose key was refused counts as declared.
func (l *loader) known(n *schemas.Node, root *schemas.Node) {
	places := root.Get("places")
	if !n.Usable(schemas.Text) || !places.Usable(schemas.Map) || len(places.Keys) == 0 {
		return
	}
	var keys []string
	for _, k := range places.Keys {
		if k.Name == n.Text || schemas.KeyName(k.Name) == n.Text {
			return
		}
		keys = append(keys, k.Name)
	}
	hint := "declare it under places"
	if near := schemas.Nearest(n.Text, keys); near != "" {
		hint = "did you mean " + near + "?"
	} else if n.Text == "waste" {
		hint = "declare the waste container under places, with a key of its own and kind: drum or bottle"
	}
	l.refuse(n, "the place "+n.Text+" is not declared", "one of "+strings.Join(keys, ", "), hint)
}
