package mesh

import (
	"math"
	"testing"
)

// checkMesh holds a mesh against all that is promised and returns its quality.
func checkMesh(t tester, name string, m *Mesh, d *Domain, area float64) Quality {
	t.Helper()
	q := m.Quality()
	if got := sound(t, m.work.t); math.Abs(got-area) > 1e-9*area || math.Abs(q.Area-got) > 1e-12*got {
		t.Errorf("%s: area %v and %v, want %v", name, got, q.Area, area)
	}
	checkSizes(t, name, m, d)
	checkLines(t, name, m, d)
	checkNeighbours(t, name, m)
	checkAngles(t, name, m)
	return q
}

// checkAngles wants every angle below the limit to be excused by a small angle of
// the input or by lines nearer than Finest.
func checkAngles(t tester, name string, m *Mesh) {
	t.Helper()
	w := m.work
	r := newRefiner(&w.domain, w.t, w.segments, w.on)
	left := leftShare * r.finest
	for tri := range w.t.corner {
		side := r.shortestSide(int32(tri))
		a, b, c := w.t.points[w.t.start(side)], w.t.points[w.t.end(side)], w.t.points[w.t.apex(side)]
		twice := Orient(a, b, c)
		if twice*twice < r.sineSquared*(1-1e-9)*squaredDistance(b, c)*squaredDistance(c, a) && !r.excused(int32(tri), side&3) &&
			squaredDistance(a, b) > left*left && !beyondRounding(w, int32(tri)) {
			t.Fatalf("%s: %v %v %v has an angle of %v", name, a, b, c, math.Asin(twice/distance(b, c)/distance(c, a))*180/math.Pi)
		}
	}
}

// beyondRounding tells whether a thin triangle stays because a side beside it
// cannot be cut: its middle, rounded, would fall beyond a neighbour.
func beyondRounding(w *work, tri int32) bool {
	c := w.clone()
	r := newRefiner(&c.domain, c.t, c.segments, c.on)
	r.judge(tri)
	before := len(c.t.points)
	return r.run() == nil && len(c.t.points) == before && len(r.unsplit) > 0
}

// checkSizes wants no side longer than allowed at the middle of its triangle.
func checkSizes(t tester, name string, m *Mesh, d *Domain) {
	t.Helper()
	if d.Size == nil {
		return
	}
	for _, v := range m.Triangles {
		a, b, c := m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]
		h := d.Size.At(middle(a, b, c))
		if l := max(distance(a, b), distance(b, c), distance(c, a)); l > h*(1+1e-12) {
			t.Fatalf("%s: a side of %v at %v, allowed %v", name, l, middle(a, b, c), h)
		}
	}
}

// checkLines wants every ring and line covered to its full length, unless part of
// it was clipped.
func checkLines(t tester, name string, m *Mesh, d *Domain) {
	t.Helper()
	length := map[Mark]float64{}
	for tri, v := range m.Triangles {
		for i, set := range m.Sides[tri] {
			if beside := m.Neighbours[tri][i]; beside >= 0 && beside < int32(tri) {
				continue
			}
			for _, mark := range m.Marks[set] {
				length[mark] += distance(m.Points[v[i]], m.Points[v[(i+1)%3]])
			}
		}
	}
	clipped := map[int32]bool{}
	for _, c := range m.Clipped {
		clipped[c.Line] = true
	}
	for i, line := range d.Lines {
		if clipped[int32(i)] || selfCoincides(line) {
			continue
		}
		want := 0.0
		for k := 1; k < len(line); k++ {
			want += distance(line[k-1], line[k])
		}
		if got := length[Mark{OnLine, int32(i)}]; math.Abs(got-want) > 1e-6*want+1e3*m.work.snap {
			t.Errorf("%s: line %d covered over %v, want %v", name, i, got, want)
		}
	}
}

// selfCoincides tells whether two pieces of a line run along each other, or so
// nearly that snapping joins them over a part.
func selfCoincides(line []Point) bool {
	for i := 1; i < len(line); i++ {
		for k := i + 1; k < len(line); k++ {
			a, b, c, d := line[i-1], line[i], line[k-1], line[k]
			ux, uy, wx, wy := b[0]-a[0], b[1]-a[1], d[0]-c[0], d[1]-c[1]
			if math.Abs(ux*wy-uy*wx) < 1e-4*math.Hypot(ux, uy)*math.Hypot(wx, wy) && math.Abs(Orient(a, b, c)) < 1e-2 {
				return true
			}
		}
	}
	return false
}

func checkNeighbours(t tester, name string, m *Mesh) {
	t.Helper()
	for tri, beside := range m.Neighbours {
		for i, n := range beside {
			if n < 0 {
				if m.Sides[tri][i] == 0 {
					t.Fatalf("%s: side %d of triangle %d is on the rim but lies on nothing", name, i, tri)
				}
				continue
			}
			if back := m.Neighbours[n]; back[0] != int32(tri) && back[1] != int32(tri) && back[2] != int32(tri) {
				t.Fatalf("%s: triangles %d and %d do not agree", name, tri, n)
			}
			if m.Sides[tri][i] == 0 && m.Region[tri] != m.Region[n] {
				t.Fatalf("%s: region changes between %d and %d without a line", name, tri, n)
			}
		}
	}
}

func TestSlabKeepsAnglesAndSizes(t *testing.T) {
	for _, angle := range []float64{0, 20, 28, 30} {
		for _, size := range []Sizing{nil, Uniform(1), Uniform(0.25), Grade(0.5, 1.2, Source{Point{10, 10}, 0.005}, Source{Point{12.3, 7.9}, 0.01}),
			SizeFunc(func(p Point) float64 { return 0.1 + 0.02*p[0] })} {
			d := slab()
			d.MinAngle, d.Size = angle, size
			m, err := Build(d)
			if err != nil {
				t.Fatal(err)
			}
			q := checkMesh(t, "slab", m, &d, 349.76)
			t.Logf("angle %v size %T: %d triangles, smallest %.2f, aspect %.3f", angle, size, q.Triangles, q.SmallestAngle, q.MeanAspect)
			if len(m.Clipped) != 0 || m.Regions != 14 {
				t.Errorf("%d clipped, %d regions", len(m.Clipped), m.Regions)
			}
		}
	}
}

func TestSmoothingEvensAndKeepsPromises(t *testing.T) {
	for _, size := range []Sizing{nil, Uniform(0.5), Grade(0.5, 1.2, Source{Point{10, 10}, 0.01})} {
		d := slab()
		d.Size = size
		plain, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		d.Smooth = 4
		smooth, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		before, after := checkMesh(t, "plain", plain, &d, 349.76), checkMesh(t, "smooth", smooth, &d, 349.76)
		t.Logf("%T: aspect %.4f to %.4f, smallest angle %.2f to %.2f, triangles %d to %d", size,
			before.MeanAspect, after.MeanAspect, before.SmallestAngle, after.SmallestAngle, before.Triangles, after.Triangles)
		if after.MeanAspect >= before.MeanAspect {
			t.Errorf("%T: aspect %v before and %v after", size, before.MeanAspect, after.MeanAspect)
		}
	}
}

// Between two lines that meet at a small angle the triangles keep at least 0.45 of
// it: points on both arms stand on circles whose radii double, with one point
// between, which leaves two thirds of a very small angle and less of larger ones.
func TestAnglesBesideSmallAngles(t *testing.T) {
	for degrees := 0.5; degrees < 70; degrees += 4 {
		for _, size := range []Sizing{nil, Uniform(0.8)} {
			for _, length := range []float64{3, 6.3, 10} {
				s, c := math.Sincos(degrees*math.Pi/180 + 0.3)
				d := Domain{Outline: [][]Point{square(-12, -12, 24)}, Size: size,
					Lines: [][]Point{{{0, 0}, {10 * math.Cos(0.3), 10 * math.Sin(0.3)}}, {{0, 0}, {length * c, length * s}}}}
				m, err := Build(d)
				if err != nil {
					t.Fatal(err)
				}
				q := checkMesh(t, "wedge", m, &d, 576)
				if want := min(0.45*degrees, defaultMinAngle*(1-1e-9)); q.SmallestAngle < want {
					t.Errorf("lines %v degrees apart, size %v: smallest angle %v at %v, want %v", degrees, size, q.SmallestAngle, q.SmallestAt, want)
				}
			}
		}
	}
}
