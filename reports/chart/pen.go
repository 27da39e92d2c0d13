package chart

import (
	"encoding/xml"
	"strings"

	"etchbound/reports/plain"
)

// Colours of the picture: those of the page it stands in, which has others on a dark
// ground, and else these, on white. Letters and curves stand at least 4.5 to 1 against it.
const (
	ink   = "var(--ink,#000)"
	soft  = "var(--soft,#555)"
	hair  = "var(--hair,#d4d4d4)"
	paper = "var(--paper,#fff)"
	haze  = "var(--haze,#e6e6e0)"
)

// shades are fills of bars, each of another lightness, so that grey print tells them too.
var shades = [Shades]string{"var(--shade-1,#1d4a73)", "var(--shade-2,#e8c27a)", "var(--shade-3,#3f8f7f)",
	"var(--shade-4,#f4f1e4)", "var(--shade-5,#8a3d2a)", "var(--shade-6,#b9c6d6)"}

// dashes and shapes tell curves apart. Their numbers have no common factor, so
// that the pair repeats late.
var (
	dashes = [...]string{"", "9 4", "2.5 3", "11 3 2.5 3", "18 4", "6 3 2 3 2 3"}
	tints  = [...]string{"var(--curve-1,#1d4a73)", "var(--curve-2,#a34a00)", "var(--curve-3,#00695c)", ink}
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
		return paper
	}
	return tintOf(curve)
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
		`)" fill="` + fillOf(curve) + `" stroke="` + tintOf(curve) + `" stroke-width="1.3"/>` + "\n")
}

// open begins a picture: its name, what it shows in words, and its paper.
func open(b *strings.Builder, id, title, desc string, height float64) {
	name, told := idOf(id, "title"), idOf(id, "desc")
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="` + name + " " + told +
		`" viewBox="0 0 ` + coordinate(pictureWidth) + " " + coordinate(height) +
		`" width="100%" font-family="sans-serif" font-weight="400" font-style="normal" letter-spacing="0" fill="` + ink +
		`">` + "\n")
	b.WriteString(`<title id="` + name + `">` + escaped(title) + "</title>\n")
	b.WriteString(`<desc id="` + told + `">` + escaped(desc) + "</desc>\n")
	b.WriteString(`<rect width="` + coordinate(pictureWidth) + `" height="` + coordinate(height) + `" fill="` + paper +
		`"/>` + "\n")
}
