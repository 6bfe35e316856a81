package mesh

import (
	"encoding/binary"
	"math"
	"testing"
)

// Inputs that come up on site and break careless meshers, with the most triangles
// they may take.
func TestHardInputs(t *testing.T) {
	box := [][]Point{square(0, 0, 25)}
	for _, c := range []struct {
		name string
		d    Domain
		area float64
		most int
	}{
		{"a gap of 1 mm between a joint and the rim", Domain{Outline: box, Lines: [][]Point{{{0.001, 0}, {0.001, 25}}}}, 625, 300_000},
		{"a gap of 1 mm between two ends", Domain{Outline: box, Lines: [][]Point{{{0, 10}, {12, 10}}, {{12.001, 10}, {25, 10}}}}, 625, 1500},
		{"a crack 1 mm short of a joint", Domain{Outline: box, Lines: [][]Point{{{12, 0}, {12, 25}}, {{3, 5}, {11.999, 9}}}}, 625, 2500},
		{"cracks 1e-6 rad apart from one point", Domain{Outline: box, Lines: [][]Point{{{5, 5}, {20, 9}}, {{5, 5}, {20, 9.000015}}}}, 625, 3000},
		{"cracks 1e-6 rad apart that cross", Domain{Outline: box, Lines: [][]Point{{{5, 5}, {20, 9}}, {{5, 5.0000075}, {20, 8.9999925}}}}, 625, 6000},
		{"cracks 1e-6 rad apart cut by joints", Domain{Outline: box, Lines: [][]Point{{{5, 5}, {20, 9}}, {{5, 5}, {20, 9.000015}}, {{10, 0}, {10, 25}}, {{15, 0}, {15, 25}}}}, 625, 200_000},
		{"one saw cut drawn three times", Domain{Outline: box, Lines: [][]Point{{{5, 0}, {5, 25}}, {{5, 25}, {5, 0}}, {{5, 3}, {5, 7}}, {{0, 5}, {25, 5}}}}, 625, 500},
		{"a saw cut along the rim", Domain{Outline: box, Lines: [][]Point{{{0, 0}, {25, 0}}, {{25, 3}, {25, 30}}}}, 625, 500},
		{"ends that miss a joint by rounding", Domain{Outline: box, Lines: [][]Point{{{10, 0}, {11, 25}}, {{0, 10}, {10 + 10.0/25, 10}}, {{25, 15}, {10 + 15.0/25, 15}}}}, 625, 1000},
		{"a star of forty joints", Domain{Outline: box, Lines: spokes(Point{12.5, 12.5}, 12, 40)}, 625, 20_000},
		{"two columns that touch at a corner", Domain{Outline: box, Holes: [][]Point{square(5, 5, 1), square(6, 6, 1)}}, 623, 500},
		{"a column at the rim", Domain{Outline: box, Holes: [][]Point{square(0, 5, 1)}}, 624, 500},
		{"a column 1 mm from the rim", Domain{Outline: box, Holes: [][]Point{square(0.001, 5, 1)}}, 624, 40_000},
		{"a column cut off by two joints", Domain{Outline: box, Holes: [][]Point{square(5, 5, 1)}, Lines: [][]Point{{{5.5, 0}, {5.5, 25}}, {{0, 5.5}, {25, 5.5}}}}, 624, 1000},
		{"a slit 1 mm wide", Domain{Outline: box, Holes: [][]Point{{{5, 5}, {15, 5}, {15, 5.001}, {5, 5.001}}}}, 625 - 0.01, 3000},
		{"a spike of 0.01 degrees", Domain{Outline: [][]Point{{{0, 0}, {25, 0}, {25, 10}, {40, 10.001}, {25, 10.0026}, {25, 25}, {0, 25}}}}, 625 + 0.0195, 5000},
		{"a point next to the rim", Domain{Outline: box, Points: []Point{{12, 0.001}}}, 625, 1000},
		{"ten thousand points round", Domain{Outline: [][]Point{wavy(10_000)}}, 0, 60_000},
	} {
		m, err := Build(c.d)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if c.area == 0 {
			c.area = math.Abs(ringArea(c.d.Outline[0]))
		}
		q := checkMesh(t, c.name, m, &c.d, c.area)
		if q.Triangles > c.most {
			t.Errorf("%s: %d triangles, thought %d enough", c.name, q.Triangles, c.most)
		}
		t.Logf("%s: %d triangles, smallest angle %.3g", c.name, q.Triangles, q.SmallestAngle)
	}
}

// spokes are n lines from one point, each of its own length.
func spokes(centre Point, length float64, n int) [][]Point {
	var out [][]Point
	for i := range n {
		angle := 2 * math.Pi * float64(i) / float64(n)
		l := length * (0.5 + 0.5*float64(i%7)/7)
		out = append(out, []Point{centre, {centre[0] + l*math.Cos(angle), centre[1] + l*math.Sin(angle)}})
	}
	return out
}

// The mesh of a slab given in national grid metres, in millimetres, turned or
// mirrored covers as much and keeps the same promises.
func TestPlaceUnitAndTurnDoNotMatter(t *testing.T) {
	for name, change := range map[string]func(p Point) Point{
		"national grid": func(p Point) Point { return Point{p[0] + 652_103.27, p[1] + 4_472_907.81} },
		"millimetres":   func(p Point) Point { return Point{1000 * p[0], 1000 * p[1]} },
		"turned":        func(p Point) Point { s, c := math.Sincos(0.3); return Point{c*p[0] - s*p[1], s*p[0] + c*p[1]} },
		"mirrored":      func(p Point) Point { return Point{-p[0], p[1]} },
		"very small":    func(p Point) Point { return Point{1e-9 * p[0], 1e-9 * p[1]} },
		"very large":    func(p Point) Point { return Point{1e20 * p[0], 1e20 * p[1]} },
	} {
		d := slab()
		for _, paths := range [3][][]Point{d.Outline, d.Holes, d.Lines} {
			for _, path := range paths {
				for i := range path {
					path[i] = change(path[i])
				}
			}
		}
		area := math.Abs(ringArea(d.Outline[0])) - math.Abs(ringArea(d.Holes[0]))
		o, e := change(Point{}), change(Point{1, 0})
		d.Size = Uniform(0.5 * distance(o, e))
		m, err := Build(d)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		checkMesh(t, name, m, &d, area)
		if m.Regions != 14 {
			t.Errorf("%s: %d regions", name, m.Regions)
		}
	}
}

func TestTheSameInputGivesTheSameMesh(t *testing.T) {
	d := slab()
	d.Size, d.Smooth = Grade(0.5, 1.2, Source{Point{10, 10}, 0.01}), 2
	one, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	two, _ := Build(d)
	for i := range one.Points {
		if one.Points[i] != two.Points[i] {
			t.Fatalf("point %d at %v and at %v", i, one.Points[i], two.Points[i])
		}
	}
	for i := range one.Triangles {
		if one.Triangles[i] != two.Triangles[i] {
			t.Fatalf("triangle %d differs", i)
		}
	}
}

func TestTooManyTrianglesSaysWhere(t *testing.T) {
	d := Domain{Outline: [][]Point{square(0, 0, 1)}, Size: SizeFunc(func(p Point) float64 { return 1e-9 + 0.1*distance(p, Point{0.25, 0.5}) }), MaxTriangles: 3000}
	_, err := Build(d)
	e, ok := err.(*Error)
	if !ok || e.Code != TooManyNeeded || distance(e.At, Point{0.25, 0.5}) > 0.05 {
		t.Errorf("got %v", err)
	}
	d.Size = Uniform(1e-7)
	if e, ok := func() (*Error, bool) { _, err := Build(d); e, ok := err.(*Error); return e, ok }(); !ok || e.Code != TooManyNeeded {
		t.Errorf("got %v", e)
	}
}

func TestLocateAgreesWithTryingAll(t *testing.T) {
	d := slab()
	d.Size = Uniform(0.7)
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 2000 {
		p := Point{float64(i%53)*0.5 - 0.5, float64(i%41)*0.5 - 0.25}
		tri := m.Locate(p)
		all := m.work.t.search(p)
		if (tri < 0) != (all < 0) || tri >= 0 && !m.Holds(tri, p) {
			t.Fatalf("%v: found %d, trying all %d", p, tri, all)
		}
		if tri >= 0 {
			s, v := m.Shares(tri, p), m.Triangles[tri]
			for k := range 2 {
				if got := s[0]*m.Points[v[0]][k] + s[1]*m.Points[v[1]][k] + s[2]*m.Points[v[2]][k]; math.Abs(got-p[k]) > 1e-9 {
					t.Fatalf("%v: shares give %v", p, got)
				}
			}
		}
	}
	if m.Locate(Point{math.NaN(), 1}) != -1 {
		t.Error("found a triangle under no place")
	}
}

// FuzzBuild reads coordinates, in quarters or as they are, and wants a mesh of the
// right area or a refusal that names a place, but never a panic.
func FuzzBuild(f *testing.F) {
	f.Add([]byte{4, 0, 0, 8, 0, 8, 8, 0, 8, 2, 1, 1, 7, 7, 2, 1, 7, 7, 1})
	f.Add([]byte{4, 0, 0, 8, 8, 8, 0, 0, 8})
	f.Add([]byte{255, 3, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26})
	f.Fuzz(func(t *testing.T, data []byte) {
		d := decoded(data)
		d.MaxTriangles = 20_000
		m, err := Build(d)
		if err != nil {
			if e, ok := err.(*Error); !ok || e.Error() == "" {
				t.Fatalf("%v is no Error", err)
			}
			return
		}
		sound(t, m.work.t)
	})
}

// decoded reads paths: a count, then coordinates of one byte, or of eight when the
// first byte of all is 255. The first path is the outline, then a hole and lines
// in turn.
func decoded(data []byte) Domain {
	wide := len(data) > 0 && data[0] == 255
	if wide {
		data = data[1:]
	}
	var d Domain
	for n := 0; len(data) > 1; n++ {
		count := int(data[0] % 16)
		data = data[1:]
		var path []Point
		for range count {
			var p Point
			for k := range p {
				switch {
				case wide && len(data) >= 8:
					p[k] = math.Float64frombits(binary.LittleEndian.Uint64(data))
					data = data[8:]
				case len(data) > 0:
					p[k] = float64(int8(data[0])) / 4
					data = data[1:]
				}
			}
			path = append(path, p)
		}
		switch {
		case n == 0:
			d.Outline = append(d.Outline, path)
		case n == 1 && count > 2:
			d.Holes = append(d.Holes, path)
		default:
			d.Lines = append(d.Lines, path)
		}
	}
	return d
}

// A drawing made by hand: ends up to 8 mm short of or beyond what they meet. With
// a snap of 10 mm they meet, and the panels are closed.
func TestSnapClosesGapsOfADrawing(t *testing.T) {
	d := Domain{Outline: [][]Point{square(0, 0, 10)}, Size: Uniform(0.06), Snap: 0.01, Lines: [][]Point{
		{{5, 0.008}, {5.004, 9.995}}, {{0.006, 5}, {4.993, 5.003}}, {{5.006, 5}, {10.005, 4.996}}, {{2, 0}, {2.003, 4.994}}}}
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	q := m.Quality()
	if got := sound(t, m.work.t); math.Abs(got-100) > 0.01*40 {
		t.Errorf("area %v", got)
	}
	checkSizes(t, "drawing", m, &d)
	checkNeighbours(t, "drawing", m)
	if m.Regions != 5 || q.Below > 0 {
		t.Errorf("%d regions, want 5; smallest angle %v", m.Regions, q.SmallestAngle)
	}
	d.Snap = 0
	if m, err = Build(d); err != nil || m.Regions == 5 {
		t.Errorf("%d regions without snapping, %v", m.Regions, err)
	}
	checkMesh(t, "drawing, not snapped", m, &d, 100)
}
