package concrete

import "fmt"

// inSituOverCylinder is the mean in-situ strength over the mean of standard
// cylinders, AS 3600:2018 3.1.1.2; from memory.
const inSituOverCylinder = 0.9

// WithCylinders returns the model with cylinder results in place of the nominal
// strength.
//
//	mean   of the cylinders tested [MPa]
//	age    when tested, adjusted for temperature [d]
//
// A result at another age than 28 days is taken to 28 days by the model's own curve,
// so it must not be younger than the curve.
func WithCylinders(model StrengthModel, mean, age float64) (StrengthModel, error) {
	if !(mean >= 5 && mean <= 150) {
		return nil, fmt.Errorf("cylinders: mean strength %g MPa is outside 5 to 150 MPa; is it in psi (145 psi = 1 MPa)?", mean)
	}
	if !(age >= model.From()) {
		return nil, fmt.Errorf("cylinders: age %g d is younger than the %g d from which the curve of %s is meant; use an older result", age, model.From(), model.Code())
	}
	ratio := mean / model.Strength(age) // of the measured to the nominal, kept at every age
	switch m := model.(type) {
	case EN1992:
		m.Mean28 *= ratio
		return m, tooWeakForEN(m.Mean28)
	case MC2010:
		m.Mean28 *= ratio
		return m, tooWeakForEN(m.Mean28)
	case ACI209:
		m.Strength28 *= ratio
		return m, nil
	case AS3600:
		inSitu := inSituOverCylinder * ratio * m.Strength(28)
		low, high := inSituMeans[0], inSituMeans[len(inSituMeans)-1]
		if inSitu < low || inSitu > high {
			return nil, fmt.Errorf("cylinders: 28-day mean %.1f MPa makes %.1f MPa in situ, outside the %g to %g MPa of AS 3600; use another code", inSitu/inSituOverCylinder, inSitu, low, high)
		}
		m.Characteristic = interpolate(inSituMeans, inSituStrengths, inSitu)
		return m, nil
	}
	panic("concrete: cylinders cannot be put into the model " + model.Code())
}

// tooWeakForEN tells when a mean strength is so low that fctm, which stands on the
// mean less 8 MPa, has no meaning.
func tooWeakForEN(mean float64) error {
	if mean < 12 {
		return fmt.Errorf("cylinders: 28-day mean %.1f MPa is below the 12 MPa the tensile strength of EN 1992-1-1 can stand on; use ACI 209R or test tension", mean)
	}
	return nil
}
