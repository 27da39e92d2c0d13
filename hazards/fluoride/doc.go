// Package fluoride knows where the fluoride is: how much each step and each
// place holds, and how strong that is as HF. It must not move material, and it
// must not know what fluoride does to anyone.
//
// All fluorine of a place counts, dissolved or not, and none is credited to the product
// while it lies in the etch liquor. n_F is in mol, over what is in the place:
//
//	fluoride.total            = n_F M_F
//	fluoride.hf_equivalent    = n_F M_HF             whatever the acid is
//	fluoride.hf_concentration = n_F/V                V: liquid charged; solids add none
//	fluoride.hf_strength      = n_F M_HF/m           m: liquor with its salt
//	fluoride.free_hf          = max(n_F - y n_Al, 0) M_HF
//
// y is the fluoride that an aluminium in solution holds, 3.5 (3.0 to 4.1) in undiluted
// salt liquor, from a table of data; n_F with what the product has taken up, of which
// nobody has measured how much it is. free_hf is an estimate, unknown with other metals
// in solution, and no verdict rests on it. Where acid is short the conditions say how
// much HF can form. A share of less than a millionth of the route is not listed.
package fluoride
