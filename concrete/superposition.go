package concrete

import "math"

// Compliance is strain per stress at an age of concrete loaded at another, 1/MPa,
// ages in days: [CreepModel.Compliance] with its member filled in.
type Compliance func(loaded, age float64) float64

// ComplianceOf returns the compliance of a member by a creep model.
func ComplianceOf(model CreepModel, member Member) Compliance {
	return func(loaded, age float64) float64 { return model.Compliance(member, loaded, age) }
}

// Superpose returns the stress, MPa, that a history of strain causes in ageing
// concrete that creeps: each increment of stress makes strain by the compliance
// from its own age on (Volterra).
//
//	ages     of the concrete, rising; the first is when strain begins [d]
//	strains  imposed (free strain taken off) at those ages; the first is sudden [-]
//
// The trapezoidal rule on the compliance; work grows with the square of the number
// of ages. Ages should be close together after every jump and may grow as powers.
func Superpose(compliance Compliance, ages, strains []float64) []float64 {
	if len(ages) != len(strains) {
		panic("concrete: as many strains as ages are needed")
	}
	if len(ages) == 0 {
		return nil
	}
	increments := make([]float64, len(ages))
	stresses := make([]float64, len(ages))
	increments[0] = strains[0] / compliance(ages[0], ages[0])
	stresses[0] = increments[0]
	for i := 1; i < len(ages); i++ {
		known := increments[0] * compliance(ages[0], ages[i])
		before := compliance(ages[0], ages[i])
		for j := 1; j < i; j++ {
			now := compliance(ages[j], ages[i])
			known += increments[j] * (now + before) / 2
			before = now
		}
		increments[i] = (strains[i] - known) / ((compliance(ages[i], ages[i]) + before) / 2)
		stresses[i] = stresses[i-1] + increments[i]
	}
	return stresses
}

// Relaxation returns the stress left, as a share of the first stress, at the given
// ages after a strain was imposed at an age and held.
//
//	from   age at which the strain is imposed [d]
//	ages   asked for, rising, later than from [d]
//	steps  between a tenth of a milliard of a day and the last age
func Relaxation(compliance Compliance, from float64, ages []float64, steps int) []float64 {
	const first = 1e-10 // days
	last := ages[len(ages)-1] - from
	ticks := []float64{from}
	ratio := math.Pow(last/first, 1/float64(steps-1))
	for i, d := 0, first; i < steps; i, d = i+1, d*ratio {
		ticks = append(ticks, from+d)
	}
	strains := make([]float64, len(ticks))
	for i := range strains {
		strains[i] = 1
	}
	stresses := Superpose(compliance, ticks, strains)
	var shares []float64
	for _, age := range ages {
		shares = append(shares, interpolate(ticks, stresses, age)/stresses[0])
	}
	return shares
}

// AgeAdjustedModulus returns the modulus, MPa, by which a strain that grows
// together with its stress makes stress.
//
//	modulus      at the age the stress begins [MPa]
//	coefficient  φ(t,t0)
//	ageing       χ, commonly 0.8, 0.65 to 0.9
//
// Source: Trost; Bazant; from memory (textbook).
func AgeAdjustedModulus(modulus, coefficient, ageing float64) float64 {
	return modulus / (1 + ageing*coefficient)
}

// AgeingCoefficient returns χ from a relaxation and the creep coefficient that
// belong together: 1/(1 − R/E) − 1/φ.
//
// Source: Bazant 1972; from memory (textbook).
func AgeingCoefficient(relaxation, coefficient float64) float64 {
	return 1/(1-relaxation) - 1/coefficient
}
