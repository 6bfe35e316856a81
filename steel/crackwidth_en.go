package steel

import "math"

// NeutralAxis returns x, mm, the depth of concrete in compression of a cracked
// rectangular section in bending, elastic, tension steel only.
//
//	width    b [mm]
//	depth    d to the steel [mm]
//	area     of the steel [mm²]
//	ratio    of moduli Es/Ecm [-]
//
// Source: mechanics.
func NeutralAxis(width, depth, area, ratio float64) float64 {
	a := ratio * area
	return (-a + math.Sqrt(a*a+2*width*a*depth)) / width
}

// SteelStress returns σs, MPa, in the cracked section of [NeutralAxis].
//
//	moment   [N mm]
//
// Source: mechanics.
func SteelStress(moment, depth, axis, area float64) float64 {
	return moment / (area * (depth - axis/3))
}

// EffectiveDepthEN returns hc,ef, mm, the concrete round the steel that is pulled.
//
//	thickness   h [mm]
//	depth       d [mm]
//	axis        x [mm]; zero for pure tension
//
// Source: EN 1992-1-1:2004 7.3.2(3); seen as coded in fib structuralcodes.
func EffectiveDepthEN(thickness, depth, axis float64) float64 {
	return math.Min(2.5*(thickness-depth), math.Min((thickness-axis)/3, thickness/2))
}

// MeanStrainEN returns εsm − εcm, the mean strain of steel over that of the
// concrete between cracks that come from load.
//
//	stress      σs in the crack [MPa]
//	kt          0.4 long-lasting, 0.6 short
//	tensile     fct,eff [MPa]
//	rho         steel over effective concrete [-]
//	ratio       Es/Ecm [-]
//	modulus     Es [MPa]
//
// Source: EN 1992-1-1:2004 (7.9); seen as coded in fib structuralcodes.
func MeanStrainEN(stress, kt, tensile, rho, ratio, modulus float64) float64 {
	return math.Max((stress-kt*tensile/rho*(1+ratio*rho))/modulus, 0.6*stress/modulus)
}

// CrackSpacingEN returns sr,max, mm, of bars no wider apart than 5(c+φ/2).
//
//	cover      c [mm]
//	k1         0.8 ribbed, 1.6 plain
//	k2         0.5 bending, 1.0 tension
//	diameter   φ [mm]
//	rho        steel over effective concrete [-]
//
// Source: EN 1992-1-1:2004 (7.11); seen as coded in fib structuralcodes.
func CrackSpacingEN(cover, k1, k2, diameter, rho float64) float64 {
	return 3.4*cover + 0.425*k1*k2*diameter/rho
}

// WideSpacingEN returns sr,max, mm, where bars are wider apart than 5(c+φ/2), as
// they mostly are in slabs on ground.
//
// Source: EN 1992-1-1:2004 (7.14); seen as coded in fib structuralcodes.
func WideSpacingEN(thickness, axis float64) float64 { return 1.3 * (thickness - axis) }

// BarsWideApartEN reports whether the spacing passes 5(c+φ/2).
//
// Source: EN 1992-1-1:2004 7.3.4(3); seen as coded in fib structuralcodes.
func BarsWideApartEN(spacing, cover, diameter float64) bool { return spacing > 5*(cover+diameter/2) }

// CrackWidthEN returns wk, mm: spacing times strain.
//
// Source: EN 1992-1-1:2004 (7.8); seen as coded in fib structuralcodes.
func CrackWidthEN(spacing, strain float64) float64 { return spacing * strain }

// EndRestraintStrain returns εsm − εcm of a member held at its ends while it
// contracts. The contraction itself does not appear: each crack opens by what the
// concrete can pull before the next one forms.
//
//	ratio     Es/Ecm [-]
//	rho       steel over effective concrete [-]
//	kc, k     see [MinimumSteelEN]
//	tensile   fct,eff when cracking [MPa]
//	modulus   Es [MPa]
//
// Source: EN 1992-3:2006 (M.1); seen as coded in fib structuralcodes.
func EndRestraintStrain(ratio, rho, kc, k, tensile, modulus float64) float64 {
	return 0.5 * ratio * kc * k * tensile / modulus * (1 + 1/(ratio*rho))
}
