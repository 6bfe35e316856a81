package flexure

import "math"

// RoadTest is what the road-test equation needs. US units throughout: the fit was
// made in them.
type RoadTest struct {
	Thickness     float64 // D, in
	Rupture       float64 // mean modulus of rupture S'c, psi
	Drainage      float64 // C_d, –
	Transfer      float64 // J, – : 3.2 dowelled, 3.8 to 4.4 without
	Modulus       float64 // E_c, psi
	Support       float64 // effective k, pci
	Loss          float64 // of serviceability over the life, –
	Terminal      float64 // serviceability p_t at its end, –
	NormalDeviate float64 // Z_R of the reliability, negative, –
	Deviation     float64 // S_0, –
}

// RoadTestLog returns the base-10 logarithm of the 18-kip axle passes a plain
// pavement bears. It is fitted to traffic of a road test, so it says little of
// yards with a few slow heavy wheels.
//
// Source: AASHTO Guide 1993, rigid pavements, from memory.
func RoadTestLog(r RoadTest) float64 {
	d75 := math.Pow(r.Thickness, 0.75)
	strength := r.Rupture * r.Drainage * (d75 - 1.132) / (215.63 * r.Transfer * (d75 - 18.42/math.Pow(r.Modulus/r.Support, 0.25)))
	return r.NormalDeviate*r.Deviation + 7.35*math.Log10(r.Thickness+1) - 0.06 +
		math.Log10(r.Loss/3.0)/(1+1.624e7/math.Pow(r.Thickness+1, 8.46)) +
		(4.22-0.32*r.Terminal)*math.Log10(strength)
}
