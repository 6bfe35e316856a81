package fem

import "math"

// GridMesh fills the cells between straight lines at xs and ys for which keep says
// so, given the middle of the cell; nil keeps all. Triangles cut each cell from the
// lower left to the upper right.
func GridMesh(shape *Shape, xs, ys []float64, keep func(x, y float64) bool) *Mesh {
	b := gridBuilder{mesh: &Mesh{Shape: shape}, number: map[[2]int]int32{}, xs: xs, ys: ys}
	if len(xs) == 0 || len(ys) == 0 {
		return b.mesh
	}
	for j := range len(ys) - 1 {
		for i := range len(xs) - 1 {
			if keep == nil || keep((xs[i]+xs[i+1])/2, (ys[j]+ys[j+1])/2) {
				b.cell(4*i, 4*j)
			}
		}
	}
	return b.mesh
}

// gridBuilder numbers nodes as they are met. Places count quarters of cells.
type gridBuilder struct {
	mesh   *Mesh
	number map[[2]int]int32
	xs, ys []float64
}

func (b *gridBuilder) node(i, j int) int32 {
	key := [2]int{i, j}
	n, known := b.number[key]
	if !known {
		n = int32(len(b.mesh.X))
		b.number[key] = n
		b.mesh.X = append(b.mesh.X, within(b.xs, i))
		b.mesh.Y = append(b.mesh.Y, within(b.ys, j))
	}
	return n
}

func within(lines []float64, i int) float64 {
	if i%4 == 0 {
		return lines[i/4]
	}
	from, to := lines[i/4], lines[i/4+1]
	return from + (to-from)*float64(i%4)/4
}

// gridOffsets are the nodes of each element of a cell, in quarters of the cell from
// its lower left corner.
var gridOffsets = map[string][][][2]int{
	"q4":  {{{0, 0}, {4, 0}, {4, 4}, {0, 4}}},
	"q8":  {{{0, 0}, {4, 0}, {4, 4}, {0, 4}, {2, 0}, {4, 2}, {2, 4}, {0, 2}}},
	"q25": {quarticPlaces},
	"t3":  {{{0, 0}, {4, 0}, {4, 4}}, {{0, 0}, {4, 4}, {0, 4}}},
	"t6":  {{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {4, 2}, {2, 2}}, {{0, 0}, {4, 4}, {0, 4}, {2, 2}, {2, 4}, {0, 2}}},
}

func (b *gridBuilder) cell(i, j int) {
	for _, element := range gridOffsets[b.mesh.Shape.Name] {
		for _, o := range element {
			b.mesh.Node = append(b.mesh.Node, b.node(i+o[0], j+o[1]))
		}
	}
}

// EqualLines returns lines from the first stop to the last with counts[k] equal
// steps between stops k and k+1.
func EqualLines(stops []float64, counts []int) []float64 {
	lines := []float64{stops[0]}
	for k, n := range counts {
		for i := 1; i <= n; i++ {
			lines = append(lines, stops[k]+(stops[k+1]-stops[k])*float64(i)/float64(n))
		}
	}
	return lines
}

// GradedLines returns lines from the first stop to the last that crowd towards stops:
// finest[k] is the step wanted at stop k, 0 for no wish. Away from there steps grow
// by ratio from one to the next and do not exceed most.
func GradedLines(stops, finest []float64, ratio, most float64) []float64 {
	if len(finest) != len(stops) || !(ratio > 1 && most > 0) {
		panic("fem: grading needs a step for every stop, a ratio above 1 and a largest step")
	}
	density := func(x float64) float64 { // steps per length wished for
		h := most
		for k, s := range stops {
			if finest[k] > 0 {
				h = min(h, finest[k]+(ratio-1)*math.Abs(x-s))
			}
		}
		return 1 / h
	}
	lines := []float64{stops[0]}
	for k := range len(stops) - 1 {
		lines = append(lines, spread(stops[k], stops[k+1], density)...)
	}
	return lines
}

// spread places lines after from up to and including to so that each step holds the
// same integral of density.
func spread(from, to float64, density func(float64) float64) []float64 {
	const samples = 20000
	sum := make([]float64, samples+1)
	for i := 1; i <= samples; i++ {
		sum[i] = sum[i-1] + density(from+(to-from)*(float64(i)-0.5)/samples)
	}
	steps := int(math.Ceil(sum[samples] * (to - from) / samples))
	var lines []float64
	at := 0
	for k := 1; k < steps; k++ {
		want := sum[samples] * float64(k) / float64(steps)
		for sum[at+1] < want {
			at++
		}
		part := (want - sum[at]) / (sum[at+1] - sum[at])
		lines = append(lines, from+(to-from)*(float64(at)+part)/samples)
	}
	return append(lines, to)
}
