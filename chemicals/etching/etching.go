package etching

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// Layered is a layered precursor taken apart.
type Layered struct {
	Formula   chemicals.Formula
	M, A, X   []Part
	Slab      bool   // more of X than of M: an Al-C slab leaves, bounds only
	Hydride   string // formula of the toxic hydride, "" if A forms none
	Unlisted  string // element of A without an electron count, "" if all have one
	Toxic     []string
	MolarMass working.Num // g/mol
	Electrons working.Num // mol per mol given up by A; unknown if Unlisted
}

// Part is one element of a layered phase.
type Part struct {
	Symbol string
	Count  float64
}
