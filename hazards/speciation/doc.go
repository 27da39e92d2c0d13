// Package speciation knows in what the fluoride of each liquor of a route is: as HF and its
// ions, or held by a metal, by the equilibria of chemicals/aqueous. It must not move
// material, nor make a verdict milder: all fluoride goes on counting as HF there.
//
// fluoride.free_hf is what nothing but H+ and alkali ions hold, F- and HF2- with HF, at the
// temperature the liquor was set to, 25 degC where none is stated, with fluorite, cryolite,
// sellaite, fluoride of lithium and sodium, hydroxides of aluminium, calcium and magnesium,
// gypsum and calcite as they settle, and carbonate as far as it is held under 1 atm of it. Its
// range goes from the least to the most that constants of other sources give; what the data
// move beside it is taken from the estimate by ratios of fluoride to aluminium, which stands
// where equilibria are not held. Below 5 degC, to where constants are carried and not held, it
// takes in what they give at 5. It is never above all fluoride.
//
// Where a liquor is stronger than they are held for, where something in it has none, or
// where nobody knows what came into it, the figure stays as it was and says why.
//
// HF over a liquor follows its molecules alone: beside what counts all fluoride, which
// verdicts rest on, stands the share of it that they are.
//
// It is worked out once, of the centre, and never in the runs that swing data.
package speciation
