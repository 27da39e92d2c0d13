package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"testing"
)

type encodedJSON struct {
	Text  string           `json:"text"`
	None  []int            `json:"none"`
	Empty []int            `json:"empty"`
	List  []map[string]any `json:"list"`
	Deep  [][2]Nine        `json:"deep"`
	Inner struct {
		A []string `json:"a"`
		B map[string]Nine
	} `json:"inner"`
}

// What is written an entry at a time is what the encoder of the library writes.
func TestEncode(t *testing.T) {
	v := encodedJSON{Text: "a < b & \"c\" \u2028", Empty: []int{}, List: []map[string]any{{}, {"x": []int{}, "y": 1.5}},
		Deep: [][2]Nine{{1, Nine(math.NaN())}, {2e30, 3}}}
	for i := range 3*block*blocks/2 + 1 { // more than one round of blocks
		v.Deep = append(v.Deep, [2]Nine{Nine(i), Nine(-i)})
	}
	v.Inner.A, v.Inner.B = []string{"one", "two"}, map[string]Nine{"b": 1, "a": 2}
	var want, got bytes.Buffer
	e := json.NewEncoder(&want)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(v); err != nil {
		t.Fatal(err)
	}
	if err := Write(&got, v); err != nil {
		t.Fatal(err)
	}
	if got.String() != want.String() {
		t.Errorf("%s\nwant\n%s", got.String(), want.String())
	}
}

type full struct{}

var errFull = errors.New("the disk is full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestEncodeSaysWhatWentWrong(t *testing.T) {
	if err := Write(full{}, encodedJSON{}); !errors.Is(err, errFull) {
		t.Errorf("%v", err)
	}
}

// What a terminal takes for an order (C1 controls and delete, ECMA-48) is named and not written,
// and is the same text when it is read.
func TestNoOrderOfATerminalIsWritten(t *testing.T) {
	type one struct {
		Text string `json:"text"`
	}
	for _, text := range []string{"a\u009b2Jb", "\u007f", "\u0080°\u009f", "20 °C"} {
		var b bytes.Buffer
		if err := Write(&b, one{text}); err != nil {
			t.Fatal(err)
		}
		for _, r := range b.String() {
			if r >= 0x7f && r < 0xa0 {
				t.Errorf("%q holds %U", b.String(), r)
			}
		}
		var back one
		if err := json.Unmarshal(b.Bytes(), &back); err != nil || back.Text != text {
			t.Errorf("%q is read as %q (%v)", text, back.Text, err)
		}
	}
}
