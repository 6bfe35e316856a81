package concrete

import "math"

func constantMC(cement, column string) float64 {
	row, ok := developmentMCRows[cement]
	if !ok {
		panic("concrete: no cement strength class " + cement)
	}
	return number("development_mc.csv", row, column)
}

// BasicShrinkageMC returns the shrinkage without loss of water at an age in days.
//
// Source: fib Model Code 2010 (5.1-76), (5.1-78), (5.1-79); seen as coded in fib
// structuralcodes (there with a minus sign).
func BasicShrinkageMC(mean float64, cement string, age float64) float64 {
	if age <= 0 {
		return 0
	}
	tenth := 0.1 * mean
	return constantMC(cement, "autogenous") * math.Pow(tenth/(6+tenth), 2.5) * 1e-6 * (1 - math.Exp(-0.2*math.Sqrt(age)))
}

// HumidityFactorMC returns βRH: 1.55(1−RH³) up to nearly wet, −0.25 (swelling)
// from 0.99 βs1 up.
//
// Source: fib Model Code 2010 (5.1-81), (5.1-83); seen as coded in fib
// structuralcodes.
func HumidityFactorMC(mean, humidity float64) float64 {
	if humidity >= 0.99*math.Min(1, math.Pow(35/mean, 0.1)) {
		return -0.25
	}
	return 1.55 * (1 - math.Pow(humidity, 3))
}

// DryingShrinkageMC returns the shrinkage by drying.
//
//	mean           strength [MPa]
//	cement         strength class such as 42.5N
//	humidity       fraction, 0.40 and up
//	notionalSize   h [mm]
//	drying         time of drying [d]
//
// Source: fib Model Code 2010 (5.1-77), (5.1-80) to (5.1-82); seen as coded in fib
// structuralcodes.
func DryingShrinkageMC(mean float64, cement string, humidity, notionalSize, drying float64) float64 {
	if drying <= 0 {
		return 0
	}
	return (220 + 110*constantMC(cement, "drying1")) * math.Exp(-constantMC(cement, "drying2")*mean) * 1e-6 *
		HumidityFactorMC(mean, humidity) * math.Sqrt(drying/(0.035*notionalSize*notionalSize+drying))
}

// ShrinkageMC is the shrinkage model of fib Model Code 2010.
type ShrinkageMC struct{ MC2010 }

// Autogenous returns the basic shrinkage.
func (m ShrinkageMC) Autogenous(age float64) float64 {
	return BasicShrinkageMC(m.Mean28, m.Cement, age)
}

// Drying returns the drying shrinkage.
func (m ShrinkageMC) Drying(member Member, age float64) float64 {
	return DryingShrinkageMC(m.Mean28, m.Cement, member.Humidity, member.NotionalSize(), age-member.DryingFrom)
}

// BasicCreepMC returns the creep coefficient without drying.
//
//	mean          strength [MPa]
//	loadingAge    adjusted [d]
//	loadedDays    since loading [d]
//
// Source: fib Model Code 2010 (5.1-64) to (5.1-66); seen as coded in fib
// structuralcodes.
func BasicCreepMC(mean, loadingAge, loadedDays float64) float64 {
	if loadedDays <= 0 {
		return 0
	}
	a := 30/loadingAge + 0.035
	return 1.8 / math.Pow(mean, 0.7) * math.Log(a*a*loadedDays+1)
}

// DryingCreepMC returns the creep coefficient by drying under load.
//
// Source: fib Model Code 2010 (5.1-67) to (5.1-71); seen as coded in fib
// structuralcodes.
func DryingCreepMC(mean, humidity, notionalSize, loadingAge, loadedDays float64) float64 {
	if loadedDays <= 0 {
		return 0
	}
	end := 412 / math.Pow(mean, 1.4) * (1 - humidity) / math.Cbrt(0.1*notionalSize/100) / (0.1 + math.Pow(loadingAge, 0.2))
	gamma := 1 / (2.3 + 3.5/math.Sqrt(loadingAge))
	root := math.Sqrt(35 / mean)
	bh := math.Min(1.5*notionalSize+250*root, 1500*root)
	return end * math.Pow(loadedDays/(bh+loadedDays), gamma)
}

// CreepMC is the creep model of fib Model Code 2010; the coefficient stands on
// the tangent modulus Eci at 28 days.
type CreepMC struct{ MC2010 }

// Coefficient returns φ(t,t0).
func (c CreepMC) Coefficient(member Member, loaded, age float64) float64 {
	t0 := AdjustedLoadingAge(loaded, constantMC(c.Cement, "creepage"))
	return BasicCreepMC(c.Mean28, t0, age-loaded) +
		DryingCreepMC(c.Mean28, member.Humidity, member.NotionalSize(), t0, age-loaded)
}

// Compliance returns 1/Eci(t0) + φ/Eci.
func (c CreepMC) Compliance(member Member, loaded, age float64) float64 {
	return 1/c.Modulus(loaded) + c.Coefficient(member, loaded, age)/c.Modulus(28)
}
