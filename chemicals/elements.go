package chemicals

import "strings"

// NumElements is the length of a Composition. It is the number of elements
// the data files hold an atomic weight for.
const NumElements = 64

// Composition is an amount of each element, usually mol per mol of a formula,
// indexed by ElementIndex.
type Composition [NumElements]float64

// elementTable lists symbol and periodic group; the position is the index. The
// order is by atomic number, so that printed accounts read the same everywhere.
const elementTable = "H1 Li1 B13 C14 N15 O16 F17 Na1 Mg2 Al13 Si14 P15 S16 Cl17 Ar18 K1 Ca2 " +
	"Sc3 Ti4 V5 Cr6 Mn7 Fe8 Co9 Ni10 Cu11 Zn12 Ga13 Ge14 As15 Se16 Br17 Rb1 Sr2 Y3 Zr4 Nb5 " +
	"Mo6 Ru8 Pd10 Ag11 Cd12 In13 Sn14 Sb15 Te16 I17 Cs1 Ba2 La3 Ce3 Gd3 Dy3 Er3 Lu3 Hf4 Ta5 " +
	"W6 Ir9 Pt10 Au11 Tl13 Pb14 Bi15"

var elementSymbols, elementGroups, elementIndex = readElements()

func readElements() (symbols [NumElements]string, groups [NumElements]int, index map[string]int) {
	index = make(map[string]int, NumElements)
	for i, entry := range strings.Fields(elementTable) {
		symbol := strings.TrimRight(entry, "0123456789")
		for _, digit := range entry[len(symbol):] {
			groups[i] = groups[i]*10 + int(digit-'0')
		}
		symbols[i], index[symbol] = symbol, i
	}
	return symbols, groups, index
}

// ElementIndex returns the position of an element in a Composition, and false
// for a symbol the data files do not hold.
func ElementIndex(symbol string) (int, bool) {
	i, ok := elementIndex[symbol]
	return i, ok
}

// ElementSymbol returns the symbol at a position, "" outside the table.
func ElementSymbol(i int) string {
	if i < 0 || i >= NumElements {
		return ""
	}
	return elementSymbols[i]
}

// Group returns the group of the periodic table, 1 to 18, or 0 for an element
// the data files do not hold. Lanthanides count as group 3.
func Group(symbol string) int {
	if i, ok := elementIndex[symbol]; ok {
		return elementGroups[i]
	}
	return 0
}
