// Package process knows what happens to the material: it walks the steps of a
// route and says what is where after each, with every element accounted for.
// It must not know how fast anything happens inside a step, nor any limit.
//
// # Powder
//
// The mass of the precursor is that of the powder. Stated impurities take their share of
// it, n = m w/M; a remainder that nothing explains counts as unstated impurity. Unstated
// impurity is put on top: central 0, low 0, high 5 wt%, as Al where the layer is Al, Ga,
// In, Si, Ge or Sn; for others gas and heat are unknown at that end. The etch is complete
// unless the route states a conversion; what is left is a range.
//
// # Account
//
// Every element that goes in is in a place, went off as gas or lies unresolved, to 1e-9:
//
//	account.error = max |in - held - gas|/in
//
// What is not modelled goes to the place unresolved, which counts as held: the account
// closes while the figure is unknown. TiF3 from TiAl3 is solid for heat and dissolved for
// account and neutralising.
//
// # Liquids
//
// Volumes of wt% reagents are at 20 degC, of mol/L reagents at 25 degC; volumes add.
// Where liquid is parted, the solid keeps R, in mL per g of solid or as stated; where the
// number of washes is unknown it keeps all of it. Drying leaves all acid and salt with the
// solid. A capacity grows with the batch unless the place says keep.
//
//	gas space = capacity - liquid - powder/density
package process
