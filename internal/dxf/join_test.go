package dxf

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A polygon cut into its sides, these turned round and mixed, with ends a little
// apart, is found again with its area, whatever the order.
func TestJoinFindsOutline(t *testing.T) {
	const tol = 0.002
	ring := []Point{{0, 0}, {18, 0}, {18, 0.8}, {19.2, 0.8}, {19.2, 0}, {25.2, 0}, {25.2, 11}, {0, 11}}
	want := Line{Points: ring, Closed: true}
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 5))
		shake := func(p Point) Point { // any two ends at one corner stay within tol
			a := 2 * math.Pi * r.Float64()
			return Point{p.X + tol/2*math.Cos(a), p.Y + tol/2*math.Sin(a)}
		}
		var loose []Line
		for i, p := range ring {
			a, b := shake(p), shake(ring[(i+1)%len(ring)])
			if r.IntN(2) == 0 {
				a, b = b, a
			}
			loose = append(loose, Line{Points: []Point{a, b}})
		}
		loose = append(loose, loose[0]) // drawn twice
		r.Shuffle(len(loose), func(i, k int) { loose[i], loose[k] = loose[k], loose[i] })
		j := Join(loose, 2*tol)
		if len(j.Closed) != 1 || len(j.Open) != 0 || len(j.Branches) != 0 {
			t.Fatalf("seed %d: %d closed, %d open, %d branches", seed, len(j.Closed), len(j.Open), len(j.Branches))
		}
		if got := math.Abs(j.Closed[0].Area()); math.Abs(got-want.Area()) > tol*want.Length() {
			t.Fatalf("seed %d: area %.4f, want %.4f", seed, got, want.Area())
		}
	}
}

func TestJoinStopsAtBranches(t *testing.T) {
	star := []Line{{Points: []Point{{0, 0}, {1, 0}}}, {Points: []Point{{0, 0}, {0, 1}}}, {Points: []Point{{0, 0}, {-1, 0}}}}
	j := Join(star, 1e-3)
	if len(j.Open) != 3 || len(j.Branches) != 1 || j.Branches[0] != (Point{}) {
		t.Errorf("%+v", j)
	}
}

func TestJoinLoopOfOneLine(t *testing.T) {
	j := Join([]Line{{Points: []Point{{0, 0}, {4, 0}, {4, 3}, {0, 0.0005}}}}, 1e-3)
	if len(j.Closed) != 1 || len(j.Closed[0].Points) != 3 {
		t.Errorf("%+v", j)
	}
	if j = Join([]Line{{Points: []Point{{0, 0}, {1, 0}}}, {Points: []Point{{1, 0}, {2, 0}}}}, 1e-3); len(j.Open) != 1 || len(j.Open[0].Points) != 3 {
		t.Errorf("two in a row: %+v", j)
	}
}
