package route

import (
	"strconv"
	"strings"
)

// Told is a path of a route, site or limits file as people say it: "steps[4].temperature"
// is "step 5: temperature", and "places.etch.cooling.ua" is "etch: cooling: ua". Items
// are counted from 1. What follows the path after a space or a colon stays as it is.
func Told(path string) string {
	path, rest := cutPath(path)
	var out []string
	parts := strings.Split(path, ".")
	for i, part := range parts {
		key, place, listed := strings.Cut(part, "[")
		switch {
		case key == "places" && i+1 < len(parts) && !listed:
			continue // its name comes next and is enough
		case i > 0 && parts[i-1] == "places":
			out = append(out, key) // as the writer named it
			continue
		}
		word := strings.ReplaceAll(key, "_", " ")
		if n, err := strconv.Atoi(strings.TrimSuffix(place, "]")); listed && err == nil {
			word = oneOf(key) + " " + strconv.Itoa(n+1)
		}
		out = append(out, word)
	}
	return strings.Join(out, ": ") + rest
}

// cutPath parts a path from what is said of it.
func cutPath(s string) (path, rest string) {
	if i := strings.IndexAny(s, " :"); i >= 0 {
		return s[:i], s[i:]
	}
	return s, ""
}

// oneOf is the word for one item of a list.
func oneOf(key string) string {
	switch key {
	case "what":
		return "material"
	case "impurities":
		return "impurity"
	case "data":
		return "datum"
	case "entries":
		return "entry"
	case "stock":
		return "stock"
	}
	return strings.ReplaceAll(strings.TrimSuffix(key, "s"), "_", " ")
}
