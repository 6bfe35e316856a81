package mesh

import (
	"math"
	"testing"
)

// slab is an L of 350 m² with a hole, joints in both directions and two cracks.
func slab() Domain {
	return Domain{
		Outline: [][]Point{{{0, 0}, {25, 0}, {25, 10}, {10, 10}, {10, 20}, {0, 20}}},
		Holes:   [][]Point{{{4, 12}, {4.6, 12}, {4.6, 12.4}, {4, 12.4}}},
		Lines: [][]Point{{{5, 0}, {5, 20}}, {{0, 5}, {25, 5}}, {{10, 0}, {10, 10}}, {{0, 10}, {10, 10}}, {{15, 0}, {15, 10}},
			{{20, 0}, {20, 10}}, {{0, 15}, {10, 15}}, {{10, 10}, {11.1, 8.7}, {12.3, 7.9}}, {{4.6, 12.2}, {6.9, 12.9}, {8, 12.6}}},
	}
}

func benchmarkSlab(b *testing.B, size float64) {
	d := slab()
	d.Size = Uniform(size)
	benchmark(b, d)
}

func benchmark(b *testing.B, d Domain) {
	triangles := 0
	for b.Loop() {
		m, err := Build(d)
		if err != nil {
			b.Fatal(err)
		}
		triangles = len(m.Triangles)
	}
	b.ReportMetric(float64(triangles), "triangles")
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(triangles), "ns/triangle")
}

func BenchmarkSlab250mm(b *testing.B) { benchmarkSlab(b, 0.25) }
func BenchmarkSlab50mm(b *testing.B)  { benchmarkSlab(b, 0.05) }

func BenchmarkPanels50mm(b *testing.B) {
	d := panels()
	d.Size = Uniform(0.05)
	benchmark(b, d)
}

func BenchmarkPanels50mmUnstructured(b *testing.B) {
	d := panels()
	d.Size = Uniform(0.05)
	d.Unstructured = true
	benchmark(b, d)
}

// 40 000 triangles, then 400 000.
func BenchmarkSlab40k(b *testing.B)  { benchmarkSlab(b, 0.166) }
func BenchmarkSlab400k(b *testing.B) { benchmarkSlab(b, 0.0508) }

// Small triangles at the inside corner and along a crack.
func BenchmarkSlabGraded(b *testing.B) {
	d := slab()
	d.Size = Grade(0.25, 1.2, append(Along(d.Lines[7], 0.02, 0.02), Source{Point{10, 10}, 0.005})...)
	benchmark(b, d)
}

// A round outline of 10 000 points.
func BenchmarkTenThousandPoints(b *testing.B) {
	benchmark(b, Domain{Outline: [][]Point{wavy(10_000)}})
}

func BenchmarkLocate(b *testing.B) {
	d := slab()
	d.Size = Uniform(0.05)
	m, err := Build(d)
	if err != nil {
		b.Fatal(err)
	}
	m.Locate(Point{1, 1})
	i := 0
	for b.Loop() {
		i++
		m.Locate(Point{float64(i%997) / 40, float64(i%499) / 50})
	}
}

// wavy is a ring of n points with bays of many sizes.
func wavy(n int) []Point {
	ring := make([]Point, n)
	for i := range ring {
		angle := 2 * math.Pi * float64(i) / float64(n)
		radius := 10 + math.Sin(7*angle) + 0.3*math.Sin(61*angle) + 0.05*math.Sin(509*angle)
		ring[i] = Point{radius * math.Cos(angle), radius * math.Sin(angle)}
	}
	return ring
}

// One position of a joint that is being dragged, on 40 000 triangles.
func BenchmarkPlace40k(b *testing.B) {
	d := slab()
	d.Size = Uniform(0.166)
	m, err := Build(d)
	if err != nil {
		b.Fatal(err)
	}
	l, err := m.Lift(4)
	if err != nil {
		b.Fatal(err)
	}
	i := 0
	for b.Loop() {
		i++
		x := 15 + float64(i%100)/100
		if _, err := l.Place([]Point{{x, 0}, {x, 10}}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLift40k(b *testing.B) {
	d := slab()
	d.Size = Uniform(0.166)
	m, err := Build(d)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := m.Lift(4); err != nil {
			b.Fatal(err)
		}
	}
}
