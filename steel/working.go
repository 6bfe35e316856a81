package steel

import (
	"fmt"

	"slabwright/source"
	"slabwright/working"
)

// DowelCase is a dowelled joint under a wheel, for its calculation.
type DowelCase struct {
	Force    float64 // through the dowel under the load [N]
	Support  float64 // K [N/mm³]
	Opening  float64 // z [mm]
	Diameter float64 // [mm]
	Modulus  float64 // of the bar [MPa]
	Cylinder float64 // strength of the concrete [MPa]
}

// DowelWorking returns the calculation of the bearing stress under a dowel against
// what is allowed, with another published limit beside it.
func DowelWorking(c DowelCase) working.Sheet {
	friberg := source.Cite("friberg1940", "")
	inertia, beta := Inertia(c.Diameter), RelativeStiffness(c.Support, c.Diameter, c.Modulus)
	y0 := FaceDeflection(c.Force, beta, c.Opening, c.Diameter, c.Modulus)
	bearing, allowed := BearingStress(c.Force, c.Support, c.Opening, c.Diameter, c.Modulus), AllowableBearing(c.Diameter, c.Cylinder)
	inertiaIn, betaIn := working.In("I", inertia, "mm⁴", "second moment"), working.In("β", beta, "1/mm", "relative stiffness")
	modulus, support := working.In("E", c.Modulus, "MPa", "modulus of the bar"), working.In("K", c.Support, "N/mm³", "modulus of dowel support")
	diameter := working.In("d", c.Diameter, "mm", "diameter")
	verdict := "pass"
	if bearing > allowed {
		verdict = "fail"
	}
	last := working.New("f_b", "bearing stress allowed", "(4 − d/25.4)/3·f_c", allowed, "MPa", source.Cite("practice", "ACI Committee 325 (1956) form"),
		diameter, working.In("f_c", c.Cylinder, "MPa", "cylinder strength")).
		Beside("(101.6 − d)·f_cube/95.25 with the cube strength 1.25 of the cylinder's", AllowableBearingCube(c.Diameter, 1.25*c.Cylinder), source.Cite("practice", "Indian practice"), "stated on cubes")
	last.Verdict = verdict
	sheet := working.Sheet{ID: "dowel", Title: fmt.Sprintf("Dowel of %g mm across a joint open %g mm", c.Diameter, c.Opening),
		Basis: []string{"the modulus of dowel support is a fitted number, 81 to 407 N/mm³", "long embedment, no looseness"}}
	sheet.Add(
		working.New("I", "second moment of the bar", "π·d^4/64", inertia, "mm⁴", source.Cite("mechanics", ""), diameter),
		working.New("β", "relative stiffness of bar and concrete", "(K·d/(4·E·I))^0.25", beta, "1/mm", friberg, support, diameter, modulus, inertiaIn),
		working.New("y_0", "deflection at the joint face", "P·(2 + β·z)/(4·β^3·E·I)", y0, "mm", friberg,
			working.In("P", c.Force, "N", "force through the dowel"), betaIn, working.In("z", c.Opening, "mm", "opening"), modulus, inertiaIn),
		working.New("σ_b", "bearing stress on the concrete", "K·y_0", bearing, "MPa", friberg, support, working.In("y_0", y0, "mm", "line above")),
		last,
	)
	return sheet
}

// MinimumWorking returns the calculation of the steel that keeps cracks fine in a slab
// restrained in its plane, with drag steel beside it, which does not.
//
//	thickness   of the slab [mm]
//	tensile     strength when it cracks [MPa]
//	stress      allowed in the steel [MPa]
//	friction    of the base [-]
//	length      between free joints [m]
func MinimumWorking(thickness, tensile, stress, friction, length float64) working.Sheet {
	k := SelfStressFactorEN(thickness)
	area := MinimumSteelEN(1, k, tensile, 1000*thickness, stress)
	const weight = 24 // kN/m³
	sheet := working.Sheet{ID: "minimum-steel", Title: fmt.Sprintf("Steel of a restrained slab of %g mm", thickness),
		Basis: []string{"pure tension over the whole depth", "tensile strength at the time of cracking: lower at early age", "concrete 24 kN/m³"}}
	sheet.Add(
		working.New("k", "factor for self-equilibrating stress", "min(1; max(0.65; 1 − 0.35·(h − 300)/500))", k, "", source.Cite("en1992", "7.3.2(2)"),
			working.In("h", thickness, "mm", "thickness")),
		working.New("A_s,min", "least steel that shares the crack into several fine ones", "k·f_ct·1000·h/σ_s", area, "mm²/m", source.Cite("en1992", "(7.1), kc = 1"),
			working.In("k", k, "", "line above"), working.In("f_ct", tensile, "MPa", "tensile strength when cracking"),
			working.In("h", thickness, "mm", "thickness"), working.In("σ_s", stress, "MPa", "stress allowed in the steel")),
		working.New("A_s,drag", "steel that drags half the slab and holds one crack closed", "μ·L·24·h/(2·σ_s)", DragSteel(friction, length, weight*thickness, stress), "mm²/m",
			source.Cite("aci360", "subgrade drag"), working.In("μ", friction, "", "friction"), working.In("L", length, "m", "between free joints"),
			working.In("h", thickness, "mm", "thickness"), working.In("σ_s", stress, "MPa", "stress allowed in the steel")).
			Beside("steel that shares the crack, line above", area, source.Cite("en1992", "(7.1)"), "drag steel holds cracks closed in a slab with joints to match; it does not control them in a restrained one"),
	)
	return sheet
}
