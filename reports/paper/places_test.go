package paper

import (
	"context"
	"errors"
	"maps"
	"testing"

	"etchbound/schemas/long"
)

// small is a PDF with three sheets in a tree of two levels and what of it is linked to.
const small = "%PDF-1.4\n5 0 obj\n<</Type /Pages\n/Kids [6 0 R 2 0 R]>>\nendobj\n6 0 obj\n" +
	"<</Type /Pages\n/Kids [9 0 R 3 0 R]>>\nendobj\n9 0 obj\n<</Type /Page\n>>\nendobj\n3 0 obj\n<</Type /Page\n>>\n" +
	"endobj\n2 0 obj\n<</Type /Page\n>>\nendobj\n7 0 obj\n<</page-1 [9 0 R /XYZ 0 792 0]\n/heat [3 0 R /XYZ 0 5.5 0]\n" +
	"/label [2 0 R /XYZ 0 1 0]\n/lost [44 0 R /XYZ 0 1 0]>>\nendobj\n8 0 obj\n<</Type /Catalog\n/Pages 5 0 R\n" +
	"/Dests 7 0 R\n>>\nendobj\n"

func TestPlacesAreTheSheetsOfAnchors(t *testing.T) {
	want := map[string]int{"page-1": 1, "heat": 2, "label": 3}
	if got := Places([]byte(small)); !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if got := Places([]byte("%PDF-1.7 all of it compressed")); len(got) != 0 {
		t.Errorf("a PDF that does not show them gives %v", got)
	}
}

// What the installed browser prints is read so as well.
func TestPlacesOfWhatIsPrinted(t *testing.T) {
	long.Only(t)
	if testing.Short() {
		t.Skip("the short form opens no page in a browser")
	}
	if _, err := Browser(); errors.Is(err, ErrNoBrowser) {
		t.Skip("no chromium is installed: nothing was printed")
	}
	pdf, err := PDF(context.Background(), []byte(`<!DOCTYPE html><html lang="en"><title>t</title><a href="#b">b</a>`+
		`<p style="break-before:page">two<p id="b" style="break-before:page">three</html>`))
	if err != nil {
		t.Fatal(err)
	}
	if got := Places(pdf)["b"]; got != 3 {
		t.Errorf("sheet %d, want 3", got)
	}
}
