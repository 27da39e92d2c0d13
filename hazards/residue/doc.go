// Package residue knows how much fluoride stays dissolved in a liquor of a route once base
// has met it, by the equilibria of chemicals/aqueous. It must not know whether what is left
// may go down any drain.
//
// neutralise.residual_fluoride is the dissolved fluoride in mg/L (a kg of water counts as a
// litre) at pH 8, at the temperature that the step sets, from 5 to 60 degC (25 where it sets
// none), with what settles: fluorite, cryolite, sellaite, lithium and sodium fluoride,
// phosphate of calcium, and hydroxide of aluminium as it comes out of solution. Its range is
// that from pH 6, where the acid seems gone, to pH 9, with aged solids, without cryolite and at 25 degC too.
// Where pH 8 is a false end, as with ammonium, which takes base beyond it, the figure is that
// with all base in that acid and ammonium take, or as much of it as is written, and what
// stopping at pH 8 leaves is in the range. A liquor that
// is stronger than the equilibria are held for is diluted tenfold or a hundredfold first, as
// such a liquor is before base meets it; what complexes hold back is told of the water that is
// there. A step that writes carbonate, several bases, or only what binds fluoride is told with
// all of that in, under carbon dioxide of 1 atm where there is carbonate, also of a rinse
// before; its range is that of a twentieth less and more. Water that the step brings before
// acid and base meet counts. Where no equilibrium is held of something in it, or none is
// found, all fluoride counts as dissolved. Complexes that give their fluoride up slowly keep
// all but the least share that has been seen to hydrolyse.
//
// It is worked out once, of the centre, and never in the runs that swing data.
package residue
