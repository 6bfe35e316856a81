// Package sample spreads points evenly over a box of uncertain numbers.
//
// In goes how many points, how many numbers each, and a seed; out come points in
// the unit cube ([Latin]). The same seed gives the same points on every machine.
// [Uniform] and [Triangular] turn a coordinate into a value.
//
// It leaves out correlations between the numbers.
package sample

import (
	"math"
	"math/rand/v2"
)

// Latin returns count points of the unit cube such that in each dimension every
// slice of 1/count holds exactly one point (Latin hypercube).
//
// Source: McKay, Beckman and Conover, Technometrics 21 (1979).
func Latin(count, dimensions int, seed uint64) [][]float64 {
	random := rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15))
	points := make([][]float64, count)
	all := make([]float64, count*dimensions)
	for i := range points {
		points[i] = all[i*dimensions : (i+1)*dimensions]
	}
	for d := range dimensions {
		for i, slice := range random.Perm(count) {
			points[i][d] = (float64(slice) + random.Float64()) / float64(count)
		}
	}
	return points
}

// Uniform returns the value at a coordinate of an even spread from low to high.
func Uniform(u, low, high float64) float64 { return low + u*(high-low) }

// Triangular returns the value at a coordinate of a spread that is likeliest at
// mode and ends at low and high.
func Triangular(u, low, mode, high float64) float64 {
	if high <= low {
		return low
	}
	if share := (mode - low) / (high - low); u < share {
		return low + math.Sqrt(u*(high-low)*(mode-low))
	}
	return high - math.Sqrt((1-u)*(high-low)*(high-mode))
}
