package hazards

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/classifying"
	"etchbound/chemicals/evolving"
	"etchbound/chemicals/flammable"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/meeting"
	"etchbound/hazards/order"
	"etchbound/hazards/wetted"
)

// Ready reads the tables that every review asks for, so that it goes on while the files of
// the writer are read. Whoever asks for one meanwhile waits for it.
func Ready() {
	chemicals.Base()
	chemicals.Library()
	limit.Base()
	figure.Catalogue()
	DataDigest()
}

// DataDigest is the SHA-256 in hex of the data that the program carries: what verdicts
// rest on beside the files of the writer. Another row gives another.
var DataDigest = sync.OnceValue(func() string {
	all := sha256.New()
	err := fs.WalkDir(chemicals.Files(), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(chemicals.Files(), path)
		io.WriteString(all, path+"\n")
		all.Write(text)
		return err
	})
	if err != nil { // they are part of the program, and read when it starts
		panic(err)
	}
	for _, text := range []string{aqueous.Tables(), classifying.Tables(), evolving.Tables(),
		flammable.Tables(),
		figure.Tables(), limit.Tables(), meeting.Tables(), order.Tables(), wetted.Tables()} {
		io.WriteString(all, text)
	}
	return hex.EncodeToString(all.Sum(nil))
})
