package mesh

import (
	"math"
	"math/rand/v2"
	"testing"
)

// sound checks that neighbours agree, triangles turn left and no triangle has a
// point it sees inside its circle. It returns the area.
func sound(t tester, m *triangulation) float64 {
	t.Helper()
	area := 0.0
	for tri := range m.corner {
		if !m.alive(int32(tri)) {
			continue
		}
		a, b, c := m.place(int32(tri))
		if Orient(a, b, c) <= 0 {
			t.Fatalf("triangle %d %v %v %v does not turn left", tri, a, b, c)
		}
		area += Orient(a, b, c) / 2
		for i := range int32(3) {
			soundSide(t, m, 4*int32(tri)+i)
		}
	}
	return area
}

func soundSide(t tester, m *triangulation, side int32) {
	t.Helper()
	twin := m.twin(side)
	if twin < 0 {
		return
	}
	if !m.alive(twin >> 2) {
		t.Fatalf("side %d has a dead neighbour", side)
	}
	if m.twin(twin) != side || m.start(twin) != m.end(side) || m.end(twin) != m.start(side) {
		t.Fatalf("side %d and %d do not agree", side, twin)
	}
	if m.segmentOf(side) != m.segmentOf(twin) {
		t.Fatalf("side %d lies on segment %d, its twin on %d", side, m.segmentOf(side), m.segmentOf(twin))
	}
	if m.segmentOf(side) < 0 {
		a, b, c := m.place(side >> 2)
		if InCircle(a, b, c, m.points[m.apex(twin)]) > 0 {
			t.Fatalf("side %d of %v %v %v is not Delaunay", side, a, b, c)
		}
	}
}

func TestDelaunayOfScatteredAndGriddedPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for _, n := range []int{1, 2, 3, 10, 2000} {
		for _, grid := range []bool{false, true} {
			w := newWelder(1e-9)
			w.number(Point{50, 50})
			for range n {
				p := Point{r.Float64() * 40, r.Float64() * 40}
				if grid {
					p = Point{math.Round(p[0]), math.Round(p[1])}
				}
				w.number(p)
			}
			m := newDelaunay(w.points)
			low, high := bounds(m.points[:boxPoints])
			want := (high[0] - low[0]) * (high[1] - low[1])
			if got := sound(t, m); math.Abs(got-want) > 1e-9*want {
				t.Errorf("%d points, grid %v: area %v, want %v", n, grid, got, want)
			}
		}
	}
}

func square(x, y, side float64) []Point {
	return []Point{{x, y}, {x + side, y}, {x + side, y + side}, {x, y + side}}
}

func TestTriangulateCutsAndCarves(t *testing.T) {
	for _, c := range []struct {
		name string
		d    Domain
		area float64
	}{
		{"square", Domain{Outline: [][]Point{square(0, 0, 1)}}, 1},
		{"turning right", Domain{Outline: [][]Point{{{0, 0}, {0, 2}, {2, 2}, {2, 0}}}}, 4},
		{"hole", Domain{Outline: [][]Point{square(0, 0, 3)}, Holes: [][]Point{square(1, 1, 1)}}, 8},
		{"hole at a corner", Domain{Outline: [][]Point{square(0, 0, 3)}, Holes: [][]Point{square(0, 0, 1)}}, 8},
		{"holes that touch", Domain{Outline: [][]Point{square(0, 0, 4)}, Holes: [][]Point{square(1, 1, 1), square(2, 2, 1)}}, 14},
		{"holes that share a side", Domain{Outline: [][]Point{square(0, 0, 4)}, Holes: [][]Point{square(1, 1, 1), square(2, 1, 1)}}, 14},
		{"two rings", Domain{Outline: [][]Point{square(0, 0, 1), square(5, 0, 1)}}, 2},
		{"crossing lines", Domain{Outline: [][]Point{square(0, 0, 3)}, Lines: [][]Point{{{0, 0}, {3, 3}}, {{0, 3}, {3, 0}}}}, 9},
		{"one line twice", Domain{Outline: [][]Point{square(0, 0, 3)}, Lines: [][]Point{{{0, 1}, {3, 1}}, {{2, 1}, {1, 1}}}}, 9},
		{"a line beyond the outline", Domain{Outline: [][]Point{square(0, 0, 3)}, Lines: [][]Point{{{-1, 1}, {4, 1}}}}, 9},
		{"lines 1e-6 rad apart", Domain{Outline: [][]Point{square(0, 0, 3)}, Lines: [][]Point{{{0, 1}, {3, 1}}, {{0, 1}, {3, 1 + 3e-6}}}}, 9},
		{"crossing at 1e-6 rad", Domain{Outline: [][]Point{square(0, 0, 3)}, Lines: [][]Point{{{0.5, 1}, {2.5, 1}}, {{0.5, 1 - 1e-6}, {2.5, 1 + 1e-6}}}}, 9},
	} {
		b, err := triangulate(&c.d)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := sound(t, b.t); math.Abs(got-c.area) > 1e-9*c.area {
			t.Errorf("%s: area %v, want %v", c.name, got, c.area)
		}
	}
}

func TestRefusalsNameThePlace(t *testing.T) {
	box := [][]Point{square(0, 0, 4)}
	for _, c := range []struct {
		name string
		d    Domain
		code Code
		at   Point
		near float64
	}{
		{"bow tie", Domain{Outline: [][]Point{{{0, 0}, {2, 2}, {2, 0}, {0, 2}}}}, SelfCrossing, Point{1, 1}, 1e-9},
		{"flat", Domain{Outline: [][]Point{{{0, 0}, {2, 0}, {1, 0}}}}, ZeroArea, Point{0, 0}, 0},
		{"two points", Domain{Outline: [][]Point{{{0, 0}, {2, 0}}}}, TooFewPoints, Point{0, 0}, 0},
		{"nothing", Domain{}, TooFewPoints, Point{0, 0}, 0},
		{"not a number", Domain{Outline: [][]Point{{{0, 0}, {math.NaN(), 0}, {1, 1}}}}, NotFinite, Point{}, math.Inf(1)},
		{"hole outside", Domain{Outline: box, Holes: [][]Point{square(6, 0, 1)}}, OutsideHole, Point{6.5, 0.5}, 0.7},
		{"hole across", Domain{Outline: box, Holes: [][]Point{square(3.5, 1, 1)}}, RingsCross, Point{4, 1.5}, 0.6},
		{"hole in hole", Domain{Outline: box, Holes: [][]Point{square(1, 1, 2), square(1.5, 1.5, 1)}}, RingsOverlap, Point{2, 2}, 0.5},
		{"ring in ring", Domain{Outline: [][]Point{square(0, 0, 4), square(1, 1, 1)}}, RingsOverlap, Point{1.5, 1.5}, 0.7},
		{"all hole", Domain{Outline: box, Holes: box}, ZeroArea, Point{0, 0}, 0},
		{"line outside", Domain{Outline: box, Lines: [][]Point{{{5, 0}, {6, 0}}}}, OutsideLine, Point{5, 0}, 0},
		{"line of no length", Domain{Outline: box, Lines: [][]Point{{{1, 1}, {1, 1}}}}, TooFewPoints, Point{1, 1}, 0},
		{"point outside", Domain{Outline: box, Points: []Point{{5, 5}}}, OutsidePoint, Point{5, 5}, 0},
		{"gap", Domain{Outline: box, Lines: [][]Point{{{1, 0.001}, {3, 1}}}, Gap: 0.01}, SmallGap, Point{1, 0.001}, 0},
		{"angle", Domain{Outline: box, MinAngle: 60}, BadOption, Point{}, 0},
		{"size", Domain{Outline: box, Size: Uniform(-1)}, BadOption, Point{}, 0},
	} {
		_, err := triangulate(&c.d)
		e, ok := err.(*Error)
		if !ok {
			t.Errorf("%s: got %v, want an Error %s", c.name, err, c.code)
			continue
		}
		if e.Code != c.code || !(distance(e.At, c.at) <= c.near) && !math.IsInf(c.near, 1) {
			t.Errorf("%s: got %s at %v (%v), want %s at %v", c.name, e.Code, e.At, e, c.code, c.at)
		}
	}
}
