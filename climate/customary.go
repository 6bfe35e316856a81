package climate

// US customary units. The factors for foot, pound and mile are exact by
// definition (international foot 0.3048 m, pound 0.45359237 kg).
const (
	poundPerSquareFoot = 0.45359237 / (0.3048 * 0.3048) // kg/m2 in one lb/ft2
	milePerHour        = 0.44704                        // m/s in one mph
	knot               = 1852.0 / 3600                  // m/s in one knot
	kilometrePerHour   = 1 / 3.6                        // m/s in one km/h
	psi                = 6.894757293                    // kPa in one psi
	inch               = 25.4                           // mm in one inch
)

// Fahrenheit returns a temperature given in °C on the Fahrenheit scale.
func Fahrenheit(celsius float64) float64 { return celsius*9/5 + 32 }

// Celsius returns a temperature given in °F on the Celsius scale.
func Celsius(fahrenheit float64) float64 { return (fahrenheit - 32) * 5 / 9 }
