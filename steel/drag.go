package steel

// DragSteel returns the steel, area per unit width, that drags half a slab over
// its base when a crack opens at mid-length: it holds the crack closed, it does
// not stop it.
//
//	friction   F, 1.5 to 2.0 [-]
//	length     between free joints, in the bar's direction
//	weight     of the slab per area
//	stress     allowed in the steel, 0.67 to 0.75 of its yield
//
// Any consistent units: m, N/m² and MPa give mm² per m.
//
// Source: subgrade drag, ACI 360R and AASHTO 1993 form; from memory.
func DragSteel(friction, length, weight, stress float64) float64 {
	return friction * length * weight / (2 * stress)
}

// TieSteel returns the tie steel, area per unit length of joint, that drags the
// slab between the joint and the nearest free edge. There is no 2 in it.
//
//	edge   distance to the nearest free edge
//
// Source: Huang, Pavement analysis and design; from memory.
func TieSteel(friction, edge, weight, stress float64) float64 {
	return friction * edge * weight / stress
}

// TieLength returns the length of a tie bar: bond both sides and an allowance for
// a joint that is not where it should be.
//
//	stress      in the bar
//	diameter    of the bar
//	bond        stress, 2.4 MPa (350 psi)
//	allowance   75 mm
//
// Any consistent units.
//
// Source: Huang, Pavement analysis and design; from memory.
func TieLength(stress, diameter, bond, allowance float64) float64 {
	return stress*diameter/(2*bond) + allowance
}
