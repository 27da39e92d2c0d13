package schemas

import (
	"slices"
	"strings"
)

// branches gives the parts of a schema's conditions that hold for one value of
// the key it is named by, such as those for the verb of a step.
func branches(schema map[string]any, naming, value string) []map[string]any {
	rules, _ := schema["allOf"].([]any)
	var list []map[string]any
	for _, r := range rules {
		rule, _ := r.(map[string]any)
		test, _ := rule["if"].(map[string]any)
		props, _ := test["properties"].(map[string]any)
		named, _ := props[naming].(map[string]any)
		side := "else"
		if slices.Contains(append(stringsOf(named["enum"]), stringsOf(named["const"])...), value) {
			side = "then"
		}
		if branch, ok := rule[side].(map[string]any); ok {
			list = append(list, branch)
		}
	}
	return list
}

// needed reports whether a map of the schema, named by value where the schema
// has such a key, has to hold the key.
func needed(schema map[string]any, value, key string) bool {
	return slices.Contains(allNeeded(schema, value), key)
}

// allNeeded are the keys that such a map has to hold; one can stand there twice.
func allNeeded(schema map[string]any, value string) []string {
	out := stringsOf(schema["required"])
	for _, b := range branches(schema, stringOf(schema["named_by"]), value) {
		out = append(out, stringsOf(b["required"])...)
	}
	return out
}

// taken reports whether a map of the schema, named by value, may hold the key.
func taken(schema map[string]any, value, key string) bool {
	return !slices.ContainsFunc(branches(schema, stringOf(schema["named_by"]), value), func(b map[string]any) bool {
		props, _ := b["properties"].(map[string]any)
		return props[key] == false
	})
}

// names are the values of the key by which the maps of the schema are named.
func names(schema map[string]any) []string {
	props, _ := schema["properties"].(map[string]any)
	rule, _ := props[stringOf(schema["named_by"])].(map[string]any)
	return stringsOf(rule["enum"])
}

// takenKeys are the keys that a map named by value may hold.
func takenKeys(schema map[string]any, value string) map[string]any {
	props, _ := schema["properties"].(map[string]any)
	out := make(map[string]any, len(props))
	for key, rule := range props {
		if taken(schema, value, key) {
			out[key] = rule
		}
	}
	return out
}

// mostTakers is how many verbs are listed as taking a key; of more, those that
// need it are.
const mostTakers = 12

// takers says which maps take a key that one of them does not.
func takers(schema map[string]any, key string) string {
	var take, need []string
	for _, name := range names(schema) {
		if taken(schema, name, key) {
			take = append(take, name)
		}
		if needed(schema, name, key) {
			need = append(need, name)
		}
	}
	if len(take) > mostTakers && len(need) > 0 {
		return key + " is for steps such as " + strings.Join(need, ", ")
	}
	return key + " is for steps of " + strings.Join(take, ", ")
}

// article gives a word with its article.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}
