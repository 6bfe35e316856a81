package mesh

import (
	"math"
	"testing"
)

// panels is an L of joints all along x or y, with a square hole.
func panels() Domain {
	d := slab()
	d.Lines = d.Lines[:7]
	d.Lines = append(d.Lines, []Point{{2.5, 0}, {2.5, 3}}) // ends inside
	d.Holes = [][]Point{{{4, 12}, {5, 12}, {5, 13}, {4, 13}}}
	return d
}

func TestGridOfRectangles(t *testing.T) {
	for _, h := range []float64{0.25, 1.2} {
		d := panels()
		d.Size = Uniform(h)
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if !m.Structured {
			t.Fatalf("size %v: not structured", h)
		}
		q := checkMesh(t, "panels", m, &d, 349)
		if q.Below > 0 {
			t.Errorf("size %v: smallest angle %v", h, q.SmallestAngle)
		}
		d.Unstructured = true
		other, err := Build(d)
		if err != nil || other.Structured {
			t.Fatalf("structured in spite of being told not to: %v", err)
		}
		checkMesh(t, "panels, free", other, &d, 349)
		if m.Regions != other.Regions {
			t.Errorf("%d regions as a grid, %d otherwise", m.Regions, other.Regions)
		}
		checkQuads(t, m)
	}
}

func checkQuads(t *testing.T, m *Mesh) {
	quads, ok := m.Quads()
	if !ok {
		t.Fatal("no quads")
	}
	area := 0.0
	for _, q := range quads {
		a, b, c, d := m.Points[q[0]], m.Points[q[1]], m.Points[q[2]], m.Points[q[3]]
		if math.Abs(distance(a, c)-distance(b, d)) > 1e-12 || distance(between(a, c, 0.5), between(b, d, 0.5)) > 1e-12 {
			t.Fatalf("%v %v %v %v is no rectangle", a, b, c, d)
		}
		area += Orient(a, b, c)
	}
	if math.Abs(area-349) > 1e-9 {
		t.Errorf("quads cover %v", area)
	}
}

func TestNoGridWhenAskedForOrNotOne(t *testing.T) {
	for name, change := range map[string]func(*Domain){
		"graded":           func(d *Domain) { d.Size = Grade(0.5, 1.2) },
		"no size":          func(d *Domain) { d.Size = nil },
		"a slanting crack": func(d *Domain) { d.Lines = append(d.Lines, []Point{{1, 1}, {2, 3}}) },
		"a point":          func(d *Domain) { d.Points = []Point{{1, 1}} },
		"a narrow strip":   func(d *Domain) { d.Lines = append(d.Lines, []Point{{0, 5.01}, {25, 5.01}}) },
	} {
		d := panels()
		d.Size = Uniform(0.5)
		change(&d)
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if m.Structured {
			t.Errorf("%s: structured", name)
		}
		checkMesh(t, name, m, &d, 349)
	}
}

func TestLineRunsItsWay(t *testing.T) {
	for _, make := range []func() Domain{panels, slab} {
		d := make()
		d.Size = Uniform(0.4)
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		for i, path := range d.Lines {
			edges := m.Line(i)
			at := path[0]
			for _, e := range edges {
				if distance(m.Points[e.A], at) > 1e-9 {
					t.Fatalf("line %d: an edge starts at %v, the one before ended at %v", i, m.Points[e.A], at)
				}
				at = m.Points[e.B]
				if e.Left < 0 { // the line runs along the hole
					continue
				}
				if v := m.Triangles[e.Left]; Orient(m.Points[e.A], m.Points[e.B], m.middle(v)) <= 0 {
					t.Fatalf("line %d: triangle %d is not on the left", i, e.Left)
				}
			}
			if distance(at, path[len(path)-1]) > 1e-9 {
				t.Errorf("line %d ends at %v, want %v", i, at, path[len(path)-1])
			}
		}
	}
}

func (m *Mesh) middle(v [3]int32) Point {
	return middle(m.Points[v[0]], m.Points[v[1]], m.Points[v[2]])
}
