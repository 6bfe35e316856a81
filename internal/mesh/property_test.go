package mesh

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// star draws a ring around a centre, on a coarse or a fine grid.
func star(t *rapid.T, centre Point, low, high float64, label string) []Point {
	n := rapid.IntRange(3, 14).Draw(t, label+" points")
	ring := make([]Point, n)
	for i := range ring {
		radius := rapid.Float64Range(low, high).Draw(t, label+" radius")
		angle := 2 * math.Pi * float64(i) / float64(n)
		ring[i] = Point{centre[0] + radius*math.Cos(angle), centre[1] + radius*math.Sin(angle)}
	}
	return ring
}

// anyDomain draws an outline, perhaps a hole and some lines; many points lie on
// a coarse grid so that lines coincide, touch and meet in T's.
func anyDomain(t *rapid.T) (Domain, float64) {
	outline := star(t, Point{}, 6, 12, "outline")
	d := Domain{Outline: [][]Point{outline}}
	area := math.Abs(ringArea(outline))
	if rapid.Bool().Draw(t, "hole") {
		hole := star(t, Point{0.5, -0.25}, 0.3, 1.5, "hole")
		d.Holes = [][]Point{hole}
		area -= math.Abs(ringArea(hole))
	}
	coordinate := rapid.OneOf(
		rapid.Map(rapid.IntRange(-5, 5), func(i int) float64 { return float64(i) / 2 }),
		rapid.Float64Range(-2.9, 2.9),
		rapid.Map(rapid.IntRange(-5, 5), func(i int) float64 { return float64(i)/2 + 0.001 }),
		rapid.Map(rapid.IntRange(-5, 5), func(i int) float64 { return float64(i)/2 + 1e-6 }))
	for range rapid.IntRange(0, 6).Draw(t, "lines") {
		var line []Point
		for range rapid.IntRange(2, 4).Draw(t, "line points") {
			line = append(line, Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")})
		}
		d.Lines = append(d.Lines, line)
	}
	switch rapid.IntRange(0, 3).Draw(t, "size") {
	case 1:
		d.Size = Uniform(rapid.Float64Range(0.4, 3).Draw(t, "uniform"))
	case 2:
		d.Size = Grade(2, 1.3, Source{Point{1, 2}, rapid.Float64Range(0.01, 1).Draw(t, "graded")})
	}
	d.MinAngle = rapid.SampledFrom([]float64{0, 10, 20, 28, 30}).Draw(t, "angle")
	d.Smooth = rapid.SampledFrom([]int{0, 0, 2}).Draw(t, "smooth")
	if rapid.Bool().Draw(t, "point") {
		d.Points = []Point{{coordinate.Draw(t, "x"), coordinate.Draw(t, "y") + 3}}
	}
	return d, area
}

func TestAnyDomainMeshesAsPromised(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, area := anyDomain(t)
		m, err := Build(d)
		if err != nil {
			e, ok := err.(*Error)
			if !ok {
				t.Fatalf("%v is no Error", err)
			}
			switch e.Code {
			case TooFewPoints, OutsideLine, OutsidePoint: // a line drawn as one point, or something in the hole
				return
			}
			t.Fatalf("%v", err)
		}
		checkMesh(t, "drawn", m, &d, area)
		s := m.Slit(func(line int32) bool { return line%2 == 0 })
		checkSlit(t, "drawn", m, s)
		for i, v := range m.At {
			if distance(m.Points[v], d.Points[i]) > 2*m.work.snap {
				t.Fatalf("point %d is at %v, not %v", i, m.Points[v], d.Points[i])
			}
		}
	})
}

// tester is what checks need of a test, ordinary or drawn.
type tester interface {
	Helper()
	Errorf(format string, values ...any)
	Fatalf(format string, values ...any)
}
