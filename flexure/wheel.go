package flexure

import "math"

// InteriorStress returns the tension on the underside below a wheel far from any
// edge.
//
//	load        on the circle                                            [N]
//	radius      b of [EquivalentRadius]; the contact radius itself gives
//	            the "ordinary theory"                                    [m]
//	thickness   of the slab                                              [m]
//	stiffness   l of [RelativeStiffness]                                 [m]
//	poisson     ratio                                                    [–]
//
// Result in Pa. 0.6159 is ln 2 + 1/2 less Euler's constant. Good for radius up to
// about 0.3 l.
//
// Source: Westergaard (1926), in the form of Ioannides, Thompson and Barenberg,
// TRR 1043 (1985), from memory.
func InteriorStress(load, radius, thickness, stiffness, poisson float64) float64 {
	const constant = 0.6159
	return 3 * (1 + poisson) * load / (2 * math.Pi * thickness * thickness) * (math.Log(stiffness/radius) + constant)
}

// InteriorDeflection returns the deflection under that wheel. The contact radius
// goes in, not b. Result in m.
//
// Source: as [InteriorStress].
func InteriorDeflection(load, radius, stiffness, support float64) float64 {
	x := radius / stiffness
	return load / (8 * support * stiffness * stiffness) * (1 + (math.Log(x/2)-0.673)*x*x/(2*math.Pi))
}

// Contact is the shape of the wheel's contact at an edge.
type Contact string

// Shapes of contact at an edge.
const (
	Circle     Contact = "circle"     // whole circle touching the edge from inside
	Semicircle Contact = "semicircle" // half circle with its diameter on the edge
)

// EdgeStress returns the tension along the edge, on the underside, below a wheel at
// a free edge or an open joint without transfer. Circle and semicircle differ by
// about a fifth: the report says which.
//
//	load [N]   radius [m] contact   modulus [Pa]   thickness [m]   poisson [–]   support [N/m³]
//
// Result in Pa. Source: Westergaard (1948), in the form of Ioannides, Thompson and
// Barenberg, TRR 1043 (1985), from memory.
func EdgeStress(contact Contact, load, radius, modulus, thickness, poisson, support float64) float64 {
	stiffness := RelativeStiffness(modulus, thickness, poisson, support)
	head := 3 * (1 + poisson) * load / (math.Pi * (3 + poisson) * thickness * thickness)
	log := math.Log(modulus * math.Pow(thickness, 3) / (100 * support * math.Pow(radius, 4)))
	ratio := radius / stiffness
	if contact == Semicircle {
		return head * (log + 3.84 - 4*poisson/3 + (1+2*poisson)*ratio/2)
	}
	return head * (log + 1.84 - 4*poisson/3 + (1-poisson)/2 + 1.18*(1+2*poisson)*ratio)
}

// EdgeDeflection returns the deflection of the edge under that wheel, in m.
//
// Source: as [EdgeStress].
func EdgeDeflection(contact Contact, load, radius, modulus, thickness, poisson, support float64) float64 {
	ratio := radius / RelativeStiffness(modulus, thickness, poisson, support)
	reduction := 1 - (0.76+0.4*poisson)*ratio
	if contact == Semicircle {
		reduction = 1 - (0.323+0.17*poisson)*ratio
	}
	return load * math.Sqrt(2+1.2*poisson) / math.Sqrt(modulus*math.Pow(thickness, 3)*support) * reduction
}

// EdgeStress1926 is the older edge form, 20 to 25 % below [EdgeStress] and below
// plate solutions. For reading old calculations; not for design.
//
// Source: Westergaard (1926), from memory; criticised in Ioannides (1985).
func EdgeStress1926(load, equivalentRadius, thickness, stiffness, poisson float64) float64 {
	return 0.529 * (1 + 0.54*poisson) * load / (thickness * thickness) * (4*math.Log10(stiffness/equivalentRadius) + 0.359)
}

// EdgeDeflection1926 is the edge deflection of the older form, a point load.
func EdgeDeflection1926(load, stiffness, support, poisson float64) float64 {
	return (1 + 0.4*poisson) * load / (math.Sqrt(6) * support * stiffness * stiffness)
}

// TransferEfficiency returns the deflection of the unloaded side of a joint over
// that of the loaded side, for a wheel at the joint.
//
//	transfer    shear stiffness of the joint (force per length and step) over k·l   [–]
//	radius      contact radius over l                                               [–]
//
// Result 0 to 1. A high value does not halve the stress: at 0.83 the far side has
// about 0.37 of the stress.
//
// Source: Ioannides and Hammons (1996), a regression, from memory; within 0.02 of
// a plate solution.
func TransferEfficiency(transfer, radius float64) float64 {
	if transfer <= 0 {
		return 0
	}
	return 1 / (1 + math.Pow(10, (0.214-0.183*radius-math.Log10(transfer))/1.18))
}
