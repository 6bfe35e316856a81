package concrete

// StrengthModel is how one code lets concrete gain strength. Ages are in days,
// adjusted for temperature (days at 20 °C); everything in MPa, means, cylinder.
type StrengthModel interface {
	// Code names the model as it is printed.
	Code() string
	// Strength returns the mean compressive cylinder strength.
	Strength(age float64) float64
	// Tensile returns the mean axial tensile strength.
	Tensile(age float64) float64
	// Modulus returns the mean modulus of elasticity the code works with.
	Modulus(age float64) float64
	// From returns the least age at which the code's curve is meant to be used.
	From() float64
}

// CementClass is how quickly a cement hardens, as EN 1992-1-1 has it.
type CementClass string

// The three classes.
const (
	Slow   CementClass = "S" // 32.5 N and most slag cements
	Normal CementClass = "N" // 32.5 R, 42.5 N
	Rapid  CementClass = "R" // 42.5 R, 52.5 N, 52.5 R
)
