package mesh

import (
	"reflect"
	"sync"
	"testing"

	"pgregory.net/rapid"
)

// awayFrom is the least distance from p to the paths.
func awayFrom(p Point, paths ...[]Point) float64 {
	least := 1e300
	for _, path := range paths {
		for k := 1; k < len(path); k++ {
			_, away := nearestOn(path[k-1], path[k], p)
			least = min(least, away)
		}
	}
	return least
}

// checkFrom wants every triangle said to be an old one to be it, and returns how
// far the changed ones reach from the paths.
func checkFrom(t tester, m, old *Mesh, paths ...[]Point) (reach float64, changed int) {
	t.Helper()
	for tri, from := range m.TriangleFrom {
		v := m.Triangles[tri]
		if from < 0 {
			changed++
			reach = max(reach, awayFrom(middle(m.Points[v[0]], m.Points[v[1]], m.Points[v[2]]), paths...))
			continue
		}
		for i := range 3 {
			if m.PointFrom[v[i]] != old.Triangles[from][i] || m.Points[v[i]] != old.Points[old.Triangles[from][i]] {
				t.Fatalf("triangle %d is said to be %d of before, but corner %d differs", tri, from, i)
			}
		}
	}
	return reach, changed
}

func TestMoveChangesTheMeshNearbyOnly(t *testing.T) {
	for _, size := range []Sizing{Uniform(0.25), Grade(0.4, 1.3, Source{Point{10, 10}, 0.02})} {
		d := slab()
		d.Size = size
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			line int
			path []Point
		}{
			{4, []Point{{15.4, 0}, {15.4, 10}}},
			{4, []Point{{15.003, 0}, {15.003, 10}}},
			{0, []Point{{5.2, 0}, {5.2, 20}}},
			{0, []Point{{4.3, -1}, {4.3, 21}}}, // through the hole, beyond the outline
			{7, []Point{{10, 10}, {11, 9}, {13.1, 6.1}}},
			{1, []Point{{0, 5}, {25, 5}}},
			{2, []Point{{15, 0}, {15, 10}}}, // onto another line
		} {
			moved, err := m.Move(c.line, c.path)
			if err != nil {
				t.Errorf("line %d to %v: %v", c.line, c.path, err)
				continue
			}
			now := d
			now.Lines = append([][]Point{}, d.Lines...)
			now.Lines[c.line] = c.path
			checkMesh(t, "moved", moved, &now, 349.76)
			reach, changed := checkFrom(t, moved, m, d.Lines[c.line], c.path)
			if reach > 1.2 {
				t.Errorf("line %d to %v changed triangles %v away", c.line, c.path, reach)
			}
			t.Logf("line %d to %v: %d of %d changed, up to %.2f away", c.line, c.path, changed, len(moved.Triangles), reach)
			if edges := moved.Line(c.line); len(edges) == 0 {
				t.Errorf("line %d to %v: no sides on it", c.line, c.path)
			}
		}
	}
}

func TestPlaceDependsOnThePlaceAlone(t *testing.T) {
	d := slab()
	d.Size = Uniform(0.4)
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	first, err := m.Move(4, []Point{{16, 0}, {16, 10}})
	if err != nil {
		t.Fatal(err)
	}
	way := m
	for _, x := range []float64{15.1, 15.77, 18, 19.99, 14} {
		if way, err = way.Move(4, []Point{{x, 0}, {x, 10}}); err != nil {
			t.Fatal(err)
		}
	}
	second, err := way.Move(4, []Point{{16, 0}, {16, 10}})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(first.Points, second.Points) || !reflect.DeepEqual(first.Triangles, second.Triangles) {
		t.Error("another way to the same place gives another mesh")
	}
	checkFrom(t, second, way, []Point{{14, 0}, {14, 10}}, []Point{{16, 0}, {16, 10}})
	// And another line after it.
	third, err := second.Move(0, []Point{{6, 0}, {6, 20}})
	if err != nil {
		t.Fatal(err)
	}
	d.Lines[4], d.Lines[0] = []Point{{16, 0}, {16, 10}}, []Point{{6, 0}, {6, 20}}
	checkMesh(t, "two lines moved", third, &d, 349.76)
	checkFrom(t, third, second, d.Lines[0])
}

func TestMoveInAGrid(t *testing.T) {
	d := panels()
	d.Size = Uniform(0.3)
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	moved, err := m.Move(2, []Point{{10.6, 0}, {9.7, 10}})
	if err != nil {
		t.Fatal(err)
	}
	if !m.Structured || moved.Structured {
		t.Errorf("structured: %v before, %v after", m.Structured, moved.Structured)
	}
	old := d.Lines[2]
	d.Lines[2] = []Point{{10.6, 0}, {9.7, 10}}
	checkMesh(t, "grid moved", moved, &d, 349)
	if reach, _ := checkFrom(t, moved, m, old, d.Lines[2]); reach > 1.2 {
		t.Errorf("changed triangles %v away", reach)
	}
}

func TestMoveRefuses(t *testing.T) {
	m, err := Build(slab())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		line int
		path []Point
		code Code
	}{
		{99, []Point{{1, 1}, {2, 2}}, BadOption},
		{0, []Point{{30, 30}, {40, 30}}, OutsideLine},
		{0, []Point{{4.1, 12.1}, {4.2, 12.2}}, OutsideLine},
		{0, []Point{{1, 1}}, TooFewPoints},
		{0, nil, TooFewPoints},
	} {
		if _, err := m.Move(c.line, c.path); err == nil || err.(*Error).Code != c.code {
			t.Errorf("line %d to %v: %v, want %s", c.line, c.path, err, c.code)
		}
	}
}

func TestAnyMoveMeshesAsPromised(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, area := anyDomain(t)
		m, err := Build(d)
		if err != nil || len(d.Lines) == 0 {
			return
		}
		for range rapid.IntRange(1, 3).Draw(t, "moves") {
			line := rapid.IntRange(0, len(d.Lines)-1).Draw(t, "line")
			other, _ := anyDomain(t)
			if len(other.Lines) == 0 {
				return
			}
			moved, err := m.Move(line, other.Lines[0])
			if err != nil {
				if code := err.(*Error).Code; code == TooFewPoints || code == OutsideLine {
					return
				}
				t.Fatal(err)
			}
			d.Lines = append([][]Point{}, d.Lines...)
			old := d.Lines[line]
			d.Lines[line] = other.Lines[0]
			checkMesh(t, "moved", moved, &d, area)
			checkFrom(t, moved, m, old, d.Lines[line])
			m = moved
		}
	})
}

// Places asked for at the same time are those asked for one by one.
func TestPlaceFromSeveralGoroutines(t *testing.T) {
	d := slab()
	d.Size = Uniform(0.5)
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	l, err := m.Lift(4)
	if err != nil {
		t.Fatal(err)
	}
	var placed [8]*Mesh
	var wait sync.WaitGroup
	for i := range placed {
		wait.Go(func() {
			placed[i], _ = l.Place([]Point{{15 + float64(i%4)/7, 0}, {15.5, 10}})
			if placed[i] != nil {
				placed[i].Locate(Point{1, 1})
				m.Locate(Point{float64(i), 1})
			}
		})
	}
	wait.Wait()
	for i, p := range placed {
		if p == nil || !reflect.DeepEqual(p.Triangles, placed[i%4].Triangles) || !reflect.DeepEqual(p.Points, placed[i%4].Points) {
			t.Errorf("place %d differs from place %d", i, i%4)
		}
	}
}

// A crack grows, and the small triangles at its tip go along.
func TestPlaceSizedGradesToTheNewTip(t *testing.T) {
	d := slab()
	d.Size = Grade(0.4, 1.3, Source{Point{12.3, 7.9}, 0.01})
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	l, err := m.Lift(7)
	if err != nil {
		t.Fatal(err)
	}
	old := d.Lines[7]
	d.Lines[7] = append(append([]Point{}, old...), Point{13.2, 7.1})
	d.Size = Grade(0.4, 1.3, Source{Point{13.2, 7.1}, 0.01})
	grown, err := l.PlaceSized(d.Lines[7], d.Size)
	if err != nil {
		t.Fatal(err)
	}
	checkMesh(t, "grown", grown, &d, 349.76)
	if reach, changed := checkFrom(t, grown, m, d.Lines[7]); reach > 2 {
		t.Errorf("%d changed, up to %v away", changed, reach)
	}
	if _, err := l.PlaceSized(d.Lines[7], Uniform(-1)); err == nil {
		t.Error("a size below zero was taken")
	}
}
