package concrete

// InitialSetDegree returns the degree of hydration at initial set, when a
// penetration needle meets 3.5 MPa and the concrete can no longer be floated
// with ease.
//
// Source: Schindler, ACI Materials Journal 101(1) 2004, after Byfors and Pinto;
// set by ASTM C403; from memory.
func InitialSetDegree(waterBinder float64) float64 { return 0.15 * waterBinder }

// FinalSetDegree returns the degree of hydration at final set (27.6 MPa on the
// needle): from here on the concrete has strength and stiffness.
//
// Source: as [InitialSetDegree].
func FinalSetDegree(waterBinder float64) float64 { return 0.26 * waterBinder }
