// Package course knows how a batch of powder passes through the steps of a
// vessel: when it goes in, how long it stays, and what takes its heat. It makes
// of that the plans of package vessel. It must not know any limit, nor how a
// figure is made of a run.
//
// A course is one lot of etchant and powder from the step in which they meet until they
// are parted. Three kinds of answer stand side by side: all reacts as it goes in (it sizes
// the addition), all is there and nothing has reacted (the highest temperature), and two
// slow laws that are done at the end of the stated hold (what waits, and the peaks after
// it). A curve or a law stated under measured takes the place of the two. The hold counts
// after the last powder; its parts at other temperatures by Arrhenius, Ea 60 (50 to 70)
// kJ/mol.
//
// While something goes in, the coolant is the bath as stated; in other steps, and where what
// went in at once stands for a time, a bath is brought to the set temperature, and ice stays
// ice up to 10 K above it. Without cooling, and where a bath passes less than still air takes at
// least (5 W/m2/K of the wetted wall), heat is lost to still air alone. The wall passes
//
//	U = 1/(1/h_i + t/k + 1/h_o),   A = 5 V/D of a cylinder as high as it is wide
//
// A UA that is stated counts for the vessel however little of it is filled, down to the 500 W/m2/K
// of its wetted wall that films pass at their best: 30 W/K stated for 20 L (88 W/m2/K) are kept in
// 2 L, where they are 410, and are 0.67 in 5 mL. Nobody says for which fill it was stated; a route
// that is filled less than that states what it takes then.
//
// The liquid of a jacket is mixed and begins as warm as the batch. With J = F c of its flow F
// and P of its chiller, it and what passes in the long run are
//
//	C_j dT_j/dt = UA (T - T_j) - min(J (T_j - T_c), P),   UA J/(UA + J)
//
// The boiling point of a single acid is where the partial pressures of its tables add to
// 101.325 kPa, +-2 K; water over HF beyond 80 degC is extrapolated, so estimated. Of a
// mixture, low and central take the most volatile acid at its strength as charged, high
// takes what remains after salt conversion; a bound. Sulfuric mixtures, KF and ammonium
// liquors are unknown. Where the heat capacity of a solid is unknown the runs in time are
// unknown: too low a heat capacity is no bound of a run.
package course
