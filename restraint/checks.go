package restraint

import (
	"embed"
	"math"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published row of this package with our functions.
func Checks() []source.Result { return source.Prove(published, "testdata/published", quantities) }

// The tables are in the units they are printed in; these bring them to SI.
const (
	mm         = 1e-3 // m
	mpa        = 1e6  // Pa
	micro      = 1e-6 // strain
	perCubicMM = 1e9  // N/mm³ in N/m³
	kilo       = 1e3
	weight     = 24000 // N/m³
)

var quantities = map[string]source.Func{
	"drag_stress": func(in source.Inputs) float64 {
		return DragStress(in.Num("mu"), in.Num("gamma")*kilo, in.Num("L")) / mpa
	},
	"drag_stress_psi": func(in source.Inputs) float64 { return DragStress(in.Num("mu"), in.Num("gamma"), in.Num("L")) },
	"full_restraint":  func(in source.Inputs) float64 { return RestrainedStress(1, in.Num("E"), in.Num("eps")*micro, 0.8, 0) },
	"shear_lag": func(in source.Inputs) float64 {
		return ShearLag(in.Num("ks")*perCubicMM, in.Num("E")*mpa, in.Num("h")*mm) * mm
	},
	"bed_stress": func(in source.Inputs) float64 {
		return ElasticBedStress(in.Num("E")*mpa, in.Num("eps")*micro, in.Num("L")*mm, in.Num("h")*mm, in.Num("ks")*perCubicMM) / mpa
	},
	"bed_slip": func(in source.Inputs) float64 {
		return ElasticBedEndSlip(in.Num("E")*mpa, in.Num("eps")*micro, in.Num("L")*mm, in.Num("h")*mm, in.Num("ks")*perCubicMM) / mm
	},
	"slide_end": func(in source.Inputs) float64 {
		return SlidingEndMovement(in.Num("eps")*micro, in.Num("mu"), weight, in.Num("L")*mm, in.Num("E")*mpa) / mm
	},
	"degree": func(in source.Inputs) float64 { return DegreeOfRestraint(in.Num("LH"), in.Num("h")) },
	"neighbour": func(in source.Inputs) float64 {
		return NeighbourRestraint(in.Num("An"), in.Num("En"), in.Num("Ao"), in.Num("Eo"))
	},
	"restrained_stress": func(in source.Inputs) float64 {
		return RestrainedStress(in.Num("R"), in.Num("E"), in.Num("eps")*micro, in.Num("chi"), in.Num("phi"))
	},
	"opening": func(in source.Inputs) float64 {
		return JointOpening(in.Num("C"), in.Num("L"), in.Num("a"), in.Num("dT"), in.Num("eps"))
	},
	"opening_length": func(in source.Inputs) float64 {
		return JointSpacingFor(in.Num("limit"), in.Num("C"), in.Num("a"), in.Num("dT"), in.Num("eps"))
	},
	"opening_length_ft": func(in source.Inputs) float64 {
		return JointSpacingFor(in.Num("limit"), in.Num("C"), in.Num("a"), in.Num("dT"), in.Num("eps")) / 12
	},
	"filler_width": func(in source.Inputs) float64 { return FillerWidth(in.Num("dJ"), in.Num("cap")) },
	"lateral": func(in source.Inputs) float64 {
		return LateralDemand(in.Num("here")*micro, in.Num("beyond")*micro, in.Num("x")) / mm
	},
	"spacing":     func(in source.Inputs) float64 { return SpacingRule(in.Num("n"), in.Num("h")) },
	"aspect":      func(in source.Inputs) float64 { return Aspect(in.Num("a"), in.Num("b")) },
	"saw_depth":   func(in source.Inputs) float64 { return SawDepth(in.Num("share"), in.Num("h"), 0) },
	"gf2010":      func(in source.Inputs) float64 { return FractureEnergy2010(in.Num("fcm")) },
	"gf1990":      func(in source.Inputs) float64 { return FractureEnergy1990(in.Num("fcm"), in.Num("dmax")*mm) },
	"kic":         func(in source.Inputs) float64 { return Toughness(in.Num("E")*mpa, in.Num("GF")) / mpa },
	"kic_mm":      func(in source.Inputs) float64 { return Toughness(in.Num("E"), in.Num("GF")) },
	"lch":         func(in source.Inputs) float64 { return CharacteristicLength(in.Num("E"), in.Num("GF"), in.Num("ft")) },
	"lch_en":      func(in source.Inputs) float64 { return characteristicLengthEN(in.Num("fck")) / mm },
	"f_bend":      func(in source.Inputs) float64 { return NotchBending(in.Num("alpha")) },
	"f_tens":      func(in source.Inputs) float64 { return NotchTension(in.Num("alpha")) },
	"f_bend_poly": func(in source.Inputs) float64 { return NotchBendingPolynomial(in.Num("alpha")) },
	"f_tens_poly": func(in source.Inputs) float64 { return NotchTensionPolynomial(in.Num("alpha")) },
	"f_beam":      func(in source.Inputs) float64 { return BeamIntensity(in.Num("alpha")) },
	"sigma_n_bend": func(in source.Inputs) float64 {
		return NotchStrength(in.Num("K"), in.Num("a"), NotchBending(in.Num("a")/in.Num("h")))
	},
	"sigma_n_tens": func(in source.Inputs) float64 {
		return NotchStrength(in.Num("K"), in.Num("a"), NotchTension(in.Num("a")/in.Num("h")))
	},
	"net_bend": func(in source.Inputs) float64 { return NetSection(in.Num("alpha"), 1, false) },
	"net_tens": func(in source.Inputs) float64 { return NetSection(in.Num("alpha"), 0, false) },
}

// characteristicLengthEN is the length for a strength class with modulus and
// tensile strength by EN 1992-1-1 Table 3.1 and the fracture energy of Model Code
// 2010; it serves the table rows only.
func characteristicLengthEN(fck float64) float64 {
	fcm := fck + 8
	return CharacteristicLength(22e9*math.Pow(fcm/10, 0.3), FractureEnergy2010(fcm), 0.3*mpa*math.Pow(fck, 2.0/3))
}
