package concrete

import (
	_ "embed"
	"math"
)

//go:embed creep_as.csv
var creepASCSV string

//go:embed environment_as.csv
var environmentASCSV string

var (
	creepASStrengths, creepASBasics = curve("creep_as.csv", creepASCSV, "fc", "basic")
	environmentASHumidities         = columnOf("environment_as.csv", environmentASCSV, "humidity")
	environmentASFactors            = columnOf("environment_as.csv", environmentASCSV, "k4")
	_, environmentASRows            = readTable("environment_as.csv", environmentASCSV)
)

func columnOf(name, text, column string) (list []float64) {
	keys, rows := readTable(name, text)
	for _, k := range keys {
		list = append(list, number(name, rows[k], column))
	}
	return list
}

// EnvironmentFactorAS returns k4 of an environment: "arid", "interior", "temperate
// inland", "tropical or coastal"; ok is false for another word.
//
// Source: AS 3600:2018 3.1.7.2; from memory.
func EnvironmentFactorAS(environment string) (k4 float64, ok bool) {
	row, ok := environmentASRows[environment]
	if !ok {
		return 0, false
	}
	return number("environment_as.csv", row, "k4"), true
}

// AutogenousShrinkageAS returns εcse.
//
//	characteristic   f'c [MPa]
//	age              since setting [d]
//
// Source: AS 3600:2018 3.1.7.2; from memory, less sure above 50 MPa.
func AutogenousShrinkageAS(characteristic, age float64) float64 {
	if age <= 0 {
		return 0
	}
	end := (0.07*characteristic - 0.5) * 50e-6
	if characteristic > 50 {
		end = (0.08*characteristic - 1.0) * 50e-6
	}
	return end * (1 - math.Exp(-0.07*age))
}

// DryingProgressAS returns k1 after days of drying.
//
//	drying              [d]
//	hypotheticalSize    th = 2 Ag/ue [mm]
//
// Source: AS 3600:2018 Figure 3.1.7.2; from memory.
func DryingProgressAS(drying, hypotheticalSize float64) float64 {
	if drying <= 0 {
		return 0
	}
	p := math.Pow(drying, 0.8)
	return (0.8 + 1.2*math.Exp(-0.005*hypotheticalSize)) * p / (p + 0.15*hypotheticalSize)
}

// DryingShrinkageAS returns εcsd.
//
//	k1              see [DryingProgressAS]
//	k4              environment
//	characteristic  f'c [MPa]
//	final           final drying basic shrinkage: 800e-6 Sydney and Brisbane,
//	                900e-6 Melbourne, 1000e-6 elsewhere [-]
//
// Source: AS 3600:2018 3.1.7.2; from memory. ±30 %.
func DryingShrinkageAS(k1, k4, characteristic, final float64) float64 {
	return k1 * k4 * (0.9 - 0.005*characteristic) * final
}

// CreepProgressAS returns k2 after days under load.
//
// Source: AS 3600:2018 Figure 3.1.8.3(A); from memory.
func CreepProgressAS(loadedDays, hypotheticalSize float64) float64 {
	if loadedDays <= 0 {
		return 0
	}
	p := math.Pow(loadedDays, 0.8)
	return (1.0 + 1.12*math.Exp(-0.008*hypotheticalSize)) * p / (p + 0.15*hypotheticalSize)
}

// LoadingAgeFactorAS returns k3 for an age at loading in days, one day and more.
//
// Source: AS 3600:2018 Figure 3.1.8.3(B); from memory.
func LoadingAgeFactorAS(loaded float64) float64 {
	return 2.7 / (1 + math.Log10(math.Max(1, loaded)))
}

// BasicCreepAS returns φcc.b, linear between the rows of the table.
//
// Source: AS 3600:2018 Table 3.1.8.2; from memory.
func BasicCreepAS(characteristic float64) float64 {
	return interpolate(creepASStrengths, creepASBasics, characteristic)
}

// highStrengthCreepAS is k5: one up to 50 MPa, lower above.
func highStrengthCreepAS(characteristic, k4, hypotheticalSize float64) float64 {
	if characteristic <= 50 {
		return 1
	}
	a3 := 0.7 / (k4 * (1.0 + 1.12*math.Exp(-0.008*hypotheticalSize)))
	return (2 - a3) - 0.02*(1-a3)*characteristic
}

// DeformationAS is the shrinkage and creep model of AS 3600:2018.
type DeformationAS struct {
	AS3600
	Final       float64 // final drying basic shrinkage, 800e-6 to 1000e-6
	Environment string  // row of the table; "" reads k4 from the member's humidity
}

func (m DeformationAS) k4(member Member) float64 {
	if k4, ok := EnvironmentFactorAS(m.Environment); ok {
		return k4
	}
	if m.Environment != "" {
		panic("concrete: AS 3600 has no environment " + m.Environment)
	}
	return interpolate(environmentASHumidities, environmentASFactors, member.Humidity)
}

// Autogenous returns εcse.
func (m DeformationAS) Autogenous(age float64) float64 {
	return AutogenousShrinkageAS(m.Characteristic, age)
}

// Drying returns εcsd.
func (m DeformationAS) Drying(member Member, age float64) float64 {
	k1 := DryingProgressAS(age-member.DryingFrom, member.NotionalSize())
	return DryingShrinkageAS(k1, m.k4(member), m.Characteristic, m.Final)
}

// Coefficient returns φcc, for stresses of up to 0.45 of the strength; it stands on
// the modulus at 28 days.
func (m DeformationAS) Coefficient(member Member, loaded, age float64) float64 {
	size, k4 := member.NotionalSize(), m.k4(member)
	return CreepProgressAS(age-loaded, size) * LoadingAgeFactorAS(loaded) * k4 *
		highStrengthCreepAS(m.Characteristic, k4, size) * BasicCreepAS(m.Characteristic)
}

// Compliance returns 1/Ec(t0) + φcc/Ec.
func (m DeformationAS) Compliance(member Member, loaded, age float64) float64 {
	return 1/m.Modulus(loaded) + m.Coefficient(member, loaded, age)/m.Modulus(28)
}
