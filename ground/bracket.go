package ground

import "math"

// bracket returns the interval of rising points that holds x and how far along it
// x is; ok is false outside the points.
func bracket(points []float64, x float64) (i int, along float64, ok bool) {
	last := len(points) - 1
	if !(x >= points[0] && x <= points[last]) {
		return 0, 0, false
	}
	for i = 0; i < last-1 && x > points[i+1]; i++ {
	}
	return i, (x - points[i]) / (points[i+1] - points[i]), true
}

// alongLog returns the value at x of a line through points with rising xs, straight in
// the logarithm of x; ok is false outside the points.
func alongLog(xs, ys []float64, x float64) (y float64, ok bool) {
	logs := make([]float64, len(xs))
	for i := range xs {
		logs[i] = math.Log(xs[i])
	}
	i, along, ok := bracket(logs, math.Log(x))
	if !ok {
		return 0, false
	}
	return ys[i] + along*(ys[i+1]-ys[i]), true
}
