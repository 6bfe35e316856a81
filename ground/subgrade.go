package ground

import (
	_ "embed"
	"math"

	"slabwright/internal/table"
)

// CBRFromSubgrade returns the bearing ratio, %, from the modulus of subgrade
// reaction of a 762 mm plate, MN/m³.
//
// Source: UK Highways IAN 73/06, CBR = 6.1e-8 k^1.733 with k in kN/m³; from memory.
func CBRFromSubgrade(modulus float64) float64 { return 6.1e-8 * math.Pow(modulus*1000, 1.733) }

// SubgradeFromCBR returns the modulus of subgrade reaction of a 762 mm plate,
// MN/m³, from the bearing ratio in %, about 2 to 12. The scatter is a factor of
// two: measure where it matters.
//
// Source: as [CBRFromSubgrade], turned round.
func SubgradeFromCBR(cbr float64) float64 { return math.Pow(cbr/6.1e-8, 1/1.733) / 1000 }

// StiffnessFromCBR returns the modulus of the soil, MPa, from the bearing ratio in
// %, 2 to 12.
//
// Source: TRRL LR1132 (1984), E = 17.6 CBR^0.64; from memory.
func StiffnessFromCBR(cbr float64) float64 { return 17.6 * math.Pow(cbr, 0.64) }

// TerzaghiPlate is the side, m, of the plate that [ModulusOnClay] and
// [ModulusOnSand] start from.
const TerzaghiPlate = 0.3

// ModulusOnClay returns the modulus under a loaded width on clay, in the unit of the
// plate's.
//
//	plate   modulus of a 0.3 m plate
//	width   loaded B [m]
//
// Source: Terzaghi 1955; from memory.
func ModulusOnClay(plate, width float64) float64 { return plate * TerzaghiPlate / width }

// ModulusOnSand returns the modulus under a loaded width on sand.
//
// Source: Terzaghi 1955; from memory.
func ModulusOnSand(plate, width float64) float64 {
	r := (width + TerzaghiPlate) / (2 * width)
	return plate * r * r
}

//go:embed plates.csv
var platesCSV string

var plates = table.Read("plates.csv", platesCSV)

// ReferencePlate is the diameter, mm, of the plate the modulus of subgrade reaction
// is stated for.
const ReferencePlate = 762

// PlateDivisor returns by what the modulus of a smaller plate is divided to get
// that of the 762 mm plate, linear in the logarithm of the diameter between the
// rows (our own reading between them); ok is false outside 160 to 762 mm.
//
// Source: Concrete Society TR 34; from memory.
func PlateDivisor(diameter float64) (divisor float64, ok bool) {
	return alongLog(plates.Numbers("diameter_mm"), plates.Numbers("divisor"), diameter)
}

//go:embed cbr_chart.csv
var cbrChartCSV string

var cbrChart = table.Read("cbr_chart.csv", cbrChartCSV)

// PoundsPerCubicInch is one pci in MN/m³.
const PoundsPerCubicInch = 0.271447

// SubgradeFromChart returns the modulus of subgrade reaction, MN/m³, by the chart of
// the Portland Cement Association, linear in the logarithm of the bearing ratio
// between its rows; ok is false outside 3 to 100 %.
//
// Source: PCA chart; from memory.
func SubgradeFromChart(cbr float64) (modulus float64, ok bool) {
	k, ok := alongLog(cbrChart.Numbers("cbr"), cbrChart.Numbers("k_pci"), cbr)
	return k * PoundsPerCubicInch, ok
}
