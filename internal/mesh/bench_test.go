package mesh

import "testing"

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
