package concrete

import (
	_ "embed"
	"math"
)

//go:embed curing_aci.csv
var curingACICSV string

var curingACIDays, curingACIFactors = curve("curing_aci.csv", curingACICSV, "days", "factor")

// MixACI is what ACI 209R asks of the mix and its curing.
type MixACI struct {
	Curing float64 // moist curing [d]
	Slump  float64 // [mm]
	Fines  float64 // fine over all aggregate [%]
	Cement float64 // [kg/m³]
	Air    float64 // [%]
}

// ShrinkageFactorACI returns γsh, by which the ultimate shrinkage of the standard
// member is multiplied.
//
//	humidity        fraction; the value of 0.40 stands for drier air
//	volumeSurface   V/S [mm]
//
// The humidity lines 1.40−0.0102 RH and 3.00−0.030 RH are joined where they cross
// (80.8 %) and not at 80 %, where they miss each other. The air factor is held to
// 1 or more, as in ACI 209.2R-08.
//
// Source: ACI 209R-92 chapter 2 (SI); from memory.
func ShrinkageFactorACI(m MixACI, humidity, volumeSurface float64) float64 {
	percent := 100 * math.Max(humidity, 0.40)
	fines := 0.30 + 0.014*m.Fines
	if m.Fines > 50 {
		fines = 0.90 + 0.002*m.Fines
	}
	return interpolate(curingACIDays, curingACIFactors, m.Curing) *
		math.Max(0, math.Min(1.40-0.0102*percent, 3.00-0.030*percent)) *
		1.2 * math.Exp(-0.00472*volumeSurface) *
		(0.89 + 0.00161*m.Slump) * fines * (0.75 + 0.00061*m.Cement) * math.Max(1, 0.95+0.008*m.Air)
}

// DryingShrinkageACI returns the shrinkage after days of drying of moist-cured
// concrete.
//
//	factor   γsh, see [ShrinkageFactorACI]
//	drying   [d]
//
// Source: ACI 209R-92 (2-7), (2-9); from memory, 780 and 35 seen in another code.
func DryingShrinkageACI(factor, drying float64) float64 {
	if drying <= 0 {
		return 0
	}
	return drying / (35 + drying) * 780e-6 * factor
}

// ShrinkageACI is the shrinkage model of ACI 209R-92. It has no separate
// autogenous part.
type ShrinkageACI struct{ MixACI }

// Code returns "ACI 209R-92".
func (ShrinkageACI) Code() string { return "ACI 209R-92" }

// Autogenous returns 0.
func (ShrinkageACI) Autogenous(float64) float64 { return 0 }

// Drying returns the shrinkage of a member.
func (m ShrinkageACI) Drying(member Member, age float64) float64 {
	return DryingShrinkageACI(ShrinkageFactorACI(m.MixACI, member.Humidity, member.VolumeSurface), age-member.DryingFrom)
}

// CreepFactorACI returns γc, by which the ultimate creep coefficient of 2.35 is
// multiplied, for moist-cured concrete.
//
//	loaded   age at loading [d]
//
// Source: ACI 209R-92 chapter 2 (SI); from memory.
func CreepFactorACI(m MixACI, humidity, volumeSurface, loaded float64) float64 {
	percent := 100 * math.Max(humidity, 0.40)
	return 1.25 * math.Pow(loaded, -0.118) * (1.27 - 0.0067*percent) *
		2.0 / 3 * (1 + 1.13*math.Exp(-0.0213*volumeSurface)) *
		(0.82 + 0.00264*m.Slump) * (0.88 + 0.0024*m.Fines) * math.Max(1, 0.46+0.09*m.Air)
}

// CreepCoefficientACI returns vt after days under load.
//
// Source: ACI 209R-92 (2-8); from memory.
func CreepCoefficientACI(factor, loadedDays float64) float64 {
	if loadedDays <= 0 {
		return 0
	}
	p := math.Pow(loadedDays, 0.6)
	return p / (10 + p) * 2.35 * factor
}

// CreepACI is the creep model of ACI 209R-92; the coefficient stands on the
// modulus at the age of loading.
type CreepACI struct {
	MixACI
	ACI209
}

// Coefficient returns vt.
func (c CreepACI) Coefficient(member Member, loaded, age float64) float64 {
	return CreepCoefficientACI(CreepFactorACI(c.MixACI, member.Humidity, member.VolumeSurface, loaded), age-loaded)
}

// Compliance returns (1 + vt)/Ec(t0).
func (c CreepACI) Compliance(member Member, loaded, age float64) float64 {
	return (1 + c.Coefficient(member, loaded, age)) / c.Modulus(loaded)
}
