package concrete

import "math"

// Constants of the equivalent age.
const (
	GasConstant          = 8.314  // J/(mol K)
	ZeroCelsius          = 273.15 // K
	HydrationReference_C = 21.1   // °C, reference of the hydration curve's equivalent age
	StrengthReference_C  = 20.0   // °C, reference of the strength curves' age
)

// AgeRate returns how many hours of equivalent age pass in an hour at a
// temperature: the Arrhenius factor.
//
//	activationEnergy   [J/mol]
//	temperature        of the concrete [°C]
//	reference          [°C]: 20 for code strength curves, 21.1 for the hydration curve
//
// Source: Freiesleben Hansen and Pedersen 1977; ASTM C1074; from memory.
func AgeRate(activationEnergy, temperature, reference float64) float64 {
	return math.Exp(-activationEnergy / GasConstant * (1/(temperature+ZeroCelsius) - 1/(reference+ZeroCelsius)))
}

// ActivationEnergyByTemperature returns the activation energy in J/mol that
// depends on the concrete's temperature in °C only: for plain Portland cement
// when nothing of its composition is known. It is higher below 20 °C.
//
// Source: Freiesleben Hansen and Pedersen 1977; from memory.
func ActivationEnergyByTemperature(temperature float64) float64 {
	if temperature >= 20 {
		return 33500
	}
	return 33500 + 1470*(20-temperature)
}

// AdjustedAgeRate returns how many days of temperature-adjusted age pass in a
// day at a temperature in °C, 0 to 80.
//
// The exponent uses 273, not 273.15, as printed; so it is 0.998 at 20 °C.
//
// Source: EN 1992-1-1:2004 (B.10), fib Model Code 2010 (5.1-85); seen as coded in
// fib structuralcodes.
func AdjustedAgeRate(temperature float64) float64 {
	return math.Exp(-(4000/(273+temperature) - 13.65))
}

// NurseSaulRate returns the maturity, °C·h, that an hour at a temperature in °C
// adds; none below the datum (0 or -10 °C).
//
// Source: Saul 1951; ASTM C1074; from memory.
func NurseSaulRate(temperature, datum float64) float64 {
	return math.Max(0, temperature-datum)
}

// Accumulate returns the integral of a rate over a temperature history: hours
// of equivalent age with [AgeRate], °C·h with [NurseSaulRate].
//
//	hours         clock times, increasing [h]
//	temperatures  at those times [°C]
//	rate          of the temperature
//
// The trapezoidal rule: its error falls with the square of the step; 15 minutes
// is within 0.1 % for a daily swing of 30 K.
func Accumulate(hours, temperatures []float64, rate func(temperature float64) float64) float64 {
	if len(hours) != len(temperatures) {
		panic("concrete: as many hours as temperatures are needed")
	}
	sum := 0.0
	for i := 1; i < len(hours); i++ {
		sum += (hours[i] - hours[i-1]) * (rate(temperatures[i]) + rate(temperatures[i-1])) / 2
	}
	return sum
}
