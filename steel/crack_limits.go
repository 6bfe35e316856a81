package steel

import (
	_ "embed"
	"sort"

	"slabwright/internal/table"
)

//go:embed crack_limits.csv
var crackLimitsCSV string

//go:embed bar_limits.csv
var barLimitsCSV string

var (
	crackLimits = table.Read("crack_limits.csv", crackLimitsCSV)
	barLimits   = table.Read("bar_limits.csv", barLimitsCSV)
)

// CrackLimit is one row of the tables of crack widths.
type CrackLimit struct {
	Exposure string
	Source   string  // key of works.csv
	Width    float64 // [mm]
}

// CrackLimits returns the rows in table order.
func CrackLimits() (list []CrackLimit) {
	for i := range crackLimits.Rows {
		list = append(list, CrackLimit{crackLimits.Text(i, "exposure"), crackLimits.Text(i, "source"), crackLimits.Number(i, "width_mm")})
	}
	return list
}

// CrackLimitFor returns the guide width of an exposure, mm; ok is false for
// another word.
func CrackLimitFor(exposure string) (limit CrackLimit, ok bool) {
	i := crackLimits.Find(exposure)
	if i < 0 {
		return CrackLimit{}, false
	}
	return CrackLimits()[i], true
}

// LargestBarEN returns the largest bar, mm, that keeps cracks to 0.3 mm at a steel
// stress in MPa, linear between the rows; ok is false above 450 MPa.
//
// Source: EN 1992-1-1:2004 Table 7.2N; seen as coded in fib structuralcodes.
func LargestBarEN(stress float64) (diameter float64, ok bool) {
	return barLimit(stress, "diameter_mm")
}

// WidestSpacingEN returns the widest spacing, mm, that keeps cracks to 0.3 mm at a
// steel stress in MPa, linear between the rows; ok is false above 360 MPa.
//
// Source: EN 1992-1-1:2004 Table 7.3N; seen as coded in fib structuralcodes.
func WidestSpacingEN(stress float64) (spacing float64, ok bool) {
	return barLimit(stress, "spacing_mm")
}

func barLimit(stress float64, column string) (value float64, ok bool) {
	var stresses, values []float64
	for i := range barLimits.Rows {
		if barLimits.Text(i, column) != "" {
			stresses = append(stresses, barLimits.Number(i, "stress"))
			values = append(values, barLimits.Number(i, column))
		}
	}
	if stress > stresses[len(stresses)-1] {
		return 0, false
	}
	if stress <= stresses[0] {
		return values[0], true
	}
	i := sort.SearchFloat64s(stresses, stress)
	along := (stress - stresses[i-1]) / (stresses[i] - stresses[i-1])
	return values[i-1] + along*(values[i]-values[i-1]), true
}
