package document

import (
	"html"
	"regexp"
	"strconv"
)

// slot is where the contents or an index of a printed page have the number of a sheet.
var slot = regexp.MustCompile(`(<i class="sheet" data-of="([^"]*)">)[^<]*(</i>)`)

// Numbered is a page of HTML with the sheet of each section in its printed contents. A
// section of which no sheet is known keeps an empty place.
func Numbered(page []byte, sheet map[string]int) []byte {
	return slot.ReplaceAllFunc(page, func(found []byte) []byte {
		m := slot.FindSubmatch(found)
		number := ""
		if n := sheet[html.UnescapeString(string(m[2]))]; n > 0 {
			number = strconv.Itoa(n)
		}
		return []byte(string(m[1]) + number + string(m[3]))
	})
}
