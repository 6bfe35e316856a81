package flexure

import "math"

// PunchingStrength returns the shear strength of plain or fibre concrete round a
// post, on the perimeter at twice the effective depth.
//
//	characteristic   cylinder strength f_ck                              [MPa]
//	depth            effective depth, 0.75 of the thickness for plain
//	                 and fibre concrete                                  [mm]
//
// Result in MPa. The depth factor 1+√(200/d) is capped at 2. Empirical: not
// homogeneous, the units count.
//
// Source: Concrete Society TR34, 4th edition, from memory.
func PunchingStrength(characteristic, depth float64) float64 {
	size := math.Min(2, 1+math.Sqrt(200/depth))
	return 0.035 * math.Pow(size, 1.5) * math.Sqrt(characteristic)
}

// PunchingPerimeter returns the length on which [PunchingStrength] acts, at twice
// the depth from a rectangular base plate; at an edge and a corner, the plate
// stands flush with the free sides. Any unit of length.
//
//	along, across   sides of the plate; at an edge, along is the side parallel to it
//
// Source: Concrete Society TR34, 4th edition, from memory.
func PunchingPerimeter(position Position, along, across, depth float64) float64 {
	switch position {
	case Edge:
		return along + 2*across + 2*math.Pi*depth
	case Corner:
		return along + across + math.Pi*depth
	}
	return 2*(along+across) + 4*math.Pi*depth
}

// FaceShearCap returns the greatest shear stress at the face of the plate.
//
//	characteristic, design   f_ck and f_cd, cylinder   [MPa]
//
// Result in MPa. Source: EN 1992-1-1, 6.2.2(6) and 6.4.5(3), from memory.
func FaceShearCap(characteristic, design float64) float64 {
	return 0.5 * 0.6 * (1 - characteristic/250) * design
}
