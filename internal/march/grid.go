package march

import "math"

// Grid holds node positions in metres, from the top down, strictly growing. The
// volume of a node is half of each adjoining interval.
type Grid []float64

// Uniform returns n equal intervals from start to end.
func Uniform(start, end float64, n int) Grid {
	return Graded(start, end, n, 1)
}

// Graded returns n intervals from start to end, each ratio times as long as the
// one above it. A ratio above 1 is fine at the top.
func Graded(start, end float64, n int, ratio float64) Grid {
	if n < 1 || !(end > start) || !(ratio > 0) {
		panic("march: a grid needs an interval, a positive length and a positive ratio")
	}
	first := (end - start) / float64(n)
	if ratio != 1 {
		first = (end - start) * (ratio - 1) / (math.Pow(ratio, float64(n)) - 1)
	}
	g := make(Grid, n+1)
	g[0] = start
	length := first
	for i := 1; i < n; i++ {
		g[i] = g[i-1] + length
		length *= ratio
	}
	g[n] = end
	return g
}

// TwoSided returns 2n intervals from start to end, fine at both ends: n growing
// by ratio to the middle, then their mirror image.
func TwoSided(start, end float64, n int, ratio float64) Grid {
	upper := Graded(start, (start+end)/2, n, ratio)
	g := append(Grid(nil), upper...)
	for i := n - 1; i >= 0; i-- {
		g = append(g, start+end-upper[i])
	}
	return g
}

// Then returns the grid continued by another that starts where this one ends.
func (g Grid) Then(below Grid) Grid {
	if math.Abs(below[0]-g[len(g)-1]) > 1e-12*(1+math.Abs(below[0])) {
		panic("march: the lower grid must start where the upper one ends")
	}
	return append(append(Grid(nil), g...), below[1:]...)
}

// Index returns the node nearest to x.
func (g Grid) Index(x float64) int {
	best := 0
	for i := range g {
		if math.Abs(g[i]-x) < math.Abs(g[best]-x) {
			best = i
		}
	}
	return best
}

// Volumes returns the length of line that belongs to each node.
func (g Grid) Volumes() []float64 {
	v := make([]float64, len(g))
	for i := 0; i+1 < len(g); i++ {
		half := (g[i+1] - g[i]) / 2
		v[i] += half
		v[i+1] += half
	}
	return v
}

// Mean returns the mean over the nodes from..to (both on layer boundaries) of
// values that are linear between the nodes.
func (g Grid) Mean(values []float64, from, to int) float64 {
	var area float64
	for i := from; i < to; i++ {
		area += (g[i+1] - g[i]) * (values[i] + values[i+1]) / 2
	}
	return area / (g[to] - g[from])
}
