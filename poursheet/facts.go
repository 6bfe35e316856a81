package poursheet

import (
	"math"

	"slabwright/plan"
	"slabwright/source"
)

// factValue returns the value of a fact, nil where nobody knows it.
func factValue(f *source.Fact) *float64 {
	if f == nil {
		return nil
	}
	v := f.Value
	return &v
}

// angleOf returns the direction of a vector in degrees anticlockwise from x.
func angleOf(v plan.Point) float64 { return math.Atan2(v.Y, v.X) * 180 / math.Pi }
