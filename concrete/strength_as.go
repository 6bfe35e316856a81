package concrete

import (
	_ "embed"
	"math"
)

// FlexuralTensileAS returns f'ct.f, the characteristic flexural tensile strength,
// MPa, from f'c in MPa, without tests.
//
// Source: AS 3600:2018 3.1.1.3; from memory.
func FlexuralTensileAS(characteristic float64) float64 { return 0.6 * math.Sqrt(characteristic) }

// AxialTensileAS returns f'ct, the characteristic axial tensile strength, MPa.
// The mean is 1.4 of it, the upper value 1.8.
//
// Source: AS 3600:2018 3.1.1.3; from memory.
func AxialTensileAS(characteristic float64) float64 { return 0.36 * math.Sqrt(characteristic) }

// MeanTensileFactorAS is the mean tensile strength over the characteristic one.
//
// Source: AS 3600:2018 3.1.1.3; from memory.
const MeanTensileFactorAS = 1.4

// ModulusAS returns Ec, MPa, ±20 %.
//
//	density   of the concrete [kg/m³]
//	inSitu    mean in-situ strength fcmi [MPa]
//
// Source: AS 3600:2018 3.1.2; from memory. Its own table differs from the
// expression by up to 1.2 %. Its two branches miss each other by 0.06 % at 40 MPa;
// here the upper one starts from the end of the lower, so that concrete never
// loses stiffness as it gains strength.
func ModulusAS(density, inSitu float64) float64 {
	lower := 0.043 * math.Sqrt(math.Min(inSitu, 40))
	if inSitu > 40 {
		return math.Pow(density, 1.5) * math.Max(lower, 0.024*math.Sqrt(inSitu)+0.12)
	}
	return math.Pow(density, 1.5) * lower
}

//go:embed insitu_as.csv
var inSituCSV string

var inSituStrengths, inSituMeans = curve("insitu_as.csv", inSituCSV, "fc", "fcmi")

// MeanInSituAS returns fcmi, MPa, for a characteristic strength of 20 to 100 MPa,
// linear between the rows of the table.
//
// Source: AS 3600:2018 Table 3.1.2; from memory.
func MeanInSituAS(characteristic float64) float64 {
	return interpolate(inSituStrengths, inSituMeans, characteristic)
}

// AS3600 is the strength model of AS 3600:2018. The standard gives no curve of
// strength with age: the development of EN 1992-1-1 stands in with its class of
// cement.
type AS3600 struct {
	Characteristic float64 // f'c at 28 days [MPa]
	Class          CementClass
	Density        float64 // kg/m³
}

// NewAS3600 returns the model for a characteristic strength in MPa.
func NewAS3600(characteristic float64, class CementClass) AS3600 {
	if _, ok := DevelopmentCoefficientEN(class); !ok {
		panic("concrete: cement class must be S, N or R, not " + string(class))
	}
	return AS3600{Characteristic: characteristic, Class: class, Density: 2400}
}

// Code returns "AS 3600:2018".
func (AS3600) Code() string { return "AS 3600:2018" }

// From returns 3 days, that of the borrowed curve.
func (AS3600) From() float64 { return 3 }

// Strength returns the mean in-situ strength, MPa.
func (m AS3600) Strength(age float64) float64 {
	s, _ := DevelopmentCoefficientEN(m.Class)
	return MeanInSituAS(m.Characteristic) * DevelopmentEN(s, age)
}

// Tensile returns the mean axial tensile strength, MPa, with the characteristic
// strength taken in proportion to the strength at the age.
func (m AS3600) Tensile(age float64) float64 {
	s, _ := DevelopmentCoefficientEN(m.Class)
	return MeanTensileFactorAS * AxialTensileAS(m.Characteristic*DevelopmentEN(s, age))
}

// Modulus returns Ec(t), MPa.
func (m AS3600) Modulus(age float64) float64 { return ModulusAS(m.Density, m.Strength(age)) }
