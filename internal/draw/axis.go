package draw

import "math"

// Label is a place on an axis with its words.
type Label struct {
	At    float64
	Words string
	Minor bool // a short tick without words
}

// Axis is one axis of a chart.
type Axis struct {
	Title  string // with the unit
	Min    float64
	Max    float64
	Labels []Label
}

// Steps returns round values from low to high inclusive, 1, 2, 2.5 or 5 times a
// power of ten apart, about want of them, and the step.
func Steps(low, high float64, want int) (values []float64, step float64) {
	if !(high > low) || want < 1 {
		panic("draw: steps need high above low and at least one")
	}
	raw := (high - low) / float64(want)
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	step = 10 * power
	for _, m := range []float64{1, 2, 2.5, 5} {
		if m*power >= raw*(1-1e-9) {
			step = m * power
			break
		}
	}
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9*step; k++ {
		values = append(values, k*step)
	}
	return values, step
}
