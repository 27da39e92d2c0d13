package chart

import (
	"encoding/xml"
	"strings"

	"etchbound/reports/plain"
)

// Greys of the picture. Letters and curves stand at least 7 to 1 against white.
const (
	ink  = "#000"
	soft = "#555"
	hair = "#d4d4d4"
)

// dashes and shapes tell curves apart. Their numbers have no common factor, so
// that the pair repeats late.
var (
	dashes = [...]string{"", "9 4", "2.5 3", "11 3 2.5 3", "18 4", "6 3 2 3 2 3"}
	tints  = [...]string{ink, soft}
	shapes = [...]string{
		"M-3.8 0a3.8 3.8 0 1 0 7.6 0a3.8 3.8 0 1 0-7.6 0z",
		"M-3.6-3.6H3.6V3.6H-3.6z",
		"M0-4.6L4.6 3.6H-4.6z",
		"M0-5L5 0L0 5L-5 0z",
		"M-4.6-3.6H4.6L0 4.6z",
		"M-1.4-4.4H1.4V-1.4H4.4V1.4H1.4V4.4H-1.4V1.4H-4.4V-1.4H-1.4z",
		"M-2.2-4.4H2.2V4.4H-2.2z",
	}
)

func dashOf(curve int) string  { return dashes[curve%len(dashes)] }
func tintOf(curve int) string  { return tints[curve%len(tints)] }
func shapeOf(curve int) string { return shapes[curve%len(shapes)] }

// fillOf makes every second marker hollow.
func fillOf(curve int) string {
	if curve%2 == 1 {
		return "#fff"
	}
	return ink
}

// escaped is text as XML holds it in elements and in attributes.
func escaped(s string) string {
	var b strings.Builder
	// A strings.Builder refuses nothing.
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}

// idOf is an id that begins with chart- and differs for different inputs.
func idOf(id, part string) string { return "chart-" + plain.ID(id) + "-" + part }

// path joins points by straight lines.
func path(points []point) string {
	var b strings.Builder
	for i, p := range points {
		if i == 0 {
			b.WriteByte('M')
		} else {
			b.WriteByte('L')
		}
		b.WriteString(coordinate(p.x) + " " + coordinate(p.y))
	}
	return b.String()
}

// stroke is a line that is not filled.
func stroke(b *strings.Builder, points []point, colour, thick, dash string) {
	b.WriteString(`<path d="` + path(points) + `" fill="none" stroke="` + colour + `" stroke-width="` + thick +
		`" stroke-linejoin="round"`)
	if dash != "" {
		b.WriteString(` stroke-dasharray="` + dash + `"`)
	}
	b.WriteString("/>\n")
}

// write sets a text. The anchor is start, middle or end.
func write(b *strings.Builder, s string, at point, anchor string) {
	if s == "" {
		return
	}
	b.WriteString(`<text x="` + coordinate(at.x) + `" y="` + coordinate(at.y) + `" font-size="13" text-anchor="` +
		anchor + `">` + escaped(s) + "</text>\n")
}

// stamp sets the marker of a curve.
func stamp(b *strings.Builder, curve int, at point) {
	b.WriteString(`<path d="` + shapeOf(curve) + `" transform="translate(` + coordinate(at.x) + " " + coordinate(at.y) +
		`)" fill="` + fillOf(curve) + `" stroke="#000" stroke-width="1.3"/>` + "\n")
}
