package route

import (
	"strings"

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
	return list
}

func (l *loader) place(key string, n *schemas.Node) Place {
	p := Place{
		Key: key, Kind: n.Str("kind"), Material: n.Str("material"), Capacity: n.Value("capacity"), Count: n.Int("count", 1),
		ClosureStated: n.Has("closure"), Rating: n.Value("rating"), Relief: n.Value("relief"), VentBore: n.Value("vent"), At: n.Path,
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
	l.aboveZero(n, "capacity", "vent")
	if p.Rating.Set && p.Relief.Set && p.Relief.SI > p.Rating.SI {
		l.refuse(n.Get("relief"), "the relief opens at "+p.Relief.Text+", above the rating of "+p.Rating.Text,
			"a relief that opens at or below the rating", "")
	}
	if p.VentBore.Set && n.Str("closure") == "closed" {
		l.refuse(n.Get("vent"), "a closed place with a vent", "closure: vented, or no vent", "say vented if the gas can leave through it")
	}
	p.Cooling = cooling(n.Get("cooling"))
	return p
}

func cooling(n *schemas.Node) *Cooling {
	if !n.Usable(schemas.Map) {
		return nil
	}
	return &Cooling{Kind: n.Str("kind"), Temperature: n.Value("temperature"), UA: n.Value("ua"), Ice: n.Value("ice")}
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
